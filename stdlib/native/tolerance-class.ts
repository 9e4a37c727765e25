// Takes the text of a metric tolerance class apart: grade and position of pitch and crest diameter, for the screw and for the nut.

import { type Native, Refusal, type Value } from "../../engine/run/index.ts";

interface Member {
  readonly name: string;
  /** Class of ISO 965-1 for a medium fit at normal engagement: what a drawing means that names none. */
  readonly usual: string;
  readonly pattern: RegExp;
  readonly positions: string;
  readonly example: string;
}

const SCREW: Member = {
  name: "screw",
  usual: "6g",
  pattern: /^([3-9][a-h])([3-9][a-h])?$/,
  positions: "e, f, g, h",
  example: "6g or 5g6g",
};
const NUT: Member = { name: "nut", usual: "6H", pattern: /^([3-9][GH])([3-9][GH])?$/, positions: "G, H", example: "6H or 4H5H" };

export const externalToleranceClass: Native = native(SCREW, NUT, "external_tolerance_class");
export const internalToleranceClass: Native = native(NUT, SCREW, "internal_tolerance_class");

function native(member: Member, other: Member, name: string): Native {
  return {
    head: `${name}(text: Text): ToleranceClass`,
    purpose: `the class of the ${member.name} in a text such as ${member.example}, 6H/6g or nothing, which means ${member.usual}`,
    reference: "@iso965 5",
    apply: ([text]) => {
      const written = String(text).trim();
      const parts = written === "" ? [] : written.split("/");
      const own = parts.find((part) => member.pattern.test(part));
      const stranger = parts.find((part) => !member.pattern.test(part) && !other.pattern.test(part));
      if (stranger !== undefined || parts.length > 2 || (parts.length === 2 && own === undefined)) {
        throw new Refusal(`"${text}" is no class of a metric ${member.name}`, {
          argument: 0,
          advice: `Write it like ${member.example}, with the positions ${member.positions}`,
        });
      }
      const name = own ?? member.usual;
      const [, pitch = "", crest = pitch] = member.pattern.exec(name) ?? [];
      return { shape: "record", record: "ToleranceClass", fields: [name, ...zone(pitch), ...zone(crest)] };
    },
  };
}

const zone = (text: string): readonly Value[] => [Number(text[0]), text.slice(1)];
