// Static types of the language.

import type { Dimension, Kind } from "../units/index.ts";

/**
 * A type after checking. In a polymorphic formula or record a dimension may hold variables ("?1", "?2", ...) as bases;
 * they are quantified by the scheme that holds the type.
 */
export type Type =
  | { readonly type: "quantity"; readonly dimension: Dimension; readonly kind: Kind }
  /** A temperature point. */
  | { readonly type: "point" }
  | { readonly type: "text"; readonly choices?: readonly string[] }
  | { readonly type: "truth" }
  | { readonly type: "list"; readonly of: Type }
  | { readonly type: "maybe"; readonly of: Type }
  | { readonly type: "table"; readonly columns: readonly { readonly name: string; readonly type: Type }[] }
  /** `arguments` instantiate the dimension variables of a polymorphic record, in the order of its declaration. */
  | { readonly type: "record"; readonly name: string; readonly arguments: readonly Dimension[] }
  | { readonly type: "family"; readonly name: string }
  | { readonly type: "figure" }
  /** Not known because of a fault elsewhere: unifies with everything, silently. */
  | { readonly type: "unknown" };

export interface ParameterType {
  readonly name: string;
  readonly type: Type;
  readonly optional: boolean;
}

/** The type of a formula; `variables` are its quantified dimension variables. */
export interface FormulaType {
  readonly variables: readonly string[];
  readonly parameters: readonly ParameterType[];
  readonly result: Type;
}
