// Natives that put texts together: a shop card and a reason are sentences with quantities, and the language adds none to text.

import type { Native, Value } from "../../engine/run/index.ts";

const DIGITS = 3;
/** U+2212 with the digits, as the product shows negative numbers. */
const MINUS = "−";

/** Three significant digits, no exponent between a millionth and a billion; trailing zeros go. */
function digits(x: number): string {
  const rounded = Number(x.toPrecision(DIGITS));
  return `${rounded < 0 ? MINUS : ""}${Math.abs(rounded)}`;
}

/** A quantity in the first unit whose size it reaches; the last unit serves what is smaller. */
const scaled =
  (units: readonly (readonly [symbol: string, size: number])[]) =>
  ([x]: readonly Value[]): string => {
    const value = Number(x);
    const [symbol, size] = units.find(([, each]) => Math.abs(value) >= each) ?? (units.at(-1) as readonly [string, number]);
    return `${digits(value / size)} ${symbol}`;
  };

/** Lengths go to hundredths of a millimetre, the last digit that a caliper shows. */
function hundredths(x: number): string {
  const rounded = Math.round(x * 1e5) / 100;
  return `${rounded < 0 ? MINUS : ""}${Math.abs(rounded)}`;
}

export const joinText: Native = {
  head: "join_text(parts: List Text): Text",
  purpose: "texts one after the other, nothing between them",
  apply: ([parts]) => (parts as readonly string[]).join(""),
};

export const listText: Native = {
  head: "list_text(parts: List Text, between: Text): Text",
  purpose: "texts one after the other with a text between each two; empty ones are left out",
  apply: ([parts, between]) => (parts as readonly string[]).filter((part) => part !== "").join(String(between)),
};

export const lengthText: Native = {
  head: "length_text(x: Length): Text",
  purpose: "a length in millimetres, to a hundredth",
  apply: ([x]) => `${hundredths(Number(x))} mm`,
};

export const forceText: Native = {
  head: "force_text(x: Force): Text",
  purpose: "a force in newtons or, from ten thousand on, in kilonewtons, three digits",
  apply: ([x]) => (Math.abs(Number(x)) >= 1e4 ? scaled([["kN", 1e3]]) : scaled([["N", 1]]))([x as Value]),
};

export const torqueText: Native = {
  head: "torque_text(x: Torque): Text",
  purpose: "a torque in newton metres, three digits",
  apply: scaled([["N·m", 1]]),
};

export const stressText: Native = {
  head: "stress_text(x: Stress): Text",
  purpose: "a stress in megapascals, three digits",
  apply: scaled([["MPa", 1e6]]),
};

export const temperatureText: Native = {
  head: "temperature_text(x: Temperature): Text",
  purpose: "a temperature point in degrees Celsius, to a whole degree",
  apply: ([x]) => {
    const celsius = Math.round(Number(x) - 273.15);
    return `${celsius < 0 ? MINUS : ""}${Math.abs(celsius)} °C`;
  },
};

export const timeText: Native = {
  head: "time_text(x: Time): Text",
  purpose: "a time in the largest of seconds, minutes, hours and days that it reaches, three digits",
  apply: scaled([
    ["d", 86400],
    ["h", 3600],
    ["min", 60],
    ["s", 1],
  ]),
};

export const angleText: Native = {
  head: "angle_text(x: Angle): Text",
  purpose: "an angle in degrees, three digits",
  apply: ([x]) => `${digits((Number(x) * 180) / Math.PI)}°`,
};

export const numberText: Native = {
  head: "number_text(x: Number): Text",
  purpose: "a plain number, three digits",
  apply: ([x]) => digits(Number(x)),
};

export const percentText: Native = {
  head: "percent_text(x: Number): Text",
  purpose: "a share in per cent, three digits",
  apply: ([x]) => `${digits(Number(x) * 100)} %`,
};
