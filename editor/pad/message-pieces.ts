// A message cut into words and code: what stands between backticks is set as code.

/** Backticks come in pairs; a lone one stays a sign. */
export function messagePieces(text: string): readonly { readonly code: boolean; readonly words: string }[] {
  const pieces = text.split("`");
  if (pieces.length % 2 === 0) return [{ code: false, words: text }];
  return pieces.map((words, index) => ({ code: index % 2 === 1, words })).filter(({ words }) => words !== "");
}

/** For places that hold plain text only. */
export const plainMessage = (text: string): string =>
  messagePieces(text)
    .map(({ words }) => words)
    .join("");
