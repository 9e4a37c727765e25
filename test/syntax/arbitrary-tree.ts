// Generated trees of every kind of node, as the parser makes them from a text.

import fc from "fast-check";
import type {
  Argument,
  Columns,
  Expression,
  FieldDeclaration,
  FieldValue,
  Identifier,
  MatchArm,
  Member,
  NameUse,
  NumberLiteral,
  Parameter,
  Scatter,
  StatementTree,
  Step,
  TableHead,
  TextLiteral,
  TypeExpression,
  UnitText,
} from "../../engine/syntax/index.ts";

const range = { from: 0, to: 0 };
/** Without the keys that are undefined, as the parser leaves them out. */
const defined = <T extends object>(value: { readonly [K in keyof T]: T[K] | undefined }): T =>
  Object.fromEntries(Object.entries(value).filter(([, one]) => one !== undefined)) as T;
const maybe = <T>(arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> => fc.option(arbitrary, { nil: undefined, freq: 2 });

const word = fc.constantFrom(
  "a",
  "F_max",
  "d",
  "N",
  "x",
  "in_",
  "L_e",
  "step",
  "of",
  "by",
  "factor",
  "over",
  "result",
  "abs",
  "τ",
  "k2",
  "Österreich",
  "mm",
);
const fieldWord = fc.oneof(word, fc.constantFrom("from", "in", "if"));
const names: Readonly<Record<string, string>> = { τ: "tau" };
const asIdentifier = (text: string): Identifier => ({ name: names[text] ?? text, text, range });
const identifier = word.map(asIdentifier);
const plainText = fc.string({ unit: fc.constantFrom("a", " ", "|", "#", "\\", '"', "é", "{", "M5"), maxLength: 8 });
const quoted = (value: string): string => `"${value.replace(/["\\]/g, "\\$&")}"`;
const field = fc.oneof(
  { weight: 4, arbitrary: fieldWord.map(asIdentifier) },
  { weight: 1, arbitrary: plainText.map((value): Identifier => ({ name: value, text: quoted(value), range })) },
);
const wordField = fieldWord.map(asIdentifier);

const nameUse = identifier.map((one): NameUse => ({ kind: "name", ...one }));
const path: fc.Arbitrary<NameUse | Member> = fc.oneof(
  nameUse,
  fc.tuple(nameUse, wordField).map(([of, one]): Member => ({ kind: "member", of, field: one, range })),
);
const unit = fc
  .constantFrom("mm", "N/mm^2", "N m", "W/(m K)", "K^-1", "%", "°C", "in", "m^(1/2)", "mm²", "N·m", "lbf*in")
  .map((text): UnitText => ({ text, range }));
const headUnit = fc.constantFrom("N", "1", "N/mm^2", "1/K", "W/(m K)", "in", "°C", "%").map((text): UnitText => ({ text, range }));
const shownUnit = fc.oneof(
  unit,
  fc.constantFrom("1/K", "1").map((text): UnitText => ({ text, range })),
);
const digits = fc.constantFrom("0", "1", "12.7", "1e-6", "2.5E3", "0.001", "007");
const number = fc
  .record({ digits, unit: maybe(unit), absolute: fc.constant(false) })
  .map((one): NumberLiteral => defined({ kind: "number", ...one, range }));
const absolute = digits.map((text): NumberLiteral => ({ kind: "number", digits: text, unit: { text: "K", range }, absolute: true, range }));
const text = plainText.map((value): TextLiteral => ({ kind: "text", value, range }));
const constant: fc.Arbitrary<Expression> = fc.oneof(
  fc.boolean().map((value): Expression => ({ kind: "truth", value, range })),
  fc.constant<Expression>({ kind: "none", range }),
);

const head = fc.record({ name: field, unit: maybe(headUnit) }).map((one): TableHead => defined({ ...one, range }));
const type: fc.Arbitrary<TypeExpression> = fc.letrec<{ type: TypeExpression }>((tie) => ({
  type: fc.oneof(
    { depthSize: "small", withCrossShrink: true },
    path.map((name): TypeExpression => ({ kind: "named", name, range })),
    headUnit.map((one): TypeExpression => ({ kind: "unit", unit: one, range })),
    fc.array(head, { maxLength: 3 }).map((heads): TypeExpression => ({ kind: "columns", heads, range })),
    fc.array(text, { minLength: 1, maxLength: 3 }).map((values): TypeExpression => ({ kind: "choices", values, range })),
    fc.tuple(fc.constantFrom("list" as const, "maybe" as const), tie("type")).map(([kind, of]): TypeExpression => ({ kind, of, range })),
  ),
})).type;

const note = fc
  .string({ unit: fc.constantFrom("a", " ", "|", "#", '"', "@log7", "(", "}"), minLength: 1, maxLength: 8 })
  .map((value) => value.trim())
  .filter((value) => value !== "");
const columns: fc.Arbitrary<Columns | undefined> = fc
  .record({ note: maybe(note), reference: maybe(note) })
  .map((one) => (one.note === undefined && one.reference === undefined ? undefined : defined<Columns>({ ...one, range })));

const cell: fc.Arbitrary<Expression> = fc.oneof(
  number,
  text,
  constant,
  fc
    .tuple(fc.constantFrom("-" as const, "+" as const), number)
    .map(([operator, of]): Expression => ({ kind: "unary", operator, of, range })),
);
const table: fc.Arbitrary<Expression> = fc
  .integer({ min: 1, max: 3 })
  .chain((width) =>
    fc
      .tuple(
        fc.array(head, { minLength: width, maxLength: width }),
        fc.array(fc.array(cell, { minLength: width, maxLength: width }), { maxLength: 3 }),
      )
      .map(([heads, rows]): Expression => ({ kind: "table", heads, rows, range })),
  );

const { expression, value } = fc.letrec<{
  expression: Expression;
  value: Expression;
  fields: readonly FieldValue[];
  argument: Argument;
  arm: MatchArm;
  spread: Scatter["spread"];
}>((tie) => {
  const e = tie("expression") as fc.Arbitrary<Expression>;
  const node = <T extends object>(shape: { [K in keyof T]: fc.Arbitrary<T[K]> }): fc.Arbitrary<Expression> =>
    fc.record(shape).map((one) => defined({ ...one, range }) as unknown as Expression);
  return {
    expression: fc.oneof(
      { depthSize: "small", maxDepth: 4, withCrossShrink: true },
      nameUse,
      number,
      absolute,
      text,
      constant,
      field.map((one): Expression => ({ kind: "column", field: one, range })),
      node({ kind: fc.constant("member"), of: e, field }),
      node({ kind: fc.constant("unary"), operator: fc.constantFrom("-", "+", "not"), of: e }),
      node({
        kind: fc.constant("binary"),
        operator: fc.constantFrom("+", "-", "*", "/", "^", "and", "or"),
        operatorRange: fc.constant(range),
        left: e,
        right: e,
      }),
      fc
        .array(fc.tuple(fc.constantFrom("<", "<=", ">", ">=", "==", "!=") as fc.Arbitrary<"<">, e), { minLength: 1, maxLength: 2 })
        .chain((pairs) =>
          e.map(
            (first): Expression => ({
              kind: "compare",
              operands: [first, ...pairs.map((one) => one[1])],
              operators: pairs.map((one) => one[0]),
              range,
            }),
          ),
        ),
      // biome-ignore lint/suspicious/noThenProperty: the branch of an if, as the tree names it
      node({ kind: fc.constant("if"), condition: e, then: e, otherwise: e }),
      node({ kind: fc.constant("call"), callee: path, arguments: fc.array(tie("argument"), { maxLength: 3 }) }),
      node({ kind: fc.constant("list"), items: fc.array(tie("value"), { maxLength: 3 }) }),
      node({ kind: fc.constant("comprehension"), element: e, variable: identifier, source: e, condition: maybe(e) }),
      node({ kind: fc.constant("accumulate"), state: identifier, start: e, variable: identifier, source: e, body: e }),
      node({ kind: fc.constant("index"), of: e, index: e }),
      node({ kind: fc.constant("range"), from: e, to: e, step: maybe(e) }),
      node({ kind: fc.constant("record"), type: path, fields: tie("fields") }),
      node({ kind: fc.constant("with"), of: e, fields: tie("fields") }),
      table,
      node({ kind: fc.constant("where"), of: e, condition: e }),
      node({ kind: fc.constant("group"), of: e, by: fc.array(field, { minLength: 1, maxLength: 2 }), fields: tie("fields") }),
      node({ kind: fc.constant("match"), of: e, arms: fc.array(tie("arm"), { maxLength: 3 }) }),
      node({
        kind: fc.constant("study"),
        subjects: fc.array(e, { minLength: 1, maxLength: 2 }),
        axes: fc.array(fc.record({ variable: identifier, values: e, range: fc.constant(range) }), { minLength: 1, maxLength: 2 }),
      }),
      node({ kind: fc.constant("solve"), variable: identifier, type: maybe(type), from: e, to: e, condition: e }),
    ),
    value: fc.oneof(
      { weight: 5, arbitrary: e },
      {
        weight: 1,
        arbitrary: fc.tuple(e, tie("spread") as fc.Arbitrary<Scatter["spread"]>, number).map(
          ([nominal, spread, literal]): Expression => ({
            kind: "scatter",
            nominal: spread.kind === "unequal" ? literal : nominal,
            spread,
            range,
          }),
        ),
      },
    ),
    spread: fc.oneof(
      // A literal before `of` would be a share.
      e.map((by): Scatter["spread"] => ({ kind: "limits", by })),
      fc.tuple(number, digits).map(([minus, plus]): Scatter["spread"] => ({ kind: "unequal", plus: { ...minus, digits: plus }, minus })),
      fc.tuple(number, e).map(([share, of]): Scatter["spread"] => ({ kind: "share", share, of })),
      fc.tuple(e, maybe(number)).map(([by, count]): Scatter["spread"] => defined({ kind: "deviation", by, count }) as Scatter["spread"]),
    ),
    fields: fc.array(
      fc
        .record({ name: wordField, value: tie("value") as fc.Arbitrary<Expression>, unit: maybe(shownUnit), columns })
        .map((one): FieldValue => defined({ ...one, range })),
      { maxLength: 3 },
    ),
    argument: fc.record({ name: maybe(identifier), value: e, unit: maybe(shownUnit) }).map((one): Argument => defined({ ...one, range })),
    arm: fc
      .record({
        member: fc.oneof(
          fc.constant({ kind: "none" as const }),
          path.map((one) => ({ kind: "record" as const, type: one })),
          fc.constant({ kind: "some" as const }),
        ),
        variable: maybe(identifier),
        body: e,
      })
      .map((one): MatchArm => defined({ ...one, ...(one.member.kind === "some" ? { variable: asIdentifier("v") } : {}), range })),
  };
});

const parameter = fc
  .record({ name: identifier, type: maybe(type), default: maybe(expression) })
  .map((one): Parameter => defined({ ...one, range }));
const shown = maybe(shownUnit);
const step: fc.Arbitrary<Step> = fc.oneof(
  fc
    .record({
      kind: fc.constant("step" as const),
      name: identifier.filter((one) => one.name !== "result"),
      type: maybe(type),
      value: expression,
      unit: shown,
      columns,
    })
    .map((one): Step => defined({ ...one, range })),
  fc
    .record({ kind: fc.constantFrom("require" as const, "valid" as const), value: expression, columns })
    .map((one): Step => defined({ ...one, range })),
);
const result = fc
  .record({ kind: fc.constant("result" as const), type: maybe(type), value: expression, unit: shown, columns })
  .map((one): Step => defined({ ...one, range }));
const fieldDeclaration = fc
  .record({ name: wordField, type: maybe(type), default: maybe(value), columns })
  .map((one): FieldDeclaration => defined({ ...one, range }));

const statementOf = <T extends object>(shape: { [K in keyof T]: fc.Arbitrary<T[K]> }): fc.Arbitrary<StatementTree> =>
  fc
    .record({ ...shape, columns } as unknown as Record<string, fc.Arbitrary<unknown>>)
    .map((one) => defined({ ...one, range, working: range }) as unknown as StatementTree);

const head2 = { name: identifier, parameters: fc.array(parameter, { maxLength: 3 }), type: maybe(type) };

/** Every kind of statement but the broken one and the remark. */
export const statement: fc.Arbitrary<StatementTree> = fc.oneof(
  statementOf({
    kind: fc.constant("definition"),
    name: identifier,
    type: maybe(type),
    value,
    unit: shown,
    within: maybe(fc.record({ range: fc.constant(range), from: expression, to: expression })),
  }),
  statementOf({ kind: fc.constant("check"), condition: expression, factor: maybe(expression) }),
  statementOf({
    kind: fc.constant("formula"),
    ...head2,
    braced: fc.constant(true),
    steps: fc.tuple(fc.array(step, { maxLength: 3 }), result).map(([steps, last]) => [...steps, last]),
  }),
  statementOf({
    kind: fc.constant("formula"),
    ...head2,
    braced: fc.constant(false),
    steps: fc.record({ value: expression, unit: shown }).map((one) => [defined({ kind: "result", ...one, range })]),
  }),
  statementOf({ kind: fc.constant("recordDeclaration"), name: identifier, fields: fc.array(fieldDeclaration, { maxLength: 3 }) }),
  statementOf({ kind: fc.constant("family"), name: identifier, members: fc.array(path, { minLength: 1, maxLength: 3 }) }),
  statementOf({ kind: fc.constant("example"), actual: expression, expected: expression, tolerance: maybe(expression) }),
  statementOf({ kind: fc.constant("use"), file: text, prefix: identifier }),
);

export { expression };
