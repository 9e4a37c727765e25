// Text in quotes: `\"` and `\\` are escapes, any other backslash stands for itself.

/** The value of a text as written, closed or not. */
export function textValue(written: string): string {
  const closed = written.length > 1 && written.endsWith('"');
  const inside = written.slice(1, closed ? -1 : undefined);
  return inside.includes("\\") ? inside.replace(/\\(["\\])/g, "$1") : inside;
}

export const quoteText = (value: string): string => `"${value.replace(/["\\]/g, "\\$&")}"`;
