// Choose: every way of moving the pair ends in one state, what is drawn is what the engine
// says, and undo gives back every byte.

import assert from "node:assert/strict";
import { test } from "node:test";
import { ask, open, textOf, until } from "./harness.mjs";
import { answered, kept, rested, shown, shows, type } from "./steps.mjs";

const texts = { build: textOf("demo", "build.toml"), readings: textOf("demo", "readings.csv") };

test("choose: pointer, arrows, slider, buttons, field and pick end in one state, and undo restores it", async (t) => {
  const page = await open(t);
  await rested(page);
  const ways = {
    arrows: async () => {
      await page.focus("svg.map");
      for (const key of ["ArrowRight", "ArrowRight", "ArrowDown"]) await page.keyboard.press(key);
    },
    slider: async () => {
      await page.focus('[aria-label="Bass scale length"]');
      for (const key of ["ArrowRight", "ArrowRight"]) await page.keyboard.press(key);
      await page.focus('[aria-label="Treble scale length"]');
      await page.keyboard.press("ArrowLeft");
    },
    buttons: async () => {
      for (const name of ["Bass one step longer", "Bass one step longer", "Treble one step shorter"]) await page.click(`[aria-label="${name}"]`);
    },
    fields: async () => {
      await type(page, page.locator("#bass-length"), "670");
      await type(page, page.locator("#treble-length"), "630 mm");
    },
    pointer: async () => {
      const at = await page.evaluate(() => {
        const box = document.querySelector("svg.map").getBoundingClientRect(), view = document.querySelector("svg.map").viewBox.baseVal;
        const of = (attribute, value) => document.querySelector(`svg.map text[${attribute}="${value}"]`);
        const bass = Number(of("data-bass", 670).getAttribute("x")), treble = Number(of("data-treble", 630).getAttribute("y")) - 4;
        return { x: box.left + (bass * box.width) / view.width, y: box.top + (treble * box.height) / view.height };
      });
      await page.mouse.click(at.x, at.y);
    },
  };
  const before = await shown(page);
  const states = new Map();
  for (const [name, move] of Object.entries(ways)) {
    await move();
    await shows(page, "670.0 mm", "630.0 mm");
    states.set(name, JSON.stringify(await kept(page)));
    while (await page.isEnabled("#undo")) await page.click("#undo");
    await until(page, (words) => document.querySelector("#pair .unseen").textContent === words, before);
    const back = await kept(page);
    assert.equal(back.build, texts.build);
    assert.equal(back.readings, texts.readings);
    assert.deepEqual(back.view.bass, null, name);
  }
  assert.equal(new Set(states.values()).size, 1, [...states].map((s) => s.join(": ").slice(-200)).join("\n"));
  await page.click(".picks tbody tr.pick >> nth=2 >> button");
  await shows(page, "680.0 mm", "635.0 mm");
  assert.equal(await page.getAttribute(".picks tbody tr.pick >> nth=2", "class"), "pick on");
  const picked = JSON.stringify(await kept(page));
  await page.click("#undo");
  await until(page, (words) => document.querySelector("#pair .unseen").textContent === words, before);
  await type(page, page.locator("#bass-length"), "680");
  await shows(page, "680.0 mm", "635.0 mm");
  assert.ok(JSON.stringify(await kept(page)) === picked, "a pick is the same state as its length typed");
});

test("choose: figures, slants and squares are the engine's", async (t) => {
  const page = await open(t);
  await rested(page);
  await type(page, page.locator("#bass-length"), "672.5");
  await shows(page, "672.5 mm", "635.0 mm");
  const { result } = await ask(page, "pair", { ...texts, flags: { bass: "672.5 mm", treble: "635 mm" } });
  const low = result.tension.tunings[0].strings;
  const tensions = (await page.locator("#each tbody .tension b").allTextContents()).map(Number).reverse();
  low.forEach((s, i) => assert.ok(Math.abs(tensions[i] - s.tension_n) < 0.06 + s.tension_standard_uncertainty_n, `${s.note}: ${tensions[i]} for ${s.tension_n}`));
  const column = async (name) => (await page.locator(`#each tbody .${name} b`).allTextContents()).map((text) => text.replace("≥ ", "")).reverse();
  assert.deepEqual(await column("cents"), low.map((s) => s.inharmonicity_cents.toFixed(1)));
  assert.deepEqual(await column("strength"), low.map((s) => (s.breaking_strength_bent_percent ?? s.breaking_strength_percent).toFixed(0)));
  const { result: advice } = await ask(page, "advise", { ...texts, flags: {} });
  const shownPicks = await page.locator(".picks tr.pick").evaluateAll((rows) => rows.map((row) => [...row.querySelectorAll(".name > *, td")].map((o) => o.textContent.toLowerCase())));
  assert.deepEqual(shownPicks, advice.picks.map((p, i) => [p.pick, `${p.bass_mm} / ${p.treble_mm}`, `${p.difference_mm.toFixed(0)} mm`, `≥ ${p.inharmonicity_cents.toFixed(0)}`,
    `${p.feel_error_percent.toFixed(1)} %`, `${advice.confidence.picks[i].stays_good_percent.toFixed(0)} %`]));
  const lines = (selector) => page.locator(selector).evaluateAll((all) => all.map((l) => ["x1", "y1", "x2", "y2"].map((a) => Number(l.getAttribute(a)))));
  const drawn = await lines("#fan .fret");
  const drawnFrom = result.fan.frets.length - drawn.length; // the nut is no fret
  assert.ok(drawnFrom <= 1);
  drawn.forEach(([x1, y1, x2, y2], i) => {
    const slant = (Math.atan2(x1 - x2, y1 - y2) * 180) / Math.PI;
    assert.ok(Math.abs(slant - result.fan.frets[i + drawnFrom].slant_deg) < 0.1, `fret ${i + 1} is drawn at ${slant}`);
  });
  const scales = (await lines("#fan .string")).concat(drawn).map(([x1, y1, x2, y2], i) => {
    const [from, to] = i < low.length ? [result.fan.strings[i].nut_mm, result.fan.strings[i].saddle_mm] : result.fan.frets[i - low.length + drawnFrom].slot_mm;
    return Math.hypot(x2 - x1, y2 - y1) / Math.hypot(to[0] - from[0], to[1] - from[1]);
  });
  assert.ok(Math.max(...scales) / Math.min(...scales) < 1.001, `one scale along and across: ${scales}`);
  const { result: map } = await ask(page, "map", texts);
  const good = map.as_good.flat().filter(Boolean).length, squares = await page.getAttribute("svg.map .squares.good", "d");
  assert.equal(squares.split("z").length - 1, good, "one fill for all that is as good");
});

test("choose: the neutral fret by keys and by drag, the gauges by their steppers", async (t) => {
  const page = await open(t);
  await rested(page);
  const tag = page.locator("#fan .tag");
  const pair = await shown(page);
  await tag.focus();
  await page.keyboard.press("ArrowRight");
  await until(page, () => document.querySelector("#fan .tag text").textContent === "square at fret 7.5");
  assert.equal(await shown(page), pair, "the pair stays");
  await until(page, () => !document.querySelector("#fan .square-fret")); // between two none is
  await page.keyboard.press("ArrowRight");
  await until(page, () => [...document.querySelectorAll("#fan .fret")].findIndex((o) => o.classList.contains("square-fret")) === 7);
  assert.equal(await page.locator("#fan .square-fret").count(), 1);
  await page.keyboard.press("ArrowLeft");
  await until(page, () => document.querySelector("#fan .tag text").textContent === "square at fret 7.5");
  const press = (/** @type {string} */ key) => tag.evaluate((tag, key) => { for (let i = 0; i < 3; i++) tag.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true })); }, key);
  await press("ArrowRight"); // faster than answers come
  assert.equal(await tag.getAttribute("aria-valuenow"), "18", "no step is lost");
  await until(page, () => [...document.querySelectorAll("#fan .fret")].findIndex((o) => o.classList.contains("square-fret")) === 8);
  await press("ArrowLeft");
  await until(page, () => document.querySelector("#fan .tag text").textContent === "square at fret 7.5");
  const box = await tag.boundingBox();
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width / 2 + 150, box.y + box.height / 2, { steps: 5 });
  await page.mouse.up();
  await until(page, () => Number(/[\d.]+$/.exec(document.querySelector("#fan .tag text").textContent)?.[0]) > 9);
  await page.keyboard.press("Control+z");
  await until(page, () => document.querySelector("#fan .tag text").textContent === "square at fret 7.5");
  const heavier = page.locator('[aria-label^="String 1: heavier"]');
  const first = await page.locator("#each .gauge b").first().textContent();
  await heavier.click();
  await until(page, (first) => document.querySelector("#each .gauge b").textContent !== first, first);
  assert.equal(await page.getAttribute("#each .two-way button >> nth=1", "aria-pressed"), "true");
  await page.click("#each .two-way button >> nth=0");
  await until(page, (first) => document.querySelector("#each .gauge b").textContent === first, first);
});

const HINT = "Drag the point, or tap a square.";

test("choose: the map's heading speaks of the pair in hand alone", async (t) => {
  const page = await open(t);
  await rested(page);
  const hint = () => page.textContent(".map-head .hint"), box = await page.locator("svg.map").boundingBox();
  const drag = async () => {
    await page.mouse.move(box.x + 120, box.y + 130);
    await page.mouse.down();
    await page.mouse.move(box.x + 150, box.y + 110, { steps: 3 });
    await page.mouse.up();
    assert.match(await hint(), /^\d+ \/ \d+: as good as the best$/);
  };
  for (const [name, move] of Object.entries({
    keys: async () => (await page.focus("svg.map"), page.keyboard.press("ArrowRight")),
    field: () => type(page, page.locator("#bass-length"), "655"),
  })) {
    await drag();
    await move();
    await until(page, (words) => document.querySelector(".map-head .hint").textContent === words, HINT).catch(async () => assert.fail(`${name}: still ${await hint()}`));
  }
});

test("choose: names of picks keep clear of each other and stay in the map; one pair has one name", async (t) => {
  const page = await open(t);
  await rested(page);
  const boxes = (selector) => page.locator(selector).evaluateAll((all) => all.map((o) => [o.textContent, o.getBBox()]).map(([words, { x, y, width, height }]) => ({ words, x, y, right: x + width, below: y + height })));
  const within = async (about) => {
    const all = await boxes(".pick-mark text"), [paper] = await boxes("svg.map .paper");
    for (const [i, a] of all.entries()) {
      assert.ok(a.x >= paper.x && a.right <= paper.right + 2 && a.y >= paper.y - 4 && a.below <= paper.below + 2, `${about}: ${a.words} runs out of the map: ${JSON.stringify([a, paper])}`);
      for (const b of all.slice(i + 1)) assert.ok(a.x >= b.right || b.x >= a.right || a.y >= b.below || b.y >= a.below, `${about}: ${a.words} lies over ${b.words}`);
    }
    return all;
  };
  const tried = async (bass, treble) => {
    const build = texts.build.replace(/^bass = .*$/m, `bass = "${bass}"`).replace(/^treble = .*$/m, `treble = "${treble}"`);
    await page.setInputFiles("#open", { name: "build.toml", mimeType: "text/plain", buffer: Buffer.from(build) });
    await until(page, (build) => JSON.parse(localStorage.getItem("scalepair"))?.state.build === build, build);
    await rested(page);
  };
  for (const width of [320, 360, 800, 1400]) {
    await page.setViewportSize({ width, height: 900 });
    await until(page, () => document.querySelector("svg.map").viewBox.baseVal.width === Math.floor(document.querySelector("#map-box").clientWidth));
    assert.equal((await within(width)).length, 3);
  }
  await page.setViewportSize({ width: 320, height: 900 });
  for (const [bass, treble] of [["635 mm to 645 mm by 5 mm", "625 mm to 635 mm by 5 mm"], ["635 mm to 715 mm by 40 mm", "630 mm to 635 mm by 5 mm"], ["635 mm to 645 mm by 1 mm", "605 mm to 635 mm by 5 mm"]]) {
    await tried(bass, treble);
    assert.ok((await within(bass)).length > 1);
  }
  await tried("660 mm to 665 mm by 5 mm", "635 mm");
  await within("few");
  await tried("660 mm", "635 mm");
  assert.deepEqual((await within("one")).map((o) => o.words), ["Smallest, middle, longest"]);
});

test("choose: where no pair comes near, nothing is called as good", async (t) => {
  const page = await open(t);
  await rested(page);
  const stock = '[strings]\nstock = ["p10", "p11", "p13", "p17", "w24", "w26", "w34", "w36", "w44", "w46"]\n';
  await page.setInputFiles("#open", { name: "build.toml", mimeType: "text/plain", buffer: Buffer.from(texts.build.replace("[strings]\n", stock)) });
  await until(page, () => /^No pair comes near: the least feel error is [\d.]+.%\. .*they want ([\d.]+ ){6}g\/m\.$/.test(document.querySelector("#words .lines").textContent));
  await rested(page);
  assert.match(await page.textContent("#words .say"), /^Feel error/);
  assert.equal(await page.locator("svg.map .squares.good").count(), 0);
  assert.doesNotMatch(await page.locator("#choose").innerText(), /as good/i);
  const box = await page.locator("svg.map").boundingBox();
  await page.mouse.move(box.x + 100, box.y + 60);
  assert.match(await page.textContent(".map-head .hint"), /feel error|slant/);
});

test("choose: without lengths to try, a build in inches steps by eighths", async (t) => {
  const page = await open(t, { build: "eight_inch" });
  await rested(page);
  const build = textOf("eight_inch", "build.toml").replace(/^\[scales\]\n(.*\n)*?\n/m, "");
  assert.doesNotMatch(build, /scales/);
  await page.setInputFiles("#open", { name: "build.toml", mimeType: "text/plain", buffer: Buffer.from(build) });
  await until(page, (build) => JSON.parse(localStorage.getItem("scalepair"))?.state.build === build, build);
  await rested(page);
  await page.focus("svg.map");
  for (const key of ["ArrowLeft", "ArrowDown"]) await page.keyboard.press(key);
  for (const side of ["bass", "treble"]) assert.equal((Number(await page.inputValue(`#${side}-length`)) * 8) % 1, 0, await page.inputValue(`#${side}-length`));
});

test("choose: a finger drags the point up and down, and the neutral fret, while the page stays; a tap on an arrow is half a fret", async (t) => {
  const page = await open(t, { width: 360, height: 780, touch: true });
  await rested(page);
  const touch = await page.context().newCDPSession(page);
  const drag = async (selector, dx, dy) => {
    await page.locator(selector).scrollIntoViewIfNeeded();
    const box = await page.locator(selector).boundingBox(), [x, y] = [box.x + box.width / 2 + (dx || dy ? 0 : box.width / 3), box.y + box.height / 2], before = await page.evaluate(() => scrollY);
    await touch.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: [{ x, y }] });
    for (let i = 1; i <= 8 && (dx || dy); i++) await touch.send("Input.dispatchTouchEvent", { type: "touchMove", touchPoints: [{ x: x + (dx * i) / 8, y: y + (dy * i) / 8 }] });
    await touch.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
    await answered(page);
    assert.equal(await page.evaluate(() => scrollY), before, "the page stays");
  };
  await type(page, page.locator("#treble-length"), "635"); // what stands there already
  await drag("svg.map .grip", -30, 50);
  assert.match(await shown(page), /^65\d.* bass, 62\d/);
  assert.equal(`${await page.inputValue("#treble-length")}.0 mm treble`, (await shown(page)).split(", ")[1], "a field in hand follows too");
  const tag = page.locator("#fan .tag"), at = async () => Number(await tag.getAttribute("aria-valuenow"));
  await drag("#fan .tag", 0, 120);
  const moved = await at();
  assert.ok(moved > 18, `the neutral fret is at ${moved / 2}`);
  await drag("#fan .tag", 0, 0);
  assert.equal(await at(), moved + 1);
});

test("choose: a wrong length stands at its field and changes nothing", async (t) => {
  const page = await open(t);
  await rested(page);
  const before = await shown(page);
  await type(page, page.locator("#bass-length"), "69O");
  await until(page, () => !document.querySelector("#bass-wrong").hidden);
  assert.match(await page.textContent("#bass-wrong"), /69O/);
  assert.equal(await page.getAttribute("#bass-length", "aria-invalid"), "true");
  assert.equal(await shown(page), before);
});

test("choose: a pair that breaks a limit says so, and a button leads to the nearest that keeps all", async (t) => {
  const page = await open(t);
  await rested(page);
  await type(page, page.locator("#bass-length"), "710");
  await until(page, () => document.querySelector("#words .say").classList.contains("bad"));
  assert.match(await page.textContent("#words .lines"), /^Slant of the saddle line: 42\.8° against 30\.0°$/, "keys are the file's");
  await page.click("#words button");
  await until(page, () => !document.querySelector("#words .say").classList.contains("bad"));
});

test("choose: where no pair is left, the page says what drops them and keeps the last good pair", async (t) => {
  const page = await open(t);
  await rested(page);
  const before = await shown(page);
  await type(page, page.locator("#bass-length"), "661"); // between two steps of the search
  await shows(page, "661.0 mm", "635.0 mm");
  await until(page, () => document.querySelector("#words .say").textContent === "As good as the best.");
  await page.click("#undo");
  await shows(page, "660.0 mm", "635.0 mm");
  await page.click(".limits > summary");
  await type(page, page.locator(".limits .key", { hasText: "nut to fret 1" }).locator("input"), "30 mm");
  await until(page, () => /No pair/.test(document.querySelector("#words .say").textContent));
  assert.match(await page.textContent("#words .lines"), /dropped by nut to fret 1/);
  await until(page, () => document.querySelector("#picks").hidden); // they are of the limits before
  assert.equal(await shown(page), before);
  await page.click("#undo");
  await until(page, () => !document.querySelector("#words .say").classList.contains("bad"));
});

test("choose: a pair for which no set keeps the limits on strings says so, and the page goes on", async (t) => {
  const page = await open(t);
  await rested(page);
  await type(page, page.locator("#bass-length"), "670");
  await page.click(".limits > summary");
  await type(page, page.locator(".limits .key", { hasText: "most tension" }).locator("input"), "20 N");
  await until(page, () => /No pair/.test(document.querySelector("#words .say").textContent) && !document.querySelector("#choose").classList.contains("working"));
  await page.reload();
  await until(page, () => /greatest tension/.test(document.querySelector("#words").textContent));
  await page.click(".limits > summary");
  await type(page, page.locator(".limits .key", { hasText: "most tension" }).locator("input"), "120 N");
  await shows(page, "670.0 mm", "635.0 mm");
  await until(page, () => !document.querySelector("#words .say").classList.contains("bad"));
});

test("choose: limits and units are keys of the build; a value out of range is refused at its field", async (t) => {
  const page = await open(t);
  await rested(page);
  await page.click(".limits > summary");
  await type(page, page.locator(".limits .key", { hasText: "saddle slant" }).locator("input"), "20");
  assert.equal((await kept(page)).build, texts.build.replace("saddle_slant_deg = 30", "saddle_slant_deg = 20"));
  await type(page, page.locator(".limits .key", { hasText: "saddle slant" }).locator("input"), "200");
  await until(page, () => /0\.1 to 60/.test(document.querySelector(".limits").textContent));
  assert.match((await kept(page)).build, /saddle_slant_deg = 20/);
  await page.selectOption("#length-unit", "in");
  await until(page, () => /^[\d.]+ in bass/.test(document.querySelector("#pair .unseen").textContent));
});

const section = (page, name) => page.locator("#form .form-section", { has: page.getByRole("heading", { name, exact: true }) });
const field = (page, name, key) => section(page, name).locator(".key", { hasText: new RegExp("^" + key) }).locator("input");

test("choose: an entry that is not complete leaves the pair, and says in the form what is missing", async (t) => {
  const page = await open(t);
  await rested(page);
  const before = await shown(page);
  await page.click("#brief button");
  await section(page, "Blanks, one more").locator("summary").click();
  await field(page, "Blanks, one more", "length").fill("580 mm");
  await page.keyboard.press("Tab");
  await until(page, () => [...document.querySelectorAll("#form .form-section > .wrong-words:not([hidden])")].some((p) => /^width is missing/.test(p.textContent)));
  assert.equal(await shown(page), before);
  assert.equal(await page.locator("#words button:visible").count(), 0);
  await page.keyboard.type("80 mm");
  await page.keyboard.press("Enter");
  await until(page, () => !document.querySelector("#words .say").classList.contains("bad"));
  assert.equal(await page.evaluate(() => document.activeElement.value), "80 mm", "the focus stays");
  await page.click("#undo");
  await answered(page);
  await page.reload();
  await until(page, () => [...document.querySelectorAll("#form h3")].some((h) => h.textContent === "Blanks 4"));
  await page.click("#form > summary");
  assert.ok(await field(page, "Blanks 4", "width").isVisible(), "what is missing is not folded away");
});

test("choose: a second tuning stands beside the first, and the hand stays in it", async (t) => {
  const page = await open(t, { width: 360 });
  await rested(page);
  await page.click("#brief button");
  await section(page, "Tunings, one more").locator("summary").click();
  await field(page, "Tunings, one more", "name").fill("Low A");
  await page.keyboard.press("Tab");
  await until(page, () => [...document.querySelectorAll("#form h3")].some((h) => h.textContent === "Tunings 2"));
  await page.keyboard.type("A1 E2 A2 D3 F#3 B3");
  await page.keyboard.press("Enter");
  await until(page, () => document.querySelectorAll("#each .tuning-shown option").length === 2);
  assert.deepEqual([await field(page, "Tunings 1", "tuning").inputValue(), await field(page, "Tunings 2", "tuning").inputValue()], ["B1 E2 A2 D3 F#3 B3", "A1 E2 A2 D3 F#3 B3"]);
  assert.equal(await field(page, "Tunings 2", "name").inputValue(), "Low A");
  assert.equal(await field(page, "Tunings 2", "tuning").evaluate((input) => input === document.activeElement), true);
  assert.equal(await field(page, "Tunings 2", "tuning").evaluate((input) => (input.value += " E4", input.scrollWidth - input.clientWidth)), 0, "seven strings are seen on a phone");
  await page.click("#undo");
  await page.click("#undo");
  assert.equal((await kept(page)).build, texts.build);
});

test("choose: what is wrong with an entry of a list stands at its field, and a decimal comma parts nothing", async (t) => {
  const page = await open(t);
  await rested(page);
  await page.click("#brief button");
  await type(page, field(page, "Reference", "gauges"), "46 w36 26 p17 p13 p10");
  await until(page, () => /"46".*"26"/s.test(document.querySelector("#words").textContent));
  const wrong = (name, key) => section(page, name).locator(".key", { hasText: new RegExp("^" + key) }).locator(".wrong-words").textContent();
  assert.match(await wrong("Reference", "gauges"), /"46".*"w46".*\n.*"26".*"w26"/);
  assert.equal(await field(page, "Reference", "gauges").getAttribute("aria-invalid"), "true");
  await page.click("#undo");
  for (const text of ["650,5 mm to 720 mm by 2,5 mm", "650 mm,655,5 mm"]) {
    await type(page, field(page, "Scales", "bass"), text);
    assert.match(await wrong("Scales", "bass"), /comma/);
    assert.equal(await field(page, "Scales", "bass").inputValue(), text);
    assert.equal((await kept(page)).build, texts.build);
  }
  await type(page, field(page, "Scales", "bass"), "650 mm,655.5 mm, 660 mm");
  assert.match((await kept(page)).build, /\nbass = \["650 mm", "655.5 mm", "660 mm"\]\n/);
  await page.click("#undo");
  await section(page, "Constructions, one more").locator("summary").click();
  await type(page, field(page, "Constructions, one more", "wraps"), "0.35 mm");
  assert.match(await wrong("Constructions, one more", "wraps"), /\w/);
  assert.equal((await kept(page)).build, texts.build, "what makes no file is not kept");
});

test("choose: columns that an unknown core leaves empty are explained once", async (t) => {
  const page = await open(t);
  await rested(page);
  const lines = texts.readings.split("\n").filter((l) => l && !l.startsWith("#")), core = lines[0].split(",").indexOf("core_mm");
  const bare = lines.map((l, i) => l.split(",").map((c, j) => (i && j === core ? "" : c)).join(",")).join("\n") + "\n";
  await page.setInputFiles("#open", { name: "readings.csv", mimeType: "text/csv", buffer: Buffer.from(bare) });
  await until(page, () => /core unknown: no bend/.test(document.querySelector("#each").textContent));
  await until(page, () => /Not judged: breaking strength of .*w80.*; core or strength not known/.test(document.querySelector(".limits-asked").textContent));
});

test("choose: A stays beside what is shown", async (t) => {
  const page = await open(t);
  await rested(page);
  await page.click("#keep-a");
  await page.focus("svg.map");
  await page.keyboard.press("ArrowRight");
  await until(page, () => /660 \/ 635.*665 \/ 635/s.test(document.querySelector("#compared thead").textContent));
  await answered(page);
  assert.equal(await page.locator("#compared tbody >> nth=0 >> tr").count(), 6);
  await page.click(".picks tr.a button");
  await until(page, () => document.querySelector("#keep-a").textContent === "Forget A");
  await page.locator('[aria-label^="String 1: heavier"]').click(); // now A's gauges are not those of the pair
  await until(page, () => document.querySelector("#each .two-way button:nth-child(2)").getAttribute("aria-pressed") === "true");
  await page.click(".picks tr.a button");
  await until(page, () => document.querySelector("#each .two-way button:nth-child(2)").getAttribute("aria-pressed") === "false");
  await page.click("#begin-demo");
  await until(page, () => document.querySelector("#compared").hidden && document.querySelector("#keep-a").textContent === "Keep as A");
});

test("choose: every key of the build can be reached", async (t) => {
  const page = await open(t);
  await rested(page);
  await page.click("#brief button");
  const { result } = await ask(page, "keys", { build: texts.build });
  const keys = result.sections.flatMap((s) => s.keys);
  await until(page, (count) => document.querySelectorAll("#form .key").length === count, keys.length);
  const frets = page.locator("#form .form-section", { has: page.getByRole("heading", { name: "Neck" }) }).locator(".key", { hasText: /^frets/ }).locator("input");
  await type(page, frets, "22");
  assert.equal((await kept(page)).build, texts.build.replace("frets = 24", "frets = 22"));
});
