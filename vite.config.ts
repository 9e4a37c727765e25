// How the page is built: editor/ into dist/, with nothing inline, so that a strict content security policy holds.

import { fileURLToPath } from "node:url";
import { defineConfig } from "vite";
import { offline } from "./editor/offline/build.mjs";

export default defineConfig({
  root: fileURLToPath(new URL("editor/", import.meta.url)),
  base: "/",
  publicDir: false,
  plugins: [offline()],
  build: {
    outDir: fileURLToPath(new URL("dist/", import.meta.url)),
    emptyOutDir: true,
    target: "es2023",
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 2000,
  },
  worker: { format: "es" },
});
