// A formula as it is read, free of any typesetting: later MathML on the page and the sheet, or plain text on a terminal.

import { greekSign } from "../syntax/index.ts";

export type Maths =
  | { readonly kind: "number"; readonly text: string; readonly unit: string }
  | MathsSymbol
  /** A text, a truth, a record or list in short: words that are no maths. */
  | { readonly kind: "text"; readonly text: string }
  | { readonly kind: "negative"; readonly of: Maths }
  | { readonly kind: "sum"; readonly terms: readonly { readonly minus: boolean; readonly of: Maths }[] }
  | { readonly kind: "product"; readonly factors: readonly Maths[] }
  | { readonly kind: "fraction"; readonly over: Maths; readonly under: Maths }
  | { readonly kind: "power"; readonly base: Maths; readonly exponent: Maths }
  | { readonly kind: "root"; readonly degree: 2 | 3; readonly of: Maths }
  | { readonly kind: "bars"; readonly of: Maths }
  | { readonly kind: "call"; readonly name: MathsSymbol; readonly arguments: readonly Maths[] }
  | { readonly kind: "compare"; readonly operands: readonly Maths[]; readonly operators: readonly string[] }
  | { readonly kind: "logic"; readonly operator: "and" | "or"; readonly operands: readonly [Maths, Maths] }
  | { readonly kind: "not"; readonly of: Maths }
  /** `taken` once it is known which branch was. */
  | {
      readonly kind: "cases";
      readonly condition: Maths;
      readonly met: Maths;
      readonly otherwise: Maths;
      readonly taken?: "met" | "otherwise";
    }
  | { readonly kind: "list"; readonly items: readonly Maths[] }
  | { readonly kind: "range"; readonly from: Maths; readonly to: Maths; readonly step: Maths }
  | { readonly kind: "member"; readonly of: Maths; readonly name: string }
  | { readonly kind: "item"; readonly of: Maths; readonly index: Maths }
  | { readonly kind: "record"; readonly name: string; readonly fields: readonly { readonly name: string; readonly value: Maths }[] }
  | { readonly kind: "with"; readonly of: Maths; readonly fields: readonly { readonly name: string; readonly value: Maths }[] }
  | { readonly kind: "each"; readonly element: Maths; readonly variable: Maths; readonly source: Maths; readonly condition?: Maths }
  | {
      readonly kind: "accumulate";
      readonly state: Maths;
      readonly start: Maths;
      readonly variable: Maths;
      readonly source: Maths;
      readonly body: Maths;
    }
  | { readonly kind: "where"; readonly of: Maths; readonly condition: Maths }
  | {
      readonly kind: "group";
      readonly of: Maths;
      readonly by: readonly string[];
      readonly fields: readonly { readonly name: string; readonly value: Maths }[];
    }
  | { readonly kind: "match"; readonly of: Maths; readonly arms: readonly { readonly member: string; readonly body: Maths }[] }
  | {
      readonly kind: "spread";
      readonly nominal: Maths;
      readonly form: "limits" | "unequal" | "share" | "deviation";
      readonly spread: readonly Maths[];
    };

/** A name: `tau_max` has the base τ and the subscript max. */
export interface MathsSymbol {
  readonly kind: "symbol";
  /** As the notebook writes it. */
  readonly name: string;
  readonly base: string;
  /** Empty when there is none; several parts are parted by commas. */
  readonly subscript: string;
}

/** Full names of other notebooks ("shop.joint.md#F_max") show their last part. */
export function symbolOf(name: string): MathsSymbol {
  const own = name.slice(name.lastIndexOf("#") + 1);
  const [base = own, ...rest] = own.split("_").map((part) => greekSign(part) ?? part);
  return base === ""
    ? { kind: "symbol", name: own, base: own, subscript: "" }
    : { kind: "symbol", name: own, base, subscript: rest.join(",") };
}
