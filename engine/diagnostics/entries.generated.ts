// Made by `npm run catalogue` from catalogue/*.md. Do not edit.

import type { CatalogueEntry } from "./entry.ts";

export const entries: readonly CatalogueEntry[] = [
  {
    "code": "unknown-name",
    "area": "check",
    "severity": "fault",
    "message": "{name} is not defined here.",
    "text": "A name must be defined once in the notebook, come from the library, or stand behind the prefix of a `use` line.",
    "wrong": "```calc\nF = 3 kN\np = Fx / 2\n```",
    "right": "```calc\nF = 3 kN\np = F / 2\n```",
    "hint": "Did you mean {nearest}?"
  },
  {
    "code": "not-a-value",
    "area": "check",
    "severity": "fault",
    "message": "{name} is {what}, not a value.",
    "text": "Formulas are called with arguments, records are made with fields in braces.",
    "wrong": "```calc\nformula twice(x) = 2 * x\na = twice + 1\n```",
    "right": "```calc\nformula twice(x) = 2 * x\na = twice(1) + 1\n```",
    "hint": "{advice}"
  },
  {
    "code": "not-a-formula",
    "area": "check",
    "severity": "fault",
    "message": "{name} is {what} and cannot be called.",
    "text": "Only formulas and functions take arguments in round brackets. A product is written with `*`.",
    "wrong": "```calc\nk = 3\na = k(2)\n```",
    "right": "```calc\nk = 3\na = k * 2\n```",
    "hint": "Did you mean {nearest}?"
  },
  {
    "code": "not-a-record",
    "area": "check",
    "severity": "fault",
    "message": "{name} is {what}, not a record.",
    "text": "Braces after a name make a record of that type.",
    "wrong": "```calc\nk = 3\na = k { D = 2 mm }\n```",
    "right": "```calc\nrecord Pin { D: Length }\na = Pin { D = 2 mm }\n```",
    "hint": "Did you mean {nearest}?"
  },
  {
    "code": "sides-differ",
    "area": "check",
    "severity": "fault",
    "message": "{left} and {right} {verb}.",
    "text": "Only quantities of one dimension add, subtract, compare or stand in one list.",
    "wrong": "```calc\nF = 3 kN\nA = 20 mm^2\np = F + A\n```",
    "right": "```calc\nF = 3 kN\nA = 20 mm^2\np = F / A\n```",
    "hint": "{advice}"
  },
  {
    "code": "kinds-differ",
    "area": "check",
    "severity": "fault",
    "message": "{left} and {right} are told apart and {verb}.",
    "text": "Torque and energy, angle and number, frequency and rotational speed have the same dimension but do not mix.",
    "wrong": "```calc\nphi = 90 deg + 90\n```",
    "right": "```calc\nphi = 90 deg + 90 deg\n```",
    "hint": "{advice}"
  },
  {
    "code": "wrong-type",
    "area": "check",
    "severity": "fault",
    "message": "{place} wants {wanted}, but this is {given}.",
    "text": "The place decides what fits: the condition of `if` is true or false, an index is a number, a sum takes a list.",
    "wrong": "```calc\na = if 3 then 1 else 2\n```",
    "right": "```calc\na = if 3 > 2 then 1 else 2\n```",
    "hint": "{advice}"
  },
  {
    "code": "wrong-argument",
    "area": "check",
    "severity": "fault",
    "message": "{parameter} of {formula} wants {wanted}, but this is {given}.",
    "text": "Each argument must have the dimension of its parameter.",
    "wrong": "```calc\nformula area(d: Length) = pi / 4 * d^2\nA = area(5 N)\n```",
    "right": "```calc\nformula area(d: Length) = pi / 4 * d^2\nA = area(5 mm)\n```",
    "hint": "{advice}"
  },
  {
    "code": "missing-argument",
    "area": "check",
    "severity": "fault",
    "message": "{formula} also needs {missing}.",
    "text": "Parameters without a default must be given.",
    "wrong": "```calc\nformula stress(F: Force, A: Area) = F / A\ns = stress(3 kN)\n```",
    "right": "```calc\nformula stress(F: Force, A: Area) = F / A\ns = stress(3 kN, 20 mm^2)\n```"
  },
  {
    "code": "unknown-argument",
    "area": "check",
    "severity": "fault",
    "message": "{formula} has no parameter {name}.",
    "text": "A named argument must bear the name of a parameter.",
    "wrong": "```calc\nformula area(d: Length) = pi / 4 * d^2\nA = area(D = 5 mm)\n```",
    "right": "```calc\nformula area(d: Length) = pi / 4 * d^2\nA = area(d = 5 mm)\n```",
    "hint": "Did you mean {nearest}?"
  },
  {
    "code": "too-many-arguments",
    "area": "check",
    "severity": "fault",
    "message": "{formula} takes {most}, here are {count}.",
    "text": "The call gives more arguments than the formula has parameters.",
    "wrong": "```calc\na = sqrt(4, 5)\n```",
    "right": "```calc\na = sqrt(4)\n```"
  },
  {
    "code": "argument-twice",
    "area": "check",
    "severity": "fault",
    "message": "{name} of {formula} is given twice.",
    "text": "Each parameter takes one argument, by place or by name.",
    "wrong": "```calc\nformula area(d: Length) = pi / 4 * d^2\nA = area(5 mm, d = 6 mm)\n```",
    "right": "```calc\nformula area(d: Length) = pi / 4 * d^2\nA = area(5 mm)\n```"
  },
  {
    "code": "missing-field",
    "area": "check",
    "severity": "fault",
    "message": "{record} also needs {missing}.",
    "text": "Fields without a default must be given.",
    "wrong": "```calc\nrecord Insert { D: Length, L: Length }\nx = Insert { D = 8 mm }\n```",
    "right": "```calc\nrecord Insert { D: Length, L: Length }\nx = Insert { D = 8 mm, L = 9 mm }\n```"
  },
  {
    "code": "unknown-field",
    "area": "check",
    "severity": "fault",
    "message": "{record} has no field {name}.",
    "text": "The fields of a record are listed where it is declared.",
    "wrong": "```calc\nrecord Insert { D: Length }\nx = Insert { D = 8 mm }\na = x.d\n```",
    "right": "```calc\nrecord Insert { D: Length }\nx = Insert { D = 8 mm }\na = x.D\n```",
    "hint": "Did you mean {nearest}?"
  },
  {
    "code": "field-twice",
    "area": "check",
    "severity": "fault",
    "message": "The field {name} stands twice.",
    "text": "Each field is given once.",
    "wrong": "```calc\nrecord Insert { D: Length }\nx = Insert { D = 8 mm, D = 9 mm }\n```",
    "right": "```calc\nrecord Insert { D: Length }\nx = Insert { D = 8 mm }\n```"
  },
  {
    "code": "no-fields",
    "area": "check",
    "severity": "fault",
    "message": "{given} has no fields, so .{name} cannot be read.",
    "text": "Only records have fields and only tables have columns.",
    "wrong": "```calc\nd = 5 mm\na = d.L\n```",
    "right": "```calc\nrecord Pin { L: Length }\nd = Pin { L = 5 mm }\na = d.L\n```",
    "hint": "{advice}"
  },
  {
    "code": "no-column",
    "area": "check",
    "severity": "fault",
    "message": "The table has no column {name}.",
    "text": "The heads of a table name its columns.",
    "wrong": "```calc\nt = table {\n  n [1] | F [N]\n  1     | 5\n}\na = mean(t.G)\n```",
    "right": "```calc\nt = table {\n  n [1] | F [N]\n  1     | 5\n}\na = mean(t.F)\n```",
    "hint": "Did you mean {nearest}?"
  },
  {
    "code": "column-outside",
    "area": "check",
    "severity": "fault",
    "message": ".{name} is a column, and there is no table here.",
    "text": "A leading point names a column inside `where` and `group`.",
    "wrong": "```calc\na = .F + 1 N\n```",
    "right": "```calc\nF = 2 N\na = F + 1 N\n```",
    "hint": "Write t where .{name} > ... or group t by .{name}, or drop the point."
  },
  {
    "code": "points-do-not-add",
    "area": "check",
    "severity": "fault",
    "message": "Two temperature points do not {verb}.",
    "text": "A temperature on a scale is a point. Point minus point is a difference; a difference may be added; `mean` takes points.",
    "wrong": "```calc\nT = 10 degC + 20 degC\n```",
    "right": "```calc\nT = 10 degC + 20 K\n```",
    "hint": "{advice}"
  },
  {
    "code": "point-arithmetic",
    "area": "check",
    "severity": "fault",
    "message": "A temperature point cannot be {verb}.",
    "text": "On a scale with a shifted zero a multiple means nothing.",
    "wrong": "```calc\nT = 2 * 20 degC\n```",
    "right": "```calc\nT = 2 * absolute(20 degC)\n```",
    "hint": "Write absolute(T) for laws of the absolute temperature, or take a difference of two points."
  },
  {
    "code": "point-and-difference",
    "area": "check",
    "severity": "fault",
    "message": "{given} is a temperature {is}, and {place} wants a temperature {wants}.",
    "text": "`degC` and `degF` are points on a scale, `K`, `degC_diff` and `degF_diff` are differences.",
    "wrong": "```calc\ndT: TemperatureDifference = 3 degC\n```",
    "right": "```calc\ndT: TemperatureDifference = 3 K\n```",
    "hint": "{advice}"
  },
  {
    "code": "exponent-not-literal",
    "area": "check",
    "severity": "fault",
    "message": "{base} has a dimension, so its exponent must be a number written out.",
    "text": "The dimension of a power must be known before anything is evaluated.",
    "wrong": "```calc\nn = 2\nA = (3 mm)^n\n```",
    "right": "```calc\nA = (3 mm)^2\n```",
    "hint": "Write for example x^2 or x^(1/2)."
  },
  {
    "code": "exponent-too-large",
    "area": "check",
    "severity": "fault",
    "message": "This gives {base} an exponent that no quantity has.",
    "text": "Exponents of dimensions are kept exact and small.",
    "wrong": "```calc\na = (3 mm)^1000000\n```",
    "right": "```calc\na = (3 mm)^3\n```"
  },
  {
    "code": "exponent-dimension",
    "area": "check",
    "severity": "fault",
    "message": "An exponent is a plain number, but this is {given}.",
    "text": "Only plain numbers serve as exponents.",
    "wrong": "```calc\na = 2^(3 mm)\n```",
    "right": "```calc\na = 2^3\n```"
  },
  {
    "code": "not-closed",
    "area": "check",
    "severity": "fault",
    "message": "A formula does not see {name}, which is an input or depends on one.",
    "text": "A formula gives the same answer for the same arguments wherever it is called, so its body sees its parameters, other formulas and constants only.",
    "wrong": "```calc\nF = 3 kN\nformula half() = F / 2\n```",
    "right": "```calc\nformula half(F: Force) = F / 2\n```",
    "hint": "Give it as a parameter."
  },
  {
    "code": "unit-does-not-fit",
    "area": "check",
    "severity": "fault",
    "message": "{given} cannot be shown in {unit}, which is for {wanted}.",
    "text": "The unit after `as` must have the dimension of the value.",
    "wrong": "```calc\nF = 3 kN as mm\n```",
    "right": "```calc\nF = 3 kN as N\n```",
    "hint": "{advice}"
  },
  {
    "code": "unknown-type",
    "area": "check",
    "severity": "fault",
    "message": "{name} is not a type.",
    "text": "Types are quantities (Length, Force), a unit in brackets ([N/mm]), Text, Truth, Money, lists, `Maybe`, and records and families of yours.",
    "wrong": "```calc\nformula f(a: Lenght) = a\n```",
    "right": "```calc\nformula f(a: Length) = a\n```",
    "hint": "Did you mean {nearest}?"
  },
  {
    "code": "not-a-choice",
    "area": "check",
    "severity": "fault",
    "message": "{given} is none of the choices {choices}.",
    "text": "The field or parameter lists the texts it takes.",
    "wrong": "```calc\nrecord Insert { face: \"loaded\" or \"back\" }\nx = Insert { face = \"front\" }\n```",
    "right": "```calc\nrecord Insert { face: \"loaded\" or \"back\" }\nx = Insert { face = \"back\" }\n```",
    "hint": "Did you mean {nearest}?"
  },
  {
    "code": "arm-missing",
    "area": "check",
    "severity": "fault",
    "message": "This match has no arm for {missing}.",
    "text": "Every member of the family is named, so that nothing is forgotten when a member is added.",
    "wrong": "```calc\nrecord A { L: Length }\nrecord B { D: Length }\nfamily Anchor = A or B\nformula f(a: Anchor): Length = match (a) { A x: x.L }\n```",
    "right": "```calc\nrecord A { L: Length }\nrecord B { D: Length }\nfamily Anchor = A or B\nformula f(a: Anchor): Length = match (a) { A x: x.L, B y: y.D }\n```"
  },
  {
    "code": "arm-unknown",
    "area": "check",
    "severity": "fault",
    "message": "{name} is no member of what is matched.",
    "text": "An arm names a member of the family, or `none` and `some`.",
    "wrong": "```calc\nrecord A { L: Length }\nrecord B { D: Length }\nrecord C { D: Length }\nfamily Anchor = A or B\nformula f(a: Anchor): Length = match (a) { A x: x.L, B y: y.D, C z: z.D }\n```",
    "right": "```calc\nrecord A { L: Length }\nrecord B { D: Length }\nfamily Anchor = A or B\nformula f(a: Anchor): Length = match (a) { A x: x.L, B y: y.D }\n```",
    "hint": "Members are {members}."
  },
  {
    "code": "check-wants-truth",
    "area": "check",
    "severity": "fault",
    "message": "A check wants a comparison or a condition, but this is {given}.",
    "text": "Write what must hold, for example `check F <= F_max factor 1.5`. A list of truths needs `all(...)`.",
    "wrong": "```calc\nF = 3 kN\ncheck F\n```",
    "right": "```calc\nF = 3 kN\ncheck F <= 4 kN\n```",
    "hint": "{advice}"
  },
  {
    "code": "factor-misplaced",
    "area": "check",
    "severity": "fault",
    "message": "A factor needs one demand and one capacity: {why}.",
    "text": "The factor multiplies the demand of `demand <= capacity`. It does not go with temperature points, chains or conditions.",
    "wrong": "```calc\nT = 60 degC\ncheck T <= 80 degC factor 1.2\n```",
    "right": "```calc\nT = 60 degC\ncheck T <= 80 degC\n```"
  },
  {
    "code": "within-wants-input",
    "area": "check",
    "severity": "fault",
    "message": "Bounds go with an input, and {name} is computed.",
    "text": "`within` limits what may be typed and gives a control.",
    "wrong": "```calc\na = 3 mm\nb = 2 * a within 1 mm .. 9 mm\n```",
    "right": "```calc\na = 3 mm within 1 mm .. 9 mm\nb = 2 * a\n```",
    "hint": "To hold a computed value within bounds write a check."
  },
  {
    "code": "outside-within",
    "area": "check",
    "severity": "fault",
    "message": "{name} is {value}, outside its bounds {low} to {high}.",
    "text": "The bounds of an input hold for whoever changes it.",
    "wrong": "```calc\ns = 90 mm within 40 mm .. 80 mm\n```",
    "right": "```calc\ns = 60 mm within 40 mm .. 80 mm\n```"
  },
  {
    "code": "bounds-turned",
    "area": "check",
    "severity": "fault",
    "message": "The lower bound {low} lies above the upper bound {high}.",
    "text": "Write the smaller bound first.",
    "wrong": "```calc\ns = 60 mm within 80 mm .. 40 mm\n```",
    "right": "```calc\ns = 60 mm within 40 mm .. 80 mm\n```"
  },
  {
    "code": "example-not-closed",
    "area": "check",
    "severity": "fault",
    "message": "An example does not see {name}, which is an input or depends on one.",
    "text": "An example holds by itself, whatever the inputs are.",
    "wrong": "```calc\nd = 3 mm\nformula area(d: Length) = d^2\nexample area(d) == 9 mm^2\n```",
    "right": "```calc\nformula area(d: Length) = d^2\nexample area(3 mm) == 9 mm^2\n```",
    "hint": "Put the number in."
  },
  {
    "code": "empty-list",
    "area": "check",
    "severity": "fault",
    "message": "What this empty list holds is not known.",
    "text": "The type of a list comes from its items.",
    "wrong": "```calc\nxs = []\n```",
    "right": "```calc\nxs: List Force = []\n```",
    "hint": "Give the definition a type, for example xs: List Force = []."
  },
  {
    "code": "no-result",
    "area": "check",
    "severity": "fault",
    "message": "The formula {name} has no result.",
    "text": "A formula of several steps says what it gives.",
    "wrong": "```calc\nformula f(a: Length) = {\n  b = 2 * a\n}\n```",
    "right": "```calc\nformula f(a: Length) = {\n  b = 2 * a\n  result = b\n}\n```",
    "hint": "End it with result = ..."
  },
  {
    "code": "step-twice",
    "area": "check",
    "severity": "fault",
    "message": "{name} is already {what} of this formula.",
    "text": "Each parameter and each step has a name of its own.",
    "wrong": "```calc\nformula f(a: Length) = {\n  a = 2 mm\n  result = a\n}\n```",
    "right": "```calc\nformula f(a: Length) = {\n  b = 2 * a\n  result = b\n}\n```"
  },
  {
    "code": "declared-result-differs",
    "area": "check",
    "severity": "fault",
    "message": "{name} says it gives {wanted}, but it gives {given}.",
    "text": "The declared type of a formula or a definition must be what its right side has.",
    "wrong": "```calc\nformula stress(F: Force, A: Area): Force = F / A\n```",
    "right": "```calc\nformula stress(F: Force, A: Area): Pressure = F / A\n```",
    "hint": "{advice}"
  },
  {
    "code": "unit-or-name",
    "area": "check",
    "severity": "fault",
    "message": "{text} reads as a unit, and {name} is also a name of yours.",
    "text": "After a number a unit is meant. Where the same letter is a name of yours both lines carry this fault, so that neither reading slips through.",
    "wrong": "```calc\nA = 2 mm^2\nx = 12 N/A\n```",
    "right": "```calc\nA = 2 mm^2\nx = 12 N / A\n```",
    "hint": "Write {product} for your {name}, or give {name} another name."
  },
  {
    "code": "name-or-unit",
    "area": "check",
    "severity": "fault",
    "message": "{name} is a name of yours, and it also stands as a unit after a number.",
    "text": "See unit-or-name: both lines carry a fault.",
    "wrong": "```calc\nd = 8 mm\nt = 3 d\n```",
    "right": "```calc\nd = 8 mm\nt = 3 * d\n```",
    "hint": "Rename it, or write a spaced operator where your {name} is meant."
  },
  {
    "code": "shadows-library",
    "area": "check",
    "severity": "notice",
    "message": "{name} is also a name of the library; here yours is used.",
    "text": "A name of yours goes before the library's, so that a new release never breaks an old notebook.",
    "wrong": "```calc\nsqrt = 3\n```",
    "right": "```calc\nroot = 3\n```"
  },
  {
    "code": "scatter-does-not-fit",
    "area": "check",
    "severity": "fault",
    "message": "The spread of {given} must be {wanted}.",
    "text": "Limits and standard deviations have the dimension of the value; those of a temperature point are differences.",
    "wrong": "```calc\nd = 8 mm ± 1 N\n```",
    "right": "```calc\nd = 8 mm ± 0.1 mm\n```"
  },
  {
    "code": "scatter-misplaced",
    "area": "check",
    "severity": "fault",
    "message": "A spread stands at the end of a definition, a field or a list item.",
    "text": "Give the spread where the value is defined; what is computed from it follows.",
    "wrong": "```calc\na = (8 mm ± 0.1 mm) * 2\n```",
    "right": "```calc\nb = 8 mm ± 0.1 mm\na = b * 2\n```"
  },
  {
    "code": "study-misplaced",
    "area": "check",
    "severity": "fault",
    "message": "{what} is the right side of a definition of its own.",
    "text": "A study or a solution gets a name, and then it is used by that name.",
    "wrong": "```calc\nx = 3 mm\na = 1 + (study x over x in 1 mm .. 5 mm step 1 mm)\n```",
    "right": "```calc\nx = 3 mm within 1 mm .. 5 mm\nF = 2 N/mm * x\na = study F over x in 1 mm .. 5 mm step 1 mm\n```"
  },
  {
    "code": "study-wants-input",
    "area": "check",
    "severity": "fault",
    "message": "{name} is not an input of this notebook, so it cannot be varied.",
    "text": "A study and a solution vary an input and leave the notebook as it is.",
    "wrong": "```calc\nx = 3 mm\nF = 2 N/mm * x\na = study x over F in 1 N .. 5 N step 1 N\n```",
    "right": "```calc\nx = 3 mm\nF = 2 N/mm * x\na = study F over x in 1 mm .. 5 mm step 1 mm\n```"
  },
  {
    "code": "lookup-is-table",
    "area": "check",
    "severity": "fault",
    "message": "A table cell is a literal, but this is computed.",
    "text": "Cells are numbers, texts and truths written out; compute with columns afterwards.",
    "wrong": "```calc\na = 3\nt = table {\n  n\n  a\n}\n```",
    "right": "```calc\nt = table {\n  n [1]\n  3\n}\n```"
  },
  {
    "code": "cell-does-not-fit",
    "area": "check",
    "severity": "fault",
    "message": "The column {column} holds {wanted}, but this cell is {given}.",
    "text": "The head of a column decides: `F [N]` holds bare numbers in newtons, a head without a unit holds text.",
    "wrong": "```calc\nt = table {\n  F [N]\n  \"many\"\n}\n```",
    "right": "```calc\nt = table {\n  F [N]\n  12\n}\n```",
    "hint": "{advice}"
  },
  {
    "code": "not-a-member",
    "area": "check",
    "severity": "fault",
    "message": "{name} is not a record, so it cannot be a member of the family {family}.",
    "text": "A family lists records.",
    "wrong": "```calc\nk = 3\nfamily Anchor = k or Pin\nrecord Pin { D: Length }\n```",
    "right": "```calc\nrecord Pin { D: Length }\nrecord Nut { D: Length }\nfamily Anchor = Pin or Nut\n```"
  },
  {
    "code": "range-wants-step",
    "area": "check",
    "severity": "fault",
    "message": "A range that makes a list needs a step.",
    "text": "Only bounds go without a step.",
    "wrong": "```calc\nxs = 1 mm .. 5 mm\n```",
    "right": "```calc\nxs = 1 mm .. 5 mm step 1 mm\n```",
    "hint": "Write {text} step ..."
  },
  {
    "code": "abs-not-temperature",
    "area": "check",
    "severity": "fault",
    "message": "abs makes a temperature point of a value in K or degR, not of one in {unit}.",
    "text": "Write `278.15 K abs` for a point given on the absolute scale.",
    "wrong": "```calc\nd = 3 mm abs\n```",
    "right": "```calc\nT = 278.15 K abs\n```"
  },
  {
    "code": "axis-of-no-unit",
    "area": "check",
    "severity": "fault",
    "message": "This formula does not say what {figure} shows here, so its axis has no unit.",
    "text": "A figure carries the units of its axes with it, so a formula that makes one says which quantities it takes.",
    "wrong": "```calc\nformula curve(xs: List Force, k) = line_plot(xs, k * xs)\n```",
    "right": "```calc\nformula curve(xs: List Force, k: Number) = line_plot(xs, k * xs)\n```",
    "hint": "Give the parameter its quantity, for example `x: List Length`."
  },
  {
    "code": "fence-open",
    "area": "notebook",
    "severity": "notice",
    "message": "This fence is not closed; it runs to the end of the notebook.",
    "text": "Everything after the opening line belongs to the fence, also what was meant as prose.",
    "wrong": "",
    "right": "",
    "hint": "Put a line of ``` after its last line.",
    "shown": "the last fence of a notebook without a closing line"
  },
  {
    "code": "fence-indented",
    "area": "notebook",
    "severity": "notice",
    "message": "A `{word}` fence begins at the start of a line; this one is indented and is left alone.",
    "text": "Indented fences are code to read, not working, also to any other reader of the file.",
    "wrong": "Text.\n\n  ```calc\n  a = 2 mm\n  ```",
    "right": "Text.\n\n```calc\na = 2 mm\n```",
    "hint": "Take the spaces before it away."
  },
  {
    "code": "fence-word-case",
    "area": "notebook",
    "severity": "notice",
    "message": "`{written}` is no kind of fence that is worked; `{word}` is.",
    "text": "The words `calc` and `csv` are exact. A fence with any other word is shown as text, and nothing in it is evaluated.",
    "wrong": "```Calc\na = 2 mm\n```",
    "right": "```calc\na = 2 mm\n```",
    "hint": "Write `{word}` in small letters."
  },
  {
    "code": "calc-fence-words",
    "area": "notebook",
    "severity": "notice",
    "message": "A calc fence takes no words behind `calc`; `{words}` means nothing here.",
    "text": "All calc fences of a notebook are one working, so a fence has no name. The words are kept in the file and do nothing.",
    "wrong": "```calc loads\na = 2 mm\n```",
    "right": "# Loads\n\n```calc\na = 2 mm\n```",
    "hint": "Write a title as a heading above the fence."
  },
  {
    "code": "csv-no-name",
    "area": "notebook",
    "severity": "fault",
    "message": "This csv fence has no name, so nothing can use its data.",
    "text": "The working calls data by the name of its fence. Put the name directly behind `csv`.",
    "wrong": "```csv\nF_max [N]\n1480\n```",
    "right": "```csv pulls\nF_max [N]\n1480\n```",
    "hint": "Write ```csv pulls | what it is | where it is from."
  },
  {
    "code": "csv-bad-name",
    "area": "notebook",
    "severity": "fault",
    "message": "`{name}` cannot be the name of data: a name is letters, digits and `_`, and begins with no digit.",
    "text": "The working calls data by this name, so it is written like any other name. What else there is to say belongs in the note.",
    "wrong": "```csv pull tests\nF_max [N]\n1480\n```",
    "right": "```csv pull_tests | axial\nF_max [N]\n1480\n```",
    "hint": "Put a bar between the name and the note, as in ```csv pulls | axial, dry."
  },
  {
    "code": "csv-fence-columns",
    "area": "notebook",
    "severity": "notice",
    "message": "A csv fence has a name, a note and a reference; `{words}` is one piece too many.",
    "text": "`csv name | note | reference` is all that the opening line holds. The piece is kept in the file and shown nowhere.",
    "wrong": "```csv pulls | axial | test | own\nF_max [N]\n1480\n```",
    "right": "```csv pulls | axial | test own\nF_max [N]\n1480\n```",
    "hint": "Write a bar that belongs to the text as \\|."
  },
  {
    "code": "conflict-mark",
    "area": "notebook",
    "severity": "fault",
    "message": "`{mark}` is the mark of a merge that was not finished.",
    "text": "Version control left both versions of these lines in the file. Both are read, so names in them stand twice.",
    "wrong": "```calc\n<<<<<<< ours\na = 2 mm\n=======\nb = 3 mm\n>>>>>>> theirs\nc = 4 mm\n```",
    "right": "```calc\na = 2 mm\nc = 4 mm\n```",
    "hint": "Keep one of the two versions and take the three marks away."
  },
  {
    "code": "prose-too-long",
    "area": "notebook",
    "severity": "notice",
    "message": "This text has more than 50 000 characters without a blank line; its live values and headings are not read.",
    "text": "Text is read paragraph by paragraph, and the length of one is bounded so that typing stays quick. Most often something was pasted that belongs in a file of its own.",
    "wrong": "",
    "right": "",
    "hint": "Put blank lines between its paragraphs.",
    "shown": "a paragraph longer than a short novel"
  },
  {
    "code": "front-matter-open",
    "area": "notebook",
    "severity": "fault",
    "message": "The title block is not closed: a line of --- is missing after its last line.",
    "text": "Until it is closed, the title block is read as prose.",
    "wrong": "---\ntitle: Bracket\n\n```calc\na = 2 mm\n```",
    "right": "---\ntitle: Bracket\n---\n\n```calc\na = 2 mm\n```",
    "hint": "Put a line of --- after its last line."
  },
  {
    "code": "front-matter-syntax",
    "area": "notebook",
    "severity": "fault",
    "message": "The title block cannot be read here.",
    "text": "The title block is YAML, and what stands here is not. Only this field is left out; the other fields are read.",
    "wrong": "---\ntitle: \"\\q\"\n---",
    "right": "---\ntitle: \"q\"\n---",
    "hint": "A field is `name: text`; put a text with special characters in double quotes."
  },
  {
    "code": "front-matter-line",
    "area": "notebook",
    "severity": "fault",
    "message": "This line of the title block is no field.",
    "text": "Each line of the title block begins with the name of a field and a colon, or goes on with the field above it.",
    "wrong": "---\nBracket of the arm\n---",
    "right": "---\ntitle: Bracket of the arm\n---",
    "hint": "A field is `name: text`."
  },
  {
    "code": "front-matter-colon",
    "area": "notebook",
    "severity": "fault",
    "message": "A second colon on one line makes this a field inside a field.",
    "text": "A colon with a space behind it ends the name of a field. Quotes make it a part of the text.",
    "wrong": "---\ntitle: Bracket: first design\n---",
    "right": "---\ntitle: \"Bracket: first design\"\n---",
    "hint": "Put a text that holds a colon in double quotes."
  },
  {
    "code": "front-matter-tab",
    "area": "notebook",
    "severity": "fault",
    "message": "The title block is indented with a tab.",
    "text": "A tab has no fixed width, so it cannot say what belongs to what. YAML does not allow it there.",
    "wrong": "---\nunits:\n\tlength: mm\n---",
    "right": "---\nunits:\n  length: mm\n---",
    "hint": "Use spaces."
  },
  {
    "code": "front-matter-unclosed",
    "area": "notebook",
    "severity": "fault",
    "message": "A quote or bracket that was opened before this place is not closed.",
    "text": "Without its end nobody can tell what belongs to the text. Look at this line and the ones above it for the first quote or bracket that has no partner.",
    "wrong": "---\ntitle: \"Bracket\n---",
    "right": "---\ntitle: \"Bracket\"\n---",
    "hint": "Close it, or put the whole text in double quotes."
  },
  {
    "code": "front-matter-indent",
    "area": "notebook",
    "severity": "fault",
    "message": "This line of the title block is not indented as the lines it belongs to.",
    "text": "The spaces at the start of a line say what it belongs to. Lines of one group have the same number of them.",
    "wrong": "---\nunits:\n    length: mm\n  force: N\n---",
    "right": "---\nunits:\n    length: mm\n    force: N\n---",
    "hint": "Lines of one list or group begin under each other."
  },
  {
    "code": "front-matter-character",
    "area": "notebook",
    "severity": "fault",
    "message": "A text in the title block cannot begin with {character} as it stands.",
    "text": "YAML keeps some signs for uses of its own, and a bare text cannot begin with one. In double quotes every sign is text.",
    "wrong": "---\nproject: @arm\n---",
    "right": "---\nproject: \"@arm\"\n---",
    "hint": "Put the text in double quotes."
  },
  {
    "code": "front-matter-alias",
    "area": "notebook",
    "severity": "fault",
    "message": "A title block does not refer to other places of itself with `*`.",
    "text": "In YAML a `*` takes over what stands at another place. A title block says each thing where it is read, so that a change at one place changes nothing elsewhere.",
    "wrong": "---\ncreator: &me A. Alder\nchecker: *me\n---",
    "right": "---\ncreator: A. Alder\nchecker: B. Birch\n---",
    "hint": "Write the text again, or put it in double quotes if it begins with `*`."
  },
  {
    "code": "front-matter-deep",
    "area": "notebook",
    "severity": "fault",
    "message": "This field of the title block is too long or nested too deep to be read.",
    "text": "Length and depth are bounded so that every notebook can be read in bounded time. No field of a title block needs that much.",
    "wrong": "---\ntitle: [[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]\n---",
    "right": "---\ntitle: Bracket\n---",
    "hint": "Keep lines under 4000 characters and brackets fewer than 60 deep."
  },
  {
    "code": "front-matter-twice",
    "area": "notebook",
    "severity": "fault",
    "message": "`{key}` stands twice; the first one counts.",
    "text": "Each field is given once. Which of the two is meant cannot be told, so the notebook goes on with the first until one is gone.",
    "wrong": "---\nrevision: A\nrevision: B\n---",
    "right": "---\nrevision: B\n---",
    "hint": "Take one of the two away."
  },
  {
    "code": "front-matter-unknown",
    "area": "notebook",
    "severity": "notice",
    "message": "`{key}` is no field of the title block; it is kept and does nothing.",
    "text": "Most often the name of a field is mistyped. A field of your own may stay: it is kept in the file and not shown.",
    "wrong": "---\ntitel: Bracket\n---",
    "right": "---\ntitle: Bracket\n---",
    "hint": "Did you mean `{near}`?"
  },
  {
    "code": "front-matter-not-text",
    "area": "notebook",
    "severity": "fault",
    "message": "`{key}` is one text, not a list or a group of fields.",
    "text": "The field is printed as one text in the title block. Write several names with commas between them.",
    "wrong": "---\ncreator: [A. Alder, B. Birch]\n---",
    "right": "---\ncreator: A. Alder, B. Birch\n---"
  },
  {
    "code": "front-matter-digits",
    "area": "notebook",
    "severity": "fault",
    "message": "`digits: {text}` is not a whole number from 1 to 15.",
    "text": "Digits are the significant digits shown. Values are always kept in full.",
    "wrong": "---\ndigits: 0.5\n---",
    "right": "---\ndigits: 4\n---"
  },
  {
    "code": "front-matter-status",
    "area": "notebook",
    "severity": "notice",
    "message": "`{text}` is no status of a notebook; choose one of {known}.",
    "text": "The status says how far a notebook may be relied on, so the words for it are fixed. Choose one of them.",
    "wrong": "---\nstatus: in preperation\n---",
    "right": "---\nstatus: in preparation\n---"
  },
  {
    "code": "front-matter-date",
    "area": "notebook",
    "severity": "notice",
    "message": "The date `{text}` is not written year-month-day.",
    "text": "Day and month in other orders are read differently from one country to the next.",
    "wrong": "---\ndate: 10/06/2025\n---",
    "right": "---\ndate: 2025-06-10\n---",
    "hint": "Write it like 2026-02-28."
  },
  {
    "code": "front-matter-currency",
    "area": "notebook",
    "severity": "fault",
    "message": "`currency: {text}` is not the code of a currency.",
    "text": "Amounts of money are told apart by the three letters of ISO 4217. A name or a sign such as $ may mean more than one currency.",
    "wrong": "---\ncurrency: euro\n---",
    "right": "---\ncurrency: EUR\n---",
    "hint": "A code is three capital letters, like EUR."
  },
  {
    "code": "front-matter-units",
    "area": "notebook",
    "severity": "fault",
    "message": "`units` names a quantity and its unit each, like `length: mm`.",
    "text": "The map says in which unit each quantity is shown. A unit alone does not say for which quantity it is meant.",
    "wrong": "---\nunits: mm\n---",
    "right": "---\nunits: { length: mm }\n---"
  },
  {
    "code": "references-not-list",
    "area": "notebook",
    "severity": "fault",
    "message": "`references` is a list, each entry beginning with `-`.",
    "text": "A notebook may cite many sources, so they are always a list, even where there is one only.",
    "wrong": "---\nreferences: ISO 965-1\n---",
    "right": "---\nreferences:\n  - { id: iso965, number: \"ISO 965-1\" }\n---"
  },
  {
    "code": "reference-no-id",
    "area": "notebook",
    "severity": "fault",
    "message": "This reference has no `id`, so no line can cite it.",
    "text": "The reference column of a statement cites a source as `@id`. Without one the source is listed and never cited.",
    "wrong": "---\nreferences:\n  - { number: \"ISO 965-1\" }\n---",
    "right": "---\nreferences:\n  - { id: iso965, number: \"ISO 965-1\" }\n---",
    "hint": "Give it a short one, like `id: iso965`."
  },
  {
    "code": "reference-twice",
    "area": "notebook",
    "severity": "fault",
    "message": "Two references have the id `{key}`; the first one counts.",
    "text": "An id leads to one source. With two of them a reader could not tell which one is meant.",
    "wrong": "---\nreferences:\n  - { id: log, title: \"First log\" }\n  - { id: log, title: \"Second log\" }\n---",
    "right": "---\nreferences:\n  - { id: log1, title: \"First log\" }\n  - { id: log2, title: \"Second log\" }\n---",
    "hint": "Give one of them another id."
  },
  {
    "code": "reference-unknown",
    "area": "notebook",
    "severity": "notice",
    "message": "No reference has the id `{key}`.",
    "text": "The ids are those of `references` in the title block and of the library's sources.",
    "wrong": "---\nreferences:\n  - { id: log7, title: \"Load log\" }\n---\n\n```calc\nW = 42 N | weight of the gripper | @log8 table 2\n```",
    "right": "---\nreferences:\n  - { id: log7, title: \"Load log\" }\n---\n\n```calc\nW = 42 N | weight of the gripper | @log7 table 2\n```",
    "hint": "Did you mean `@{near}`?"
  },
  {
    "code": "csv-empty",
    "area": "notebook",
    "severity": "fault",
    "message": "There is no data here, not even a line of heads.",
    "text": "The first line names the columns, and each line below it is a row. Paste the data, or take the fence out.",
    "wrong": "```csv pulls\n```",
    "right": "```csv pulls\nF_max [N]\n1480\n```"
  },
  {
    "code": "csv-no-head",
    "area": "notebook",
    "severity": "fault",
    "message": "Column {column} has no head.",
    "text": "A column is called by its head, so one without a head cannot be used. Take the separator away if no column was meant.",
    "wrong": "```csv pulls\nspecimen;\nA1;1480\n```",
    "right": "```csv pulls\nspecimen;F_max [N]\nA1;1480\n```",
    "hint": "Name it in the first line."
  },
  {
    "code": "csv-head-twice",
    "area": "notebook",
    "severity": "fault",
    "message": "Two columns are called `{column}`.",
    "text": "A column is called by its head, so each head stands once. Give one of the two another name.",
    "wrong": "```csv pulls\nF [N];F [N]\n1480;1390\n```",
    "right": "```csv pulls\nF_max [N];F_first [N]\n1480;1390\n```"
  },
  {
    "code": "csv-no-unit",
    "area": "notebook",
    "severity": "fault",
    "message": "The brackets behind `{column}` are empty.",
    "text": "Empty brackets may mean a bare number or a unit that was forgotten. Nothing is guessed.",
    "wrong": "```csv pulls\nF_max []\n1480\n```",
    "right": "```csv pulls\nF_max [N]\n1480\n```",
    "hint": "Write the unit, `[1]` for a bare number, or no brackets for text."
  },
  {
    "code": "csv-not-number",
    "area": "notebook",
    "severity": "fault",
    "message": "Row {row} of `{column}`: `{text}` is not a number.",
    "text": "The head has a unit, so every cell is a number or empty. Nothing is skipped or read as zero.",
    "wrong": "```csv pulls\nspecimen;F_max [N]\nA1;1480\nA2;n/a\n```",
    "right": "```csv pulls\nspecimen;F_max [N]\nA1;1480\nA2;\n```",
    "hint": "Leave the cell empty where a value is missing; a head without unit makes the column text."
  },
  {
    "code": "csv-more-not-numbers",
    "area": "notebook",
    "severity": "fault",
    "message": "{count} cells of `{column}` are not numbers; the first {shown} are marked.",
    "text": "Not every cell is marked, so that one wrong unit in a head does not bury the other faults. Most often such a column is text.",
    "wrong": "```csv pulls\nF_max [N]\na\nb\nc\nd\ne\nf\ng\nh\ni\nj\nk\n```",
    "right": "```csv pulls\nF_max\na\nb\nc\nd\ne\nf\ng\nh\ni\nj\nk\n```",
    "hint": "A head without unit makes the column text."
  },
  {
    "code": "csv-numbers-as-text",
    "area": "notebook",
    "severity": "notice",
    "message": "`{column}` holds numbers, but its head names no unit, so they are text.",
    "text": "A column without a unit is text, and text cannot be calculated with. Leave it so if the numbers are designations.",
    "wrong": "```csv pulls\nF_max\n1480.5\n1390.2\n```",
    "right": "```csv pulls\nF_max [N]\n1480.5\n1390.2\n```",
    "hint": "Write the unit behind the head, like `{column} [mm]`, or `[1]` for bare numbers."
  },
  {
    "code": "csv-decimal-comma",
    "area": "notebook",
    "severity": "notice",
    "message": "Numbers here are read with a decimal comma: `{text}` is {number}.",
    "text": "The numbers of one table are all read in one way, and this notice says in which. Nothing is to be done if the number shown is right.",
    "wrong": "```csv pulls\nF_max [N];d [mm]\n1480,5;4,2\n```",
    "right": "```csv pulls\nF_max [N];d [mm]\n1480.5;4.2\n```",
    "hint": "Write decimal points if that is not meant."
  },
  {
    "code": "csv-comma-unclear",
    "area": "notebook",
    "severity": "fault",
    "message": "`{text}` may be a decimal or thousands; nothing else in the data tells.",
    "text": "1,480 is 1480 to some readers and 1.48 to others. No number with a comma is read until one of them says which it is.",
    "wrong": "```csv pulls\nF_max [N];method\n1,480;tapped\n```",
    "right": "```csv pulls\nF_max [N];method\n1480;tapped\n```",
    "hint": "Write a decimal point, or leave the comma out."
  },
  {
    "code": "csv-ragged",
    "area": "notebook",
    "severity": "fault",
    "message": "Row {row} has {cells} cells, but there are {heads} heads.",
    "text": "In a row with a cell too few or too many a value may stand under the wrong head. Nothing is moved or filled in.",
    "wrong": "```csv pulls\nspecimen;F_max [N];F_first [N]\nA1;1480\n```",
    "right": "```csv pulls\nspecimen;F_max [N];F_first [N]\nA1;1480;\n```",
    "hint": "Leave a missing cell empty between two separators; put a text that holds a separator in double quotes."
  },
  {
    "code": "csv-quotes",
    "area": "notebook",
    "severity": "fault",
    "message": "The double quotes of this row do not pair up.",
    "text": "A quoted cell goes from one double quote to the next, and nothing stands between its end and the separator. Otherwise a separator could be taken for text.",
    "wrong": "```csv pulls\nspecimen;F_max [N]\n\"A\"1;1480\n```",
    "right": "```csv pulls\nspecimen;F_max [N]\n\"A\"\"1\";1480\n```",
    "hint": "Write a quote inside a quoted cell twice."
  },
  {
    "code": "csv-too-large",
    "area": "notebook",
    "severity": "fault",
    "message": "{count} {what} are more than the {limit} that one table may have.",
    "text": "The size of a table is bounded so that a notebook always answers. The rest is not read: take out what is not needed, or make two tables of it.",
    "wrong": "",
    "right": "",
    "shown": "data of more than 100 000 rows or 256 columns"
  },
  {
    "code": "divide-by-zero",
    "area": "run",
    "severity": "fault",
    "message": "Divided by zero: {left} / {right}.",
    "text": "A quotient by zero has no value, and infinity would hide in what follows.",
    "wrong": "```calc\ngap = 5 mm - 5 mm\nq   = 12 N / gap\n```",
    "right": "```calc\ngap = 5 mm - 4 mm\nq   = 12 N / gap\n```",
    "hint": "Say what holds when the divisor is zero, for example with if ... then ... else."
  },
  {
    "code": "too-large",
    "area": "run",
    "severity": "fault",
    "message": "{operation} gives a number that is too large to hold.",
    "text": "A result beyond about 1.8e308 (in SI units) would become infinity.",
    "wrong": "```calc\nx = 1e200\ny = x * x\n```",
    "right": "```calc\nx = 1e100\ny = x * x\n```",
    "hint": "Look for a wrong unit or exponent in what goes in."
  },
  {
    "code": "root-of-negative",
    "area": "run",
    "severity": "fault",
    "message": "{function} of a negative value: {value}.",
    "text": "A root of a negative value is no real number.",
    "wrong": "```calc\na = 3 mm^2 - 4 mm^2\nr = sqrt(a)\n```",
    "right": "```calc\na = 4 mm^2 - 3 mm^2\nr = sqrt(a)\n```",
    "hint": "Check the signs of what stands inside; cbrt takes negative values too."
  },
  {
    "code": "logarithm-outside",
    "area": "run",
    "severity": "fault",
    "message": "{function} takes values above zero, here {value}.",
    "text": "A logarithm of zero or of a negative value is no real number.",
    "wrong": "```calc\nx = 0\ny = ln(x)\n```",
    "right": "```calc\nx = 0.5\ny = ln(x)\n```"
  },
  {
    "code": "arc-outside",
    "area": "run",
    "severity": "fault",
    "message": "{function} takes values from -1 to 1, here {value}.",
    "text": "No angle has such a sine or cosine.",
    "wrong": "```calc\nx = 1.2\ny = asin(x)\n```",
    "right": "```calc\nx = 0.2\ny = asin(x)\n```",
    "hint": "A ratio just beyond 1 is often a length divided by the wrong length."
  },
  {
    "code": "zero-step",
    "area": "run",
    "severity": "fault",
    "message": "{function} to a step of zero: {value}.",
    "text": "There are no multiples of zero to go to, and no remainder of a division by zero.",
    "wrong": "```calc\nd = 0\nn = mod(7, d)\n```",
    "right": "```calc\nd = 3\nn = mod(7, d)\n```"
  },
  {
    "code": "no-direction",
    "area": "run",
    "severity": "fault",
    "message": "{function} of (0, 0): a point without length has no direction.",
    "text": "Any angle would do, so none is given.",
    "wrong": "```calc\ny = 0 N\nx = 0 N\na = atan2(y, x)\n```",
    "right": "```calc\ny = 1 N\nx = 0 N\na = atan2(y, x)\n```"
  },
  {
    "code": "power-of-negative",
    "area": "run",
    "severity": "fault",
    "message": "A negative value to a fractional power: {base} to the power {exponent}.",
    "text": "A negative value has no real power with a fractional exponent.",
    "wrong": "```calc\nx = -8\ny = x^(1/3)\n```",
    "right": "```calc\nx = -8\ny = cbrt(x)\n```",
    "hint": "For a cube root of a negative value write cbrt(x)."
  },
  {
    "code": "power-of-zero",
    "area": "run",
    "severity": "fault",
    "message": "Zero to a negative power: {base} to the power {exponent}.",
    "text": "It is a division by zero.",
    "wrong": "```calc\nx = 0\ny = x^-2\n```",
    "right": "```calc\nx = 2\ny = x^-2\n```"
  },
  {
    "code": "list-empty",
    "area": "run",
    "severity": "fault",
    "message": "{function} of an empty list.",
    "text": "An empty list has no mean, no largest item and no first one; a sum of nothing is most often a filter that took everything away.",
    "wrong": "```calc\nxs = [x for x in [1, 2, 3] where x > 5]\nm  = mean(xs)\n```",
    "right": "```calc\nxs = [x for x in [1, 2, 3] where x > 1]\nm  = mean(xs)\n```",
    "hint": "Look at what filters the list."
  },
  {
    "code": "nothing-present",
    "area": "run",
    "severity": "fault",
    "message": "{function} of a list of {count} without a single value.",
    "text": "Every cell is empty, so there is nothing to work on.",
    "wrong": "```calc\nt = table {\n  specimen | F [N]\n  \"A1\"     |\n  \"A2\"     |\n}\nm = mean(t.F)\n```",
    "right": "```calc\nt = table {\n  specimen | F [N]\n  \"A1\"     | 1480\n  \"A2\"     |\n}\nm = mean(t.F)\n```"
  },
  {
    "code": "too-few",
    "area": "run",
    "severity": "fault",
    "message": "{function} needs {least} values, here there are {count}.",
    "text": "One value has no spread, and one point makes no line.",
    "wrong": "```calc\nxs = [3 mm]\ns  = deviation(xs)\n```",
    "right": "```calc\nxs = [3 mm, 4 mm]\ns  = deviation(xs)\n```"
  },
  {
    "code": "empty-cell",
    "area": "run",
    "severity": "fault",
    "message": "Item {item} of {count} has no value.",
    "text": "A missing value is never taken for zero.",
    "wrong": "```calc\nt = table {\n  specimen | F [N]\n  \"A1\"     | 1480\n  \"A2\"     |\n}\ns = sum(t.F)\n```",
    "right": "```calc\nt = table {\n  specimen | F [N]\n  \"A1\"     | 1480\n  \"A2\"     |\n}\ns = sum(present(t.F))\n```",
    "hint": "Work on present(...) where leaving such items out is right."
  },
  {
    "code": "index-outside",
    "area": "run",
    "severity": "fault",
    "message": "Item {index} of a list of {count}.",
    "text": "Items count from 1 to the length of the list.",
    "wrong": "```calc\nxs = [1 mm, 2 mm]\nx  = xs[3]\n```",
    "right": "```calc\nxs = [1 mm, 2 mm]\nx  = xs[2]\n```",
    "hint": "Items count from 1."
  },
  {
    "code": "index-not-whole",
    "area": "run",
    "severity": "fault",
    "message": "Items have whole numbers, here {index}.",
    "text": "There is no item between two others.",
    "wrong": "```calc\nxs = [1 mm, 2 mm]\nx  = xs[1.5]\n```",
    "right": "```calc\nxs = [1 mm, 2 mm]\nx  = xs[1]\n```"
  },
  {
    "code": "lengths-differ",
    "area": "run",
    "severity": "fault",
    "message": "Lists of {first} and {second} items do not go together.",
    "text": "Lists are worked item by item, so each item needs a partner.",
    "wrong": "```calc\na = [1 mm, 2 mm, 3 mm]\nb = [1 mm, 2 mm]\nc = a + b\n```",
    "right": "```calc\na = [1 mm, 2 mm, 3 mm]\nb = [1 mm, 2 mm, 4 mm]\nc = a + b\n```"
  },
  {
    "code": "step-does-not-fit",
    "area": "run",
    "severity": "fault",
    "message": "From {low} to {high} there is no whole number of steps of {step}.",
    "text": "A range ends on its bound; a step that misses it would leave a piece out.",
    "wrong": "```calc\nxs = 6 mm .. 20 mm step 4 mm\n```",
    "right": "```calc\nxs = 6 mm .. 20 mm step 2 mm\n```",
    "hint": "The nearest step that fits is {nearest}."
  },
  {
    "code": "step-of-zero",
    "area": "run",
    "severity": "fault",
    "message": "A range cannot go in steps of {step}.",
    "text": "It would never reach its end.",
    "wrong": "```calc\nh  = 0 mm\nxs = 6 mm .. 20 mm step h\n```",
    "right": "```calc\nh  = 1 mm\nxs = 6 mm .. 20 mm step h\n```"
  },
  {
    "code": "step-wrong-way",
    "area": "run",
    "severity": "fault",
    "message": "Steps of {step} lead away from {high} when they begin at {low}.",
    "text": "The sign of the step must lead from the first bound to the second.",
    "wrong": "```calc\nxs = 20 mm .. 6 mm step 1 mm\n```",
    "right": "```calc\nxs = 20 mm .. 6 mm step -1 mm\n```",
    "hint": "Turn the sign of the step or swap the bounds."
  },
  {
    "code": "count-outside",
    "area": "run",
    "severity": "fault",
    "message": "{function} takes a whole number from {low} to {high}, here {value}.",
    "text": "Only a whole number of things can be counted out.",
    "wrong": "```calc\nd  = 5 mm\nds = independent(d, 2.5)\n```",
    "right": "```calc\nd  = 5 mm\nds = independent(d, 3)\n```"
  },
  {
    "code": "outside-table",
    "area": "run",
    "severity": "fault",
    "message": "{value} lies outside the table, which runs from {low} to {high}.",
    "text": "Beyond its ends a table says nothing; a straight line drawn on would be a guess.",
    "wrong": "```calc\nxs = [0 mm, 1 mm]\nys = [1 N, 2 N]\nF  = interpolate(xs, ys, 1.5 mm)\n```",
    "right": "```calc\nxs = [0 mm, 1 mm]\nys = [1 N, 2 N]\nF  = interpolate(xs, ys, 0.5 mm)\n```"
  },
  {
    "code": "table-unsorted",
    "area": "run",
    "severity": "fault",
    "message": "The table must ascend: item {item}, {value}, stands after {before}.",
    "text": "Between points that do not ascend there is more than one answer, or none.",
    "wrong": "```calc\nxs = [0.1, 0.3, 0.2]\nys = [1, 3, 2]\ny  = interpolate(xs, ys, 0.15)\n```",
    "right": "```calc\nxs = [0.1, 0.2, 0.3]\nys = [1, 2, 3]\ny  = interpolate(xs, ys, 0.15)\n```",
    "hint": "Sort the rows, and look whether one is mistyped."
  },
  {
    "code": "key-missing",
    "area": "run",
    "severity": "fault",
    "message": "{key} is not in the table.",
    "text": "A lookup takes an equal key alone, never the one before or after.",
    "wrong": "```calc\nsizes = [3, 4, 5]\ncores = [2.5 mm, 3.3 mm, 4.2 mm]\nc     = lookup(sizes, cores, 3.5)\n```",
    "right": "```calc\nsizes = [3, 4, 5]\ncores = [2.5 mm, 3.3 mm, 4.2 mm]\nc     = lookup(sizes, cores, 4)\n```",
    "hint": "Near it the table has {nearby}."
  },
  {
    "code": "not-in-list",
    "area": "run",
    "severity": "fault",
    "message": "{function}: {value} is not in the list.",
    "text": "There is no place to give.",
    "wrong": "```calc\nxs = [1, 2, 3]\ni  = index_of(xs, 7)\n```",
    "right": "```calc\nxs = [1, 2, 3]\ni  = index_of(xs, 2)\n```"
  },
  {
    "code": "not-single",
    "area": "run",
    "severity": "fault",
    "message": "One item is wanted, here there are {count}.",
    "text": "Which of them is meant cannot be told.",
    "wrong": "```calc\nxs = [1 mm, 2 mm]\nx  = single(xs)\n```",
    "right": "```calc\nxs = [1 mm]\nx  = single(xs)\n```"
  },
  {
    "code": "requirement-broken",
    "area": "run",
    "severity": "fault",
    "message": "{formula} requires {condition}.",
    "text": "A formula that requires something has no value where that is broken.",
    "wrong": "```calc\nformula slenderness(l: Length, d: Length) = {\n  require d > 0 mm | a rod has a diameter\n  result = l / d\n}\nx = slenderness(20 mm, 0 mm)\n```",
    "right": "```calc\nformula slenderness(l: Length, d: Length) = {\n  require d > 0 mm | a rod has a diameter\n  result = l / d\n}\nx = slenderness(20 mm, 5 mm)\n```",
    "hint": "{reason}."
  },
  {
    "code": "refused",
    "area": "run",
    "severity": "fault",
    "message": "{problem}.",
    "text": "A function of the library could not work with what it was given.",
    "wrong": "",
    "right": "",
    "hint": "{advice}.",
    "shown": "a function of the standard library refuses an argument, for example a thread designation that no standard has"
  },
  {
    "code": "no-finite-result",
    "area": "run",
    "severity": "fault",
    "message": "{function} gave no finite number.",
    "text": "A function of the library must give a number or a reason; this one gave neither.",
    "wrong": "",
    "right": "",
    "shown": "a mistake in a function of the standard library"
  },
  {
    "code": "not-evaluated-yet",
    "area": "run",
    "severity": "notice",
    "message": "{what} is read and checked, but not evaluated yet.",
    "text": "This version keeps studies and the solving of unknowns for later. What depends on it waits.",
    "wrong": "```calc\nL = 8 mm\nF = 3 N/mm * L\nfs = study F over L in 4 mm .. 14 mm step 1 mm\n```",
    "right": "```calc\nL = 8 mm\nF = 3 N/mm * L\nFs = 3 N/mm * (4 mm .. 14 mm step 1 mm)\n```",
    "hint": "Until then write the list out: a formula called with a list gives a list."
  },
  {
    "code": "too-many-steps",
    "area": "run",
    "severity": "fault",
    "message": "Stopped after {limit} steps of work.",
    "text": "Each statement has a budget of work, counted in calls and items, so that a notebook always answers.",
    "wrong": "```calc\nxs = [sum([i * j for j in 1 .. 10000 step 1]) for i in 1 .. 10000 step 1]\n```",
    "right": "```calc\nxs = [sum([i * j for j in 1 .. 100 step 1]) for i in 1 .. 100 step 1]\n```",
    "hint": "Shorten the lists, or take a sum out of the inner loop."
  },
  {
    "code": "list-too-long",
    "area": "run",
    "severity": "fault",
    "message": "A list of {count} items; the limit is {limit}.",
    "text": "Lists are bounded so that a notebook always answers.",
    "wrong": "```calc\nxs = 1 .. 10000000 step 1\n```",
    "right": "```calc\nxs = 1 .. 1000 step 1\n```"
  },
  {
    "code": "too-deep",
    "area": "run",
    "severity": "fault",
    "message": "Formulas call formulas more than {limit} deep, or an expression is nested too far.",
    "text": "The depth is bounded so that a notebook always answers.",
    "wrong": "",
    "right": "",
    "hint": "Split the expression into named lines.",
    "shown": "a chain of more than a hundred formulas that each call the next"
  },
  {
    "code": "in-formula",
    "area": "run",
    "severity": "fault",
    "message": "In {formula}: {message}",
    "text": "The message of a fault inside a formula begins like this. It is shown at the call, with the place inside beside it.",
    "wrong": "",
    "right": "",
    "shown": "never alone: the words before another fault's message"
  },
  {
    "code": "in-formula-step",
    "area": "run",
    "severity": "fault",
    "message": "In {formula}, step {step}: {message}",
    "text": "The message of a fault in a step of a formula begins like this. It is shown at the call, with the place inside beside it.",
    "wrong": "",
    "right": "",
    "shown": "never alone: the words before another fault's message"
  },
  {
    "code": "here-in-formula",
    "area": "run",
    "severity": "fault",
    "message": "Here in {formula}.",
    "text": "Marks the place inside a formula that another fault speaks of.",
    "wrong": "",
    "right": "",
    "shown": "never alone: the note beside another fault"
  },
  {
    "code": "internal",
    "area": "session",
    "severity": "fault",
    "message": "Something went wrong inside Jointwright: {observed}.",
    "text": "A mistake of the program, caught at this statement. Its value is not shown, and no check that needs it passes.",
    "wrong": "",
    "right": "",
    "hint": "The rest of the notebook is not disturbed. Please report it with the line that caused it.",
    "shown": "a mistake of the program itself, never of the notebook"
  },
  {
    "code": "duplicate-name",
    "area": "session",
    "severity": "fault",
    "message": "{name} is already defined above.",
    "text": "Each name is defined once. The first definition stands; the later one is a fault, so that neither silently wins.",
    "wrong": "```calc\nF = 3 kN\nF = 4 kN\n```",
    "right": "```calc\nF_1 = 3 kN\nF_2 = 4 kN\n```",
    "hint": "Give this one another name."
  },
  {
    "code": "loop",
    "area": "session",
    "severity": "fault",
    "message": "These depend on each other in a loop: {loop}.",
    "text": "A value cannot depend on itself. The loop is listed by name; nothing in it is evaluated.",
    "wrong": "```calc\na = b + 1\nb = a - 1\n```",
    "right": "```calc\na = b + 1\nb = 2\n```",
    "hint": "One of them must be given a value of its own."
  },
  {
    "code": "use-missing-file",
    "area": "session",
    "severity": "fault",
    "message": "There is no file {file} beside this notebook.",
    "text": "`use` names a notebook or a csv file, relative to the folder of this notebook. What uses it waits.",
    "wrong": "```calc\nuse \"shop.joint.md\" as shop\n```",
    "right": "```calc\nF = 3 kN\n```",
    "hint": "Did you mean {nearest}?"
  },
  {
    "code": "use-loop",
    "area": "session",
    "severity": "fault",
    "message": "These notebooks use each other in a loop: {loop}.",
    "text": "A notebook that is used must stand without the one that uses it.",
    "wrong": "```calc\nuse \"main.joint.md\" as me\n```",
    "right": "```calc\nF = 3 kN\n```",
    "hint": "Move what both need into a third notebook."
  },
  {
    "code": "not-in-file",
    "area": "session",
    "severity": "fault",
    "message": "{file} defines no {name}.",
    "text": "The name behind a prefix must be defined in that notebook itself. It may have been renamed or taken out there.",
    "wrong": "```calc\nuse \"shop.joint.md\" as shop\nF = shop.F_max\n```\n\n```file shop.joint.md\nF_min = 2 kN\n```",
    "right": "```calc\nuse \"shop.joint.md\" as shop\nF = shop.F_min\n```\n\n```file shop.joint.md\nF_min = 2 kN\n```",
    "hint": "Did you mean {nearest}?"
  },
  {
    "code": "live-waits",
    "area": "session",
    "severity": "notice",
    "message": "{name} has no value yet.",
    "text": "The live value in the text waits for a definition that has a fault or waits itself.",
    "wrong": "```calc\nF = 3 kN + 2 mm\n```\n\nThe force is {F}.",
    "right": "```calc\nF = 3 kN + 2 N\n```\n\nThe force is {F}."
  },
  {
    "code": "waits-for",
    "area": "session",
    "severity": "fault",
    "message": "This waits for {name}, which has no value.",
    "text": "Put the line of that name right first; its faults follow.",
    "wrong": "",
    "right": "",
    "shown": "an expression on the command line uses a name whose own line has a fault"
  },
  {
    "code": "used-as-two-kinds",
    "area": "session",
    "severity": "notice",
    "message": "{name} is used as {kinds}; a product of dimensions can be one of them.",
    "text": "A force times a length is a torque or an energy. The first use decides which; another kind elsewhere is a slip in one of them.",
    "wrong": "```calc\nF = 3 N\nW = F * 2 m\nT: Torque = 5 N*m\na = W + T\nb = W + 3 J\n```",
    "right": "```calc\nF = 3 N\nW: Energy = F * 2 m\nb = W + 3 J\n```",
    "hint": "Give {name} a type, for example {name}: Torque = ..., or define a second name."
  },
  {
    "code": "mark-of-nothing",
    "area": "signoff",
    "severity": "fault",
    "message": "{name} is no result of this notebook.",
    "text": "A checker's mark says that one result was looked at. It needs a line that gives one.",
    "wrong": "",
    "right": "",
    "hint": "A mark stands on a computed value by its name, or on a check by its title; an input is entered a second time instead.",
    "shown": "a mark or a second entry names what the notebook does not have"
  },
  {
    "code": "mark-of-own-work",
    "area": "signoff",
    "severity": "fault",
    "message": "{name} made this calculation and cannot check it.",
    "text": "Creator, checker and approval person are three persons. One who checks his own work finds what he expects.",
    "wrong": "",
    "right": "",
    "hint": "The checker is another person than the creator in the title block.",
    "shown": "the creator of a notebook wants to put a checker's mark on it"
  },
  {
    "code": "mark-without-name",
    "area": "signoff",
    "severity": "fault",
    "message": "A mark needs the name of the person who makes it.",
    "text": "A mark without a name is nobody's.",
    "wrong": "",
    "right": "",
    "shown": "a mark, a second entry or a comment comes without a name"
  },
  {
    "code": "comma-number",
    "area": "syntax",
    "severity": "fault",
    "message": "{text} has a comma between two digits.",
    "text": "The decimal sign is the point. A comma separates items and has a space behind it, so that no digit is ever lost to a misread comma.",
    "wrong": "```calc\nm = 1,5 kg\n```",
    "right": "```calc\nm = 1.5 kg\n```",
    "hint": "Write {meanings}."
  },
  {
    "code": "point-without-digit",
    "area": "syntax",
    "severity": "fault",
    "message": "{text}: a digit stands on both sides of a decimal point.",
    "text": "A lone point is easily overlooked, and it also reads a field or a column.",
    "wrong": "```calc\nk = .5\n```",
    "right": "```calc\nk = 0.5\n```",
    "hint": "Write {meaning}."
  },
  {
    "code": "fraction-with-unit",
    "area": "syntax",
    "severity": "fault",
    "message": "{text} can be read in two ways: a number and its unit are one value, so this divides by {number}.",
    "text": "A number binds to its unit before anything is divided, so a fraction in front of a unit can be read in two ways.",
    "wrong": "```calc\nd = 1/2 in\n```",
    "right": "```calc\nd = 0.5 in\n```",
    "hint": "Write {meaning}."
  },
  {
    "code": "unit-exponent",
    "area": "syntax",
    "severity": "fault",
    "message": "The exponent {text} of a unit is a decimal.",
    "text": "The exponent of a unit is a signed integer, or a fraction in brackets.",
    "wrong": "```calc\nk = 3 MPa m^0.5\n```",
    "right": "```calc\nk = 3 MPa m^(1/2)\n```",
    "hint": "Write {meaning}."
  },
  {
    "code": "unit-slashes",
    "area": "syntax",
    "severity": "fault",
    "message": "The unit {text} has two division signs.",
    "text": "A unit has at most one `/`, followed by one factor or by factors in brackets; what a second `/` divides is read in two ways.",
    "wrong": "```calc\nr = 5 N/mm^2/s\n```",
    "right": "```calc\nr = 5 N/(mm^2 s)\n```",
    "hint": "Write {meaning}."
  },
  {
    "code": "unit-gap",
    "area": "syntax",
    "severity": "fault",
    "message": "{number} and {unit} stand more than one space apart.",
    "text": "Behind two spaces a word is a name, so that a name is never taken for a unit by mistake.",
    "wrong": "```calc\nd = 12  mm\n```",
    "right": "```calc\nd = 12 mm\n```",
    "hint": "A unit stands directly behind its number or one space from it."
  },
  {
    "code": "side-by-side",
    "area": "syntax",
    "severity": "fault",
    "message": "{left} and {right} stand side by side with no operator between them.",
    "text": "Nothing is multiplied by standing next to something: only a number and its unit do that.",
    "wrong": "```calc\nL = 3 mm\nd = 2\nF = d L\n```",
    "right": "```calc\nL = 3 mm\nd = 2\nF = d * L\n```",
    "hint": "A product is written with *."
  },
  {
    "code": "times-letter",
    "area": "syntax",
    "severity": "fault",
    "message": "The letter {letter} is no multiplication sign.",
    "text": "Behind a number a letter is a unit, elsewhere it is a name.",
    "wrong": "```calc\nn = 2 x 3\n```",
    "right": "```calc\nn = 2 * 3\n```",
    "hint": "Write * or ×."
  },
  {
    "code": "percent-only",
    "area": "syntax",
    "severity": "fault",
    "message": "% is percent and nothing else.",
    "text": "`35 %` is 0.35. A sign that could also mean the remainder would give two answers.",
    "wrong": "```calc\nn = 10 % 3\n```",
    "right": "```calc\np = 10 % + 3 %\n```",
    "hint": "The remainder of a division is {example}."
  },
  {
    "code": "foreign-sign",
    "area": "syntax",
    "severity": "fault",
    "message": "{sign} is no sign of this language.",
    "text": "Some signs of other notations are known, so that the right one can be offered.",
    "wrong": "```calc\nd = 8 mm +/- 0.1 mm\n```",
    "right": "```calc\nd = 8 mm ± 0.1 mm\n```",
    "hint": "Write {meaning}."
  },
  {
    "code": "unknown-sign",
    "area": "syntax",
    "severity": "fault",
    "message": "{sign} cannot be read here.",
    "text": "A sign that has no meaning in the working often belongs in a text in quotes or in the note.",
    "wrong": "```calc\nx = 3 ? 4\n```",
    "right": "```calc\nx = 3 | or is it 4\n```",
    "hint": "Notes and references stand behind a bar, remarks behind #."
  },
  {
    "code": "open-text",
    "area": "syntax",
    "severity": "fault",
    "message": "The text {text} has no closing quote.",
    "text": "A text in quotes ends on the line on which it begins.",
    "wrong": "```calc\na = \"tapped\n```",
    "right": "```calc\na = \"tapped\"\n```"
  },
  {
    "code": "bracket-open",
    "area": "syntax",
    "severity": "fault",
    "message": "{open} is not closed.",
    "text": "What stands in brackets may run over several lines, but every bracket that is opened is closed.",
    "wrong": "```calc\nx = (3 + 4\n```",
    "right": "```calc\nx = (3 + 4)\n```",
    "hint": "Close it with {close}."
  },
  {
    "code": "bracket-in-note",
    "area": "syntax",
    "severity": "fault",
    "message": "{open} is not closed: the {close} on its line stands behind a bar and belongs to the note.",
    "text": "Behind the first bar the rest of a line is raw text.",
    "wrong": "```calc\nrecord A { n: Number }\nx = A { n = 1 | note }\n```",
    "right": "```calc\nrecord A { n: Number }\nx = A { n = 1 } | note\n```",
    "hint": "Close it before the bar."
  },
  {
    "code": "bracket-differs",
    "area": "syntax",
    "severity": "fault",
    "message": "{open} is closed by {close}.",
    "text": "Each kind of bracket is closed by its own.",
    "wrong": "```calc\nxs = [1, 2)\n```",
    "right": "```calc\nxs = [1, 2]\n```",
    "hint": "Write {fitting}."
  },
  {
    "code": "bracket-closes-nothing",
    "area": "syntax",
    "severity": "fault",
    "message": "{bracket} closes nothing.",
    "text": "There is no open bracket that it could close.",
    "wrong": "```calc\nx = 3 + 4)\n```",
    "right": "```calc\nx = 3 + 4\n```"
  },
  {
    "code": "columns-early",
    "area": "syntax",
    "severity": "fault",
    "message": "The note stands on a line that is not the last of its statement.",
    "text": "A statement of several lines has its note and reference on its last line. Fields and steps on lines of their own have their own.",
    "wrong": "```calc\nx = 3 | three and four\n  + 4\n```",
    "right": "```calc\nx = 3\n  + 4 | three and four\n```",
    "hint": "Put it on the last line."
  },
  {
    "code": "columns-misplaced",
    "area": "syntax",
    "severity": "fault",
    "message": "No note can stand here.",
    "text": "Notes go with statements, with the fields of a record and with the steps of a formula, each on a line of its own.",
    "wrong": "```calc\nx = match (none) {\n  none: 1 | nothing\n  some v: 2\n}\n```",
    "right": "```calc\nx = match (none) {\n  none: 1 # nothing\n  some v: 2\n}\n```",
    "hint": "Put it behind the statement, or write a remark with #."
  },
  {
    "code": "extra-bar",
    "area": "syntax",
    "severity": "fault",
    "message": "A third bar: behind the working there are the note and the reference, no more.",
    "text": "`working | note | reference`",
    "wrong": "```calc\nx = 3 | a | b | c\n```",
    "right": "```calc\nx = 3 | a \\| b | c\n```",
    "hint": "A bar that belongs to the text is written \\|."
  },
  {
    "code": "double-bar",
    "area": "syntax",
    "severity": "fault",
    "message": "|| reads as \"or\" to some and as an empty note to others.",
    "text": "A condition lost in a note would be a check that no longer checks.",
    "wrong": "```calc\nok = 3 > 4 || 5 > 4\n```",
    "right": "```calc\nok = 3 > 4 or 5 > 4\n```",
    "hint": "Write or, or put a space between the bars."
  },
  {
    "code": "equality-for-definition",
    "area": "syntax",
    "severity": "fault",
    "message": "A definition is written with =.",
    "text": "`name = value` says what a name is.",
    "wrong": "```calc\nx == 3\n```",
    "right": "```calc\nx = 3\n```",
    "hint": "== compares two values."
  },
  {
    "code": "single-equals",
    "area": "syntax",
    "severity": "fault",
    "message": "= does not compare.",
    "text": "`=` defines a name or names an argument, `==` compares.",
    "wrong": "```calc\nx = 3\ncheck x = 3\n```",
    "right": "```calc\nx = 3\ncheck x == 3\n```",
    "hint": "Write ==."
  },
  {
    "code": "as-misplaced",
    "area": "syntax",
    "severity": "fault",
    "message": "`as` does not fit here.",
    "text": "`as` only says in which unit a value is shown.",
    "wrong": "```calc\nx = (3 mm as in) * 2\n```",
    "right": "```calc\nx = 3 mm * 2 as in\n```",
    "hint": "It stands behind the value of a definition, a field, a step or an argument."
  },
  {
    "code": "share-literal",
    "area": "syntax",
    "severity": "fault",
    "message": "A share {sign} ... of ... is a literal such as 5 %.",
    "text": "`8 mm ± 5 % of 8 mm` gives limits as a share of a size.",
    "wrong": "```calc\np = 5 %\nd = 8 mm ± p of 8 mm\n```",
    "right": "```calc\nd = 8 mm ± 5 % of 8 mm\n```"
  },
  {
    "code": "limits-nominal",
    "area": "syntax",
    "severity": "fault",
    "message": "Unequal limits go with a literal, and {nominal} is none.",
    "text": "`8 mm +0.2/-0 mm` is a size with its limits.",
    "wrong": "```calc\nd = 8 mm\nb = d +0.2/-0 mm\n```",
    "right": "```calc\nb = 8 mm +0.2/-0 mm\n```",
    "hint": "Give the limits where the size itself is defined, or put spaces round + and / to calculate."
  },
  {
    "code": "limits-unit",
    "area": "syntax",
    "severity": "fault",
    "message": "In {text} the unit stands twice.",
    "text": "Unequal limits are written `+0.2/-0 mm`.",
    "wrong": "```calc\nb = 8 mm +0.2 mm/-0 mm\n```",
    "right": "```calc\nb = 8 mm +0.2/-0 mm\n```",
    "hint": "Both limits share the unit at the end."
  },
  {
    "code": "step-alone",
    "area": "syntax",
    "severity": "fault",
    "message": "`step` follows a range, and there is none.",
    "text": "A range goes from a first to a last value by equal steps.",
    "wrong": "```calc\nxs = 6 mm step 1 mm\n```",
    "right": "```calc\nxs = 6 mm .. 9 mm step 1 mm\n```",
    "hint": "Write from .. to step by."
  },
  {
    "code": "two-bounds",
    "area": "syntax",
    "severity": "fault",
    "message": "`{word}` wants two bounds.",
    "text": "Both ends are given, and no step.",
    "wrong": "```calc\nx = 3 mm within 2 mm\n```",
    "right": "```calc\nx = 3 mm within 2 mm .. 4 mm\n```",
    "hint": "Write them as lo .. hi."
  },
  {
    "code": "row-cells",
    "area": "syntax",
    "severity": "fault",
    "message": "This row has {cells} cells, the head has {heads}.",
    "text": "Every row of a table has as many cells as its head.",
    "wrong": "```calc\nt = table {\n  F [N] | n [1]\n  12\n}\n```",
    "right": "```calc\nt = table {\n  F [N] | n [1]\n  12 | 3\n}\n```",
    "hint": "An empty cell is written as nothing between two bars."
  },
  {
    "code": "example-form",
    "area": "syntax",
    "severity": "fault",
    "message": "An example compares one call with its answer.",
    "text": "Examples are run with the notebook and listed with the verification.",
    "wrong": "```calc\nformula f(x) = 2 * x\nexample f(3)\n```",
    "right": "```calc\nformula f(x) = 2 * x\nexample f(3) == 6\n```",
    "hint": "Write f(...) == value, with ± tolerance where one is needed."
  },
  {
    "code": "reserved-name",
    "area": "syntax",
    "severity": "fault",
    "message": "{word} is a word of the language and names nothing else here.",
    "text": "Words that build statements and expressions are reserved; as the name of a field they are allowed.",
    "wrong": "```calc\nin = 3\n```",
    "right": "```calc\nin_ = 3\n```",
    "hint": "Another spelling is free, for example {free}."
  },
  {
    "code": "not-a-statement",
    "area": "syntax",
    "severity": "fault",
    "message": "This is no statement: {text}",
    "text": "Each line at column 0 begins a statement. A value gets a name, a condition gets the word `check`.",
    "wrong": "```calc\n3 kN > 2 kN\n```",
    "right": "```calc\ncheck 3 kN > 2 kN\n```",
    "hint": "Write name = ..., check ..., formula ..., record ..., family ..., example ... or use ..."
  },
  {
    "code": "indented-start",
    "area": "syntax",
    "severity": "fault",
    "message": "A statement begins at the left edge.",
    "text": "Where a line begins says whether it is a statement of its own.",
    "wrong": "```calc\n  x = 3\n```",
    "right": "```calc\nx = 3\n```",
    "hint": "Indented lines go on with the statement above them."
  },
  {
    "code": "value-missing",
    "area": "syntax",
    "severity": "fault",
    "message": "A value is missing behind {before}.",
    "text": "An operator, a comma or an opening word wants a value after it.",
    "wrong": "```calc\nx = 3 +\n```",
    "right": "```calc\nx = 3 + 4\n```"
  },
  {
    "code": "ends-early",
    "area": "syntax",
    "severity": "fault",
    "message": "The statement ends too early: {wanted} is missing.",
    "text": "What was begun is not complete.",
    "wrong": "```calc\nx = if 3 > 2 then 1\n```",
    "right": "```calc\nx = if 3 > 2 then 1 else 0\n```"
  },
  {
    "code": "does-not-fit",
    "area": "syntax",
    "severity": "fault",
    "message": "{found} does not fit here.",
    "text": "The statement can be read up to this place and not beyond it.",
    "wrong": "```calc\nx = 3 then 4\n```",
    "right": "```calc\nx = if 3 > 2 then 3 else 4\n```",
    "hint": "Expected {wanted}."
  },
  {
    "code": "too-nested",
    "area": "syntax",
    "severity": "fault",
    "message": "The expression is nested too deep or is too long.",
    "text": "Depth and length are bounded, so that every notebook can be read in bounded time.",
    "wrong": "",
    "right": "",
    "hint": "Split it into named lines.",
    "shown": "more than a hundred brackets inside each other, or more than a thousand operators in a row"
  },
  {
    "code": "unit-unknown",
    "area": "units",
    "severity": "fault",
    "message": "{symbol} is no unit here.",
    "text": "Unit symbols are exact: capital and small letters differ, and nothing is put together from guesses. A unit of yours that is missing can be written by units that are there.",
    "wrong": "```calc\nm = 5 gramm\n```",
    "right": "```calc\nm = 5 gram\n```",
    "hint": "Write {nearest} if that is what you mean."
  },
  {
    "code": "unit-ambiguous",
    "area": "units",
    "severity": "fault",
    "message": "{symbol} is not read as a unit: {advice}.",
    "text": "The symbol has two or more meanings in use. Each of them has a symbol of its own here, so that nobody has to guess.",
    "wrong": "```calc\nh = 12 pt\n```",
    "right": "```calc\nh = 4.2 mm\n```"
  },
  {
    "code": "unit-mass-or-force",
    "area": "units",
    "severity": "fault",
    "message": "{symbol} may be a mass or a force: {advice}.",
    "text": "In workshop language one word serves for both. A mass and a force are different here, and the factor between them is standard gravity.",
    "wrong": "```calc\nF = 5 pounds\n```",
    "right": "```calc\nF = 5 lbf\nm = 5 lb\n```"
  },
  {
    "code": "unit-prefix",
    "area": "units",
    "severity": "fault",
    "message": "{symbol} is no unit here: {advice}.",
    "text": "A prefix is read only where the trade uses it, so that a slip of the finger does not become a factor of a thousand.",
    "wrong": "```calc\ndT = 5 kdegF\n```",
    "right": "```calc\ndT = 5000 degF_diff\n```"
  },
  {
    "code": "unit-twice",
    "area": "units",
    "severity": "fault",
    "message": "{symbol} stands twice in {text}.",
    "text": "A unit is named once: use a power, or leave out what cancels. Most often a second naming is a slip.",
    "wrong": "```calc\nA = 5 mm·mm\n```",
    "right": "```calc\nA = 5 mm^2\n```",
    "hint": "Write {mend}."
  },
  {
    "code": "unit-form",
    "area": "units",
    "severity": "fault",
    "message": "{text} is not written like a unit: {advice}.",
    "text": "A unit is made of symbols with powers, separated by a space or `·`, then at most one `/` followed by one symbol or a bracket.",
    "wrong": "```csv pulls\nT [N.mm]\n3\n```",
    "right": "```csv pulls\nT [N·mm]\n3\n```",
    "hint": "Write {mend}."
  },
  {
    "code": "unit-division",
    "area": "units",
    "severity": "fault",
    "message": "Only one unit or one bracket may follow the / in {text}.",
    "text": "`W/m/K` and `W/m K` are read in two ways by different people, so what stands below the line goes into a bracket.",
    "wrong": "```calc\nk: [W/m/K] = 0.2 W/(m·K)\n```",
    "right": "```calc\nk: [W/(m·K)] = 0.2 W/(m·K)\n```",
    "hint": "Write {mend}."
  },
  {
    "code": "unit-leading-one",
    "area": "units",
    "severity": "fault",
    "message": "A unit behind a number may not start with 1.",
    "text": "Behind a number `1/K` would look like a division by a name of yours. Write the power: `23e-6 K^-1`.",
    "wrong": "",
    "right": "",
    "hint": "Write {mend}.",
    "shown": "a unit text such as 1/K directly behind a number; in `as`, types and table heads it is allowed"
  },
  {
    "code": "unit-point",
    "area": "units",
    "severity": "fault",
    "message": "{symbol} is a point on the temperature scale, so it stands alone.",
    "text": "A product with a point has no meaning: 20 °C is not twice 10 °C. Per degree means per difference: `K`, or `degF_diff`.",
    "wrong": "```calc\nalpha = 80 um/(m·degC)\n```",
    "right": "```calc\nalpha = 80 um/(m·K)\n```",
    "hint": "Write {nearest} for a difference of temperatures."
  },
  {
    "code": "unit-power",
    "area": "units",
    "severity": "fault",
    "message": "{symbol} is no exponent of a unit: write a whole number, or a fraction in brackets, directly behind ^.",
    "text": "`mm^2`, `s^-1`, `m^(1/2)`, or the raised digits `mm²`. Zero and exponents beyond 20 are refused.",
    "wrong": "```calc\nA = 5 mm2\n```",
    "right": "```calc\nA = 5 mm^2\n```",
    "hint": "Write {mend}."
  },
  {
    "code": "preference-quantity",
    "area": "units",
    "severity": "fault",
    "message": "{key} in the `units` of the title block is no quantity.",
    "text": "The `units` map names quantities: length, force, stress, torque, mass, time, temperature, angle, and every other quantity that may be a type.",
    "wrong": "---\nunits: { lenght: mm }\n---",
    "right": "---\nunits: { length: mm }\n---",
    "hint": "Write {nearest} if that is what you mean."
  },
  {
    "code": "preference-dimension",
    "area": "units",
    "severity": "fault",
    "message": "{text} is a unit of {found}, not of {wanted}, so it cannot be the unit for {key}.",
    "text": "The unit for a quantity must measure that quantity.",
    "wrong": "---\nunits: { force: mm }\n---",
    "right": "---\nunits: { force: kN }\n---"
  }
];
