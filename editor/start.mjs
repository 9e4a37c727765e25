// `npm start`: sets up what is missing, serves the page on this machine, says where, and opens the browser if there is one.

import { spawn } from "node:child_process";
import { realpathSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { serve } from "./serve.mjs";
import { build, dist, install, requireNode } from "./set-up.mjs";

export { CONTENT_SECURITY_POLICY, resolveRequest, serve } from "./serve.mjs";
export { build, dist, install, isInstalled, requireNode, root, run } from "./set-up.mjs";

const PORT = 5317;

const USAGE = `Usage: npm start -- [--port N] [--no-open]

Opens the notebook in the browser, served from this machine to this machine alone.

  --port N    serve on port N, or the next free one (default ${PORT}; 0: any free one)
  --no-open   do not open the browser
  --help      say this
`;

/**
 * @param {readonly string[]} args
 * @returns {{ port: number, open: boolean, help: boolean } | { wrong: string }}
 */
export function readArguments(args) {
  let port = PORT;
  let open = true;
  let help = false;
  const rest = [...args];
  for (let argument = rest.shift(); argument !== undefined; argument = rest.shift()) {
    const [name, attached] = argument.split("=", 2);
    if (name === "--no-open" && attached === undefined) open = false;
    else if ((name === "--help" || name === "-h") && attached === undefined) help = true;
    else if (name === "--port") {
      const text = attached ?? rest.shift();
      if (text === undefined) return { wrong: "--port needs a number, e.g. --port 8080." };
      if (!/^\d{1,5}$/.test(text) || Number(text) > 65535) return { wrong: `--port takes a number from 0 to 65535, not "${text}".` };
      port = Number(text);
    } else return { wrong: `Unknown argument "${argument}".` };
  }
  return { port, open, help };
}

/** Opens the address if there is a browser to open; a machine without one is no fault. @param {string} address */
function openBrowser(address) {
  // Without a screen xdg-open may start a text browser in this very terminal.
  const screen = process.env.DISPLAY !== undefined || process.env.WAYLAND_DISPLAY !== undefined;
  if (process.platform === "linux" && !screen) return;
  /** @type {[string, string[]]} */
  const [program, args] =
    process.platform === "darwin"
      ? ["open", [address]]
      : process.platform === "win32"
        ? ["cmd", ["/c", "start", "", address]]
        : ["xdg-open", [address]];
  try {
    spawn(program, args, { stdio: "ignore", detached: true })
      .on("error", () => {})
      .unref();
  } catch {
    // The address is printed; that is enough.
  }
}

/** @param {readonly string[]} args */
async function main(args) {
  const wanted = readArguments(args);
  if ("wrong" in wanted) {
    console.error(`${wanted.wrong}\n\n${USAGE}`);
    process.exitCode = 2;
    return;
  }
  if (wanted.help) {
    console.log(USAGE);
    return;
  }
  requireNode();
  await install();
  await build();
  const server = await serve({ folder: dist, port: wanted.port });
  if (wanted.port !== 0 && server.port !== wanted.port) console.log(`Port ${wanted.port} is taken.`);
  console.log(`Jointwright is at ${server.address}\nCtrl-C ends it.`);
  const end = () => {
    server.close().then(() => process.exit(0));
  };
  process.once("SIGINT", end);
  process.once("SIGTERM", end);
  if (wanted.open) openBrowser(server.address);
}

const started = process.argv[1];
if (started !== undefined && realpathSync(started) === fileURLToPath(import.meta.url)) {
  main(process.argv.slice(2)).catch((fault) => {
    console.error(fault instanceof Error ? fault.message : String(fault));
    process.exitCode = 1;
  });
}
