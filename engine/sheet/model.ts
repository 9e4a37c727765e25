// The sheet as plain data: what every writer (HTML, PDF) sets, each in its own way.

import type { Scene } from "../figure/index.ts";
import type { TitleBlock } from "../session/index.ts";
import type { Equation } from "./equation.ts";
import type { Typeset } from "./typeset.ts";

/** What can be told of a check, a mode, an example or an input; each has a word and a shape, so that no state is colour alone. */
export type State = "holds" | "nominal" | "fails" | "open" | "ruled out" | "passes" | "outside" | "assumed" | "fault" | "waits";

export const stateShapes: Readonly<Record<State, string>> = {
  holds: "●",
  nominal: "●",
  passes: "●",
  fails: "▲",
  fault: "✕",
  open: "◆",
  waits: "◇",
  outside: "◆",
  assumed: "◇",
  "ruled out": "○",
};

export const stateWords: Readonly<Record<State, string>> = {
  holds: "holds",
  nominal: "holds (nominal only)",
  passes: "passes",
  fails: "fails",
  fault: "fault",
  open: "open",
  waits: "waits",
  outside: "outside validity",
  assumed: "assumed",
  "ruled out": "ruled out",
};

export type Inline =
  | { readonly kind: "text"; readonly text: string }
  | { readonly kind: "emphasis"; readonly of: readonly Inline[] }
  | { readonly kind: "strong"; readonly of: readonly Inline[] }
  | { readonly kind: "code"; readonly text: string }
  /** `address` is one of http, https or mailto; others stay text. */
  | { readonly kind: "link"; readonly of: readonly Inline[]; readonly address: string }
  /** A live value; `missing` where it could not be told. */
  | { readonly kind: "value"; readonly text: string; readonly missing: boolean }
  | { readonly kind: "state"; readonly state: State }
  | { readonly kind: "maths"; readonly of: Typeset }
  | { readonly kind: "break" };

export type Cell = readonly Inline[];

export interface Column {
  readonly head: Cell;
  readonly align: "left" | "right";
  /** Its share of the width beside that of its fellows. */
  readonly share: number;
}

export interface TableBlock {
  readonly kind: "table";
  readonly id: string;
  readonly caption: string;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly Cell[])[];
  /** Set small and close: long lists that are looked up, not read. */
  readonly dense?: boolean;
}

/** One line of the working: where it comes from, the equation, what comes out. */
export interface WorkingBlock {
  readonly kind: "working";
  /** 0 in the notebook, 1 and more inside the formulas it calls. */
  readonly depth: number;
  readonly reference: Cell;
  readonly equation: Equation;
  readonly output: Cell;
  /** What stands below the equation: the note, then marks of validity and faults. */
  readonly below: readonly Cell[];
}

export interface FigureBlock {
  readonly kind: "figure";
  readonly number: number;
  readonly scene: Scene;
  readonly caption: string;
}

export type Block =
  | {
      readonly kind: "heading";
      readonly level: 1 | 2 | 3;
      readonly number: string;
      readonly text: string;
      readonly id: string;
    }
  | { readonly kind: "paragraph"; readonly of: readonly Inline[] }
  | { readonly kind: "list"; readonly ordered: boolean; readonly start: number; readonly items: readonly (readonly Block[])[] }
  | { readonly kind: "quote"; readonly of: readonly Block[] }
  | { readonly kind: "code"; readonly text: string }
  | { readonly kind: "rule" }
  | TableBlock
  | WorkingBlock
  | FigureBlock
  | { readonly kind: "caution"; readonly title: string; readonly of: readonly Inline[] }
  /** Boxes to sign in; nothing the tool writes fills them. */
  | { readonly kind: "signatures"; readonly roles: readonly { readonly role: string; readonly name: string }[] }
  /** Where writers put the list of headings. */
  | { readonly kind: "contents" };

export interface SheetFile {
  readonly name: string;
  readonly sha256: string;
}

export interface Sheet {
  readonly title: TitleBlock;
  /** How units were chosen: as the notebook says, or all in one system for this copy. */
  readonly units: "notebook" | "metric" | "inch";
  readonly blocks: readonly Block[];
  /** For the running foot: number and revision, digest of the source, library version. */
  readonly foot: { readonly left: string; readonly middle: string };
  readonly language: "en";
}
