// The link: order, joined changes, outputs that never sit at a wrong line, a worker that hangs.

import { EditorState, type TransactionSpec } from "@codemirror/state";
import { afterEach, describe, expect, test, vi } from "vitest";
import {
  type Ask,
  createLink,
  type EngineLink,
  hostSession,
  type LinkState,
  outputsField,
  outputsIn,
  type Reply,
  receiveSnapshot,
  type WorkerPort,
} from "../../editor/index.ts";
import { createSession } from "../../engine/session/index.ts";
import { fakeSession } from "./fake-session.ts";

const TEXT = "```calc\nW = 42 N\na = 3 mm\nM = W * a\n```\n";

/** An editor without a view, a link, and a worker that answers only when it is told to. */
function bench(text = TEXT) {
  const workers: { readonly asks: Ask[]; readonly port: WorkerPort; ended: boolean; readonly answer: (ask: Ask) => void }[] = [];
  const states: LinkState[] = [];
  let state = EditorState.create({ doc: text, extensions: [outputsField] });
  const startWorker = (): WorkerPort => {
    const asks: Ask[] = [];
    const port: WorkerPort = {
      onmessage: null,
      onerror: null,
      postMessage: (ask) => void asks.push(ask),
      terminate: () => {
        worker.ended = true;
      },
    };
    const answer = hostSession(fakeSession(), (reply: Reply) => port.onmessage?.({ data: reply }));
    const worker = { asks, port, ended: false, answer };
    workers.push(worker);
    return port;
  };
  const link: EngineLink = createLink({
    startWorker,
    onSnapshot: (snapshot, since, whole) => {
      state = state.update({ effects: receiveSnapshot.of({ snapshot, since, whole }) }).state;
    },
    onState: (next) => states.push(next),
    editBudget: 1000,
    openBudget: 5000,
  });
  link.open("test.joint.md", state.doc);
  return {
    link,
    workers,
    states,
    worker: () => workers.at(-1)!,
    /** Lets the newest worker answer what it was asked so far. */
    answer: (count = Number.POSITIVE_INFINITY) => {
      const worker = workers.at(-1)!;
      for (let left = count; left > 0 && worker.asks.length > 0; left -= 1) worker.answer(worker.asks.shift() as Ask);
    },
    edit: (spec: TransactionSpec) => {
      const transaction = state.update(spec);
      state = transaction.state;
      link.edit(transaction.changes, state.doc);
    },
    text: () => state.doc.toString(),
    /** `name: value @ line` of each output. */
    shown: () =>
      outputsIn(state, 0, state.doc.length).map(
        ({ output, from }) => `${output.name}: ${output.value?.text ?? "none"} @ ${state.doc.lineAt(from).number}`,
      ),
  };
}

afterEach(() => vi.useRealTimers());

describe("edits", () => {
  test("outputs stand at their lines after the first answer", () => {
    const b = bench();
    b.answer();
    expect(b.shown()).toEqual(["W: 42 N @ 2", "a: 3 mm @ 3", "M: 126 N·mm @ 4"]);
    expect(b.states.at(-1)).toBe("idle");
  });
  test("changes made while the worker is busy go out as one", () => {
    const b = bench();
    const end = TEXT.indexOf(" N\n");
    b.edit({ changes: { from: end, insert: "1" } });
    b.edit({ changes: { from: end + 1, insert: "2" } });
    expect(b.worker().asks.map(({ kind }) => kind)).toEqual(["open"]);
    b.answer(1);
    expect(b.worker().asks).toEqual([expect.objectContaining({ kind: "edit", changes: [{ from: end, to: end, insert: "12" }] })]);
    b.answer();
    expect(b.shown()[0]).toBe("W: 4212 N @ 2");
  });
  test("an answer that is late is moved along with what was typed since", () => {
    const b = bench();
    b.edit({ changes: { from: 0, insert: "# Head\n\nTwo lines\n\n" } });
    b.answer(1);
    expect(b.shown()).toEqual(["W: 42 N @ 6", "a: 3 mm @ 7", "M: 126 N·mm @ 8"]);
    b.edit({ changes: { from: 0, insert: "\n" } });
    expect(b.shown()[0]).toBe("W: 42 N @ 7");
    b.answer();
    expect(b.shown()).toEqual(["W: 42 N @ 7", "a: 3 mm @ 8", "M: 126 N·mm @ 9"]);
  });
  test("the output of a statement that is taken out is gone at once", () => {
    const b = bench();
    b.answer();
    const from = b.text().indexOf("a = 3");
    b.edit({ changes: { from, to: from + "a = 3 mm\n".length } });
    expect(b.shown()).toEqual(["W: 42 N @ 2", "M: 126 N·mm @ 3"]);
    b.answer();
    expect(b.shown()).toEqual(["W: 42 N @ 2", "M: none @ 3"]);
  });
  test("many edits with answers at any moment end in the same outputs as opening the text afresh", () => {
    let seed = 7;
    const random = (below: number): number => {
      seed = (seed * 1103515245 + 12345) % 2147483648;
      return seed % below;
    };
    const b = bench();
    for (let turn = 0; turn < 300; turn += 1) {
      const text = b.text();
      const from = random(text.length);
      const pieces = ["1", "\n", "b = 2 mm\n", "", " ", "W"];
      b.edit({ changes: { from, to: Math.min(text.length, from + random(3)), insert: pieces[random(pieces.length)] as string } });
      if (random(3) === 0) b.answer(1 + random(2));
    }
    // An answer may send what was typed since; that wants an answer too.
    for (let turn = 0; turn < 3; turn += 1) b.answer();
    const fresh = bench(b.text());
    fresh.answer();
    expect(b.shown()).toEqual(fresh.shown());
  });
});

describe("questions", () => {
  test("are asked of the text as it is now", async () => {
    const b = bench();
    b.answer();
    b.edit({ changes: { from: b.text().indexOf("M ="), insert: "zz = 1 N\n" } });
    const found = b.link.ask({ about: "complete", offset: 10 });
    b.answer();
    expect((await found)?.options.map(({ label }) => label)).toContain("zz");
  });
  test("an answer about a text that changed meanwhile is none", async () => {
    const b = bench();
    b.answer();
    const found = b.link.ask({ about: "complete", offset: 10 });
    b.edit({ changes: { from: 0, insert: "\n" } });
    b.answer();
    expect(await found).toBeUndefined();
  });
});

describe("a worker that does not answer in time", () => {
  test("is ended and said to be; the text is untouched and the next change starts afresh", () => {
    vi.useFakeTimers();
    const b = bench();
    b.answer();
    b.edit({ changes: { from: 8, insert: "x" } });
    vi.advanceTimersByTime(1001);
    expect(b.states.at(-1)).toBe("stopped");
    expect(b.workers[0]?.ended).toBe(true);
    b.edit({ changes: { from: 8, to: 9 } });
    expect(b.workers).toHaveLength(2);
    expect(b.worker().asks).toEqual([expect.objectContaining({ kind: "open", text: TEXT })]);
    b.answer();
    expect(b.shown()).toEqual(["W: 42 N @ 2", "a: 3 mm @ 3", "M: 126 N·mm @ 4"]);
    expect(b.states.at(-1)).toBe("idle");
  });
  test("a question that waits on it is let go", async () => {
    vi.useFakeTimers();
    const b = bench();
    b.answer();
    const found = b.link.ask({ about: "hover", offset: 9 });
    vi.advanceTimersByTime(1001);
    expect(await found).toBeUndefined();
  });
  test("a whole text may take longer than a change", () => {
    vi.useFakeTimers();
    const b = bench();
    vi.advanceTimersByTime(4000);
    expect(b.states).not.toContain("stopped");
    vi.advanceTimersByTime(1001);
    expect(b.states.at(-1)).toBe("stopped");
  });
  test("a late reply of an ended worker changes nothing", () => {
    vi.useFakeTimers();
    const b = bench();
    const first = b.worker();
    vi.advanceTimersByTime(5001);
    b.edit({ changes: { from: 0, insert: "\n" } });
    first.answer(first.asks[0] as Ask);
    expect(b.shown()).toEqual([]);
  });
});

describe("a folder of files", () => {
  const shop = "```calc\nW = 42 N\n```\n";
  const main = '```calc\nuse "shop.joint.md" as shop\nF = 2 * shop.W\n```\n';

  /** A link whose worker is a real session and answers at once. */
  function folder() {
    let state = EditorState.create({ doc: main, extensions: [outputsField] });
    const library = { version: "0", modules: [], files: [], natives: {}, sources: "" };
    const start = (): WorkerPort => {
      const port: WorkerPort = { onmessage: null, onerror: null, postMessage: (ask) => answer(ask), terminate: () => {} };
      const answer = hostSession(createSession(library), (reply: Reply) => port.onmessage?.({ data: reply }));
      return port;
    };
    const link = createLink({
      startWorker: start,
      onSnapshot: (snapshot, since, whole) => {
        state = state.update({ effects: receiveSnapshot.of({ snapshot, since, whole }) }).state;
      },
      onState: () => {},
    });
    const value = (name: string) => outputsIn(state, 0, state.doc.length).find(({ output }) => output.name === name)?.output.value?.text;
    return {
      link,
      value,
      open: (file: string, text: string, beside: readonly { file: string; text: string }[]) => {
        state = EditorState.create({ doc: text, extensions: [outputsField] });
        link.open(file, state.doc, beside);
      },
    };
  }

  test("a use line finds the notebook beside it", () => {
    const f = folder();
    f.open("main.joint.md", main, [{ file: "shop.joint.md", text: shop }]);
    expect(f.value("F")).toBe("84 N");
  });

  test("a change of a file beside reaches what uses it", () => {
    const f = folder();
    f.open("main.joint.md", main, [{ file: "shop.joint.md", text: shop }]);
    f.link.beside([{ file: "shop.joint.md", text: shop.replace("42", "50") }]);
    expect(f.value("F")).toBe("100 N");
    f.link.beside([{ file: "shop.joint.md" }]);
    expect(f.value("F")).toBeUndefined();
  });

  test("going to another notebook of the folder and back shows everything again", () => {
    const f = folder();
    f.open("main.joint.md", main, [{ file: "shop.joint.md", text: shop }]);
    f.open("shop.joint.md", shop, [{ file: "main.joint.md", text: main }]);
    expect(f.value("W")).toBe("42 N");
    f.open("main.joint.md", main, [{ file: "shop.joint.md", text: shop }]);
    expect(f.value("F")).toBe("84 N");
  });
});
