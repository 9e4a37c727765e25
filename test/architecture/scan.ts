// Reads a source file's imports, default exports and uses of what a room may not touch, from the bundler's own syntax tree.

import { parseSync } from "vite";

export interface Import {
  readonly target: string;
  /** Erased before the program runs. */
  readonly typeOnly: boolean;
}

export interface Scan {
  readonly imports: readonly Import[];
  readonly defaultExport: boolean;
  /** Names used that the file neither declares nor imports, e.g. "Date"; members count as "Math.random", ".innerHTML". */
  readonly uses: ReadonlySet<string>;
}

type Node = { readonly type: string } & Readonly<Record<string, unknown>>;

const isNode = (value: unknown): value is Node => typeof value === "object" && value !== null && typeof (value as Node).type === "string";

function childrenOf(node: Node): readonly [string, Node][] {
  return Object.entries(node).flatMap(([key, value]) =>
    (Array.isArray(value) ? value : [value]).filter(isNode).map((child): [string, Node] => [key, child]),
  );
}

const nameOf = (node: unknown): string => (isNode(node) && typeof node.name === "string" ? node.name : "");
const textOf = (node: unknown): string => (isNode(node) && typeof node.value === "string" ? node.value : "");

/** The text of an import's address: a plain literal or a template without slots; undefined when it is computed. */
function addressOf(node: unknown): string | undefined {
  if (!isNode(node)) return undefined;
  if (node.type === "Literal") return textOf(node);
  const quasis = node.type === "TemplateLiteral" && Array.isArray(node.quasis) ? node.quasis : [];
  return quasis.length === 1 ? ((quasis[0] as { value?: { cooked?: string } }).value?.cooked ?? undefined) : undefined;
}

function importOf(node: Node): Import | undefined {
  const specifiers = (node.specifiers ?? []) as readonly Node[];
  switch (node.type) {
    case "ImportDeclaration":
      // `import { type A }` keeps the import itself when the program runs; `import type` does not.
      return { target: textOf(node.source), typeOnly: node.importKind === "type" };
    case "ExportNamedDeclaration":
    case "ExportAllDeclaration":
      if (!isNode(node.source)) return undefined;
      return {
        target: textOf(node.source),
        typeOnly: node.exportKind === "type" || (specifiers.length > 0 && specifiers.every(({ exportKind }) => exportKind === "type")),
      };
    case "ImportExpression":
      return { target: addressOf(node.source) ?? "(computed)", typeOnly: false };
    case "TSImportType":
      return { target: addressOf(node.source) ?? addressOf(node.argument) ?? "(computed)", typeOnly: true };
    default:
      return undefined;
  }
}

/** Where an identifier is a name for a member or a label, not a use of a variable. */
function isPlainName(parent: Node, key: string): boolean {
  if (parent.computed === true) return false;
  if (key === "property") return parent.type === "MemberExpression";
  if (key === "key") return parent.shorthand !== true;
  if (key === "label" || key === "imported" || key === "exported") return true;
  return key === "right" && parent.type === "TSQualifiedName";
}

const DECLARING: Readonly<Record<string, readonly string[]>> = {
  VariableDeclarator: ["id"],
  FunctionDeclaration: ["id", "params"],
  FunctionExpression: ["id", "params"],
  ArrowFunctionExpression: ["params"],
  TSDeclareFunction: ["id", "params"],
  ClassDeclaration: ["id"],
  ImportSpecifier: ["local"],
  ImportDefaultSpecifier: ["local"],
  ImportNamespaceSpecifier: ["local"],
  CatchClause: ["param"],
  TSInterfaceDeclaration: ["id"],
  TSTypeAliasDeclaration: ["id"],
  TSTypeParameter: ["name"],
  TSEnumDeclaration: ["id"],
};

/** Adds the names that a declared pattern binds; the defaults and types inside it are uses, and are walked as such. */
function addBound(pattern: Node, declared: Set<string>): void {
  if (pattern.type === "Identifier") declared.add(nameOf(pattern));
  for (const [key, child] of childrenOf(pattern)) {
    if (key === "typeAnnotation" || (pattern.type === "AssignmentPattern" && key === "right")) continue;
    if (pattern.type === "Property" && key === "key") continue;
    if (/Pattern$|^Property$|^RestElement$|^Identifier$|^TSParameterProperty$/.test(child.type)) addBound(child, declared);
  }
}

function memberUse(node: Node): string | undefined {
  const { property } = node;
  return node.computed === true ? textOf(property) || undefined : nameOf(property) || undefined;
}

export function scan(file: string, source: string): Scan {
  const { program, errors } = parseSync(file, source);
  if (errors.length > 0) throw new Error(`${file}: ${errors[0]?.message}`);
  const imports: Import[] = [];
  const declared = new Set<string>();
  const used = new Set<string>();
  const members = new Set<string>();

  const visit = (node: Node, parent: Node, key: string): void => {
    const found = importOf(node);
    if (found !== undefined) imports.push(found);
    if (node.type === "Identifier" && !isPlainName(parent, key)) used.add(nameOf(node));
    if (node.type === "MemberExpression") {
      const member = memberUse(node);
      if (member !== undefined) members.add(`.${member}`).add(`${nameOf(node.object)}.${member}`);
    }
    if (node.type === "JSXAttribute") members.add(`.${nameOf(node.name)}`);
    if (node.type === "Property") members.add(`.${nameOf(node.key) || textOf(node.key)}`);
    for (const [childKey, child] of childrenOf(node)) {
      if (DECLARING[node.type]?.includes(childKey)) addBound(child, declared);
      visit(child, node, childKey);
    }
  };
  const top = program as unknown as Node;
  visit(top, top, "");

  const free = [...used].filter((name) => !declared.has(name));
  const body = (top.body ?? []) as readonly Node[];
  const renamed = body.some((node) =>
    ((node.specifiers ?? []) as readonly Node[]).some((specifier) => nameOf(specifier.exported) === "default"),
  );
  return {
    imports,
    defaultExport: renamed || body.some(({ type }) => type === "ExportDefaultDeclaration"),
    uses: new Set([...free, ...members]),
  };
}
