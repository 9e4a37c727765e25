// Takes the text of a Unified class apart: `2A`, `3B` or the pair `2A/2B`, for the screw and for the nut.

import { type Native, Refusal } from "../../engine/run/index.ts";

/** ASME B1.1: 1 to 3 from loose to close; A is a screw, B a nut. A drawing that names none means class 2. */
export const unifiedExternalClass: Native = native("A", "screw", "unified_external_class");
export const unifiedInternalClass: Native = native("B", "nut", "unified_internal_class");

function native(letter: string, member: string, name: string): Native {
  return {
    head: `${name}(text: Text): Text`,
    purpose: `the class of the ${member} in a text such as 2${letter}, 2A/2B or nothing, which means 2${letter}`,
    reference: "@asmeb11 4",
    apply: ([text]) => {
      const written = String(text).trim();
      const parts = written === "" ? [] : written.split("/");
      const own = parts.find((part) => part.endsWith(letter));
      if (parts.length > 2 || parts.some((part) => !/^[123][AB]$/.test(part)) || (parts.length === 2 && own === undefined)) {
        throw new Refusal(`"${text}" is no class of a Unified ${member}`, {
          argument: 0,
          advice: `Write 1${letter}, 2${letter} or 3${letter}`,
        });
      }
      return own ?? `2${letter}`;
    },
  };
}
