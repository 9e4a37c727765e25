// The door of engine/syntax: text to trees and back.

export { children, visit } from "./children.ts";
export { expressionUsePlaces, namesUsed, usePlaces } from "./names-used.ts";
export { greekSign, normalName } from "./normal-name.ts";
export { type ParsedStatement, parseExpression, parseHead, parseLive, parseStatement } from "./parse.ts";
export { printExpression, printType } from "./print-tree.ts";
export { sameTree } from "./same-tree.ts";
export type { Head, Live } from "./statement-parser.ts";
export { printStatement, tidy } from "./tidy.ts";
export { type Token, tokens } from "./tokens.ts";
export type {
  Accumulate,
  Argument,
  Binary,
  BinaryOperator,
  BrokenStatement,
  Call,
  Check,
  Columns,
  ColumnUse,
  CompareOperator,
  Comparison,
  Comprehension,
  Conditional,
  Definition,
  Example,
  Expression,
  FamilyDeclaration,
  FieldDeclaration,
  FieldValue,
  Formula,
  GroupUse,
  Hole,
  Identifier,
  IndexUse,
  ListLiteral,
  MatchArm,
  MatchUse,
  Member,
  NameUse,
  NoneLiteral,
  NumberLiteral,
  Parameter,
  RangeLiteral,
  RecordDeclaration,
  RecordLiteral,
  Remark,
  Scatter,
  Solve,
  StatementTree,
  Step,
  Study,
  StudyAxis,
  TableHead,
  TableLiteral,
  TextLiteral,
  TruthLiteral,
  TypeExpression,
  Unary,
  UnitText,
  Use,
  WhereUse,
  WithUse,
} from "./tree.ts";
export type { TokenKind } from "./tree-marks.ts";
export { reservedWords, softWords } from "./words.ts";
