// What type is wanted at a place: of a parameter, of the other side of a comparison, of `as` or a type written on the line.

import type { Entry, Type } from "../check/index.ts";
import { chunkAt } from "../notebook/index.ts";
import { type Expression, type StatementTree, visit } from "../syntax/index.ts";
import { kindsAgree } from "../units/index.ts";
import { fullName } from "./engine-state.ts";
import type { Exported } from "./exported.ts";
import { answer } from "./live.ts";
import type { SessionState } from "./session.ts";
import { parseChunk } from "./statement.ts";

/** The type asked for at a place: of a parameter, of the other side of a comparison, of `as` or a type written on the line. */
export function wantedAt(state: SessionState, file: string, offset: number): Type | undefined {
  const notebook = state.files.notebooks.get(file);
  const found = notebook === undefined ? undefined : chunkAt(notebook.notebook, offset);
  if (notebook === undefined || found === undefined) return undefined;
  const { tree } = parseChunk(found.chunk);
  const at = offset - found.from;
  const inside = ({ range }: Expression): boolean => range.from <= at && at <= range.to;
  let wanted: Type | undefined;
  for (const expression of topExpressions(tree)) {
    visit(expression, (node) => {
      if (!inside(node)) return false;
      if (node.kind === "call") {
        const index = node.arguments.findIndex((argument) => inside(argument.value));
        const name = node.callee.kind === "name" ? node.callee.name : undefined;
        const entry = name === undefined ? undefined : (entryOf(state, fullName(file, name)) ?? entryOf(state, name));
        if (entry?.entry === "formula" && index >= 0) {
          const { parameters } = entry.type;
          const called = node.arguments[index]?.name?.name;
          wanted = (called === undefined ? parameters[index] : parameters.find((each) => each.name === called))?.type ?? wanted;
        }
      }
      if (node.kind === "compare") {
        const other = node.operands.find((operand) => !inside(operand));
        if (other !== undefined && other.kind !== "hole")
          wanted = known(answer(state.engine, file, other, undefined).checked.type) ?? wanted;
      }
      return undefined;
    });
  }
  if (wanted !== undefined) return wanted;
  const statement = notebook.statements.get(found.chunk);
  return tree.kind === "definition" && (tree.unit !== undefined || tree.type !== undefined) ? known(statement?.checked?.type) : undefined;
}

const known = (type: Type | undefined): Type | undefined => (type === undefined || type.type === "unknown" ? undefined : type);

function topExpressions(tree: StatementTree): readonly Expression[] {
  if (tree.kind === "definition") return [tree.value];
  if (tree.kind === "check") return [tree.condition];
  return tree.kind === "example" ? [tree.actual, tree.expected] : [];
}

/** Of a key, where it is declared without a fault. */
export function entryOf(state: SessionState, key: string): Entry | undefined {
  const entry = (state.engine.types.value(key) as Exported | undefined)?.entry;
  return entry === undefined || entry.entry === "faulty" || entry.entry === "prefix" || entry.entry === "native" ? undefined : entry;
}

/** Whether a value of one type may stand where the other is wanted. */
export function agree(a: Type, b: Type): boolean {
  if (a.type !== b.type) return false;
  if (a.type === "quantity" && b.type === "quantity") return a.dimension === b.dimension && kindsAgree(a.kind, b.kind) !== undefined;
  if ((a.type === "list" || a.type === "maybe") && b.type === a.type) return agree(a.of, b.of);
  if ((a.type === "record" || a.type === "family") && b.type === a.type) return a.name === b.name;
  return a.type !== "table" && a.type !== "unknown";
}
