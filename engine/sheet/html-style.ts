// The style of the HTML sheet, on the screen and on paper. Nothing in it comes from a notebook but the texts of the running heads.

export interface RunningHeads {
  readonly topLeft: string;
  readonly topRight: string;
  readonly bottomLeft: string;
  readonly bottomMiddle: string;
}

/** A text as a CSS string: whatever is not plain is written by its number, so that no text ends the string or the style. */
const cssString = (text: string): string =>
  `"${text.replace(/[^\p{L}\p{N} .,:;·()+\-/]/gu, (sign) => `\\${(sign.codePointAt(0) ?? 0).toString(16)} `)}"`;

export function sheetStyle(heads: RunningHeads): string {
  const box = (place: string, content: string): string =>
    `@${place} { content: ${content}; font: 7.5pt "Jointwright Sans", sans-serif; color: #5b6472; vertical-align: middle; white-space: pre; }`;
  return `
@page {
  margin: 19mm 16mm 18mm 18mm;
  ${box("top-left", cssString(heads.topLeft))}
  ${box("top-right", cssString(heads.topRight))}
  ${box("bottom-left", `${cssString(heads.bottomLeft)} "\\a" ${cssString(heads.bottomMiddle)}`)}
  ${box("bottom-right", 'counter(page) " / " counter(pages)')}
}
${RULES}`;
}

const RULES = `
* { box-sizing: border-box; }
html { background: #e9e7e0; color: #1d2430; font: 10.5pt/1.45 "Jointwright Serif", "Jointwright Signs", serif; font-variant-numeric: lining-nums; -webkit-print-color-adjust: exact; print-color-adjust: exact; }
body { margin: 0; }
main { background: #fff; max-width: 210mm; margin: 8mm auto; padding: 16mm 16mm 18mm 18mm; }
h1, h2, h3, h4 { font-weight: 600; line-height: 1.25; break-after: avoid; break-inside: avoid; }
h2 { font-size: 13pt; margin: 7mm 0 2mm; }
h3 { font-size: 11pt; margin: 5mm 0 1.5mm; }
h4 { font-size: 10.5pt; margin: 4mm 0 1mm; }
h2 + *, h3 + *, h4 + * { break-before: avoid; }
.no { margin-right: .5em; }
p { margin: 0 0 2mm; orphans: 3; widows: 3; }
ul, ol { margin: 0 0 2mm; padding-left: 6mm; }
li { break-inside: avoid; }
li > p { margin: 0; }
blockquote { margin: 0 0 2mm; padding-left: 4mm; border-left: .5mm solid #d4d3cb; }
a { color: #23528f; text-decoration: none; }
.address { color: #5b6472; font-size: .85em; overflow-wrap: anywhere; }
code, pre { font: .82em/1.4 "Jointwright Mono", monospace; overflow-wrap: anywhere; }
pre { white-space: pre-wrap; padding: 2mm; background: #f5f4ef; break-inside: avoid; }
hr { border: 0; border-top: .3mm solid #d4d3cb; }
math { font-family: "Jointwright Math", "Jointwright Serif", math; font-size: 1.06em; }
.title { width: 100%; border-collapse: collapse; border: .4mm solid #1d2430; font: 9.5pt/1.3 "Jointwright Sans", sans-serif; margin: 0 0 5mm; table-layout: fixed; }
.title td { border: .2mm solid #8a92a0; padding: 1mm 2mm 1.2mm; vertical-align: top; height: 9.5mm; overflow-wrap: anywhere; }
.title .label { display: block; font: 6.5pt/1.4 "Jointwright Sans Condensed", sans-serif; letter-spacing: .06em; text-transform: uppercase; color: #5b6472; }
.title .what { font-weight: 600; }
table { width: 100%; border-collapse: collapse; font: 8pt/1.35 "Jointwright Sans", "Jointwright Signs", sans-serif; margin: 0 0 3.5mm; font-variant-numeric: tabular-nums lining-nums; }
caption { text-align: left; font: 8pt/1.4 "Jointwright Sans", sans-serif; color: #5b6472; padding: 0 0 1mm; break-after: avoid; }
thead { display: table-header-group; break-inside: avoid; break-after: avoid; }
th { font: 500 6.8pt/1.25 "Jointwright Sans Condensed", sans-serif; letter-spacing: .04em; color: #3c4656; text-transform: uppercase; vertical-align: bottom; padding: .6mm 1.2mm; border-bottom: .3mm solid #1d2430; }
.as-is { text-transform: none; letter-spacing: 0; }
th math { font-size: 9.5pt; }
thead math { letter-spacing: 0; }
td { padding: .9mm 1.2mm; border-bottom: .2mm solid #d4d3cb; vertical-align: top; overflow-wrap: break-word; hyphens: manual; }
td.right { white-space: nowrap; }
td .wide { white-space: normal; }
td code { font-size: .92em; }
.dense td { font-size: 6.8pt; line-height: 1.25; padding: .35mm 1mm; }
tr { break-inside: avoid; }
tbody.lead { break-inside: avoid; break-before: avoid; }
tbody.tail { break-inside: avoid; }
table.kept { break-inside: avoid; }
.left { text-align: left; }
.right { text-align: right; }
td em { color: #5b6472; font-family: "Jointwright Serif", serif; }
.lines { margin: 0 0 3mm; }
.line { display: grid; grid-template-columns: 25mm minmax(0, 1fr) 29mm; column-gap: 3mm; padding: 1mm 0; break-inside: avoid; align-items: start; }
.ref { font: 7.5pt/1.35 "Jointwright Sans Condensed", "Jointwright Signs", sans-serif; color: #5b6472; padding-top: .8mm; overflow-wrap: break-word; }
.ref em { font-style: normal; }
.eq { min-width: 0; }
.row { margin: 0 0 .6mm; }
.in1 { padding-left: 1.6em; }
.in2 { padding-left: 3.2em; }
.out { text-align: right; font: 600 9.5pt/1.4 "Jointwright Sans", "Jointwright Signs", sans-serif; font-variant-numeric: tabular-nums lining-nums; padding-top: .3mm; overflow-wrap: break-word; }
.below { font-size: 8.8pt; line-height: 1.35; color: #5b6472; margin: 0 0 .6mm; orphans: 1; widows: 1; }
.depth1 .eq { padding-left: 5mm; font-size: 9.2pt; }
.depth2 .eq { padding-left: 10mm; font-size: 9pt; }
.depth3 .eq, .depth4 .eq { padding-left: 15mm; font-size: 8.6pt; }
.depth1 .out, .depth2 .out, .depth3 .out, .depth4 .out { font-weight: 400; font-size: 8.5pt; color: #3c4656; }
.depth0 + .depth1 { padding-top: 0; }
.value { font-weight: 600; }
.missing, .fails, .fault { color: #b0341c; }
.state { font-weight: 600; white-space: nowrap; font-family: "Jointwright Sans", "Jointwright Signs", sans-serif; font-size: .95em; }
.holds, .passes, .nominal { color: #1d6a52; }
.open, .waits, .outside, .assumed { color: #7d5b00; }
.ruled-out { color: #5b6472; }
.shape { font-family: "Jointwright Signs", "Jointwright Sans", sans-serif; font-size: .85em; }
figure { margin: 0 0 4mm; break-inside: avoid; }
figure svg { display: block; max-width: 100%; height: auto; }
figcaption { font: 8.5pt/1.4 "Jointwright Sans", sans-serif; color: #5b6472; margin-top: 1.5mm; }
.caution { border: .3mm solid #866000; padding: 1.5mm 2.5mm; margin: 3mm 0; font: 8.5pt/1.4 "Jointwright Sans", sans-serif; break-inside: avoid; }
.caution p { margin: 0; }
.caution b { color: #7d5b00; }
.contents { break-inside: avoid; font: 8.5pt/1.5 "Jointwright Sans", sans-serif; margin: 4mm 0 2mm; }
.contents ol { list-style: none; padding: 0; margin: 0; columns: 2; column-gap: 8mm; }
.contents .level2 { padding-left: 5mm; }
.sign td, .sign th { height: 11mm; vertical-align: bottom; }
.sign tbody th { font: 8.5pt "Jointwright Sans", sans-serif; text-transform: none; letter-spacing: 0; border-bottom: .2mm solid #d4d3cb; }
.endnote { font: 7.5pt/1.4 "Jointwright Sans", sans-serif; color: #5b6472; margin-top: 6mm; }
@media print {
  html { background: #fff; }
  main { max-width: none; margin: 0; padding: 0; }
  .endnote { display: none; }
  a { color: inherit; }
}
@media (max-width: 700px) {
  main { padding: 5mm; }
  .line { grid-template-columns: minmax(0, 1fr) 26mm; }
  .ref { grid-column: 1 / -1; }
}
`;
