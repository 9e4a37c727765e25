// Between the characters of a file and the text that the engine works on.

export interface FileText {
  /** Line ends are `\n`, no byte-order mark. */
  readonly text: string;
  /** The line end most lines of the file had; `saveText` gives it back. */
  readonly lineEnd: "\n" | "\r\n";
  /** Several kinds of line ends stood in the file: saving will make them one. */
  readonly mixed: boolean;
}

/** Takes a file's characters in: byte-order mark off, line ends (`\r\n`, and the lone `\r` of old machines) made `\n`. */
export function openText(raw: string): FileText {
  const text = raw.startsWith("\uFEFF") ? raw.slice(1) : raw;
  if (!text.includes("\r")) return { text, lineEnd: "\n", mixed: false };
  const pairs = text.split("\r\n").length - 1;
  const plain = text.split("\n").length - 1 - pairs;
  const returns = text.split("\r").length - 1 - pairs;
  return {
    text: text.replace(/\r\n?/g, "\n"),
    lineEnd: pairs > plain ? "\r\n" : "\n",
    mixed: [pairs, plain, returns].filter((count) => count > 0).length > 1,
  };
}

/** The characters to write back. */
export const saveText = (text: string, lineEnd: FileText["lineEnd"]): string => (lineEnd === "\n" ? text : text.replaceAll("\n", lineEnd));
