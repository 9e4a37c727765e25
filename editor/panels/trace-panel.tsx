// The trace of one value: symbols, numbers put in, result; the formulas it calls, opened; what feeds it.

import { useEffect, useState } from "preact/hooks";
import type { Trace } from "../../engine/session/index.ts";
import { type Maths, symbolOf, type TraceCall, type TraceStep, type TraceView } from "../../engine/trace/index.ts";
import type { Desk, DeskState } from "./desk.ts";
import { MathsView } from "./maths.tsx";
import { MessageText } from "./message-text.tsx";

const OPEN = 3;

export function TracePanel({ desk, state }: { readonly desk: Desk; readonly state: DeskState }) {
  const [trace, setTrace] = useState<Trace | undefined>(undefined);
  const { traced, revision } = state;
  // A new revision of the outputs asks for a new trace.
  useEffect(() => {
    let current = true;
    if (traced === undefined) return setTrace(undefined);
    void desk.link.ask({ about: "trace", name: traced, open: OPEN }).then((answer) => {
      if (current) setTrace(answer);
    });
    return () => {
      current = false;
    };
  }, [desk, traced, revision]);
  if (traced === undefined || trace === undefined) return <p class="panel-empty">Click an output to see how it comes about.</p>;
  const { view, usedBy } = trace;
  return (
    <>
      <h3>{view.note === undefined || view.note === "" ? "Working" : view.note}</h3>
      <Working view={view} />
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
      {view.calls.map((call, index) => (
        <Call key={`${call.formula} ${index}`} call={call} />
      ))}
      {view.feeds.length > 0 && (
        <>
          <h3>Feeds it</h3>
          {view.feeds.map((feed) => (
            <button key={feed.name} type="button" class="row" onClick={() => desk.trace(feed.name)}>
              <span class="trace-row">
                <span>
                  <MathsView maths={feed.symbol} />
                  {feed.provenance !== undefined && <span class="trace-source">{feed.provenance.level}</span>}
                </span>
                <span>{feed.shown.text}</span>
              </span>
            </button>
          ))}
        </>
      )}
      {usedBy.length > 0 && (
        <>
          <h3>Used by</h3>
          {usedBy.map((name) => (
            <button key={name} type="button" class="row" onClick={() => desk.trace(name)}>
              {/^[\p{L}_][\p{L}\p{Nd}_]*$/u.test(name) ? <MathsView maths={symbolOf(name)} /> : name}
            </button>
          ))}
        </>
      )}
    </>
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
        <div>
          = <MathsView maths={view.numbers} />
        </div>
      )}
      {view.result !== undefined && !saysSame(view.numbers ?? view.symbols, view.result.text) && <div>= {view.result.text}</div>}
    </div>
  );
}

const saysSame = (maths: Maths, text: string): boolean =>
  (maths.kind === "number" && (maths.unit === "" ? maths.text : `${maths.text} ${maths.unit}`) === text) ||
  (maths.kind === "text" && maths.text === text);

function Call({ call }: { readonly call: TraceCall }) {
  return (
    <details class="trace-call">
      <summary>
        {call.formula.replaceAll("_", " ")}
        {call.reference !== undefined && <span class="trace-source">{call.reference}</span>}
      </summary>
      {call.note !== undefined && <p class="panel-empty">{call.note}</p>}
      {call.arguments.map(({ name, shown, byDefault }) => (
        <div key={name.name} class="trace-row">
          <span>
            <MathsView maths={name} />
          </span>
          <span>
            {shown.text}
            {byDefault ? " (default)" : ""}
          </span>
        </div>
      ))}
      {call.steps.map((step, index) => (
        <Step key={`${step.kind} ${index}`} step={step} />
      ))}
    </details>
  );
}

function Step({ step }: { readonly step: TraceStep }) {
  const { name } = step;
  const working = {
    symbols: step.symbols,
    result: step.result,
    ...(name === undefined ? {} : { name }),
    ...(step.numbers === undefined ? {} : { numbers: step.numbers }),
  };
  if (step.holds !== undefined) {
    return (
      <p class={step.holds ? "tone-quiet" : "tone-fails"}>
        {step.kind} <MathsView maths={step.numbers ?? step.symbols} /> {step.holds ? "● holds" : "▲ broken"}
      </p>
    );
  }
  return (
    <>
      <Working view={working} />
      {step.calls.map((call, index) => (
        <Call key={`${call.formula} ${index}`} call={call} />
      ))}
    </>
  );
}
