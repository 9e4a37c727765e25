// The one writer of HTML, SVG and MathML text: every text and every value of an attribute is escaped here.

/** Markup that `element` or `escapeText` made; only these two make it. */
export type Markup = string;

const TEXT: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;" };
const VALUE: Readonly<Record<string, string>> = { ...TEXT, '"': "&quot;" };
/** Control characters that no HTML may hold. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out
const CONTROL = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]/g;

export const escapeText = (text: string): Markup => text.replace(CONTROL, "\ufffd").replace(/[&<>]/g, (sign) => TEXT[sign] ?? sign);
const escapeValue = (text: string): string => text.replace(CONTROL, "\ufffd").replace(/[&<>"]/g, (sign) => VALUE[sign] ?? sign);

const VOID = new Set(["meta", "br", "hr", "col", "link"]);

/** An element; attributes with empty text are left out. */
export function element(name: string, attributes: Readonly<Record<string, string>>, inner: readonly Markup[]): Markup {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== "")
    .map(([key, value]) => ` ${key}="${escapeValue(value)}"`)
    .join("");
  return VOID.has(name) ? `<${name}${written}>` : `<${name}${written}>${inner.join("")}</${name}>`;
}
