// The desk: what lies on it (a notebook, its outputs), where it is kept, and what the user may do with it. The only place that
// joins pad, engine link, browser store and disk; the views read its state and call its functions.

import { editFrontMatter, openText, readFrontMatter, saveText } from "../../engine/notebook/index.ts";
import type { LineOutput, TitleBlock, ViewSystem } from "../../engine/session/index.ts";
import { type Autosave, createAutosave, type KeepState } from "../files/autosave.ts";
import { type DiskFile, fileName, openFromDisk, saveAs, saveToDisk } from "../files/disk.ts";
import type { Keep, Kept } from "../files/keep.ts";
import { createLink, type EngineLink, type LinkState } from "../link/link.ts";
import type { WorkerPort } from "../link/protocol.ts";
import { outputsField, outputsIn } from "../pad/outputs-field.ts";
import { createPad, type Pad } from "../pad/pad.ts";
import { createDeskTools, type DeskTools } from "./desk-tools.ts";
import { rememberedTheme, type Theme } from "./theme.ts";

export const panels = ["outline", "checks", "trace", "library", "review", "faults"] as const;
export type Panel = (typeof panels)[number];

/** What lies over the page for a moment. */
export type Overlay =
  | { readonly kind: "commands"; readonly query?: string }
  | { readonly kind: "help" }
  | { readonly kind: "rename"; readonly name: string }
  | { readonly kind: "unit"; readonly output: LineOutput; readonly at: DOMRect }
  | { readonly kind: "reference"; readonly output: LineOutput; readonly at: DOMRect }
  | { readonly kind: "module"; readonly module: string; readonly name: string };

export interface Notice {
  readonly key: string;
  readonly tone: "plain" | "open" | "fails";
  readonly text: string;
  readonly actions: readonly { readonly label: string; readonly run: () => void }[];
}

export interface DeskState {
  readonly name: string;
  readonly onDisk: boolean;
  readonly keep: KeepState;
  readonly link: LinkState;
  readonly title: TitleBlock;
  readonly counts: { readonly faults: number; readonly failing: number; readonly checks: number; readonly open: number };
  readonly place: "pad" | "start";
  readonly overlay: Overlay | undefined;
  readonly system: ViewSystem;
  readonly theme: Theme;
  readonly panel: Panel | undefined;
  /** The id of the output whose trace the panel shows: of the line under the caret, or one that was chosen. */
  readonly traced: string | undefined;
  /** The library name whose card the Library panel shows. */
  readonly card: string | undefined;
  /** The line of the caret changes what the panels mark as here. */
  readonly caretLine: number;
  readonly notices: readonly Notice[];
  readonly frontShown: boolean;
  /** Of the outputs; grows with every answer of the engine. */
  readonly revision: number;
  /** Grows with every change of text or outputs; views that list them read again. */
  readonly turn: number;
}

export interface DeskOptions {
  readonly parent: HTMLElement;
  readonly startWorker: () => WorkerPort;
  /** Absent where the browser has no store to give. */
  readonly keep: Keep | undefined;
}

export interface Desk extends DeskTools {
  readonly pad: Pad;
  readonly link: EngineLink;
  state(): DeskState;
  subscribe(listener: () => void): () => void;
  start(): Promise<void>;
  newNotebook(): Promise<void>;
  open(): Promise<void>;
  openKept(id: string): Promise<void>;
  save(): Promise<void>;
  saveAs(): Promise<void>;
  editTitle(field: keyof TitleBlock, value: string): void;
  showFront(open: boolean): void;
  showPanel(panel: Panel | undefined): void;
  showPlace(place: DeskState["place"]): void;
  /** Opens a text that is kept nowhere yet under a name of its own. */
  openText(name: string, text: string): Promise<void>;
  trace(id: string): void;
  recent(): Promise<readonly Kept[]>;
  flush(): Promise<void>;
}

/** A new notebook: results show in the units of the trade, and the first line of working waits. */
const EMPTY = "---\nunits: { length: mm, area: mm^2, force: N, stress: MPa, torque: N*m }\n---\n```calc\n\n```\n";
const blank = (): Omit<Kept, "version" | "at"> => ({
  id: crypto.randomUUID(),
  name: fileName(""),
  text: EMPTY,
  lineEnd: "\n",
  onDisk: false,
});
/** Where the window is narrower the panel lies over the page, so it opens only when asked for. */
const ROOM_FOR_PANEL = 1200;
const NO_TITLE: TitleBlock = readFrontMatter("").title;
/** Which notebook this tab had open, so that a reload finds it and not the one another tab opened last. */
const TAB_KEY = "jointwright-notebook";

export function createDesk(options: DeskOptions): Desk {
  const { keep } = options;
  const listeners = new Set<() => void>();
  let current: DeskState = {
    name: "",
    onDisk: false,
    keep: { kind: "kept" },
    link: "starting",
    title: NO_TITLE,
    counts: { faults: 0, failing: 0, checks: 0, open: 0 },
    place: "pad",
    overlay: undefined,
    system: "written",
    theme: rememberedTheme(),
    panel: window.innerWidth < ROOM_FOR_PANEL ? undefined : "trace",
    traced: undefined,
    card: undefined,
    caretLine: 1,
    notices: [],
    frontShown: false,
    revision: 0,
    turn: 0,
  };
  const set = (change: Partial<DeskState>): void => {
    current = { ...current, ...change };
    for (const listener of listeners) listener();
  };
  const notify = (notice: Notice): void => set({ notices: [...current.notices.filter(({ key }) => key !== notice.key), notice] });
  const dismiss = (key: string): void => set({ notices: current.notices.filter((notice) => notice.key !== key) });
  const say = (key: string, text: string, tone: Notice["tone"] = "open"): void =>
    notify({ key, tone, text, actions: [{ label: "Close", run: () => dismiss(key) }] });

  const link = createLink({
    startWorker: options.startWorker,
    onSnapshot: (snapshot, since, whole) => {
      pad.receive(snapshot, since, whole);
      // A worker that was started again knows of no view.
      if (whole && current.system !== "written") void desk.setSystem(current.system);
    },
    onState: (state, observed) => {
      set({ link: state });
      if (state === "idle") dismiss("engine");
      if (state === "stopped") {
        say(
          "engine",
          "The last change asked for more work than the pad allows, so the calculation was stopped. Your text is untouched; it calculates again with the next change.",
          "fails",
        );
      }
      if (state === "broken") {
        say(
          "engine",
          `The calculation ended by a fault of Jointwright (${observed ?? "unknown"}). Your text is untouched; it starts again with the next change.`,
          "fails",
        );
      }
    },
  });

  const pad = createPad({
    parent: options.parent,
    link,
    onUpdate: ({ text, outputs, caret }) => {
      if (caret || outputs) followCaret();
      if (text === "own") {
        if (current.onDisk) set({ onDisk: false });
        autosave.changed({ onDisk: false });
      }
      if (outputs) {
        const field = pad.view.state.field(outputsField);
        set({ title: field.title ?? NO_TITLE, counts: field.counts, revision: field.revision, turn: current.turn + 1 });
      } else if (text !== "none") set({ turn: current.turn + 1 });
    },
    onChoose: (output, at) => {
      const [cause] = output.waitsFor ?? [];
      if (cause !== undefined) desk.goToOutput(cause);
      else if (output.diagnostics.some(({ severity }) => severity === "fault")) set({ panel: "faults" });
      else if (output.kind === "definition" && output.value !== undefined) desk.chooseUnit(output, at);
      else desk.trace(output.id);
    },
    onCite: (output, at) => set({ overlay: { kind: "reference", output, at } }),
  });

  /** The trace is that of the line under the caret, where the line gives something to trace. */
  const followCaret = (): void => {
    const { state } = pad.view;
    const line = state.doc.lineAt(state.selection.main.head);
    const here = outputsIn(state, line.from, line.to).find(
      ({ output }) => output.kind === "definition" || output.kind === "check" || output.kind === "example",
    );
    const traced = here?.output.id ?? current.traced;
    if (traced !== current.traced || line.number !== current.caretLine) set({ traced, caretLine: line.number });
  };

  const autosave: Autosave = createAutosave({
    keep,
    text: () => pad.view.state.doc.toString(),
    newId: () => crypto.randomUUID(),
    onState: (state) => {
      set({ keep: state, name: autosave.atHand()?.name ?? current.name, onDisk: autosave.atHand()?.onDisk ?? false });
      rememberTab();
      if (state.kind === "full") {
        notify({
          key: "keep",
          tone: "fails",
          text: "The browser's storage is full: changes are not kept. Save the notebook to disk, or remove notebooks you no longer need.",
          actions: [{ label: "Save", run: () => void desk.save() }],
        });
      }
      if (state.kind === "unavailable") {
        notify({
          key: "keep",
          tone: "fails",
          text: "This browser keeps nothing for this page (a private window, or storage is switched off). Save to disk before you close it.",
          actions: [
            { label: "Save", run: () => void desk.save() },
            { label: "Close", run: () => dismiss("keep") },
          ],
        });
      }
      if (state.kind === "kept") dismiss("keep");
      if (state.kind === "parted") parted(state.other);
    },
    onFollow: (kept) => {
      pad.follow(kept.text);
      set({ name: kept.name, onDisk: kept.onDisk });
    },
  });

  const parted = (other: Kept): void => {
    const key = "parted";
    notify({
      key,
      tone: "open",
      text: `Another tab changed ${other.name} at the same time. Nothing is lost: its text stays there, yours goes on here as ${autosave.atHand()?.name ?? "a copy"}.`,
      actions: [
        {
          label: "Open the other text",
          run: () => {
            dismiss(key);
            void desk.openKept(other.id);
          },
        },
        { label: "Close", run: () => dismiss(key) },
      ],
    });
  };

  const rememberTab = (): void => {
    const id = autosave.atHand()?.id;
    try {
      if (id !== undefined) sessionStorage.setItem(TAB_KEY, id);
    } catch {
      // No session storage: the notebook opened last is found instead.
    }
  };

  const rememberedTab = (): string | undefined => {
    try {
      return sessionStorage.getItem(TAB_KEY) ?? undefined;
    } catch {
      return undefined;
    }
  };

  /** Puts a text on the desk. `version` 0: it is not in the browser's store yet. */
  const lay = (notebook: Omit<Kept, "version" | "at">, version: number): void => {
    const { text, ...atHand } = notebook;
    dismiss("parted");
    pad.open(text);
    set({
      name: atHand.name,
      onDisk: atHand.onDisk,
      frontShown: false,
      traced: undefined,
      title: NO_TITLE,
      place: "pad",
      overlay: undefined,
    });
    link.open(atHand.name, pad.view.state.doc);
    autosave.begin(atHand, version);
    rememberTab();
  };

  const leave = async (): Promise<void> => {
    await autosave.flush();
  };

  const desk: Desk = {
    ...createDeskTools({ pad, link, state: () => current, set, say }),
    pad,
    link,
    state: () => current,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    async start() {
      // Nothing is kept of a pad that nobody has begun.
      if (keep === undefined) return set({ place: "start" });
      const id = rememberedTab() ?? (await keep.last().catch(() => undefined));
      const kept = id === undefined ? undefined : await keep.read(id).catch(() => undefined);
      if (kept !== undefined) return lay(kept, kept.version);
      set({ place: "start" });
    },
    async newNotebook() {
      await leave();
      lay(blank(), 0);
      pad.focus();
    },
    async open() {
      await leave();
      let file: DiskFile | undefined;
      try {
        file = await openFromDisk();
      } catch (fault) {
        return say("disk", `The file could not be read: ${words(fault)}`, "fails");
      }
      if (file === undefined) return;
      const { name, handle } = file;
      const { text, lineEnd } = openText(file.text);
      const same = keep === undefined || handle === undefined ? undefined : await keptOf(keep, handle);
      if (same !== undefined && same.text === text) lay(same, same.version);
      else lay({ id: crypto.randomUUID(), name, text, lineEnd, onDisk: true, ...(handle === undefined ? {} : { handle }) }, 0);
      pad.focus();
    },
    async openKept(id) {
      await leave();
      const kept = await keep?.read(id).catch(() => undefined);
      if (kept === undefined) return say("keep-gone", "That notebook is no longer in this browser's storage.");
      lay(kept, kept.version);
      pad.focus();
    },
    save: () => write(autosave.atHand()?.handle),
    saveAs: () => write(undefined),
    editTitle(field, value) {
      const written = value.trim() === "" ? undefined : value;
      pad.edit(editFrontMatter(pad.view.state.doc.toString(), [field], written), "input.title");
    },
    showFront(open) {
      pad.showFront(open);
      set({ frontShown: open });
      if (open) pad.focus();
    },
    showPanel: (panel) => set({ panel }),
    showPlace: (place) => set({ place, overlay: undefined }),
    async openText(name, text) {
      await leave();
      lay({ id: crypto.randomUUID(), name, text, lineEnd: "\n", onDisk: false }, 0);
      pad.focus();
    },
    trace: (id) => set({ panel: "trace", traced: id }),
    recent: async () => (await keep?.recent().catch(() => [])) ?? [],
    flush: () => autosave.flush(),
  };

  const write = async (handle: FileSystemFileHandle | undefined): Promise<void> => {
    const text = pad.view.state.doc.toString();
    const name = current.name === fileName("") ? fileName(current.title.title) : current.name;
    try {
      const characters = saveText(text, autosave.atHand()?.lineEnd ?? "\n");
      const saved = handle === undefined ? await saveAs(name, characters) : await saveToDisk(name, characters, handle);
      if (saved === undefined || saved.how === "changed" || saved.how === "gone") return;
      const unchanged = pad.view.state.doc.toString() === text;
      const change = { name: saved.name, onDisk: unchanged, ...(saved.how === "written" ? { handle: saved.handle } : {}) };
      set({ name: saved.name, onDisk: unchanged });
      autosave.changed(change);
      dismiss("disk");
      if (saved.how === "downloaded")
        say("disk", `${saved.name} went to your download folder: this browser lets no page write to a file itself.`, "plain");
    } catch (fault) {
      say("disk", `The file could not be written: ${words(fault)} The text is still here.`, "fails");
    }
  };

  return desk;
}

const words = (fault: unknown): string => (fault instanceof Error ? fault.message : String(fault));

/** What is kept of a file on disk that is opened again. */
async function keptOf(keep: Keep, handle: FileSystemFileHandle): Promise<Kept | undefined> {
  for (const kept of await keep.recent().catch(() => [])) {
    if (kept.handle !== undefined && (await kept.handle.isSameEntry(handle).catch(() => false))) return kept;
  }
  return undefined;
}
