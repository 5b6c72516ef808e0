// Strings: the gauge table in place, faults at their cells, a slip taken back by its button.

import assert from "node:assert/strict";
import { test } from "node:test";
import { open, textOf, until } from "./harness.mjs";
import { answered, go, kept, type } from "./steps.mjs";

const readings = textOf("demo", "readings.csv");
const openStrings = async (t, how) => {
  const page = await open(t, how);
  await go(page, "strings");
  await until(page, () => document.querySelector(".reading input"));
  return page;
};
const cell = (page, row, name) => page.locator(".reading").nth(row).locator("label", { hasText: name }).locator("input");

test("strings: the likely slip is a button, and takes its flag away in all places", async (t) => {
  const page = await openStrings(t);
  assert.equal(await page.textContent("#stock-panel .panel-name b"), "p15");
  assert.equal(await page.textContent("#to-check"), "1 to check");
  await page.click("#stock-panel .slip button >> nth=0");
  await until(page, () => document.querySelector("#to-check").hidden && document.querySelector("#stock-panel .slip").hidden);
  assert.equal(await page.locator(".family .look").count(), 0);
  assert.equal((await kept(page)).readings, readings.replace("1,480,0.34", "1,480,0.43"));
  await page.keyboard.press("Control+z");
  assert.equal((await kept(page)).readings, readings);
});

test("strings: a wrong cell says so in the program's words, and undo gives back every byte", async (t) => {
  const page = await openStrings(t);
  await type(page, cell(page, 1, /^mass, g/), "abc");
  await until(page, () => document.querySelector(".reading .wrong-words:not(:empty)"));
  assert.match(await page.textContent(".reading .wrong-words:not(:empty)"), /^mass: .*"abc"/);
  await page.click("#undo");
  await until(page, () => !document.querySelector(".reading .wrong-words:not(:empty)"));
  assert.equal((await kept(page)).readings, readings);
});

test("strings: rows are added, removed and pasted", async (t) => {
  const page = await openStrings(t);
  await page.click("text=Add a reading");
  await until(page, () => document.querySelectorAll(".reading").length === 3);
  await page.locator(".reading").nth(2).locator("summary").click();
  await page.locator(".reading").nth(2).getByText("Remove this row").click();
  await until(page, () => document.querySelectorAll(".reading").length === 2);
  await page.fill('[aria-label="Name of a new gauge"]', "p99");
  await page.click("text=Add a gauge");
  await until(page, () => document.querySelector("#stock-panel .panel-name b").textContent === "p99");
  await page.click("#undo");
  await page.fill("textarea", "gauge\tconstruction\touter_mm\tpieces\tlength_mm\tmass_g\np255\tplain\t0.648\t1\t500\t1.29\n");
  await page.locator("textarea").blur();
  await until(page, () => [...document.querySelectorAll(".family button")].some((b) => b.textContent.startsWith("p255")));
  await answered(page);
  assert.ok((await kept(page)).readings.startsWith(readings.trimEnd()), "what was there stays as it was");
  await page.fill("textarea", "gauge\tconstruction\touter_in\tpieces\tlength\tmass\np256\tplain\t0.025\t1\t500\t1.24\n");
  await page.locator("textarea").blur();
  await until(page, () => [...document.querySelectorAll(".family button")].some((b) => b.textContent.startsWith("p256")));
  assert.match((await kept(page)).readings, /^p256,plain,0\.635,.*,1,500,1\.24/m, "inches are converted, what has no unit has the table's");
  const { readings: before } = await kept(page);
  const text = "gauge\tconstruction\tdiameter\tlength\tmass\np257\tplain\t0.6\t500\t1.2\n";
  await page.fill("textarea", text);
  await page.locator("textarea").blur();
  await until(page, () => /"diameter"/.test(document.querySelector("#notice").textContent));
  assert.equal((await kept(page)).readings, before, "a heading that is not known adds nothing");
  assert.equal(await page.inputValue("textarea"), text);
});

test("strings: all rows go at one press and come back, and an empty build says what to do", async (t) => {
  const page = await openStrings(t);
  await page.click("text=Remove all rows");
  await until(page, () => !document.querySelector("#stock-nothing").hidden);
  await page.click("#undo");
  await until(page, () => document.querySelector("#stock-nothing").hidden);
  assert.equal((await kept(page)).readings, readings);
  await page.click("#begin-empty");
  await until(page, () => !document.querySelector("#stock-nothing").hidden && document.querySelector("#invented").hidden);
  assert.match((await kept(page)).readings, /\ngauge,construction,.*\s*$/);
  await go(page, "choose");
  await until(page, () => document.querySelector("#words .say").textContent === "Nothing weighed yet.");
  await page.click("#words button");
  assert.equal(await page.isVisible("#stock-nothing"), true);
});

test("strings: a CSV dropped on the page is read; a broken one changes nothing and says where", async (t) => {
  const page = await openStrings(t);
  const drop = (name, text) => page.evaluate(([name, text]) => {
    const data = new DataTransfer();
    data.items.add(new File([text], name));
    document.querySelector("#stock-list").dispatchEvent(new DragEvent("drop", { dataTransfer: data, bubbles: true, cancelable: true }));
  }, [name, text]);
  await drop("mine.csv", "gauge,construction,outer_mm,pieces,length_mm,mass_g\np10,plain,0.254,1,500\n");
  await until(page, () => /mine\.csv/.test(document.querySelector("#notice").textContent));
  assert.match(await page.textContent("#notice"), /mine\.csv:2/);
  assert.doesNotMatch(await page.textContent("#notice"), /readings\.csv/, "the file is called what it is called");
  assert.equal(await kept(page), null, "nothing was changed");
  await drop("mine.csv", readings.replace("1,480,0.34", "1,480,0.43"));
  await until(page, () => document.querySelector("#to-check").hidden);
});
