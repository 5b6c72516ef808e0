// The state: nothing moves before there is something to move, and nothing is lost.

import assert from "node:assert/strict";
import { test } from "node:test";
import { open, textOf, until } from "./harness.mjs";
import { go, kept, rested, shown, type } from "./steps.mjs";

const all = (page) => page.evaluate(() => JSON.parse(localStorage.getItem("scalepair")));
const mass = (page, row) => page.locator(".reading").nth(row).locator("label", { hasText: /^mass, g/ }).locator("input");

/** Reloads although something is in no file yet. */
async function reload(page) {
  await page.reload();
  await until(page, () => document.querySelector("#main")?.inert === false);
}

/** A page in Strings with three changes: two cells, left-handed. */
async function changed(t) {
  const page = await open(t, { address: "#strings" });
  page.on("dialog", (dialog) => dialog.accept());
  await until(page, () => document.querySelector(".reading input"));
  await type(page, mass(page, 1), "0.43");
  await type(page, mass(page, 0), "0.64");
  await page.check("#left-handed");
  return page;
}

test("state: undo and redo are there after a reload, byte for byte", async (t) => {
  const page = await changed(t), readings = textOf("demo", "readings.csv");
  const states = [await kept(page)];
  await page.click("#undo");
  states.push(await kept(page));
  await reload(page);
  assert.deepEqual(await kept(page), states[1]);
  for (const want of [readings.replace("1,480,0.34", "1,480,0.43"), readings]) {
    await page.click("#undo");
    assert.equal((await kept(page)).readings, want);
  }
  assert.equal(await page.isDisabled("#undo"), true);
  await reload(page);
  for (let n = 0; n < 3; n++) await page.click("#redo");
  assert.deepEqual(await kept(page), states[0]);
  assert.equal(await page.isDisabled("#redo"), true);
  const { past } = await all(page);
  assert.equal(past.length, 3);
  assert.ok(JSON.stringify(past).length < 2000, "a step holds what differs");
});

test("state: where there is no room for the history the oldest steps go, and the state stays", async (t) => {
  const page = await changed(t);
  await page.evaluate(() => {
    const set = Storage.prototype.setItem;
    Storage.prototype.setItem = function (key, text) {
      if (JSON.parse(text).past.length > 2) throw new DOMException("full", "QuotaExceededError");
      set.call(this, key, text);
    };
  });
  await page.uncheck("#left-handed");
  const last = await kept(page);
  assert.equal(last.view.leftHanded, false);
  assert.match(await page.textContent("#kept"), /^Kept here/);
  await reload(page);
  assert.deepEqual(await kept(page), last);
  await page.click("#undo");
  assert.equal((await kept(page)).view.leftHanded, true);
});

test("state: a key that is pressed before the first answer changes nothing", async (t) => {
  const page = await open(t, {
    first: () => {
      const Real = Worker, held = [];
      globalThis.release = () => (globalThis.release = null, held.forEach((go) => go()));
      globalThis.Worker = class extends Real {
        postMessage(message) {
          if (globalThis.release && message.number) held.push(() => super.postMessage(message));
          else super.postMessage(message);
        }
      };
    },
  });
  await page.locator("#waiting").waitFor();
  for (const key of ["ArrowRight", "Tab", "ArrowLeft", "Tab", "Enter", "Tab", "ArrowUp"]) await page.keyboard.press(key);
  for (const control of await page.locator("main :is(button, input, [tabindex='0'])").all())
    await control.evaluate((node) => {
      node.focus();
      if (document.activeElement === node) throw new Error("can be reached: " + node.outerHTML);
    });
  await page.evaluate(() => globalThis.release());
  await until(page, () => !document.querySelector("#main").inert);
  await go(page, "choose");
  await rested(page);
  assert.equal(await kept(page), null);
  assert.equal(await page.isDisabled("#undo"), true);
  assert.equal(await shown(page), "660.0 mm bass, 635.0 mm treble");
});
