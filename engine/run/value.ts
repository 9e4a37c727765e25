// What a value is while it is computed. Static types are known, so a quantity is a bare float64 in SI.

/**
 * A quantity or a temperature point is a number in coherent SI (kelvin for points); text a string; truth a boolean;
 * `none` is null. `some v` of a Maybe is v itself. All arrays and objects are never changed after they are made.
 */
export type Value = number | string | boolean | null | readonly Value[] | RecordValue | TableValue | FigureValue | FormulaValue;

/** A record, also one injected into a family (its `record` says which member it is). */
export interface RecordValue {
  readonly shape: "record";
  /** The record's full name: its own name, in another notebook "file.joint.md#Name", in the library its plain name. */
  readonly record: string;
  /** In the order of the declaration. */
  readonly fields: readonly Value[];
}

/** A table by columns; every column has `rows` values; a cell without a value is null. */
export interface TableValue {
  readonly shape: "table";
  readonly heads: readonly string[];
  readonly columns: readonly (readonly Value[])[];
  readonly rows: number;
}

/** A figure as a plain description; engine/figure draws it. */
export interface FigureValue {
  readonly shape: "figure";
  readonly figure: string;
  readonly parts: readonly Value[];
}

/** A formula that can be called; made by engine/run, equal only to itself. */
export interface FormulaValue {
  readonly shape: "formula";
  readonly name: string;
}
