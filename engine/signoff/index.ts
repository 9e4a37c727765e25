// The door of engine/signoff: who checked what and how, what a status demands. Nothing here claims approval.

export { statuses } from "../notebook/index.ts";
export { type Added, addComment, addEntry, addMark } from "./add-row.ts";
export { type Demand, type DemandKind, demandsOf } from "./demands.ts";
export {
  type Comment,
  type Entry,
  type Mark,
  type MarkState,
  type Method,
  methods,
  type ResultState,
  readSignoff,
  type Signoff,
} from "./read-signoff.ts";
export { samePerson } from "./roles.ts";
