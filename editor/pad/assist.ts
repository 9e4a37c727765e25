// Completion and hover, both asked of the engine; the pad knows no names of its own.

import { autocompletion, type CompletionContext, type CompletionResult, type Completion as Option } from "@codemirror/autocomplete";
import type { Extension } from "@codemirror/state";
import { hoverTooltip } from "@codemirror/view";
import { chunkAt } from "../../engine/notebook/index.ts";
import type { Completion } from "../../engine/session/index.ts";
import type { EngineLink } from "../link/link.ts";
import { notebookField, partAt } from "./notebook-field.ts";
import { brief } from "./output-words.ts";
import { statementStyle } from "./statement-style.ts";

const WORD = /[\p{L}\p{M}\p{Nd}_]*$/u;

/** A ledger in full would cover the page. */
const LONGEST = 240;

/** The engine has ordered them; what the editor adds is kept small beside that. */
const BOOST: Partial<Record<Completion["kind"], number>> = { name: 2, field: 2, unit: 1 };

function option(completion: Completion): Option {
  return {
    label: completion.label,
    apply: completion.insert,
    detail: completion.detail,
    ...(completion.info === undefined ? {} : { info: completion.info }),
    boost: BOOST[completion.kind] ?? 0,
  };
}

async function complete(link: EngineLink, context: CompletionContext): Promise<CompletionResult | null> {
  const kind = partAt(context.state, context.pos)?.part.kind;
  const before = context.matchBefore(WORD)?.text ?? "";
  const lead = context.state.sliceDoc(Math.max(0, context.pos - before.length - 2), context.pos - before.length);
  // In prose only inside braces; without a word only where something must follow, or when asked.
  if (kind !== "calc" && !/\{[^}]*$/.test(context.state.sliceDoc(context.state.doc.lineAt(context.pos).from, context.pos))) return null;
  if (kind === "calc" && inNote(context)) return null;
  const line = context.state.doc.lineAt(context.pos);
  const inText = (context.state.sliceDoc(line.from, context.pos).match(/"/g)?.length ?? 0) % 2 === 1;
  if (!context.explicit && !inText && before === "" && !/[.@]$|\d $/.test(lead)) return null;
  if (!context.explicit && !inText && /^\d/.test(before) && !/\d[\p{L}µ°%]*$/u.test(before)) return null;
  const found = await link.ask({ about: "complete", offset: context.pos });
  if (found === undefined || found.options.length === 0 || context.aborted) return null;
  return { from: found.from, to: found.to, options: found.options.map(option), validFor: inText ? /^[^"]*$/ : /^[\p{L}\p{M}\p{Nd}_]*$/u };
}

/** In a line's columns only keys of sources are names. */
function inNote(context: CompletionContext): boolean {
  const placed = chunkAt(context.state.field(notebookField), context.pos);
  if (placed === undefined) return false;
  const offset = context.pos - placed.from;
  const column = statementStyle(placed.chunk).columns.find(({ from, to }) => from < offset && offset <= to);
  return column !== undefined && !/@[\p{L}\p{Nd}_-]*$/u.test(placed.chunk.text.slice(column.from, offset));
}

function hover(link: EngineLink): Extension {
  return hoverTooltip(
    async (view, offset) => {
      const found = await link.ask({ about: "hover", offset });
      if (found === undefined || found.to > view.state.doc.length) return null;
      return {
        pos: found.from,
        end: found.to,
        above: true,
        create() {
          const dom = document.createElement("div");
          dom.className = "jw-hover";
          const add = (className: string, text: string): void => {
            const row = document.createElement("div");
            row.className = className;
            row.textContent = text;
            dom.append(row);
          };
          add("jw-hover-head", found.head);
          if (found.value !== undefined)
            add(
              "",
              found.value.full === "" || found.value.full === found.value.number
                ? found.value.text
                : brief(`${found.value.text} (${found.value.full})`, LONGEST),
            );
          if (found.note !== undefined && found.note !== "") add("jw-hover-soft", found.note);
          if (found.citation !== undefined && found.citation !== "") add("jw-hover-soft", found.citation);
          for (const line of found.working ?? []) add("jw-hover-working", line);
          return { dom };
        },
      };
    },
    { hideOnChange: true },
  );
}

export const assist = (link: EngineLink): Extension => [
  autocompletion({
    override: [(context) => complete(link, context)],
    icons: false,
    closeOnBlur: true,
    activateOnTypingDelay: 80,
  }),
  hover(link),
];
