// What a status demands of a notebook, and what is still missing. Roles are held apart; nothing is approved by the tool.

import { readFrontMatter } from "../notebook/index.ts";
import type { LineOutput, Session } from "../session/index.ts";
import { readSignoff } from "./read-signoff.ts";
import { samePerson } from "./roles.ts";

export type DemandKind =
  | "fault"
  | "waiting"
  | "failing check"
  | "open check"
  | "assumption"
  | "title block"
  | "same person"
  | "library"
  | "not checked"
  | "mark lapsed"
  | "entry differs"
  | "successor";

/** One thing that stands in the way of a status. */
export interface Demand {
  readonly kind: DemandKind;
  /** Name, title, field or person that it is about. */
  readonly about: string;
  /** Place in the notebook's text; the title block where it has no line of its own. */
  readonly from: number;
}

/** Statuses as the front matter writes them, with what each demands: the later ones also what the earlier ones do. */
const levels: readonly string[] = ["in preparation", "under approval", "released"];

/**
 * What is missing for a status, in the order of the text. "under approval" asks for a notebook without faults and a title block;
 * "released" for checks that hold, no open mode, assumptions confirmed or accepted by name (`accepted_assumptions`), distinct
 * persons, a pinned library and standing marks. "superseded" and "withdrawn" ask for what follows it, or why.
 */
export function demandsOf(session: Session, file: string, status: string, library: string): readonly Demand[] {
  const text = session.text(file);
  const front = readFrontMatter(text);
  if (status === "superseded") return front.supersededBy === "" ? [{ kind: "successor", about: "superseded_by", from: 0 }] : [];
  if (status === "withdrawn") return front.withdrawnBecause === "" ? [{ kind: "title block", about: "withdrawn_because", from: 0 }] : [];
  const level = levels.indexOf(status);
  if (level < 1) return [];
  const outputs = session.outputs(file);
  const found: Demand[] = [...outputs.flatMap(faultsOf), ...missingFields(front.title, level)];
  if (level < 2) return found;
  found.push(...outputs.flatMap(checksOf), ...assumptionsOf(outputs, new Set(front.acceptedAssumptions)));
  const signoff = readSignoff(session, file);
  const persons = [signoff.creator, signoff.checker, signoff.approver];
  persons.forEach((person, i) => {
    if (persons.slice(0, i).some((other) => samePerson(other, person))) found.push({ kind: "same person", about: person, from: 0 });
  });
  if (front.library?.text !== library) found.push({ kind: "library", about: library, from: 0 });
  for (const { name, kind, marked } of signoff.results) {
    if (kind === "check" && marked !== "stands")
      found.push({ kind: marked === "lapsed" ? "mark lapsed" : "not checked", about: name, from: placeOf(outputs, name) });
    if (kind === "value" && marked === "lapsed") found.push({ kind: "mark lapsed", about: name, from: placeOf(outputs, name) });
  }
  for (const { of, agrees } of signoff.entries)
    if (agrees === false) found.push({ kind: "entry differs", about: of, from: placeOf(outputs, of) });
  return found;
}

const placeOf = (outputs: readonly LineOutput[], name: string): number =>
  outputs.find((output) => output.name === name || output.check?.title === name)?.from ?? 0;

function faultsOf(output: LineOutput): readonly Demand[] {
  const faults = output.diagnostics
    .filter(({ severity }) => severity === "fault")
    .map(({ message, from }): Demand => ({ kind: "fault", about: message, from }));
  if (output.waitsFor === undefined || output.waitsFor.length === 0 || faults.length > 0) return faults;
  return [{ kind: "waiting", about: output.name ?? output.check?.title ?? "a line", from: output.from }];
}

function checksOf({ check, example, from, name }: LineOutput): readonly Demand[] {
  if (check?.state === "fails") return [{ kind: "failing check", about: check.title, from }];
  if (check?.state === "open") return [{ kind: "open check", about: check.title, from }];
  if (example !== undefined && example.state !== "passes") return [{ kind: "failing check", about: name ?? "example", from }];
  return [];
}

/** Inputs that nobody stands for: assumed, or with nothing written, unless the title block accepts them by name. */
function assumptionsOf(outputs: readonly LineOutput[], accepted: ReadonlySet<string>): readonly Demand[] {
  return outputs.flatMap((output): readonly Demand[] => {
    const provenance = output.marks?.provenance;
    const weak = provenance?.level === "assumed" || provenance?.level === "unsourced";
    // "assumed rig friction, confirmed trial 4": somebody has looked.
    if (provenance?.text.includes("confirmed") === true) return [];
    if (!weak || output.input !== true || output.name === undefined || accepted.has(output.name)) return [];
    return [{ kind: "assumption", about: output.name, from: output.from }];
  });
}

const needed = {
  1: ["title", "number", "revision", "creator"],
  2: ["title", "number", "revision", "creator", "checker", "approval_person", "date"],
} as const;

function missingFields(title: Readonly<Record<string, string>>, level: number): readonly Demand[] {
  return needed[level === 1 ? 1 : 2]
    .filter((field) => (title[field] ?? "") === "")
    .map((field): Demand => ({ kind: "title block", about: field, from: 0 }));
}
