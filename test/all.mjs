// `npm test`: sets up what is missing, then types, lint, catalogue, unit and property tests, page build, browser tests.

import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { delimiter, join } from "node:path";
import { build, install, requireNode, root, run } from "../editor/start.mjs";
import { findBrowser } from "./browser/find-browser.mjs";

const STEP_LIMIT = 9 * 60_000;

const NO_BROWSER = `No Chromium or Chrome was found, and the browser tests need one. Install it
  on Debian or Ubuntu:  sudo apt-get install chromium
  elsewhere:            from your system's package manager or the browser's own site
or name one:            JOINTWRIGHT_BROWSER=/path/to/chrome npm test`;

/** @param {string} program */
const onPath = (program) => (process.env.PATH ?? "").split(delimiter).some((folder) => existsSync(join(folder, program)));

/** Debian's root can fetch what the tests want: a browser, GNU units to hold the unit table against, two readers of PDF. */
async function installSystemPackages() {
  const missing = [];
  if (findBrowser() === undefined) missing.push("chromium");
  if (!onPath("units")) missing.push("units");
  if (!onPath("pdftotext")) missing.push("poppler-utils");
  if (!onPath("qpdf")) missing.push("qpdf");
  const debianRoot = existsSync("/etc/debian_version") && process.getuid?.() === 0;
  if (missing.length === 0 || !debianRoot) return;
  console.log(`Installing ${missing.join(", ")} ...`);
  const env = { DEBIAN_FRONTEND: "noninteractive" };
  await run("apt-get", ["update", "-qq"], { env });
  await run("apt-get", ["install", "-y", "-qq", "--no-install-recommends", ...missing], { env });
}

/**
 * The runner's report, as far as it is read here.
 * @typedef {{ status: string, assertionResults: { status: string }[] }} FileResult
 * @typedef {{ numPassedTests: number, numFailedTests: number, numPendingTests: number, numTodoTests: number, testResults: FileResult[] }} Report
 */

class Tally {
  passed = 0;
  failed = 0;
  skipped = 0;

  /**
   * Adds a run. A file that could not even be read counts as one failure, and so does a run that ended badly with none.
   * @param {string} file the runner's report @param {number} code its exit code
   */
  add(file, code) {
    if (!existsSync(file)) {
      this.failed += 1;
      return;
    }
    const report = /** @type {Report} */ (JSON.parse(readFileSync(file, "utf8")));
    const unread = report.testResults.filter(
      ({ status, assertionResults }) => status === "failed" && !assertionResults.some((one) => one.status === "failed"),
    );
    const failed = report.numFailedTests + unread.length;
    this.passed += report.numPassedTests;
    this.failed += failed === 0 && code !== 0 ? 1 : failed;
    this.skipped += report.numPendingTests + report.numTodoTests;
  }
}

/** @param {string} name */
const tool = (name) => join(root, "node_modules", ...name.split("/"));

const STALE = `
import { readFileSync } from "node:fs";
import { generate, readCatalogue } from "./engine/diagnostics/generate.ts";
const stale = Object.entries(generate(readCatalogue())).filter(([name, text]) => readFileSync("engine/diagnostics/" + name, "utf8") !== text);
for (const [name] of stale) console.error("engine/diagnostics/" + name + " is stale: run npm run catalogue");
process.exit(stale.length);
`;

async function main() {
  requireNode();
  await install();
  await installSystemPackages();
  const browser = findBrowser();
  if (browser === undefined) console.error(NO_BROWSER);
  const tally = new Tally();
  const reports = mkdtempSync(join(tmpdir(), "jointwright-"));

  /** @param {string} title @param {() => Promise<number>} work @param {string} [report] */
  const step = async (title, work, report) => {
    console.log(`\n== ${title}`);
    const code = await work();
    if (report !== undefined) tally.add(report, code);
    else if (code !== 0) tally.failed += 1;
    if (code !== 0) console.error(`${title}: failed`);
    return code === 0;
  };
  /** @param {readonly string[]} args @param {Record<string, string>} [env] */
  const node = (args, env = {}) => run(process.execPath, args, { milliseconds: STEP_LIMIT, env });
  /** @param {string} name @param {readonly string[]} args @param {Record<string, string>} [env] */
  const vitest = (name, args, env) => {
    const report = join(reports, `${name}.json`);
    const reporters = ["--reporter=default", "--reporter=json", `--outputFile.json=${report}`];
    return step(name, () => node([tool("vitest/vitest.mjs"), "run", ...args, ...reporters], env), report);
  };

  await step("types", () => node([tool("typescript/bin/tsc"), "--noEmit"]));
  await step("lint and format", () => node([tool("@biomejs/biome/bin/biome"), "check", "."]));
  await step("catalogue is fresh", () => node(["--import", "tsx", "--input-type=module", "--eval", STALE]));
  await vitest("unit and property tests", []);
  const built = await step("page build", () =>
    build().then(
      () => 0,
      (fault) => {
        console.error(String(fault));
        return 1;
      },
    ),
  );
  if (browser === undefined) tally.failed += 1;
  else if (built) await vitest("browser tests", ["--config", "test/browser/vitest.config.ts"], { JOINTWRIGHT_BROWSER: browser });

  rmSync(reports, { recursive: true, force: true });
  if (browser === undefined) console.error(`\n${NO_BROWSER}`);
  console.log(`\n${tally.passed} passed, ${tally.failed} failed, ${tally.skipped} skipped`);
  // A run that executed nothing has shown nothing.
  if (tally.failed > 0 || tally.passed === 0) process.exitCode = 1;
}

main().catch((fault) => {
  console.error(fault instanceof Error ? fault.message : String(fault));
  console.log("\n0 passed, 1 failed, 0 skipped");
  process.exitCode = 1;
});
