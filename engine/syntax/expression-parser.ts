// The grammar of expressions. Actions build the tree at once; operator chains are resolved in operators.ts.

import type { IToken } from "chevrotain";
import { faults } from "../diagnostics/index.ts";
import { alt, gated, gatedOption, separated } from "./grammar-options.ts";
import { plainDigits } from "./number-text.ts";
import { type Operand, resolve } from "./operators.ts";
import { superscriptPower } from "./superscript.ts";
import * as t from "./token-types.ts";
import type { Argument, Columns, Expression, FieldValue, Member, NameUse, NumberLiteral, Scatter, UnitText } from "./tree.ts";
import { identifier, nameUse, tokenRange } from "./type-parser.ts";
import { WordParser } from "./word-parser.ts";

const { endOf } = t;

/** An operand's core and whether it stood in brackets of its own (then it is no callee). */
interface Primary {
  readonly node: Expression;
  readonly bracketed: boolean;
}
export class ExpressionParser extends WordParser {
  /** An expression, and at its end, where a definition, a field or a list item may carry it, a scatter. */
  protected readonly value = this.RULE("value", (): Expression => {
    const start = this.here();
    const nominal = this.SUBRULE(this.expression);
    const spread = this.OPTION(() => this.SUBRULE(this.spread));
    return this.ACTION((): Expression => {
      if (spread === undefined) return nominal;
      if (spread.kind === "unequal" && !isSignedLiteral(nominal)) {
        this.fault(faults.limitsNominal(nominal.range, { nominal: this.source.slice(nominal.range.from, nominal.range.to) }));
      }
      return { kind: "scatter", nominal, spread, range: this.rangeFrom(start) };
    });
  });

  private readonly spread = this.RULE("spread", (): Scatter["spread"] =>
    this.OR([
      alt((): Scatter["spread"] => {
        const sign = this.CONSUME(t.PlusMinus);
        const by = this.SUBRULE(this.operators);
        const of = this.OPTION(() => {
          this.CONSUME(t.Of);
          return this.SUBRULE1(this.operators);
        });
        return this.ACTION((): Scatter["spread"] => {
          if (of === undefined) return { kind: "limits", by };
          if (by.kind === "number") return { kind: "share", share: by, of };
          this.fault(faults.shareLiteral(by.range, { sign: sign.image }));
          return { kind: "limits", by };
        });
      }),
      alt((): Scatter["spread"] => {
        this.CONSUME(t.Tilde);
        const by = this.SUBRULE2(this.operators);
        const count = this.OPTION1(() => {
          this.CONSUME1(t.Of);
          return this.SUBRULE(this.number);
        });
        return this.ACTION(() => ({ kind: "deviation", by, ...(count === undefined ? {} : { count }) }));
      }),
      alt((): Scatter["spread"] => {
        const token = this.CONSUME(t.Limits);
        const unit = this.OPTION2(() => this.SUBRULE(this.unit));
        return this.ACTION(() => limits(token, unit));
      }),
    ]),
  );

  readonly expression = this.RULE("expression", (): Expression => {
    const start = this.here();
    let node = this.SUBRULE(this.operators);
    this.MANY(() => {
      const of = node;
      node = this.OR([
        alt((): Expression => {
          this.CONSUME(t.With);
          const fields = this.SUBRULE(this.fieldValues);
          return this.ACTION(() => ({ kind: "with", of, fields, range: this.rangeFrom(start) }));
        }),
        alt((): Expression => {
          this.CONSUME(t.Where);
          const condition = this.SUBRULE1(this.operators);
          return this.ACTION(() => ({ kind: "where", of, condition, range: this.rangeFrom(start) }));
        }),
      ]);
    });
    return node;
  });

  protected readonly operators = this.RULE("operators", (): Expression => {
    const operands: Operand[] = [];
    const tokens: IToken[] = [];
    operands.push(this.SUBRULE(this.operand));
    this.MANY(() => {
      tokens.push(this.CONSUME(t.Infix));
      operands.push(this.SUBRULE1(this.operand));
    });
    return this.ACTION(() => resolve(operands, tokens, (token) => this.fault(faults.stepAlone(tokenRange(token), {}))));
  });

  private readonly operand = this.RULE("operand", (): Operand => {
    const signs: IToken[] = [];
    this.MANY(() => signs.push(this.CONSUME(t.Sign)));
    const start = this.here();
    const primary = this.SUBRULE(this.primary);
    let node = this.ACTION(() => primary.node);
    // A callee, or a record's name, is a bare path: `(f)(x)` and `2(3)` are refused as products without a sign.
    let bare = this.ACTION(() => !primary.bracketed);
    const literal = this.ACTION(() => !primary.bracketed);
    this.MANY1(() => {
      const of = node;
      node = this.OR([
        gated(
          () => of.kind !== "number" || !literal,
          (): Expression => {
            this.CONSUME(t.Dot);
            const field = this.SUBRULE(this.fieldName);
            return this.ACTION(() => {
              bare = true;
              return { kind: "member", of, field, range: this.rangeFrom(start) };
            });
          },
        ),
        gated(
          () => of.kind !== "number" || !literal,
          (): Expression => {
            this.CONSUME(t.OpenSquare);
            const index = this.SUBRULE(this.expression);
            this.CONSUME(t.CloseSquare);
            return this.ACTION(() => ({ kind: "index", of, index, range: this.rangeFrom(start) }));
          },
        ),
        gated(
          () => bare && (of.kind === "name" || of.kind === "member"),
          (): Expression => {
            const list = this.SUBRULE(this.arguments);
            return this.ACTION(() => ({ kind: "call", callee: of as NameUse | Member, arguments: list, range: this.rangeFrom(start) }));
          },
        ),
        gated(
          () => bare && (of.kind === "name" || of.kind === "member"),
          (): Expression => {
            const fields = this.SUBRULE(this.fieldValues);
            return this.ACTION(() => ({ kind: "record", type: of as NameUse | Member, fields, range: this.rangeFrom(start) }));
          },
        ),
      ]);
    });
    // A superscript ends the value: `k².a` would be printed as `k^2.a`.
    const superscript = this.OPTION(() => this.CONSUME(t.Superscript));
    if (superscript !== undefined) node = this.ACTION(() => superscriptPower(node, superscript, this.rangeFrom(start)));
    return this.ACTION(() => ({ signs, node, from: start, to: endOf(this.LA(0)) }));
  });

  private readonly primary = this.RULE("primary", (): Primary => {
    const start = this.here();
    let bracketed = false;
    const node = this.OR({
      DEF: [
        alt((): Expression => this.SUBRULE(this.number)),
        gated(
          () => this.startsStudy(),
          (): Expression => this.SUBRULE(this.study),
        ),
        gated(
          () => this.startsSolve(),
          (): Expression => this.SUBRULE(this.solve),
        ),
        gated(
          () => this.startsGroup(),
          (): Expression => this.SUBRULE(this.group),
        ),
        gated(
          () => this.startsAccumulate(),
          (): Expression => this.SUBRULE(this.accumulate),
        ),
        alt((): Expression => {
          const token = this.CONSUME(t.Name);
          return this.ACTION(() => nameUse(token));
        }),
        alt((): Expression => {
          this.CONSUME(t.OpenRound);
          const inside = this.SUBRULE(this.expression);
          this.CONSUME(t.CloseRound);
          bracketed = true;
          return inside;
        }),
        alt((): Expression => this.SUBRULE(this.text)),
        alt((): Expression => this.SUBRULE(this.list)),
        alt((): Expression => {
          this.CONSUME(t.Dot);
          const field = this.SUBRULE(this.fieldName);
          return this.ACTION(() => ({ kind: "column", field, range: this.rangeFrom(start) }));
        }),
        alt((): Expression => this.SUBRULE(this.conditional)),
        alt((): Expression => this.SUBRULE(this.match)),
        alt((): Expression => this.SUBRULE(this.table)),
        alt((): Expression => this.SUBRULE(this.constant)),
      ],
      IGNORE_AMBIGUITIES: true,
    });
    return this.ACTION(() => ({ node, bracketed }));
  });

  protected readonly arguments = this.RULE("arguments", (): readonly Argument[] => {
    const list: Argument[] = [];
    this.CONSUME(t.OpenRound);
    this.MANY_SEP(separated(t.Comma, () => list.push(this.SUBRULE(this.argument))));
    this.CONSUME(t.CloseRound);
    return list;
  });

  private readonly argument = this.RULE("argument", (): Argument => {
    const start = this.here();
    const name = this.OPTION(
      gatedOption(
        () => this.LA(2).tokenType === t.Assign,
        () => {
          const token = this.CONSUME(t.Name);
          this.CONSUME(t.Assign);
          return this.ACTION(() => identifier(token));
        },
      ),
    );
    const value = this.SUBRULE(this.expression);
    const unit = this.OPTION1(() => this.SUBRULE(this.shownUnit));
    return this.ACTION(() => ({
      ...(name === undefined ? {} : { name }),
      value,
      ...(unit === undefined ? {} : { unit }),
      range: this.rangeFrom(start),
    }));
  });

  /** `{ D = 8 mm, L = 9 mm }`; columns belong to the field before them on their line. */
  protected readonly fieldValues = this.RULE("fieldValues", (): readonly FieldValue[] => {
    const fields: FieldValue[] = [];
    this.CONSUME(t.OpenBrace);
    this.MANY(() => this.CONSUME(t.LineEnd));
    this.OPTION(() => fields.push(this.SUBRULE(this.fieldValue)));
    this.MANY1(() => {
      this.OR([
        alt(() => {
          this.CONSUME(t.Comma);
          this.OPTION1(() => {
            const columns = this.SUBRULE(this.columns);
            this.ACTION(() => attach(fields, columns));
          });
        }),
        alt(() => this.CONSUME1(t.LineEnd)),
      ]);
      this.OPTION2(() => fields.push(this.SUBRULE1(this.fieldValue)));
    });
    this.CONSUME(t.CloseBrace);
    return fields;
  });

  private readonly fieldValue = this.RULE("fieldValue", (): FieldValue => {
    const token = this.CONSUME(t.Word);
    this.CONSUME(t.Assign);
    const value = this.SUBRULE(this.value);
    const unit = this.OPTION(() => this.SUBRULE(this.shownUnit));
    const range = this.ACTION(() => this.rangeFrom(token.startOffset));
    const columns = this.OPTION1(() => this.SUBRULE(this.columns));
    return this.ACTION(() => ({
      name: identifier(token),
      value,
      ...(unit === undefined ? {} : { unit }),
      ...(columns === undefined ? {} : { columns }),
      range,
    }));
  });

  private readonly list = this.RULE("list", (): Expression => {
    const start = this.here();
    const items: Expression[] = [];
    this.CONSUME(t.OpenSquare);
    let comprehension: Expression | undefined;
    this.OPTION(() => {
      const first = this.SUBRULE(this.value);
      items.push(first);
      this.OR([
        alt(() => {
          this.CONSUME(t.For);
          const variable = this.CONSUME(t.Name);
          this.CONSUME(t.In);
          const source = this.SUBRULE(this.operators);
          const condition = this.OPTION1(() => {
            this.CONSUME(t.Where);
            return this.SUBRULE1(this.operators);
          });
          comprehension = this.ACTION((): Expression => {
            if (first.kind === "scatter") this.fault(faults.scatterMisplaced(first.range, {}));
            return {
              kind: "comprehension",
              element: first,
              variable: identifier(variable),
              source,
              ...(condition === undefined ? {} : { condition }),
              range: { from: start, to: endOf(this.LA(1)) },
            };
          });
        }),
        alt(() =>
          this.MANY(() => {
            this.CONSUME(t.Comma);
            items.push(this.SUBRULE1(this.value));
          }),
        ),
      ]);
    });
    this.CONSUME(t.CloseSquare);
    return this.ACTION((): Expression => comprehension ?? { kind: "list", items, range: this.rangeFrom(start) });
  });
}

function isSignedLiteral(node: Expression): boolean {
  return node.kind === "number" || (node.kind === "unary" && node.operator !== "not" && node.of.kind === "number");
}

export function attach(items: { columns?: Columns }[], columns: Columns | undefined): void {
  const item = items.at(-1);
  if (item !== undefined && columns !== undefined) items[items.length - 1] = { ...item, columns };
}

/** `+0.2/-0 mm`: both numbers take the unit at the end. */
function limits(token: IToken, unit: UnitText | undefined): Scatter["spread"] {
  const slash = token.image.search(/\/[-−]/);
  const literal = (from: number, to: number): NumberLiteral => ({
    kind: "number",
    digits: plainDigits((/^[\d_.eE+−-]+/.exec(token.image.slice(from, to)) as RegExpExecArray)[0]),
    ...(unit === undefined ? {} : { unit }),
    absolute: false,
    range: { from: token.startOffset + from, to: token.startOffset + to },
  });
  return { kind: "unequal", plus: literal(1, slash), minus: literal(slash + 2, token.image.length) };
}
