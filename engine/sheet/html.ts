// The sheet as one HTML file that needs nothing else: no script, its own fonts and style inside, MathML, SVG.

import { sha256, utf8 } from "../base/index.ts";
import { base64, base64OfHex } from "./base64.ts";
import { htmlBlocks } from "./html-blocks.ts";
import { sheetStyle } from "./html-style.ts";
import { element, escapeText, type Markup } from "./markup.ts";
import type { Sheet } from "./model.ts";

/** A font of the product as a browser reads it. */
export interface WebFont {
  readonly family: string;
  readonly weight: number;
  readonly italic: boolean;
  /** woff2 */
  readonly bytes: Uint8Array;
  /** Of a style sheet's `unicode-range`; empty for all. */
  readonly range: string;
}

/** UTF-8 text of the file. The same sheet and fonts give the same bytes. */
export function sheetHtml(sheet: Sheet, fonts: readonly WebFont[]): string {
  const { title } = sheet;
  const name = [title.number, title.title].filter((part) => part !== "").join(" ");
  const revision = title.revision === "" ? "" : `rev. ${title.revision}`;
  const style = `${fonts.map(fontRule).join("")}${sheetStyle({
    topLeft: name,
    topRight: [title.project, revision, title.status].filter((part) => part !== "").join(" · "),
    bottomLeft: sheet.foot.left,
    bottomMiddle: sheet.foot.middle,
  })}`;
  const policy = `default-src 'none'; style-src 'sha256-${base64OfHex(sha256(utf8(style)))}'; font-src data:; base-uri 'none'; form-action 'none'`;
  const head = element("head", {}, [
    element("meta", { charset: "utf-8" }, []),
    element("meta", { "http-equiv": "Content-Security-Policy", content: policy }, []),
    element("meta", { name: "viewport", content: "width=device-width, initial-scale=1" }, []),
    element("meta", { name: "generator", content: sheet.foot.middle }, []),
    element("title", {}, [escapeText(name === "" ? "Calculation" : name)]),
    // A style is raw text: it holds no notebook text but CSS strings, in which `<` is written by its number.
    `<style>${style}</style>`,
  ]);
  const body = element("body", {}, [
    element("main", {}, [
      titleBlock(sheet),
      ...htmlBlocks(sheet.blocks),
      element("p", { class: "endnote" }, [escapeText(`${sheet.foot.left} · ${sheet.foot.middle}`)]),
    ]),
  ]);
  return `<!doctype html>\n${element("html", { lang: sheet.language }, [head, "\n", body])}\n`;
}

const encoded = new WeakMap<Uint8Array, string>();

/** Fonts are written out once, however many sheets carry them. */
function fontData(bytes: Uint8Array): string {
  const data = encoded.get(bytes) ?? base64(bytes);
  encoded.set(bytes, data);
  return data;
}

const fontRule = ({ family, weight, italic, bytes, range }: WebFont): string =>
  `@font-face{font-family:"${family}";font-style:${italic ? "italic" : "normal"};font-weight:${weight};src:url(data:font/woff2;base64,${fontData(bytes)}) format("woff2")${range === "" ? "" : `;unicode-range:${range}`}}\n`;

/** Fields of ISO 7200 in two rows. */
function titleBlock({ title }: Sheet): Markup {
  const field = (label: string, value: string, span: string): Markup =>
    element("td", { colspan: span }, [
      element("span", { class: "label" }, [label]),
      element("span", { class: "what" }, [escapeText(value)]),
    ]);
  return element("header", {}, [
    element("table", { class: "title" }, [
      element("tbody", {}, [
        element("tr", {}, [
          field("Title", title.title, "5"),
          field("Project", title.project, "3"),
          field("Number", title.number, "2"),
          field("Rev.", title.revision, "1"),
          field("Status", title.status, "2"),
        ]),
        element("tr", {}, [
          field("Creator", title.creator, "3"),
          field("Checker", title.checker, "3"),
          field("Approval person", title.approval_person, "3"),
          field("Owner", title.owner, "2"),
          field("Date of issue", title.date, "2"),
        ]),
      ]),
    ]),
  ]);
}
