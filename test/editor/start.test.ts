// `npm start`: its arguments, the installed check, and what its server answers and refuses.

import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { request } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { CONTENT_SECURITY_POLICY, isInstalled, readArguments, requireNode, resolveRequest, root, serve } from "../../editor/start.mjs";

const folder = mkdtempSync(join(tmpdir(), "jointwright-start-"));
const page = join(folder, "page");

beforeAll(() => {
  mkdirSync(join(page, "assets"), { recursive: true });
  writeFileSync(join(page, "index.html"), "<!doctype html><title>x</title>");
  writeFileSync(join(page, "assets", "main.js"), "1;");
  writeFileSync(join(page, "assets", "a.woff2"), "w");
  writeFileSync(join(page, ".built"), "stamp");
  writeFileSync(join(folder, "secret.txt"), "secret");
  symlinkSync(join(folder, "secret.txt"), join(page, "link.txt"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly body: string;
}

/** Sends the path as it is; `fetch` would put it in order first. */
function get(port: number, path: string, options: { method?: string; host?: string } = {}): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const headers = options.host === undefined ? {} : { host: options.host };
    request({ host: "127.0.0.1", port, path, method: options.method ?? "GET", headers }, (response) => {
      let body = "";
      response.on("data", (chunk) => (body += chunk));
      response.on("end", () => resolve({ status: response.statusCode ?? 0, headers: response.headers, body }));
    })
      .on("error", reject)
      .end();
  });
}

async function served<T>(work: (port: number) => Promise<T>): Promise<T> {
  const server = await serve({ folder: page, port: 0 });
  try {
    return await work(server.port);
  } finally {
    await server.close();
  }
}

describe("arguments", () => {
  test("none give the default port and a browser", () => expect(readArguments([])).toEqual({ port: 5317, open: true, help: false }));
  test("both spellings of --port", () => {
    expect(readArguments(["--port", "8080", "--no-open"])).toEqual({ port: 8080, open: false, help: false });
    expect(readArguments(["--port=0"])).toMatchObject({ port: 0 });
  });
  test.each([["--port"], ["--port", "x"], ["--port", "65536"], ["--port", "-1"], ["--bogus"], ["8080"], ["--no-open=1"]])(
    "%s %s is refused with words",
    (...args) => expect(readArguments(args)).toHaveProperty("wrong", expect.stringMatching(/\S/)),
  );
  test("a wrong argument ends the program with 2 before anything is set up", () => {
    const { status, stderr } = spawnSync(process.execPath, [join(root, "editor", "start.mjs"), "--bogus"], { encoding: "utf8" });
    expect(status).toBe(2);
    expect(stderr).toMatch(/--bogus[\s\S]*Usage/);
  });
});

describe("set-up", () => {
  const write = (name: string, packages: object) => {
    mkdirSync(join(folder, name, "node_modules"), { recursive: true });
    const lock = { "": {}, "node_modules/a": { version: "1.0.0" }, "node_modules/o": { version: "1.0.0", optional: true } };
    writeFileSync(join(folder, name, "package-lock.json"), JSON.stringify({ packages: lock }));
    writeFileSync(join(folder, name, "node_modules", ".package-lock.json"), JSON.stringify({ packages }));
    return isInstalled(join(folder, name));
  };
  test("a complete install counts, without another system's optional package", () =>
    expect(write("whole", { "node_modules/a": { version: "1.0.0" } })).toBe(true));
  test("an older version does not", () => expect(write("old", { "node_modules/a": { version: "0.9.0" } })).toBe(false));
  test("a package too many does not", () =>
    expect(write("more", { "node_modules/a": { version: "1.0.0" }, "node_modules/b": { version: "1.0.0" } })).toBe(false));
  test("an install that was broken off does not", () => expect(isInstalled(page)).toBe(false));
  test("an old Node is refused in words", () => {
    expect(() => requireNode("18.20.0")).toThrow(/Node 20\.19/);
    expect(() => requireNode("20.18.9")).toThrow();
    expect(() => requireNode("20.19.0")).not.toThrow();
    expect(() => requireNode("24.0.0")).not.toThrow();
  });
});

describe("server", () => {
  test("the page comes with every header of the policy", () =>
    served(async (port) => {
      const { status, headers } = await get(port, "/");
      expect(status).toBe(200);
      expect(headers["content-type"]).toBe("text/html; charset=utf-8");
      expect(headers["content-security-policy"]).toBe(CONTENT_SECURITY_POLICY);
      expect(headers["x-content-type-options"]).toBe("nosniff");
    }));
  test("the policy allows own code alone and nothing inline", () => {
    expect(CONTENT_SECURITY_POLICY).toMatch(/default-src 'none'; script-src 'self'; style-src 'self';/);
    expect(CONTENT_SECURITY_POLICY).toContain("require-trusted-types-for 'script'");
    expect(CONTENT_SECURITY_POLICY).not.toMatch(/unsafe|\*/);
  });
  test.each([
    ["/assets/main.js?v=1", "text/javascript; charset=utf-8"],
    ["/assets/a.woff2", "font/woff2"],
  ])("%s has its type", (path, type) => served(async (port) => expect((await get(port, path)).headers["content-type"]).toBe(type)));
  test.each([
    "/../secret.txt",
    "/%2e%2e/secret.txt",
    "/..%2fsecret.txt",
    "/assets/../../secret.txt",
    "/..%5csecret.txt",
    "/%00",
    "/%",
    "//secret.txt",
    "/.built",
    "/link.txt",
    "/assets",
    "/none.js",
  ])("%s is not found", (path) =>
    served(async (port) => {
      const { status, body, headers } = await get(port, path);
      expect(status).toBe(404);
      expect(body).not.toMatch(/secret|stamp/);
      expect(headers["content-security-policy"]).toBe(CONTENT_SECURITY_POLICY);
    }),
  );
  test("a name inside resolves, so the refusals are not for want of files", () =>
    expect(resolveRequest(page, "/assets/main.js")).toMatch(/main\.js$/));
  test("only GET and HEAD", () => served(async (port) => expect((await get(port, "/", { method: "POST" })).status).toBe(405)));
  test("another host's name is refused", () =>
    served(async (port) => expect((await get(port, "/", { host: "elsewhere.example" })).status).toBe(403)));
  test("a taken port gives the next one", async () => {
    const first = await serve({ folder: page, port: 0 });
    const second = await serve({ folder: page, port: first.port });
    expect(second.port).toBeGreaterThan(first.port);
    await expect(serve({ folder: page, port: first.port, tries: 1 })).rejects.toThrow(/No free port/);
    await Promise.all([first.close(), second.close()]);
  });
});
