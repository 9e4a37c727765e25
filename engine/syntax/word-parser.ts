// The grammar of expressions that begin with a word: if, match, table, group, accumulate, study, solve.

import { EOF, type TokenType } from "chevrotain";
import { faults } from "../diagnostics/index.ts";
import { alt, gated, separated } from "./grammar-options.ts";
import * as t from "./token-types.ts";
import type { Expression, FieldValue, Identifier, MatchArm, RangeLiteral, StudyAxis, TableHead } from "./tree.ts";
import { identifier, TypeParser } from "./type-parser.ts";

const { endOf } = t;

export abstract class WordParser extends TypeParser {
  abstract readonly expression: () => Expression;
  /** An expression without `with` and `where`, which then belong to what is round it. */
  protected abstract readonly operators: () => Expression;
  protected abstract readonly fieldValues: () => readonly FieldValue[];

  /** Whether `over NAME in` or `by .column` comes before what is open here closes or its item ends. */
  private comesLater(word: TokenType): boolean {
    let depth = 0;
    for (let i = 2; ; i += 1) {
      const type = this.LA(i).tokenType;
      if (depth === 0 && type === word && i > 2) {
        const next = this.LA(i + 1);
        if (word === t.By ? next.tokenType === t.Dot : t.isA(next, t.Name) && this.LA(i + 2).tokenType === t.In) return true;
      }
      if (type === t.OpenRound || type === t.OpenSquare || type === t.OpenBrace || type === t.OpenTable) depth += 1;
      else if (type === t.CloseRound || type === t.CloseSquare || type === t.CloseBrace) depth -= 1;
      if (depth < 0 || type === EOF) return false;
      if (depth === 0 && (type === t.Bar || type === t.ItemEnd || type === t.Assign)) return false;
    }
  }

  protected startsStudy(): boolean {
    return this.comesLater(t.Over);
  }
  protected startsGroup(): boolean {
    return this.comesLater(t.By);
  }
  protected startsSolve(): boolean {
    const after = this.LA(3).tokenType;
    return t.isA(this.LA(2), t.Name) && (after === t.In || after === t.Colon);
  }
  protected startsAccumulate(): boolean {
    return t.isA(this.LA(2), t.Name) && this.LA(3).tokenType === t.Assign;
  }
  protected readonly conditional = this.RULE("conditional", (): Expression => {
    const word = this.CONSUME(t.If);
    const condition = this.SUBRULE(this.expression);
    this.CONSUME(t.Then);
    const then = this.SUBRULE1(this.expression);
    this.CONSUME(t.Else);
    const otherwise = this.SUBRULE2(this.expression);
    return this.ACTION(() => ({ kind: "if", condition, then, otherwise, range: this.rangeFrom(word.startOffset) }));
  });

  protected readonly match = this.RULE("match", (): Expression => {
    const word = this.CONSUME(t.Match);
    this.CONSUME(t.OpenRound);
    const of = this.SUBRULE(this.expression);
    this.CONSUME(t.CloseRound);
    this.CONSUME(t.OpenBrace);
    const arms: MatchArm[] = [];
    this.OPTION(() => arms.push(this.SUBRULE(this.arm)));
    this.MANY(() => {
      this.OR([alt(() => this.CONSUME(t.Comma)), alt(() => this.CONSUME(t.LineEnd))]);
      this.OPTION1(() => arms.push(this.SUBRULE1(this.arm)));
    });
    this.CONSUME(t.CloseBrace);
    return this.ACTION(() => ({ kind: "match", of, arms, range: this.rangeFrom(word.startOffset) }));
  });

  private readonly arm = this.RULE("arm", (): MatchArm => {
    const start = this.here();
    const member = this.OR({
      DEF: [
        alt((): MatchArm["member"] => {
          this.CONSUME(t.None);
          return { kind: "none" };
        }),
        gated(
          () => this.LA(2).tokenType !== t.Colon && this.LA(2).tokenType !== t.Dot,
          (): MatchArm["member"] => {
            this.CONSUME(t.Some);
            return { kind: "some" };
          },
        ),
        alt((): MatchArm["member"] => {
          const type = this.SUBRULE(this.path);
          return { kind: "record", type };
        }),
      ],
      IGNORE_AMBIGUITIES: true,
    });
    const variable = this.OPTION(() => this.CONSUME(t.Name));
    this.CONSUME(t.Colon);
    const body = this.SUBRULE(this.expression);
    return this.ACTION(() => ({
      member,
      ...(variable === undefined ? {} : { variable: identifier(variable) }),
      body,
      range: this.rangeFrom(start),
    }));
  });

  protected readonly table = this.RULE("table", (): Expression => {
    const word = this.CONSUME(t.TableWord);
    this.CONSUME(t.OpenTable);
    const heads: TableHead[] = [];
    const rows: Expression[][] = [];
    this.AT_LEAST_ONE_SEP(separated(t.CellBar, () => heads.push(this.SUBRULE(this.head))));
    this.MANY(() => {
      const end = this.CONSUME(t.LineEnd);
      const row: Expression[] = [];
      const at = this.ACTION(() => endOf(end));
      let bars = 0;
      const first = this.OPTION(() => this.SUBRULE(this.cell));
      this.ACTION(() => row.push(first ?? emptyCell(at)));
      this.MANY1(() => {
        const bar = this.CONSUME(t.CellBar);
        const cell = this.OPTION1(() => this.SUBRULE1(this.cell));
        this.ACTION(() => row.push(cell ?? emptyCell(endOf(bar))));
        bars += 1;
      });
      this.ACTION(() => {
        if (first === undefined && bars === 0) return;
        rows.push(row);
        if (row.length === heads.length) return;
        const slots = { cells: String(row.length), heads: String(heads.length) };
        this.fault(faults.rowCells({ from: (row[0] as Expression).range.from, to: endOf(this.LA(0)) }, slots));
      });
    });
    this.CONSUME(t.CloseBrace);
    return this.ACTION(() => ({ kind: "table", heads, rows, range: this.rangeFrom(word.startOffset) }));
  });

  private readonly cell = this.RULE(
    "cell",
    (): Expression =>
      this.OR([
        alt((): Expression => {
          const minus = this.OPTION(() => this.OR1([alt(() => this.CONSUME(t.Minus)), alt(() => this.CONSUME(t.Plus))]));
          const number = this.SUBRULE(this.number);
          return this.ACTION((): Expression => {
            if (minus === undefined) return number;
            const operator = minus.tokenType === t.Plus ? "+" : "-";
            return { kind: "unary", operator, of: number, range: this.rangeFrom(minus.startOffset) };
          });
        }),
        alt((): Expression => this.SUBRULE(this.text)),
        alt((): Expression => this.SUBRULE(this.constant)),
      ]),
  );

  protected readonly group = this.RULE("group", (): Expression => {
    const word = this.CONSUME(t.Group);
    const of = this.SUBRULE(this.expression);
    this.CONSUME(t.By);
    const by: Identifier[] = [];
    this.AT_LEAST_ONE_SEP(
      separated(t.Comma, () => {
        this.CONSUME(t.Dot);
        by.push(this.SUBRULE(this.fieldName));
      }),
    );
    const fields = this.SUBRULE(this.fieldValues);
    return this.ACTION(() => ({ kind: "group", of, by, fields, range: this.rangeFrom(word.startOffset) }));
  });

  protected readonly accumulate = this.RULE("accumulate", (): Expression => {
    const word = this.CONSUME(t.Accumulate);
    const state = this.CONSUME(t.Name);
    this.CONSUME(t.Assign);
    const start = this.SUBRULE(this.expression);
    this.CONSUME(t.For);
    const variable = this.CONSUME1(t.Name);
    this.CONSUME(t.In);
    const source = this.SUBRULE(this.operators);
    this.CONSUME(t.Colon);
    const body = this.SUBRULE1(this.expression);
    return this.ACTION(() => ({
      kind: "accumulate",
      state: identifier(state),
      start,
      variable: identifier(variable),
      source,
      body,
      range: this.rangeFrom(word.startOffset),
    }));
  });

  protected readonly study = this.RULE("study", (): Expression => {
    const word = this.CONSUME(t.Study);
    const subjects: Expression[] = [];
    const axes: StudyAxis[] = [];
    this.AT_LEAST_ONE_SEP(separated(t.Comma, () => subjects.push(this.SUBRULE(this.expression))));
    this.CONSUME(t.Over);
    this.AT_LEAST_ONE_SEP1(
      separated(t.Comma, () => {
        const variable = this.CONSUME(t.Name);
        this.CONSUME(t.In);
        const values = this.SUBRULE(this.operators);
        axes.push(this.ACTION(() => ({ variable: identifier(variable), values, range: this.rangeFrom(variable.startOffset) })));
      }),
    );
    return this.ACTION(() => ({ kind: "study", subjects, axes, range: this.rangeFrom(word.startOffset) }));
  });

  protected readonly solve = this.RULE("solve", (): Expression => {
    const word = this.CONSUME(t.Solve);
    const variable = this.CONSUME(t.Name);
    const type = this.OPTION(() => {
      this.CONSUME(t.Colon);
      return this.SUBRULE(this.type);
    });
    this.CONSUME(t.In);
    const bounds = this.SUBRULE(this.operators);
    this.CONSUME(t.Where);
    const condition = this.SUBRULE1(this.operators);
    return this.ACTION(() => ({
      kind: "solve",
      variable: identifier(variable),
      ...(type === undefined ? {} : { type }),
      ...this.twoBounds(bounds, "solve"),
      condition,
      range: this.rangeFrom(word.startOffset),
    }));
  });

  /** `lo .. hi` of `within` and `solve`: a range and nothing else. */
  protected twoBounds(bounds: Expression, word: string): Pick<RangeLiteral, "from" | "to"> {
    if (bounds.kind === "range" && bounds.step === undefined) return { from: bounds.from, to: bounds.to };
    this.fault(faults.twoBounds(bounds.range, { word }));
    const hole: Expression = { kind: "hole", range: { from: bounds.range.to, to: bounds.range.to } };
    return { from: bounds, to: hole };
  }
}

const emptyCell = (at: number): Expression => ({ kind: "none", range: { from: at, to: at } });
