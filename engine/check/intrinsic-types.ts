// Types of the language's own functions. engine/run computes them by the same names; a test holds both tables together.

import { type Diagnostic, faults } from "../diagnostics/index.ts";
import { dimensionless, dimensionOf, type Kind, power, rational } from "../units/index.ts";
import { unify } from "./agree.ts";
import { clash } from "./clash.ts";
import type { Context } from "./context.ts";
import type { Core } from "./core.ts";
import { say } from "./say.ts";
import type { Type } from "./types.ts";

export interface IntrinsicType {
  readonly parameters: readonly string[];
  readonly least: number;
  readonly most: number;
  /** `true`: the argument is a list as a whole and is not mapped over. */
  readonly lists: (index: number, args: readonly Core[]) => boolean;
  /** The result's type, or the fault of an argument. */
  readonly type: (args: readonly Core[], call: IntrinsicCall) => Type | Diagnostic;
}

export interface IntrinsicCall {
  readonly name: string;
  readonly context: Context;
}

type Rule = IntrinsicType["type"];
type Quantity = Extract<Type, { type: "quantity" }>;

const number: Quantity = { type: "quantity", dimension: dimensionless, kind: "number" };
const angle: Quantity = { type: "quantity", dimension: dimensionless, kind: "angle" };
const kelvin: Quantity = { type: "quantity", dimension: dimensionOf("temperature"), kind: "any" };
const truth: Type = { type: "truth" };
const figure: Type = { type: "figure" };

const isFault = (result: Type | Diagnostic): result is Diagnostic => "code" in result;

function refuse(args: readonly Core[], i: number, call: IntrinsicCall, wanted: string, advice?: string): Diagnostic {
  const core = args[i] as Core;
  const parameter = intrinsicTypes[call.name]?.parameters[i] ?? intrinsicTypes[call.name]?.parameters.at(-1) ?? "The argument";
  return faults.wrongArgument(core.range, {
    parameter,
    formula: call.name,
    wanted,
    given: say(call.context.solver.resolveType(core.type)),
    advice,
  });
}

function quantityAt(args: readonly Core[], i: number, call: IntrinsicCall): Quantity | Diagnostic {
  const type = args[i]?.type;
  if (type?.type === "quantity") return { ...type, dimension: call.context.solver.resolve(type.dimension) };
  const advice = type?.type === "point" ? "Write absolute(T), or take a difference of two points." : undefined;
  return refuse(args, i, call, "a quantity", advice);
}

function plainAt(args: readonly Core[], i: number, call: IntrinsicCall, kind: "number" | "angle"): Quantity | Diagnostic {
  const type = args[i]?.type;
  const wanted = kind === "angle" ? "an angle" : "a plain number";
  if (type?.type !== "quantity" || !call.context.solver.unify(type.dimension, dimensionless)) return refuse(args, i, call, wanted);
  if (type.kind === "any" || type.kind === kind) return type;
  return refuse(args, i, call, wanted, kind === "angle" ? "Give the number its unit: rad or deg." : "Divide the angle by 1 rad.");
}

/** Both arguments made one type, points among them. */
function together(args: readonly Core[], indexes: readonly number[], call: IntrinsicCall): Type | Diagnostic {
  let type: Type = { type: "unknown" };
  for (const i of indexes) {
    const core = args[i] as Core;
    const agreement = unify(call.context, type, core.type);
    if ("clash" in agreement)
      return clash(call.context, core.range, type, core.type, agreement.clash, `do not go together in ${call.name}`, {});
    type = agreement.type;
  }
  return type;
}

function itemsAt(args: readonly Core[], i: number, call: IntrinsicCall): Type | Diagnostic {
  const type = args[i]?.type;
  if (type?.type === "list") return type.of;
  return refuse(
    args,
    i,
    call,
    "a list",
    type?.type === "quantity" && args[i]?.op === "local" ? "Give the parameter a list type, for example List Force." : undefined,
  );
}

/** The fault of an argument that is not of the type of a list's items. */
function asItem(args: readonly Core[], i: number, items: Type, call: IntrinsicCall): Diagnostic | undefined {
  const core = args[i] as Core;
  const agreement = unify(call.context, items, core.type);
  if (!("clash" in agreement)) return undefined;
  return clash(call.context, core.range, items, core.type, agreement.clash, `do not go together in ${call.name}`, {});
}

const ordered = (type: Type): boolean => type.type === "quantity" || type.type === "point" || type.type === "unknown";

const then = <T extends Type>(result: T | Diagnostic, make: (type: T) => Type | Diagnostic): Type | Diagnostic =>
  "code" in result ? result : make(result);

// ---------------------------------------------------------------------------------------------- families of functions

const scalar = (parameters: readonly string[], rule: Rule, least = parameters.length, most = parameters.length): IntrinsicType => ({
  parameters,
  least,
  most,
  lists: () => false,
  type: rule,
});

const onList = (rule: Rule, parameters: readonly string[] = ["xs"]): IntrinsicType => ({
  parameters,
  least: parameters.length,
  most: parameters.length,
  lists: (i) => i === 0,
  type: rule,
});

const root = (degree: number): IntrinsicType =>
  scalar(["x"], (args, call) =>
    then(quantityAt(args, 0, call), ({ dimension, kind }) => ({
      type: "quantity",
      dimension: power(dimension, rational(1, degree)),
      kind: dimension === dimensionless && kind === "number" ? "number" : "any",
    })),
  );

const same: Rule = (args, call) => quantityAt(args, 0, call);

const stepped = scalar(
  ["x", "step"],
  (args, call) => {
    if (args.length === 1) return plainAt(args, 0, call, "number");
    if (args[0]?.type.type === "point") return refuse(args, 0, call, "a quantity");
    return then(quantityAt(args, 0, call), () => then(quantityAt(args, 1, call), () => together(args, [0, 1], call)));
  },
  1,
  2,
);

const plain = (from: "number" | "angle", to: Quantity): IntrinsicType =>
  scalar(["x"], (args, call) => then(plainAt(args, 0, call, from), () => to));

const extreme: IntrinsicType = {
  parameters: ["x"],
  least: 1,
  most: Number.POSITIVE_INFINITY,
  lists: (_, args) => args.length === 1,
  type: (args, call) => {
    const only = args[0]?.type;
    if (args.length === 1 && only?.type === "list") return ordered(only.of) ? only.of : refuse(args, 0, call, "a list of quantities");
    const wrong = args.findIndex((arg) => !ordered(arg.type));
    if (wrong >= 0) return refuse(args, wrong, call, "a quantity");
    return together(
      args,
      args.map((_, i) => i),
      call,
    );
  },
};

/** `points`: what the result of temperature points is; absent where points are refused. */
const aggregate = (points?: "point" | "difference"): IntrinsicType =>
  onList((args, call) =>
    then(itemsAt(args, 0, call), (of) => {
      if (of.type === "quantity" || of.type === "unknown") return of;
      if (of.type !== "point") return refuse(args, 0, call, "a list of quantities");
      if (points === undefined)
        return faults.pointsDoNotAdd(args[0]?.range ?? { from: 0, to: 0 }, {
          verb: "add",
          advice: "Take their mean, or differences from one of them.",
        });
      return points === "point" ? of : kelvin;
    }),
  );

const item = onList((args, call) => itemsAt(args, 0, call));
const list = onList((args, call) => then(itemsAt(args, 0, call), (of) => ({ type: "list", of })));
const counted = onList((args, call) => then(itemsAt(args, 0, call), () => number));
const truths = onList((args, call) =>
  then(itemsAt(args, 0, call), (of) => (of.type === "truth" || of.type === "unknown" ? truth : refuse(args, 0, call, "a list of truths"))),
);
const variance = onList((args, call) =>
  then(itemsAt(args, 0, call), (of): Type | Diagnostic => {
    if (of.type === "point") return { ...kelvin, dimension: power(kelvin.dimension, rational(2)) };
    return of.type === "quantity"
      ? { type: "quantity", dimension: power(call.context.solver.resolve(of.dimension), rational(2)), kind: squareKind(of.kind) }
      : refuse(args, 0, call, "a list of quantities");
  }),
);

const squareKind = (kind: Kind): Kind => (kind === "number" ? "number" : "any");

const textAt = (args: readonly Core[], i: number, call: IntrinsicCall): Type | Diagnostic => {
  const type = args[i]?.type;
  return type?.type === "text" || type?.type === "unknown" ? type : refuse(args, i, call, "text");
};

/** Two lists of one length and a label; labels of bars are texts, everything else has a place on an axis. */
const plotted = (parameters: readonly string[]): IntrinsicType => ({
  parameters,
  least: 2,
  most: 3,
  lists: () => true,
  type: (args, call) => {
    for (const i of [0, 1]) {
      const items = itemsAt(args, i, call);
      if (isFault(items)) return items;
      const inner = items.type === "maybe" ? items.of : items;
      const words = parameters[i] === "labels";
      if (words ? inner.type !== "text" && inner.type !== "unknown" : !ordered(inner))
        return refuse(args, i, call, words ? "a list of texts" : "a list of quantities");
    }
    return args.length < 3 ? figure : then(textAt(args, 2, call), () => figure);
  },
});

export const intrinsicTypes: Readonly<Record<string, IntrinsicType>> = {
  sqrt: root(2),
  cbrt: root(3),
  abs: scalar(["x"], same),
  sign: scalar(["x"], (args, call) => then(quantityAt(args, 0, call), () => number)),
  floor: stepped,
  ceil: stepped,
  round: stepped,
  mod: scalar(["a", "b"], (args, call) =>
    then(quantityAt(args, 0, call), () => then(quantityAt(args, 1, call), () => together(args, [0, 1], call))),
  ),
  exp: plain("number", number),
  ln: plain("number", number),
  log10: plain("number", number),
  log2: plain("number", number),
  sin: plain("angle", number),
  cos: plain("angle", number),
  tan: plain("angle", number),
  asin: plain("number", angle),
  acos: plain("number", angle),
  atan: plain("number", angle),
  atan2: scalar(["y", "x"], (args, call) =>
    then(quantityAt(args, 0, call), () => then(quantityAt(args, 1, call), () => then(together(args, [0, 1], call), () => angle))),
  ),
  sinh: plain("number", number),
  cosh: plain("number", number),
  tanh: plain("number", number),
  hypot: scalar(
    ["a", "b", "c"],
    (args, call) => {
      const wrong = args.findIndex((arg) => arg.type.type !== "quantity");
      if (wrong >= 0) return refuse(args, wrong, call, "a quantity");
      return together(
        args,
        args.map((_, i) => i),
        call,
      );
    },
    2,
    3,
  ),
  absolute: scalar(["T"], (args, call) => (args[0]?.type.type === "point" ? kelvin : refuse(args, 0, call, "a temperature point"))),
  min: extreme,
  max: extreme,
  sum: aggregate(),
  mean: aggregate("point"),
  median: aggregate("point"),
  deviation: aggregate("difference"),
  variance,
  count: counted,
  length: counted,
  present: list,
  all: truths,
  any: truths,
  sort: list,
  reverse: list,
  first: item,
  last: item,
  single: item,
  unique: list,
  cumulative: list,
  join: {
    parameters: ["xs", "ys"],
    least: 2,
    most: Number.POSITIVE_INFINITY,
    lists: () => true,
    type: (args, call) => {
      const wrong = args.findIndex((arg) => arg.type.type !== "list");
      if (wrong >= 0) return refuse(args, wrong, call, "a list");
      return together(
        args,
        args.map((_, i) => i),
        call,
      );
    },
  },
  index_of: onList(
    (args, call) => {
      const items = itemsAt(args, 0, call);
      if (isFault(items)) return items;
      return asItem(args, 1, items, call) ?? number;
    },
    ["xs", "x"],
  ),
  interpolate: {
    parameters: ["xs", "ys", "x"],
    least: 3,
    most: 3,
    lists: (i) => i < 2,
    type: (args, call) => {
      const [xs, ys] = [itemsAt(args, 0, call), itemsAt(args, 1, call)];
      if (isFault(xs)) return xs;
      if (isFault(ys)) return ys;
      if (!ordered(xs)) return refuse(args, 0, call, "a list of quantities");
      if (!ordered(ys)) return refuse(args, 1, call, "a list of quantities");
      return asItem(args, 2, xs, call) ?? ys;
    },
  },
  lookup: {
    parameters: ["keys", "values", "key"],
    least: 3,
    most: 3,
    lists: (i) => i < 2,
    type: (args, call) => {
      const [keys, values] = [itemsAt(args, 0, call), itemsAt(args, 1, call)];
      if (isFault(keys)) return keys;
      if (isFault(values)) return values;
      return asItem(args, 2, keys, call) ?? values;
    },
  },
  line_plot: plotted(["x", "y", "label"]),
  point_plot: plotted(["x", "y", "label"]),
  bar_chart: plotted(["labels", "values", "label"]),
  contains: scalar(["text", "part"], (args, call) => then(textAt(args, 0, call), () => then(textAt(args, 1, call), () => truth))),
  independent: {
    parameters: ["x", "n"],
    least: 2,
    most: 2,
    lists: () => true,
    type: (args, call) => then(plainAt(args, 1, call, "number"), () => ({ type: "list", of: args[0]?.type ?? number })),
  },
};
