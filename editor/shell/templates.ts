// The templates of the start page: notebooks of their own, read from the build when the page is shown.

import { readFrontMatter } from "../../engine/notebook/index.ts";

export interface Template {
  /** File name for a notebook made from it. */
  readonly name: string;
  readonly title: string;
  /** The first sentence of the notebook. */
  readonly purpose: string;
  readonly text: string;
}

const files = import.meta.glob<string>("../../notebooks/templates/*.joint.md", { query: "?raw", import: "default" });

/** Of the first paragraph, without marks of code. */
function firstSentence(text: string): string {
  const body = text.replace(/^---\n[\s\S]*?\n---\n/, "");
  const paragraph = body.split(/\n\s*\n/).find((block) => block.trim() !== "" && !/^\s*(?:#|`{3})/.test(block)) ?? "";
  const plain = paragraph.replaceAll("`", "").replaceAll(/\s+/g, " ").trim();
  return /^.*?[.:](?=\s|$)/.exec(plain)?.[0].replace(/:$/, ".") ?? plain;
}

export async function templates(): Promise<readonly Template[]> {
  const texts = await Promise.all(Object.entries(files).map(async ([path, read]) => [path, await read()] as const));
  return texts
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([path, text]) => ({
      name: path.slice(path.lastIndexOf("/") + 1).replace(/^\d+-/, ""),
      title: readFrontMatter(text).title.title,
      purpose: firstSentence(text),
      text,
    }));
}
