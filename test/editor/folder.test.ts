// Folders: what is read of them, what is left out and said, what somebody else changed on disk, what a project gives the engine.

import { describe, expect, test } from "vitest";
import {
  folderLimits,
  type Keep,
  type Project,
  projectFromKeep,
  projectOf,
  readDirectory,
  readSources,
  type Source,
  saveToDisk,
} from "../../editor/index.ts";
import { memoryKeep } from "./memory-keep.ts";

/** A folder on a disk of its own: files by path, each with a time that grows with every write. */
function disk(start: Readonly<Record<string, string>>) {
  const files = new Map<string, { text: string; time: number }>();
  let clock = 0;
  const write = (path: string, text: string): void => void files.set(path, { text, time: ++clock });
  for (const [path, text] of Object.entries(start)) write(path, text);
  const file = (path: string) => ({
    kind: "file" as const,
    name: path.split("/").at(-1) ?? "",
    isSameEntry: async () => true,
    async getFile() {
      const found = files.get(path);
      if (found === undefined) throw new DOMException("gone", "NotFoundError");
      const { text, time } = found;
      return { name: path, size: text.length, lastModified: time, text: async () => text };
    },
    async createWritable() {
      let written = "";
      return {
        write: async (text: string) => {
          written = text;
        },
        close: async () => write(path, written),
      };
    },
  });
  const directory = (path: string): object => ({
    kind: "directory",
    name: path === "" ? "arm" : (path.split("/").at(-2) ?? ""),
    queryPermission: async () => "granted",
    async *values() {
      const here = [...files.keys()].filter((name) => name.startsWith(path)).map((name) => name.slice(path.length));
      for (const name of here.filter((rest) => !rest.includes("/"))) yield file(path + name);
      for (const name of new Set(here.filter((rest) => rest.includes("/")).map((rest) => rest.split("/")[0])))
        yield directory(`${path}${name}/`);
    },
  });
  return {
    root: directory("") as FileSystemDirectoryHandle,
    handle: (path: string) => file(path) as unknown as FileSystemFileHandle,
    write,
    remove: (path: string) => files.delete(path),
    text: (path: string) => files.get(path)?.text,
  };
}

const names = (project: Project): readonly string[] => project.files().map(({ name }) => name);

describe("reading a folder", () => {
  test("takes notebooks and csv files, also those in folders below, and no others", async () => {
    const d = disk({ "a.joint.md": "a", "data/pulls.csv": "x\n1", "photo.png": "…", ".git/b.joint.md": "no", "notes.md": "no" });
    expect([...(await readDirectory(d.root)).files.keys()]).toEqual(["a.joint.md", "data/pulls.csv"]);
  });

  test("takes off a byte-order mark and remembers the line ends", async () => {
    const d = disk({ "a.joint.md": "\uFEFFone\r\ntwo\r\n" });
    expect((await readDirectory(d.root)).files.get("a.joint.md")).toMatchObject({ text: "one\ntwo\n", lineEnd: "\r\n" });
  });

  test("says what it left out, and why", async () => {
    const source = (name: string, size: number): Source => ({ name, size, modified: 0, text: async () => "" });
    const many = Array.from({ length: folderLimits.files + 1 }, (_, i) => source(`n${String(i).padStart(4, "0")}.joint.md`, 1));
    expect((await readSources("x", many)).leftOut).toEqual([{ name: "n0500.joint.md", why: "too many" }]);
    const large = await readSources("x", [source("a.csv", folderLimits.bytes + 1), source("b.csv", 10)]);
    expect(large.leftOut).toEqual([{ name: "a.csv", why: "too large" }]);
    expect([...large.files.keys()]).toEqual(["b.csv"]);
    const torn: Source = { ...source("c.csv", 1), text: () => Promise.reject(new Error("torn")) };
    expect((await readSources("x", [torn])).leftOut).toEqual([{ name: "c.csv", why: "unreadable" }]);
  });
});

describe("a project", () => {
  const start = { "main.joint.md": "main", "shop.joint.md": "shop", "pulls.csv": "F [N]\n3" };
  const open = async (keep: Keep | undefined, d = disk(start)) => projectOf(await readDirectory(d.root), "f1", keep);

  test("gives the engine every file but the open one", async () => {
    const project = await open(undefined);
    expect(project.beside("main.joint.md").map(({ file }) => file)).toEqual(["pulls.csv", "shop.joint.md"]);
  });

  test("is there again from the browser's store when the disk may not be read", async () => {
    const { keep } = memoryKeep();
    await open(keep);
    const again = await projectFromKeep("f1", keep);
    expect(again?.file("shop.joint.md")).toMatchObject({ text: "shop", onDisk: true });
  });

  test("keeps a change of a file that is not open, and does not lose it when the folder is opened again", async () => {
    const { keep, stored } = memoryKeep();
    const d = disk(start);
    const project = await open(keep, d);
    expect(await project.change("shop.joint.md", "shop two")).toMatchObject({ kind: "kept" });
    expect(stored.get("f1/shop.joint.md")).toMatchObject({ text: "shop two", onDisk: false });
    const again = await open(keep, d);
    expect(again.file("shop.joint.md")).toMatchObject({ text: "shop two", onDisk: false });
  });

  test("a change back to what is on disk counts as on disk", async () => {
    const project = await open(memoryKeep().keep);
    project.hold("shop.joint.md", "other");
    project.hold("shop.joint.md", "shop");
    expect(project.file("shop.joint.md")?.onDisk).toBe(true);
  });

  test("takes a csv file that was dropped", async () => {
    const project = await open(memoryKeep().keep);
    await project.add([{ name: "new.csv", text: "F [N]\n4", lineEnd: "\n", modified: 0 }]);
    expect(names(project)).toEqual(["main.joint.md", "new.csv", "pulls.csv", "shop.joint.md"]);
    expect(project.file("new.csv")?.onDisk).toBe(false);
  });

  test("tells what somebody else changed, made or removed on disk", async () => {
    const d = disk(start);
    const project = await open(undefined, d);
    expect(await project.lookAtDisk()).toEqual({ changed: [], gone: [] });
    d.write("shop.joint.md", "theirs");
    d.write("new.joint.md", "new");
    d.remove("pulls.csv");
    const seen = await project.lookAtDisk();
    expect(seen?.changed.map(({ name }) => name)).toEqual(["new.joint.md", "shop.joint.md"]);
    expect(seen?.gone).toEqual(["pulls.csv"]);
    expect(await project.lookAtDisk()).toEqual({ changed: [], gone: [] });
  });

  test("a file that was only touched has not changed", async () => {
    const d = disk(start);
    const project = await open(undefined, d);
    d.write("shop.joint.md", "shop");
    expect((await project.lookAtDisk())?.changed).toEqual([]);
  });
});

describe("saving to a file on disk", () => {
  const seen = async (d: ReturnType<typeof disk>, path: string) => (await d.handle(path).getFile()).lastModified;

  test("writes, and says at what time", async () => {
    const d = disk({ "a.joint.md": "one" });
    const saved = await saveToDisk("a.joint.md", "two", d.handle("a.joint.md"), { modified: await seen(d, "a.joint.md") });
    expect(saved).toMatchObject({ how: "written", modified: await seen(d, "a.joint.md") });
    expect(d.text("a.joint.md")).toBe("two");
  });

  test("F109: an older text never replaces what somebody else wrote since; it is written when the user says so", async () => {
    const d = disk({ "a.joint.md": "one" });
    const modified = await seen(d, "a.joint.md");
    d.write("a.joint.md", "theirs");
    expect(await saveToDisk("a.joint.md", "mine", d.handle("a.joint.md"), { modified })).toMatchObject({ how: "changed", text: "theirs" });
    expect(d.text("a.joint.md")).toBe("theirs");
    await saveToDisk("a.joint.md", "mine", d.handle("a.joint.md"), { modified, evenIf: "changed" });
    expect(d.text("a.joint.md")).toBe("mine");
  });

  test("F110: a file that was deleted does not come back unasked", async () => {
    const d = disk({ "a.joint.md": "one" });
    const modified = await seen(d, "a.joint.md");
    d.remove("a.joint.md");
    expect(await saveToDisk("a.joint.md", "mine", d.handle("a.joint.md"), { modified })).toEqual({ how: "gone" });
    expect(d.text("a.joint.md")).toBeUndefined();
    await saveToDisk("a.joint.md", "mine", d.handle("a.joint.md"), { modified, evenIf: "gone" });
    expect(d.text("a.joint.md")).toBe("mine");
  });
});
