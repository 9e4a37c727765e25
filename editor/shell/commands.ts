// Every command of the pad with its words, its short code and its key: the one list that the command list, the key listener,
// the help page and the menus read.

import type { Desk, DeskState } from "./desk.ts";

export const groups = ["Notebook", "Writing", "Finding", "Panels", "View"] as const;
export type Group = (typeof groups)[number];

export interface Command {
  readonly id: string;
  readonly group: Group;
  readonly words: string;
  /** Two letters that find it in the command list: Ctrl+K, then these, then Enter. */
  readonly code: string;
  /** `Mod-Shift-s`; Mod is Ctrl, on a Mac the command key. */
  readonly key?: string;
  /** The editor listens to this key itself, and only while it has the focus. */
  readonly inPad?: true;
  /** Left out of the list while it has nothing to do. */
  readonly when?: (state: DeskState) => boolean;
  readonly run: (desk: Desk) => void | Promise<void>;
}

export const commands: readonly Command[] = [
  {
    id: "start",
    group: "Notebook",
    words: "Start page: templates and recent notebooks",
    code: "st",
    run: (desk) => desk.showPlace("start"),
  },
  { id: "new", group: "Notebook", words: "New notebook", code: "nw", key: "Alt-n", run: (desk) => desk.newNotebook() },
  { id: "open", group: "Notebook", words: "Open from disk", code: "op", key: "Mod-o", run: (desk) => desk.open() },
  { id: "save", group: "Notebook", words: "Save to disk", code: "sv", key: "Mod-s", run: (desk) => desk.save() },
  { id: "save-as", group: "Notebook", words: "Save under another name", code: "sa", key: "Mod-Shift-s", run: (desk) => desk.saveAs() },
  { id: "print", group: "Notebook", words: "Print the pad", code: "pr", key: "Mod-p", run: (desk) => desk.print() },
  {
    id: "front",
    group: "Notebook",
    words: "Title block as text, or back to the form",
    code: "tb",
    run: (desk) => desk.showFront(!desk.state().frontShown),
  },

  {
    id: "turn",
    group: "Writing",
    words: "Turn the line into working, or into prose",
    code: "tu",
    key: "Mod-Enter",
    inPad: true,
    run: (desk) => desk.pad.run("turn"),
  },
  {
    id: "mend",
    group: "Writing",
    words: "Accept the mend on this line",
    code: "me",
    key: "Alt-Enter",
    inPad: true,
    run: (desk) => desk.pad.run("mend"),
  },
  {
    id: "complete",
    group: "Writing",
    words: "Names, units and formulas that fit here",
    code: "co",
    key: "Ctrl-Space",
    inPad: true,
    run: (desk) => desk.pad.run("complete"),
  },
  {
    id: "unit",
    group: "Writing",
    words: "Choose the unit of this line's result",
    code: "un",
    key: "Alt-u",
    run: (desk) => desk.chooseUnitHere(),
  },
  {
    id: "more",
    group: "Writing",
    words: "Number under the caret one step up",
    code: "up",
    key: "Alt-PageUp",
    inPad: true,
    run: (desk) => desk.pad.run("more"),
  },
  {
    id: "less",
    group: "Writing",
    words: "Number under the caret one step down",
    code: "dn",
    key: "Alt-PageDown",
    inPad: true,
    run: (desk) => desk.pad.run("less"),
  },
  { id: "rename", group: "Writing", words: "Rename everywhere", code: "rn", key: "F2", run: (desk) => desk.renameHere() },
  { id: "tidy", group: "Writing", words: "Tidy the columns of the text", code: "ti", run: (desk) => desk.tidy() },
  { id: "undo", group: "Writing", words: "Undo", code: "ud", key: "Mod-z", inPad: true, run: (desk) => desk.pad.run("undo") },
  { id: "redo", group: "Writing", words: "Redo", code: "rd", key: "Mod-y", inPad: true, run: (desk) => desk.pad.run("redo") },

  { id: "find", group: "Finding", words: "Find and replace", code: "fi", key: "Mod-f", inPad: true, run: (desk) => desk.pad.run("find") },
  {
    id: "definition",
    group: "Finding",
    words: "Go to where this name is defined",
    code: "go",
    key: "F4",
    run: (desk) => desk.goToDefinition(),
  },
  { id: "back", group: "Finding", words: "Back to where you came from", code: "ba", key: "Shift-F4", run: (desk) => desk.goBack() },
  { id: "next-fault", group: "Finding", words: "Next fault", code: "nf", key: "F8", run: (desk) => desk.goToFault("next") },
  { id: "last-fault", group: "Finding", words: "Fault before", code: "pf", key: "Shift-F8", run: (desk) => desk.goToFault("before") },
  { id: "next-section", group: "Finding", words: "Next section", code: "ns", key: "F7", run: (desk) => desk.goToSection("next") },
  { id: "last-section", group: "Finding", words: "Section before", code: "ps", key: "Shift-F7", run: (desk) => desk.goToSection("before") },
  {
    id: "fold",
    group: "Finding",
    words: "Fold this section, or open it",
    code: "fo",
    key: "F9",
    inPad: true,
    run: (desk) => desk.pad.run("fold"),
  },
  { id: "unfold", group: "Finding", words: "Open all sections", code: "oa", run: (desk) => desk.pad.run("unfold") },
  { id: "output", group: "Finding", words: "From the line to its output", code: "ou", key: "Alt-o", run: (desk) => desk.pad.focusOutput() },

  { id: "outline", group: "Panels", words: "Outline", code: "ol", run: (desk) => desk.showPanel("outline") },
  { id: "checks", group: "Panels", words: "Checks, the governing one first", code: "ck", run: (desk) => desk.showPanel("checks") },
  {
    id: "trace",
    group: "Panels",
    words: "Trace of the value under the caret",
    code: "tr",
    key: "Alt-t",
    run: (desk) => desk.showPanel("trace"),
  },
  { id: "library", group: "Panels", words: "Library", code: "li", key: "Alt-l", run: (desk) => desk.showPanel("library") },
  { id: "review", group: "Panels", words: "Review list", code: "rv", run: (desk) => desk.showPanel("review") },
  { id: "faults", group: "Panels", words: "Faults and notices", code: "fa", run: (desk) => desk.showPanel("faults") },
  {
    id: "close-panel",
    group: "Panels",
    words: "Close the panel",
    code: "cp",
    when: ({ panel }) => panel !== undefined,
    run: (desk) => desk.showPanel(undefined),
  },

  { id: "commands", group: "View", words: "This list", code: "cl", key: "Mod-k", run: (desk) => desk.showOverlay({ kind: "commands" }) },
  { id: "written", group: "View", words: "Show values in the notebook's own units", code: "vu", run: (desk) => desk.setSystem("written") },
  { id: "metric", group: "View", words: "Show every value in metric units", code: "vm", run: (desk) => desk.setSystem("metric") },
  { id: "inch", group: "View", words: "Show every value in inch units", code: "vi", run: (desk) => desk.setSystem("inch") },
  { id: "more-digits", group: "View", words: "One digit more", code: "d+", run: (desk) => desk.setDigits(desk.digits() + 1) },
  { id: "fewer-digits", group: "View", words: "One digit fewer", code: "d-", run: (desk) => desk.setDigits(desk.digits() - 1) },
  { id: "theme", group: "View", words: "Light, dark, or as the system says", code: "ld", run: (desk) => desk.nextTheme() },
  {
    id: "help",
    group: "View",
    words: "Help: writing, keys, cautions",
    code: "he",
    key: "F1",
    run: (desk) => desk.showOverlay({ kind: "help" }),
  },
];

export const commandById = (id: string): Command | undefined => commands.find((command) => command.id === id);

/** The commands that a query finds, the best first; all, in their order, for an empty one. */
export function findCommands(list: readonly Command[], query: string): readonly Command[] {
  const wanted = query.trim().toLowerCase();
  if (wanted === "") return list;
  const score = (command: Command): number => {
    const words = command.words.toLowerCase();
    if (command.code === wanted) return 0;
    if (words.startsWith(wanted)) return 1;
    if (words.split(/[^\p{L}\p{N}]+/u).some((word) => word.startsWith(wanted))) return 2;
    if (command.code.startsWith(wanted)) return 3;
    return wanted.split(/\s+/).every((part) => words.includes(part) || command.group.toLowerCase().startsWith(part)) ? 4 : 9;
  };
  return list
    .map((command, index) => ({ command, index, rank: score(command) }))
    .filter(({ rank }) => rank < 9)
    .sort((a, b) => a.rank - b.rank || a.index - b.index)
    .map(({ command }) => command);
}
