// Steps that the tests of the page take: places, waits, what is shown and what is kept.

import { until } from "./harness.mjs";

/** Goes to a place by its name. */
export async function go(page, place) {
  await page.click(`.places a[href="#${place}"]`);
  await until(page, (place) => !document.getElementById(place).hidden, place);
}

/** Waits until search and trials are done. */
export const rested = (page) => until(page, () => document.querySelector("#pair .unseen")?.textContent && !document.querySelector("#choose").classList.contains("working"));

/** The pair in large figures, as a screen reader has it. */
export const shown = (page) => page.textContent("#pair .unseen");

/** Waits until that pair is shown and its strings are. */
export async function shows(page, bass, treble) {
  await until(page, (words) => document.querySelector("#pair .unseen")?.textContent === words, `${bass} bass, ${treble} treble`);
  await answered(page);
}

/** Waits until the engine's quick worker has nothing more to do. */
export async function answered(page) {
  await page.evaluate(() => globalThis.scalepair.quick("version", {}, "last"));
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => setTimeout(done))));
}

/** The state that lies in the browser's storage. */
export async function kept(page) {
  await page.waitForTimeout(200);
  return page.evaluate(() => JSON.parse(localStorage.getItem("scalepair"))?.state ?? null);
}

/** Types into a field and leaves it by Enter. */
export async function type(page, field, text) {
  await field.fill(text);
  await field.press("Enter");
  await answered(page);
}

