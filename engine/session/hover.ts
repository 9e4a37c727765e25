// What is known of the name under the pointer.

import { intrinsicTypes } from "../check/index.ts";
import { chunkAt, citation, readReference } from "../notebook/index.ts";
import { intrinsics } from "../run/index.ts";
import { normalName, tokens } from "../syntax/index.ts";
import type { Hover } from "./api.ts";
import { headText } from "./complete.ts";
import { keysOf } from "./engine-state.ts";
import type { Exported } from "./exported.ts";
import type { Reporter } from "./reporter.ts";
import type { SessionState } from "./session.ts";
import { showValue } from "./show.ts";

export function hoverAt(state: SessionState, reporter: Reporter, file: string, offset: number): Hover | undefined {
  const notebook = state.files.notebooks.get(file);
  const found = notebook === undefined ? undefined : chunkAt(notebook.notebook, offset);
  if (notebook === undefined || found === undefined) return undefined;
  const at = offset - found.from;
  const token = tokens(found.chunk.text).find(
    (each) => each.from <= at && at < each.to && (each.kind === "name" || each.kind === "type" || each.kind === "field"),
  );
  if (token === undefined) return undefined;
  const text = found.chunk.text.slice(token.from, token.to);
  const name = normalName(text);
  const place = { from: found.from + token.from, to: found.from + token.to };
  const keys = keysOf(state.engine, file, name);
  state.update();
  for (const key of keys) {
    const exported = state.engine.types.value(key) as Exported | undefined;
    if (exported === undefined || exported.entry.entry === "faulty") continue;
    const statement = state.engine.byKey.get(key);
    const worth = state.engine.values.worth(key);
    const context = reporter.context(notebook);
    const { columns } = statement?.tree ?? {};
    const value =
      exported.entry.entry === "value" && worth?.ok === true
        ? showValue(worth.value, exported.entry.type, statement?.checked?.shownIn, context.show)
        : undefined;
    return {
      ...place,
      head: headText(text, exported.entry),
      ...(value === undefined ? {} : { value }),
      ...(columns?.note === undefined ? {} : { note: columns.note }),
      ...(columns?.reference === undefined ? {} : { citation: citation(readReference(columns.reference), context.references) }),
    };
  }
  const intrinsic = Object.hasOwn(intrinsicTypes, name) ? intrinsics[name] : undefined;
  return intrinsic === undefined ? undefined : { ...place, head: intrinsic.head, note: intrinsic.purpose };
}
