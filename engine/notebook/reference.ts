// One work cited: a CSL record (citation style language, as CSL-YAML writes it) reduced to what our own short style shows.

import { type Range, range } from "../base/index.ts";
import { type Diagnostic, faults } from "../diagnostics/index.ts";
import { type Data, type DataMap, readYaml, readYamlMap } from "./yaml-data.ts";

export interface Author {
  readonly family: string;
  readonly given: string;
}

/** Absent fields are empty text. */
export interface Reference {
  readonly id: string;
  /** CSL type, e.g. `standard`, `report`, `article-journal`, `book`, `webpage`. */
  readonly type: string;
  readonly title: string;
  /** E.g. `ISO 965-1`. */
  readonly number: string;
  readonly authors: readonly Author[];
  /** The year issued, or the whole date text when no year is found in it. */
  readonly year: string;
  readonly container: string;
  readonly publisher: string;
  readonly edition: string;
  readonly version: string;
  readonly volume: string;
  readonly issue: string;
  readonly page: string;
  readonly doi: string;
  readonly url: string;
  readonly note: string;
  /** The record's place in the text it was read from. */
  readonly range: Range;
}

export interface ReferenceList {
  readonly references: ReadonlyMap<string, Reference>;
  readonly diagnostics: readonly Diagnostic[];
}

/** The records of a CSL-YAML list; each needs an id of its own. */
export function readReferenceList(data: Data): ReferenceList {
  const references = new Map<string, Reference>();
  if (data.kind !== "list") {
    const blank = data.kind === "text" && data.text === "";
    return { references, diagnostics: blank ? [] : [faults.referencesNotList(data.range, {})] };
  }
  const diagnostics: Diagnostic[] = [];
  for (const item of data.items) {
    const id = item.kind === "map" ? textOf(item, "id") : "";
    if (item.kind !== "map" || id === "") diagnostics.push(faults.referenceNoId(item.range, {}));
    else if (references.has(id)) diagnostics.push(faults.referenceTwice(item.range, { key: id }));
    else references.set(id, toReference(item, id));
  }
  return { references, diagnostics };
}

/** Records of a whole file: a list, or a map that holds it as `references`. Ranges count from the text's start. */
export function readSourceFile(yamlText: string): ReferenceList {
  if (/^-\s/m.test(yamlText) && !/^references\s*:/m.test(yamlText)) return readBareList(yamlText);
  const { entries, diagnostics } = readYamlMap(yamlText, 0);
  const list = entries.find(({ key }) => key === "references");
  const found = list === undefined ? { references: new Map(), diagnostics: [] } : readReferenceList(list.value);
  return { references: found.references, diagnostics: [...diagnostics, ...found.diagnostics] };
}

/** The library's or a project's sources by key. What cannot be read is left out; `readSourceFile` says what. */
export const readSources = (yamlText: string): ReadonlyMap<string, Reference> => readSourceFile(yamlText).references;

/** Item by item, so that one that cannot be read leaves the others. */
function readBareList(text: string): ReferenceList {
  const items: Data[] = [];
  const diagnostics: Diagnostic[] = [];
  const starts = [...text.matchAll(/^-\s/gm)].map((match) => match.index);
  for (const [i, from] of starts.entries()) {
    const found = readYaml(text.slice(from, starts[i + 1] ?? text.length), from);
    diagnostics.push(...found.diagnostics);
    if (found.data?.kind === "list") items.push(...found.data.items);
  }
  const list = readReferenceList({ kind: "list", items, range: range(0, text.length) });
  return { references: list.references, diagnostics: [...diagnostics, ...list.diagnostics] };
}

function toReference(record: DataMap, id: string): Reference {
  return {
    id,
    type: textOf(record, "type"),
    title: textOf(record, "title"),
    number: textOf(record, "number"),
    authors: authorsOf(record),
    year: yearOf(record),
    container: textOf(record, "container-title"),
    publisher: textOf(record, "publisher"),
    edition: textOf(record, "edition"),
    version: textOf(record, "version"),
    volume: textOf(record, "volume"),
    issue: textOf(record, "issue"),
    page: textOf(record, "page"),
    doi: textOf(record, "DOI"),
    url: textOf(record, "URL"),
    note: textOf(record, "note"),
    range: record.range,
  };
}

const fieldOf = (record: DataMap, key: string): Data | undefined => record.entries.find((entry) => entry.key === key)?.value;

function textOf(record: DataMap, key: string): string {
  const value = fieldOf(record, key);
  return value?.kind === "text" ? value.text.trim() : "";
}

function authorsOf(record: DataMap): readonly Author[] {
  const value = fieldOf(record, "author");
  const people = value === undefined ? [] : value.kind === "list" ? value.items : [value];
  return people.flatMap((person) => {
    if (person.kind === "text") return person.text === "" ? [] : [{ family: person.text, given: "" }];
    if (person.kind !== "map") return [];
    const family = textOf(person, "family") || textOf(person, "literal") || textOf(person, "name");
    const particle = textOf(person, "non-dropping-particle");
    return family === "" ? [] : [{ family: particle === "" ? family : `${particle} ${family}`, given: textOf(person, "given") }];
  });
}

/** `2019`, `2019-03`, `{ year: 2019 }`, `{ date-parts: [[2019, 3]] }`, a list of such. */
function yearOf(record: DataMap): string {
  const value = fieldOf(record, "issued");
  if (value === undefined) return "";
  const words = flat(value).join(" ");
  return /\b\d{4}\b/.exec(words)?.[0] ?? words;
}

function flat(data: Data): string[] {
  if (data.kind === "text") return [data.text];
  return data.kind === "list" ? data.items.flatMap(flat) : data.entries.flatMap(({ value }) => flat(value));
}
