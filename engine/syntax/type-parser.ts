// The grammar's pieces: names, units, columns, literals, and types.

import { EmbeddedActionsParser, type IToken, type TokenType } from "chevrotain";
import type { Range } from "../base/index.ts";
import { type Diagnostic, faults } from "../diagnostics/index.ts";
import { columnsOf } from "./columns.ts";
import { alt, gated, separated } from "./grammar-options.ts";
import { normalName } from "./normal-name.ts";
import { plainDigits } from "./number-text.ts";
import { textValue } from "./text-literal.ts";
import * as t from "./token-types.ts";
import type {
  Columns,
  Expression,
  Identifier,
  Member,
  NameUse,
  NumberLiteral,
  TableHead,
  TextLiteral,
  TypeExpression,
  UnitText,
} from "./tree.ts";

const { endOf } = t;

export const tokenRange = (token: IToken): Range => ({ from: token.startOffset, to: endOf(token) });

export const identifier = (token: IToken): Identifier => ({
  name: token.tokenType === t.Text || token.tokenType === t.OpenText ? textValue(token.image) : normalName(token.image),
  text: token.image,
  range: tokenRange(token),
});

export const nameUse = (token: IToken): NameUse => ({
  kind: "name",
  name: normalName(token.image),
  text: token.image,
  range: tokenRange(token),
});

/** Blanks inside a unit only separate: one of a kind is as good as any. */
const plainSpaces = (unit: string): string => (/[^\S ]| {2}/.test(unit) ? unit.replace(/\s+/g, " ") : unit);

/** Names the token that was expected; the text of the message is the catalogue's. */
const errorMessageProvider = {
  buildMismatchTokenMessage: (options: { expected: TokenType }): string => options.expected.name,
  buildNotAllInputParsedMessage: (): string => "",
  buildNoViableAltMessage: (options: { ruleName: string }): string => options.ruleName,
  buildEarlyExitMessage: (options: { ruleName: string }): string => options.ruleName,
};

export class TypeParser extends EmbeddedActionsParser {
  protected source = "";
  /** Faults that do not stop the parse. */
  protected found: Diagnostic[] = [];

  constructor() {
    super([...new Set(t.everyType)], {
      recoveryEnabled: false,
      maxLookahead: 2,
      errorMessageProvider,
    });
  }

  // ---------------------------------------------------------------------------------------- pieces

  protected rangeFrom(start: number): Range {
    return { from: start, to: endOf(this.LA(0)) };
  }

  protected here(): number {
    return this.LA(1).startOffset;
  }

  protected isWord(ahead: number, image: string): boolean {
    return this.LA(ahead).image === image;
  }

  protected fault(diagnostic: Diagnostic): void {
    this.found.push(diagnostic);
  }
  protected readonly fieldName = this.RULE("fieldName", (): Identifier => {
    const token = this.OR([alt(() => this.CONSUME(t.Word)), alt(() => this.CONSUME(t.Text))]);
    return this.ACTION(() => identifier(token));
  });

  /** `Insert`, `shop.Insert`. */
  protected readonly path = this.RULE("path", (): NameUse | Member => {
    const first = this.CONSUME(t.Name);
    let node: NameUse | Member = this.ACTION(() => nameUse(first));
    this.MANY(() => {
      this.CONSUME(t.Dot);
      const field = this.SUBRULE(this.fieldName);
      const of = node;
      node = this.ACTION(() => ({ kind: "member", of, field, range: this.rangeFrom(first.startOffset) }));
    });
    return node;
  });

  protected readonly unit = this.RULE("unit", (): UnitText => {
    const token = this.CONSUME(t.Unit);
    return this.ACTION(() => ({ text: plainSpaces(token.image), range: tokenRange(token) }));
  });

  /** After `as`: `kN`, or `K abs` for a temperature point on its absolute scale. */
  protected readonly shownUnit = this.RULE("shownUnit", (): UnitText => {
    this.CONSUME(t.As);
    const unit = this.SUBRULE(this.unit);
    const absolute = this.OPTION(() => this.CONSUME(t.Abs));
    return this.ACTION(() =>
      absolute === undefined ? unit : { text: `${unit.text} abs`, range: { from: unit.range.from, to: endOf(absolute) } },
    );
  });

  /** `[N/mm]` of a type or a head: whatever stands between, as text. */
  protected readonly bracketUnit = this.RULE("bracketUnit", (): UnitText => {
    const open = this.CONSUME(t.OpenSquare);
    this.AT_LEAST_ONE(() => this.CONSUME(t.Piece));
    const close = this.CONSUME(t.CloseSquare);
    return this.ACTION(() => {
      const raw = this.source.slice(endOf(open), close.startOffset);
      const from = endOf(open) + raw.length - raw.trimStart().length;
      const text = raw.trim();
      if (raw.includes("\n"))
        this.fault(faults.doesNotFit({ from, to: from + text.length }, { found: "A line end in a unit", wanted: "]" }));
      return { text: plainSpaces(text), range: { from, to: from + text.length } };
    });
  });

  protected readonly columns = this.RULE("columns", (): Columns | undefined => {
    const bar = this.CONSUME(t.Bar);
    const note = this.OPTION(() => this.CONSUME(t.NoteText));
    const reference = this.OPTION1(() => {
      this.CONSUME(t.SecondBar);
      return this.OPTION2(() => this.CONSUME(t.ReferenceText));
    });
    return this.ACTION(() => columnsOf(bar, endOf(this.LA(0)), note, reference));
  });

  protected readonly text = this.RULE("text", (): TextLiteral => {
    const token = this.CONSUME(t.Text);
    return this.ACTION(() => ({ kind: "text", value: textValue(token.image), range: tokenRange(token) }));
  });

  protected readonly number = this.RULE("number", (): NumberLiteral => {
    const digits = this.CONSUME(t.Digits);
    const unit = this.OPTION(() => this.SUBRULE(this.unit));
    const absolute = this.OPTION1(() => this.CONSUME(t.Abs)) !== undefined;
    return this.ACTION(() => ({
      kind: "number",
      digits: plainDigits(digits.image),
      ...(unit === undefined ? {} : { unit }),
      absolute,
      range: this.rangeFrom(digits.startOffset),
    }));
  });

  // ---------------------------------------------------------------------------------------- types

  protected readonly type = this.RULE("type", (): TypeExpression => {
    const start = this.here();
    return this.OR({
      DEF: [
        gated(
          () => (this.isWord(1, "List") || this.isWord(1, "Maybe")) && this.startsType(2),
          () => {
            const word = this.CONSUME(t.Name);
            const of = this.SUBRULE(this.type);
            return this.ACTION(
              (): TypeExpression => ({ kind: word.image === "List" ? "list" : "maybe", of, range: this.rangeFrom(start) }),
            );
          },
        ),
        gated(
          () => this.isWord(1, "Table") && this.LA(2).tokenType === t.OpenBrace,
          () => {
            this.CONSUME1(t.Name);
            const heads = this.SUBRULE(this.heads);
            return this.ACTION((): TypeExpression => ({ kind: "columns", heads, range: this.rangeFrom(start) }));
          },
        ),
        alt(() => {
          const name = this.SUBRULE(this.path);
          return this.ACTION((): TypeExpression => ({ kind: "named", name, range: this.rangeFrom(start) }));
        }),
        alt(() => {
          const unit = this.SUBRULE(this.bracketUnit);
          return this.ACTION((): TypeExpression => ({ kind: "unit", unit, range: this.rangeFrom(start) }));
        }),
        alt(() => {
          const values: TextLiteral[] = [];
          this.AT_LEAST_ONE_SEP(separated(t.Or, () => values.push(this.SUBRULE(this.text))));
          return this.ACTION((): TypeExpression => ({ kind: "choices", values, range: this.rangeFrom(start) }));
        }),
      ],
      IGNORE_AMBIGUITIES: true,
    });
  });

  private startsType(ahead: number): boolean {
    const token = this.LA(ahead);
    return t.isA(token, t.Name) || t.isA(token, t.Text) || token.tokenType === t.OpenSquare;
  }

  protected readonly heads = this.RULE("heads", (): readonly TableHead[] => {
    const heads: TableHead[] = [];
    this.CONSUME(t.OpenBrace);
    this.OPTION(() => heads.push(this.SUBRULE(this.head)));
    this.MANY(() => {
      this.OR([alt(() => this.CONSUME(t.Comma)), alt(() => this.CONSUME(t.LineEnd))]);
      this.OPTION1(() => heads.push(this.SUBRULE1(this.head)));
    });
    this.CONSUME(t.CloseBrace);
    return heads;
  });

  protected readonly head = this.RULE("head", (): TableHead => {
    const name = this.SUBRULE(this.fieldName);
    const unit = this.OPTION(() => this.SUBRULE(this.bracketUnit));
    return this.ACTION(() => ({ name, ...(unit === undefined ? {} : { unit }), range: this.rangeFrom(name.range.from) }));
  });

  protected readonly constant = this.RULE("constant", (): Expression => {
    const token = this.OR([alt(() => this.CONSUME(t.True)), alt(() => this.CONSUME(t.False)), alt(() => this.CONSUME(t.None))]);
    return this.ACTION((): Expression => {
      const range = tokenRange(token);
      return token.tokenType === t.None ? { kind: "none", range } : { kind: "truth", value: token.tokenType === t.True, range };
    });
  });
}
