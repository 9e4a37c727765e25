// One row of the reference column and one of the output column, drawn from what the engine said of a statement.

import type { EditorView } from "@codemirror/view";
import type { LineOutput } from "../../engine/session/index.ts";
import { drawControl } from "./input-control.ts";
import { outputTip, outputWords, referenceWords } from "./output-words.ts";

export function span(className: string, text: string): HTMLElement {
  const element = document.createElement("span");
  element.className = className;
  element.textContent = text;
  return element;
}

/** A button that is one stop of its column's list: the arrows go on from it. `sentence` is heard, `parts` are seen. */
function stop(className: string, sentence: string, parts: readonly HTMLElement[]): HTMLButtonElement {
  const button = document.createElement("button");
  button.type = "button";
  button.className = className;
  button.tabIndex = -1;
  const seen = span("jw-seen", "");
  seen.setAttribute("aria-hidden", "true");
  seen.append(...parts);
  button.append(span("jw-spoken", sentence), seen);
  return button;
}

/** All digits of a number are said with it; all fields of a record are not. */
const LONGEST_SPOKEN = 40;

/** False, and nothing drawn, where the column stays empty. */
export function drawReference(element: HTMLElement, output: LineOutput): boolean {
  const words = referenceWords(output);
  if (words === undefined) return false;
  element.className = words.doubtful ? "jw-reference jw-doubtful" : "jw-reference";
  const kept = element.contains(focusedIn(element));
  const button = stop("jw-stop", words.sentence, [span("", words.text)]);
  element.replaceChildren(button);
  if (kept) button.focus();
  return true;
}

const focusedIn = (element: HTMLElement): Element | null => (element.getRootNode() as Document | ShadowRoot).activeElement;

export function drawOutput(element: HTMLElement, output: LineOutput, view: EditorView): boolean {
  const words = outputWords(output);
  if (words === undefined) return false;
  element.className = `jw-output jw-${words.tone}`;
  const parts: HTMLElement[] = [];
  if (words.bar !== undefined) {
    const bar = span(words.bar.over ? "jw-bar jw-over" : "jw-bar", "");
    const fill = span("jw-fill", "");
    fill.style.width = `${(words.bar.filled * 100).toFixed(1)}%`;
    bar.append(fill);
    parts.push(bar);
  }
  if (words.shape !== "") parts.push(span("jw-shape", words.shape));
  if (words.word !== "") parts.push(span("jw-word", words.word));
  if (words.number !== "") parts.push(span("jw-number", words.number));
  if (words.unit !== "") parts.push(span("jw-unit", words.unit));
  const full = output.value?.full;
  const more = full !== undefined && full !== "" && full !== words.number && full.length <= LONGEST_SPOKEN && output.value?.number !== "";
  const sentence = more ? `${words.sentence} (${full})` : words.sentence;
  const old = element.querySelector<HTMLElement>(".jw-control");
  const onButton = focusedIn(element)?.matches(".jw-stop") === true && element.contains(focusedIn(element));
  const button = stop("jw-stop", sentence, parts);
  // The control stays the same element while a hand is on it.
  const control = words.tone === "plain" ? drawControl(old, output, view) : undefined;
  if (control === undefined || control !== old) element.replaceChildren(...(control === undefined ? [button] : [control, button]));
  else {
    for (const child of [...element.children]) if (child !== control) child.remove();
    element.append(button);
  }
  const tip = outputTip(output);
  if (tip.length > 0) {
    const box = span("jw-tip", "");
    box.setAttribute("aria-hidden", "true");
    for (const line of tip) box.append(span("jw-tip-line", line));
    element.append(box);
  }
  if (onButton) button.focus();
  return true;
}
