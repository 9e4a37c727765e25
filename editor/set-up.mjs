// Set-up for a fresh machine, in plain Node: installs what the lock file names, builds the page when its sources changed.

import { spawn } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, relative, sep } from "node:path";
import { fileURLToPath } from "node:url";

export const root = fileURLToPath(new URL("..", import.meta.url));
export const dist = join(root, "dist");

const OLDEST_NODE = [20, 19];

/** Throws when this Node is too old for the libraries. */
export function requireNode(version = process.versions.node) {
  const [major = 0, minor = 0] = version.split(".").map(Number);
  const [oldMajor = 0, oldMinor = 0] = OLDEST_NODE;
  if (major > oldMajor || (major === oldMajor && minor >= oldMinor)) return;
  throw new Error(`Jointwright needs Node ${OLDEST_NODE.join(".")} or newer; this is Node ${version}.`);
}

/**
 * Runs a program to its end with its output shown.
 * @param {string} program
 * @param {readonly string[]} args
 * @param {{ env?: Record<string, string>, milliseconds?: number, shell?: boolean }} [options]
 * @returns {Promise<number>} the exit code; 1 when it was ended by a signal or went over its time
 */
export function run(program, args, options = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(program, args, {
      cwd: root,
      stdio: ["ignore", "inherit", "inherit"],
      env: { ...process.env, ...options.env },
      shell: options.shell ?? false,
    });
    const timer = options.milliseconds === undefined ? undefined : setTimeout(() => child.kill("SIGKILL"), options.milliseconds);
    child.on("error", (fault) => {
      clearTimeout(timer);
      reject(fault);
    });
    child.on("close", (code) => {
      clearTimeout(timer);
      resolve(code ?? 1);
    });
  });
}

/** @param {string} file @returns {Record<string, { version?: string, optional?: boolean }>} */
function lockedPackages(file) {
  const { packages = {} } = JSON.parse(readFileSync(file, "utf8"));
  delete packages[""];
  return packages;
}

/**
 * True when node_modules holds what the lock file names. npm leaves its own stamp, a copy of the lock file, as the last
 * step of an install, so an install that was broken off counts as missing. Optional packages are those of other systems.
 */
export function isInstalled(folder = root) {
  const stamp = join(folder, "node_modules", ".package-lock.json");
  if (!existsSync(stamp)) return false;
  const wanted = lockedPackages(join(folder, "package-lock.json"));
  const present = lockedPackages(stamp);
  const complete = Object.entries(wanted).every(([name, { version, optional }]) =>
    present[name] === undefined ? optional === true : present[name].version === version,
  );
  return complete && Object.keys(present).every((name) => wanted[name] !== undefined);
}

export async function install() {
  if (isInstalled()) return;
  console.log("Installing the libraries (npm ci) ...");
  const args = ["ci", "--no-audit", "--no-fund", "--loglevel=error"];
  const npm = process.env.npm_execpath;
  // On Windows npm is a command script, which only a shell can start.
  const code =
    npm?.endsWith("js") === true
      ? await run(process.execPath, [npm, ...args])
      : await run("npm", args, { shell: process.platform === "win32" });
  if (code !== 0) throw new Error("npm ci failed, see above. It needs a connection to the package registry.");
}

const SOURCES = ["editor", "engine", "stdlib", "notebooks"];
const SINGLE_SOURCES = ["package-lock.json", "vite.config.ts", "tsconfig.json"];

/** A digest of every file that the page is made of, with its name. */
function digestOfSources() {
  const hash = createHash("sha256");
  const add = (/** @type {string} */ file) => {
    hash.update(`${relative(root, file).split(sep).join("/")}\0`);
    hash.update(readFileSync(file));
  };
  const walk = (/** @type {string} */ folder) => {
    const entries = readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1));
    for (const entry of entries) {
      if (entry.isDirectory()) walk(join(folder, entry.name));
      else if (entry.isFile()) add(join(folder, entry.name));
    }
  };
  for (const name of SOURCES) if (existsSync(join(root, name))) walk(join(root, name));
  for (const name of SINGLE_SOURCES) add(join(root, name));
  return hash.digest("hex");
}

/** Builds the page into dist/ unless it was built from these very sources. */
export async function build() {
  const stamp = join(dist, ".built");
  const digest = digestOfSources();
  if (existsSync(stamp) && readFileSync(stamp, "utf8") === digest) return;
  console.log("Building the page ...");
  const vite = join(root, "node_modules", "vite", "bin", "vite.js");
  if ((await run(process.execPath, [vite, "build", "--logLevel", "warn"])) !== 0)
    throw new Error("The page could not be built, see above.");
  writeFileSync(stamp, digest);
}
