// The sheet as one HTML file: nothing from outside, nothing that runs, every text escaped.

import { createHash } from "node:crypto";
import { expect, test } from "vitest";
import { webFonts } from "../../editor/fonts/files.ts";
import { sheetHtml } from "../../engine/sheet/index.ts";
import { calc, sheetOf } from "./helper.ts";

const nasty = `---
title: "Bracket </style><script>alert(1)</script> \\" & more"
number: "C-1\\\\"
---

# Purpose <img src=x onerror=alert(1)>

Text with <b>markup</b> & "quotes" and {x}.

${calc('x = "</td><script>alert(2)</script>" | note <i>in</i> it | given "q" <u>', "F = 3 N | load", "check F <= 4 N | it <em>holds</em>")}`;

const html = sheetHtml(sheetOf(nasty), webFonts());

test("no text of a notebook becomes markup, neither in the body nor in the style of the running heads", () => {
  expect(/<script|<img|<b>markup|<i>in|<u>|<em>holds/.exec(html)?.[0]).toBeUndefined();
  expect(html.match(/<\/style>/g)).toHaveLength(1);
  expect(html.includes("&lt;script&gt;alert(2)&lt;/script&gt;")).toBe(true);
});

test("the policy allows nothing but the file's own style, by its digest, and fonts inside it", () => {
  const style = /<style>([\s\S]*?)<\/style>/.exec(html)?.[1] ?? "";
  const digest = createHash("sha256").update(style).digest("base64");
  const policy = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(html)?.[1] ?? "";
  expect(policy).toBe(`default-src 'none'; style-src 'sha256-${digest}'; font-src data:; base-uri 'none'; form-action 'none'`);
});

test("nothing is fetched: no address but links that a reader follows, no style in attributes", () => {
  const attributes = new Set(
    [...html.matchAll(/<[a-z][^<>]*>/g)].flatMap(([tag]) => [...tag.matchAll(/\s([a-z-]+)="/g)].map(([, name]) => name)),
  );
  expect([...attributes].filter((name) => /^(?:src|style|srcset|background|on.*)$/.test(name ?? ""))).toEqual([]);
  expect(/@import|url\((?!data:font)/.exec(html)?.[0]).toBeUndefined();
});

test("the fonts are inside, whole", () => {
  const fonts = [...html.matchAll(/url\(data:font\/woff2;base64,([^)]*)\)/g)].map(([, data = ""]) => Buffer.from(data, "base64"));
  expect(fonts.length).toBe(webFonts().length);
  for (const font of fonts) expect(font.subarray(0, 4).toString("latin1")).toBe("wOF2");
});

test("tags close in order", () => {
  const open: string[] = [];
  const body = html.replace(/<style>[\s\S]*?<\/style>/, "");
  for (const [, close, name = "", attributes = ""] of body.matchAll(/<(\/?)([a-z][a-z0-9]*)((?:"[^"]*"|[^">])*)>/g)) {
    if (["meta", "br", "hr", "col", "link"].includes(name) || attributes.endsWith("/")) continue;
    if (close === "") open.push(name);
    else expect(open.pop()).toBe(name);
  }
  expect(open).toEqual([]);
});

test("the same sheet gives the same bytes", () => {
  expect(sheetHtml(sheetOf(nasty), webFonts()) === html).toBe(true);
});
