// Make: marks are measured and judged, files are what the commands write.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { ask, command, open, textOf, until } from "./harness.mjs";
import { answered, go, kept, rested, shows, type } from "./steps.mjs";

const openMake = async (t, how) => {
  const page = await open(t, how);
  await rested(page);
  await go(page, "make");
  await until(page, () => document.querySelector(".mark-line input:enabled"));
  return page;
};
/** Types into a field and leaves it by Tab; Enter leads to the next fret. */
const put = async (page, field, text) => {
  await field.fill(text);
  await field.press("Tab");
  await answered(page);
};
const measured = (page, line, pass) => page.locator(".mark-line").nth(line).locator("input").nth(pass);

test("make: a measured mark is judged as check judges it, and is there after a reload", async (t) => {
  const page = await openMake(t);
  await page.click('[aria-label="Next fret"]');
  await put(page, measured(page, 0, 1), "35.95"); // a step from a mark that was not measured
  await until(page, () => document.querySelector(".mark-line .verdict").textContent === "undecided");
  await put(page, measured(page, 0, 0), "73");
  await until(page, () => /error/.test(document.querySelector(".mark-line .verdict").textContent));
  await until(page, () => JSON.parse(localStorage.getItem("scalepair")).state.marks.includes("35.95"));
  const state = await kept(page);
  const { result } = await ask(page, "check", { build: state.build, readings: state.readings, marks: state.marks, flags: {} });
  const mark = result.lines.find((l) => l.line === "bass").marks.find((m) => m.fret === 2);
  assert.match(await page.textContent(".mark-line .verdict"), new RegExp(mark.verdict));
  page.on("dialog", (dialog) => dialog.accept());
  await page.reload();
  await until(page, () => document.querySelector(".mark-line input:enabled"));
  assert.deepEqual(await kept(page), state);
  await page.click('.row-of-marks >> nth=1 >> button >> nth=1');
  await until(page, () => document.querySelector(".mark-line input").value === "73");
});

test("make: marks typed without delay are all kept, and the strip of squares shows them", async (t) => {
  const page = await openMake(t);
  const texts = { bass: ["36.1", "70.2"], treble: ["35.1", "68.9"] };
  for (const n of [0, 1]) {
    await measured(page, 0, 0).click();
    await page.keyboard.type(texts.bass[n]);
    await page.keyboard.press("Tab");
    await page.keyboard.press("Tab");
    await page.keyboard.type(texts.treble[n]);
    await page.keyboard.press("Enter"); // to the next fret
  }
  for (const line of ["bass", "treble"])
    for (const n of [1, 2]) await until(page, (name) => !document.querySelector(`.row-of-marks [aria-label^="${name}"]`)?.ariaLabel.endsWith("not measured"), `${line} mark ${n}:`);
  assert.match(await page.getAttribute(".row-of-marks .in-hand", "aria-label"), /mark 3: not measured$/);
  const { marks, build, readings } = await kept(page);
  const { result } = await ask(page, "check", { build, readings, marks, flags: {} });
  assert.deepEqual(await page.locator(".check-words li").allTextContents(), [...result.says, ...result.advice]);
  for (const [line, all] of Object.entries(texts)) all.forEach((text, i) => assert.match(marks, new RegExp(`^${line},ruler,${i + 1},.*${text}`, "m")));
});

test("make: a mark that the check names does not look like a good one, also within the tolerance", async (t) => {
  const page = await openMake(t);
  const { result } = await ask(page, "layout", {}), lines = ["line,pass,fret,measured_mm"];
  for (const m of result.marks) {
    const off = m.fret === 4 ? 0.5 : 0;
    lines.push(`bass,ruler,${m.fret},${(Math.round(2 * (m.bass_from_nut_mm + off)) / 2).toFixed(1)}`);
    lines.push(`bass,caliper,${m.fret},${(m.bass_step_mm + off - (m.fret === 5 ? 0.5 : 0)).toFixed(2)}`);
  }
  await page.setInputFiles("#open", { name: "measured.csv", mimeType: "text/csv", buffer: Buffer.from(lines.join("\n") + "\n") });
  await until(page, () => document.querySelector('.row-of-marks [aria-label="bass mark 4: in doubt"]') && document.querySelector('.row-of-marks [aria-label="bass mark 8: within"]'));
  await page.click('.row-of-marks [aria-label^="bass mark 4:"]');
  await until(page, () => /: within; bass mark 4 itself is off$/.test(document.querySelector(".mark-line .verdict.bad")?.textContent));
});

test("make: marks of another pair are said to be so, and a button leads back", async (t) => {
  const page = await openMake(t);
  await put(page, measured(page, 0, 0), "37.0");
  await until(page, () => document.querySelector('.row-of-marks [aria-label^="bass mark 1:"]').ariaLabel.endsWith("within"));
  await put(page, measured(page, 1, 0), "35,6x");
  await until(page, () => document.querySelector(".measured .wrong-words:not(:empty)"));
  assert.match(await page.getAttribute('.row-of-marks [aria-label^="bass mark 1:"]', "aria-label"), /within$/, "the last good check stays");
  await page.click("#undo");
  await go(page, "choose");
  await type(page, page.locator("#bass-length"), "665");
  await go(page, "make");
  await until(page, () => document.querySelector("#make-say").textContent === "The marks were measured on 660 / 635; they are judged by 665 / 635, which is shown.");
  await page.getByRole("button", { name: "Back to 660 / 635" }).click();
  await until(page, () => !/judged/.test(document.querySelector("#make-say").textContent));
});

test("make: every file is byte for byte what the command writes", async (t) => {
  const page = await openMake(t);
  const { folder } = command("demo", "advise", "build.toml", "--save");
  const saved = readFileSync(join(folder, "build.toml"), "utf8");
  const files = { "Build file": saved, Readings: textOf("demo", "readings.csv") };
  for (const [name, want] of Object.entries(files)) {
    const [download] = await Promise.all([page.waitForEvent("download"), page.locator(".files button", { hasText: name }).first().click()]);
    assert.equal(readFileSync(await download.path(), "utf8"), want, name);
  }
  await until(page, () => document.querySelector("#kept").classList.contains("filed"));
  for (const kind of ["svg", "dxf"]) {
    const [download] = await Promise.all([page.waitForEvent("download"), page.locator(".files button", { hasText: kind.toUpperCase() }).click()]);
    const drawn = command("demo", "draw", "--bass", "660 mm", "--treble", "635 mm", "--out", `fan.${kind}`).folder;
    assert.ok(readFileSync(await download.path()).equals(readFileSync(join(drawn, `fan.${kind}`))), kind);
  }
  const [sheet] = await Promise.all([page.waitForEvent("download"), page.click("#make-sheet")]);
  const written = command(folder, "bench", "build.toml", "--out", "sheet.html").folder;
  assert.equal(readFileSync(await sheet.path(), "utf8"), readFileSync(join(written, "sheet.html"), "utf8"), "the sheet of the build that has the pair chosen");
  for (const paper of ["A4", "Letter"]) {
    const [download] = await Promise.all([page.waitForEvent("download"), page.locator(".files button", { hasText: `Full-size drawing, ${paper}` }).click()]);
    assert.equal(download.suggestedFilename(), `fan-${paper.toLowerCase()}.pdf`);
  }
});

test("make: an empty build says what is missing and where it is entered", async (t) => {
  const page = await openMake(t);
  await page.click("#begin-empty");
  await until(page, () => !document.querySelector("#stock-nothing").hidden);
  await go(page, "make");
  assert.equal(await page.textContent("#make-nothing .say"), "Nothing to set out yet: weigh your strings and enter them in Strings.");
  for (const part of ["#make-fan", ".make-columns", ".make-head", "#notice", "#old-words"]) assert.equal(await page.isVisible(part), false, part);
  assert.deepEqual(await page.locator("#make-nothing button").allTextContents(), ["To Strings", "To Choose"]);
  await until(page, () => !document.querySelector("#sheet").childElementCount);
  await page.click("#make-nothing button");
  assert.equal(await page.isVisible("#stock-nothing"), true);
});

test("make: what is wrong with the build is said in the words of the form", async (t) => {
  const page = await openMake(t);
  await go(page, "choose");
  await page.evaluate(() => (document.querySelector("#form").open = true));
  const entry = page.locator(".form-section", { has: page.getByText("Blanks, one more", { exact: true }) });
  await entry.locator("summary").click();
  await type(page, entry.locator("label", { hasText: /^length/ }).locator("input"), "580 mm");
  await until(page, () => /Width is missing in Blanks: see the form below/.test(document.querySelector("#words").textContent));
  assert.match(await page.locator(".form-section > .wrong-words:not([hidden])").textContent(), /^width is missing in Blanks; write width: "80 mm", say$/);
  await go(page, "make");
  await until(page, () => document.querySelector("#notice").textContent.startsWith("Blanks 4: width is missing in Blanks"));
  assert.doesNotMatch(await page.textContent("#notice"), /\.toml|\[\[/);
});

test("make: marks by the keyboard alone, and the page prints as the bench sheet", async (t) => {
  const page = await openMake(t);
  await page.focus('[aria-label="Next fret"]');
  await page.keyboard.press("Enter");
  assert.equal(await page.textContent(".fret-head b"), "Fret 2");
  await until(page, () => document.querySelector("#sheet h1"));
  await page.emulateMedia({ media: "print" });
  assert.equal(await page.isVisible("#sheet h1"), true);
  assert.equal(await page.isVisible("main"), false);
  assert.match(await page.textContent("#sheet h1"), /^Bench sheet/);
});

test("make: marks and steps stand as layout prints them, in every unit of length", async (t) => {
  const page = await openMake(t);
  for (const unit of ["mm", "in", "in64"]) {
    await page.selectOption("#length-unit", unit);
    const printed = command("demo", "layout", "--only", "marks", "--format", "csv", "--lengths", unit).out.trim().split("\n").slice(1);
    await until(page, (printed) => {
      const rows = [...document.querySelectorAll("table.marks tbody tr")].map((tr) => [...tr.children].slice(0, 5).map((cell) => cell.textContent).join(","));
      return rows.length === printed.length && rows.every((row, i) => printed[i].startsWith(row + ","));
    }, printed);
  }
});

test("make: the blank that is chosen is drawn, and one that does not fit cannot be chosen", async (t) => {
  const page = await openMake(t);
  const drawn = () => page.getAttribute("#make-fan .blank", "d");
  const before = await drawn();
  assert.equal(await page.locator(".blanks input").nth(0).isDisabled(), true);
  await page.locator(".blanks input").nth(2).check();
  await until(page, (before) => document.querySelector("#make-fan .blank").getAttribute("d") !== before, before);
  await kept(page);
  page.on("dialog", (dialog) => dialog.accept());
  await page.reload();
  await until(page, () => document.querySelectorAll(".blanks input")[2]?.checked);
  const [sheet] = await Promise.all([page.waitForEvent("download"), page.click("#make-sheet")]);
  assert.match(readFileSync(await sheet.path(), "utf8"), /fingerboard blank: long maple/);
  await page.click("#undo");
  await until(page, (before) => document.querySelector("#make-fan .blank").getAttribute("d") === before, before);
});

test("make: left-handed turns the drawing over, and undo turns it back", async (t) => {
  const page = await openMake(t);
  const nut = () => page.getAttribute("#make-fan .nut", "x1");
  const before = await nut();
  await page.check("#left-handed");
  await until(page, (before) => document.querySelector("#make-fan .nut").getAttribute("x1") === before, before);
  const string = await page.getAttribute("#make-fan .string", "y1");
  await go(page, "choose");
  await until(page, () => { // the low string lies above, in the drawing that was away too
    const [low, ...rest] = [...document.querySelectorAll("#fan .string")].map((s) => Number(s.getAttribute("y1")));
    return rest.every((y) => y > low);
  });
  await go(page, "make");
  await page.click("#undo");
  await until(page, (string) => document.querySelector("#make-fan .string").getAttribute("y1") !== string, string);
  await shows(page, "660.0 mm", "635.0 mm");
});
