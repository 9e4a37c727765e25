// The command line over a session made by hand: what each command asks of it, prints, and ends with.

import { describe, expect, test } from "vitest";
import { runCommand } from "../../engine/command/index.ts";
import type { Evaluated, LineOutput, Session, Snapshot } from "../../engine/session/index.ts";
import type { TraceView } from "../../engine/trace/index.ts";
import { noTools } from "../session/no-tools.ts";
import { type TestWorld, type WorldOptions, worldOf } from "./world.ts";

const title: Snapshot["title"] = {
  title: "Bracket",
  number: "CALC-1",
  revision: "A",
  status: "",
  date: "",
  creator: "",
  checker: "",
  approval_person: "",
  owner: "",
  project: "",
};

const shownOf = (number: string, unit: string, full = number) => ({ text: `${number} ${unit}`.trim(), number, unit, full });

const line = (id: string, rest: Partial<LineOutput>): LineOutput => ({
  id,
  kind: "definition",
  from: 0,
  to: 1,
  citation: "",
  note: "",
  diagnostics: [],
  ...rest,
});

type Answers = Partial<Pick<Session, "outputs" | "evaluate" | "tidy" | "trace">>;

/** A session that keeps texts and gives prepared answers. */
function sessionOf(answers: Answers): Session {
  const texts = new Map<string, string>();
  return {
    tools: noTools,
    put: (file, text) => void texts.set(file, text),
    remove: (file) => void texts.delete(file),
    edit: () => {},
    text: (file) => texts.get(file) ?? "",
    files: () => [...texts.keys()],
    snapshot: (file) => ({
      revision: 1,
      file,
      changed: [],
      removed: [],
      title,
      counts: { faults: 0, failing: 0, checks: 0, open: 0 },
      reran: [],
    }),
    outputs: answers.outputs ?? (() => []),
    complete: () => ({ from: 0, to: 0, options: [] }),
    hover: () => undefined,
    trace: answers.trace ?? (() => undefined),
    evaluate: answers.evaluate ?? (() => ({ diagnostics: [] })),
    tidy: answers.tidy ?? ((file) => texts.get(file) ?? ""),
  };
}

function called(
  args: readonly string[],
  answers: Answers = {},
  options: Partial<WorldOptions> = {},
): { code: number | Promise<number>; world: TestWorld } {
  const world = worldOf({ createSession: () => sessionOf(answers), ...options });
  return { code: runCommand(args, world), world };
}

const value = (rest: Partial<Evaluated>): Evaluated => ({
  shown: shownOf("1.235", "N·m", "1.2345678"),
  value: 1.2345678,
  outside: [],
  references: [],
  ...rest,
});

const fault: LineOutput["diagnostics"][number] = {
  code: "unlike-sides",
  severity: "fault",
  from: 4,
  to: 7,
  message: "A length and a time cannot be added.",
  hint: "Give both the same unit.",
  mends: [{ label: "write 3 m", changes: [] }],
  related: [],
};

describe("the program", () => {
  test("help, of all and of one", () => {
    expect(called(["--help"]).world.output()).toMatch(/evaluate[\s\S]*check[\s\S]*trace[\s\S]*tidy[\s\S]*faults/);
    for (const name of ["evaluate", "check", "trace", "tidy", "faults"]) {
      const { code, world } = called([name, "--help"]);
      expect(code).toBe(0);
      expect(world.output()).toMatch(new RegExp(`Usage: jointwright ${name}[\\s\\S]*Exit code`));
    }
  });
  test("version", () => expect(called(["--version"]).world.output()).toBe("jointwright 1.2.3\n"));
  test.each([
    [["chekc", "a"], /Unknown command "chekc"\. Did you mean check\?/],
    [["check", "--jsno", "a"], /Unknown option "--jsno"\. Did you mean --json\?/],
    [["evaluate", "1", "--as"], /--as needs a value: --as UNIT/],
    [["evaluate", "1", "--json=1"], /--json takes no value/],
    [["evaluate", "1", "--as", "m", "--as", "mm"], /--as is given twice/],
    [["evaluate"], /evaluate needs EXPR/],
    [["evaluate", "1", "+", "2"], /"\+" is one too many. Is a quote missing\?/],
    [["check"], /check needs NOTEBOOK/],
    [["check", "none.joint.md"], /Cannot read none\.joint\.md: no such file/],
    [["faults", "unlike-side"], /Unknown fault code/],
    [[], /Usage/],
  ])("%j ends with 2 and words on standard error", (args, words) => {
    const { code, world } = called(args);
    expect(code).toBe(2);
    expect(world.errors()).toMatch(words);
    expect(world.output()).toBe("");
  });
});

describe("evaluate", () => {
  test("prints full digits and the unit", () => {
    const { code, world } = called(["evaluate", "M"], { evaluate: () => ({ result: value({}), diagnostics: [] }) });
    expect([code, world.output(), world.errors()]).toEqual([0, "1.2345678 N·m\n", ""]);
  });
  test("a unit that stands close stays close; a record prints as its text", () => {
    const degrees = value({ shown: { text: "45.1°", number: "45.1", unit: "°", full: "45.123" } });
    expect(called(["evaluate", "x"], { evaluate: () => ({ result: degrees, diagnostics: [] }) }).world.output()).toBe("45.123°\n");
    const record = value({ shown: { text: "Insert { D = 7 mm }", number: "", unit: "", full: "" } });
    expect(called(["evaluate", "x"], { evaluate: () => ({ result: record, diagnostics: [] }) }).world.output()).toBe(
      "Insert { D = 7 mm }\n",
    );
  });
  test("hands over the unit, the notebook and what stands beside it", () => {
    const seen: unknown[] = [];
    const world = worldOf({
      files: { "w/a.joint.md": "A", "w/b.joint.md": "B", "w/p.csv": "P", "w/c.txt": "C" },
      createSession: () => {
        const session = sessionOf({});
        return {
          ...session,
          evaluate: (expression, options) => {
            seen.push(expression, options, session.files());
            return { result: value({}), diagnostics: [] };
          },
        };
      },
    });
    expect(runCommand(["evaluate", "-2 m + x", "--as=mm", "--in", "w/a.joint.md"], world)).toBe(0);
    expect(seen).toEqual(["-2 m + x", { file: "a.joint.md", as: "mm" }, ["a.joint.md", "b.joint.md", "p.csv"]]);
  });
  test("an expression from standard input; a word after -- is never an option", () => {
    const seen: string[] = [];
    const evaluate: Session["evaluate"] = (expression) => {
      seen.push(expression);
      return { result: value({}), diagnostics: [] };
    };
    called(["evaluate", "-"], { evaluate }, { input: "1 m\n" });
    called(["evaluate", "--", "-x"], { evaluate });
    expect(seen).toEqual(["1 m", "-x"]);
    expect(called(["evaluate", "-", "--in", "-"]).code).toBe(2);
  });
  test("a fault goes to standard error with code, place, words and mend, and ends with 2", () => {
    const { code, world } = called(["evaluate", "2 m + 3 s"], { evaluate: () => ({ diagnostics: [fault] }) });
    expect(code).toBe(2);
    expect(world.output()).toBe("");
    expect(world.errors()).toBe(
      [
        "expression:1:5: fault unlike-sides",
        "  A length and a time cannot be added.",
        "  1 | 2 m + 3 s",
        "    |     ^^^",
        "  hint: Give both the same unit.",
        "  mend: write 3 m",
        "",
      ].join("\n"),
    );
  });
  test("JSON gives value, units, dimension, kind, validity and references; a fault too", () => {
    const result = value({ si: 1.2345678, unit: "N*m", ucum: "N.m", dimension: "L2 M T-2", kind: "Torque", references: ["ISO 965-1"] });
    const { world } = called(["evaluate", "M", "--json"], { evaluate: () => ({ result, diagnostics: [] }) });
    expect(JSON.parse(world.output())).toEqual({
      expression: "M",
      text: "1.235 N·m",
      number: "1.2345678",
      value: 1.2345678,
      si: 1.2345678,
      unit: "N*m",
      ucum: "N.m",
      dimension: "L2 M T-2",
      kind: "Torque",
      outside: [],
      references: ["ISO 965-1"],
      faults: [],
    });
    const failed = called(["evaluate", "2 m + 3 s", "--json"], { evaluate: () => ({ diagnostics: [fault] }) });
    expect(failed.code).toBe(2);
    expect(JSON.parse(failed.world.output())).toMatchObject({
      faults: [{ code: "unlike-sides", line: 1, column: 5, mends: ["write 3 m"] }],
    });
  });
});

describe("check", () => {
  const files = { "a.joint.md": "x = 1 m + 3 s\ncheck x <= y | stripping\n" };
  const holds = line("1", { kind: "check", check: { state: "holds", title: "stripping", utilisationText: "0.50", marginText: "1.00" } });
  const fails = line("2", { kind: "check", check: { state: "fails", title: "the neck", utilisationText: "1.40", marginText: "-0.29" } });
  const open = line("3", { kind: "check", check: { state: "open", title: "creep" }, waitsFor: ["tau"] });
  const faulty = line("4", { name: "x", diagnostics: [fault] });
  const waiting = line("5", { name: "F", waitsFor: ["x"] });
  const badExample = line("6", { kind: "example", from: 0, to: 13, example: { state: "fails", shown: "2 m" } });
  const notice = line("7", { diagnostics: [{ ...fault, severity: "notice", code: "shadows" }] });
  const checked = (...outputs: LineOutput[]) => called(["check", "a.joint.md"], { outputs: () => outputs }, { files });

  test("all hold: 0, with utilisation and margin", () => {
    const { code, world } = checked(holds, notice);
    expect(code).toBe(0);
    expect(world.output()).toBe(
      "a.joint.md: CALC-1 A Bracket\n  HOLDS  stripping  utilisation 0.50  margin 1.00\n" +
        "  1 of 1 check holds, 0 of 0 examples pass, 0 faults, 1 notice\n",
    );
    expect(world.errors()).toMatch(/notice shadows/);
  });
  test("one fails, or is not evaluated, or an example fails: 1", () => {
    expect(checked(holds, fails).code).toBe(1);
    expect(checked(open).code).toBe(1);
    expect(checked(open).world.output()).toMatch(/NOT EVALUATED {2}creep {2}waits for tau/);
    expect(checked(badExample).code).toBe(1);
    expect(checked(badExample).world.output()).toMatch(/EXAMPLE FAILS {2}x = 1 m \+ 3 s {2}gives 2 m/);
  });
  test("a fault: 2, before anything that fails; waiting values are named", () => {
    const { code, world } = checked(faulty, waiting, fails);
    expect(code).toBe(2);
    expect(world.errors()).toMatch(/^a\.joint\.md:1:5: fault unlike-sides/);
    expect(world.output()).toMatch(/waits {2}F for x/);
  });
  test("holds by the nominal value alone is said, and passes", () => {
    const { code, world } = checked(line("8", { kind: "check", check: { state: "nominal", title: "stripping" } }));
    expect(code).toBe(0);
    expect(world.output()).toMatch(/HOLDS \(nominal only\)/);
  });
  test("standard input, and several notebooks", () => {
    expect(called(["check", "-"], { outputs: () => [holds] }, { input: "x" }).world.output()).toMatch(/^standard input/);
    const two = called(["check", "a.joint.md", "b.joint.md"], { outputs: () => [holds] }, { files: { ...files, "b.joint.md": "" } });
    expect(two.world.output()).toMatch(/a\.joint\.md[\s\S]*\n\nb\.joint\.md/);
  });
  test("JSON", () => {
    const { world, code } = called(["check", "a.joint.md", "--json"], { outputs: () => [holds, faulty, waiting] }, { files });
    const json = JSON.parse(world.output());
    expect(json.exit).toBe(code);
    expect(json.notebooks[0]).toMatchObject({
      notebook: "a.joint.md",
      checks: [{ state: "holds", title: "stripping" }],
      waiting: [{ name: "F", waitsFor: ["x"] }],
      faults: [{ code: "unlike-sides", file: "a.joint.md", line: 1 }],
    });
  });
  test("colour and progress only on a terminal, colour only when wanted", () => {
    const answers: Answers = { outputs: () => [holds, faulty] };
    const escapeCode = "\u001b[";
    const args = ["check", "a.joint.md", "a.joint.md"];
    const plain = called(args, answers, { files }).world;
    expect(plain.output() + plain.errors()).not.toContain(escapeCode);
    const shown = called(args, answers, { files, terminal: true }).world;
    expect(shown.output()).toContain(escapeCode);
    expect(shown.errors()).toContain("2 of 2: a.joint.md");
    expect(called(args, answers, { files, terminal: true, colour: false }).world.output()).not.toContain(escapeCode);
  });
});

describe("trace", () => {
  const files = { "a.joint.md": "x = 1 m + 3 s\n" };
  const symbol = (name: string) => ({ kind: "symbol" as const, name, base: name, subscript: "" });
  const view: TraceView = {
    name: symbol("M"),
    symbols: { kind: "product", factors: [symbol("W"), symbol("a")] },
    numbers: {
      kind: "product",
      factors: [
        { kind: "number", text: "42", unit: "N" },
        { kind: "number", text: "185", unit: "mm" },
      ],
    },
    result: { text: "7.77 N·m", number: "7.77", unit: "N·m" },
    outside: [],
    nominalOnly: false,
    feeds: [],
    calls: [],
  };
  test("prints symbols, numbers and result; --open asks for every level", () => {
    const asked: number[] = [];
    const trace: Session["trace"] = (_file, _name, open) => {
      asked.push(open);
      return { view, usedBy: ["F_t"] };
    };
    const { code, world } = called(["trace", "a.joint.md", "M"], { trace }, { files });
    expect(code).toBe(0);
    expect(world.output()).toBe("M = W · a\n  = 42 N · 185 mm\n  = 7.77 N·m\nused by: F_t\n");
    called(["trace", "a.joint.md", "M", "--open"], { trace }, { files });
    expect(asked[0]).toBe(0);
    expect(asked[1]).toBeGreaterThan(10);
    expect(JSON.parse(called(["trace", "a.joint.md", "M", "--json"], { trace }, { files }).world.output())).toEqual({
      view,
      usedBy: ["F_t"],
    });
  });
  test("a name that waits, is at fault, or is not there: 2 and why", () => {
    const outputs = () => [line("1", { name: "strip", waitsFor: ["tau"] }), line("2", { name: "x", diagnostics: [fault] })];
    const asked = (name: string) => called(["trace", "a.joint.md", name], { outputs }, { files });
    expect([asked("strip").code, asked("x").code, asked("stirp").code]).toEqual([2, 2, 2]);
    expect(asked("strip").world.errors()).toBe("strip waits for tau.\n");
    expect(asked("x").world.errors()).toMatch(/a\.joint\.md:1:5: fault unlike-sides/);
    expect(asked("stirp").world.errors()).toMatch(/Unknown name "stirp"\. Did you mean strip\?/);
  });
});

describe("tidy", () => {
  const files = { "a.joint.md": "x=1", "b.joint.md": "y = 1" };
  const tidy: Session["tidy"] = (file) => (file === "b.joint.md" ? "y = 1" : "x = 1");
  test("formats in place, and only what changes", () => {
    const { code, world } = called(["tidy", "a.joint.md", "b.joint.md"], { tidy }, { files });
    expect([code, world.output()]).toEqual([0, "tidied: a.joint.md\n"]);
    expect(world.files.get("a.joint.md")).toBe("x = 1");
  });
  test("--check changes nothing and ends with 1", () => {
    const { code, world } = called(["tidy", "--check", "a.joint.md", "b.joint.md"], { tidy }, { files });
    expect([code, world.output(), world.files.get("a.joint.md")]).toEqual([1, "not tidy: a.joint.md\n", "x=1"]);
    expect(called(["tidy", "--check", "b.joint.md"], { tidy }, { files }).code).toBe(0);
  });
  test("standard input to standard output", () => {
    expect(called(["tidy", "-"], { tidy }, { input: "x=1" }).world.output()).toBe("x = 1");
  });
});

describe("faults", () => {
  const catalogue = [
    {
      code: "unlike-sides",
      area: "check",
      severity: "fault",
      message: "{left} is not {right}.",
      text: "Why.",
      wrong: "```calc\nx\n```",
      right: "",
    },
  ];
  test("explains one, lists all", () => {
    expect(called(["faults", "unlike-sides"], {}, { catalogue }).world.output()).toMatch(
      /unlike-sides \(fault\)\n {2}\{left\}[\s\S]*Why\.[\s\S]*Wrong\n {2}```calc\n {2}x/,
    );
    expect(called(["faults"], {}, { catalogue }).world.output()).toBe("unlike-sides  {left} is not {right}.\n");
    expect(JSON.parse(called(["faults", "unlike-sides", "--json"], {}, { catalogue }).world.output())).toEqual(catalogue[0]);
  });
  test("the nearest code is offered", () =>
    expect(called(["faults", "unlike-side"], {}, { catalogue }).world.errors()).toMatch(/Did you mean unlike-sides\?/));
});
