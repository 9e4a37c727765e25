// A small session for tests of the editor alone: it knows `name = number unit`, products of two names and checks of two names.

import type { TextChange } from "../../engine/base/index.ts";
import { editNotebook, liveValues, type Notebook, placedChunks, readFrontMatter, readNotebook } from "../../engine/notebook/index.ts";
import type { LineOutput, Session, Shown, Snapshot, TitleBlock } from "../../engine/session/index.ts";
import { noTools } from "../session/no-tools.ts";

interface Held {
  readonly notebook: Notebook;
  readonly last: ReadonlyMap<string, LineOutput>;
  readonly revision: number;
}

const DEFINITION = /^([A-Za-z_]\w*)\s*=\s*([^|]*)(?:\|([^|]*))?(?:\|([^|]*))?/;
const CHECK = /^check\s+(\w+)\s*<=\s*([^|]*?)\s*(?:\|([^|]*))?(?:\|.*)?$/;

/** Faithful to the contract of `Session` where the editor leans on it: ids, order, changed and removed outputs. */
export function fakeSession(): Session {
  const held = new Map<string, Held>();
  const need = (file: string): Held => {
    const found = held.get(file);
    if (found === undefined) throw new Error(`no file ${file}`);
    return found;
  };
  return {
    put: (file, text) => void held.set(file, { notebook: readNotebook(text), last: new Map(), revision: 0 }),
    remove: (file) => void held.delete(file),
    edit(file: string, changes: readonly TextChange[]) {
      const before = need(file);
      held.set(file, { ...before, notebook: editNotebook(before.notebook, changes) });
    },
    text: (file) => need(file).notebook.text,
    files: () => [...held.keys()],
    snapshot(file): Snapshot {
      const before = need(file);
      const outputs = evaluate(before.notebook);
      const now = new Map(outputs.map((output) => [output.id, output]));
      const changed = outputs.filter((output) => !same(before.last.get(output.id), output));
      held.set(file, { ...before, last: now, revision: before.revision + 1 });
      const failing = outputs.filter(({ check }) => check?.state === "fails").length;
      return {
        revision: before.revision + 1,
        file,
        changed,
        removed: [...before.last.keys()].filter((id) => !now.has(id)),
        order: { ids: outputs.map(({ id }) => id), from: outputs.map(({ from }) => from), to: outputs.map(({ to }) => to) },
        title: titleOf(before.notebook),
        counts: {
          faults: outputs.flatMap(({ diagnostics }) => diagnostics).length,
          failing,
          checks: outputs.filter(({ check }) => check !== undefined).length,
          open: 0,
        },
        reran: changed.map(({ id }) => id),
      };
    },
    outputs: (file) => evaluate(need(file).notebook),
    complete: (file, offset) => ({
      from: offset,
      to: offset,
      options: evaluate(need(file).notebook).flatMap(({ name }) =>
        name === undefined ? [] : [{ label: name, insert: name, kind: "name" as const, detail: "" }],
      ),
    }),
    hover: () => undefined,
    trace: () => undefined,
    evaluate: () => ({ diagnostics: [] }),
    tidy: (file) => need(file).notebook.text,
    tools: noTools,
  };
}

interface Amount {
  readonly value: number;
  readonly unit: string;
}

/** Sums of products of `number unit` and names; the unit of a product is that of its parts in a row. */
function compute(working: string, values: ReadonlyMap<string, Amount>): { readonly value?: Amount; readonly waits: string } {
  let total: Amount | undefined;
  for (const term of working.split("+")) {
    let product: Amount = { value: 1, unit: "" };
    for (const factor of term.split("*").map((part) => part.trim())) {
      const number = /^(-?[\d.]+)\s*(\S*)/.exec(factor);
      const found = number === null ? values.get(factor) : { value: Number(number[1]), unit: number[2] ?? "" };
      if (found === undefined || (found.unit === "furlong" && working !== factor)) return { waits: factor };
      product = { value: product.value * found.value, unit: [product.unit, found.unit].filter((unit) => unit !== "").join("·") };
    }
    total = total === undefined ? product : { value: total.value + product.value, unit: product.unit };
  }
  return total === undefined ? { waits: "" } : { value: total, waits: "" };
}

const titleOf = (notebook: Notebook): TitleBlock => readFrontMatter(notebook.text).title;

const same = (a: LineOutput | undefined, b: LineOutput): boolean =>
  a !== undefined && JSON.stringify({ ...a, from: 0, to: 0 }) === JSON.stringify({ ...b, from: 0, to: 0 });

const shown = (value: number, unit: string): Shown => {
  const number = String(Number(value.toPrecision(4)));
  return { text: unit === "" ? number : `${number} ${unit}`, number, unit, full: String(value) };
};

function evaluate(notebook: Notebook): LineOutput[] {
  const values = new Map<string, Amount>();
  const outputs: LineOutput[] = [];
  for (const { chunk, from } of placedChunks(notebook)) {
    const to = from + chunk.text.length;
    const base = { from, to, citation: "", note: "", diagnostics: [] };
    const check = CHECK.exec(chunk.text);
    if (check !== null) {
      const [demand, capacity] = [values.get(check[1] as string), compute((check[2] as string).trim(), values).value];
      const note = (check[3] ?? "").trim();
      const used = demand === undefined || capacity === undefined ? undefined : demand.value / capacity.value;
      outputs.push({
        ...base,
        id: `check ${chunk.text}`,
        kind: "check",
        note,
        check: {
          title: note,
          state: used === undefined ? "open" : used <= 1 ? "holds" : "fails",
          ...(used === undefined ? {} : { utilisation: used, utilisationText: used.toFixed(2), marginText: (1 / used - 1).toFixed(2) }),
        },
      });
      continue;
    }
    const found = DEFINITION.exec(chunk.text);
    if (found === null) continue;
    const [, name = "", working = "", note = "", citation = ""] = found;
    const common = { ...base, id: name, kind: "definition" as const, name, note: note.trim(), citation: citation.trim() };
    const { value, waits } = compute(working.trim(), values);
    if (value !== undefined) values.set(name, value);
    if (value === undefined) outputs.push({ ...common, waitsFor: [waits] });
    else if (value.unit === "furlong") {
      const at = from + chunk.text.indexOf("furlong");
      const diagnostics = [
        {
          code: "unknown-unit",
          severity: "fault" as const,
          from: at,
          to: at + 7,
          message: "furlong is not a unit here.",
          mends: [{ label: "mm", changes: [{ from: at, to: at + 7, insert: "mm" }] }],
          related: [],
        },
      ];
      outputs.push({ ...common, diagnostics });
    } else outputs.push({ ...common, value: shown(value.value, value.unit) });
  }
  notebook.parts.forEach((part, index) => {
    if (part.kind !== "prose") return;
    for (const live of liveValues(part.text)) {
      const value = values.get(live.inside.trim());
      const from = (notebook.starts[index] as number) + live.from;
      outputs.push({
        id: `live ${live.inside} ${outputs.length}`,
        kind: "live",
        from,
        to: from + live.to - live.from,
        name: live.inside.trim(),
        citation: "",
        note: "",
        diagnostics: [],
        ...(value === undefined ? {} : { value: shown(value.value, value.unit) }),
      });
    }
  });
  return outputs.sort((a, b) => a.from - b.from);
}
