// The tree of one statement. Every range is relative to the statement's own text, so a statement that moves keeps its tree.

import type { Range } from "../base/index.ts";

interface Node {
  readonly range: Range;
}

/** A name as written; `name` is normalised (NFC, Greek segments folded to their English letter name), `text` is not. */
export interface Identifier extends Node {
  readonly name: string;
  readonly text: string;
}

/** A unit as written; engine/units reads it. */
export interface UnitText extends Node {
  readonly text: string;
}

// ---------------------------------------------------------------------------------------------- expressions

/** `12.7 mm`, `35 %`, `23 degC`, `278.15 K abs`. `digits` is the decimal text without `_` groups. */
export interface NumberLiteral extends Node {
  readonly kind: "number";
  readonly digits: string;
  readonly unit?: UnitText;
  /** `abs` was written: a temperature point in kelvin or rankine. */
  readonly absolute: boolean;
}
export interface TextLiteral extends Node {
  readonly kind: "text";
  readonly value: string;
}
export interface TruthLiteral extends Node {
  readonly kind: "truth";
  readonly value: boolean;
}
export interface NoneLiteral extends Node {
  readonly kind: "none";
}
export interface NameUse extends Node {
  readonly kind: "name";
  readonly name: string;
  readonly text: string;
}
/** `x.D`, `t."Max force"`, `shop.F_max` (a prefix of `use` looks the same until names are resolved). */
export interface Member extends Node {
  readonly kind: "member";
  readonly of: Expression;
  readonly field: Identifier;
}
/** `.F_max`: a column of the table that `where` or `group` works on. */
export interface ColumnUse extends Node {
  readonly kind: "column";
  readonly field: Identifier;
}
export interface Unary extends Node {
  readonly kind: "unary";
  readonly operator: "-" | "+" | "not";
  readonly of: Expression;
}
export type BinaryOperator = "+" | "-" | "*" | "/" | "^" | "and" | "or";
export interface Binary extends Node {
  readonly kind: "binary";
  readonly operator: BinaryOperator;
  readonly operatorRange: Range;
  readonly left: Expression;
  readonly right: Expression;
}
export type CompareOperator = "<" | "<=" | ">" | ">=" | "==" | "!=";
/** `a < b <= c`: `operands` has one more than `operators`. */
export interface Comparison extends Node {
  readonly kind: "compare";
  readonly operands: readonly Expression[];
  readonly operators: readonly CompareOperator[];
}
export interface Conditional extends Node {
  readonly kind: "if";
  readonly condition: Expression;
  readonly then: Expression;
  readonly otherwise: Expression;
}
export interface Argument extends Node {
  readonly name?: Identifier;
  readonly value: Expression;
  /** `f(x as mm)`: the argument's value as a bare number in that unit is NOT meant; it only fixes the shown unit. */
  readonly unit?: UnitText;
}
/** `f(x, k = 0.18)`; `callee` is a name or a member of a `use` prefix. */
export interface Call extends Node {
  readonly kind: "call";
  readonly callee: NameUse | Member;
  readonly arguments: readonly Argument[];
}
export interface ListLiteral extends Node {
  readonly kind: "list";
  readonly items: readonly Expression[];
}
/** `[e for p in xs where cond]` */
export interface Comprehension extends Node {
  readonly kind: "comprehension";
  readonly element: Expression;
  readonly variable: Identifier;
  readonly source: Expression;
  readonly condition?: Expression;
}
/** `accumulate s = s0 for p in xs: e` */
export interface Accumulate extends Node {
  readonly kind: "accumulate";
  readonly state: Identifier;
  readonly start: Expression;
  readonly variable: Identifier;
  readonly source: Expression;
  readonly body: Expression;
}
/** `xs[1]` is the first. */
export interface IndexUse extends Node {
  readonly kind: "index";
  readonly of: Expression;
  readonly index: Expression;
}
/** `6 mm .. 20 mm step 1 mm`, a list by count that ends on the bound. Without `step`: bounds of `within`, `study`, `solve`. */
export interface RangeLiteral extends Node {
  readonly kind: "range";
  readonly from: Expression;
  readonly to: Expression;
  readonly step?: Expression;
}
/** `name = expr` inside a record, a `with` or a group, with columns of its own when on a line of its own. */
export interface FieldValue extends Node {
  readonly name: Identifier;
  readonly value: Expression;
  readonly unit?: UnitText;
  readonly columns?: Columns;
}
/** `Insert { D = 8 mm }` */
export interface RecordLiteral extends Node {
  readonly kind: "record";
  /** A record's name, or a member of a `use` prefix. */
  readonly type: NameUse | Member;
  readonly fields: readonly FieldValue[];
}
/** `x with { L = 12 mm }` */
export interface WithUse extends Node {
  readonly kind: "with";
  readonly of: Expression;
  readonly fields: readonly FieldValue[];
}
/** A head cell: `F_max [N]`, `ratio [1]`, `method` (text). */
export interface TableHead extends Node {
  readonly name: Identifier;
  readonly unit?: UnitText;
}
/** `table { head | head ... }`; cells are literals; an empty cell is `none`. */
export interface TableLiteral extends Node {
  readonly kind: "table";
  readonly heads: readonly TableHead[];
  readonly rows: readonly (readonly Expression[])[];
}
/** `t where .F_max > 3 kN` */
export interface WhereUse extends Node {
  readonly kind: "where";
  readonly of: Expression;
  readonly condition: Expression;
}
/** `group t by .method { n = count(.F_max) }` */
export interface GroupUse extends Node {
  readonly kind: "group";
  readonly of: Expression;
  readonly by: readonly Identifier[];
  readonly fields: readonly FieldValue[];
}
/** `TappedHole t: t.L`, `none: a`, `some v: b` */
export interface MatchArm extends Node {
  readonly member: { readonly kind: "none" } | { readonly kind: "some" } | { readonly kind: "record"; readonly type: NameUse | Member };
  readonly variable?: Identifier;
  readonly body: Expression;
}
export interface MatchUse extends Node {
  readonly kind: "match";
  readonly of: Expression;
  readonly arms: readonly MatchArm[];
}
/** Only at the end of a definition, a field or a list item. */
export interface Scatter extends Node {
  readonly kind: "scatter";
  readonly nominal: Expression;
  readonly spread:
    | { readonly kind: "limits"; readonly by: Expression }
    | { readonly kind: "unequal"; readonly plus: Expression; readonly minus: Expression }
    | { readonly kind: "share"; readonly share: NumberLiteral; readonly of: Expression }
    | { readonly kind: "deviation"; readonly by: Expression; readonly count?: NumberLiteral };
}
/** `over L_e in 6 mm .. 20 mm step 1 mm` */
export interface StudyAxis extends Node {
  readonly variable: Identifier;
  readonly values: Expression;
}
export interface Study extends Node {
  readonly kind: "study";
  readonly subjects: readonly Expression[];
  readonly axes: readonly StudyAxis[];
}
/** `solve L_e in 4 mm .. 30 mm where F_cap == 3 kN`; `type` only for a local unknown inside a formula. */
export interface Solve extends Node {
  readonly kind: "solve";
  readonly variable: Identifier;
  readonly type?: TypeExpression;
  readonly from: Expression;
  readonly to: Expression;
  readonly condition: Expression;
}
/** Where recovery put something in; a statement that holds one is never evaluated. */
export interface Hole extends Node {
  readonly kind: "hole";
}

export type Expression =
  | NumberLiteral
  | TextLiteral
  | TruthLiteral
  | NoneLiteral
  | NameUse
  | Member
  | ColumnUse
  | Unary
  | Binary
  | Comparison
  | Conditional
  | Call
  | ListLiteral
  | Comprehension
  | Accumulate
  | IndexUse
  | RangeLiteral
  | RecordLiteral
  | WithUse
  | TableLiteral
  | WhereUse
  | GroupUse
  | MatchUse
  | Scatter
  | Study
  | Solve
  | Hole;

// ---------------------------------------------------------------------------------------------- types as written

export type TypeExpression =
  /** `Length`, `Text`, `Truth`, `Money`, `Insert`, `shop.Insert` */
  | (Node & { readonly kind: "named"; readonly name: NameUse | Member })
  /** `[N/mm]` */
  | (Node & { readonly kind: "unit"; readonly unit: UnitText })
  /** `List Force` */
  | (Node & { readonly kind: "list"; readonly of: TypeExpression })
  /** `Maybe Force` */
  | (Node & { readonly kind: "maybe"; readonly of: TypeExpression })
  /** `Table { F_max [N], method }`: at least these columns */
  | (Node & { readonly kind: "columns"; readonly heads: readonly TableHead[] })
  /** `"loaded" or "back"` */
  | (Node & { readonly kind: "choices"; readonly values: readonly TextLiteral[] })
  | (Node & { readonly kind: "hole" });

// ---------------------------------------------------------------------------------------------- statements

/** `working | note | reference`, as written, trimmed, `\|` unescaped; absent when empty. */
export interface Columns extends Node {
  readonly note?: string;
  readonly noteRange?: Range;
  readonly reference?: string;
  readonly referenceRange?: Range;
}

interface Statement extends Node {
  readonly columns?: Columns;
  /** Range of the working: without columns and comment. */
  readonly working: Range;
}

/** `name = expr [as unit] [within lo .. hi]`, optional type. */
export interface Definition extends Statement {
  readonly kind: "definition";
  readonly name: Identifier;
  readonly type?: TypeExpression;
  readonly value: Expression;
  readonly unit?: UnitText;
  readonly within?: { readonly range: Range; readonly from: Expression; readonly to: Expression };
}
/** `check demand <= capacity [factor 3]`, `check condition`. */
export interface Check extends Statement {
  readonly kind: "check";
  readonly condition: Expression;
  readonly factor?: Expression;
}
export interface Parameter extends Node {
  readonly name: Identifier;
  readonly type?: TypeExpression;
  readonly default?: Expression;
}
export interface Step extends Node {
  /** `step`: `name = expr`; `require` and `valid`: a condition; `result`: `result = expr`. */
  readonly kind: "step" | "require" | "valid" | "result";
  readonly name?: Identifier;
  readonly type?: TypeExpression;
  readonly value: Expression;
  readonly unit?: UnitText;
  readonly columns?: Columns;
}
/** One-line formulas have one step of kind `result`. */
export interface Formula extends Statement {
  readonly kind: "formula";
  readonly name: Identifier;
  readonly parameters: readonly Parameter[];
  readonly type?: TypeExpression;
  readonly steps: readonly Step[];
  readonly braced: boolean;
}
export interface FieldDeclaration extends Node {
  readonly name: Identifier;
  readonly type?: TypeExpression;
  readonly default?: Expression;
  readonly columns?: Columns;
}
export interface RecordDeclaration extends Statement {
  readonly kind: "recordDeclaration";
  readonly name: Identifier;
  readonly fields: readonly FieldDeclaration[];
}
export interface FamilyDeclaration extends Statement {
  readonly kind: "family";
  readonly name: Identifier;
  readonly members: readonly (NameUse | Member)[];
}
/** `example f(args) == value ± tolerance` */
export interface Example extends Statement {
  readonly kind: "example";
  readonly actual: Expression;
  readonly expected: Expression;
  readonly tolerance?: Expression;
}
export interface Use extends Statement {
  readonly kind: "use";
  readonly file: TextLiteral;
  readonly prefix: Identifier;
}
/** A comment, or nothing. */
export interface Remark extends Statement {
  readonly kind: "remark";
}
/** Could not be read as any statement; `name` when it at least began like a definition, so that uses of it wait. */
export interface BrokenStatement extends Statement {
  readonly kind: "broken";
  readonly name?: Identifier;
}

export type StatementTree = Definition | Check | Formula | RecordDeclaration | FamilyDeclaration | Example | Use | Remark | BrokenStatement;
