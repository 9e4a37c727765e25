// Made by `npm run catalogue` from catalogue/*.md. Do not edit.

import type { Range } from "../base/index.ts";
import { type Diagnostic, diagnostic, type Extras } from "./diagnostic.ts";

export const faults = {
  /** {name} is not defined here. */
  unknownName: (range: Range, slots: { readonly name: string; readonly nearest?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("unknown-name", "fault", "{name} is not defined here.", "Did you mean {nearest}?", range, slots, extras),
  /** {name} is {what}, not a value. */
  notAValue: (range: Range, slots: { readonly name: string; readonly what: string; readonly advice?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("not-a-value", "fault", "{name} is {what}, not a value.", "{advice}", range, slots, extras),
  /** {name} is {what} and cannot be called. */
  notAFormula: (range: Range, slots: { readonly name: string; readonly what: string; readonly nearest?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("not-a-formula", "fault", "{name} is {what} and cannot be called.", "Did you mean {nearest}?", range, slots, extras),
  /** {name} is {what}, not a record. */
  notARecord: (range: Range, slots: { readonly name: string; readonly what: string; readonly nearest?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("not-a-record", "fault", "{name} is {what}, not a record.", "Did you mean {nearest}?", range, slots, extras),
  /** {left} and {right} {verb}. */
  sidesDiffer: (range: Range, slots: { readonly left: string; readonly right: string; readonly verb: string; readonly advice?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("sides-differ", "fault", "{left} and {right} {verb}.", "{advice}", range, slots, extras),
  /** {left} and {right} are told apart and {verb}. */
  kindsDiffer: (range: Range, slots: { readonly left: string; readonly right: string; readonly verb: string; readonly advice?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("kinds-differ", "fault", "{left} and {right} are told apart and {verb}.", "{advice}", range, slots, extras),
  /** {place} wants {wanted}, but this is {given}. */
  wrongType: (range: Range, slots: { readonly place: string; readonly wanted: string; readonly given: string; readonly advice?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("wrong-type", "fault", "{place} wants {wanted}, but this is {given}.", "{advice}", range, slots, extras),
  /** {parameter} of {formula} wants {wanted}, but this is {given}. */
  wrongArgument: (range: Range, slots: { readonly parameter: string; readonly formula: string; readonly wanted: string; readonly given: string; readonly advice?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("wrong-argument", "fault", "{parameter} of {formula} wants {wanted}, but this is {given}.", "{advice}", range, slots, extras),
  /** {formula} also needs {missing}. */
  missingArgument: (range: Range, slots: { readonly formula: string; readonly missing: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("missing-argument", "fault", "{formula} also needs {missing}.", undefined, range, slots, extras),
  /** {formula} has no parameter {name}. */
  unknownArgument: (range: Range, slots: { readonly formula: string; readonly name: string; readonly nearest?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("unknown-argument", "fault", "{formula} has no parameter {name}.", "Did you mean {nearest}?", range, slots, extras),
  /** {formula} takes {most}, here are {count}. */
  tooManyArguments: (range: Range, slots: { readonly formula: string; readonly most: string; readonly count: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("too-many-arguments", "fault", "{formula} takes {most}, here are {count}.", undefined, range, slots, extras),
  /** {name} of {formula} is given twice. */
  argumentTwice: (range: Range, slots: { readonly name: string; readonly formula: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("argument-twice", "fault", "{name} of {formula} is given twice.", undefined, range, slots, extras),
  /** {record} also needs {missing}. */
  missingField: (range: Range, slots: { readonly record: string; readonly missing: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("missing-field", "fault", "{record} also needs {missing}.", undefined, range, slots, extras),
  /** {record} has no field {name}. */
  unknownField: (range: Range, slots: { readonly record: string; readonly name: string; readonly nearest?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("unknown-field", "fault", "{record} has no field {name}.", "Did you mean {nearest}?", range, slots, extras),
  /** The field {name} stands twice. */
  fieldTwice: (range: Range, slots: { readonly name: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("field-twice", "fault", "The field {name} stands twice.", undefined, range, slots, extras),
  /** {given} has no fields, so .{name} cannot be read. */
  noFields: (range: Range, slots: { readonly given: string; readonly name: string; readonly advice?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("no-fields", "fault", "{given} has no fields, so .{name} cannot be read.", "{advice}", range, slots, extras),
  /** The table has no column {name}. */
  noColumn: (range: Range, slots: { readonly name: string; readonly nearest?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("no-column", "fault", "The table has no column {name}.", "Did you mean {nearest}?", range, slots, extras),
  /** .{name} is a column, and there is no table here. */
  columnOutside: (range: Range, slots: { readonly name: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("column-outside", "fault", ".{name} is a column, and there is no table here.", "Write t where .{name} > ... or group t by .{name}, or drop the point.", range, slots, extras),
  /** Two temperature points do not {verb}. */
  pointsDoNotAdd: (range: Range, slots: { readonly verb: string; readonly advice?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("points-do-not-add", "fault", "Two temperature points do not {verb}.", "{advice}", range, slots, extras),
  /** A temperature point cannot be {verb}. */
  pointArithmetic: (range: Range, slots: { readonly verb: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("point-arithmetic", "fault", "A temperature point cannot be {verb}.", "Write absolute(T) for laws of the absolute temperature, or take a difference of two points.", range, slots, extras),
  /** {given} is a temperature {is}, and {place} wants a temperature {wants}. */
  pointAndDifference: (range: Range, slots: { readonly given: string; readonly is: string; readonly place: string; readonly wants: string; readonly advice?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("point-and-difference", "fault", "{given} is a temperature {is}, and {place} wants a temperature {wants}.", "{advice}", range, slots, extras),
  /** {base} has a dimension, so its exponent must be a number written out. */
  exponentNotLiteral: (range: Range, slots: { readonly base: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("exponent-not-literal", "fault", "{base} has a dimension, so its exponent must be a number written out.", "Write for example x^2 or x^(1/2).", range, slots, extras),
  /** This gives {base} an exponent that no quantity has. */
  exponentTooLarge: (range: Range, slots: { readonly base: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("exponent-too-large", "fault", "This gives {base} an exponent that no quantity has.", undefined, range, slots, extras),
  /** An exponent is a plain number, but this is {given}. */
  exponentDimension: (range: Range, slots: { readonly given: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("exponent-dimension", "fault", "An exponent is a plain number, but this is {given}.", undefined, range, slots, extras),
  /** A formula does not see {name}, which is an input or depends on one. */
  notClosed: (range: Range, slots: { readonly name: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("not-closed", "fault", "A formula does not see {name}, which is an input or depends on one.", "Give it as a parameter.", range, slots, extras),
  /** {given} cannot be shown in {unit}, which is for {wanted}. */
  unitDoesNotFit: (range: Range, slots: { readonly given: string; readonly unit: string; readonly wanted: string; readonly advice?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("unit-does-not-fit", "fault", "{given} cannot be shown in {unit}, which is for {wanted}.", "{advice}", range, slots, extras),
  /** {name} is not a type. */
  unknownType: (range: Range, slots: { readonly name: string; readonly nearest?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("unknown-type", "fault", "{name} is not a type.", "Did you mean {nearest}?", range, slots, extras),
  /** {given} is none of the choices {choices}. */
  notAChoice: (range: Range, slots: { readonly given: string; readonly choices: string; readonly nearest?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("not-a-choice", "fault", "{given} is none of the choices {choices}.", "Did you mean {nearest}?", range, slots, extras),
  /** This match has no arm for {missing}. */
  armMissing: (range: Range, slots: { readonly missing: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("arm-missing", "fault", "This match has no arm for {missing}.", undefined, range, slots, extras),
  /** {name} is no member of what is matched. */
  armUnknown: (range: Range, slots: { readonly name: string; readonly members?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("arm-unknown", "fault", "{name} is no member of what is matched.", "Members are {members}.", range, slots, extras),
  /** A check wants a comparison or a condition, but this is {given}. */
  checkWantsTruth: (range: Range, slots: { readonly given: string; readonly advice?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("check-wants-truth", "fault", "A check wants a comparison or a condition, but this is {given}.", "{advice}", range, slots, extras),
  /** A factor needs one demand and one capacity: {why}. */
  factorMisplaced: (range: Range, slots: { readonly why: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("factor-misplaced", "fault", "A factor needs one demand and one capacity: {why}.", undefined, range, slots, extras),
  /** Bounds go with an input, and {name} is computed. */
  withinWantsInput: (range: Range, slots: { readonly name: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("within-wants-input", "fault", "Bounds go with an input, and {name} is computed.", "To hold a computed value within bounds write a check.", range, slots, extras),
  /** {name} is {value}, outside its bounds {low} to {high}. */
  outsideWithin: (range: Range, slots: { readonly name: string; readonly value: string; readonly low: string; readonly high: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("outside-within", "fault", "{name} is {value}, outside its bounds {low} to {high}.", undefined, range, slots, extras),
  /** The lower bound {low} lies above the upper bound {high}. */
  boundsTurned: (range: Range, slots: { readonly low: string; readonly high: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("bounds-turned", "fault", "The lower bound {low} lies above the upper bound {high}.", undefined, range, slots, extras),
  /** An example does not see {name}, which is an input or depends on one. */
  exampleNotClosed: (range: Range, slots: { readonly name: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("example-not-closed", "fault", "An example does not see {name}, which is an input or depends on one.", "Put the number in.", range, slots, extras),
  /** What this empty list holds is not known. */
  emptyList: (range: Range, slots: Readonly<Record<string, never>>, extras: Extras = {}): Diagnostic =>
    diagnostic("empty-list", "fault", "What this empty list holds is not known.", "Give the definition a type, for example xs: List Force = [].", range, slots, extras),
  /** The formula {name} has no result. */
  noResult: (range: Range, slots: { readonly name: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("no-result", "fault", "The formula {name} has no result.", "End it with result = ...", range, slots, extras),
  /** {name} is already {what} of this formula. */
  stepTwice: (range: Range, slots: { readonly name: string; readonly what: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("step-twice", "fault", "{name} is already {what} of this formula.", undefined, range, slots, extras),
  /** {name} says it gives {wanted}, but it gives {given}. */
  declaredResultDiffers: (range: Range, slots: { readonly name: string; readonly wanted: string; readonly given: string; readonly advice?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("declared-result-differs", "fault", "{name} says it gives {wanted}, but it gives {given}.", "{advice}", range, slots, extras),
  /** {text} reads as a unit, and {name} is also a name of yours. */
  unitOrName: (range: Range, slots: { readonly text: string; readonly name: string; readonly product?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("unit-or-name", "fault", "{text} reads as a unit, and {name} is also a name of yours.", "Write {product} for your {name}, or give {name} another name.", range, slots, extras),
  /** {name} is a name of yours, and it also stands as a unit after a number. */
  nameOrUnit: (range: Range, slots: { readonly name: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("name-or-unit", "fault", "{name} is a name of yours, and it also stands as a unit after a number.", "Rename it, or write a spaced operator where your {name} is meant.", range, slots, extras),
  /** {name} is also a name of the library; here yours is used. */
  shadowsLibrary: (range: Range, slots: { readonly name: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("shadows-library", "notice", "{name} is also a name of the library; here yours is used.", undefined, range, slots, extras),
  /** The spread of {given} must be {wanted}. */
  scatterDoesNotFit: (range: Range, slots: { readonly given: string; readonly wanted: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("scatter-does-not-fit", "fault", "The spread of {given} must be {wanted}.", undefined, range, slots, extras),
  /** A spread stands at the end of a definition, a field or a list item. */
  scatterMisplaced: (range: Range, slots: Readonly<Record<string, never>>, extras: Extras = {}): Diagnostic =>
    diagnostic("scatter-misplaced", "fault", "A spread stands at the end of a definition, a field or a list item.", undefined, range, slots, extras),
  /** {what} is the right side of a definition of its own. */
  studyMisplaced: (range: Range, slots: { readonly what: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("study-misplaced", "fault", "{what} is the right side of a definition of its own.", undefined, range, slots, extras),
  /** {name} is not an input of this notebook, so it cannot be varied. */
  studyWantsInput: (range: Range, slots: { readonly name: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("study-wants-input", "fault", "{name} is not an input of this notebook, so it cannot be varied.", undefined, range, slots, extras),
  /** A table cell is a literal, but this is computed. */
  lookupIsTable: (range: Range, slots: Readonly<Record<string, never>>, extras: Extras = {}): Diagnostic =>
    diagnostic("lookup-is-table", "fault", "A table cell is a literal, but this is computed.", undefined, range, slots, extras),
  /** The column {column} holds {wanted}, but this cell is {given}. */
  cellDoesNotFit: (range: Range, slots: { readonly column: string; readonly wanted: string; readonly given: string; readonly advice?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("cell-does-not-fit", "fault", "The column {column} holds {wanted}, but this cell is {given}.", "{advice}", range, slots, extras),
  /** {name} is not a record, so it cannot be a member of the family {family}. */
  notAMember: (range: Range, slots: { readonly name: string; readonly family: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("not-a-member", "fault", "{name} is not a record, so it cannot be a member of the family {family}.", undefined, range, slots, extras),
  /** A range that makes a list needs a step. */
  rangeWantsStep: (range: Range, slots: { readonly text?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("range-wants-step", "fault", "A range that makes a list needs a step.", "Write {text} step ...", range, slots, extras),
  /** abs makes a temperature point of a value in K or degR, not of one in {unit}. */
  absNotTemperature: (range: Range, slots: { readonly unit: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("abs-not-temperature", "fault", "abs makes a temperature point of a value in K or degR, not of one in {unit}.", undefined, range, slots, extras),
  /** This formula does not say what {figure} shows here, so its axis has no unit. */
  axisOfNoUnit: (range: Range, slots: { readonly figure: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("axis-of-no-unit", "fault", "This formula does not say what {figure} shows here, so its axis has no unit.", "Give the parameter its quantity, for example `x: List Length`.", range, slots, extras),
  /** This fence is not closed; it runs to the end of the notebook. */
  fenceOpen: (range: Range, slots: Readonly<Record<string, never>>, extras: Extras = {}): Diagnostic =>
    diagnostic("fence-open", "notice", "This fence is not closed; it runs to the end of the notebook.", "Put a line of ``` after its last line.", range, slots, extras),
  /** A `{word}` fence begins at the start of a line; this one is indented and is left alone. */
  fenceIndented: (range: Range, slots: { readonly word: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("fence-indented", "notice", "A `{word}` fence begins at the start of a line; this one is indented and is left alone.", "Take the spaces before it away.", range, slots, extras),
  /** `{written}` is no kind of fence that is worked; `{word}` is. */
  fenceWordCase: (range: Range, slots: { readonly written: string; readonly word: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("fence-word-case", "notice", "`{written}` is no kind of fence that is worked; `{word}` is.", "Write `{word}` in small letters.", range, slots, extras),
  /** A calc fence takes no words behind `calc`; `{words}` means nothing here. */
  calcFenceWords: (range: Range, slots: { readonly words: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("calc-fence-words", "notice", "A calc fence takes no words behind `calc`; `{words}` means nothing here.", "Write a title as a heading above the fence.", range, slots, extras),
  /** This csv fence has no name, so nothing can use its data. */
  csvNoName: (range: Range, slots: Readonly<Record<string, never>>, extras: Extras = {}): Diagnostic =>
    diagnostic("csv-no-name", "fault", "This csv fence has no name, so nothing can use its data.", "Write ```csv pulls | what it is | where it is from.", range, slots, extras),
  /** `{name}` cannot be the name of data: a name is letters, digits and `_`, and begins with no digit. */
  csvBadName: (range: Range, slots: { readonly name: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("csv-bad-name", "fault", "`{name}` cannot be the name of data: a name is letters, digits and `_`, and begins with no digit.", "Put a bar between the name and the note, as in ```csv pulls | axial, dry.", range, slots, extras),
  /** A csv fence has a name, a note and a reference; `{words}` is one piece too many. */
  csvFenceColumns: (range: Range, slots: { readonly words: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("csv-fence-columns", "notice", "A csv fence has a name, a note and a reference; `{words}` is one piece too many.", "Write a bar that belongs to the text as \\|.", range, slots, extras),
  /** `{mark}` is the mark of a merge that was not finished. */
  conflictMark: (range: Range, slots: { readonly mark: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("conflict-mark", "fault", "`{mark}` is the mark of a merge that was not finished.", "Keep one of the two versions and take the three marks away.", range, slots, extras),
  /** This text has more than 50 000 characters without a blank line; its live values and headings are not read. */
  proseTooLong: (range: Range, slots: Readonly<Record<string, never>>, extras: Extras = {}): Diagnostic =>
    diagnostic("prose-too-long", "notice", "This text has more than 50 000 characters without a blank line; its live values and headings are not read.", "Put blank lines between its paragraphs.", range, slots, extras),
  /** The title block is not closed: a line of --- is missing after its last line. */
  frontMatterOpen: (range: Range, slots: Readonly<Record<string, never>>, extras: Extras = {}): Diagnostic =>
    diagnostic("front-matter-open", "fault", "The title block is not closed: a line of --- is missing after its last line.", "Put a line of --- after its last line.", range, slots, extras),
  /** The title block cannot be read here. */
  frontMatterSyntax: (range: Range, slots: Readonly<Record<string, never>>, extras: Extras = {}): Diagnostic =>
    diagnostic("front-matter-syntax", "fault", "The title block cannot be read here.", "A field is `name: text`; put a text with special characters in double quotes.", range, slots, extras),
  /** This line of the title block is no field. */
  frontMatterLine: (range: Range, slots: Readonly<Record<string, never>>, extras: Extras = {}): Diagnostic =>
    diagnostic("front-matter-line", "fault", "This line of the title block is no field.", "A field is `name: text`.", range, slots, extras),
  /** A second colon on one line makes this a field inside a field. */
  frontMatterColon: (range: Range, slots: Readonly<Record<string, never>>, extras: Extras = {}): Diagnostic =>
    diagnostic("front-matter-colon", "fault", "A second colon on one line makes this a field inside a field.", "Put a text that holds a colon in double quotes.", range, slots, extras),
  /** The title block is indented with a tab. */
  frontMatterTab: (range: Range, slots: Readonly<Record<string, never>>, extras: Extras = {}): Diagnostic =>
    diagnostic("front-matter-tab", "fault", "The title block is indented with a tab.", "Use spaces.", range, slots, extras),
  /** A quote or bracket that was opened before this place is not closed. */
  frontMatterUnclosed: (range: Range, slots: Readonly<Record<string, never>>, extras: Extras = {}): Diagnostic =>
    diagnostic("front-matter-unclosed", "fault", "A quote or bracket that was opened before this place is not closed.", "Close it, or put the whole text in double quotes.", range, slots, extras),
  /** This line of the title block is not indented as the lines it belongs to. */
  frontMatterIndent: (range: Range, slots: Readonly<Record<string, never>>, extras: Extras = {}): Diagnostic =>
    diagnostic("front-matter-indent", "fault", "This line of the title block is not indented as the lines it belongs to.", "Lines of one list or group begin under each other.", range, slots, extras),
  /** A text in the title block cannot begin with {character} as it stands. */
  frontMatterCharacter: (range: Range, slots: { readonly character: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("front-matter-character", "fault", "A text in the title block cannot begin with {character} as it stands.", "Put the text in double quotes.", range, slots, extras),
  /** A title block does not refer to other places of itself with `*`. */
  frontMatterAlias: (range: Range, slots: Readonly<Record<string, never>>, extras: Extras = {}): Diagnostic =>
    diagnostic("front-matter-alias", "fault", "A title block does not refer to other places of itself with `*`.", "Write the text again, or put it in double quotes if it begins with `*`.", range, slots, extras),
  /** This field of the title block is too long or nested too deep to be read. */
  frontMatterDeep: (range: Range, slots: Readonly<Record<string, never>>, extras: Extras = {}): Diagnostic =>
    diagnostic("front-matter-deep", "fault", "This field of the title block is too long or nested too deep to be read.", "Keep lines under 4000 characters and brackets fewer than 60 deep.", range, slots, extras),
  /** `{key}` stands twice; the first one counts. */
  frontMatterTwice: (range: Range, slots: { readonly key: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("front-matter-twice", "fault", "`{key}` stands twice; the first one counts.", "Take one of the two away.", range, slots, extras),
  /** `{key}` is no field of the title block; it is kept and does nothing. */
  frontMatterUnknown: (range: Range, slots: { readonly key: string; readonly near?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("front-matter-unknown", "notice", "`{key}` is no field of the title block; it is kept and does nothing.", "Did you mean `{near}`?", range, slots, extras),
  /** `{key}` is one text, not a list or a group of fields. */
  frontMatterNotText: (range: Range, slots: { readonly key: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("front-matter-not-text", "fault", "`{key}` is one text, not a list or a group of fields.", undefined, range, slots, extras),
  /** `digits: {text}` is not a whole number from 1 to 15. */
  frontMatterDigits: (range: Range, slots: { readonly text: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("front-matter-digits", "fault", "`digits: {text}` is not a whole number from 1 to 15.", undefined, range, slots, extras),
  /** `{text}` is no status of a notebook; choose one of {known}. */
  frontMatterStatus: (range: Range, slots: { readonly text: string; readonly known: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("front-matter-status", "notice", "`{text}` is no status of a notebook; choose one of {known}.", undefined, range, slots, extras),
  /** The date `{text}` is not written year-month-day. */
  frontMatterDate: (range: Range, slots: { readonly text: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("front-matter-date", "notice", "The date `{text}` is not written year-month-day.", "Write it like 2026-02-28.", range, slots, extras),
  /** `currency: {text}` is not the code of a currency. */
  frontMatterCurrency: (range: Range, slots: { readonly text: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("front-matter-currency", "fault", "`currency: {text}` is not the code of a currency.", "A code is three capital letters, like EUR.", range, slots, extras),
  /** `units` names a quantity and its unit each, like `length: mm`. */
  frontMatterUnits: (range: Range, slots: Readonly<Record<string, never>>, extras: Extras = {}): Diagnostic =>
    diagnostic("front-matter-units", "fault", "`units` names a quantity and its unit each, like `length: mm`.", undefined, range, slots, extras),
  /** `references` is a list, each entry beginning with `-`. */
  referencesNotList: (range: Range, slots: Readonly<Record<string, never>>, extras: Extras = {}): Diagnostic =>
    diagnostic("references-not-list", "fault", "`references` is a list, each entry beginning with `-`.", undefined, range, slots, extras),
  /** This reference has no `id`, so no line can cite it. */
  referenceNoId: (range: Range, slots: Readonly<Record<string, never>>, extras: Extras = {}): Diagnostic =>
    diagnostic("reference-no-id", "fault", "This reference has no `id`, so no line can cite it.", "Give it a short one, like `id: iso965`.", range, slots, extras),
  /** Two references have the id `{key}`; the first one counts. */
  referenceTwice: (range: Range, slots: { readonly key: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("reference-twice", "fault", "Two references have the id `{key}`; the first one counts.", "Give one of them another id.", range, slots, extras),
  /** No reference has the id `{key}`. */
  referenceUnknown: (range: Range, slots: { readonly key: string; readonly near?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("reference-unknown", "notice", "No reference has the id `{key}`.", "Did you mean `@{near}`?", range, slots, extras),
  /** There is no data here, not even a line of heads. */
  csvEmpty: (range: Range, slots: Readonly<Record<string, never>>, extras: Extras = {}): Diagnostic =>
    diagnostic("csv-empty", "fault", "There is no data here, not even a line of heads.", undefined, range, slots, extras),
  /** Column {column} has no head. */
  csvNoHead: (range: Range, slots: { readonly column: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("csv-no-head", "fault", "Column {column} has no head.", "Name it in the first line.", range, slots, extras),
  /** Two columns are called `{column}`. */
  csvHeadTwice: (range: Range, slots: { readonly column: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("csv-head-twice", "fault", "Two columns are called `{column}`.", undefined, range, slots, extras),
  /** The brackets behind `{column}` are empty. */
  csvNoUnit: (range: Range, slots: { readonly column: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("csv-no-unit", "fault", "The brackets behind `{column}` are empty.", "Write the unit, `[1]` for a bare number, or no brackets for text.", range, slots, extras),
  /** Row {row} of `{column}`: `{text}` is not a number. */
  csvNotNumber: (range: Range, slots: { readonly row: string; readonly column: string; readonly text: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("csv-not-number", "fault", "Row {row} of `{column}`: `{text}` is not a number.", "Leave the cell empty where a value is missing; a head without unit makes the column text.", range, slots, extras),
  /** {count} cells of `{column}` are not numbers; the first {shown} are marked. */
  csvMoreNotNumbers: (range: Range, slots: { readonly count: string; readonly column: string; readonly shown: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("csv-more-not-numbers", "fault", "{count} cells of `{column}` are not numbers; the first {shown} are marked.", "A head without unit makes the column text.", range, slots, extras),
  /** `{column}` holds numbers, but its head names no unit, so they are text. */
  csvNumbersAsText: (range: Range, slots: { readonly column: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("csv-numbers-as-text", "notice", "`{column}` holds numbers, but its head names no unit, so they are text.", "Write the unit behind the head, like `{column} [mm]`, or `[1]` for bare numbers.", range, slots, extras),
  /** Numbers here are read with a decimal comma: `{text}` is {number}. */
  csvDecimalComma: (range: Range, slots: { readonly text: string; readonly number: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("csv-decimal-comma", "notice", "Numbers here are read with a decimal comma: `{text}` is {number}.", "Write decimal points if that is not meant.", range, slots, extras),
  /** `{text}` may be a decimal or thousands; nothing else in the data tells. */
  csvCommaUnclear: (range: Range, slots: { readonly text: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("csv-comma-unclear", "fault", "`{text}` may be a decimal or thousands; nothing else in the data tells.", "Write a decimal point, or leave the comma out.", range, slots, extras),
  /** Row {row} has {cells} cells, but there are {heads} heads. */
  csvRagged: (range: Range, slots: { readonly row: string; readonly cells: string; readonly heads: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("csv-ragged", "fault", "Row {row} has {cells} cells, but there are {heads} heads.", "Leave a missing cell empty between two separators; put a text that holds a separator in double quotes.", range, slots, extras),
  /** The double quotes of this row do not pair up. */
  csvQuotes: (range: Range, slots: Readonly<Record<string, never>>, extras: Extras = {}): Diagnostic =>
    diagnostic("csv-quotes", "fault", "The double quotes of this row do not pair up.", "Write a quote inside a quoted cell twice.", range, slots, extras),
  /** {count} {what} are more than the {limit} that one table may have. */
  csvTooLarge: (range: Range, slots: { readonly count: string; readonly what: string; readonly limit: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("csv-too-large", "fault", "{count} {what} are more than the {limit} that one table may have.", undefined, range, slots, extras),
  /** Divided by zero: {left} / {right}. */
  divideByZero: (range: Range, slots: { readonly left: string; readonly right: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("divide-by-zero", "fault", "Divided by zero: {left} / {right}.", "Say what holds when the divisor is zero, for example with if ... then ... else.", range, slots, extras),
  /** {operation} gives a number that is too large to hold. */
  tooLarge: (range: Range, slots: { readonly operation: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("too-large", "fault", "{operation} gives a number that is too large to hold.", "Look for a wrong unit or exponent in what goes in.", range, slots, extras),
  /** {function} of a negative value: {value}. */
  rootOfNegative: (range: Range, slots: { readonly function: string; readonly value: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("root-of-negative", "fault", "{function} of a negative value: {value}.", "Check the signs of what stands inside; cbrt takes negative values too.", range, slots, extras),
  /** {function} takes values above zero, here {value}. */
  logarithmOutside: (range: Range, slots: { readonly function: string; readonly value: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("logarithm-outside", "fault", "{function} takes values above zero, here {value}.", undefined, range, slots, extras),
  /** {function} takes values from -1 to 1, here {value}. */
  arcOutside: (range: Range, slots: { readonly function: string; readonly value: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("arc-outside", "fault", "{function} takes values from -1 to 1, here {value}.", "A ratio just beyond 1 is often a length divided by the wrong length.", range, slots, extras),
  /** {function} to a step of zero: {value}. */
  zeroStep: (range: Range, slots: { readonly function: string; readonly value: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("zero-step", "fault", "{function} to a step of zero: {value}.", undefined, range, slots, extras),
  /** {function} of (0, 0): a point without length has no direction. */
  noDirection: (range: Range, slots: { readonly function: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("no-direction", "fault", "{function} of (0, 0): a point without length has no direction.", undefined, range, slots, extras),
  /** A negative value to a fractional power: {base} to the power {exponent}. */
  powerOfNegative: (range: Range, slots: { readonly base: string; readonly exponent: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("power-of-negative", "fault", "A negative value to a fractional power: {base} to the power {exponent}.", "For a cube root of a negative value write cbrt(x).", range, slots, extras),
  /** Zero to a negative power: {base} to the power {exponent}. */
  powerOfZero: (range: Range, slots: { readonly base: string; readonly exponent: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("power-of-zero", "fault", "Zero to a negative power: {base} to the power {exponent}.", undefined, range, slots, extras),
  /** {function} of an empty list. */
  listEmpty: (range: Range, slots: { readonly function: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("list-empty", "fault", "{function} of an empty list.", "Look at what filters the list.", range, slots, extras),
  /** {function} of a list of {count} without a single value. */
  nothingPresent: (range: Range, slots: { readonly function: string; readonly count: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("nothing-present", "fault", "{function} of a list of {count} without a single value.", undefined, range, slots, extras),
  /** {function} needs {least} values, here there are {count}. */
  tooFew: (range: Range, slots: { readonly function: string; readonly least: string; readonly count: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("too-few", "fault", "{function} needs {least} values, here there are {count}.", undefined, range, slots, extras),
  /** Item {item} of {count} has no value. */
  emptyCell: (range: Range, slots: { readonly item: string; readonly count: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("empty-cell", "fault", "Item {item} of {count} has no value.", "Work on present(...) where leaving such items out is right.", range, slots, extras),
  /** Item {index} of a list of {count}. */
  indexOutside: (range: Range, slots: { readonly index: string; readonly count: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("index-outside", "fault", "Item {index} of a list of {count}.", "Items count from 1.", range, slots, extras),
  /** Items have whole numbers, here {index}. */
  indexNotWhole: (range: Range, slots: { readonly index: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("index-not-whole", "fault", "Items have whole numbers, here {index}.", undefined, range, slots, extras),
  /** Lists of {first} and {second} items do not go together. */
  lengthsDiffer: (range: Range, slots: { readonly first: string; readonly second: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("lengths-differ", "fault", "Lists of {first} and {second} items do not go together.", undefined, range, slots, extras),
  /** From {low} to {high} there is no whole number of steps of {step}. */
  stepDoesNotFit: (range: Range, slots: { readonly low: string; readonly high: string; readonly step: string; readonly nearest?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("step-does-not-fit", "fault", "From {low} to {high} there is no whole number of steps of {step}.", "The nearest step that fits is {nearest}.", range, slots, extras),
  /** A range cannot go in steps of {step}. */
  stepOfZero: (range: Range, slots: { readonly step: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("step-of-zero", "fault", "A range cannot go in steps of {step}.", undefined, range, slots, extras),
  /** Steps of {step} lead away from {high} when they begin at {low}. */
  stepWrongWay: (range: Range, slots: { readonly step: string; readonly high: string; readonly low: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("step-wrong-way", "fault", "Steps of {step} lead away from {high} when they begin at {low}.", "Turn the sign of the step or swap the bounds.", range, slots, extras),
  /** {function} takes a whole number from {low} to {high}, here {value}. */
  countOutside: (range: Range, slots: { readonly function: string; readonly low: string; readonly high: string; readonly value: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("count-outside", "fault", "{function} takes a whole number from {low} to {high}, here {value}.", undefined, range, slots, extras),
  /** {value} lies outside the table, which runs from {low} to {high}. */
  outsideTable: (range: Range, slots: { readonly value: string; readonly low: string; readonly high: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("outside-table", "fault", "{value} lies outside the table, which runs from {low} to {high}.", undefined, range, slots, extras),
  /** The table must ascend: item {item}, {value}, stands after {before}. */
  tableUnsorted: (range: Range, slots: { readonly item: string; readonly value: string; readonly before: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("table-unsorted", "fault", "The table must ascend: item {item}, {value}, stands after {before}.", "Sort the rows, and look whether one is mistyped.", range, slots, extras),
  /** {key} is not in the table. */
  keyMissing: (range: Range, slots: { readonly key: string; readonly nearby?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("key-missing", "fault", "{key} is not in the table.", "Near it the table has {nearby}.", range, slots, extras),
  /** {function}: {value} is not in the list. */
  notInList: (range: Range, slots: { readonly function: string; readonly value: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("not-in-list", "fault", "{function}: {value} is not in the list.", undefined, range, slots, extras),
  /** One item is wanted, here there are {count}. */
  notSingle: (range: Range, slots: { readonly count: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("not-single", "fault", "One item is wanted, here there are {count}.", undefined, range, slots, extras),
  /** {formula} requires {condition}. */
  requirementBroken: (range: Range, slots: { readonly formula: string; readonly condition: string; readonly reason?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("requirement-broken", "fault", "{formula} requires {condition}.", "{reason}.", range, slots, extras),
  /** {problem}. */
  refused: (range: Range, slots: { readonly problem: string; readonly advice?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("refused", "fault", "{problem}.", "{advice}.", range, slots, extras),
  /** {function} gave no finite number. */
  noFiniteResult: (range: Range, slots: { readonly function: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("no-finite-result", "fault", "{function} gave no finite number.", undefined, range, slots, extras),
  /** {what} is read and checked, but not evaluated yet. */
  notEvaluatedYet: (range: Range, slots: { readonly what: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("not-evaluated-yet", "notice", "{what} is read and checked, but not evaluated yet.", "Until then write the list out: a formula called with a list gives a list.", range, slots, extras),
  /** Stopped after {limit} steps of work. */
  tooManySteps: (range: Range, slots: { readonly limit: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("too-many-steps", "fault", "Stopped after {limit} steps of work.", "Shorten the lists, or take a sum out of the inner loop.", range, slots, extras),
  /** A list of {count} items; the limit is {limit}. */
  listTooLong: (range: Range, slots: { readonly count: string; readonly limit: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("list-too-long", "fault", "A list of {count} items; the limit is {limit}.", undefined, range, slots, extras),
  /** Formulas call formulas more than {limit} deep, or an expression is nested too far. */
  tooDeep: (range: Range, slots: { readonly limit: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("too-deep", "fault", "Formulas call formulas more than {limit} deep, or an expression is nested too far.", "Split the expression into named lines.", range, slots, extras),
  /** In {formula}: {message} */
  inFormula: (range: Range, slots: { readonly formula: string; readonly message: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("in-formula", "fault", "In {formula}: {message}", undefined, range, slots, extras),
  /** In {formula}, step {step}: {message} */
  inFormulaStep: (range: Range, slots: { readonly formula: string; readonly step: string; readonly message: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("in-formula-step", "fault", "In {formula}, step {step}: {message}", undefined, range, slots, extras),
  /** Here in {formula}. */
  hereInFormula: (range: Range, slots: { readonly formula: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("here-in-formula", "fault", "Here in {formula}.", undefined, range, slots, extras),
  /** Something went wrong inside Jointwright: {observed}. */
  internal: (range: Range, slots: { readonly observed: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("internal", "fault", "Something went wrong inside Jointwright: {observed}.", "The rest of the notebook is not disturbed. Please report it with the line that caused it.", range, slots, extras),
  /** {name} is already defined above. */
  duplicateName: (range: Range, slots: { readonly name: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("duplicate-name", "fault", "{name} is already defined above.", "Give this one another name.", range, slots, extras),
  /** These depend on each other in a loop: {loop}. */
  loop: (range: Range, slots: { readonly loop: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("loop", "fault", "These depend on each other in a loop: {loop}.", "One of them must be given a value of its own.", range, slots, extras),
  /** There is no file {file} beside this notebook. */
  useMissingFile: (range: Range, slots: { readonly file: string; readonly nearest?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("use-missing-file", "fault", "There is no file {file} beside this notebook.", "Did you mean {nearest}?", range, slots, extras),
  /** These notebooks use each other in a loop: {loop}. */
  useLoop: (range: Range, slots: { readonly loop: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("use-loop", "fault", "These notebooks use each other in a loop: {loop}.", "Move what both need into a third notebook.", range, slots, extras),
  /** {file} defines no {name}. */
  notInFile: (range: Range, slots: { readonly file: string; readonly name: string; readonly nearest?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("not-in-file", "fault", "{file} defines no {name}.", "Did you mean {nearest}?", range, slots, extras),
  /** {name} has no value yet. */
  liveWaits: (range: Range, slots: { readonly name: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("live-waits", "notice", "{name} has no value yet.", undefined, range, slots, extras),
  /** This waits for {name}, which has no value. */
  waitsFor: (range: Range, slots: { readonly name: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("waits-for", "fault", "This waits for {name}, which has no value.", undefined, range, slots, extras),
  /** {name} is used as {kinds}; a product of dimensions can be one of them. */
  usedAsTwoKinds: (range: Range, slots: { readonly name: string; readonly kinds: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("used-as-two-kinds", "notice", "{name} is used as {kinds}; a product of dimensions can be one of them.", "Give {name} a type, for example {name}: Torque = ..., or define a second name.", range, slots, extras),
  /** {name} is no result of this notebook. */
  markOfNothing: (range: Range, slots: { readonly name: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("mark-of-nothing", "fault", "{name} is no result of this notebook.", "A mark stands on a computed value by its name, or on a check by its title; an input is entered a second time instead.", range, slots, extras),
  /** {name} made this calculation and cannot check it. */
  markOfOwnWork: (range: Range, slots: { readonly name: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("mark-of-own-work", "fault", "{name} made this calculation and cannot check it.", "The checker is another person than the creator in the title block.", range, slots, extras),
  /** A mark needs the name of the person who makes it. */
  markWithoutName: (range: Range, slots: Readonly<Record<string, never>>, extras: Extras = {}): Diagnostic =>
    diagnostic("mark-without-name", "fault", "A mark needs the name of the person who makes it.", undefined, range, slots, extras),
  /** {text} has a comma between two digits. */
  commaNumber: (range: Range, slots: { readonly text: string; readonly meanings?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("comma-number", "fault", "{text} has a comma between two digits.", "Write {meanings}.", range, slots, extras),
  /** {text}: a digit stands on both sides of a decimal point. */
  pointWithoutDigit: (range: Range, slots: { readonly text: string; readonly meaning?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("point-without-digit", "fault", "{text}: a digit stands on both sides of a decimal point.", "Write {meaning}.", range, slots, extras),
  /** {text} can be read in two ways: a number and its unit are one value, so this divides by {number}. */
  fractionWithUnit: (range: Range, slots: { readonly text: string; readonly number: string; readonly meaning?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("fraction-with-unit", "fault", "{text} can be read in two ways: a number and its unit are one value, so this divides by {number}.", "Write {meaning}.", range, slots, extras),
  /** The exponent {text} of a unit is a decimal. */
  unitExponent: (range: Range, slots: { readonly text: string; readonly meaning?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("unit-exponent", "fault", "The exponent {text} of a unit is a decimal.", "Write {meaning}.", range, slots, extras),
  /** The unit {text} has two division signs. */
  unitSlashes: (range: Range, slots: { readonly text: string; readonly meaning?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("unit-slashes", "fault", "The unit {text} has two division signs.", "Write {meaning}.", range, slots, extras),
  /** {number} and {unit} stand more than one space apart. */
  unitGap: (range: Range, slots: { readonly number: string; readonly unit: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("unit-gap", "fault", "{number} and {unit} stand more than one space apart.", "A unit stands directly behind its number or one space from it.", range, slots, extras),
  /** {left} and {right} stand side by side with no operator between them. */
  sideBySide: (range: Range, slots: { readonly left: string; readonly right: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("side-by-side", "fault", "{left} and {right} stand side by side with no operator between them.", "A product is written with *.", range, slots, extras),
  /** The letter {letter} is no multiplication sign. */
  timesLetter: (range: Range, slots: { readonly letter: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("times-letter", "fault", "The letter {letter} is no multiplication sign.", "Write * or ×.", range, slots, extras),
  /** % is percent and nothing else. */
  percentOnly: (range: Range, slots: { readonly example?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("percent-only", "fault", "% is percent and nothing else.", "The remainder of a division is {example}.", range, slots, extras),
  /** {sign} is no sign of this language. */
  foreignSign: (range: Range, slots: { readonly sign: string; readonly meaning?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("foreign-sign", "fault", "{sign} is no sign of this language.", "Write {meaning}.", range, slots, extras),
  /** {sign} cannot be read here. */
  unknownSign: (range: Range, slots: { readonly sign: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("unknown-sign", "fault", "{sign} cannot be read here.", "Notes and references stand behind a bar, remarks behind #.", range, slots, extras),
  /** The text {text} has no closing quote. */
  openText: (range: Range, slots: { readonly text: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("open-text", "fault", "The text {text} has no closing quote.", undefined, range, slots, extras),
  /** {open} is not closed. */
  bracketOpen: (range: Range, slots: { readonly open: string; readonly close?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("bracket-open", "fault", "{open} is not closed.", "Close it with {close}.", range, slots, extras),
  /** {open} is not closed: the {close} on its line stands behind a bar and belongs to the note. */
  bracketInNote: (range: Range, slots: { readonly open: string; readonly close: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("bracket-in-note", "fault", "{open} is not closed: the {close} on its line stands behind a bar and belongs to the note.", "Close it before the bar.", range, slots, extras),
  /** {open} is closed by {close}. */
  bracketDiffers: (range: Range, slots: { readonly open: string; readonly close: string; readonly fitting?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("bracket-differs", "fault", "{open} is closed by {close}.", "Write {fitting}.", range, slots, extras),
  /** {bracket} closes nothing. */
  bracketClosesNothing: (range: Range, slots: { readonly bracket: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("bracket-closes-nothing", "fault", "{bracket} closes nothing.", undefined, range, slots, extras),
  /** The note stands on a line that is not the last of its statement. */
  columnsEarly: (range: Range, slots: Readonly<Record<string, never>>, extras: Extras = {}): Diagnostic =>
    diagnostic("columns-early", "fault", "The note stands on a line that is not the last of its statement.", "Put it on the last line.", range, slots, extras),
  /** No note can stand here. */
  columnsMisplaced: (range: Range, slots: Readonly<Record<string, never>>, extras: Extras = {}): Diagnostic =>
    diagnostic("columns-misplaced", "fault", "No note can stand here.", "Put it behind the statement, or write a remark with #.", range, slots, extras),
  /** A third bar: behind the working there are the note and the reference, no more. */
  extraBar: (range: Range, slots: Readonly<Record<string, never>>, extras: Extras = {}): Diagnostic =>
    diagnostic("extra-bar", "fault", "A third bar: behind the working there are the note and the reference, no more.", "A bar that belongs to the text is written \\|.", range, slots, extras),
  /** || reads as "or" to some and as an empty note to others. */
  doubleBar: (range: Range, slots: Readonly<Record<string, never>>, extras: Extras = {}): Diagnostic =>
    diagnostic("double-bar", "fault", "|| reads as \"or\" to some and as an empty note to others.", "Write or, or put a space between the bars.", range, slots, extras),
  /** A definition is written with =. */
  equalityForDefinition: (range: Range, slots: Readonly<Record<string, never>>, extras: Extras = {}): Diagnostic =>
    diagnostic("equality-for-definition", "fault", "A definition is written with =.", "== compares two values.", range, slots, extras),
  /** = does not compare. */
  singleEquals: (range: Range, slots: Readonly<Record<string, never>>, extras: Extras = {}): Diagnostic =>
    diagnostic("single-equals", "fault", "= does not compare.", "Write ==.", range, slots, extras),
  /** `as` does not fit here. */
  asMisplaced: (range: Range, slots: Readonly<Record<string, never>>, extras: Extras = {}): Diagnostic =>
    diagnostic("as-misplaced", "fault", "`as` does not fit here.", "It stands behind the value of a definition, a field, a step or an argument.", range, slots, extras),
  /** A share {sign} ... of ... is a literal such as 5 %. */
  shareLiteral: (range: Range, slots: { readonly sign: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("share-literal", "fault", "A share {sign} ... of ... is a literal such as 5 %.", undefined, range, slots, extras),
  /** Unequal limits go with a literal, and {nominal} is none. */
  limitsNominal: (range: Range, slots: { readonly nominal: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("limits-nominal", "fault", "Unequal limits go with a literal, and {nominal} is none.", "Give the limits where the size itself is defined, or put spaces round + and / to calculate.", range, slots, extras),
  /** In {text} the unit stands twice. */
  limitsUnit: (range: Range, slots: { readonly text: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("limits-unit", "fault", "In {text} the unit stands twice.", "Both limits share the unit at the end.", range, slots, extras),
  /** `step` follows a range, and there is none. */
  stepAlone: (range: Range, slots: Readonly<Record<string, never>>, extras: Extras = {}): Diagnostic =>
    diagnostic("step-alone", "fault", "`step` follows a range, and there is none.", "Write from .. to step by.", range, slots, extras),
  /** `{word}` wants two bounds. */
  twoBounds: (range: Range, slots: { readonly word: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("two-bounds", "fault", "`{word}` wants two bounds.", "Write them as lo .. hi.", range, slots, extras),
  /** This row has {cells} cells, the head has {heads}. */
  rowCells: (range: Range, slots: { readonly cells: string; readonly heads: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("row-cells", "fault", "This row has {cells} cells, the head has {heads}.", "An empty cell is written as nothing between two bars.", range, slots, extras),
  /** An example compares one call with its answer. */
  exampleForm: (range: Range, slots: Readonly<Record<string, never>>, extras: Extras = {}): Diagnostic =>
    diagnostic("example-form", "fault", "An example compares one call with its answer.", "Write f(...) == value, with ± tolerance where one is needed.", range, slots, extras),
  /** {word} is a word of the language and names nothing else here. */
  reservedName: (range: Range, slots: { readonly word: string; readonly free?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("reserved-name", "fault", "{word} is a word of the language and names nothing else here.", "Another spelling is free, for example {free}.", range, slots, extras),
  /** This is no statement: {text} */
  notAStatement: (range: Range, slots: { readonly text: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("not-a-statement", "fault", "This is no statement: {text}", "Write name = ..., check ..., formula ..., record ..., family ..., example ... or use ...", range, slots, extras),
  /** A statement begins at the left edge. */
  indentedStart: (range: Range, slots: Readonly<Record<string, never>>, extras: Extras = {}): Diagnostic =>
    diagnostic("indented-start", "fault", "A statement begins at the left edge.", "Indented lines go on with the statement above them.", range, slots, extras),
  /** A value is missing behind {before}. */
  valueMissing: (range: Range, slots: { readonly before: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("value-missing", "fault", "A value is missing behind {before}.", undefined, range, slots, extras),
  /** The statement ends too early: {wanted} is missing. */
  endsEarly: (range: Range, slots: { readonly wanted: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("ends-early", "fault", "The statement ends too early: {wanted} is missing.", undefined, range, slots, extras),
  /** {found} does not fit here. */
  doesNotFit: (range: Range, slots: { readonly found: string; readonly wanted?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("does-not-fit", "fault", "{found} does not fit here.", "Expected {wanted}.", range, slots, extras),
  /** The expression is nested too deep or is too long. */
  tooNested: (range: Range, slots: Readonly<Record<string, never>>, extras: Extras = {}): Diagnostic =>
    diagnostic("too-nested", "fault", "The expression is nested too deep or is too long.", "Split it into named lines.", range, slots, extras),
  /** {symbol} is no unit here. */
  unitUnknown: (range: Range, slots: { readonly symbol: string; readonly nearest?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("unit-unknown", "fault", "{symbol} is no unit here.", "Write {nearest} if that is what you mean.", range, slots, extras),
  /** {symbol} is not read as a unit: {advice}. */
  unitAmbiguous: (range: Range, slots: { readonly symbol: string; readonly advice: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("unit-ambiguous", "fault", "{symbol} is not read as a unit: {advice}.", undefined, range, slots, extras),
  /** {symbol} may be a mass or a force: {advice}. */
  unitMassOrForce: (range: Range, slots: { readonly symbol: string; readonly advice: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("unit-mass-or-force", "fault", "{symbol} may be a mass or a force: {advice}.", undefined, range, slots, extras),
  /** {symbol} is no unit here: {advice}. */
  unitPrefix: (range: Range, slots: { readonly symbol: string; readonly advice: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("unit-prefix", "fault", "{symbol} is no unit here: {advice}.", undefined, range, slots, extras),
  /** {symbol} stands twice in {text}. */
  unitTwice: (range: Range, slots: { readonly symbol: string; readonly text: string; readonly mend?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("unit-twice", "fault", "{symbol} stands twice in {text}.", "Write {mend}.", range, slots, extras),
  /** {text} is not written like a unit: {advice}. */
  unitForm: (range: Range, slots: { readonly text: string; readonly advice: string; readonly mend?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("unit-form", "fault", "{text} is not written like a unit: {advice}.", "Write {mend}.", range, slots, extras),
  /** Only one unit or one bracket may follow the / in {text}. */
  unitDivision: (range: Range, slots: { readonly text: string; readonly mend?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("unit-division", "fault", "Only one unit or one bracket may follow the / in {text}.", "Write {mend}.", range, slots, extras),
  /** A unit behind a number may not start with 1. */
  unitLeadingOne: (range: Range, slots: { readonly mend?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("unit-leading-one", "fault", "A unit behind a number may not start with 1.", "Write {mend}.", range, slots, extras),
  /** {symbol} is a point on the temperature scale, so it stands alone. */
  unitPoint: (range: Range, slots: { readonly symbol: string; readonly nearest?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("unit-point", "fault", "{symbol} is a point on the temperature scale, so it stands alone.", "Write {nearest} for a difference of temperatures.", range, slots, extras),
  /** {symbol} is no exponent of a unit: write a whole number, or a fraction in brackets, directly behind ^. */
  unitPower: (range: Range, slots: { readonly symbol: string; readonly mend?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("unit-power", "fault", "{symbol} is no exponent of a unit: write a whole number, or a fraction in brackets, directly behind ^.", "Write {mend}.", range, slots, extras),
  /** {key} in the `units` of the title block is no quantity. */
  preferenceQuantity: (range: Range, slots: { readonly key: string; readonly nearest?: string | undefined }, extras: Extras = {}): Diagnostic =>
    diagnostic("preference-quantity", "fault", "{key} in the `units` of the title block is no quantity.", "Write {nearest} if that is what you mean.", range, slots, extras),
  /** {text} is a unit of {found}, not of {wanted}, so it cannot be the unit for {key}. */
  preferenceDimension: (range: Range, slots: { readonly text: string; readonly found: string; readonly wanted: string; readonly key: string }, extras: Extras = {}): Diagnostic =>
    diagnostic("preference-dimension", "fault", "{text} is a unit of {found}, not of {wanted}, so it cannot be the unit for {key}.", undefined, range, slots, extras),
};
