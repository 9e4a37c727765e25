// Where the title block stands.

import type { Range } from "../base/index.ts";
import { lineAfter, lineEnd, readOpening } from "./line.ts";

export interface FrontRange extends Range {
  /** The YAML between the `---` lines. */
  readonly body: Range;
}

const RULE = /^---[ \t\r]*$/;

/** Whether the text begins with a `---` line, whether or not one closes it. */
export const beginsWithRule = (text: string): boolean => text.startsWith("---") && RULE.test(text.slice(0, lineEnd(text, 0)));

/**
 * The front matter: from a `---` line at the very start to the next one. It ends nowhere when a fence comes first: then a
 * `---` was left out, and taking the next rule of the prose for it would swallow working.
 */
export function frontRange(text: string): FrontRange | undefined {
  if (!beginsWithRule(text)) return undefined;
  const from = lineAfter(text, lineEnd(text, 0));
  for (let at = from; at < text.length; ) {
    const end = lineEnd(text, at);
    const code = text.charCodeAt(at);
    if (code === 45 && RULE.test(text.slice(at, end))) return { from: 0, to: lineAfter(text, end), body: { from, to: at } };
    if ((code === 96 || code === 126) && readOpening(text, at, end) !== undefined) return undefined;
    at = lineAfter(text, end);
  }
  return undefined;
}
