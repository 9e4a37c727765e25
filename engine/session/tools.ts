// The tools of an editor, put together over one session's state.

import { formatReference, readReference } from "../notebook/index.ts";
import { parseUnit, quantityOf } from "../units/index.ts";
import { inputSensitivities } from "./input-sensitivities.ts";
import { callOf, fittingAt, libraryCard, libraryListings } from "./library-search.ts";
import { definitionOf, nameAt } from "./name-places.ts";
import { renameEdits } from "./rename.ts";
import type { Reporter } from "./reporter.ts";
import { reviewOf } from "./review.ts";
import type { SessionState } from "./session.ts";
import type { Statement } from "./statement.ts";
import { statementOf } from "./statement-of.ts";
import type { SessionTools } from "./tools-api.ts";
import { unitChoices } from "./unit-choices.ts";
import { keyOfMarks } from "./values.ts";

export function createTools(state: SessionState, reporter: Reporter): SessionTools {
  const { engine, files } = state;
  const current = <T>(give: () => T): T => {
    state.update();
    return give();
  };
  return {
    setSystem: (system) => reporter.setSystem(system === "written" ? undefined : system),
    unitChoices: (file, id) => current(() => unitChoices(state, reporter, file, id)),
    sensitivities: (file, id, from, count) => current(() => inputSensitivities(state, file, id, from, count)),
    readers: (file, id) => current(() => readersOf(state, file, id)),
    nameAt: (file, offset) => nameAt(state, file, offset),
    definitionOf: (file, offset) => current(() => definitionOf(state, file, offset)),
    moduleText: (module) => engine.library.library.modules.find(({ name }) => name === module)?.text ?? "",
    library: (from) => libraryListings(state, from),
    quantityOfUnit: (text) => {
      const read = parseUnit(text, { leadingOne: true });
      return "problem" in read ? "" : (quantityOf(read.unit.dimension, read.unit.kind)?.name ?? "");
    },
    libraryCard: (name) => libraryCard(state, name),
    fitting: (file, offset) => current(() => fittingAt(state, file, offset)),
    callOf: (file, name) => callOf(state, file, name),
    citations: (file, id) => {
      const notebook = files.notebooks.get(file);
      const statement = statementOf(state, file, id);
      if (notebook === undefined || statement === undefined) return [];
      const references = reporter.context(notebook).references;
      return keysCited(statement).map((key) => {
        const reference = references.get(key);
        const alsoAt = [...notebook.statements.values()].filter((other) => other !== statement && keysCited(other).includes(key));
        return { entry: reference === undefined ? `@${key}` : formatReference(reference), alsoAt: alsoAt.map((other) => other.id) };
      });
    },
    review: (file) => current(() => reviewOf(state, file)),
    rename: (file, name, newName) => current(() => renameEdits(state, file, name, newName)),
  };
}

function keysCited(statement: Statement): readonly string[] {
  const text = statement.csv?.reference?.text ?? statement.tree.columns?.reference;
  return text === undefined ? [] : readReference(text).items.flatMap(({ key }) => (key === undefined ? [] : [key]));
}

function readersOf(state: SessionState, file: string, id: string): readonly string[] {
  const statement = statementOf(state, file, id);
  if (statement === undefined) return [];
  const own = `${file}#`;
  return state.engine.values.graph
    .dependants(statement.key)
    .filter((key) => keyOfMarks(key) === undefined && key.startsWith(own) && state.engine.byKey.has(key))
    .map((key) => key.slice(own.length))
    .sort();
}
