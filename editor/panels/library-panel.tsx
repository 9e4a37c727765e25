// The library: searched by word, by the unit of what a formula gives, or by what fits at the caret; a formula opened with its
// maths, sources, limits and examples, and put in as a call with named arguments.

import { useEffect, useState } from "preact/hooks";
import type { Fitting, LibraryCard, LibraryListing, LibraryPage } from "../../engine/session/index.ts";
import { askTool } from "../shell/ask.ts";
import type { Desk } from "../shell/desk.ts";
import { MathsView } from "../shell/maths.tsx";
import type { PanelProps } from "./side-panel.tsx";

const SHOWN = 80;

export function LibraryPanel({ desk, state }: PanelProps) {
  const [list, setList] = useState<readonly LibraryListing[] | undefined>(undefined);
  const [query, setQuery] = useState("");
  const [fits, setFits] = useState<Fitting | undefined>(undefined);
  const [fitting, setFitting] = useState(false);
  const [quantity, setQuantity] = useState("");
  const opened = state.card;
  useEffect(() => {
    let current = true;
    setQuantity("");
    if (query.trim() === "") return;
    void askTool(desk.link, "quantityOfUnit", query.trim()).then((answer) => {
      if (current) setQuantity(answer ?? "");
    });
    return () => {
      current = false;
    };
  }, [desk, query]);
  useEffect(() => {
    let current = true;
    void wholeLibrary(desk, () => current).then((found) => {
      if (current && found !== undefined) setList(found);
    });
    return () => {
      current = false;
    };
  }, [desk]);
  useEffect(() => {
    let current = true;
    if (!fitting) return;
    void askTool(desk.link, "fitting", state.name, desk.pad.view.state.selection.main.head).then((answer) => {
      if (current && answer !== undefined) setFits(answer);
    });
    return () => {
      current = false;
    };
  }, [desk, fitting, state.name, state.revision, state.caretLine]);
  if (opened !== undefined) return <Card key={opened} desk={desk} name={opened} />;
  const found = list === undefined ? [] : search(list, query, quantity, fitting ? fits : undefined);
  return (
    <>
      <div class="library-search">
        <input
          type="search"
          aria-label="Search the library"
          placeholder="word, or unit such as mm^2"
          autocomplete="off"
          spellcheck={false}
          value={query}
          onInput={(event) => setQuery(event.currentTarget.value)}
        />
        <label class="library-fits">
          <input
            type="checkbox"
            checked={fitting}
            disabled={list === undefined}
            onChange={(event) => setFitting(event.currentTarget.checked)}
          />
          what fits at the caret
          {fitting && fits !== undefined && fits.wanted !== "" && <span class="pill">{fits.wanted}</span>}
        </label>
      </div>
      {list === undefined && <p class="panel-empty">Opening the library.</p>}
      {list !== undefined && found.length === 0 && <p class="panel-empty">Nothing in the library answers to this.</p>}
      <ul class="panel-list">
        {found.slice(0, SHOWN).map((listing) => (
          <li key={listing.name} class="library-row">
            <button type="button" class="row" onClick={() => desk.openLibrary(listing.name)}>
              <span class="row-line">
                <span class="library-name">{listing.name}</span>
                <span class="row-place">{listing.kind === "formula" || listing.kind === "value" ? listing.gives : listing.kind}</span>
              </span>
              {listing.note !== "" && <span class="row-text">{listing.note}</span>}
            </button>
          </li>
        ))}
      </ul>
      {found.length > SHOWN && <p class="panel-empty">{found.length - SHOWN} more: search for a word.</p>}
    </>
  );
}

/** The library does not change while the page lives, so it is asked for once. */
let known: readonly LibraryListing[] | undefined;

async function wholeLibrary(desk: Desk, wanted: () => boolean): Promise<readonly LibraryListing[] | undefined> {
  if (known !== undefined) return known;
  const all: LibraryListing[] = [];
  for (let from: number | undefined = 0; from !== undefined && wanted(); ) {
    const page: LibraryPage | undefined = await askTool(desk.link, "library", from);
    // The text changed meanwhile, or the worker is not there: ask again when it has answered.
    if (page === undefined) await Promise.all([desk.link.settled(), new Promise((resolve) => setTimeout(resolve, 100))]);
    else {
      all.push(...page.listings);
      from = page.next;
    }
  }
  if (wanted()) known = all;
  return known;
}

/** Every word of the query must stand in name or note; a query that is a unit asks for what gives its quantity. */
function search(list: readonly LibraryListing[], query: string, quantity: string, fits: Fitting | undefined): readonly LibraryListing[] {
  const order = fits === undefined ? undefined : new Map(fits.offers.map(({ name }, index) => [name, index]));
  const words = query
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== "");
  const matches = (listing: LibraryListing): boolean => {
    if (order !== undefined && !order.has(listing.name)) return false;
    if (quantity !== "" && listing.gives === quantity) return true;
    const text = `${listing.name.replaceAll("_", " ")} ${listing.name} ${listing.note} ${listing.module}`.toLowerCase();
    return words.every((word) => text.includes(word));
  };
  const rank = ({ name, kind }: LibraryListing): number => {
    if (order !== undefined) return order.get(name) ?? 0;
    const low = name.toLowerCase();
    const first = words[0] ?? "";
    return (low === first ? 0 : low.startsWith(first) ? 1 : low.includes(first) ? 2 : 3) + (kind === "formula" ? 0 : 0.5);
  };
  const found = list.filter(matches);
  return words.length === 0 && order === undefined ? found : [...found].sort((a, b) => rank(a) - rank(b));
}

function Card({ desk, name }: { readonly desk: Desk; readonly name: string }) {
  const [card, setCard] = useState<LibraryCard | undefined>(undefined);
  useEffect(() => {
    let current = true;
    void askTool(desk.link, "libraryCard", name).then((answer) => {
      if (current) setCard(answer);
    });
    return () => {
      current = false;
    };
  }, [desk, name]);
  const back = (
    <button type="button" class="plain small" onClick={() => desk.openLibrary(undefined)}>
      ← all of the library
    </button>
  );
  if (card === undefined) return back;
  const { listing, steps } = card;
  const limits = steps.filter(({ kind }) => kind === "valid" || kind === "require");
  const working = steps.filter(({ kind }) => kind === "step" || kind === "result");
  return (
    <>
      {back}
      <section>
        <h3 class="library-title">{listing.name}</h3>
        {listing.note !== "" && <p>{listing.note}</p>}
        {working.length > 0 && (
          <div class="trace-steps">
            {working.map((step, index) => (
              <div key={`${step.kind} ${index}`} title={step.note}>
                {step.name !== undefined && (
                  <>
                    <MathsView maths={step.name} /> ={" "}
                  </>
                )}
                {step.kind === "result" && step.name === undefined && "= "}
                <MathsView maths={step.maths} />
              </div>
            ))}
          </div>
        )}
        <div class="library-actions">
          <button type="button" class="boxed" onClick={() => void desk.insertCall(name)}>
            Put in at the caret
          </button>
          <button type="button" class="plain" onClick={() => desk.openModule(listing.module, name)}>
            read the module
          </button>
        </div>
      </section>
      {listing.parameters.length > 0 && (
        <section>
          <h3>{listing.kind === "record" ? "Fields" : "Takes"}</h3>
          {listing.parameters.map((parameter) => (
            <div key={parameter.name} class="pair">
              <span class="library-name">{parameter.name}</span>
              <span>
                {parameter.type}
                {parameter.optional ? ", has a default" : ""}
              </span>
            </div>
          ))}
          {listing.kind === "formula" && (
            <div class="pair">
              <span>gives</span>
              <span>{listing.gives}</span>
            </div>
          )}
        </section>
      )}
      {limits.length > 0 && (
        <section>
          <h3>Holds while</h3>
          {limits.map((limit, index) => (
            <p key={`${limit.kind} ${index}`}>
              <MathsView maths={limit.maths} />
              {limit.kind === "require" && <span class="pill">required</span>}
              {limit.note !== "" && <span class="row-text"> {limit.note}</span>}
            </p>
          ))}
        </section>
      )}
      {(card.citation !== "" || card.sources.length > 0) && (
        <section>
          <h3>Source</h3>
          {card.citation !== "" && <p>{card.citation}</p>}
          {card.sources.map((source) => (
            <p key={source} class="row-text">
              {source}
            </p>
          ))}
        </section>
      )}
      {card.examples.length > 0 && (
        <section>
          <h3>Examples</h3>
          {card.examples.map((example) => (
            <p key={example.text} class="example">
              <code>{example.text}</code>
              <span class={example.passes ? "tone-holds" : "tone-fails"}> {example.passes ? "● passes" : "▲ fails"}</span>
              {example.citation !== "" && <span class="row-text"> {example.citation}</span>}
            </p>
          ))}
        </section>
      )}
    </>
  );
}
