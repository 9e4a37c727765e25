// What one does with the notebook at hand beside writing it: going to places, renaming, units, digits, views. Part of the desk.

import { editFrontMatter, readFrontMatter } from "../../engine/notebook/index.ts";
import type { LineOutput, ViewSystem } from "../../engine/session/index.ts";
import type { EngineLink } from "../link/link.ts";
import { changedLines } from "../pad/changed-lines.ts";
import { outputsIn } from "../pad/outputs-field.ts";
import type { Pad } from "../pad/pad.ts";
import { askTool } from "./ask.ts";
import type { DeskState, Overlay } from "./desk.ts";
import { type ListedCheck, type ListedHeading, type ListedMessage, listChecks, listHeadings, listMessages } from "./listings.ts";
import { applyTheme, themeAfter } from "./theme.ts";

export interface DeskTools {
  showOverlay(overlay: Overlay | undefined): void;
  /** Closes it and gives the focus back to the pad. */
  closeOverlay(): void;
  goToDefinition(): Promise<void>;
  goBack(): void;
  /** Goes to a place and remembers where one was. */
  leap(from: number, to?: number): void;
  goToOutput(id: string): void;
  goToFault(way: "next" | "before"): void;
  goToSection(way: "next" | "before"): void;
  renameHere(): Promise<void>;
  /** The words of why not, or undefined when it was done. */
  rename(name: string, newName: string): Promise<string | undefined>;
  tidy(): Promise<void>;
  chooseUnitHere(): void;
  chooseUnit(output: LineOutput, at: DOMRect): void;
  setUnit(id: string, unit: string): Promise<void>;
  setSystem(system: ViewSystem): Promise<void>;
  digits(): number;
  setDigits(digits: number): void;
  nextTheme(): void;
  print(): void;
  insertCall(name: string): Promise<void>;
  /** The card of a library name, or all of the library. */
  openLibrary(name: string | undefined): void;
  openModule(module: string, name: string): void;
  messages(): readonly ListedMessage[];
  checks(): readonly ListedCheck[];
  headings(): readonly ListedHeading[];
}

interface Parts {
  readonly pad: Pad;
  readonly link: EngineLink;
  readonly state: () => DeskState;
  readonly set: (change: Partial<DeskState>) => void;
  readonly say: (key: string, text: string, tone?: "plain" | "open" | "fails") => void;
}

const DIGITS = 4;

/** Why a name was not given, in words. */
const REFUSALS: Readonly<Record<string, string>> = {
  unknown: "This notebook does not define that name.",
  form: "A name is a letter followed by letters, digits and underscores.",
  reserved: "That is a word of the language.",
  taken: "This notebook already has that name.",
  library: "The library already has that name.",
  bound: "A line that uses the name already has a variable called that.",
};

export function createDeskTools({ pad, link, state, set, say }: Parts): DeskTools {
  const { view } = pad;
  const been: number[] = [];
  const head = (): number => view.state.selection.main.head;
  const text = (): string => view.state.doc.toString();

  const leap = (from: number, to?: number): void => {
    been.push(head());
    if (been.length > 50) been.shift();
    pad.goTo(from, to);
  };

  const goTo = (places: readonly { readonly from: number }[], way: "next" | "before"): void => {
    const at = head();
    const sorted = [...places].sort((a, b) => a.from - b.from);
    const found =
      way === "next" ? (sorted.find(({ from }) => at < from) ?? sorted[0]) : (sorted.findLast(({ from }) => from < at) ?? sorted.at(-1));
    if (found !== undefined) leap(found.from);
  };

  const tools: DeskTools = {
    showOverlay: (overlay) => set({ overlay }),
    closeOverlay() {
      set({ overlay: undefined });
      pad.focus();
    },
    leap,
    async goToDefinition() {
      const { name } = state();
      const found = await askTool(link, "definitionOf", name, head());
      if (found === undefined) return say("definition", "Nothing under the caret has a definition to go to.");
      if (found.in === "notebook" && found.file === name) return leap(found.from, found.to);
      if (found.in === "library") set({ overlay: { kind: "module", module: found.module, name: found.name } });
      else say("definition", `It is defined in ${found.file}.`, "plain");
    },
    goBack() {
      const at = been.pop();
      if (at !== undefined) pad.goTo(at);
    },
    goToOutput(id) {
      const found = outputsIn(view.state, 0, view.state.doc.length).find(({ output }) => output.id === id || output.name === id);
      if (found !== undefined) leap(found.from);
    },
    goToFault: (way) => goTo(listMessages(pad), way),
    goToSection: (way) => goTo(listHeadings(pad), way),
    async renameHere() {
      const found = await askTool(link, "nameAt", state().name, head());
      if (found === undefined) return say("rename", "Put the caret on a name of this notebook to rename it.");
      set({ overlay: { kind: "rename", name: found.text } });
    },
    async rename(name, newName) {
      const outcome = await askTool(link, "rename", state().name, name, newName);
      if (outcome === undefined) return "The notebook changed meanwhile; try again.";
      if (!outcome.ok) return REFUSALS[outcome.why] ?? outcome.why;
      const own = outcome.edits.find(({ file }) => file === state().name);
      if (own !== undefined) pad.edit(own.changes, "input.rename");
      const others = outcome.edits.filter(({ file }) => file !== state().name).map(({ file }) => file);
      if (others.length > 0) say("rename", `The name also stands in ${others.join(", ")}; open it and rename there.`);
      return undefined;
    },
    async tidy() {
      const tidied = await link.ask({ about: "tidy" });
      if (tidied === undefined) return;
      const changes = changedLines(text(), tidied);
      if (changes.length > 0) pad.edit(changes, "input.tidy");
    },
    chooseUnitHere() {
      const line = view.state.doc.lineAt(head());
      const output = outputsIn(view.state, line.from, line.to).find((placed) => placed.output.value?.unit !== undefined)?.output;
      const at = output === undefined ? undefined : pad.outputPlace(output.id);
      if (output !== undefined && at !== undefined) tools.chooseUnit(output, at);
      else say("unit", "This line gives no value with a unit.");
    },
    chooseUnit: (output, at) => set({ overlay: { kind: "unit", output, at } }),
    async setUnit(id, unit) {
      const found = await askTool(link, "unitChoices", state().name, id);
      if (found === undefined) return;
      pad.edit([{ from: found.from, to: found.to, insert: unit === "" ? "" : ` as ${unit}` }], "input.unit");
    },
    async setSystem(system) {
      set({ system });
      await askTool(link, "setSystem", system);
      link.refresh();
    },
    digits: () => readFrontMatter(text()).digits ?? DIGITS,
    setDigits(digits) {
      const wanted = Math.max(1, Math.min(15, digits));
      pad.edit(editFrontMatter(text(), ["digits"], String(wanted)), "input.title");
    },
    nextTheme() {
      const theme = themeAfter(state().theme);
      applyTheme(theme);
      set({ theme });
    },
    print() {
      // Where the caret is, marks are shown as they are written; on paper there is no caret.
      view.contentDOM.blur();
      window.print();
    },
    async insertCall(name) {
      const call = await askTool(link, "callOf", state().name, name);
      if (call === undefined) return;
      pad.insertCall(call);
    },
    openLibrary: (card) => set({ panel: "library", card, overlay: undefined }),
    openModule: (module, name) => set({ overlay: { kind: "module", module, name } }),
    messages: () => listMessages(pad),
    checks: () => listChecks(pad),
    headings: () => listHeadings(pad),
  };
  return tools;
}
