// Finds a Chromium or Chrome on this machine; on Debian as root it can be installed.

import { existsSync } from "node:fs";
import { delimiter, join } from "node:path";

const NAMES = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome"];

/** @returns {readonly string[]} the places where installers put it */
function usualPlaces() {
  const env = process.env;
  if (process.platform === "darwin") {
    const bundles = ["Google Chrome.app/Contents/MacOS/Google Chrome", "Chromium.app/Contents/MacOS/Chromium"];
    return ["/Applications", join(env.HOME ?? "/", "Applications")].flatMap((folder) => bundles.map((bundle) => join(folder, bundle)));
  }
  if (process.platform === "win32") {
    const folders = [env.PROGRAMFILES, env["PROGRAMFILES(X86)"], env.LOCALAPPDATA].filter((folder) => folder !== undefined);
    return folders.flatMap((folder) => [
      join(folder, "Google", "Chrome", "Application", "chrome.exe"),
      join(folder, "Chromium", "Application", "chrome.exe"),
    ]);
  }
  return ["/usr/bin", "/usr/local/bin", "/snap/bin"].flatMap((folder) => NAMES.map((name) => join(folder, name)));
}

/** The browser's program: JOINTWRIGHT_BROWSER, else a usual place, else the search path; undefined when there is none. */
export function findBrowser() {
  const wanted = process.env.JOINTWRIGHT_BROWSER;
  if (wanted !== undefined && wanted !== "") {
    if (!existsSync(wanted)) throw new Error(`JOINTWRIGHT_BROWSER names ${wanted}, and there is no such file.`);
    return wanted;
  }
  const onPath = (process.env.PATH ?? "").split(delimiter).flatMap((folder) => NAMES.map((name) => join(folder, name)));
  return [...usualPlaces(), ...onPath].find((file) => existsSync(file));
}
