// What a tree knows of the places in its text that the lexer cannot.

export type TokenKind =
  | "keyword"
  | "name"
  | "field"
  | "type"
  | "number"
  | "unit"
  | "text"
  | "operator"
  | "bracket"
  | "punctuation"
  | "comment"
  | "bar"
  | "note"
  | "reference"
  /** A sign that the language does not know, or a refused form. */
  | "unknown";

export interface TreeMark {
  readonly kind: TokenKind;
  readonly to: number;
}

const FIELD_LISTS: ReadonlySet<string> = new Set(["fields", "heads"]);

/** By place in the text: every name, field, type and unit of a tree. A soft word that is none of them is a word of the language. */
export function treeMarks(tree: unknown): ReadonlyMap<number, TreeMark> {
  const known = new Map<number, TreeMark>();
  markTree(tree, undefined, known);
  return known;
}

/** Marks names, fields, types and units by their place; a walk over the plain data of the tree. */
function markTree(value: unknown, role: TokenKind | undefined, known: Map<number, TreeMark>, list?: string): void {
  if (typeof value !== "object" || value === null) return;
  if (Array.isArray(value)) {
    for (const item of value) markTree(item, role, known, list);
    return;
  }
  const node = value as Readonly<Record<string, unknown>>;
  const range = node.range as { readonly from: number; readonly to: number } | undefined;
  if (typeof node.text === "string" && range !== undefined && (node.kind === undefined || node.kind === "name")) {
    known.set(range.from, { kind: typeof node.name === "string" ? (role ?? "name") : "unit", to: range.to });
    return;
  }
  for (const [key, child] of Object.entries(node)) {
    if (key === "range" || key === "columns") continue;
    const isField =
      key === "field" || (key === "by" && node.kind === "group") || (key === "name" && list !== undefined && FIELD_LISTS.has(list));
    const declares = key === "name" && (node.kind === "recordDeclaration" || node.kind === "family");
    const isType = key === "type" || key === "members" || key === "member" || declares;
    const inType =
      role === "type" &&
      (node.kind === "member" || node.kind === "named" || node.kind === "list" || node.kind === "maybe" || node.kind === "record");
    const next = isType || (inType && key !== "heads") ? "type" : isField ? "field" : undefined;
    markTree(child, next, known, key);
  }
}
