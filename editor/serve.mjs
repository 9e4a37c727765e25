// The page's server: dist/ on loopback, with headers that let the page run its own code and nothing else.

import { createReadStream, realpathSync, statSync } from "node:fs";
import { createServer } from "node:http";
import { extname, join, sep } from "node:path";

export const HOST = "127.0.0.1";

/** The one Trusted Types policy: it names the address of the page's worker. */
export const TRUSTED_TYPES_POLICY = "jointwright";

export const CONTENT_SECURITY_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "worker-src 'self'",
  "font-src 'self'",
  "connect-src 'self'",
  "img-src 'self' data: blob:",
  "manifest-src 'self'",
  "require-trusted-types-for 'script'",
  `trusted-types ${TRUSTED_TYPES_POLICY}`,
  "frame-ancestors 'none'",
  "base-uri 'none'",
  "form-action 'none'",
].join("; ");

const HEADERS = {
  "Content-Security-Policy": CONTENT_SECURITY_POLICY,
  "X-Content-Type-Options": "nosniff",
  "Referrer-Policy": "no-referrer",
  "Cross-Origin-Opener-Policy": "same-origin",
  "Cross-Origin-Resource-Policy": "same-origin",
  "Cache-Control": "no-cache",
};

/** @type {Readonly<Record<string, string>>} */
const TYPES = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".mjs": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".webmanifest": "application/manifest+json; charset=utf-8",
  ".txt": "text/plain; charset=utf-8",
  ".md": "text/markdown; charset=utf-8",
  ".csv": "text/csv; charset=utf-8",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".ico": "image/x-icon",
  ".woff2": "font/woff2",
  ".wasm": "application/wasm",
};

/**
 * The file that a request's path names, or undefined when there is none inside the folder. Dotted names are never served;
 * a link that leads out of the folder counts as none.
 * @param {string} folder
 * @param {string} target path and query of the request
 */
export function resolveRequest(folder, target) {
  let path;
  try {
    path = decodeURIComponent(/** @type {string} */ (target.split(/[?#]/, 1)[0]));
  } catch {
    return undefined;
  }
  if (!path.startsWith("/") || path.includes("\0") || path.includes("\\")) return undefined;
  const names = path.slice(1).split("/");
  if (names.at(-1) === "") names[names.length - 1] = "index.html";
  if (names.some((name) => name === "" || name.startsWith("."))) return undefined;
  try {
    const home = realpathSync(folder);
    const file = realpathSync(join(home, ...names));
    return file.startsWith(home + sep) && statSync(file).isFile() ? file : undefined;
  } catch {
    return undefined;
  }
}

/**
 * A page elsewhere can point a name of its own at this machine; only requests for a loopback name are answered.
 * @param {string | undefined} host
 */
const isLoopback = (host) => host !== undefined && /^(127\.0\.0\.1|localhost|\[::1\])(:\d+)?$/.test(host);

/**
 * @param {string} folder
 * @param {import("node:http").IncomingMessage} request
 * @param {import("node:http").ServerResponse} response
 */
function answer(folder, request, response) {
  const refuse = (/** @type {number} */ status, /** @type {string} */ words) => {
    response.writeHead(status, { ...HEADERS, "Content-Type": "text/plain; charset=utf-8" });
    response.end(request.method === "HEAD" ? undefined : `${words}\n`);
  };
  if (!isLoopback(request.headers.host)) return refuse(403, "Only for this machine.");
  if (request.method !== "GET" && request.method !== "HEAD") return refuse(405, "Only GET and HEAD.");
  const file = resolveRequest(folder, request.url ?? "/");
  if (file === undefined && request.url === "/favicon.ico") return void response.writeHead(204, HEADERS).end();
  if (file === undefined) return refuse(404, "Not found.");
  const type = TYPES[extname(file)] ?? "application/octet-stream";
  response.writeHead(200, { ...HEADERS, "Content-Type": type, "Content-Length": statSync(file).size });
  if (request.method === "HEAD") return void response.end();
  createReadStream(file)
    .on("error", () => response.destroy())
    .pipe(response);
}

/**
 * Serves a folder on the first free port from `port` on (0: any free one).
 * @param {{ folder: string, port: number, tries?: number }} options
 * @returns {Promise<{ port: number, address: string, close: () => Promise<void> }>}
 */
export async function serve({ folder, port, tries = 50 }) {
  for (let candidate = port; ; candidate += 1) {
    const server = createServer((request, response) => answer(folder, request, response));
    const fault = await new Promise((resolve) => {
      server.once("error", resolve);
      server.listen(candidate, HOST, () => resolve(undefined));
    });
    if (fault !== undefined) {
      const taken = fault.code === "EADDRINUSE" || fault.code === "EACCES";
      if (taken && candidate < port + tries - 1 && candidate < 65535) continue;
      throw taken ? new Error(`No free port from ${port} to ${candidate}. Give another one with --port.`) : fault;
    }
    const bound = server.address();
    const actual = typeof bound === "object" && bound !== null ? bound.port : candidate;
    const close = () =>
      /** @type {Promise<void>} */ (
        new Promise((resolve) => {
          server.close(() => resolve());
          server.closeAllConnections();
        })
      );
    return { port: actual, address: `http://${HOST}:${actual}/`, close };
  }
}
