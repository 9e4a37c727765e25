// The door of engine/life: what becomes of a calculation after its release.

export { type Branch, branchOf, type Found } from "./branch.ts";
export { type Impact, type ImpactRow, impactOf } from "./impact.ts";
export { type Candidate, type Observed, REPRODUCES, reproduce } from "./reproduce.ts";
