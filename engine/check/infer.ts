// The type and program of an expression: one case a form, each form in the file of its family.

import { assertNever } from "../base/index.ts";
import type { Expression } from "../syntax/index.ts";
import { inferConditional } from "./branches.ts";
import { type Context, constant, faulty } from "./context.ts";
import type { Core } from "./core.ts";
import { inferCall } from "./infer-call.ts";
import { inferAccumulate, inferComprehension, inferIndex, inferList, inferRange } from "./infer-list.ts";
import { inferMatch } from "./infer-match.ts";
import { inferColumn, inferMember, inferName } from "./infer-name.ts";
import { inferNumber } from "./infer-number.ts";
import { inferBinary, inferComparison, inferUnary } from "./infer-operator.ts";
import { inferRecord, inferWith } from "./infer-record.ts";
import { inferScatter, inferSolve, inferStudy } from "./infer-spread.ts";
import { inferGroup, inferTable, inferWhere } from "./infer-table.ts";
import type { Type } from "./types.ts";

/**
 * Checks an expression and gives its program. Never throws: a fault is reported in the context and an unknown stands in its
 * place. `expected` only helps where a form alone does not tell (an empty list, `none`, a text with choices, a family).
 */
export function infer(expression: Expression, context: Context, expected?: Type): Core {
  switch (expression.kind) {
    case "number":
      return inferNumber(expression, context);
    case "text":
      return constant(expression.range, { type: "text", choices: [expression.value] }, expression.value);
    case "truth":
      return constant(expression.range, { type: "truth" }, expression.value);
    case "none":
      return constant(expression.range, { type: "maybe", of: expected?.type === "maybe" ? expected.of : { type: "unknown" } }, null);
    case "name":
      return inferName(expression, context);
    case "member":
      return inferMember(expression, context);
    case "column":
      return inferColumn(expression, context);
    case "unary":
      return inferUnary(expression, context);
    case "binary":
      return inferBinary(expression, context);
    case "compare":
      return inferComparison(expression, context);
    case "if":
      return inferConditional(expression, context, expected);
    case "call":
      return inferCall(expression, context);
    case "list":
      return inferList(expression, context, expected);
    case "comprehension":
      return inferComprehension(expression, context, expected);
    case "accumulate":
      return inferAccumulate(expression, context);
    case "index":
      return inferIndex(expression, context);
    case "range":
      return inferRange(expression, context);
    case "record":
      return inferRecord(expression, context);
    case "with":
      return inferWith(expression, context);
    case "table":
      return inferTable(expression, context);
    case "where":
      return inferWhere(expression, context);
    case "group":
      return inferGroup(expression, context);
    case "match":
      return inferMatch(expression, context, expected);
    case "scatter":
      return inferScatter(expression, context, expected, false);
    case "study":
      return inferStudy(expression, context, false);
    case "solve":
      return inferSolve(expression, context, false);
    case "hole":
      return faulty(context, expression.range);
    default:
      return assertNever(expression);
  }
}
