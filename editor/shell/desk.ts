// The desk: what lies on it (a notebook, its outputs), where it is kept, and what the user may do with it. The only place that
// joins pad, engine link, browser store and disk; the views read its state and call its functions.

import { editFrontMatter, openText, readFrontMatter, saveText } from "../../engine/notebook/index.ts";
import type { LineOutput, TitleBlock } from "../../engine/session/index.ts";
import { type Autosave, createAutosave, type KeepState } from "../files/autosave.ts";
import { type DiskFile, fileName, openFromDisk, saveAs, saveToDisk } from "../files/disk.ts";
import type { Keep, Kept } from "../files/keep.ts";
import { createLink, type EngineLink, type LinkState } from "../link/link.ts";
import type { WorkerPort } from "../link/protocol.ts";
import { allOutputs, outputsField, outputsWithMessages } from "../pad/outputs-field.ts";
import { createPad, type Pad } from "../pad/pad.ts";

export type Panel = "messages" | "checks" | "trace" | "recent" | "help";

export interface Notice {
  readonly key: string;
  readonly tone: "plain" | "open" | "fails";
  readonly text: string;
  readonly actions: readonly { readonly label: string; readonly run: () => void }[];
}

/** One fault or notice as the list shows it. */
export interface ListedMessage {
  readonly severity: "fault" | "notice";
  readonly code: string;
  readonly text: string;
  readonly line: number;
  readonly from: number;
  readonly to: number;
}

export interface ListedCheck {
  readonly output: LineOutput;
  readonly line: number;
  readonly from: number;
}

export interface DeskState {
  readonly name: string;
  readonly onDisk: boolean;
  readonly keep: KeepState;
  readonly link: LinkState;
  readonly title: TitleBlock;
  readonly counts: { readonly faults: number; readonly failing: number; readonly checks: number; readonly open: number };
  readonly panel: Panel | undefined;
  /** The name whose trace the panel shows. */
  readonly traced: string | undefined;
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
  readonly starter: string;
}

export interface Desk {
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
  trace(name: string): void;
  recent(): Promise<readonly Kept[]>;
  messages(): readonly ListedMessage[];
  checks(): readonly ListedCheck[];
  flush(): Promise<void>;
}

/** A new notebook: results show in the units of the trade, and the first line of working waits. */
const EMPTY = "---\nunits: { length: mm, area: mm^2, force: N, stress: MPa, torque: N*m }\n---\n```calc\n\n```\n";
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
    panel: undefined,
    traced: undefined,
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
    onSnapshot: (snapshot, since, whole) => pad.receive(snapshot, since, whole),
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
    onUpdate: ({ text, outputs }) => {
      if (text === "own") {
        if (current.onDisk) set({ onDisk: false });
        autosave.changed({ onDisk: false });
      }
      if (outputs) {
        const field = pad.view.state.field(outputsField);
        set({ title: field.title ?? NO_TITLE, counts: field.counts, revision: field.revision, turn: current.turn + 1 });
      } else if (text !== "none") set({ turn: current.turn + 1 });
    },
    onChoose: (output) => {
      if (output.name !== undefined && output.kind === "definition") set({ panel: "trace", traced: output.name });
    },
  });

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
    set({ name: atHand.name, onDisk: atHand.onDisk, frontShown: false, traced: undefined, title: NO_TITLE });
    link.open(atHand.name, pad.view.state.doc);
    autosave.begin(atHand, version);
    rememberTab();
  };

  const leave = async (): Promise<void> => {
    await autosave.flush();
  };

  const desk: Desk = {
    pad,
    link,
    state: () => current,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    async start() {
      if (keep === undefined) {
        lay({ id: crypto.randomUUID(), name: "example.joint.md", text: options.starter, lineEnd: "\n", onDisk: false }, 0);
        return;
      }
      const id = rememberedTab() ?? (await keep.last().catch(() => undefined));
      const kept = id === undefined ? undefined : await keep.read(id).catch(() => undefined);
      if (kept === undefined)
        lay({ id: crypto.randomUUID(), name: "example.joint.md", text: options.starter, lineEnd: "\n", onDisk: false }, 0);
      else lay(kept, kept.version);
    },
    async newNotebook() {
      await leave();
      lay({ id: crypto.randomUUID(), name: fileName(""), text: EMPTY, lineEnd: "\n", onDisk: false }, 0);
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
    showPanel: (panel) => set({ panel: panel === current.panel ? undefined : panel }),
    trace: (name) => set({ panel: "trace", traced: name }),
    recent: async () => (await keep?.recent().catch(() => [])) ?? [],
    messages: () => listMessages(pad),
    checks: () => listChecks(pad),
    flush: () => autosave.flush(),
  };

  const write = async (handle: FileSystemFileHandle | undefined): Promise<void> => {
    const text = pad.view.state.doc.toString();
    const name = current.name === fileName("") ? fileName(current.title.title) : current.name;
    try {
      const characters = saveText(text, autosave.atHand()?.lineEnd ?? "\n");
      const saved = handle === undefined ? await saveAs(name, characters) : await saveToDisk(name, characters, handle);
      if (saved === undefined) return;
      const unchanged = pad.view.state.doc.toString() === text;
      const change = { name: saved.name, onDisk: unchanged, ...(saved.handle === undefined ? {} : { handle: saved.handle }) };
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

function listMessages(pad: Pad): readonly ListedMessage[] {
  const { state } = pad.view;
  return outputsWithMessages(state)
    .flatMap(({ output, from, to }) =>
      output.diagnostics.map((entry) => {
        const at = Math.max(from, Math.min(to, from + entry.from - output.from));
        const end = Math.max(at, Math.min(to, from + entry.to - output.from));
        const text = entry.hint === undefined ? entry.message : `${entry.message} ${entry.hint}`;
        return { severity: entry.severity, code: entry.code, text, line: state.doc.lineAt(at).number, from: at, to: end };
      }),
    )
    .sort((a, b) => Number(a.severity === "notice") - Number(b.severity === "notice") || a.from - b.from);
}

/** The governing check first: highest utilisation, those that are not evaluated before those that hold. */
function listChecks(pad: Pad): readonly ListedCheck[] {
  const { state } = pad.view;
  const rank = ({ output }: ListedCheck): number => {
    const check = output.check;
    if (check === undefined || check.state === "open") return Number.MAX_VALUE / 2;
    return check.utilisation ?? (check.state === "fails" ? Number.MAX_VALUE : 0);
  };
  return allOutputs(state)
    .filter(({ output }) => output.check !== undefined)
    .map(({ output, from }) => ({ output, from, line: state.doc.lineAt(from).number }))
    .sort((a, b) => rank(b) - rank(a) || a.from - b.from);
}
