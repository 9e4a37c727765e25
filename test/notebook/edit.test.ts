// engine/notebook: an edit gives what reading afresh would, and keeps the objects it does not touch.

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { applyChanges, type TextChange } from "../../engine/base/index.ts";
import { type Chunk, differences, editNotebook, type Notebook, placedChunks, readNotebook } from "../../engine/notebook/index.ts";
import { document, kinds } from "./helper.ts";

const insertion = fc.oneof(
  document,
  fc.constantFrom(
    "",
    "\n",
    "x",
    " ",
    "`",
    "```",
    "\n```\n",
    "\n```calc\n",
    "---\n",
    "<!--",
    "a = 1\n",
    "\n}",
    "\t",
    "~~~\n",
    "=======\n",
    "<<<<<<< x\n",
  ),
);
const edit = fc.array(fc.record({ at: fc.nat(), remove: fc.oneof(fc.nat({ max: 3 }), fc.nat({ max: 80 })), insert: insertion }), {
  minLength: 1,
  maxLength: 3,
});

/** Places taken into the text, sorted and without overlap. */
function changesOf(text: string, wanted: readonly { at: number; remove: number; insert: string }[]): TextChange[] {
  const changes: TextChange[] = [];
  let from = 0;
  for (const { at, remove, insert } of [...wanted].sort((a, b) => (a.at % (text.length + 1)) - (b.at % (text.length + 1)))) {
    const place = Math.max(from, at % (text.length + 1));
    const to = Math.min(text.length, place + remove);
    changes.push({ from: place, to, insert });
    from = to;
  }
  return changes;
}

const chunkObjects = (notebook: Notebook): Chunk[] => [...placedChunks(notebook)].map(({ chunk }) => chunk);

/** A document with working in it more often than not. */
const worked = fc
  .array(
    fc.oneof(
      document,
      document.map((text) => `\`\`\`calc\n${text}\n\`\`\``),
    ),
    { maxLength: 4 },
  )
  .map((all) => all.join("\n"));

describe("an edit", () => {
  it("equals reading the new text afresh, whatever is edited, edit after edit", () => {
    fc.assert(
      fc.property(worked, fc.array(edit, { minLength: 1, maxLength: 6 }), (text, edits) => {
        let notebook = readNotebook(text);
        for (const wanted of edits) {
          const changes = changesOf(notebook.text, wanted);
          const afresh = readNotebook(applyChanges(notebook.text, changes));
          notebook = editNotebook(notebook, changes);
          expect(notebook).toEqual(afresh);
          expect(notebook.length).toBe(notebook.text.length);
          expect(new Set(chunkObjects(notebook)).size).toBe(chunkObjects(notebook).length);
        }
      }),
      { numRuns: 5000 },
    );
  });

  it("keeps every statement's object outside the change, and `differences` tells exactly the others", () => {
    fc.assert(
      fc.property(worked, edit, (text, wanted) => {
        const old = readNotebook(text);
        const now = editNotebook(old, changesOf(text, wanted));
        const before = new Set(chunkObjects(old));
        const after = new Set(chunkObjects(now));
        const { removed, added, removedParts, addedParts } = differences(old, now);
        expect(new Set(removed)).toEqual(new Set([...before].filter((chunk) => !after.has(chunk))));
        expect(new Set(added)).toEqual(new Set([...after].filter((chunk) => !before.has(chunk))));
        for (const chunk of added) expect(removed.some(({ text: gone }) => gone === chunk.text)).toBe(false);
        const parts = (notebook: Notebook) => notebook.parts.filter(({ kind }) => kind !== "calc");
        expect(removedParts).toEqual(parts(old).filter((part) => !now.parts.includes(part)));
        expect(addedParts).toEqual(parts(now).filter((part) => !old.parts.includes(part)));
      }),
      { numRuns: 3000 },
    );
  });
});

describe("objects", () => {
  const lines = Array.from({ length: 50 }, (_, i) => `x${i} = ${i} mm`);
  const text = `# Head\n\n\`\`\`calc\n${lines.join("\n")}\n\`\`\`\n\nProse.\n\n\`\`\`calc\nlast = 1\n\`\`\`\n`;
  const old = readNotebook(text);
  const replaced = (from: string, to: string): TextChange[] => [
    { from: text.indexOf(from), to: text.indexOf(from) + from.length, insert: to },
  ];

  it("of all other statements stay when one is edited", () => {
    const { removed, added, removedParts, addedParts } = differences(old, editNotebook(old, replaced("x20 = 20", "x20 = 21")));
    expect([removed.map(({ text }) => text), added.map(({ text }) => text)]).toEqual([["x20 = 20 mm"], ["x20 = 21 mm"]]);
    expect([removedParts, addedParts]).toEqual([[], []]);
  });

  it("stay when a line is put in on top of them", () => {
    const { removed, added } = differences(old, editNotebook(old, replaced("x0 = 0 mm", "new = 1\nx0 = 0 mm")));
    expect([removed, added.map(({ text }) => text)]).toEqual([[], ["new = 1"]]);
  });

  it("stay when prose is edited, which changes one part", () => {
    const now = editNotebook(old, replaced("Prose.", "Prose!"));
    const { removed, added, addedParts } = differences(old, now);
    expect([removed, added, addedParts.length]).toEqual([[], [], 1]);
    expect(now.parts[1]).toBe(old.parts[1]);
  });

  it("stay when fences are cut in two and joined again", () => {
    const cut = editNotebook(old, replaced("x30 = 30 mm\n", "```\n\n```calc\nx30 = 30 mm\n"));
    expect(kinds(cut)).toBe("prose calc(30) prose calc(20) prose calc(1)");
    expect(differences(old, cut)).toMatchObject({ removed: [], added: [] });
    const at = cut.text.indexOf("```\n\n```calc\nx30");
    const joined = editNotebook(cut, [{ from: at, to: at + "```\n\n```calc\n".length, insert: "" }]);
    expect(chunkObjects(joined)).toEqual(chunkObjects(old));
    expect(chunkObjects(joined).every((chunk, i) => chunk === chunkObjects(old)[i])).toBe(true);
  });

  it("stay when many places change at once, as in a renaming", () => {
    const changes = ["x10", "x40"].flatMap((name) => replaced(`${name} =`, `y${name} =`));
    const { removed, added } = differences(old, editNotebook(old, changes));
    expect([removed.length, added.map(({ text }) => text)]).toEqual([2, ["yx10 = 10 mm", "yx40 = 40 mm"]]);
  });

  it("stay when statements change places", () => {
    const moved = editNotebook(old, replaced("x5 = 5 mm\nx6 = 6 mm", "x6 = 6 mm\nx5 = 5 mm"));
    expect(differences(old, moved)).toMatchObject({ removed: [], added: [] });
  });

  it("are the same notebook when nothing changes", () => {
    expect(editNotebook(old, [])).toBe(old);
  });
});

describe("cost", () => {
  const statement = (i: number) => `length_${i} = ${i} mm * 2 + offset_${i} | note of the line ${i} | given drawing ${i}`;
  const one = `# Head\n\n\`\`\`calc\n${Array.from({ length: 10_000 }, (_, i) => statement(i)).join("\n")}\n\`\`\`\n`;
  const many = Array.from(
    { length: 1_000 },
    (_, i) =>
      `## Part ${i}\n\nSome text with a value.\n\n\`\`\`calc\n${Array.from({ length: 10 }, (_, j) => statement(i * 10 + j)).join("\n")}\n\`\`\`\n`,
  ).join("\n");

  /** The median of many, in milliseconds: a busy machine disturbs some runs, not most. */
  function median(run: (i: number) => void, count: number): number {
    const times = Array.from({ length: count }, (_, i) => {
      const start = performance.now();
      run(i);
      return performance.now() - start;
    });
    return times.sort((a, b) => a - b)[count >> 1] as number;
  }

  it.each([
    ["one fence of 10,000 statements", one],
    ["1,000 fences of 10 statements", many],
  ])("of a keystroke is far under that of opening: %s", (_, text) => {
    const opening = median(() => readNotebook(text), 9);
    let notebook = readNotebook(text);
    const at = text.indexOf("offset_7777");
    const keystroke = median((i) => {
      notebook = editNotebook(notebook, [{ from: at, to: at + (i % 2), insert: i % 2 === 0 ? "x" : "" }]);
    }, 200);
    expect(notebook).toEqual(readNotebook(notebook.text));
    expect(keystroke).toBeLessThan(opening / 5);
  });
});
