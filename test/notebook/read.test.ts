// engine/notebook: a text into parts and statements.

import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { chunkAt, openText, partText, placedChunks, proseTree, readNotebook, saveText } from "../../engine/notebook/index.ts";
import { chunksOf, chunkTexts, document, kinds, marked } from "./helper.ts";

const textOf = (text: string, index: number): string => {
  const notebook = readNotebook(text);
  const from = notebook.starts[index] as number;
  return text.slice(from, from + (notebook.parts[index]?.length ?? 0));
};

describe("parts", () => {
  it("are front matter, prose, working, data and other fences", () => {
    const text = "---\ntitle: T\n---\n\n# Head\n\n```calc\na = 1\nb = 2\n```\n\n```csv pulls\nF [N]\n1\n```\n```text\nx\n```\n";
    expect(kinds(readNotebook(text))).toBe("front prose calc(2) prose csv fence");
  });

  it("tile the text whatever stands in it", () => {
    fc.assert(
      fc.property(document, (text) => {
        const { parts, starts } = readNotebook(text);
        let at = 0;
        parts.forEach((part, i) => {
          expect(starts[i]).toBe(at);
          expect(part.length).toBeGreaterThan(0);
          expect(text.slice(at, at + part.length)).toBe(partText(part));
          at += part.length;
        });
        expect(at).toBe(text.length);
      }),
      { numRuns: 2000 },
    );
  });

  it("of the sample notebook are all found", () => {
    const text = "# Purpose\n\nText {M}.\n\n~~~calc\na = 1\n~~~\n";
    expect(kinds(readNotebook(text))).toBe("prose calc(1)");
    expect(kinds(readNotebook(""))).toBe("");
  });
});

describe("fences", () => {
  it("agree with the Markdown parser on random documents", () => {
    fc.assert(
      fc.property(document, (text) => {
        const { parts, starts } = readNotebook(text);
        // Front matter is no CommonMark: what follows it is read as a document of its own.
        const from = parts[0]?.kind === "front" ? parts[0].length : 0;
        const ours = parts.flatMap((part, i) => {
          if (part.kind === "prose" || part.kind === "front") return [];
          const lineEnd = part.closed && partText(part).endsWith("\n") ? 1 : 0;
          return [`${starts[i]} ${part.length - lineEnd}`];
        });
        const theirs: string[] = [];
        for (let node = proseTree(text.slice(from)).topNode.firstChild; node !== null; node = node.nextSibling) {
          if (node.name !== "FencedCode") continue;
          const lineStart = text.lastIndexOf("\n", from + node.from - 1) + 1;
          theirs.push(`${lineStart} ${from + node.to - lineStart}`);
        }
        expect(ours).toEqual(theirs);
      }),
      { numRuns: 20_000 },
    );
  });

  it.each([
    ["a longer fence holds a shorter one", "````calc\na = 1\n```\nb = 2\n````\n", "calc(3)"],
    ["other marks do not close", "```calc\na = 1\n~~~\n```\n", "calc(2)"],
    ["a closing line may be indented by three", "```calc\na = 1\n   ```\ntext\n", "calc(1) prose"],
    ["a closing line has no words", "```calc\na = 1\n```calc\nb = 2\n```\n", "calc(3)"],
    ["backticks in the info are no fence", "```calc `x`\ntext\n", "prose"],
    ["an HTML comment hides fences", "<!--\n```calc\na = 1\n```\n-->\n```calc\nb = 1\n```\n", "prose calc(1)"],
    ["a block tag hides until a blank line", "<div>\n```calc\n\n```calc\na = 1\n```\n", "prose calc(1)"],
    ["a list is left by a fence at column 0", "- item\n```calc\na = 1\n```\n", "prose calc(1)"],
    ["a fence inside a list is the list's", "- item\n\n  ```calc\n  a = 1\n  ```\n\ntext\n", "prose"],
    ["a fence inside a quote is the quote's", "> ```calc\n> a = 1\n> ```\n", "prose"],
    ["four spaces make no fence", "text\n\n    ```calc\n", "prose"],
    ["tildes open too", "~~~ calc\na = 1\n~~~\n", "calc(1)"],
  ])("%s", (_, text, wanted) => {
    expect(kinds(readNotebook(text))).toBe(wanted);
  });

  it("left open run to the end, with a notice at their opening line", () => {
    const text = "```calc\na = 1\n\nText.";
    expect(kinds(readNotebook(text))).toBe("calc(2)");
    expect(marked(text)).toEqual(['fence-open "```calc"']);
  });

  it("that are nearly working say what is missing", () => {
    expect(marked("  ```calc\n  a = 1\n  ```\n")).toEqual(['fence-indented "calc"']);
    expect(marked("```Calc\na = 1\n```\n")).toEqual(['fence-word-case "Calc"']);
    expect(marked("```calc of loads\na = 1\n```\n")).toEqual(['calc-fence-words "of loads"']);
    expect(marked("```css\n```\n")).toEqual([]);
  });
});

describe("csv fences", () => {
  const csv = (info: string) => readNotebook(`x\n\`\`\`${info}\nF [N]\n1\n\`\`\`\n`).parts[1];

  it("carry name, note and reference with their places", () => {
    const part = csv("csv pulls | axial, 2 mm/min \\| dry | test own");
    expect(part).toMatchObject({
      kind: "csv",
      body: "F [N]\n1\n",
      name: { text: "pulls", from: 7, to: 12 },
      note: { text: "axial, 2 mm/min | dry", from: 15, to: 37 },
      reference: { text: "test own", from: 40, to: 48 },
      diagnostics: [],
    });
  });

  it("may leave columns out", () => {
    expect(csv("csv pulls")).toMatchObject({ name: { text: "pulls" } });
    expect(csv("csv pulls || @log7")).toMatchObject({ name: { text: "pulls" }, reference: { text: "@log7" } });
    expect(csv("csv pulls || @log7")).not.toHaveProperty("note");
  });

  it("need a name", () => {
    expect(marked("```csv\nF\n```")).toEqual(['csv-no-name "csv"']);
    expect(marked("```csv | note\nF\n```")).toEqual(['csv-no-name "csv"']);
    expect(marked("```csv 2nd pulls | n\nF\n```")).toEqual(['csv-bad-name "2nd pulls"']);
    expect(marked("```csv a | b | c | d\nF\n```")).toEqual(['csv-fence-columns "d"']);
  });
});

describe("statements", () => {
  it("begin at column 0; indented lines, closing brackets and blank lines go on with them", () => {
    expect(chunksOf("a = f(1,\n  2\n)\nb = {\n  c = 1\n\n  d = 2\n}\n\n\ne = 3  \n")).toEqual([
      "a = f(1,\n  2\n)",
      "b = {\n  c = 1\n\n  d = 2\n}",
      "e = 3  ",
    ]);
  });

  it("have no blank lines at their end", () => {
    expect(chunksOf("a = 1\n\n   \n\t\nb = 2\n\n")).toEqual(["a = 1", "b = 2"]);
  });

  it("before the first one are left to the parser as one piece", () => {
    expect(chunksOf("\n  junk\n)\na = 1")).toEqual(["  junk\n)", "a = 1"]);
    expect(chunksOf("}")).toEqual(["}"]);
    expect(chunksOf("\n\n")).toEqual([]);
  });

  it("stand where they are said to stand", () => {
    fc.assert(
      fc.property(document, (text) => {
        for (const { chunk, from } of placedChunks(readNotebook(text))) {
          expect(text.slice(from, from + chunk.text.length)).toBe(chunk.text);
          expect(from === 0 || text[from - 1] === "\n").toBe(true);
          expect(chunk.text.trim()).not.toBe("");
        }
      }),
      { numRuns: 1000 },
    );
  });

  it("are found by an offset, also from the blank lines after them", () => {
    const text = "Text.\n```calc\n\na = 1\n\nb = 2\n```\nText.\n";
    const at = (needle: string, by = 0) => chunkAt(readNotebook(text), text.indexOf(needle) + by)?.chunk.text;
    expect([at("a = 1"), at("a = 1", 5), at("a = 1", 6), at("b = 2", 5)]).toEqual(["a = 1", "a = 1", "a = 1", "b = 2"]);
    expect([at("Text"), at("\na = 1"), at("```\nText"), chunkAt(readNotebook(""), 0)]).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
    expect(chunkAt(readNotebook("```calc\na = 1"), 13)?.from).toBe(8);
  });
});

describe("front matter", () => {
  it("stands between rules at the very start only", () => {
    expect(kinds(readNotebook("---\ntitle: T\n---\nText\n"))).toBe("front prose");
    expect(textOf("---\ntitle: T\n---\nText\n", 0)).toBe("---\ntitle: T\n---\n");
    expect(kinds(readNotebook("\n---\ntitle: T\n---\n"))).toBe("prose");
    expect(kinds(readNotebook("----\ntitle: T\n---\n"))).toBe("prose");
    expect(kinds(readNotebook("---\n---"))).toBe("front");
  });

  it("left open swallows no working", () => {
    const text = "---\ntitle: T\n\n```calc\na = 1\n```\n\n---\n\nText\n";
    expect(kinds(readNotebook(text))).toBe("prose calc(1) prose");
    expect(marked(text)).toEqual(['front-matter-open "---"']);
  });
});

describe("damaged files", () => {
  it("F116: conflict marks are faults at their place, the rest works", () => {
    const text = "```calc\nz = 0\n<<<<<<< HEAD\na = 1 mm\n||||||| base\na = 0 mm\n=======\na = 2 mm\n>>>>>>> other branch\nb = 3 mm\n```\n";
    expect(chunkTexts(readNotebook(text))).toEqual(["z = 0", "a = 1 mm", "a = 0 mm", "a = 2 mm", "b = 3 mm"]);
    expect(marked(text)).toEqual([
      'conflict-mark "<<<<<<< HEAD"',
      'conflict-mark "||||||| base"',
      'conflict-mark "======="',
      'conflict-mark ">>>>>>> other branch"',
    ]);
  });

  it("F116: conflict marks round whole fences are seen in the prose", () => {
    const text = "<<<<<<< HEAD\n```calc\na = 1\n```\n=======\n```calc\na = 2\n```\n>>>>>>> other\n";
    expect(chunkTexts(readNotebook(text))).toEqual(["a = 1", "a = 2"]);
    expect(marked(text)).toEqual(['conflict-mark "<<<<<<< HEAD"', 'conflict-mark ">>>>>>> other"']);
  });

  it("a heading underlined with seven marks, or longer rows of marks, are none", () => {
    expect(marked("Heading\n=======\n\n<<<<<<<<<<\n")).toEqual([]);
    expect(marked("```calc\na = 1 # <<<<<<< x\n========\n```\n")).toEqual([]);
  });

  it("F115: a brace too many at the end stops nothing", () => {
    expect(chunkTexts(readNotebook("```calc\na = 1\nb = 2\n```\n}\n"))).toEqual(["a = 1", "b = 2"]);
    expect(chunkTexts(readNotebook("```calc\na = 1\nb = 2\n}\n```\n"))).toEqual(["a = 1", "b = 2\n}"]);
  });
});

describe("files", () => {
  it("lose their byte-order mark and give back their line ends", () => {
    const { text, lineEnd, mixed } = openText("\uFEFF---\r\ntitle: T\r\n---\r\n```calc\r\na = 1\r\n```\r\n");
    expect([kinds(readNotebook(text)), chunkTexts(readNotebook(text)), lineEnd, mixed]).toEqual([
      "front calc(1)",
      ["a = 1"],
      "\r\n",
      false,
    ]);
    expect(saveText("a\nb\n", lineEnd)).toBe("a\r\nb\r\n");
    expect(saveText("a\nb\n", "\n")).toBe("a\nb\n");
  });

  it("with several kinds of line ends keep the most frequent and say so", () => {
    expect(openText("a\nb\r\nc\nd\r")).toEqual({ text: "a\nb\nc\nd\n", lineEnd: "\n", mixed: true });
    expect(openText("a\rb\rc")).toEqual({ text: "a\nb\nc", lineEnd: "\n", mixed: false });
  });

  it("read without opening first still find their statements", () => {
    expect(chunkTexts(readNotebook("---\r\nt: x\r\n---\r\n```calc\r\na = 1\r\n\r\nb = 2\r\n```\r\n"))).toEqual(["a = 1", "b = 2"]);
  });
});

it("a notebook of the repository is read whole", () => {
  const text = readFileSync(new URL("./data/sample.joint.md", import.meta.url), "utf8");
  const notebook = readNotebook(text);
  expect(kinds(notebook)).toBe("front prose calc(7) prose calc(9) prose csv prose calc(6) prose calc(2)");
  expect(notebook.parts.flatMap((part) => part.diagnostics)).toEqual([]);
});
