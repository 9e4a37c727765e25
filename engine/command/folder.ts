// Opens notebooks with what stands beside them, so that `use` and csv files resolve.

import type { Session } from "../session/index.ts";
import { UsageFault } from "./arguments.ts";
import type { World } from "./world.ts";

export interface Opened {
  readonly session: Session;
  /** The file's name in the session. */
  readonly file: string;
  /** As the user named it. */
  readonly path: string;
}

export const STANDARD_INPUT = "-";
const INPUT_NAME = "standard-input.joint.md";
const BESIDE = /\.(joint\.md|csv)$/i;

/** Throws UsageFault with the system's words. */
function read(path: string, world: World): string {
  try {
    return world.readFile(path);
  } catch (fault) {
    throw new UsageFault(`Cannot read ${path}: ${fault instanceof Error ? fault.message : String(fault)}`);
  }
}

function putFolder(folder: string, session: Session, world: World): void {
  for (const name of world.listFolder(folder)) {
    if (!BESIDE.test(name)) continue;
    try {
      session.put(name, world.readFile(world.join(folder, name)));
    } catch {
      // A file that cannot be read counts as missing where a notebook uses it; one that none uses is no matter.
    }
  }
}

/** Opens notebooks one after the other; those of one folder share a session, so that what they use is read once. */
export class Opener {
  private readonly sessions = new Map<string, Session>();
  private readonly world: World;

  constructor(world: World) {
    this.world = world;
  }

  open(path: string): Opened {
    const { world } = this;
    const fromInput = path === STANDARD_INPUT;
    const text = fromInput ? world.readStandardInput() : read(path, world);
    const folder = fromInput ? "." : world.folderOf(path);
    let session = this.sessions.get(folder);
    if (session === undefined) {
      session = world.createSession();
      putFolder(folder, session, world);
      this.sessions.set(folder, session);
    }
    const file = fromInput ? INPUT_NAME : world.nameOf(path);
    // Read on its own as well: a notebook may be named anything.
    if (!session.files().includes(file) || session.text(file) !== text) session.put(file, text);
    return { session, file, path: fromInput ? "standard input" : path };
  }
}
