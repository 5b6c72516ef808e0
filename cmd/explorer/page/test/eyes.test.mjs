// For hands and eyes: no violations that axe finds at four widths in both themes, nothing
// wider than the page, room for a finger, labels as text.

import assert from "node:assert/strict";
import { mkdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { open, require, until } from "./harness.mjs";
import { go, kept, rested } from "./steps.mjs";

const axe = readFileSync(require.resolve("axe-core/axe.min.js"), "utf8");
const pictures = process.env.SCALEPAIR_PICTURES; // where pictures are kept, if they are

for (const theme of ["light", "dark"])
  for (const width of [320, 360, 800, 1400])
    test(`eyes: ${width} px, ${theme}`, async (t) => {
      const page = await open(t, { width, theme, motion: "reduce" });
      await rested(page);
      await page.evaluate(axe);
      for (const place of ["strings", "choose", "make"]) {
        await go(page, place);
        await page.waitForTimeout(200);
        const found = await page.evaluate(() => globalThis.axe.run(document, { resultTypes: ["violations"] }));
        assert.deepEqual(found.violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target).join(", ")}`), [], place);
        assert.ok((await page.evaluate(() => document.documentElement.scrollWidth)) <= width, `${place} is wider than ${width}`);
        if (pictures && (width === 360 || width === 1400)) {
          mkdirSync(pictures, { recursive: true });
          await page.screenshot({ path: join(pictures, `${place}_${width}_${theme}.png`), fullPage: true });
        }
      }
    });

test("eyes: on a touch screen every control has room for a finger", async (t) => {
  const page = await open(t, { width: 360, height: 780, touch: true });
  await rested(page);
  for (const place of ["strings", "choose", "make"]) {
    await go(page, place);
    await page.waitForTimeout(200);
    const small = await page.evaluate(() => [...document.querySelectorAll("a, button, input, select, summary, textarea, [role=slider]")].filter((node) => {
      const target = node.closest("label, .field") ?? node, box = target.getBoundingClientRect();
      return box.width && box.height && getComputedStyle(node).clipPath === "none" && !node.classList.contains("skip") && (box.width < 40 || box.height < 44);
    }).map((node) => `${node.tagName} ${node.className} ${node.textContent.slice(0, 20)} ${Math.round(node.getBoundingClientRect().width)}x${Math.round(node.getBoundingClientRect().height)}`));
    assert.deepEqual(small, [], place);
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
