// Reads a unit text: factors, then at most one "/" followed by one factor or a bracket.

import { nearest } from "../base/index.ts";
import { meant } from "./meant.ts";
import type { Rational, Unit, UnitProblem } from "./model.ts";
import { addRational, negateRational, rational, rationalFromDecimal, rationalText } from "./rational.ts";
import { type Entry, entryOf, prefixedForms, prefixSpellings, spellings } from "./table.ts";
import { asPoint, type UnitFactor, unitOf, unitOne } from "./unit.ts";

export type ParsedUnit = { readonly unit: Unit } | { readonly problem: UnitProblem };

/** In `as`, types and table heads a unit may start with `1/`, or be `1`; after a number it may not. */
export interface UnitPlace {
  readonly leadingOne?: boolean;
}

const cache = new Map<string, ParsedUnit>();
const cacheWithOne = new Map<string, ParsedUnit>();
/** Texts being typed come and go; beyond this many the cache starts afresh. */
const cacheLimit = 5000;

/** Reads a unit. Offsets of a problem count in `text`. The same text gives the same object; so does each spelling of one unit. */
export function parseUnit(text: string, place: UnitPlace = {}): ParsedUnit {
  const known = place.leadingOne === true ? cacheWithOne : cache;
  const before = known.get(text);
  if (before !== undefined) return before;
  if (known.size >= cacheLimit) known.clear();
  const result = withGoodMend(text, read(text, place.leadingOne === true));
  known.set(text, result);
  return result;
}

/** A mend is kept only when it reads well itself. */
function withGoodMend(text: string, result: ParsedUnit): ParsedUnit {
  if ("unit" in result || result.problem.mend === undefined) return result;
  const { mend, ...rest } = result.problem;
  return mend !== text && "unit" in read(mend, false) ? result : { problem: rest };
}

interface Token {
  readonly kind: "symbol" | "power" | "bad power" | "times" | "space" | "/" | "(" | ")" | "one" | "other";
  readonly text: string;
  readonly from: number;
  readonly exponent?: Rational;
}

const superscripts = "⁰¹²³⁴⁵⁶⁷⁸⁹";
const pattern =
  /(?<symbol>(?:[\p{L}_%℃℉]|°(?=[CF](?![\p{L}_])))+|°)|(?<raised>[⁺⁻]?[⁰¹²³⁴⁵⁶⁷⁸⁹]+)|(?<power>\^(?:\([^()]*\)|[+\-−]?[\d.]*))|(?<space>\s+)|(?<times>[·⋅*])|(?<slash>\/)|(?<open>\()|(?<close>\))|(?<one>\d[\d.,]*)|(?<other>.)/suy;

/** Exponents beyond it are not read; a product may still come to them. */
export const exponentLimit = 20;

/** "2", "-1", "(1/2)", "(-2)"; undefined for everything else, zero and sizes that no unit has included. */
function exponentFrom(text: string): Rational | undefined {
  const parts = /^(?:([+\-−]?\d+)|\(\s*([+\-−]?\d+)\s*(?:\/\s*(\d+)\s*)?\))$/.exec(text);
  if (parts === null) return undefined;
  const n = Number((parts[1] ?? parts[2] ?? "").replace("−", "-"));
  const d = Number(parts[3] ?? "1");
  if (n === 0 || d === 0 || Math.abs(n) > exponentLimit || d > exponentLimit) return undefined;
  return rational(n, d);
}

function tokens(text: string): Token[] {
  const out: Token[] = [];
  for (pattern.lastIndex = 0; pattern.lastIndex < text.length; ) {
    const from = pattern.lastIndex;
    const found = pattern.exec(text)?.groups ?? {};
    const { symbol, raised, power, space, times, slash, open, close, one, other } = found;
    if (symbol !== undefined) out.push({ kind: "symbol", text: symbol, from });
    else if (raised !== undefined) {
      const plain = raised
        .replace("⁻", "-")
        .replace("⁺", "+")
        .replace(/[⁰-⁹¹²³]/g, (c) => String(superscripts.indexOf(c)));
      out.push(powerToken(raised, plain, from));
    } else if (power !== undefined) out.push(powerToken(power, power.slice(1), from));
    else if (space !== undefined) out.push({ kind: "space", text: space, from });
    else if (times !== undefined) out.push({ kind: "times", text: times, from });
    else if (slash !== undefined) out.push({ kind: "/", text: slash, from });
    else if (open !== undefined) out.push({ kind: "(", text: open, from });
    else if (close !== undefined) out.push({ kind: ")", text: close, from });
    else if (one !== undefined) out.push({ kind: "one", text: one, from });
    else out.push({ kind: "other", text: other ?? "", from });
  }
  return out;
}

function powerToken(text: string, exponentText: string, from: number): Token {
  const exponent = exponentFrom(exponentText);
  return exponent === undefined ? { kind: "bad power", text, from } : { kind: "power", text, from, exponent };
}

/** A factor with the place of its symbol. */
interface Placed extends UnitFactor {
  readonly from: number;
  readonly to: number;
  readonly typed: string;
}

/** Thrown and caught within this file alone: the first thing wrong ends the reading. */
class Refusal {
  readonly problem: UnitProblem;
  constructor(problem: UnitProblem) {
    this.problem = problem;
  }
}

function refuse(problem: UnitProblem["problem"], from: number, to: number, symbol: string, more: Partial<UnitProblem> = {}): never {
  throw new Refusal({ problem, from, to, symbol, ...more });
}

function read(text: string, leadingOne: boolean): ParsedUnit {
  try {
    return { unit: readUnit(text, leadingOne) };
  } catch (thrown) {
    if (thrown instanceof Refusal) return { problem: thrown.problem };
    throw thrown;
  }
}

function readUnit(text: string, leadingOne: boolean): Unit {
  const whole = meant(text.trim());
  if (whole !== undefined) {
    const from = text.length - text.trimStart().length;
    refuse(whole.problem, from, from + text.trim().length, text.trim(), whole.more);
  }
  const absolute = /^\s*(\S+)\s+abs\s*$/.exec(text);
  if (absolute !== null) {
    const inner = readUnit(absolute[1] as string, false);
    return (
      asPoint(inner) ?? refuse("point", 0, text.length, text.trim(), { advice: "only K and degR have absolute points", mend: "K abs" })
    );
  }
  const list = tokens(text);
  while (list[0]?.kind === "space") list.shift();
  while (list.at(-1)?.kind === "space") list.pop();
  if (list.length === 0) refuse("syntax", 0, text.length, text, { advice: "there is no unit here" });
  if (list[0]?.kind === "one" && list[0].text === "1") return readLeadingOne(text, list, leadingOne);
  const reader = new Reader(text, list);
  const above = reader.factors("above");
  const below = reader.below();
  return finish(text, above, below);
}

function readLeadingOne(text: string, list: Token[], allowed: boolean): Unit {
  const first = list[0] as Token;
  if (list.length === 1) {
    if (allowed) return unitOne;
    refuse("leading one", first.from, first.from + 1, "1", { advice: "leave the unit out for a plain number" });
  }
  const reader = new Reader(text, list.slice(1));
  const below = reader.below();
  if (below.length === 0) refuse("syntax", first.from, text.length, "1", { advice: "a unit may start with 1 only before /" });
  const unit = finish(text, [], below);
  if (allowed) return unit;
  return refuse("leading one", first.from, first.from + 1, "1", { mend: unit.text });
}

/** Walks the tokens of one unit from left to right. */
class Reader {
  private at = 0;
  private readonly text: string;
  private readonly list: readonly Token[];
  constructor(text: string, list: readonly Token[]) {
    this.text = text;
    this.list = list;
  }

  private peek(ahead = 0): Token | undefined {
    return this.list[this.at + ahead];
  }

  /** Factors up to the "/", the closing bracket or the end. */
  factors(where: "above" | "bracket"): Placed[] {
    const out: Placed[] = [this.factor()];
    for (;;) {
      const next = this.peek();
      if (next === undefined || next.kind === "/" || (next.kind === ")" && where === "bracket")) return out;
      this.separator();
      out.push(this.factor());
    }
  }

  /** One separator: a space, or "·" with or without spaces, or a closed-up "*". Stands on the next factor after it. */
  private separator(): void {
    const token = this.peek() as Token;
    const after = this.peek(1);
    if (token.kind === "space") {
      if (after?.kind === "times" && after.text !== "*") {
        this.at += 1;
        this.separator();
        return;
      }
      if (after?.kind === "times" || after?.kind === "/") this.spacedOperator(after);
      this.at += 1;
      return;
    }
    if (token.kind === "times") {
      if (after?.kind === "space" && token.text === "*") this.spacedOperator(token);
      this.at += after?.kind === "space" ? 2 : 1;
      return;
    }
    this.strange(token);
  }

  private spacedOperator(token: Token): never {
    const mend = this.text.trim().replace(/\s*([*/])\s*/g, "$1");
    return refuse("syntax", token.from, token.from + 1, token.text, { advice: `close up ${token.text}`, mend });
  }

  private factor(): Placed {
    const token = this.peek();
    if (token === undefined)
      return refuse("syntax", this.text.length, this.text.length, this.text, { advice: "a unit is missing at the end" });
    if (token.kind !== "symbol") return this.strange(token);
    this.at += 1;
    const next = this.peek();
    const entry = entryOf(token.text);
    const to = token.from + token.text.length;
    const scale = this.degreeOfScale(token);
    if (scale !== undefined) refuse("unknown", token.from, scale.to, this.text.slice(token.from, scale.to), scale.more);
    if (entry === undefined) return refuseSymbol(this.text, token.text, token.from);
    const placed = { entry, from: token.from, to, typed: token.text };
    if (next?.kind === "power") {
      this.at += 1;
      return { ...placed, exponent: next.exponent as Rational };
    }
    if (next?.kind === "bad power") return refuseExponent(this.text, next);
    if (next?.kind === "one") return refuseExponent(this.text, next);
    return { ...placed, exponent: rational(1) };
  }

  /** "degrees C", "deg F", "° C": never the product of an angle and a coulomb. */
  private degreeOfScale(token: Token): { readonly to: number; readonly more: Partial<UnitProblem> } | undefined {
    if (!/^(deg|degs|degree|degrees|°)$/i.test(token.text)) return undefined;
    let ahead = 0;
    while (this.peek(ahead)?.kind === "space" || this.peek(ahead)?.kind === "times") ahead += 1;
    const letter = this.peek(ahead);
    if (ahead === 0 || letter?.kind !== "symbol" || !/^(c|f|k|celsius|fahrenheit|kelvin|centigrade)$/i.test(letter.text)) return undefined;
    const initial = (letter.text[0] as string).toUpperCase();
    const offered = initial === "F" ? "degF" : initial === "K" && !/^ce/i.test(letter.text) ? "K" : "degC";
    const to = letter.from + letter.text.length;
    const mend = (this.text.slice(0, token.from) + offered + this.text.slice(to)).trim();
    return { to, more: { nearest: offered, mend } };
  }

  /** What stands behind the "/": one factor, or factors in a bracket. Empty when there is no "/". */
  below(): Placed[] {
    const slash = this.peek();
    if (slash === undefined) return [];
    if (slash.kind !== "/") return this.strange(slash);
    this.at += 1;
    const next = this.peek();
    if (next?.kind === "space") this.spacedOperator(slash);
    if (next?.kind === "(") {
      this.at += 1;
      const inner = this.factors("bracket");
      const end = this.peek();
      if (end?.kind === "/") return this.secondDivision(end);
      if (end?.kind !== ")") return refuse("syntax", next.from, next.from + 1, "(", { advice: "the bracket is not closed" });
      this.at += 1;
      const after = this.peek();
      if (after !== undefined) this.afterDivision(after);
      return inner;
    }
    const only = this.factor();
    const after = this.peek();
    if (after !== undefined) this.afterDivision(after);
    return [only];
  }

  private afterDivision(token: Token): never {
    if (token.kind === "/" || token.kind === "space" || token.kind === "times") return this.secondDivision(token);
    return this.strange(token);
  }

  /** `W/m/K`, `W/m K`: what stands below is put in a bracket. */
  private secondDivision(token: Token): never {
    const [above, ...below] = this.text.trim().split("/");
    const inner = below.map((part) =>
      part
        .replace(/[()]/g, " ")
        .trim()
        .replace(/\s*[*·⋅\s]\s*/g, "·"),
    );
    return refuse("division", token.from, token.from + token.text.length, token.text, { mend: `${above}/(${inner.join("·")})` });
  }

  private strange(token: Token): never {
    const to = token.from + token.text.length;
    if (token.kind === "other" && "-.×⨯∙•–−".includes(token.text)) {
      const mend = this.text.trim().replace(/[-.×⨯∙•–−]/g, "·");
      return refuse("syntax", token.from, to, token.text, { advice: "units are multiplied by a space or ·", mend });
    }
    if (token.kind === "symbol") {
      const mend = `${this.text.slice(0, token.from)}·${this.text.slice(token.from)}`.trim();
      return refuse("syntax", token.from, to, token.text, { advice: `put · before ${token.text}`, mend });
    }
    if (token.kind === "bad power" || token.kind === "power") return refuseExponent(this.text, token);
    if (token.kind === "(") return refuse("syntax", token.from, to, "(", { advice: "a bracket may stand only behind /" });
    return refuse("syntax", token.from, to, token.text, { advice: `${token.text} has no place in a unit` });
  }
}

function refuseExponent(text: string, token: Token): never {
  const to = token.from + token.text.length;
  const bare = token.text.replace(/^\^/, "").replace(/^\((.*)\)$/, "$1");
  const exponent = rationalFromDecimal(bare);
  const size = exponent === undefined ? undefined : exponent.d === 1 ? rationalText(exponent) : `(${rationalText(exponent)})`;
  const mend = size === undefined ? {} : { mend: `${text.slice(0, token.from)}^${size}${text.slice(to)}`.trim() };
  return refuse("exponent", token.from, to, token.text, mend);
}

function refuseSymbol(text: string, symbol: string, from: number): never {
  const to = from + symbol.length;
  const place = (written: string): { readonly mend: string } => ({ mend: (text.slice(0, from) + written + text.slice(to)).trim() });
  const told = meant(symbol);
  if (told !== undefined) {
    const whole = told.more.mend === undefined || told.more.mend.includes("/") ? {} : place(told.more.mend);
    const { mend: _, ...rest } = told.more;
    refuse(told.problem, from, to, symbol, { ...rest, ...whole });
  }
  for (const prefix of prefixSpellings) {
    const base = symbol.startsWith(prefix) ? entryOf(symbol.slice(prefix.length)) : undefined;
    if (base !== undefined && base.prefix === "") refuse("prefix", from, to, symbol, prefixAdvice(base, prefix));
  }
  const near = nearest(symbol, spellings());
  refuse("unknown", from, to, symbol, near === undefined ? {} : { nearest: near, ...place(near) });
}

function prefixAdvice(base: Entry, prefix: string): Partial<UnitProblem> {
  const forms = prefixedForms(base.base);
  const list = forms.length === 0 ? `${base.symbol} takes no prefix` : `${base.symbol} is used as ${[base.symbol, ...forms].join(", ")}`;
  return { advice: forms.length === 0 ? list : `${list}, not with ${prefix}` };
}

function finish(text: string, above: readonly Placed[], below: readonly Placed[]): Unit {
  const all = [...above, ...below];
  const single = above.length === 1 && below.length === 0 ? above[0] : undefined;
  for (const factor of all) {
    const plain = factor === single && factor.exponent.n === 1 && factor.exponent.d === 1;
    if (factor.entry.point && !plain) refusePoint(text, factor);
  }
  const seen = new Map<string, Placed>();
  for (const factor of all) {
    if (seen.has(factor.entry.symbol)) refuseTwice(above, below, factor);
    seen.set(factor.entry.symbol, factor);
  }
  return unitOf(above, below);
}

function refusePoint(text: string, factor: Placed): never {
  const difference = factor.entry.symbol === "°F" ? "degF_diff" : "K";
  const mend = (text.slice(0, factor.from) + difference + text.slice(factor.to)).trim();
  return refuse("point", factor.from, factor.to, factor.typed, { nearest: difference, mend });
}

/** The mend gathers the powers: N·N is N^2; what cancels is left out. */
function refuseTwice(above: readonly Placed[], below: readonly Placed[], second: Placed): never {
  const sums = new Map<string, { entry: Entry; exponent: Rational }>();
  for (const [factors, sign] of [
    [above, 1],
    [below, -1],
  ] as const) {
    for (const { entry, exponent } of factors) {
      const signed = sign === 1 ? exponent : negateRational(exponent);
      const before = sums.get(entry.symbol);
      sums.set(entry.symbol, { entry, exponent: before === undefined ? signed : addRational(before.exponent, signed) });
    }
  }
  const left = [...sums.values()].filter(({ exponent }) => exponent.n !== 0);
  const up = left.filter(({ exponent }) => exponent.n > 0);
  const down = left.filter(({ exponent }) => exponent.n < 0).map(({ entry, exponent }) => ({ entry, exponent: negateRational(exponent) }));
  const unit = unitOf(up, down);
  const gathered = unit === unitOne ? { advice: "they cancel: leave the unit out" } : { mend: unit.text };
  return refuse("twice", second.from, second.to, second.typed, gathered);
}
