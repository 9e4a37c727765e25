// The check of a calculation: marks stand until their value moves, persons are held apart, a status says what it still lacks.

import { describe, expect, it } from "vitest";
import { applyChanges } from "../../engine/base/index.ts";
import { createSession, type Session } from "../../engine/session/index.ts";
import { type Added, addComment, addEntry, addMark, demandsOf, readSignoff, samePerson } from "../../engine/signoff/index.ts";

const FILE = "a.joint.md";
const LIBRARY = "1.2.0";

const front = (fields: Readonly<Record<string, string>>): string =>
  `---\n${Object.entries(fields)
    .map(([key, value]) => `${key}: ${value}`)
    .join("\n")}\n---\n`;

const full = {
  title: "Bracket",
  number: "CALC-1",
  revision: "A",
  status: "in preparation",
  date: "2026-03-02",
  creator: "A. Maker",
  checker: "B. Reader",
  approval_person: "C. Signer",
  library: LIBRARY,
};

const working = `
\`\`\`calc
F = 340 N   | pull | given drawing 3
A = 12 mm^2 | area | given drawing 3
s = F / A  as MPa
check s <= 40 MPa factor 1.2 | strap
\`\`\`
`;

function open(fields: Readonly<Record<string, string>> = full, body = working): Session {
  const session = createSession({ version: LIBRARY, modules: [], files: [], natives: {}, sources: "" });
  session.put(FILE, front(fields) + body);
  return session;
}

function take(session: Session, added: Added): void {
  if ("refused" in added) throw new Error(added.refused.message);
  session.put(FILE, applyChanges(session.text(FILE), [added.change]));
}

const mark = (of: string, by = "B. Reader") => ({
  of,
  by,
  date: "2026-03-04",
  method: "hand check" as const,
  note: "28.3 by hand; agrees",
});
const states = (session: Session) => readSignoff(session, FILE).marks.map(({ of, state }) => `${of} ${state}`);
const kinds = (session: Session, status: string) => demandsOf(session, FILE, status, LIBRARY).map(({ kind, about }) => `${kind}: ${about}`);

describe("marks", () => {
  it("stand in the notebook as readable text, and for the value they were made for", () => {
    const session = open();
    take(session, addMark(session, FILE, mark("s")));
    take(session, addMark(session, FILE, mark("strap")));
    expect(session.text(FILE)).toContain("```csv check_marks");
    expect(session.text(FILE)).toContain('s;28.333333333333332 MPa;hand check;B. Reader;2026-03-04;"28.3 by hand; agrees"');
    expect(states(session)).toEqual(["s stands", "strap stands"]);
    expect(session.outputs(FILE).flatMap(({ diagnostics }) => diagnostics)).toEqual([]);
  });

  it("lapse where the value moved and nowhere else", () => {
    const session = open(full, working.replace("\n```\n", "\nd = 2 mm | depth | given drawing 3\ne = 3 * d\n```\n"));
    take(session, addMark(session, FILE, mark("s")));
    take(session, addMark(session, FILE, mark("e")));
    session.put(FILE, session.text(FILE).replace("340 N", "341 N"));
    expect(states(session)).toEqual(["s lapsed", "e stands"]);
  });

  it("do not lapse when only the unit shown changes", () => {
    const session = open();
    take(session, addMark(session, FILE, mark("s")));
    session.put(FILE, session.text(FILE).replace("as MPa", "as kPa"));
    expect(states(session)).toEqual(["s stands"]);
  });

  it("say when there is no such result any more", () => {
    const session = open();
    take(session, addMark(session, FILE, mark("s")));
    session.put(FILE, session.text(FILE).replaceAll("s = F", "q = F").replace("check s", "check q"));
    expect(states(session)).toEqual(["s unknown"]);
  });

  it("are refused to who made the calculation, however the name is written, and count for nothing when written by hand", () => {
    const session = open();
    const added = addMark(session, FILE, mark("s", "a maker"));
    expect("refused" in added && added.refused.code).toBe("mark-of-own-work");
    session.put(
      FILE,
      `${session.text(FILE)}\n\`\`\`csv check_marks | by hand\nof;value;method;by;date;note\ns;28.333333333333332 MPa;inspected;A. Maker;;\n\`\`\`\n`,
    );
    expect(states(session)).toEqual(["s own"]);
    expect(readSignoff(session, FILE).results.find(({ name }) => name === "s")?.marked).toBe("none");
  });

  it("need a result and a name", () => {
    const session = open();
    const codes = [addMark(session, FILE, mark("nothing")), addMark(session, FILE, mark("s", " "))].map(
      (added) => "refused" in added && added.refused.code,
    );
    expect(codes).toEqual(["mark-of-nothing", "mark-without-name"]);
  });
});

describe("a second entry of an input", () => {
  it("agrees in any unit, or says that it differs", () => {
    const session = open();
    take(session, addEntry(session, FILE, { of: "F", entered: "0.34 kN", by: "B. Reader", date: "2026-03-04" }));
    take(session, addEntry(session, FILE, { of: "A", entered: "21 mm^2", by: "B. Reader", date: "2026-03-04" }));
    expect(readSignoff(session, FILE).entries.map(({ of, agrees }) => [of, agrees])).toEqual([
      ["F", true],
      ["A", false],
    ]);
  });

  it("is only for inputs", () => {
    const added = addEntry(open(), FILE, { of: "s", entered: "28 MPa", by: "B. Reader", date: "" });
    expect("refused" in added && added.refused.code).toBe("mark-of-nothing");
  });
});

it("a comment stands with its line", () => {
  const session = open();
  take(session, addComment(session, FILE, { of: "F", by: "B. Reader", date: "2026-03-04", text: 'Which sheet of drawing 3?\nRev "C"?' }));
  expect(readSignoff(session, FILE).comments).toEqual([
    { of: "F", by: "B. Reader", date: "2026-03-04", text: 'Which sheet of drawing 3? Rev "C"?' },
  ]);
});

describe("what a status demands", () => {
  const checked = (session: Session): Session => {
    take(session, addMark(session, FILE, mark("strap")));
    return session;
  };

  it("released: nothing is missing when all is there", () => {
    expect(kinds(checked(open()), "released")).toEqual([]);
  });

  it("in preparation: nothing", () => {
    expect(kinds(open({}, "```calc\nx = y\n```\n"), "in preparation")).toEqual([]);
  });

  it("under approval: no fault, and a title block", () => {
    const session = open({ title: "x", creator: "A" }, "```calc\nx = y\nz = 2 * x\n```\n");
    expect(kinds(session, "under approval")).toEqual([
      "fault: y is not defined here.",
      "waiting: z",
      "title block: number",
      "title block: revision",
    ]);
  });

  it("released: a failing or unchecked check, an assumption, one person twice, another library, a lapsed mark", () => {
    const failing = checked(open({ ...full, checker: "a maker", library: "1.1.0" }, working.replace("given drawing 3\nA", "assumed\nA")));
    failing.put(FILE, failing.text(FILE).replace("340 N", "480 N"));
    expect(kinds(failing, "released")).toEqual([
      "failing check: strap",
      "assumption: F",
      "same person: a maker",
      "library: 1.2.0",
      "mark lapsed: strap",
    ]);
    expect(kinds(open(), "released")).toEqual(["not checked: strap"]);
  });

  it("an assumption that is confirmed, or accepted by name, is in nobody's way", () => {
    const assumed = working.replace("given drawing 3\nA", "assumed\nA");
    expect(kinds(checked(open({ ...full, accepted_assumptions: "[F]" }, assumed)), "released")).toEqual([]);
    expect(kinds(checked(open(full, assumed.replace("assumed", "assumed, confirmed trial 4"))), "released")).toEqual([]);
  });

  it("superseded and withdrawn say by what and why", () => {
    expect(kinds(open(), "superseded")).toEqual(["successor: superseded_by"]);
    expect(kinds(open({ ...full, superseded_by: "CALC-2" }), "superseded")).toEqual([]);
    expect(kinds(open(), "withdrawn")).toEqual(["title block: withdrawn_because"]);
  });
});

it("persons are told by their names, not by how these are written", () => {
  expect(samePerson("B. Reader", "b reader")).toBe(true);
  expect(samePerson("B. Reader", "B. Writer")).toBe(false);
  expect(samePerson("", "")).toBe(false);
});
