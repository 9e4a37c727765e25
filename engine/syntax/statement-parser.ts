// The grammar of statements. One instance serves every parse: it is reset by its input.

import type { IToken } from "chevrotain";
import type { Range } from "../base/index.ts";
import { type Diagnostic, faults } from "../diagnostics/index.ts";
import { attach, ExpressionParser } from "./expression-parser.ts";
import { alt, gated, separated } from "./grammar-options.ts";
import * as t from "./token-types.ts";
import type {
  Check,
  Columns,
  Definition,
  Example,
  Expression,
  FamilyDeclaration,
  FieldDeclaration,
  Formula,
  Identifier,
  Member,
  NameUse,
  Parameter,
  RecordDeclaration,
  Step,
  TypeExpression,
  UnitText,
  Use,
} from "./tree.ts";
import { identifier } from "./type-parser.ts";

/** The head of a formula or of a native. */
export interface Head {
  readonly name: Identifier;
  readonly parameters: readonly Parameter[];
  readonly type?: TypeExpression;
}

/** A name path of a live value, with the unit it is shown in. */
export interface Live {
  readonly path: NameUse | Member;
  readonly unit?: UnitText;
}

interface End {
  readonly working: Range;
  readonly range: Range;
  readonly columns?: Columns;
}

class StatementParser extends ExpressionParser {
  constructor() {
    super();
    this.performSelfAnalysis();
  }

  /** Puts a text in; the rule called next parses it. */
  begin(source: string, tokens: readonly IToken[]): void {
    this.source = source;
    this.found = [];
    this.input = tokens as IToken[];
  }

  faultsFound(): readonly Diagnostic[] {
    return this.found;
  }

  /** Columns and line ends behind the working of a statement. */
  private readonly end = this.RULE("end", (): End => {
    const working = this.ACTION(() => this.rangeFrom(this.startOfStatement()));
    const columns = this.OPTION(() => this.SUBRULE(this.columns));
    const range = this.ACTION(() => this.rangeFrom(working.from));
    this.MANY(() => this.CONSUME(t.NoteEnd));
    return this.ACTION(() => ({ working, range, ...(columns === undefined ? {} : { columns }) }));
  });

  private startOfStatement(): number {
    return this.input[0]?.startOffset ?? 0;
  }

  readonly definition = this.RULE("definition", (): Definition => {
    const name = this.CONSUME(t.Name);
    const type = this.OPTION(() => this.SUBRULE(this.ofType));
    this.CONSUME(t.Assign);
    const value = this.SUBRULE(this.value);
    const unit = this.OPTION1(() => this.SUBRULE(this.shownUnit));
    const within = this.OPTION2(() => {
      const word = this.CONSUME(t.Within);
      const bounds = this.SUBRULE(this.operators);
      return this.ACTION(() => ({ range: this.rangeFrom(word.startOffset), ...this.twoBounds(bounds, "within") }));
    });
    const end = this.SUBRULE(this.end);
    return this.ACTION(() => ({
      kind: "definition",
      name: identifier(name),
      ...(type === undefined ? {} : { type }),
      value,
      ...(unit === undefined ? {} : { unit }),
      ...(within === undefined ? {} : { within }),
      ...end,
    }));
  });

  private readonly ofType = this.RULE("ofType", (): TypeExpression => {
    this.CONSUME(t.Colon);
    return this.SUBRULE(this.type);
  });

  readonly check = this.RULE("check", (): Check => {
    this.CONSUME(t.CheckWord);
    const condition = this.SUBRULE(this.expression);
    const factor = this.OPTION(() => {
      this.CONSUME(t.Factor);
      return this.SUBRULE1(this.expression);
    });
    const end = this.SUBRULE(this.end);
    return this.ACTION(() => ({ kind: "check", condition, ...(factor === undefined ? {} : { factor }), ...end }));
  });

  readonly formulaHead = this.RULE("formulaHead", (): Head => {
    const name = this.CONSUME(t.Name);
    const parameters: Parameter[] = [];
    this.CONSUME(t.OpenRound);
    this.MANY_SEP(separated(t.Comma, () => parameters.push(this.SUBRULE(this.parameter))));
    this.CONSUME(t.CloseRound);
    const type = this.OPTION(() => this.SUBRULE(this.ofType));
    return this.ACTION(() => ({ name: identifier(name), parameters, ...(type === undefined ? {} : { type }) }));
  });

  private readonly parameter = this.RULE("parameter", (): Parameter => {
    const name = this.CONSUME(t.Name);
    const type = this.OPTION(() => this.SUBRULE(this.ofType));
    const value = this.OPTION1(() => {
      this.CONSUME(t.Assign);
      return this.SUBRULE(this.expression);
    });
    return this.ACTION(() => ({
      name: identifier(name),
      ...(type === undefined ? {} : { type }),
      ...(value === undefined ? {} : { default: value }),
      range: this.rangeFrom(name.startOffset),
    }));
  });

  readonly formula = this.RULE("formula", (): Formula => {
    this.CONSUME(t.Formula);
    const head = this.SUBRULE(this.formulaHead);
    this.CONSUME(t.Assign);
    let braced = false;
    const steps = this.OR([
      alt((): readonly Step[] => {
        braced = true;
        return this.SUBRULE(this.steps);
      }),
      alt((): readonly Step[] => {
        const start = this.here();
        const value = this.SUBRULE(this.expression);
        const unit = this.OPTION(() => this.SUBRULE(this.shownUnit));
        return this.ACTION(() => [{ kind: "result", value, ...(unit === undefined ? {} : { unit }), range: this.rangeFrom(start) }]);
      }),
    ]);
    const end = this.SUBRULE(this.end);
    return this.ACTION(() => ({ kind: "formula", ...head, steps, braced, ...end }));
  });

  private readonly steps = this.RULE("steps", (): readonly Step[] => {
    const steps: Step[] = [];
    this.CONSUME(t.OpenBrace);
    this.MANY(() => this.CONSUME(t.LineEnd));
    this.OPTION(() => steps.push(this.SUBRULE(this.step)));
    this.MANY1(() => {
      this.OR([
        alt(() => {
          this.CONSUME(t.Comma);
          this.OPTION1(() => {
            const columns = this.SUBRULE(this.columns);
            this.ACTION(() => attach(steps, columns));
          });
        }),
        alt(() => this.CONSUME1(t.LineEnd)),
      ]);
      this.OPTION2(() => steps.push(this.SUBRULE1(this.step)));
    });
    this.CONSUME(t.CloseBrace);
    return steps;
  });

  /** `require` and `valid` are plain names where `=` or `:` follows. */
  private startsCondition(): boolean {
    const after = this.LA(2).tokenType;
    return after !== t.Assign && after !== t.Colon;
  }

  private readonly step = this.RULE("step", (): Step => {
    const start = this.here();
    const bare = this.OR({
      DEF: [
        gated(
          () => this.startsCondition(),
          (): Step => {
            const word = this.OR1([alt(() => this.CONSUME(t.Require)), alt(() => this.CONSUME(t.Valid))]);
            const value = this.SUBRULE(this.expression);
            return this.ACTION(() => ({ kind: word.tokenType === t.Require ? "require" : "valid", value, range: this.rangeFrom(start) }));
          },
        ),
        alt((): Step => {
          const name = this.CONSUME(t.Name);
          const type = this.OPTION(() => this.SUBRULE(this.ofType));
          this.CONSUME(t.Assign);
          const value = this.SUBRULE1(this.expression);
          const unit = this.OPTION1(() => this.SUBRULE(this.shownUnit));
          return this.ACTION(() => {
            const result = name.tokenType === t.Result;
            return {
              kind: result ? "result" : "step",
              ...(result ? {} : { name: identifier(name) }),
              ...(type === undefined ? {} : { type }),
              value,
              ...(unit === undefined ? {} : { unit }),
              range: this.rangeFrom(start),
            };
          });
        }),
      ],
      IGNORE_AMBIGUITIES: true,
    });
    const columns = this.OPTION2(() => this.SUBRULE(this.columns));
    return this.ACTION(() => (columns === undefined ? bare : { ...bare, columns }));
  });

  readonly recordDeclaration = this.RULE("recordDeclaration", (): RecordDeclaration => {
    this.CONSUME(t.RecordWord);
    const name = this.CONSUME(t.Name);
    const fields: FieldDeclaration[] = [];
    this.CONSUME(t.OpenBrace);
    this.MANY(() => this.CONSUME(t.LineEnd));
    this.OPTION(() => fields.push(this.SUBRULE(this.field)));
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
      this.OPTION2(() => fields.push(this.SUBRULE1(this.field)));
    });
    this.CONSUME(t.CloseBrace);
    const end = this.SUBRULE(this.end);
    return this.ACTION(() => ({ kind: "recordDeclaration", name: identifier(name), fields, ...end }));
  });

  private readonly field = this.RULE("field", (): FieldDeclaration => {
    const name = this.CONSUME(t.Word);
    const type = this.OPTION(() => this.SUBRULE(this.ofType));
    const value = this.OPTION1(() => {
      this.CONSUME(t.Assign);
      return this.SUBRULE(this.value);
    });
    const range = this.ACTION(() => this.rangeFrom(name.startOffset));
    const columns = this.OPTION2(() => this.SUBRULE(this.columns));
    return this.ACTION(() => ({
      name: identifier(name),
      ...(type === undefined ? {} : { type }),
      ...(value === undefined ? {} : { default: value }),
      ...(columns === undefined ? {} : { columns }),
      range,
    }));
  });

  readonly family = this.RULE("family", (): FamilyDeclaration => {
    this.CONSUME(t.Family);
    const name = this.CONSUME(t.Name);
    this.CONSUME(t.Assign);
    const members: (NameUse | Member)[] = [];
    this.AT_LEAST_ONE_SEP(separated(t.Or, () => members.push(this.SUBRULE(this.path))));
    const end = this.SUBRULE(this.end);
    return this.ACTION(() => ({ kind: "family", name: identifier(name), members, ...end }));
  });

  readonly example = this.RULE("example", (): Example => {
    this.CONSUME(t.ExampleWord);
    const claim = this.SUBRULE(this.operators);
    const tolerance = this.OPTION(() => {
      this.CONSUME(t.PlusMinus);
      return this.SUBRULE1(this.operators);
    });
    const end = this.SUBRULE(this.end);
    return this.ACTION(() => {
      const sides = twoSides(claim);
      if (sides === undefined) this.found.push(faults.exampleForm(claim.range, {}));
      const actual = sides?.actual ?? claim;
      const expected = sides?.expected ?? hole(claim.range.to);
      return { kind: "example", actual, expected, ...(tolerance === undefined ? {} : { tolerance }), ...end };
    });
  });

  readonly use = this.RULE("use", (): Use => {
    this.CONSUME(t.Use);
    const file = this.SUBRULE(this.text);
    this.CONSUME(t.As);
    const prefix = this.CONSUME(t.Name);
    const end = this.SUBRULE(this.end);
    return this.ACTION(() => ({ kind: "use", file, prefix: identifier(prefix), ...end }));
  });

  /** One expression and nothing else. */
  readonly alone = this.RULE("alone", (): { readonly expression: Expression; readonly unit?: UnitText } => {
    const expression = this.SUBRULE(this.value);
    const unit = this.OPTION(() => this.SUBRULE(this.shownUnit));
    return this.ACTION(() => ({ expression, ...(unit === undefined ? {} : { unit }) }));
  });

  readonly live = this.RULE("live", (): Live => {
    const path = this.SUBRULE(this.path);
    const unit = this.OPTION(() => this.SUBRULE(this.shownUnit));
    return this.ACTION(() => ({ path, ...(unit === undefined ? {} : { unit }) }));
  });
}

const hole = (at: number): Expression => ({ kind: "hole", range: { from: at, to: at } });

function twoSides(claim: Expression): { readonly actual: Expression; readonly expected: Expression } | undefined {
  if (claim.kind !== "compare" || claim.operators.length !== 1 || claim.operators[0] !== "==") return undefined;
  return { actual: claim.operands[0] as Expression, expected: claim.operands[1] as Expression };
}

export const parser = new StatementParser();
