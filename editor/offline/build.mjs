// The build's last step: the service worker with the list of all files of the page, the manifest and the icon at fixed names.

import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";

const read = (/** @type {string} */ name) => readFileSync(new URL(name, import.meta.url), "utf8");

/**
 * The service worker's text for a list of files: the version changes whenever a name does, and all names but that of the page
 * carry a digest of what is in the file.
 * @param {readonly string[]} files
 * @param {string} page text of index.html
 */
export function serviceWorker(files, page) {
  const listed = ["/", ...files.filter((name) => name !== "index.html").map((name) => `/${name}`)].sort();
  const version = createHash("sha256").update(JSON.stringify(listed)).update(page).digest("hex").slice(0, 12);
  return `self.offline = ${JSON.stringify({ version, files: listed })};\n${read("./service-worker.js")}`;
}

/** @returns {import("vite").Plugin} */
export function offline() {
  return {
    name: "offline",
    apply: "build",
    generateBundle: {
      order: "post",
      handler(_options, bundle) {
        for (const name of ["manifest.webmanifest", "icon.svg"]) {
          this.emitFile({ type: "asset", fileName: name, source: read(`./${name}`) });
        }
        const files = [...Object.keys(bundle), "manifest.webmanifest", "icon.svg"];
        const page = bundle["index.html"];
        const text = page?.type === "asset" ? String(page.source) : "";
        this.emitFile({ type: "asset", fileName: "offline.js", source: serviceWorker([...new Set(files)], text) });
      },
    },
  };
}
