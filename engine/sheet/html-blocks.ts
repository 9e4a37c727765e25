// Blocks of the sheet as HTML text.

import { sceneSvg } from "../figure/index.ts";
import { equationRows, roughWidth } from "./equation.ts";
import { plainText } from "./inlines.ts";
import { element, escapeText, type Markup } from "./markup.ts";
import { mathml } from "./mathml.ts";
import type { Block, Cell, FigureBlock, Inline, TableBlock, WorkingBlock } from "./model.ts";
import { stateShapes, stateWords } from "./model.ts";
import { NUMBER, splitTable } from "./split-table.ts";

/** Quads of the equation's size that the middle column holds on a sheet of A4; Letter is wider. */
const EQUATION_WIDTH = 29;

export function htmlBlocks(blocks: readonly Block[]): readonly Markup[] {
  const contents = contentsList(blocks);
  return grouped(blocks).map((group) =>
    Array.isArray(group)
      ? element("div", { class: "lines" }, (group as readonly WorkingBlock[]).map(working))
      : block(group as Block, contents),
  );
}

/** Lines of working that follow each other share one grid. */
function grouped(blocks: readonly Block[]): readonly (Block | readonly WorkingBlock[])[] {
  const out: (Block | WorkingBlock[])[] = [];
  for (const each of blocks) {
    const last = out[out.length - 1];
    if (each.kind !== "working") out.push(each);
    else if (Array.isArray(last)) last.push(each);
    else out.push([each]);
  }
  return out;
}

function contentsList(blocks: readonly Block[]): Markup {
  const entries = blocks.flatMap((each) =>
    each.kind === "heading" && each.level < 3
      ? [
          element("li", { class: `level${each.level}` }, [
            element("a", { href: `#${each.id}` }, [
              element("span", { class: "no" }, [escapeText(each.number)]),
              escapeText(` ${each.text}`),
            ]),
          ]),
        ]
      : [],
  );
  return element("nav", { class: "contents", "aria-label": "Contents" }, [element("ol", {}, entries)]);
}

function block(each: Block, contents: Markup): Markup {
  switch (each.kind) {
    case "heading":
      return element(`h${each.level + 1}`, { id: each.id }, [
        element("span", { class: "no" }, [escapeText(each.number)]),
        ` ${escapeText(each.text)}`,
      ]);
    case "paragraph":
      return element("p", {}, inlines(each.of));
    case "list":
      return element(
        each.ordered ? "ol" : "ul",
        { start: each.ordered && each.start !== 1 ? String(each.start) : "" },
        each.items.map((item) =>
          element(
            "li",
            {},
            item.map((inner) => block(inner, contents)),
          ),
        ),
      );
    case "quote":
      return element(
        "blockquote",
        {},
        each.of.map((inner) => block(inner, contents)),
      );
    case "code":
      return element("pre", {}, [element("code", {}, [escapeText(each.text)])]);
    case "rule":
      return element("hr", {}, []);
    case "table":
      return splitTable(each).map(table).join("");
    case "working":
      return working(each);
    case "figure":
      return figure(each);
    case "caution":
      return element("aside", { class: "caution" }, [
        element("p", {}, [element("b", {}, [escapeText(`${each.title}. `)]), ...inlines(each.of)]),
      ]);
    case "signatures":
      return signatures(each);
    case "contents":
      return contents;
  }
}

/** Up to this many rows a table is kept on one page where a page holds it. */
const KEPT_ROWS = 6;

function table({ id, caption, columns, rows, dense }: TableBlock): Markup {
  const head = element(
    "tr",
    {},
    columns.map(({ head: words, align }) => element("th", { scope: "col", class: align }, headInlines(words))),
  );
  const content = (cell: Cell, right: boolean): readonly Markup[] =>
    right && plainText(cell).length > NUMBER ? [element("span", { class: "wide" }, inlines(cell))] : inlines(cell);
  const line = (cells: readonly Cell[]): Markup =>
    element(
      "tr",
      {},
      cells.map((cell, i) => element("td", { class: columns[i]?.align ?? "left" }, content(cell, columns[i]?.align === "right"))),
    );
  return element("table", { id, class: `${rows.length <= KEPT_ROWS ? "kept" : ""}${dense === true ? " dense" : ""}`.trim() }, [
    caption === "" ? "" : element("caption", {}, [escapeText(caption)]),
    element("thead", {}, [head]),
    // The head stands with two rows below it at least, where it is said again too.
    element("tbody", { class: "lead" }, rows.slice(0, 2).map(line)),
    rows.length > 4 ? element("tbody", {}, rows.slice(2, -2).map(line)) : "",
    rows.length > 2 ? element("tbody", { class: "tail" }, rows.slice(Math.max(2, rows.length - 2)).map(line)) : "",
  ]);
}

/** Heads stand in capitals; units and symbols in them stay as they are. */
const headInlines = ([first, ...rest]: Cell): readonly Markup[] =>
  first === undefined
    ? []
    : [
        ...(first.kind === "text" ? inlines([first]) : [element("span", { class: "as-is" }, inlines([first]))]),
        ...(rest.length === 0 ? [] : [element("span", { class: "as-is" }, inlines(rest))]),
      ];

function working(line: WorkingBlock): Markup {
  const rows = equationRows(line.equation, EQUATION_WIDTH - line.depth * 1.2, roughWidth).map(({ indent, of }) =>
    element("div", { class: `row in${Math.round(indent / 1.6)}` }, [mathml(of, true)]),
  );
  const below = line.below.map((words) => element("p", { class: "below" }, inlines(words)));
  return element("div", { class: `line depth${Math.min(line.depth, 4)}` }, [
    element("div", { class: "ref" }, inlines(line.reference)),
    element("div", { class: "eq" }, [...rows, ...below]),
    element("div", { class: "out" }, inlines(line.output)),
  ]);
}

function figure({ number, scene, caption }: FigureBlock): Markup {
  return element("figure", {}, [
    sceneSvg(scene, { id: `figure-${number}` }),
    element("figcaption", {}, [element("b", {}, [`Figure ${number}. `]), escapeText(caption)]),
  ]);
}

function signatures({ roles }: Extract<Block, { kind: "signatures" }>): Markup {
  const head = ["Role", "Name", "Signature", "Date"];
  return element("table", { class: "sign kept" }, [
    element("thead", {}, [
      element(
        "tr",
        {},
        head.map((word) => element("th", { scope: "col", class: "left" }, [word])),
      ),
    ]),
    element(
      "tbody",
      {},
      roles.map(({ role, name }) =>
        element("tr", {}, [
          element("th", { scope: "row", class: "left" }, [escapeText(role)]),
          element("td", {}, [escapeText(name)]),
          element("td", {}, []),
          element("td", {}, []),
        ]),
      ),
    ),
  ]);
}

export const inlines = (all: readonly Inline[]): readonly Markup[] => all.map(inline);

function inline(each: Inline): Markup {
  switch (each.kind) {
    case "text":
      return escapeText(each.text);
    case "emphasis":
      return element("em", {}, inlines(each.of));
    case "strong":
      return element("strong", {}, inlines(each.of));
    case "code":
      return element("code", {}, [escapeText(each.text)]);
    case "link": {
      const words = plainText(each.of);
      // On paper the address has to be read.
      const address =
        words === each.address || `mailto:${words}` === each.address
          ? ""
          : element("span", { class: "address" }, [escapeText(` (${each.address})`)]);
      return element("a", { href: each.address, rel: "noreferrer" }, inlines(each.of)) + address;
    }
    case "value":
      return element("span", { class: each.missing ? "value missing" : "value" }, [escapeText(each.text)]);
    case "state":
      return element("span", { class: `state ${each.state.replaceAll(" ", "-")}` }, [
        element("span", { class: "shape", "aria-hidden": "true" }, [stateShapes[each.state]]),
        ` ${stateWords[each.state]}`,
      ]);
    case "maths":
      return mathml(each.of, false);
    case "break":
      return element("br", {}, []);
  }
}
