// Round numbers along an axis, and how they are written.

export interface Ticks {
  readonly low: number;
  readonly high: number;
  readonly step: number;
  readonly at: readonly number[];
  /** Each as its label shows it, of one number of places, divided by ten to the power `exponent`. */
  readonly labels: readonly string[];
  /** A multiple of 3 that stands at the axis's title; 0 for none. */
  readonly exponent: number;
}

/** About `wanted` steps of 1, 2 or 5 times a power of ten that hold all of low .. high. A single value gets room on both sides. */
export function niceTicks(low: number, high: number, wanted: number): Ticks {
  const [from, to] = low < high ? [low, high] : low === 0 ? [0, 1] : [Math.min(0, low), Math.max(0, low)];
  const step = roundStep((to - from) / Math.max(1, wanted));
  const [first, last] = [Math.floor(from / step + 1e-9), Math.ceil(to / step - 1e-9)];
  const at = Array.from({ length: last - first + 1 }, (_, i) => (first + i) * step);
  const largest = Math.max(Math.abs(first * step), Math.abs(last * step));
  const power = Math.floor(Math.log10(largest) + 1e-9);
  const exponent = power >= 5 || power < -2 ? 3 * Math.floor(power / 3) : 0;
  const places = Math.max(0, exponent - Math.floor(Math.log10(step) + 1e-9));
  return {
    low: first * step,
    high: last * step,
    step,
    at,
    labels: at.map((value) => signed((value / 10 ** exponent).toFixed(places))),
    exponent,
  };
}

function roundStep(rough: number): number {
  const power = 10 ** Math.floor(Math.log10(rough));
  const share = rough / power;
  return power * (share < 1.5 ? 1 : share < 3.5 ? 2 : share < 7.5 ? 5 : 10);
}

/** A true minus; no minus before a zero. */
export const signed = (text: string): string => (/^-0(\.0*)?$/.test(text) ? text.slice(1) : text.replace("-", "−"));

const RAISED: Readonly<Record<string, string>> = {
  "-": "⁻",
  "0": "⁰",
  "1": "¹",
  "2": "²",
  "3": "³",
  "4": "⁴",
  "5": "⁵",
  "6": "⁶",
  "7": "⁷",
  "8": "⁸",
  "9": "⁹",
};

/** "10³" */
export const powerOfTen = (exponent: number): string => `10${[...String(exponent)].map((sign) => RAISED[sign] ?? "").join("")}`;
