// Two calculations side by side: which inputs, results, checks, modes and texts differ. Values are compared, not lines.

import { proseTree, readNotebook } from "../notebook/index.ts";
import type { CheckEntry, InputEntry, ResultEntry, Results } from "./results.ts";

export interface Difference {
  readonly kind: "title" | "input" | "result" | "check" | "mode" | "text" | "source" | "library" | "program" | "fault";
  /** What differs: a name, a check's title, a field of the title block. */
  readonly name: string;
  /** Empty where it was not there. */
  readonly before: string;
  /** Empty where it is no longer there. */
  readonly after: string;
  /** Relative change of a number: 0.05 is 5 % more. */
  readonly change?: number;
}

export interface Side {
  readonly results: Results;
  readonly sources: readonly { readonly name: string; readonly text: string }[];
}

export function compareResults(before: Side, after: Side): readonly Difference[] {
  const [a, b] = [before.results, after.results];
  return [
    ...titles(a, b),
    ...versions(a, b),
    ...entries("input", a.inputs, b.inputs, inputWords),
    ...entries("result", a.results, b.results, resultWords),
    ...checks(a.checks, b.checks),
    ...faultsOf(a, b),
    ...texts(before, after),
  ];
}

function titles(a: Results, b: Results): readonly Difference[] {
  const keys = [...new Set([...Object.keys(a.title), ...Object.keys(b.title)])];
  return keys.flatMap((name) => changed("title", name, a.title[name] ?? "", b.title[name] ?? ""));
}

function versions(a: Results, b: Results): readonly Difference[] {
  const library = (from: Results): string => `${from.library.version} (${from.library.sha256.slice(0, 12)})`;
  return [
    ...(a.library.sha256 === b.library.sha256 && a.library.version === b.library.version
      ? []
      : changed("library", "standard library", library(a), library(b))),
    ...changed("program", "Jointwright", a.program, b.program),
  ];
}

function changed(kind: Difference["kind"], name: string, before: string, after: string, change?: number): readonly Difference[] {
  return before === after ? [] : [{ kind, name, before, after, ...(change === undefined ? {} : { change }) }];
}

/** By name; of one name twice, by place among its like. */
function byName<T>(all: readonly T[], nameOf: (entry: T) => string): ReadonlyMap<string, T> {
  const out = new Map<string, T>();
  for (const entry of all) {
    const name = nameOf(entry);
    let key = name;
    for (let n = 2; out.has(key); n += 1) key = `${name} (${n})`;
    out.set(key, entry);
  }
  return out;
}

type Valued = InputEntry | ResultEntry;

function entries<T extends Valued>(
  kind: "input" | "result",
  a: readonly T[],
  b: readonly T[],
  words: (entry: T) => string,
): readonly Difference[] {
  const [before, after] = [byName(a, ({ name }) => name), byName(b, ({ name }) => name)];
  return [...new Set([...before.keys(), ...after.keys()])].flatMap((name): readonly Difference[] => {
    const [old, now] = [before.get(name), after.get(name)];
    if (old === undefined) return changed(kind, name, "", words(now as T));
    if (now === undefined) return changed(kind, name, words(old), "");
    const moved = relative(old.si, now.si);
    const said = changed(kind, name, words(old), words(now), moved);
    if (said.length > 0) return said;
    // Digits that are not shown may differ all the same.
    return JSON.stringify(old.si) === JSON.stringify(now.si)
      ? []
      : [{ kind, name, before: full(old), after: full(now), ...(moved === undefined ? {} : { change: moved }) }];
  });
}

const full = ({ si, text }: Valued): string => (si === undefined ? text : `${JSON.stringify(si)} in SI`);

function relative(before: Valued["si"], after: Valued["si"]): number | undefined {
  if (typeof before !== "number" || typeof after !== "number" || before === 0 || before === after) return undefined;
  return (after - before) / Math.abs(before);
}

const inputWords = ({ text, reference, range, confirmed, provenance }: InputEntry): string =>
  [text, range === undefined ? "" : `range ${range}`, reference ?? provenance, confirmed === true ? "confirmed" : ""]
    .filter((part) => part !== "")
    .join("; ");

const resultWords = ({ text, validity, provenance, table }: ResultEntry): string =>
  [
    text,
    validity === "within" ? "" : `outside validity: ${validity.join(", ")}`,
    provenance ?? "",
    table === undefined ? "" : JSON.stringify(table.rows),
  ]
    .filter((part) => part !== "")
    .join("; ");

function checks(a: readonly CheckEntry[], b: readonly CheckEntry[]): readonly Difference[] {
  const nameOf = ({ title, ledger }: CheckEntry): string => (ledger === undefined ? title : `${ledger}: ${title}`);
  const [before, after] = [byName(a, nameOf), byName(b, nameOf)];
  return [...new Set([...before.keys(), ...after.keys()])].flatMap((name): readonly Difference[] => {
    const [old, now] = [before.get(name), after.get(name)];
    const kind = (now ?? old)?.ledger === undefined ? "check" : "mode";
    const moved = old === undefined || now === undefined ? undefined : relative(old.utilisation, now.utilisation);
    return changed(kind, name, checkWords(old), checkWords(now), moved);
  });
}

function checkWords(check: CheckEntry | undefined): string {
  if (check === undefined) return "";
  const { state, case: which, factor, demand, capacity, utilisation, margin, reason, firstDamage, ultimate, weakest, validity } = check;
  const number = (label: string, value: number | undefined): string =>
    value === undefined ? "" : `${label} ${Number(value.toPrecision(4))}`;
  return [
    state,
    which ?? "",
    number("factor", factor),
    demand === undefined ? "" : `demand ${demand}`,
    firstDamage === undefined ? "" : `first damage ${firstDamage}`,
    ultimate === undefined ? (capacity === undefined ? "" : `capacity ${capacity}`) : `ultimate ${ultimate}`,
    number("utilisation", utilisation),
    number("margin", margin),
    weakest ?? "",
    validity === "outside" ? "outside validity" : "",
    reason ?? "",
  ]
    .filter((part) => part !== "")
    .join("; ");
}

function faultsOf(a: Results, b: Results): readonly Difference[] {
  const words = (from: Results): ReadonlySet<string> => new Set(from.faults.map(({ code, message }) => `${code}: ${message}`));
  const [before, after] = [words(a), words(b)];
  return [
    ...[...before]
      .filter((each) => !after.has(each))
      .map((each): Difference => ({ kind: "fault", name: "fault", before: each, after: "" })),
    ...[...after]
      .filter((each) => !before.has(each))
      .map((each): Difference => ({ kind: "fault", name: "fault", before: "", after: each })),
  ];
}

/** Paragraphs of prose that came, went or changed, and data files whose text changed. */
function texts(before: Side, after: Side): readonly Difference[] {
  const proseOf = (side: Side): readonly string[] =>
    paragraphs(side.sources.find(({ name }) => name === side.results.notebook)?.text ?? "");
  const [old, now] = [proseOf(before), proseOf(after)];
  const others = (side: Side): ReadonlyMap<string, string> =>
    new Map(side.sources.filter(({ name }) => name !== side.results.notebook).map(({ name, text }) => [name, text]));
  const [files, newFiles] = [others(before), others(after)];
  const names = [...new Set([...files.keys(), ...newFiles.keys()])];
  const size = (text: string | undefined): string => (text === undefined ? "" : `${text.split("\n").length} lines`);
  return [
    ...paired(old, now).map(([was, is]): Difference => ({ kind: "text", name: "paragraph", before: was, after: is })),
    ...names
      .filter((name) => files.get(name) !== newFiles.get(name))
      .map(
        (name): Difference => ({
          kind: "source",
          name,
          before: size(files.get(name)),
          after: newFiles.has(name) ? `${size(newFiles.get(name))}, changed` : "",
        }),
      ),
  ];
}

function paragraphs(text: string): readonly string[] {
  return readNotebook(text).parts.flatMap((part) => {
    if (part.kind !== "prose") return [];
    const out: string[] = [];
    const top = proseTree(part.text).topNode;
    for (let node = top.firstChild; node !== null; node = node.nextSibling) {
      const words = part.text.slice(node.from, node.to).replace(/\s+/g, " ").trim();
      if (words !== "" && node.name !== "CommentBlock") out.push(words);
    }
    return out;
  });
}

/** What is not common to both, gone and new ones at one place beside each other. The longest common run is kept by its order. */
function paired(before: readonly string[], after: readonly string[]): readonly (readonly [string, string])[] {
  const out: (readonly [string, string])[] = [];
  let gone: string[] = [];
  let come: string[] = [];
  const flush = (): void => {
    for (let i = 0; i < Math.max(gone.length, come.length); i += 1) out.push([gone[i] ?? "", come[i] ?? ""]);
    gone = [];
    come = [];
  };
  const lengths = commonLengths(before, after);
  let [i, j] = [0, 0];
  while (i < before.length || j < after.length) {
    if (i < before.length && j < after.length && before[i] === after[j]) {
      flush();
      i += 1;
      j += 1;
    } else if (j >= after.length || (i < before.length && (lengths[i + 1]?.[j] ?? 0) >= (lengths[i]?.[j + 1] ?? 0))) {
      gone.push(before[i] as string);
      i += 1;
    } else {
      come.push(after[j] as string);
      j += 1;
    }
  }
  flush();
  return out;
}

/** Length of the longest common run from each pair of places on. */
function commonLengths(before: readonly string[], after: readonly string[]): readonly (readonly number[])[] {
  const rows: number[][] = Array.from({ length: before.length + 1 }, () => new Array<number>(after.length + 1).fill(0));
  for (let i = before.length - 1; i >= 0; i -= 1) {
    for (let j = after.length - 1; j >= 0; j -= 1) {
      const row = rows[i] as number[];
      const below = rows[i + 1] as number[];
      row[j] = before[i] === after[j] ? (below[j + 1] as number) + 1 : Math.max(below[j] as number, row[j + 1] as number);
    }
  }
  return rows;
}
