// Every symbol the product can show, by group: what the font subsets must hold, and what their test asks for.

/** @param {number} from @param {number} to */
const run = (from, to) => String.fromCodePoint(...Array.from({ length: to - from + 1 }, (_, at) => from + at));

export const LATIN = run(0x20, 0x7e) + run(0xa0, 0xac) + run(0xae, 0xff) + run(0x100, 0x17e).replace("\u0149", "");

/** Letters without marks, both sigmas, and the variant forms that formulas are set with. */
export const GREEK = `${run(0x391, 0x3a1) + run(0x3a3, 0x3a9) + run(0x3b1, 0x3c9)}ϑϕϵ`;

/** Signs of arithmetic, comparison and sets, with the micro and increment signs, which are not the Greek letters. */
export const MATHS = "−×÷·±⋅∗∕⁄√∑∏∫∂∇∞∝≈≡≠≤≥⊥∠∅∈∘µ∆";

export const INDICES = "⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻₀₁₂₃₄₅₆₇₈₉";

export const TYPOGRAPHY = "–—…‘’“”‹›«»†‡•‰′″€£¥\u2007\u2009\u2011\u202f";

/** Arrows, the shapes that tell states apart without colour, and the diameter sign of drawings. */
export const SHAPES = "←↑→↓↔↵⇒◇◆●○▲△■□▼▽▶◀✓✕⌀⚠";

/** What a browser puts in the place of single letters in a formula: the slanted letters of mathematics. Wanted of the maths face alone. */
export const SLANTED = `${run(0x1d434, 0x1d454)}ℎ${run(0x1d456, 0x1d467)}${run(0x1d6e2, 0x1d71b)}`;

export const GROUPS = { LATIN, GREEK, MATHS, INDICES, TYPOGRAPHY, SHAPES };

export const ALL = [...new Set(Object.values(GROUPS).join(""))]
  .sort((a, b) => Number(a.codePointAt(0)) - Number(b.codePointAt(0)))
  .join("");
