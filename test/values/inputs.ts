// Reads the `inputs` of a published-value row: `k=v; k=v`, with words between, as engineers write them.

import { drillSize } from "./drills.ts";

export interface Inputs {
  /** The value of a key as text of the language; a bare number takes `unit`. Throws `MissingInput` when it is not there. */
  value(key: string, unit?: string): string;
  has(key: string): boolean;
  /** Parts that are no `key=value`, e.g. `M5x0.8`. */
  readonly words: readonly string[];
  readonly text: string;
}

export class MissingInput extends Error {}

const NUMBER = /^[-+−]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[-+]?\d+)?$/i;

export function readInputs(text: string): Inputs {
  const values = new Map<string, string>();
  const words: string[] = [];
  for (const part of text.split(";").map((one) => one.trim())) {
    const bare = part.replace(/\s*\([^()]*\)\s*$/, "");
    const named = /^(drill|hole)\s+(.+?)(?:\s*=\s*(.+))?$/i.exec(bare);
    const pair = /^([^\s=]+)\s*=\s*(.+)$/.exec(bare);
    if (named !== null && named[3] !== undefined) values.set("hole", named[3]);
    else if (named !== null && named[2] !== undefined) values.set("hole", drillSize(named[2]) ?? named[2].replace(/^=\s*/, ""));
    else if (pair !== null) values.set(pair[1] ?? "", pair[2] ?? "");
    else if (bare !== "") words.push(bare);
  }
  return {
    text,
    words,
    has: (key) => values.has(key),
    value(key, unit = "") {
      const written = values.get(key);
      if (written === undefined) throw new MissingInput(`no ${key} in "${text}"`);
      return literal(drillSize(written) ?? written, unit);
    },
  };
}

/**
 * Units as these files write them (`mm2`, `N m`, `kpsi`) in the spelling of the language; `-` is none. A row that counts in
 * its own load `F` or modulus `Es` gets an expression for a load or modulus of one.
 */
export function unitOf(written: string): string {
  const text = written.trim();
  if (text === "-" || text === "" || text === "F") return "";
  return text
    .replace(/\b(mm|cm|m|in|ft)([234])\b/g, "$1^$2")
    .replace(/\b(mm|in)\^2\/\1$/, "$1")
    .replace(/\bkpsi\b/g, "ksi")
    .replace(/\bMpsi\b/g, "Msi")
    .replace(/\bMlbf\/in\b/g, "kip/mil")
    .replace(/^Es\*/, "")
    .replace(/\*/g, "·")
    .replace(/\bdeg C\b|°C/g, "degC");
}

function literal(written: string, unit: string): string {
  const text = written.replace(/−/g, "-").trim();
  if (NUMBER.test(text)) return unit === "" ? digits(text) : `${digits(text)} ${unit}`;
  const measured = /^([-+]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[-+]?\d+)?)\s*(.+)$/i.exec(text);
  return measured === null ? text : `${digits(measured[1] ?? "")} ${unitOf(measured[2] ?? "")}`;
}

/** The language wants a digit on both sides of the point. */
const digits = (text: string): string => text.replace(/^([-+]?)\./, "$10.").replace(/\.(?=$|e)/i, "");
