// Set formulas as MathML text.

import { element, escapeText } from "./markup.ts";
import { type Typeset, typesetText } from "./typeset.ts";

/**
 * One formula as a `math` element. `large` sets it with full-size fractions; it stays inline, since a block of MathML is
 * always centred. The plain text is its name for screen readers without MathML.
 */
export function mathml(set: Typeset, large: boolean): string {
  return element("math", { displaystyle: large ? "true" : "", alttext: typesetText(set).trim() }, [piece(set)]);
}

const stretchy = (text: string, form: "prefix" | "postfix"): string => element("mo", { stretchy: "true", form }, [escapeText(text)]);

function piece(set: Typeset): string {
  switch (set.kind) {
    case "row":
      return element("mrow", {}, set.items.map(piece));
    case "letters":
      return element("mi", { mathvariant: [...set.text].length === 1 && set.letters === "upright" ? "normal" : "" }, [
        escapeText(set.text),
      ]);
    case "number":
      return element("mn", {}, [escapeText(set.text)]);
    case "words":
      // MathML drops blanks at the ends of a text.
      return element("mtext", {}, [escapeText(set.text.replaceAll(" ", "\u00a0"))]);
    case "sign":
      return signPiece(set);
    case "fraction":
      return element("mfrac", {}, [piece(set.over), piece(set.under)]);
    case "root":
      return set.degree === 2
        ? element("msqrt", {}, [piece(set.of)])
        : element("mroot", {}, [piece(set.of), element("mn", {}, [String(set.degree)])]);
    case "scripts":
      return scripts(set);
    case "fenced":
      return element("mrow", {}, [stretchy(set.open, "prefix"), piece(set.of), stretchy(set.close, "postfix")]);
    case "cases":
      return element("mrow", {}, [
        stretchy("{", "prefix"),
        element(
          "mtable",
          { columnalign: "left left", displaystyle: "true" },
          set.rows.map(({ value, condition }) =>
            element("mtr", {}, [element("mtd", {}, [piece(value)]), element("mtd", {}, [piece(condition)])]),
          ),
        ),
      ]);
    case "room":
      return element("mspace", { width: `${set.width}em` }, []);
  }
}

const ROOM: Readonly<Record<Extract<Typeset, { readonly kind: "sign" }>["room"], readonly [string, string]>> = {
  infix: ["0.25em", "0.25em"],
  prefix: ["0", "0"],
  tight: ["0", "0"],
  comma: ["0", "0.25em"],
};

function signPiece({ text, room }: Extract<Typeset, { readonly kind: "sign" }>): string {
  const [lspace, rspace] = ROOM[room];
  return element("mo", { lspace, rspace, stretchy: "false" }, [escapeText(text)]);
}

function scripts({ base, below, above }: Extract<Typeset, { readonly kind: "scripts" }>): string {
  if (below !== undefined && above !== undefined) return element("msubsup", {}, [piece(base), piece(below), piece(above)]);
  if (below !== undefined) return element("msub", {}, [piece(base), piece(below)]);
  return above === undefined ? piece(base) : element("msup", {}, [piece(base), piece(above)]);
}
