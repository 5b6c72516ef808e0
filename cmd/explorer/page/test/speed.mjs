// How fast the page is, in the browser at hand: prints a line a figure. It judges nothing.
//
//   SCALEPAIR_TESTS=full go test ./cmd/explorer -run xxx -bench Page -benchtime 1x

import { statSync } from "node:fs";
import { join } from "node:path";
import { chromiumBrowser, pages, textOf } from "./harness.mjs";

const median = (list) => list.toSorted((a, b) => a - b)[list.length >> 1];
const line = (what, ms, most) => console.log(`${what.padEnd(52)} ${ms.toFixed(1).padStart(8)} ms${most ? `   wanted: under ${most}` : ""}`);

const context = await (await chromiumBrowser()).newContext({ viewport: { width: 1400, height: 900 }, offline: true });
const address = "file://" + join(pages, "demo.html");

const loads = [];
for (let i = 0; i < 5; i++) {
  const page = await context.newPage();
  await page.goto(address);
  loads.push(
    await page.evaluate(async () => {
      while (!document.querySelector("#each [class]") || !document.querySelector("#map-box svg")) await new Promise((go) => setTimeout(go, 5));
      return performance.now();
    }),
  );
  await page.close();
}
line("from opening to pair, strings and map", median(loads), 2000);

const page = await context.newPage();
await page.goto(address);
await page.waitForTimeout(3000); // the trials are over

const slides = () => page.evaluate(async () => {
  const slide = /** @type {HTMLInputElement} */ (document.querySelector("#map-box input[type=range], input[aria-label^=Bass]"));
  const list = [];
  const painted = () => new Promise((go) => requestAnimationFrame(() => setTimeout(go)));
  for (let i = 0; i < 30; i++) {
    const start = performance.now();
    const changed = new Promise((go) => {
      const seen = new MutationObserver(() => (seen.disconnect(), go(undefined)));
      seen.observe(document.getElementById("fan"), { subtree: true, childList: true, attributes: true, attributeFilter: ["d", "x1", "y1", "points"] }); // drawn of the answer
    });
    slide.value = String(Number(slide.value) + (i % 10 < 5 ? 1 : -1));
    slide.dispatchEvent(new Event("input", { bubbles: true }));
    await changed;
    await painted();
    list.push(performance.now() - start);
  }
  return list;
});
line("slider moved to strings and fan painted, the first 30", median(await slides()), 33);

const calls = await page.evaluate(async () => {
  const time = async (call) => {
    const start = performance.now();
    await call();
    return performance.now() - start;
  };
  const pair = (i) => time(() => globalThis.scalepair.quick("pair", { flags: { bass: 650 + i + " mm", treble: "635 mm" } }));
  const list = [];
  for (let i = 0; i < 40; i++) list.push(await pair(i));
  return list;
});
line("engine: a pair, its strings and its fan, median of 40", median(calls), 10);
line("slider moved to strings and fan painted, 30 later", median(await slides()), 33);

const wide = textOf("demo", "build.toml").replace(/bass = "635.*"/, 'bass = "635 mm to 715 mm by 2.5 mm"').replace(/treble = "605.*"/, 'treble = "605 mm to 635 mm by 1 mm"');
const request = { build: wide, readings: textOf("demo", "readings.csv") };
const slow = async (name, flags) => {
  const list = [];
  for (let i = 0; i < 5; i++)
    list.push(
      await page.evaluate(async ([name, request]) => {
        const start = performance.now();
        const answer = await globalThis.scalepair.slow(name, request);
        if (!answer.ok) throw new Error(answer.faults[0].text);
        return performance.now() - start;
      }, [name, { ...request, flags }]),
    );
  return median(list);
};
line("worker: the map of 1,023 pairs, median of 5", await slow("map", {}), 600);
line("worker: the advice on them with 2,000 trials", await slow("advise", {}));
console.log(`${"size of the page".padEnd(52)} ${(statSync(join(pages, "demo.html")).size / 1e6).toFixed(2).padStart(8)} MB   wanted: under 5`);
await context.browser().close();
