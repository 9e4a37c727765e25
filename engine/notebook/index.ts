// The door of engine/notebook: a notebook's text and its parts with exact ranges. It reads and writes text; it evaluates nothing.

export { formatReference, shortCitation } from "./cite.ts";
export { type CsvHead, type CsvOptions, type CsvTable, cellRange, csvLimits, readCsv } from "./csv.ts";
export type { Separator } from "./csv-separator.ts";
export { editNotebook } from "./edit-notebook.ts";
export { type FileText, openText, saveText } from "./file-text.ts";
export { chunkAt, type Differences, differences, type FoundChunk, partIndexAt, placedChunks } from "./find.ts";
export { type FrontMatter, readFrontMatter, statuses, type TitleField, titleFields } from "./front-matter.ts";
export { editFrontMatter, type FrontPath, type FrontValue } from "./front-matter-edit.ts";
export { outline, sectionOf } from "./outline.ts";
export {
  type CalcPart,
  type Chunk,
  type CsvPart,
  type FencePart,
  type FrontPart,
  type Notebook,
  type Part,
  type Placed,
  type ProsePart,
  partText,
} from "./part.ts";
export { type Heading, headings, type LiveValue, liveValues } from "./prose.ts";
export { type ProseTree, proseParser, proseTree } from "./prose-tree.ts";
export { readNotebook } from "./read-notebook.ts";
export { type Author, type Reference, type ReferenceList, readSourceFile, readSources } from "./reference.ts";
export {
  type CitationItem,
  citation,
  type ProvenanceLevel,
  provenanceLevels,
  type ReferenceColumn,
  readReference,
  unknownKeys,
} from "./reference-column.ts";
