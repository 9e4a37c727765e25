// What a dimension, a kind and a unit are. No syntax, no arithmetic on values but conversion.

/** A small exact fraction in lowest terms with a positive denominator: exponents of dimensions. */
export interface Rational {
  readonly n: number;
  readonly d: number;
}

/**
 * A vector of rational exponents over an open set of bases: "length", "mass", "time", "temperature", "current",
 * "amount", "luminosity", every ISO 4217 code ("EUR"), and, during type inference, variables ("?12").
 * Interned: two dimensions are equal exactly when they are the same object. `exponents` is sorted by base and has no zero.
 */
export interface Dimension {
  readonly key: string;
  readonly exponents: readonly (readonly [base: string, exponent: Rational])[];
}

/**
 * What a dimension alone cannot tell apart. "any" is a product of dimensions that fits each kind of its dimension;
 * "number" is a plain number (and a share); every other dimension has kind "any".
 */
export type Kind = "any" | "number" | "angle" | "torque" | "energy" | "frequency" | "rotational speed";

/** An exact factor: n/d times a power of pi (degrees). */
export interface ExactFactor {
  readonly n: bigint;
  readonly d: bigint;
  readonly pi: number;
}

/** A unit expression that was read: one or more symbols with exponents. */
export interface Unit {
  /** Normal spelling, e.g. "N·mm", "W/(m·K)", "°C", "mm^2"; reads back to the same unit. */
  readonly text: string;
  readonly dimension: Dimension;
  readonly kind: Kind;
  /** SI value = (value + offset) * factor for points, value * factor otherwise. */
  readonly factor: ExactFactor;
  readonly offset: ExactFactor;
  /** degC and degF alone: a value in it is a point on a scale, not a difference. */
  readonly point: boolean;
  /** UCUM code of the unit, for exports. */
  readonly ucum: string;
}

/** Why a unit text could not be read; `from`/`to` are offsets into that text. */
export interface UnitProblem {
  readonly problem:
    | "unknown" // no such symbol; `nearest` when there is one
    | "prefix" // the trade does not use this prefix here (kdegF)
    | "twice" // a unit named twice (N/N, mm·mm): write a power or cancel it
    | "syntax" // not of the form factors [/ factor or ( )]
    | "division" // more than one /: write W/(m·K)
    | "leading one" // 1/K after a number: write K^-1
    | "force as mass" // kg where a force is wanted is not raised here, but the lookup of "kgf" etc. is
    | "point" // degC or degF inside a product: write K or degC_diff
    | "exponent"; // not a signed integer or (p/q)
  readonly from: number;
  readonly to: number;
  readonly symbol: string;
  readonly nearest?: string;
  /** A plain sentence fragment with the mend where the table knows one ("psi is pressure; for mass write lb"). */
  readonly advice?: string;
  /** The whole unit text written rightly, where that can be told. */
  readonly mend?: string;
}
