// The types inside a polymorphic formula as one call has them.

import type { Core, Type } from "../check/index.ts";
import { type Dimension, dimensionFrom, dimensionless, multiply, power } from "../units/index.ts";

type Meanings = Extract<Core, { readonly op: "call" }>["dimensions"];

/** Reads a type inside the called formula; `outer` does the same for the place of the call. Undefined where types read as they are. */
export function instanceOf(meanings: Meanings, outer: ((type: Type) => Type) | undefined): ((type: Type) => Type) | undefined {
  if (meanings === undefined || meanings.length === 0) return undefined;
  const outside = (dimension: Dimension): Dimension => {
    if (outer === undefined) return dimension;
    const read = outer({ type: "quantity", dimension, kind: "any" });
    return read.type === "quantity" ? read.dimension : dimension;
  };
  let table: ReadonlyMap<string, Dimension> | undefined;
  return (type) => {
    table ??= new Map(meanings.map(([variable, meaning]) => [variable, outside(meaning)]));
    return readType(type, table);
  };
}

function readType(type: Type, table: ReadonlyMap<string, Dimension>): Type {
  switch (type.type) {
    case "quantity":
      return { type: "quantity", dimension: readDimension(type.dimension, table), kind: type.kind };
    case "list":
    case "maybe":
      return { type: type.type, of: readType(type.of, table) };
    case "table":
      return { type: "table", columns: type.columns.map((column) => ({ name: column.name, type: readType(column.type, table) })) };
    case "record":
      return { type: "record", name: type.name, arguments: type.arguments.map((dimension) => readDimension(dimension, table)) };
    default:
      return type;
  }
}

function readDimension(dimension: Dimension, table: ReadonlyMap<string, Dimension>): Dimension {
  if (!dimension.exponents.some(([base]) => table.has(base))) return dimension;
  return dimension.exponents.reduce<Dimension>((all, [base, exponent]) => {
    const meaning = table.get(base);
    return multiply(all, meaning === undefined ? dimensionFrom([[base, exponent]]) : power(meaning, exponent));
  }, dimensionless);
}
