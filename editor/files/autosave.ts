// Keeps the notebook at hand in the browser's store within a second of each change, one write at a time, and never over a
// version it has not seen. It knows nothing of the editor: text comes in through `changed`, what happened goes out as states.

import type { Keep, Kept } from "./keep.ts";

export type KeepState =
  | { readonly kind: "kept" }
  | { readonly kind: "keeping" }
  /** Another tab went on with the same notebook; this tab's text now has a life of its own under a new id. */
  | { readonly kind: "parted"; readonly other: Kept }
  | { readonly kind: "full" }
  | { readonly kind: "unavailable"; readonly observed: string };

export interface AutosaveOptions {
  /** Absent where the browser has no store to give. */
  readonly keep: Keep | undefined;
  /** The text as it is now; read once a write, not once a keystroke. */
  readonly text: () => string;
  readonly onState: (state: KeepState) => void;
  /** The other tab's text, taken over because this tab had nothing of its own to lose. */
  readonly onFollow: (kept: Kept) => void;
  readonly newId: () => string;
  /** Milliseconds of rest before a write, and the longest a change waits for one. */
  readonly rest?: number;
  readonly longest?: number;
}

/** What is at hand, without the store's own fields. */
export type AtHand = Omit<Kept, "version" | "at" | "text">;

export interface Autosave {
  /** Takes over what was read from the store, or begins something that is not kept yet (version 0). */
  begin(notebook: AtHand, version: number): void;
  changed(change: Partial<Omit<AtHand, "id">>): void;
  /** Writes what is not kept yet, now. */
  flush(): Promise<void>;
  atHand(): AtHand | undefined;
  isKept(): boolean;
  close(): void;
}

export function createAutosave(options: AutosaveOptions): Autosave {
  const { keep } = options;
  const rest = options.rest ?? 250;
  const longest = options.longest ?? 800;
  let notebook: AtHand | undefined;
  let version = 0;
  let dirty = false;
  let dirtySince = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let writing: Promise<void> | undefined;

  const plan = (): void => {
    clearTimeout(timer);
    const waited = performance.now() - dirtySince;
    timer = setTimeout(() => void write(), Math.max(0, Math.min(rest, longest - waited)));
  };

  const write = async (): Promise<void> => {
    clearTimeout(timer);
    timer = undefined;
    if (writing !== undefined) {
      await writing;
      if (dirty) await write();
      return;
    }
    if (!dirty || notebook === undefined) return;
    if (keep === undefined) return options.onState({ kind: "unavailable", observed: "no store" });
    writing = writeOnce(keep, notebook);
    await writing;
    writing = undefined;
  };

  const writeOnce = async (store: Keep, written: AtHand): Promise<void> => {
    dirty = false;
    const text = options.text();
    const outcome = await store.write({ ...written, text }, version);
    if (notebook?.id !== written.id) return;
    if (outcome.kind === "kept") {
      version = outcome.version;
      if (version === 1) await store.setLast(written.id).catch(() => {});
      if (dirty) plan();
      else options.onState({ kind: "kept" });
      return;
    }
    dirty = true;
    if (outcome.kind !== "newer") return options.onState(outcome);
    if (outcome.newer.text === text && outcome.newer.name === notebook.name) {
      version = outcome.newer.version;
      dirty = false;
      return options.onState({ kind: "kept" });
    }
    // The file on disk stays with the version that is older there; this one must be given a name of its own.
    notebook = { id: options.newId(), name: copyName(notebook.name), lineEnd: notebook.lineEnd, onDisk: false };
    version = 0;
    options.onState({ kind: "parted", other: outcome.newer });
    plan();
  };

  const stopListening = keep?.onWritten((id, newer) => {
    if (notebook?.id !== id || newer <= version || dirty || writing !== undefined) return;
    void keep.read(id).then((kept) => {
      if (kept === undefined || notebook?.id !== id || kept.version <= version || dirty || writing !== undefined) return;
      version = kept.version;
      notebook = strip(kept);
      options.onFollow(kept);
    });
  });

  return {
    begin(next, from) {
      notebook = next;
      version = from;
      dirty = from === 0;
      if (!dirty) {
        void keep?.setLast(next.id).catch(() => {});
        return options.onState({ kind: "kept" });
      }
      dirtySince = performance.now();
      plan();
    },
    changed(change) {
      if (notebook === undefined) return;
      notebook = { ...notebook, ...change };
      if (!dirty) dirtySince = performance.now();
      dirty = true;
      options.onState({ kind: "keeping" });
      plan();
    },
    flush: write,
    atHand: () => notebook,
    isKept: () => !dirty && writing === undefined,
    close() {
      clearTimeout(timer);
      stopListening?.();
    },
  };
}

const strip = ({ version: _version, at: _at, text: _text, ...rest }: Kept): AtHand => rest;

function copyName(name: string): string {
  const at = name.indexOf(".");
  return at === -1 ? `${name}-copy` : `${name.slice(0, at)}-copy${name.slice(at)}`;
}
