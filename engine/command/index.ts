// The door of engine/command: the command line over a world of files and streams. main.ts is the program.

export { runCommand } from "./run.ts";
export type { World } from "./world.ts";
