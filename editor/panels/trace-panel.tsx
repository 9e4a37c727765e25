// The trace of the value under the caret: symbols, numbers put in, result; the formulas it calls, opened step by step; what
// feeds it, what reads it, what it is most sensitive to.

import { createContext } from "preact";
import { useContext, useEffect, useState } from "preact/hooks";
import type { LineOutput, SensitivityPage, Trace } from "../../engine/session/index.ts";
import type { Maths, Sensitivity, TraceCall, TraceStep, TraceView } from "../../engine/trace/index.ts";
import { brief, outputWords } from "../pad/output-words.ts";
import { outputsField } from "../pad/outputs-field.ts";
import { askTool } from "../shell/ask.ts";
import type { Desk, DeskState } from "../shell/desk.ts";
import { MathsView, NameView } from "../shell/maths.tsx";
import { MessageText } from "../shell/message-text.tsx";
import type { PanelProps } from "./side-panel.tsx";

/** Levels of calls that are asked for at first: the outermost is open, and one sees what it calls. */
const LEVELS = 2;
const MOST_SENSITIVE = 6;
/** How long the hand must rest before the trace follows, and before inputs are moved to see what follows. */
const REST = 150;
const LONG_REST = 700;
/** Inputs moved in one question: the outputs of the next key wait for the answer. */
const AT_A_TIME = 2;
const SHORT = 48;

interface Found {
  readonly id: string;
  readonly trace: Trace | undefined;
  readonly readers: readonly string[];
}

/** Tells the panel that calls of a level were opened, so that it asks for what they call. */
const Deeper = createContext<(level: number) => void>(() => {});

export function TracePanel({ desk, state }: PanelProps) {
  const [found, setFound] = useState<Found | undefined>(undefined);
  const [levels, setLevels] = useState(LEVELS);
  const { traced, revision, name } = state;
  // A new revision of the outputs asks for a new trace.
  useEffect(() => {
    let current = true;
    if (traced === undefined) return setFound(undefined);
    const timer = setTimeout(
      () =>
        void Promise.all([desk.link.ask({ about: "trace", name: traced, open: levels }), askTool(desk.link, "readers", name, traced)]).then(
          ([trace, readers]) => {
            if (current && readers !== undefined) setFound({ id: traced, trace, readers });
          },
        ),
      found?.id === traced ? REST : 0,
    );
    return () => {
      current = false;
      clearTimeout(timer);
    };
  }, [desk, traced, revision, name, levels]);
  useEffect(() => setLevels(LEVELS), [traced]);
  const sensitivities = useSensitivities(desk, state);
  if (traced === undefined || found === undefined)
    return <p class="panel-empty">Put the caret on a line of working to see how its value comes about.</p>;
  if (found.trace === undefined) {
    const output = outputOf(desk, found.id);
    const words = output === undefined ? undefined : outputWords(output);
    return <p class="panel-empty">{words === undefined ? "This line has no value to trace." : words.sentence}</p>;
  }
  const { view } = found.trace;
  const output = outputOf(desk, found.id);
  return (
    <Deeper.Provider value={(level) => setLevels((before) => Math.max(before, level + 1))}>
      <section>
        <h3>
          {view.name !== undefined && <MathsView maths={view.name} />}
          {view.name !== undefined && view.note !== undefined && view.note !== "" && " · "}
          {view.note}
        </h3>
        <Working view={view} />
        {output?.check !== undefined && <CheckResult output={output} />}
        {view.fault !== undefined && (
          <p class="tone-fails">
            ✕ <MessageText text={view.fault.message} />
          </p>
        )}
        {view.outside.map((limit) => (
          <p key={limit.formula + limit.limit} class="tone-open">
            ◆ outside validity: {limit.formula}, {limit.limit}
          </p>
        ))}
      </section>
      {view.calls.map((call, index) => (
        <section key={`${call.formula} ${index}`}>
          <Call call={call} desk={desk} open={index === 0} />
        </section>
      ))}
      {view.feeds.length > 0 && (
        <section>
          <h3>Feeds it</h3>
          {view.feeds.map((feed) => (
            <button key={feed.name} type="button" class="pair" onClick={() => desk.trace(feed.symbol.name)}>
              <span>
                <MathsView maths={feed.symbol} />
                {feed.provenance !== undefined && feed.provenance.level !== "unsourced" && (
                  <span class="pill">{feed.provenance.level === "test" ? "own test" : feed.provenance.level}</span>
                )}
              </span>
              <Short text={feed.shown.text} />
            </button>
          ))}
        </section>
      )}
      {found.readers.length > 0 && (
        <section>
          <h3>Used by</h3>
          {found.readers.map((id) => (
            <Reader key={id} desk={desk} id={id} />
          ))}
        </section>
      )}
      <Sensitive list={sensitivities} desk={desk} own={found.id} />
    </Deeper.Provider>
  );
}

/** Asked for input by input while the hand rests, so that nobody waits for it. */
function useSensitivities(desk: Desk, { traced, revision, name }: DeskState): readonly Sensitivity[] {
  const [list, setList] = useState<{ readonly id: string | undefined; readonly told: readonly Sensitivity[] }>({ id: undefined, told: [] });
  useEffect(() => {
    let current = true;
    if (traced === undefined) return;
    const ask = async (): Promise<void> => {
      const told: Sensitivity[] = [];
      for (let from: number | undefined = 0; from !== undefined && current; ) {
        const page: SensitivityPage | undefined = await askTool(desk.link, "sensitivities", name, traced, from, AT_A_TIME);
        if (page === undefined || !current) return;
        told.push(...page.list);
        from = page.next;
      }
      told.sort((a, b) => Math.abs(b.change ?? 0) - Math.abs(a.change ?? 0));
      if (current) setList({ id: traced, told });
    };
    const timer = setTimeout(() => void ask(), LONG_REST);
    return () => {
      current = false;
      clearTimeout(timer);
    };
  }, [desk, traced, revision, name]);
  return list.id === traced ? list.told : [];
}

const outputOf = (desk: Desk, id: string): LineOutput | undefined => {
  const { byId } = desk.pad.view.state.field(outputsField);
  return byId.get(id) ?? [...byId.values()].find((output) => output.name === id);
};

function CheckResult({ output }: { readonly output: LineOutput }) {
  const words = outputWords(output);
  if (words === undefined) return null;
  const tone = words.tone === "holds" || words.tone === "fails" ? words.tone : "open";
  return (
    <p class={`tone-${tone}`}>
      <span class="shape" aria-hidden="true">
        {words.shape}
      </span>
      <span class="state-word">{words.word}</span>
      {words.number === "" ? "" : `, utilisation ${words.number}`}
      {output.check?.marginText === undefined ? "" : `, margin of safety ${output.check.marginText}`}
    </p>
  );
}

function Reader({ desk, id }: { readonly desk: Desk; readonly id: string }) {
  const output = outputOf(desk, id);
  const words = output === undefined ? undefined : outputWords(output);
  const check = output?.check;
  return (
    <button type="button" class="pair" onClick={() => desk.goToOutput(id)}>
      <span>{check === undefined ? <NameView name={output?.name ?? id} /> : `check: ${check.title}`}</span>
      {words !== undefined && (
        <span class={`tone-${words.tone === "holds" || words.tone === "fails" ? words.tone : "quiet"}`}>
          {check === undefined
            ? brief(output?.value?.text ?? words.word, SHORT)
            : `${words.word}${words.number === "" ? "" : `, ${words.number}`}`}
        </span>
      )}
    </button>
  );
}

function Sensitive({ list, desk, own }: { readonly list: readonly Sensitivity[]; readonly desk: Desk; readonly own: string }) {
  const told = list.filter((one) => one.change !== undefined && one.change !== 0).slice(0, MOST_SENSITIVE);
  const most = Math.max(...told.map((one) => Math.abs(one.change ?? 0)));
  // An input is most sensitive to itself: that says nothing.
  if (told.length === 0 || (told.length === 1 && told[0]?.name === own)) return null;
  return (
    <section>
      <h3>Most sensitive to</h3>
      {told.map((one) => {
        const change = one.change ?? 0;
        const words = `${change < 0 ? "−" : "+"}${(Math.abs(change) * 100).toPrecision(2)} %`;
        return (
          <button
            key={one.name}
            type="button"
            class="pair"
            title={`${one.by} more of ${one.name}: ${words}`}
            onClick={() => desk.goToOutput(one.name)}
          >
            <NameView name={one.name} />
            <span class="sensitivity">
              <span class="row-place">
                {one.by}: {words}
              </span>
              <span class="wide-bar" aria-hidden="true">
                <span style={{ width: `${((Math.abs(change) / most) * 100).toFixed(1)}%` }} />
              </span>
            </span>
          </button>
        );
      })}
    </section>
  );
}

function Working({ view }: { readonly view: Pick<TraceView, "name" | "symbols" | "numbers" | "result"> }) {
  return (
    <div class="trace-steps">
      <div>
        {view.name !== undefined && (
          <>
            <MathsView maths={view.name} /> ={" "}
          </>
        )}
        <MathsView maths={view.symbols} />
      </div>
      {view.numbers !== undefined && (
        <div class="trace-next">
          = <MathsView maths={view.numbers} />
        </div>
      )}
      {view.result !== undefined && !saysSame(view.numbers ?? view.symbols, view.result.text) && (
        <div class="trace-next">
          = <Short text={view.result.text} />
        </div>
      )}
    </div>
  );
}

/** Records are told in short; all of them on hover. */
function Short({ text }: { readonly text: string }) {
  const short = brief(text, SHORT);
  return short === text ? <span>{text}</span> : <span title={text}>{short}</span>;
}

const saysSame = (maths: Maths, text: string): boolean =>
  (maths.kind === "number" && (maths.unit === "" ? maths.text : `${maths.text} ${maths.unit}`) === text) ||
  (maths.kind === "text" && maths.text === text);

interface CallProps {
  readonly call: TraceCall;
  readonly desk: Desk;
  readonly open: boolean;
  /** 1 for a call of the line itself. */
  readonly level?: number;
}

function Call({ call, desk, open, level = 1 }: CallProps) {
  const deeper = useContext(Deeper);
  const [shown, setShown] = useState(open);
  const toggled = (now: boolean): void => {
    setShown(now);
    if (now) deeper(level);
  };
  return (
    <details
      class={level === 1 ? "trace-call outermost" : "trace-call"}
      open={shown}
      onToggle={(event) => toggled(event.currentTarget.open)}
    >
      <summary>
        <span class="trace-formula">{call.formula.slice(call.formula.lastIndexOf("#") + 1).replaceAll("_", " ")}</span>
        {call.citation !== undefined && <span class="pill">{call.citation}</span>}
      </summary>
      {shown && <Opened call={call} desk={desk} level={level} />}
    </details>
  );
}

/** What a closed call holds is not on the page. */
function Opened({ call, desk, level }: { readonly call: TraceCall; readonly desk: Desk; readonly level: number }) {
  return (
    <>
      {call.note !== undefined && <p class="panel-empty">{call.note}</p>}
      {call.arguments.map(({ name, shown, byDefault }) => (
        <div key={name.name} class="pair">
          <span>
            <MathsView maths={name} />
          </span>
          <Short text={byDefault ? `${shown.text} (default)` : shown.text} />
        </div>
      ))}
      {call.steps.map((step, index) => (
        <Step key={`${step.kind} ${index}`} step={step} desk={desk} level={level} />
      ))}
      {!call.formula.includes("#") && (
        <button type="button" class="plain small" onClick={() => desk.openLibrary(call.formula)}>
          in the library
        </button>
      )}
    </>
  );
}

function Step({ step, desk, level }: { readonly step: TraceStep; readonly desk: Desk; readonly level: number }) {
  const { name } = step;
  const working = {
    symbols: step.symbols,
    result: step.result,
    ...(name === undefined ? {} : { name }),
    ...(step.numbers === undefined ? {} : { numbers: step.numbers }),
  };
  if (step.holds !== undefined) {
    return (
      <div class="pair">
        <span class="row-place">
          {step.kind} <MathsView maths={step.numbers ?? step.symbols} />
        </span>
        <span class={step.holds ? "tone-quiet" : "tone-fails"}>{step.holds ? "● holds" : "▲ broken"}</span>
      </div>
    );
  }
  return (
    <>
      <Working view={working} />
      {step.note !== undefined && step.note !== "" && <p class="panel-empty">{step.note}</p>}
      {step.calls.map((call, index) => (
        <Call key={`${call.formula} ${index}`} call={call} desk={desk} open={false} level={level + 1} />
      ))}
    </>
  );
}
