// The door of engine/base: ranges, text changes, near misses, small helpers that every room may use.

export { assertNever, broken } from "./broken.ts";
export { nearest } from "./nearest.ts";
export { applyChanges, cover, lineAndColumn, type Range, range, shift, type TextChange } from "./range.ts";
export { sha256, utf8 } from "./sha256.ts";
