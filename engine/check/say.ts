// How types are named in messages.

import { describeDimension, dimensionless, sampleUnit } from "../units/index.ts";
import { hasVariables } from "./dimensions.ts";
import type { Type } from "./types.ts";

/** A type for a reader: "Force (N)", "a list of Force (N)", "the record Insert", "true or false". */
export function say(type: Type): string {
  switch (type.type) {
    case "quantity": {
      if (hasVariables(type.dimension)) return "a quantity";
      if (type.dimension === dimensionless) return type.kind === "angle" ? "Angle (rad)" : "a plain number";
      const sample = sampleUnit(type.dimension, type.kind);
      const name = describeDimension(type.dimension, type.kind);
      return sample.text === name ? name : `${name} (${sample.text})`;
    }
    case "point":
      return "a temperature point (°C)";
    case "text":
      return type.choices === undefined
        ? "text"
        : type.choices.length === 1
          ? `the text "${type.choices[0]}"`
          : `one of ${sayChoices(type.choices)}`;
    case "truth":
      return "true or false";
    case "list":
      return `a list of ${say(type.of)}`;
    case "maybe":
      return type.of.type === "unknown" ? "none" : `${say(type.of)} or none`;
    case "table":
      return "a table";
    case "record":
      return `the record ${shortName(type.name)}${type.arguments.length === 0 ? "" : ` of ${type.arguments.map((of) => say({ type: "quantity", dimension: of, kind: "any" })).join(" and ")}`}`;
    case "family":
      return `a member of ${shortName(type.name)}`;
    case "figure":
      return "a figure";
    case "unknown":
      return "something not known";
  }
}

export const sayChoices = (choices: readonly string[]): string => choices.map((choice) => `"${choice}"`).join(", ");

/** Without the file that a full name starts with. */
export const shortName = (full: string): string => full.slice(full.lastIndexOf("#") + 1);

/** A type as one would write it, for the output column: "Force", "Length^2", "List Force", "Insert". */
export function typeText(type: Type): string {
  switch (type.type) {
    case "quantity":
      return hasVariables(type.dimension) ? "Quantity" : describeDimension(type.dimension, type.kind);
    case "point":
      return "Temperature";
    case "text":
      return type.choices === undefined || type.choices.length === 1 ? "Text" : type.choices.map((choice) => `"${choice}"`).join(" or ");
    case "truth":
      return "Truth";
    case "list":
      return `List ${typeText(type.of)}`;
    case "maybe":
      return `Maybe ${typeText(type.of)}`;
    case "table":
      return "Table";
    case "record":
    case "family":
      return shortName(type.name);
    case "figure":
      return "Figure";
    case "unknown":
      return "?";
  }
}
