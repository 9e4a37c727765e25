// The statement that an output's id or a name of a file means.

import { normalName } from "../syntax/index.ts";
import { fullName } from "./engine-state.ts";
import type { SessionState } from "./session.ts";
import type { Statement } from "./statement.ts";

export function statementOf(state: SessionState, file: string, id: string): Statement | undefined {
  for (const key of [fullName(file, id), fullName(file, normalName(id))]) {
    const statement = state.engine.byKey.get(key);
    if (statement !== undefined) return statement;
  }
  return undefined;
}
