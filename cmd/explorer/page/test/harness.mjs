// What the tests of the page share: a browser without a network, the page opened as a file,
// and the command line beside it. The Go test that runs them says where everything lies.

import { execFileSync } from "node:child_process";
import { createRequire } from "node:module";
import { mkdtempSync, readFileSync, cpSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { after } from "node:test";

export const { SCALEPAIR_PAGES: pages, SCALEPAIR_PROGRAM: program, SCALEPAIR_ROOT: root, SCALEPAIR_CHROMIUM: chromium } = process.env;
export const require = createRequire(join(root, ".ci/oracle/"));
const playwright = require("playwright-core");

/** @type {Promise<import("playwright-core").Browser> | undefined} */
let browser;
// Tests open a page each: what would make its engine faster later is left out, since it takes longer than it saves.
const args = ["--no-sandbox", ...(process.env.NODE_TEST_CONTEXT ? ["--js-flags=--liftoff-only"] : [])];
export const chromiumBrowser = () => (browser ??= playwright.chromium.launch({ executablePath: chromium, args }));

if (process.env.NODE_TEST_CONTEXT) after(async () => (await browser)?.close());

/** The builds that have a page of their own: the first state that was built in. */
export const builds = ["demo", "eight_inch", "bass_five", "reverse", "hostile"];

/** The folder of a build's files. */
export const folderOf = (build) => resolve(pages, build);

/** A text of a build: "build.toml" or "readings.csv". */
export const textOf = (build, file) => readFileSync(join(pages, build, file), "utf8");

/**
 * Opens the page of a build from its file, with no network. The test fails where the page asks
 * for anything, or where its console says so much as a warning.
 *
 * @param {import("node:test").TestContext} t
 * @param {{build?: string, width?: number, height?: number, theme?: "light" | "dark", motion?: "reduce" | "no-preference", touch?: boolean, address?: string, first?: () => void}} [how] first runs before the page's own script
 */
export async function open(t, { build = "demo", width = 1400, height = 900, theme = "light", motion = "no-preference", touch = false, address = "", first = () => {} } = {}) {
  const context = await (await chromiumBrowser()).newContext({
    viewport: { width, height }, colorScheme: theme, reducedMotion: motion, hasTouch: touch, offline: true, acceptDownloads: true,
  });
  const page = await context.newPage();
  await page.addInitScript(first);
  const complaints = [];
  page.on("console", (message) => ["error", "warning"].includes(message.type()) && complaints.push(message.text()));
  page.on("pageerror", (error) => complaints.push(String(error.stack ?? error)));
  page.on("request", (request) => /^(file|blob|data):/.test(request.url()) || complaints.push("asked for " + request.url()));
  await page.goto("file://" + join(pages, build + ".html") + address);
  await until(page, () => "scalepair" in globalThis);
  t.after(async () => {
    await context.close();
    if (complaints.length) throw new Error("the page complains:\n" + complaints.join("\n"));
  });
  return page;
}

/** Waits until a function holds in the page; the page's policy forbids playwright's own way. */
export async function until(page, holds, argument) {
  for (const end = Date.now() + 20_000; !(await page.evaluate(holds, argument)); await page.waitForTimeout(20))
    if (Date.now() > end) throw new Error("it did not come about: " + holds);
}

/** Asks the engine in the page. */
export const ask = (page, name, request) => page.evaluate(([name, request]) => globalThis.scalepair.quick(name, request, "test"), [name, request]);

/**
 * Runs the command line on a build, in a copy of its folder.
 * @returns {{out: string, folder: string}}
 */
export function command(build, ...args) {
  const folder = mkdtempSync(join(tmpdir(), "scalepair-"));
  cpSync(folderOf(build), folder, { recursive: true });
  let out = "";
  try {
    out = execFileSync(program, args, { cwd: folder, encoding: "utf8", stdio: ["ignore", "pipe", "ignore"] });
  } catch (error) {
    out = error.stdout; // check ends with 1 where marks are off
  }
  return { out, folder };
}

/** The JSON of a command. */
export const json = (build, ...args) => JSON.parse(command(build, ...args, "--format", "json").out);
