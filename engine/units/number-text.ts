// Numbers as text: rounded for reading, with a true minus, or in full.

/** Exponents of ten at which a full number changes to scientific; the same as ECMAScript's own. */
const fullLow = -7;
const fullHigh = 21;

/** Decimal digits without leading or trailing zeros and the place of the point: 0.digits * 10^point. Zero has no digits. */
export interface Decimal {
  readonly negative: boolean;
  readonly digits: string;
  readonly point: number;
}

/** Reads a decimal text (of ours or of ECMAScript). */
export function decimalOf(text: string): Decimal {
  const parts = /^([+\-−]?)(\d+)(?:\.(\d+))?(?:[eE]([+\-−]?\d+))?$/.exec(text);
  if (parts === null) throw new Error(`internal: no decimal number: ${text}`);
  const whole = parts[2] as string;
  const all = whole + (parts[3] ?? "");
  const digits = all.replace(/^0+/, "");
  const point = whole.length + Number((parts[4] ?? "0").replace("−", "-")) - (all.length - digits.length);
  const kept = digits.replace(/0+$/, "");
  return kept === "" ? { negative: false, digits: "", point: 0 } : { negative: parts[1] === "-" || parts[1] === "−", digits: kept, point };
}

/** Rounds half away from zero to `places` digits behind the point (negative: before it), on the decimal digits as they stand. */
function roundTo(decimal: Decimal, places: number): Decimal {
  const keep = decimal.point + places;
  if (decimal.digits.length <= keep) return decimal;
  if (keep < 0) return { negative: false, digits: "", point: 0 };
  const up = (decimal.digits[keep] as string) >= "5";
  const head = decimal.digits.slice(0, keep);
  if (!up) return trimmed(decimal.negative, head, decimal.point);
  const raised = (BigInt(head || "0") + 1n).toString().padStart(keep, "0");
  return trimmed(decimal.negative, raised, decimal.point + (raised.length - keep));
}

function trimmed(negative: boolean, digits: string, point: number): Decimal {
  const kept = digits.replace(/0+$/, "");
  return kept === "" ? { negative: false, digits: "", point: 0 } : { negative, digits: kept, point };
}

function positional({ digits, point }: Decimal): string {
  if (digits === "") return "0";
  if (point <= 0) return `0.${"0".repeat(-point)}${digits}`;
  return digits.length <= point ? digits.padEnd(point, "0") : `${digits.slice(0, point)}.${digits.slice(point)}`;
}

function scientific({ digits, point }: Decimal, minus: string): string {
  const exponent = point - 1;
  const mantissa = digits.length === 1 ? digits : `${digits[0]}.${digits.slice(1)}`;
  return `${mantissa}e${exponent < 0 ? minus : ""}${Math.abs(exponent)}`;
}

/** All digits of a decimal: plain minus, as `literal` and every other program reads it. */
export function fullText(decimal: Decimal): string {
  const body =
    decimal.digits !== "" && (decimal.point <= fullLow + 1 || decimal.point > fullHigh) ? scientific(decimal, "-") : positional(decimal);
  return decimal.negative ? `-${body}` : body;
}

/**
 * A decimal rounded for reading. The rule: half away from zero, on the shortest decimal text that reads back to the same
 * float64 (so 1.005 becomes 1.01, as whoever typed it expects); at most `digits` significant digits, no trailing zeros; digits
 * before the point are never rounded away from 0.0001 up to 10 000 000, outside it is scientific. The true minus (U+2212) also
 * stands in an exponent; a literal reads both.
 */
export function showDecimal(decimal: Decimal, digits: number): string {
  if (decimal.digits === "") return "0";
  const places = digits - decimal.point;
  const inside = decimal.point > -4 && decimal.point <= 7;
  const rounded = roundTo(decimal, inside ? Math.max(places, 0) : places);
  const plain = rounded.point > -4 && rounded.point <= 7;
  const body = plain ? positional(rounded) : scientific(rounded, "−");
  return rounded.negative ? `−${body}` : body;
}

/** A number with at most `digits` significant digits; see `showDecimal`. Not finite is said in words. */
export function showNumber(value: number, digits: number): string {
  if (!Number.isFinite(value)) return notFinite(value);
  return showDecimal(decimalOf(String(value)), Math.max(1, Math.trunc(digits)));
}

const notFinite = (value: number): string => (Number.isNaN(value) ? "not a number" : value < 0 ? "−infinity" : "infinity");

/** A number with exactly `decimals` digits behind the point, and as many more as it takes for `reads` to accept the text. */
function fixed(value: number, decimals: number, reads: (shown: Decimal) => boolean): string {
  if (!Number.isFinite(value)) return notFinite(value);
  const exact = decimalOf(String(value));
  let places = decimals;
  let rounded = roundTo(exact, places);
  while (!reads(rounded)) {
    places += 1;
    rounded = roundTo(exact, places);
  }
  if (rounded.digits !== "" && rounded.point < -6) return `${rounded.negative ? "−" : ""}${scientific(rounded, "−")}`;
  const [whole, fraction = ""] = positional(rounded).split(".") as [string, string?];
  const body = places === 0 ? whole : `${whole}.${fraction.padEnd(places, "0")}`;
  return rounded.negative ? `−${body}` : body;
}

/** A margin of safety: a negative one never shows as zero, it gets more digits; zero never has a sign. */
export const showMargin = (value: number, decimals = 2): string => fixed(value, decimals, (shown) => value >= 0 || shown.digits !== "");

/** A utilisation: one above 1 never shows as 1, it gets more digits. */
export const showUtilisation = (value: number, decimals = 2): string =>
  fixed(value, decimals, (shown) => value <= 1 || !(shown.digits === "1" && shown.point === 1));
