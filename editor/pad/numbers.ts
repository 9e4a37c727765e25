// Numbers of the text changed by hand: dragged with Alt held, or stepped by a key. The text stays the only truth, and a drag of
// any length is one step of undo.

import { Transaction } from "@codemirror/state";
import { type Command, type EditorView, type PluginValue, ViewPlugin } from "@codemirror/view";
import { chunkAt } from "../../engine/notebook/index.ts";
import { tokens } from "../../engine/syntax/index.ts";
import { notebookField } from "./notebook-field.ts";

export interface NumberPlace {
  readonly from: number;
  readonly to: number;
}

/** The number literal of a working that holds the place or ends there. */
export function numberAt(view: EditorView, at: number): NumberPlace | undefined {
  const found = chunkAt(view.state.field(notebookField), at);
  if (found === undefined) return undefined;
  const offset = at - found.from;
  const token = tokens(found.chunk.text).find((each) => each.kind === "number" && each.from <= offset && offset <= each.to);
  return token === undefined ? undefined : { from: found.from + token.from, to: found.from + token.to };
}

/** One step of a number as it is written: its last digit, or the one before it where the number is a single digit of many. */
export function stepOfText(text: string): number {
  const [, decimals = "", power = "0"] = /^[\d_]*(?:\.(\d+))?(?:e([+-]?\d+))?$/i.exec(text) ?? [];
  const zeros = decimals === "" ? (/^[1-9]\d*?(0+)$/.exec(text.replaceAll("_", ""))?.[1]?.length ?? 0) : 0;
  // 620 goes by tens, 42 by ones, 0.15 by hundredths.
  return 10 ** (Number(power) - decimals.length + Math.min(zeros, 1));
}

/** The number moved by some steps, written with as many decimals as it had. A literal has no sign, so it stays above zero. */
export function moved(text: string, steps: number): string {
  const step = stepOfText(text);
  const value = Number(text.replaceAll("_", "")) + steps * step;
  if (!Number.isFinite(value) || value < 0) return text;
  if (/e/i.test(text)) return String(Number(value.toPrecision(12)));
  const decimals = /\.(\d+)$/.exec(text)?.[1]?.length ?? 0;
  return value.toFixed(decimals);
}

function stepBy(steps: number): Command {
  return (view) => {
    const place = numberAt(view, view.state.selection.main.head);
    if (place === undefined) return false;
    const written = view.state.sliceDoc(place.from, place.to);
    const insert = moved(written, steps);
    if (insert === written) return true;
    view.dispatch({ changes: { ...place, insert }, selection: { anchor: place.from + insert.length }, userEvent: "input.step" });
    return true;
  };
}

export const numberUp = stepBy(1);
export const numberDown = stepBy(-1);

/** A change of one stretch of text that goes on until it is let go: only what it comes to in the end is kept for undo. */
export class Drag {
  private readonly before: string;
  private now: string;
  private at: number;

  constructor(
    readonly view: EditorView,
    place: NumberPlace,
    /** Follows changes that come from elsewhere meanwhile. */
    readonly locate: () => number = () => this.at,
  ) {
    this.at = place.from;
    this.before = view.state.sliceDoc(place.from, place.to);
    this.now = this.before;
  }

  private put(insert: string, kept: boolean): void {
    this.at = this.locate();
    const to = this.at + this.now.length;
    if (this.view.state.sliceDoc(this.at, to) !== this.now || insert === this.now) return;
    this.view.dispatch({
      changes: { from: this.at, to, insert },
      annotations: kept ? Transaction.userEvent.of("input.drag") : Transaction.addToHistory.of(false),
    });
    this.now = insert;
  }

  move(insert: string): void {
    this.put(insert, false);
  }

  end(): void {
    const last = this.now;
    if (last === this.before) return;
    this.put(this.before, false);
    this.put(last, true);
  }

  get written(): string {
    return this.before;
  }
}

/** Pixels of the hand for one step. */
const PIXELS = 6;

class NumberDrag implements PluginValue {
  private drag: Drag | undefined;
  private startX = 0;
  private pointer = -1;

  constructor(readonly view: EditorView) {
    view.dom.ownerDocument.addEventListener("keydown", this.onKey);
    view.dom.ownerDocument.addEventListener("keyup", this.onKey);
  }

  private readonly onKey = (event: KeyboardEvent): void => {
    if (event.key === "Alt") this.view.dom.classList.toggle("jw-alt", event.type === "keydown");
  };

  down(event: PointerEvent): boolean {
    if (!event.altKey || event.button !== 0) return false;
    const at = this.view.posAtCoords({ x: event.clientX, y: event.clientY });
    const place = at === null ? undefined : numberAt(this.view, at);
    if (place === undefined) return false;
    event.preventDefault();
    this.drag = new Drag(this.view, place);
    this.startX = event.clientX;
    this.pointer = event.pointerId;
    this.view.contentDOM.setPointerCapture(event.pointerId);
    return true;
  }

  move(event: PointerEvent): boolean {
    if (this.drag === undefined || event.pointerId !== this.pointer) return false;
    const steps = Math.round((event.clientX - this.startX) / PIXELS) * (event.shiftKey ? 10 : 1);
    this.drag.move(moved(this.drag.written, steps));
    return true;
  }

  up(event: PointerEvent): boolean {
    if (this.drag === undefined || event.pointerId !== this.pointer) return false;
    this.drag.end();
    this.drag = undefined;
    return true;
  }

  get dragging(): boolean {
    return this.drag !== undefined;
  }

  destroy(): void {
    this.view.dom.ownerDocument.removeEventListener("keydown", this.onKey);
    this.view.dom.ownerDocument.removeEventListener("keyup", this.onKey);
  }
}

export const dragNumbers = ViewPlugin.fromClass(NumberDrag, {
  eventHandlers: {
    pointerdown(event) {
      return this.down(event);
    },
    pointermove(event) {
      return this.move(event);
    },
    pointerup(event) {
      return this.up(event);
    },
    pointercancel(event) {
      return this.up(event);
    },
    // The press is the drag's, not the start of a selection.
    mousedown(event) {
      return event.altKey && this.dragging;
    },
  },
});
