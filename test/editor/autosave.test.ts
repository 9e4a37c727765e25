// Autosave: within a second, never over a newer version, plain words when the store has no room.

import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { type AtHand, createAutosave, type Keep, type KeepState } from "../../editor/index.ts";
import { memoryKeep as memory } from "./memory-keep.ts";

function tab(keep: Keep | undefined, name = "a") {
  let text = "";
  const states: KeepState[] = [];
  let ids = 0;
  const autosave = createAutosave({
    keep,
    text: () => text,
    newId: () => `${name}-new-${++ids}`,
    onState: (state) => states.push(state),
    onFollow: (kept) => {
      text = kept.text;
    },
  });
  return {
    autosave,
    states,
    text: () => text,
    begin: (notebook: AtHand, version: number, start = "") => {
      text = start;
      autosave.begin(notebook, version);
    },
    type: (next: string) => {
      text = next;
      autosave.changed({ onDisk: false });
    },
  };
}

const notebook: AtHand = { id: "one", name: "one.joint.md", lineEnd: "\n", onDisk: false };

beforeEach(() => {
  vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout", "performance"] });
});
afterEach(() => vi.useRealTimers());

const rest = (milliseconds: number): Promise<unknown> => vi.advanceTimersByTimeAsync(milliseconds);

describe("autosave", () => {
  test("keeps a change within a second, also while typing goes on and on", async () => {
    const { keep, stored } = memory();
    const one = tab(keep);
    one.begin(notebook, 0, "start");
    await rest(1000);
    for (let turn = 1; turn <= 12; turn += 1) {
      one.type(`text ${turn}`);
      await rest(100);
    }
    expect(stored.get("one")?.text).toMatch(/^text ([4-9]|1\d)$/);
    await rest(1000);
    expect(stored.get("one")?.text).toBe("text 12");
    expect(one.states.at(-1)?.kind).toBe("kept");
  });
  test("flush writes at once", async () => {
    const { keep, stored } = memory();
    const one = tab(keep);
    one.begin(notebook, 0, "x");
    await one.autosave.flush();
    expect(stored.get("one")).toMatchObject({ text: "x", version: 1 });
    expect(one.autosave.isKept()).toBe(true);
  });
  test("a tab with nothing of its own follows the other", async () => {
    const { keep } = memory();
    const one = tab(keep);
    const two = tab(keep, "b");
    one.begin(notebook, 0, "start");
    await rest(1000);
    two.begin(notebook, 1, "start");
    one.type("newer");
    await rest(1000);
    expect(two.text()).toBe("newer");
    two.type("newest");
    await rest(1000);
    expect(one.text()).toBe("newest");
  });
  test("two tabs that both changed part; nothing is overwritten", async () => {
    const { keep, stored } = memory();
    const one = tab(keep);
    const two = tab(keep, "b");
    one.begin(notebook, 0, "start");
    await rest(1000);
    two.begin(notebook, 1, "start");
    one.type("mine");
    two.type("theirs");
    await rest(2000);
    const texts = [...stored.values()].map(({ text }) => text).sort();
    expect(texts).toEqual(["mine", "theirs"]);
    expect(stored.get("one")?.version).toBe(2);
    const parted = [...one.states, ...two.states].filter(({ kind }) => kind === "parted");
    expect(parted).toHaveLength(1);
  });
  test("the same text from two tabs is no conflict", async () => {
    const { keep, stored } = memory();
    const one = tab(keep);
    const two = tab(keep, "b");
    one.begin(notebook, 0, "start");
    await rest(1000);
    two.begin(notebook, 1, "start");
    one.type("same");
    two.type("same");
    await rest(2000);
    expect([...stored.keys()]).toEqual(["one"]);
    expect([...one.states, ...two.states].some(({ kind }) => kind === "parted")).toBe(false);
  });
  test("says when the store is full, and keeps again once there is room", async () => {
    const store = memory();
    const one = tab(store.keep);
    one.begin(notebook, 0, "start");
    await rest(1000);
    store.fail({ kind: "full" });
    one.type("more");
    await rest(1000);
    expect(one.states.at(-1)?.kind).toBe("full");
    expect(one.autosave.isKept()).toBe(false);
    store.fail(undefined);
    one.type("more still");
    await rest(1000);
    expect(store.stored.get("one")?.text).toBe("more still");
  });
  test("says when there is no store at all", async () => {
    const one = tab(undefined);
    one.begin(notebook, 0, "start");
    await rest(1000);
    expect(one.states.at(-1)?.kind).toBe("unavailable");
  });
});
