// Strings: the gauge table in place, faults at their cells, a slip taken back by its button.

import assert from "node:assert/strict";
import { test } from "node:test";
import { json, open, textOf, until } from "./harness.mjs";
import { answered, go, kept, rested, type } from "./steps.mjs";

const readings = textOf("demo", "readings.csv");
const openStrings = async (t, how) => {
  const page = await open(t, how);
  await go(page, "strings");
  await until(page, () => document.querySelector(".reading input"));
  return page;
};
const cell = (page, row, name) => page.locator(".reading").nth(row).locator("label", { hasText: name }).locator("input").first();

test("strings: the likely slips are one list, each with its button, which takes the flag away in all places", async (t) => {
  const page = await openStrings(t);
  assert.equal(await page.textContent("#stock-panel .panel-name b"), "p15");
  assert.equal(await page.textContent("#to-check"), "1 to check");
  const { suspects: [suspect] } = json("demo", "gauges"), slips = page.locator("#stock-panel .slip li");
  assert.equal(await page.textContent("#stock-panel .slip > p"), `p15 ${suspect.why}. Nothing was changed for you.`);
  assert.equal(await slips.count(), suspect.likely_values.length);
  for (const [i, { of, value }] of suspect.likely_values.entries()) {
    assert.equal((await slips.nth(i).locator("p").textContent()).toLowerCase(), `${of}: ${suspect.likely_slips[i]}`.toLowerCase());
    assert.equal((await slips.nth(i).locator("button").textContent()).toLowerCase(), `set ${of} to ${value}`.toLowerCase());
  }
  assert.match(await cell(page, 1, /^mass, g/).evaluate((input) => input.closest(".reading").className), /suspect/);
  await page.click("#stock-panel .slip button >> nth=0");
  await until(page, () => document.querySelector("#to-check").hidden && document.querySelector("#stock-panel .slip").hidden);
  assert.equal(await page.locator(".family .look").count(), 0);
  assert.equal((await kept(page)).readings, readings.replace("1,480,0.34", "1,480,0.43"));
  await page.keyboard.press("Control+z");
  assert.equal((await kept(page)).readings, readings);
});

test("strings: a wrong cell says so in the program's words, old figures are said to be old, and undo gives back every byte", async (t) => {
  const page = await openStrings(t);
  const old = () => page.evaluate(() => [document.querySelector("#old-words").textContent, ...[".family .against", "#choose .pair", "#make-fan"].map((s) => getComputedStyle(document.querySelector(s)).filter)]);
  assert.deepEqual(await old(), ["", "none", "none", "none"]);
  await type(page, cell(page, 1, /^mass, g/), "abc");
  await until(page, () => document.querySelector(".reading .wrong-words:not(:empty)"));
  assert.match(await page.textContent(".reading .wrong-words:not(:empty)"), /^mass: .*"abc"/);
  await until(page, () => document.querySelector("#old-words").textContent);
  assert.deepEqual(await old(), ["Figures are of the last readings and build without faults.", "grayscale(1)", "grayscale(1)", "grayscale(1)"]);
  assert.equal(await page.getAttribute("#old-words", "role"), "status");
  for (const place of ["choose", "make"]) {
    await go(page, place);
    assert.equal(await page.isVisible("#old-words"), true);
    assert.match(await page.textContent(place === "choose" ? "#words" : "#notice"), /"abc"/);
  }
  assert.match(await page.textContent("#notice"), /^Strings, p15: mass: .*"abc"/, "not the name of a file that nobody sees");
  await go(page, "strings");
  await page.click("#undo");
  await until(page, () => !document.querySelector(".reading .wrong-words:not(:empty)"));
  assert.equal((await kept(page)).readings, readings);
  assert.deepEqual(await old(), ["", "none", "none", "none"]);
});

test("strings: an edit finds its row though one above it goes at the same moment", async (t) => {
  const page = await openStrings(t);
  await page.click('.family button:has-text("w22")');
  await until(page, () => document.querySelectorAll(".reading").length === 3);
  await page.evaluate(() => {
    const [first, , third] = document.querySelectorAll(".reading"), mass = third.querySelectorAll("input")[2];
    first.querySelector(".flat").click();
    mass.value = "1.31";
    mass.dispatchEvent(new Event("change"));
  });
  const row = (line) => readings.split("\n")[line - 1] + "\n", without = readings.replace(row(39), "").replace(row(41), row(41).replace("1.30", "1.31"));
  await until(page, () => document.querySelectorAll(".reading").length === 2);
  await answered(page);
  assert.equal((await kept(page)).readings, without);
  // What is being typed stays in its row while the one before it goes.
  await page.evaluate(() => {
    const [first, second] = document.querySelectorAll(".reading");
    globalThis.typedIn = second.querySelectorAll("input")[2];
    first.querySelector(".flat").click();
    globalThis.typedIn.focus();
    globalThis.typedIn.value = "1.32";
  });
  await until(page, () => document.querySelectorAll(".reading").length === 1);
  assert.equal(await page.evaluate(() => document.activeElement === globalThis.typedIn && globalThis.typedIn.dispatchEvent(new Event("change"))), true);
  await answered(page);
  assert.equal((await kept(page)).readings, without.replace(row(40), "").replace("1.31,,", "1.32,,"));
});

test("strings: in a build in inches faults are in inches, a row has each column once, and an empty table follows the unit", async (t) => {
  const page = await openStrings(t, { build: "eight_inch" });
  const names = await page.locator(".reading >> nth=0 >> label > span:first-child").allTextContents();
  assert.ok(names.includes("length, in") && names.includes("outer, in"), names);
  assert.deepEqual(names.filter((name) => name.endsWith("mm")), []);
  await go(page, "choose");
  await rested(page);
  await type(page, page.locator(".slider-row .field input").first(), "4");
  assert.match(await page.textContent("#choose .wrong-words:not(:empty)"), /\("4 in"\).* from 7\.87 in to 78\.7 in$/); // 200 and 2000 mm
  await page.click("#begin-empty");
  await until(page, () => !document.querySelector("#stock-nothing").hidden);
  assert.match((await kept(page)).readings, /^gauge,construction,outer_in,.*length_in/m);
  await page.selectOption("#length-unit", "mm");
  await answered(page);
  assert.match((await kept(page)).readings, /^gauge,construction,outer_mm,.*length_mm/m);
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
  const take = page.getByText("Add these rows");
  assert.equal(await take.isVisible(), false);
  await page.fill("textarea", "gauge\tconstruction\touter_mm\tpieces\tlength_mm\tmass_g\np255\tplain\t0.648\t1\t500\t1.29\np255\tplain\t0.648\t2\t500\t2.58\n");
  await page.locator("textarea").blur();
  await answered(page);
  assert.equal((await kept(page)).readings, readings, "what is typed is not taken by itself");
  await take.click();
  await until(page, () => [...document.querySelectorAll(".family button")].some((b) => b.textContent.startsWith("p255")));
  await answered(page);
  assert.ok((await kept(page)).readings.startsWith(readings.trimEnd()), "what was there stays as it was");
  assert.equal(await page.textContent("#stock-drop [role=status]"), "2 rows added, read as gauge; construction; outer, mm; pieces; length, mm; mass, g. Undo takes them back.");
  assert.equal(await take.isVisible(), false);
  await page.fill("textarea", "gauge\tconstruction\touter_in\tpieces\tlength\tmass\np256\tplain\t0.025\t1\t500\t1.24\n");
  await page.dispatchEvent("textarea", "paste");
  await until(page, () => [...document.querySelectorAll(".family button")].some((b) => b.textContent.startsWith("p256")));
  assert.match((await kept(page)).readings, /^p256,plain,0\.635,.*,1,500,1\.24/m, "inches are converted, what has no unit has the table's");
  const { readings: before } = await kept(page);
  const text = "String\tconstruction\tThickness\tlength\tWeight\np257\tplain\t0.6\t500\t1.2\n";
  await page.fill("textarea", text);
  await take.click();
  await until(page, () => /^Nothing was added: .*"String, Thickness, Weight".* gauge; construction; outer, mm; /.test(document.querySelector("#notice").textContent));
  assert.equal((await kept(page)).readings, before, "a heading that is not known adds nothing");
  assert.equal(await page.inputValue("textarea"), text);
  await page.fill("textarea", "w257\tround wound\t0.66\t0.33\n");
  await take.click();
  await until(page, () => /^1 row added, read as gauge; construction; outer, mm; core, mm\. Undo takes it back\.$/.test(document.querySelector("#stock-drop [role=status]").textContent));
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
  await until(page, () => document.activeElement.id === "strings-title");
  // A first gauge: the hand is in the first of the cells that it needs, each of which offers its
  // words; what is missing is said once the hand has left them.
  await page.fill('[aria-label="Name of a new gauge"]', "p10");
  await page.keyboard.press("Enter");
  await until(page, () => document.activeElement.closest(".reading label")?.textContent === "construction");
  const offered = (input) => input.evaluate((input) => [...input.list.options].map((o) => o.value));
  assert.deepEqual(await offered(cell(page, 0, /^construction/)), ["plain"]);
  assert.ok((await offered(cell(page, 0, /^core shape/))).includes("hex"));
  for (const text of ["plain", "", "2", "500", "0.4"]) {
    await answered(page);
    await page.waitForTimeout(350); // longer than a button is pressed
    assert.equal(await page.locator(".wrong-words:not(:empty), .look:visible, #to-check:visible").count(), 0, "before " + text);
    await page.keyboard.type(text);
    await page.keyboard.press("Tab");
  }
  await until(page, () => /no outer diameter/.test(document.querySelector(".reading .wrong-words:not(:empty)")?.textContent));
  assert.equal(await page.textContent("#to-check"), "1 to check");
  assert.equal(await page.isVisible("#old-words"), false, "there are no figures yet");
  await type(page, cell(page, 0, /^outer, mm/), "0.254");
  assert.match((await kept(page)).readings, /\np10,plain,0\.254,,,,weighed,2,500,0\.4,,,\n$/, "typed without delay, each in its cell");
  assert.equal(await page.isVisible("#to-check"), false);
  await page.fill('[aria-label="Name of a new gauge"]', "w26");
  await page.keyboard.press("Enter");
  await until(page, () => document.querySelector("#stock-panel .panel-name b").textContent === "w26");
  assert.match((await kept(page)).readings, /\nw26,,,,,,weighed,,,,,,\n$/, "no kind is taken for it");
  for (let n = 0; n < 7; n++) await page.click("#undo");
  await until(page, () => !document.querySelector("#stock-nothing").hidden);
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
