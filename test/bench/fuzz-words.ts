// The pieces that made texts are put together from: units, words, signs, numbers at the edges, odd characters.

export const units = (
  "mm m in ft um N kN lbf kgf kg lb g s min h MPa GPa psi bar J Nm N*m N/mm^2 W/(m·K) mm^2 mm^3 m^(1/2) deg rad rev rpm Hz " +
  "K degC degF degC_diff degF_diff % ppm EUR USD 1/K K^-1 kg/m^3 A V thou ozf slug kip ksi acre mol cd"
).split(" ");

export const words = (
  "formula record family example check use table match if then else and or not where for in with as within from none true false " +
  "step over by factor result study solve group accumulate of abs require valid some"
).split(" ");

export const names = "a b c d e x y z t L F A tau τ_max d_1 L_e k M T_1 pulls data i r s N m mm_1".split(" ");

export const calls = (
  "sqrt cbrt abs sin cos tan asin acos atan atan2 exp ln log10 log min max sum mean count all any round floor ceil sign mod " +
  "absolute thread stress_area pitch_diameter minor_diameter range length sort product deviation interpolate independent remainder"
).split(" ");

export const numbers = (
  "0 1 2 3 7 0.5 12.7 1e3 1e-3 100 1000000 1_000 1e308 1e-308 5e-324 1.7976931348623157e308 1e400 0.1 0.30000000000000004 " +
  "9007199254740993 99999999999999999999999999999 3.1415926535897932384626 -1 -0 1,5 .5 5. 0x10 007"
).split(" ");

export const signs = [
  ..."+-*/^=<>|()[]{},.:;%±~#@\"'\\!?&$",
  ...["<=", ">=", "==", "!=", "..", "**", "//", "→", "−", "×", "÷", "²", "³", "π", "≤", "≥", "≠", "·", "°C", "°", "\n", "\n  ", " "],
  ...["```", "```\n", "```calc\n", "---\n", "| n | @r", "+0.2/-0 mm", "± 5 % of 8 mm", "\r\n", "\t"],
];

export const oddities = [
  ...["\u0000", "\ufeff", "\u00a0", "\u200b", "\u2028", "\ud800", "\udc00", "𝒜", "é", "e\u0301", "ß", "İ", "\u202e", "🙂", "µ", "μ"],
  ...["Ω", "Å", "ﬁ", "½", "٣", "\u0007", "\u000c", "\u000b", "\u0085", "constructor", "__proto__", "toString", "hasOwnProperty"],
];
