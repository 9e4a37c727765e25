// Opens the built page in a real Chromium, watches it for faults, and lets a test poll it.

import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";
import { dist, serve } from "../../editor/start.mjs";
import { findBrowser } from "./find-browser.mjs";

const FLAGS = [
  "--headless",
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

const VIOLATION = "content security policy:";

export interface Bench {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly address: string;
  /** Console errors, thrown faults, refused requests and policy violations so far. */
  readonly problems: readonly string[];
  /** Repeats `read` until `good` holds of what it gives; throws with the last value when it does not in time. */
  poll<T>(read: () => Promise<T>, good: (value: T) => boolean, milliseconds?: number): Promise<T>;
  /** A second tab in the same profile, watched alike. */
  newPage(path?: string): Promise<Page>;
  /** Ends the server: from now on the page has no network. */
  stopServer(): Promise<void>;
  /** Closes everything; throws when the page had problems. */
  close(): Promise<void>;
}

export interface OpenOptions {
  /** Path and query below the page's address. */
  readonly path?: string;
  readonly width?: number;
  readonly height?: number;
  /** The folder to serve; when absent the one that JOINTWRIGHT_PAGE names, else the built page. */
  readonly folder?: string;
  /** Problems that a test provokes on purpose. */
  readonly expected?: readonly RegExp[];
}

/** One browser for all tests of a file: each gets a context of its own, which shares nothing with another. */
let shared: Promise<Browser> | undefined;

function launch(): Promise<Browser> {
  const executablePath = findBrowser();
  if (executablePath === undefined) throw new Error("no Chromium or Chrome found; see npm test");
  // A launch without a user data folder gets a fresh profile, removed when the browser closes. It ends with this process.
  shared ??= chromium.launch({ executablePath, headless: true, args: FLAGS });
  return shared;
}

/** For programs that go on after their last page. */
export async function closeBrowser(): Promise<void> {
  await (await shared)?.close();
  shared = undefined;
}

/** Collects what goes wrong in a page from its first script on. */
async function watch(page: Page, problems: string[]): Promise<void> {
  page.on("console", (message) => {
    if (message.type() === "error") problems.push(`${message.text()} ${message.location().url}`);
  });
  page.on("pageerror", (fault) => problems.push(`thrown: ${fault.message}`));
  page.on("response", (response) => {
    if (response.status() >= 400) problems.push(`${response.status()} ${response.url()}`);
  });
  await page.addInitScript((prefix) => {
    document.addEventListener("securitypolicyviolation", (event) => {
      console.error(`${prefix} ${event.effectiveDirective} ${event.blockedURI} ${event.sourceFile}:${event.lineNumber}`);
    });
  }, VIOLATION);
}

/** Polled from outside because the policy forbids what `waitForFunction` does inside the page. */
async function poll<T>(read: () => Promise<T>, good: (value: T) => boolean, milliseconds = 10_000): Promise<T> {
  const end = performance.now() + milliseconds;
  for (;;) {
    const value = await read();
    if (good(value)) return value;
    if (performance.now() > end) throw new Error(`still ${JSON.stringify(value)} after ${milliseconds} ms`);
    await new Promise((resolve) => setTimeout(resolve, 25));
  }
}

/** Serves the page and opens it in a browser with a fresh profile. */
export async function openPage(options: OpenOptions = {}): Promise<Bench> {
  const server = await serve({ folder: options.folder ?? process.env.JOINTWRIGHT_PAGE ?? dist, port: 0 });
  const browser = await launch().catch(async (fault: unknown) => {
    await server.close();
    throw fault;
  });
  const context = await browser.newContext({ viewport: { width: options.width ?? 1280, height: options.height ?? 800 } });
  const problems: string[] = [];
  const newPage = async (path = ""): Promise<Page> => {
    const page = await context.newPage();
    await watch(page, problems);
    await page.goto(server.address + path);
    return page;
  };
  let serving = true;
  const stopServer = async (): Promise<void> => {
    if (serving) await server.close();
    serving = false;
  };
  const close = async (): Promise<void> => {
    await context.close();
    await stopServer();
    const unexpected = problems.filter((problem) => !(options.expected ?? []).some((pattern) => pattern.test(problem)));
    if (unexpected.length > 0) throw new Error(`the page had problems:\n${unexpected.join("\n")}`);
  };
  try {
    return { page: await newPage(options.path ?? ""), context, address: server.address, problems, poll, newPage, stopServer, close };
  } catch (fault) {
    await context.close();
    await server.close();
    throw fault;
  }
}

/** Pastes a text at the caret of the pad, as the clipboard would give it. */
export async function paste(page: Page, text: string): Promise<void> {
  await page.evaluate((given) => {
    const content = document.querySelector(".pad-host")?.shadowRoot?.querySelector(".cm-content");
    const clipboardData = new DataTransfer();
    clipboardData.setData("text/plain", given);
    content?.dispatchEvent(new ClipboardEvent("paste", { clipboardData, bubbles: true, cancelable: true }));
  }, text);
}

/** A new notebook with these lines of working pasted in. */
export async function beginWith(bench: Bench, page: Page, lines: readonly string[]): Promise<void> {
  const shown = (): Promise<string[]> => page.locator(".cm-line").allTextContents();
  await page.keyboard.press("Alt+n");
  await bench.poll(shown, (rows) => rows.join("").trim() === "");
  await bench.poll(
    () => page.evaluate(() => document.querySelector(".pad-host")?.shadowRoot?.activeElement?.classList.contains("cm-content") === true),
    (focused) => focused,
  );
  await paste(page, lines.join("\n"));
}
