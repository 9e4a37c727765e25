// Views read the desk's state through this; a view is drawn again when the state is another object.

import { useEffect, useState } from "preact/hooks";
import type { Desk, DeskState } from "./desk.ts";

export function useDesk(desk: Desk): DeskState {
  const [state, setState] = useState(desk.state());
  useEffect(() => desk.subscribe(() => setState(desk.state())), [desk]);
  return state;
}
