// What the notebook tests share: short views of a notebook, random documents.

import fc from "fast-check";
import { type Notebook, placedChunks, readNotebook } from "../../engine/notebook/index.ts";

/** One word a part: `calc(2)` has two statements. */
export const kinds = (notebook: Notebook): string =>
  notebook.parts.map((part) => (part.kind === "calc" ? `calc(${part.chunks.length})` : part.kind)).join(" ");

export const chunkTexts = (notebook: Notebook): string[] => [...placedChunks(notebook)].map(({ chunk }) => chunk.text);

/** Codes of all parts, each with the text it marks. */
export const marked = (text: string): string[] => {
  const notebook = readNotebook(text);
  return notebook.parts.flatMap((part, i) =>
    part.diagnostics.map(({ code, range }) => {
      const from = (notebook.starts[i] as number) + range.from;
      return `${code} "${text.slice(from, from + range.to - range.from)}"`;
    }),
  );
};

/** The statements of one calc fence with this body. */
export const chunksOf = (body: string): string[] => chunkTexts(readNotebook(`\`\`\`calc\n${body}\n\`\`\`\n`));

/** Lines that matter to blocks, so that random documents hit the corners. */
// biome-ignore format: one row for each kind of block
const lines = fc.constantFrom(
  "", "", "text", "more text", "# Head", "===", "---", "- item", "  - inner", "1. one", "7. seven", "   ", "\t", "> quote", ">", "    indented",
  "```", "```", "```calc", "```calc", "~~~", "~~~~", "````", "``", "```a`b", "```csv d | n | r", "~~~ calc", " ```", "   ```calc", "    ```", "\t```", "  ~~~", "> ```", "- ```calc", "  ```calc",
  "<div>", "</div>", "<!--", "-->", "<!-- x -->", "<pre>", "</pre>", "<b>", " <i>", "<?x", "?>", "<script>", "</script>", "<https://x.y>", "<", "<![CDATA[", "]]>", "<!X", ">",
  "a = 1 mm", "b = {", "  c = 2", "}", ")", "]", " junk", "# note", "a | b", "- | -", "|-|-|", "[foo]: <x>", "[foo]:", "\\", "*", "+ x", "-", "``` ```", "{a} `{b}`",
);

export const document = fc.array(lines, { maxLength: 14 }).map((all) => all.join("\n"));
