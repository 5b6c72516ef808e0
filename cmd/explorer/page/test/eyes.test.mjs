// For hands and eyes: no violations that axe finds at four widths in both themes, nothing
// wider than the page, room for a finger, labels as text.

import assert from "node:assert/strict";
import { mkdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { open, require, textOf, until } from "./harness.mjs";
import { answered, go, kept, rested, shows, type } from "./steps.mjs";

const axe = readFileSync(require.resolve("axe-core/axe.min.js"), "utf8");
const readings = textOf("demo", "readings.csv");
const pictures = process.env.SCALEPAIR_PICTURES; // where pictures are kept, if they are

/** Nothing runs out of the page, no table over its margin, and no words out of their button. */
async function fits(page, width, name) {
  const { wide, over, full } = await page.evaluate(() => ({
    wide: document.documentElement.scrollWidth,
    over: [...document.querySelectorAll("main > section table")].filter((o) => !o.closest(".sideways") && o.getBoundingClientRect().right > o.closest("main > section").getBoundingClientRect().right + 1).map((o) => o.className),
    full: [...document.querySelectorAll("button, .button")].filter((o) => o.scrollWidth > o.clientWidth + 1 && getComputedStyle(o).overflowX === "visible").map((o) => o.textContent),
  }));
  assert.ok(wide <= width, `${name} is wider than ${width}`);
  assert.deepEqual(over, [], `${name}, ${width}: tables run over the margin`);
  assert.deepEqual(full, [], `${name}, ${width}: words run out of their buttons`);
}

/** It fits a narrow page; where pictures are kept, one at two widths in both themes. */
async function seen(page, name) {
  const size = page.viewportSize();
  for (const width of pictures ? [320, 360, 1400] : [320]) {
    await page.setViewportSize({ ...size, width });
    await painted(page);
    await fits(page, width, name);
    if (width === 320) continue;
    mkdirSync(pictures, { recursive: true });
    await page.setViewportSize({ width, height: await page.evaluate(() => (window.scrollTo(0, 0), document.documentElement.scrollHeight)) });
    for (const colorScheme of ["dark", "light"]) {
      await page.emulateMedia({ colorScheme });
      await painted(page);
      await page.screenshot({ path: join(pictures, `${name}_${width}_${colorScheme}.png`) });
    }
  }
  await page.setViewportSize(size);
}

/** Waits until what was asked for is on the screen. */
const painted = (page) => page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done)))));

/** What axe finds wrong: nothing. */
async function accessible(page, name, only = {}) {
  const found = await page.evaluate((only) => globalThis.axe.run(document, { resultTypes: ["violations"], ...only }), only);
  assert.deepEqual(found.violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target).join(", ")}`), [], name);
}

// The themes differ in colours alone, so the dark one is tried by the rules that look at them;
// those of a phone and of a desk are all that there are, so 320 and 800 px are tried by the others.
const colours = ["color-contrast", "link-in-text-block"];
const rules = (width) => ([360, 1400].includes(width) ? { light: {}, dark: { runOnly: colours } } : { light: { rules: Object.fromEntries(colours.map((id) => [id, { enabled: false }])) } });

for (const widths of [[320, 360], [1400, 800]])
  test(`eyes: ${widths.join(" and ")} px, light and dark`, async (t) => {
    const page = await open(t, { width: widths[0], motion: "reduce" });
    await rested(page);
    await page.evaluate(axe);
    for (const width of widths) {
      await page.setViewportSize({ width, height: 900 });
      for (const place of ["strings", "choose", "make"]) {
        await go(page, place);
        await answered(page);
        for (const [colorScheme, only] of Object.entries(rules(width))) {
          await page.emulateMedia({ colorScheme });
          await until(page, (theme) => document.documentElement.dataset.theme === theme, colorScheme);
          await painted(page);
          await accessible(page, `${place}, ${width}, ${colorScheme}`, only);
        }
        await fits(page, width, place);
        if (pictures && width === 1400) await seen(page, place);
      }
    }
  });

/** Before the page's own script: what it asks of the engine waits while a gate is shut. */
function gated() {
  const gates = (globalThis.gates = {});
  for (const speed of ["quick", "slow"]) {
    gates[speed] = { shut: () => (gates[speed].wait = new Promise((open) => (gates[speed].open = open))) };
    gates[speed].shut();
  }
  Object.defineProperty(globalThis, "scalepair", {
    configurable: true,
    set(engine) {
      Object.defineProperty(globalThis, "scalepair", { value: engine });
      for (const [speed, gate] of Object.entries(gates)) {
        const own = engine[speed].bind(engine);
        engine[speed] = async (...call) => (await gate.wait, own(...call));
      }
    },
  });
}

test("eyes: every state, reached by hand", async (t) => {
  const page = await open(t, { first: gated, motion: "reduce" });
  const gate = (speed, does) => page.evaluate(([speed, does]) => void globalThis.gates[speed][does](), [speed, does]);
  const says = (pattern) => until(page, (pattern) => new RegExp(pattern).test(document.querySelector("#words .say").textContent), pattern);
  assert.equal(await page.isVisible("#waiting"), true, "loading");
  assert.equal(await page.getAttribute("#main", "aria-disabled"), "true");
  await seen(page, "state-loading");
  await gate("quick", "open");
  await shows(page, "660.0 mm", "635.0 mm");
  assert.match(await page.textContent(".trying"), /^Working/, "the pair is there while the map waits");
  await seen(page, "state-first-pair");
  await gate("slow", "open");
  await rested(page);
  assert.equal(await page.isVisible(".trying"), false);

  await gate("slow", "shut");
  await page.click('[aria-label^="String 1: heavier"]');
  await until(page, () => document.querySelector("#choose").classList.contains("working"));
  assert.equal(await page.evaluate(() => Number(getComputedStyle(document.querySelector("#each .interval")).opacity) < 0.5), true, "computing: the intervals are old");
  await seen(page, "state-computing");
  assert.match(await page.textContent("#kept"), /not in a file yet/, "unsaved");
  assert.equal(await page.getAttribute("#kept", "class"), "kept");
  await gate("slow", "open");
  await page.click("#undo");
  await rested(page);

  await type(page, page.locator("#bass-length"), "69O");
  await until(page, () => !document.querySelector("#bass-wrong").hidden);
  await seen(page, "state-error");
  await type(page, page.locator("#bass-length"), "710");
  await says("breaks a limit");
  assert.match(await page.textContent("#words button"), /nearest that keeps all/, "dropped");
  await seen(page, "state-dropped");
  await page.click("#words button");
  await says("As good|Feel error");

  await page.click(".limits > summary");
  await type(page, page.locator(".limits .key", { hasText: "nut to fret 1" }).locator("input"), "30 mm");
  await says("No pair keeps every limit");
  assert.equal(await page.isVisible("#notice"), false, "it is said once");
  await seen(page, "state-no-pair-left");
  await page.click(".limits > summary");
  await page.click("#undo");

  const listed = readings.replace(/^(w60,.*\n)+/m, "w60,nickel wound,1.524,0.53,hex,core measured,listed,,,,,,\n");
  await page.setInputFiles("#open", { name: "readings.csv", mimeType: "text/csv", buffer: Buffer.from(listed) });
  await until(page, () => document.querySelector("#each .estimated"));
  await rested(page);
  await seen(page, "state-estimated");
  await go(page, "strings");
  await page.click("#begin-empty");
  await until(page, () => !document.querySelector("#stock-nothing").hidden);
  await seen(page, "state-empty");
  await go(page, "choose");
  await says("Nothing weighed yet");
  await seen(page, "state-empty-choose");
});

test("eyes: on a touch screen every control has room for a finger, with all opened that can be", async (t) => {
  const page = await open(t, { width: 360, height: 780, touch: true, motion: "reduce" });
  await rested(page);
  await page.evaluate(axe);
  for (const place of ["strings", "choose", "make"]) {
    await go(page, place);
    await answered(page);
    await page.evaluate(() => document.querySelectorAll("details").forEach((o) => (o.open = true)));
    await painted(page);
    const small = await page.evaluate(() => [...document.querySelectorAll("a, button, input, select, summary, textarea, [role=slider]")].filter((node) => {
      const target = node.closest("label, .field") ?? node, box = target.getBoundingClientRect();
      return box.width && box.height && getComputedStyle(node).clipPath === "none" && !node.classList.contains("skip") && (box.width < 44 || box.height < 44);
    }).map((node) => `${node.tagName} ${node.className} ${node.textContent.slice(0, 20)} ${Math.round(node.getBoundingClientRect().width)}x${Math.round(node.getBoundingClientRect().height)}`));
    assert.deepEqual(small, [], place);
    await accessible(page, `${place} with all that can be opened`);
    await fits(page, 360, place);
  }
});

// Ratios by WCAG 2.2, relative luminance: text 4.5 at least, edges of controls 3.
test("eyes: colours have the contrast that they were chosen for", async (t) => {
  const page = await open(t);
  const wanted = { light: [14.8, 6.5, 6.8, 6.0, 8.5, 3.2], dark: [15.9, 8.5, 10.0, 9.8, 5.4, 4.3] };
  for (const [colorScheme, ratios] of Object.entries(wanted)) {
    await page.emulateMedia({ colorScheme });
    await until(page, (theme) => document.documentElement.dataset.theme === theme, colorScheme);
    const found = await page.evaluate(() => {
      const luminance = (name) => {
        const hex = getComputedStyle(document.documentElement).getPropertyValue(name).trim().slice(1);
        const [r, g, b] = [0, 2, 4].map((i) => parseInt(hex.slice(i, i + 2), 16) / 255).map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
        return 0.2126 * r + 0.7152 * g + 0.0722 * b;
      };
      const pairs = ["--ink --ground", "--soft --ground", "--accent --ground", "--warn --ground", "--ink --good", "--edge --ground"].map((p) => p.split(" ").map(luminance));
      return pairs.map(([a, b]) => (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05));
    });
    found.forEach((ratio, i) => assert.ok(Math.abs(ratio - ratios[i]) < 0.06, `${colorScheme}: ${found.map((r) => r.toFixed(2))} for ${ratios}`));
  }
});

test("eyes: a hostile label is text", async (t) => {
  const page = await open(t, { build: "hostile" });
  await rested(page);
  for (const place of ["strings", "make", "choose"]) await go(page, place);
  assert.match(await page.textContent("#brief"), /<\/script><img src=x onerror=alert\(1\)>/);
  assert.equal(await page.evaluate(() => document.querySelectorAll("main img, #sheet img").length), 0);
});

test("eyes: leaving asks while something is in no file, and not before", async (t) => {
  const page = await open(t);
  await rested(page);
  let asked = 0;
  page.on("dialog", (dialog) => (asked++, dialog.accept()));
  await page.reload();
  await rested(page);
  assert.equal(asked, 0);
  await page.focus("svg.map");
  await page.keyboard.press("ArrowRight");
  await page.waitForTimeout(300);
  assert.match(await page.textContent("#kept"), /not in a file yet/);
  await page.reload();
  await rested(page);
  assert.equal(asked, 1);
  assert.match(await page.textContent("#pair .unseen"), /^665/, "what was kept is there again");
});

test("eyes: a store that is full says so", async (t) => {
  const page = await open(t);
  await rested(page);
  await page.evaluate(() => (Storage.prototype.setItem = () => { throw new Error("the store is full"); }));
  await page.focus("svg.map");
  await page.keyboard.press("ArrowRight");
  await until(page, () => /Not kept: the store is full/.test(document.querySelector("#kept").textContent));
  assert.equal(await kept(page), null);
});
