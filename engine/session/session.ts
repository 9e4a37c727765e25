// The session: the only place that joins the phases. Files and edits go in, snapshots come out.

import { applyChanges, type TextChange } from "../base/index.ts";
import { editNotebook, readNotebook } from "../notebook/index.ts";
import { defaultLimits, type Limits, type RunContext } from "../run/index.ts";
import { tidy } from "../syntax/index.ts";
import { metricSet } from "../units/index.ts";
import type { Library, Session } from "./api.ts";
import { buildValues } from "./build-values.ts";
import { completeAt } from "./complete.ts";
import { createEngine, type EngineState } from "./engine-state.ts";
import { evaluateExpression } from "./evaluate.ts";
import { type FileState, newFile } from "./file-state.ts";
import { applyReading, type Files, fileCame, prefixTarget, readFileText } from "./files.ts";
import { hoverAt } from "./hover.ts";
import { readLibrary } from "./library-names.ts";
import { isCsv } from "./paths.ts";
import { createReporter, type Reporter } from "./reporter.ts";
import { describeWith } from "./show.ts";
import { createTools } from "./tools.ts";
import { traceName } from "./trace-name.ts";

/** What the parts of a session share. */
export interface SessionState {
  readonly engine: EngineState;
  readonly files: Files;
  /** Brings types, then values, up to date. */
  readonly update: () => void;
}

/** A session over a library. Nothing is read from outside: a file that a `use` line names must be put in. */
export function createSession(library: Library, limits: Limits = defaultLimits): Session {
  const files: Files = { notebooks: new Map(), csv: new Map() };
  const names = readLibrary(library);
  const context: RunContext = {
    natives: library.natives,
    limits,
    describe: describeWith({ preferences: metricSet, digits: 4, record: () => undefined }),
  };
  const engine = createEngine(
    names,
    context,
    (file, name) => prefixTarget(files, file, name),
    (file) => files.notebooks.get(file)?.byName.keys() ?? [],
  );
  const reporter: Reporter = createReporter(engine, files);

  const update = (): void => {
    const types = engine.types.update();
    const kinds = buildValues(engine, types.computed);
    const values = engine.values.graph.update();
    reporter.ran(types, values, kinds);
  };
  const state: SessionState = { engine, files, update };

  const take = (file: FileState, text: string): void => {
    reporter.edited(file, applyReading(engine, files, file, readNotebook(text)));
  };

  return {
    put: (file, raw) => {
      const text = readFileText(raw);
      if (isCsv(file)) {
        files.csv.set(file, text);
        fileCame(engine, files, file);
        return;
      }
      const known = files.notebooks.get(file);
      const notebook = known ?? newFile(file);
      files.notebooks.set(file, notebook);
      if (known === undefined) fileCame(engine, files, file);
      take(notebook, text);
    },
    remove: (file) => {
      const notebook = files.notebooks.get(file);
      if (notebook !== undefined) take(notebook, "");
      files.notebooks.delete(file);
      files.csv.delete(file);
      reporter.forget(file);
      fileCame(engine, files, file);
    },
    edit: (file, changes: readonly TextChange[]) => {
      const csv = files.csv.get(file);
      if (csv !== undefined) {
        files.csv.set(file, applyChanges(csv, changes));
        fileCame(engine, files, file);
        return;
      }
      const notebook = files.notebooks.get(file);
      if (notebook === undefined) return;
      reporter.edited(notebook, applyReading(engine, files, notebook, editNotebook(notebook.notebook, changes)));
    },
    text: (file) => files.csv.get(file) ?? files.notebooks.get(file)?.notebook.text ?? "",
    files: () => [...files.notebooks.keys(), ...files.csv.keys()],
    snapshot: (file) => {
      update();
      return reporter.snapshot(file);
    },
    outputs: (file) => {
      update();
      return reporter.outputs(file);
    },
    complete: (file, offset) => {
      update();
      return completeAt(state, file, offset);
    },
    hover: (file, offset) => {
      update();
      return hoverAt(state, reporter, file, offset);
    },
    trace: (file, name, open) => {
      update();
      return traceName(state, reporter, file, name, open);
    },
    evaluate: (expression, options) => evaluateExpression(state, reporter, expression, options),
    tidy: (file) => tidyFile(files.notebooks.get(file)),
    tools: createTools(state, reporter),
  };
}

/** The text with the columns of every calc fence aligned. */
function tidyFile(file: FileState | undefined): string {
  if (file === undefined) return "";
  const { notebook } = file;
  const changes: TextChange[] = [];
  notebook.parts.forEach((part, at) => {
    if (part.kind !== "calc") return;
    const start = notebook.starts[at] ?? 0;
    const texts = tidy(
      part.chunks.map((chunk) => chunk.text),
      part.gaps,
    );
    texts.forEach((text, i) => {
      const old = part.chunks[i];
      const from = start + (part.starts[i] ?? 0);
      if (old !== undefined && text !== old.text) changes.push({ from, to: from + old.text.length, insert: text });
    });
  });
  return applyChanges(notebook.text, changes);
}
