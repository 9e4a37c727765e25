// The control of an input with bounds: a slider with a step to each side. It edits the number in the text, which stays the only
// truth; a drag of any length is one step of undo.

import { Transaction } from "@codemirror/state";
import type { EditorView } from "@codemirror/view";
import type { LineOutput } from "../../engine/session/index.ts";
import { Drag } from "./numbers.ts";
import { nowAt, outputsIn, type PlacedOutput } from "./outputs-field.ts";

type Control = NonNullable<LineOutput["control"]>;

/** The element for the output's control: the old one brought up to date, or a new one; undefined where there are no bounds. */
export function drawControl(old: HTMLElement | null, output: LineOutput, view: EditorView): HTMLElement | undefined {
  const { control } = output;
  if (control === undefined) return undefined;
  const element = old ?? make(output.id, view);
  const slider = element.querySelector("input") as HTMLInputElement;
  slider.min = String(control.low);
  slider.max = String(control.high);
  slider.step = String(stepOf(control));
  // A drag in hand keeps its own place: an answer to an earlier one must not pull it back.
  if (!slider.matches(":active")) slider.value = String(control.value);
  const name = output.name ?? "value";
  slider.setAttribute("aria-label", `${name} in ${control.unit === "" ? "plain number" : control.unit}, ${control.low} to ${control.high}`);
  slider.setAttribute("aria-valuetext", output.value?.text ?? String(control.value));
  element.querySelector(".jw-down")?.setAttribute("aria-label", `${name} one step down`);
  element.querySelector(".jw-up")?.setAttribute("aria-label", `${name} one step up`);
  return element;
}

function make(id: string, view: EditorView): HTMLElement {
  const element = document.createElement("span");
  element.className = "jw-control";
  const slider = document.createElement("input");
  slider.type = "range";
  slider.className = "jw-slider";
  slider.tabIndex = -1;
  let drag: Drag | undefined;
  const value = (): string | undefined => {
    const control = find(view, id)?.output.control;
    return control === undefined ? undefined : decimal(Number(slider.value), stepOf(control));
  };
  slider.addEventListener("pointerdown", () => {
    const place = numberPlace(view, id);
    drag = place === undefined ? undefined : new Drag(view, place, () => numberPlace(view, id)?.from ?? place.from);
  });
  slider.addEventListener("input", () => {
    const text = value();
    if (text === undefined) return;
    if (drag === undefined) write(view, id, text);
    else drag.move(text);
  });
  const letGo = (): void => {
    drag?.end();
    drag = undefined;
  };
  slider.addEventListener("change", letGo);
  slider.addEventListener("pointercancel", letGo);
  element.append(stepper("−", "jw-down", -1, view, id), slider, stepper("+", "jw-up", 1, view, id));
  return element;
}

function stepper(sign: string, className: string, steps: number, view: EditorView, id: string): HTMLElement {
  const button = document.createElement("button");
  button.type = "button";
  button.className = `jw-step ${className}`;
  button.textContent = sign;
  button.tabIndex = -1;
  button.addEventListener("click", () => {
    const control = find(view, id)?.output.control;
    if (control === undefined) return;
    const step = stepOf(control);
    const next = Math.min(control.high, Math.max(control.low, Math.round((control.value + steps * step) / step) * step));
    write(view, id, decimal(next, step));
  });
  return button;
}

function find(view: EditorView, id: string): PlacedOutput | undefined {
  return outputsIn(view.state, view.viewport.from, view.viewport.to).find((placed) => placed.output.id === id);
}

/** Where the number stands now; undefined between two answers of the engine, when its place is not known. */
function numberPlace(view: EditorView, id: string): { readonly from: number; readonly to: number } | undefined {
  const placed = find(view, id);
  const control = placed?.output.control;
  if (placed === undefined || control === undefined) return undefined;
  const from = nowAt(placed, control.from);
  const written = /^[−-]?[\d._]+(?:e[+-]?\d+)?/i.exec(view.state.sliceDoc(from, placed.to))?.[0];
  return written === undefined ? undefined : { from, to: from + written.length };
}

function write(view: EditorView, id: string, text: string): void {
  const place = numberPlace(view, id);
  if (place === undefined || view.state.sliceDoc(place.from, place.to) === text) return;
  view.dispatch({ changes: { ...place, insert: text }, annotations: Transaction.userEvent.of("input.step") });
}

/** A round step: about fifty to two hundred of them between the bounds. */
export function stepOf(control: Pick<Control, "low" | "high">): number {
  const span = control.high - control.low;
  if (!(0 < span && span < Infinity)) return 1;
  const power = 10 ** Math.floor(Math.log10(span / 50));
  const ratio = span / 50 / power;
  return power * (ratio < 2 ? 1 : ratio < 5 ? 2 : 5);
}

/** As short as the step allows, without the tail of binary fractions. */
function decimal(value: number, step: number): string {
  const digits = Math.max(0, Math.ceil(-Math.log10(step)));
  return String(Number(value.toFixed(Math.min(12, digits))));
}
