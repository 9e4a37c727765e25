// Values as a reader sees them: quantities in their unit, lists and records in short.

import { type Entry, shortName, type Type, typeOfUnit } from "../check/index.ts";
import type { RecordValue, TableValue, Value } from "../run/index.ts";
import {
  chooseUnit,
  dimensionOf,
  fitsSystem,
  type Preferences,
  showQuantity,
  type Unit,
  type UnitSystem,
  unitOne,
} from "../units/index.ts";
import type { Shown } from "./snapshot.ts";

export interface ShowOptions {
  readonly preferences: Preferences;
  readonly digits: number;
  /** A view in one system shows no unit of the other, whoever asks for it. */
  readonly system?: UnitSystem | undefined;
  /** The record that a full name means, to name fields and know their types. */
  readonly record: (name: string) => Extract<Entry, { entry: "record" }> | undefined;
}

const temperature = dimensionOf("temperature");

const plain = (text: string): Shown => ({ text, number: "", unit: "", full: text });

/** `unit`: asked for, where it fits the value or its items. */
export function showValue(value: Value, type: Type, unit: Unit | undefined, options: ShowOptions): Shown {
  if (value === null) return plain("none");
  if (typeof value === "number") return showNumberValue(value, type, unit, options);
  if (typeof value === "string") return plain(value);
  if (typeof value === "boolean") return plain(value ? "true" : "false");
  if (Array.isArray(value)) return showList(value as readonly Value[], type, unit, options);
  const held = value as RecordValue | TableValue | { readonly shape: "figure" | "formula" };
  switch (held.shape) {
    case "record":
      return showRecord(held, options);
    case "table":
      return plain(`${held.rows} ${held.rows === 1 ? "row" : "rows"} × ${held.heads.length}`);
    case "figure":
      return plain("figure");
    case "formula":
      return plain("formula");
  }
}

function showNumberValue(value: number, type: Type, unit: Unit | undefined, options: ShowOptions): Shown {
  const inner = type.type === "maybe" ? type.of : type;
  const asked = unit === undefined || options.system === undefined || fitsSystem(unit, options.system) ? unit : undefined;
  return showQuantity(value, unitFor(inner, asked, options.preferences), options.digits);
}

/** The unit a value of this type is shown in: the one asked for if it fits, else the notebook's choice. */
export function unitFor(type: Type, asked: Unit | undefined, preferences: Preferences): Unit {
  if (type.type === "point") return asked?.point === true ? asked : chooseUnit(temperature, "any", preferences, true);
  if (type.type !== "quantity") return asked ?? unitOne;
  if (asked !== undefined && !asked.point && asked.dimension === type.dimension) return asked;
  return chooseUnit(type.dimension, type.kind, preferences, false);
}

const SHOWN_ITEMS = 6;
/** A list of the greatest length in full digits would take most of a second at every edit that reaches it. */
const FULL_ITEMS = 1000;

function showList(items: readonly Value[], type: Type, unit: Unit | undefined, options: ShowOptions): Shown {
  const of: Type = type.type === "list" ? type.of : type.type === "maybe" && type.of.type === "list" ? type.of.of : { type: "unknown" };
  const shown = items.slice(0, SHOWN_ITEMS).map((item) => showValue(item, of, unit, options));
  const common = shown[0]?.unit ?? "";
  const same = common !== "" && shown.every((item) => item.unit === common);
  const rest = (limit: number): string => (items.length > limit ? `, … ${items.length} items` : "");
  const words = shown.map((item) => (same ? item.number : item.text)).join(", ");
  const text = `[${words}${rest(SHOWN_ITEMS)}]${same ? ` ${common}` : ""}`;
  const full = items.slice(0, FULL_ITEMS).map((item) => showValue(item, of, unit, options).full);
  return { text, number: "", unit: "", full: `[${full.join(", ")}${rest(FULL_ITEMS)}]${same ? ` ${common}` : ""}` };
}

function showRecord(value: RecordValue, options: ShowOptions): Shown {
  const entry = options.record(value.record);
  const name = shortName(value.record);
  if (entry === undefined) return plain(name);
  // A record with a designation is known by it.
  const designation = entry.fields.findIndex((field) => field.name === "designation");
  const first = value.fields[designation];
  if (typeof first === "string") return { ...plain(first), full: fullRecord(value, entry, name, options) };
  const fields = entry.fields.map((field, i) => `${field.name} = ${showField(value.fields[i] ?? null, field.type, field.unit, options)}`);
  return { ...plain(`${name} { ${fields.join(", ")} }`), full: fullRecord(value, entry, name, options) };
}

/** A record inside a record is shown by its designation or name alone. */
function showField(value: Value, type: Type, unit: Unit | undefined, options: ShowOptions): string {
  if (Array.isArray(value) && type.type === "list" && type.of.type === "record")
    return `${value.length} ${value.length === 1 ? "item" : "items"}`;
  if (typeof value !== "object" || value === null || !("shape" in value) || value.shape !== "record")
    return showValue(value, type, unit, options).text;
  const fields = options.record(value.record)?.fields ?? [];
  const label = value.fields[fields.findIndex((field) => field.name === "designation" || field.name === "name")];
  return typeof label === "string" ? label : shortName(value.record);
}

function fullRecord(value: RecordValue, entry: Extract<Entry, { entry: "record" }>, name: string, options: ShowOptions): string {
  const fields = entry.fields.map((field, i) => {
    const shown = showValue(value.fields[i] ?? null, field.type, field.unit, options);
    const text =
      shown.unit === "" ? (typeof value.fields[i] === "string" ? JSON.stringify(shown.full) : shown.full) : `${shown.full} ${shown.unit}`;
    return `${field.name} = ${text}`;
  });
  return `${name} { ${fields.join(", ")} }`;
}

/** In words for messages, with four digits and no preference but the unit it was written in. */
export function describeWith(options: ShowOptions): (value: Value, type: Type, unit?: Unit) => string {
  return (value, type, unit) => {
    const fits =
      unit !== undefined &&
      (type.type === "point"
        ? unit.point
        : type.type === "quantity" && typeOfUnit(unit).type === "quantity" && unit.dimension === type.dimension);
    return showValue(value, type, fits ? unit : undefined, options).text;
  };
}
