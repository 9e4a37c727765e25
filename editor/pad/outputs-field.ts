// What the engine last said of each statement, at its present place: a range set that moves with every change of the text, so
// that an output never stands at a wrong line while newer ones are on their way.

import {
  type ChangeDesc,
  type EditorState,
  type Range as MarkRange,
  RangeSet,
  RangeValue,
  StateEffect,
  StateField,
  type Text,
} from "@codemirror/state";
import type { LineOutput, Snapshot, TitleBlock } from "../../engine/session/index.ts";

/** A snapshot for the text before the changes of `since`; `whole`: it answers a whole text, nothing of before is kept. */
export const receiveSnapshot = StateEffect.define<{
  readonly snapshot: Snapshot;
  readonly since: ChangeDesc | undefined;
  readonly whole: boolean;
}>();

/** Forgets every output: another notebook comes. */
export const clearOutputs = StateEffect.define<null>();

class OutputMark extends RangeValue {
  constructor(readonly output: LineOutput) {
    super();
  }
  // The place grows with what is typed at its ends, as a statement does.
  override startSide = -1;
  override endSide = 1;
  override eq(other: RangeValue): boolean {
    return other instanceof OutputMark && other.output === this.output;
  }
}

export interface Outputs {
  readonly marks: RangeSet<OutputMark>;
  readonly byId: ReadonlyMap<string, LineOutput>;
  readonly title: TitleBlock | undefined;
  readonly counts: Snapshot["counts"];
  readonly revision: number;
  /** Ids that the last snapshot changed, for those who announce or flash them. */
  readonly changed: readonly string[];
}

/** One output and where it stands now. */
export interface PlacedOutput {
  readonly output: LineOutput;
  readonly from: number;
  readonly to: number;
}

const NO_COUNTS: Snapshot["counts"] = { faults: 0, failing: 0, checks: 0, open: 0 };
const NOTHING: Outputs = { marks: RangeSet.empty, byId: new Map(), title: undefined, counts: NO_COUNTS, revision: 0, changed: [] };

export const outputsField: StateField<Outputs> = StateField.define<Outputs>({
  create: () => NOTHING,
  update(outputs, transaction) {
    let next = outputs;
    if (transaction.docChanged) next = { ...next, marks: next.marks.map(transaction.changes), changed: [] };
    for (const effect of transaction.effects) {
      if (effect.is(clearOutputs)) next = NOTHING;
      if (effect.is(receiveSnapshot)) {
        next = joined(effect.value.whole ? NOTHING : next, effect.value.snapshot, effect.value.since, transaction.newDoc);
      }
    }
    return next;
  },
});

function joined(before: Outputs, snapshot: Snapshot, since: ChangeDesc | undefined, text: Text): Outputs {
  const { changed, removed, order } = snapshot;
  const byId = new Map(before.byId);
  for (const id of removed) byId.delete(id);
  for (const output of changed) byId.set(output.id, output);
  const place = (output: LineOutput, from: number, to: number): MarkRange<OutputMark> => {
    const start = Math.min(text.length, since === undefined ? from : since.mapPos(from, -1));
    const end = Math.min(text.length, since === undefined ? to : since.mapPos(to, 1));
    return new OutputMark(output).range(start, Math.max(start, end));
  };
  let marks: RangeSet<OutputMark>;
  if (order !== undefined) {
    const ranges: MarkRange<OutputMark>[] = [];
    order.ids.forEach((id, index) => {
      const output = byId.get(id);
      if (output !== undefined) ranges.push(place(output, order.from[index] as number, order.to[index] as number));
    });
    marks = RangeSet.of(ranges, true);
  } else {
    const gone = new Set([...removed, ...changed.map((output) => output.id)]);
    marks = before.marks;
    if (gone.size > 0) {
      marks = marks.update({
        filter: (_from, _to, mark) => !gone.has(mark.output.id),
        add: changed.map((output) => place(output, output.from, output.to)),
        sort: true,
      });
    }
  }
  return {
    marks,
    byId,
    title: snapshot.title,
    counts: snapshot.counts,
    revision: snapshot.revision,
    changed: changed.map((output) => output.id),
  };
}

/** Outputs whose statement touches the range, in the order of the text. A statement whose text is all gone has none. */
export function outputsIn(state: EditorState, from: number, to: number): readonly PlacedOutput[] {
  const found: PlacedOutput[] = [];
  state.field(outputsField).marks.between(from, to, (start, end, mark) => {
    if (start < end) found.push({ output: mark.output, from: start, to: end });
  });
  return found;
}

/** Every output that carries faults or notices; only these are walked when messages are placed. */
export function outputsWithMessages(state: EditorState): readonly PlacedOutput[] {
  const found: PlacedOutput[] = [];
  const { marks } = state.field(outputsField);
  for (const cursor = marks.iter(); cursor.value !== null; cursor.next()) {
    const { output } = cursor.value;
    if (output.diagnostics.length > 0) found.push({ output, from: cursor.from, to: cursor.to });
  }
  return found;
}

export function allOutputs(state: EditorState): readonly PlacedOutput[] {
  return outputsIn(state, 0, state.doc.length);
}

/** Where a place of the output's own snapshot is now, as long as its statement was not changed since. */
export const nowAt = (placed: PlacedOutput, offset: number): number =>
  Math.max(placed.from, Math.min(placed.to, placed.from + (offset - placed.output.from)));
