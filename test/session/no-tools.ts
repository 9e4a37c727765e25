// Tools of a session that have no answer to anything.

import type { Session } from "../../engine/session/index.ts";

/** For sessions made by hand whose callers are tried without them. */
export const noTools: Session["tools"] = {
  setSystem: () => {},
  unitChoices: () => undefined,
  sensitivities: () => ({ list: [] }),
  readers: () => [],
  nameAt: () => undefined,
  definitionOf: () => undefined,
  moduleText: () => "",
  library: () => ({ listings: [] }),
  quantityOfUnit: () => "",
  libraryCard: () => undefined,
  fitting: () => ({ wanted: "", offers: [] }),
  callOf: () => undefined,
  citations: () => [],
  review: () => [],
  rename: () => ({ ok: false, why: "unknown" }),
};
