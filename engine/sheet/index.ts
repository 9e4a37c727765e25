// The door of engine/sheet: a notebook as a typeset document, as plain data and as one HTML file.

export { type Book, openBook } from "./book.ts";
export { type CheckRow, checkRows } from "./checks.ts";
export { type Equation, type EquationRow, equationRows, type Measure } from "./equation.ts";
export { sheetHtml, type WebFont } from "./html.ts";
export { plainText } from "./inlines.ts";
export { computedLines, type InputRow, inputRows } from "./inputs.ts";
export { makeSheet, type SheetOptions } from "./make-sheet.ts";
export { escapeText } from "./markup.ts";
export { mathml } from "./mathml.ts";
export {
  type Block,
  type Cell,
  type Column,
  type FigureBlock,
  type Inline,
  type Sheet,
  type SheetFile,
  type State,
  stateShapes,
  stateWords,
  type TableBlock,
  type WorkingBlock,
} from "./model.ts";
export { type ReferenceRow, referenceRows } from "./references.ts";
export { libraryDigest, sourceDigests, sourceFiles } from "./sources.ts";
export { type Typeset, typeset, typesetText } from "./typeset.ts";
export { type VerifiedFormula, verification } from "./verification.ts";
