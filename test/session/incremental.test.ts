// What runs again after an edit, and what does not: identity by name, early cut-off, loops, order-free names.

import { describe, expect, it } from "vitest";
import type { Snapshot } from "../../engine/session/index.ts";
import { FILE, fenced, open } from "./helper.ts";

/** Replaces the first occurrence and gives the snapshot that follows. */
function edit(opened: ReturnType<typeof open>, old: string, now: string): Snapshot {
  const at = opened.session.text(FILE).indexOf(old);
  if (at < 0) throw new Error(`no ${old}`);
  opened.session.edit(FILE, [{ from: at, to: at + old.length, insert: now }]);
  return opened.session.snapshot(FILE);
}

/** Names whose value ran again. */
const ran = (snapshot: Snapshot): readonly string[] => snapshot.reran.filter((id) => !id.startsWith("marks:")).sort();

function start(text: string): ReturnType<typeof open> {
  const opened = open(text);
  opened.session.snapshot(FILE);
  return opened;
}

const chain = "a = 2 mm\nb = 2 * a\nc = b + 1 mm\nd = 5 N\ncheck c <= 9 mm | length";

describe("an edit runs only what it reaches", () => {
  it("an input runs itself and what hangs on it", () => {
    const opened = start(chain);
    expect(ran(edit(opened, "a = 2", "a = 3"))).toEqual(["?check c <= 9 mm | length", "a", "b", "c"]);
    expect(opened.line("c").value?.text).toBe("0.007 m");
  });

  it("stops where a value stays the same", () => {
    const opened = start("a = 2 mm\nb = max(a, 5 mm)\nc = b + 1 mm");
    expect(ran(edit(opened, "a = 2", "a = 3"))).toEqual(["a", "b"]);
  });

  it("an edit of prose runs nothing", () => {
    const opened = start(`# Title\n\nSome words.\n\n${fenced(chain)}`);
    expect(edit(opened, "Some words", "Other words").reran).toEqual([]);
  });

  it("an edit of prose tells of its own live values and of no others", () => {
    const opened = start(`One {a}, {b}.\n\n${fenced("a = 1\nb = 2")}\nTwo {a}, {c}.\n`);
    const told = (old: string, now: string): readonly string[] =>
      edit(opened, old, now)
        .changed.filter((line) => line.kind === "live")
        .map((line) => line.id);
    expect(told("Two", "Three")).toEqual(["live:a~2", "live:c"]);
    expect(told("a = 1", "a = 3")).toEqual(["live:a", "live:a~2"]);
    const snapshot = edit(opened, "One {a}, ", "One ");
    expect([
      snapshot.changed
        .filter((line) => line.kind === "live")
        .map((line) => line.id)
        .sort(),
      snapshot.removed,
    ]).toEqual([["live:a", "live:b"], ["live:a~2"]]);
    expect(told("a = 3", "a = 4")).toEqual(["live:a"]);
  });

  it("a line put in on top runs nothing below", () => {
    const opened = start(chain);
    expect(ran(edit(opened, "a = 2 mm", "x = 7 N\na = 2 mm"))).toEqual(["x"]);
  });

  it("a note runs its own line only", () => {
    const opened = start(chain);
    expect(ran(edit(opened, "a = 2 mm", "a = 2 mm | a note"))).toEqual(["a"]);
  });

  it("a reference changes marks down the line and no value but its own", () => {
    const opened = start("a = 2 mm | n | given drawing\nb = 2 * a");
    const snapshot = edit(opened, "given drawing", "assumed");
    expect(ran(snapshot)).toEqual(["a"]);
    expect(snapshot.reran).toContain("marks:b");
    expect(opened.line("b").marks?.provenance).toMatchObject({ level: "assumed", from: "a" });
  });

  it("the unit a value is shown in moves nothing else", () => {
    const opened = start(chain);
    expect(ran(edit(opened, "b = 2 * a", "b = 2 * a as cm"))).toEqual(["b"]);
  });

  it("a formula runs its callers again", () => {
    const opened = start("formula twice(x) = 2 * x\na = twice(3 mm)\nb = 4 mm");
    expect(ran(edit(opened, "2 * x", "3 * x"))).toEqual(["a", "twice"]);
    expect(opened.line("a").value?.text).toBe("0.009 m");
  });
});

describe("names", () => {
  it("stand in any order", () => {
    const opened = open("c = a + b\nb = 2 * a\na = 1 mm");
    expect(opened.line("c").value?.text).toBe("0.003 m");
  });

  it("a loop is named and breaks where one gets a value", () => {
    const opened = start("a = b + 1\nb = c + 1\nc = a + 1\nd = a\ne = 5");
    expect(opened.line("b").diagnostics[0]?.message).toContain("b, c, a, b");
    expect(opened.line("d").waitsFor).toEqual(["a"]);
    expect(opened.line("e").value?.text).toBe("5");
    edit(opened, "c = a + 1", "c = 1");
    expect(opened.line("d").value?.text).toBe("3");
  });

  it("defined twice is a fault at the second, and goes when the first goes", () => {
    const opened = start("a = 1\na = 2\nb = a");
    expect(opened.codes()).toEqual(["duplicate-name"]);
    expect(opened.line("b").value?.text).toBe("1");
    edit(opened, "a = 1\n", "");
    expect(opened.codes()).toEqual([]);
    expect(opened.line("b").value?.text).toBe("2");
  });

  it("that moves up when the first of its kind goes, leaves its old id", () => {
    const opened = start("a = 1\na = 2\nb = a");
    const snapshot = edit(opened, "a = 1\n", "");
    expect(snapshot.removed).toEqual(["a~2"]);
    expect(snapshot.changed.find((line) => line.id === "a")?.value?.text).toBe("2");
    expect(snapshot.order?.ids).toEqual(["a", "b"]);
  });

  it("that went away are told of in prose", () => {
    const opened = start(`It is {a} and {b}.\n\n${fenced("a = 1\nb = 2")}`);
    const snapshot = edit(opened, "a = 1\n", "");
    expect(snapshot.changed.filter((line) => line.kind === "live").map((line) => [line.id, line.diagnostics[0]?.code])).toEqual([
      ["live:a", "unknown-name"],
    ]);
  });

  it("that equal the word for the title block do not stand in its place", () => {
    const opened = start("---\ntitle: Bracket\n---\n\n```calc\ntitle = 3\n```\n");
    const ids = opened.lines().map((line) => line.id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(edit(opened, "title = 3", "title = 4").changed.find((line) => line.id === "title")?.value?.text).toBe("4");
  });

  it("that went away leave a fault at their uses", () => {
    const opened = start("answer = 1\nb = answer + 1");
    edit(opened, "answer = 1", "foo = 1");
    expect(opened.line("b").diagnostics[0]?.code).toBe("unknown-name");
    expect(opened.line("b").value).toBeUndefined();
  });

  it("of yours shadow the library with a notice, and give it back", () => {
    const opened = start("sqrt = 3\nb = sqrt + 1");
    expect(opened.codes()).toEqual(["shadows-library"]);
    expect(opened.line("b").value?.text).toBe("4");
  });
});

describe("faults", () => {
  it("a broken statement disturbs no neighbour and runs nothing of them", () => {
    const opened = start(chain);
    expect(ran(edit(opened, "d = 5 N", "d = (5 N"))).toEqual(["d"]);
    expect(opened.line("c").value?.text).toBe("0.005 m");
    expect(opened.line("d").diagnostics.length).toBe(1);
  });

  it("what depends on one waits and names it, a check does not pass", () => {
    const opened = open("a = 1 mm / 0\nb = a + 1 mm\ncheck b <= 3 mm | room");
    expect(opened.line("a").diagnostics[0]?.severity).toBe("fault");
    expect(opened.line("b").waitsFor).toEqual(["a"]);
    expect(opened.line("room").check?.state).toBe("open");
  });
});

describe("a product used as two kinds", () => {
  it("loses its notice when one of its users goes", () => {
    const opened = start("F = 3 N\nW = F * 2 m\nT: Torque = 5 N*m\na = W + T\nb = W + 3 J");
    expect(opened.line("W").diagnostics.map((each) => each.code)).toEqual(["used-as-two-kinds"]);
    const snapshot = edit(opened, "\nb = W + 3 J", "");
    expect(snapshot.changed.find((line) => line.id === "W")?.diagnostics).toEqual([]);
    expect(snapshot.counts).toEqual(open(opened.session.text(FILE)).session.snapshot(FILE).counts);
  });
});

describe("a snapshot", () => {
  it("tells of a conflict mark that came or went inside a working", () => {
    const opened = start("a = 2 mm\n=======\nb = 3 mm");
    const codes = (snapshot: Snapshot): readonly string[] | undefined =>
      snapshot.changed.find((line) => line.kind === "title")?.diagnostics.map((each) => each.code);
    edit(opened, "a = 2 mm", "<<<<<<< ours\na = 2 mm");
    const marked = edit(opened, "b = 3 mm", "c = 4\n>>>>>>> theirs\nb = 3 mm");
    expect(codes(marked)?.length).toBeGreaterThan(0);
    const mended = edit(opened, ">>>>>>>", ")>>>>>>>");
    expect(codes(mended)).toBeDefined();
    expect(mended.counts).toEqual(open(opened.session.text(FILE)).session.snapshot(FILE).counts);
  });

  it("holds changed lines only", () => {
    const opened = start(chain);
    const snapshot = edit(opened, "d = 5 N", "d = 6 N");
    expect(snapshot.changed.map((line) => line.id)).toEqual(["d"]);
    expect(snapshot.order).toBeUndefined();
    expect(snapshot.removed).toEqual([]);
  });

  it("names what went and gives the order when lines came or went", () => {
    const opened = start(chain);
    const snapshot = edit(opened, "d = 5 N\n", "");
    expect(snapshot.removed).toEqual(["d"]);
    expect(snapshot.order?.ids).toEqual(["a", "b", "c", "?check c <= 9 mm | length"]);
  });

  it("equals that of a fresh session after many edits", () => {
    const opened = start(chain);
    edit(opened, "b = 2 * a", "b = 3 * a");
    edit(opened, "d = 5 N", "e = 5 N");
    edit(opened, "c = b + 1 mm", "c = b");
    expect(opened.lines()).toEqual(open(opened.session.text(FILE)).lines());
  });
});
