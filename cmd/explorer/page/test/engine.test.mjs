// The engine in a browser answers as the command line does, and nothing leaves the page.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { ask, builds, command, json, open, textOf } from "./harness.mjs";

for (const build of builds.filter((name) => name !== "hostile"))
  test(`engine: ${build} has the numbers of the command line`, async (t) => {
    const page = await open(t, { build });
    const texts = { build: textOf(build, "build.toml"), readings: textOf(build, "readings.csv") };
    assert.deepEqual(await page.evaluate(() => globalThis.scalepair.first), { ...texts, marks: "", demo: build === "demo" });
    const calls = [
      ["gauges", ["gauges"], {}],
      ["advise", ["advise"], { trials: "300" }],
      ["tension", ["tension"], {}],
      ["layout", ["layout"], {}],
      ["bench", ["bench"], {}],
      ["compare", ["compare"], {}],
      ["next", ["gauges", "--next"], {}],
    ];
    for (const [name, args, flags] of calls) {
      const line = Object.entries(flags).flatMap(([flag, value]) => ["--" + flag, value]);
      const answer = await ask(page, name, { ...texts, flags });
      assert.ok(answer.ok, answer.faults.map((f) => f.text).join("\n"));
      if (name === "advise") delete answer.result.map;
      assert.deepEqual(answer.result, json(build, ...args, ...line), `${name} of ${build}`);
    }
    const { folder } = command(build, "draw", "--out", "fan.pdf", "--out", "fan.svg", "--out", "fan.dxf");
    for (const kind of ["pdf", "svg", "dxf"]) {
      const request = { ...texts, flags: { kind } };
      const bytes = await page.evaluate(async (request) => [...(await globalThis.scalepair.quick("file", request)).result.bytes], request);
      assert.ok(Buffer.from(bytes).equals(readFileSync(join(folder, "fan." + kind))), kind);
    }
  });

test("engine: a failure is an answer, and the next call is answered", async (t) => {
  const page = await open(t);
  const wrong = await ask(page, "pair", { flags: { bass: "690" } });
  assert.equal(wrong.ok, false);
  assert.equal(wrong.faults[0].input, "--bass");
  const unknown = await ask(page, "nothing", {});
  assert.equal(unknown.ok, false);
  assert.equal((await ask(page, "pair", { flags: { bass: "690 mm", treble: "650 mm" } })).ok, true);
});

test("engine: only the newest of many movements is answered, and a slow call gives way", async (t) => {
  const page = await open(t);
  const got = await page.evaluate(async () => {
    const pair = (/** @type {number} */ bass) => globalThis.scalepair.quick("pair", { flags: { bass: bass + " mm", treble: "650 mm" } }, "slider");
    const moves = await Promise.all(Array.from({ length: 30 }, (_, i) => pair(660 + i)));
    const slow = await Promise.all(Array.from({ length: 3 }, () => globalThis.scalepair.slow("advise", { flags: { trials: "20000" } })));
    return { moves: moves.map((m) => m?.result.tension.pair.bass_mm ?? null), slow: slow.map((s) => s && s.ok) };
  });
  assert.equal(got.moves.at(-1), 689);
  assert.ok(got.moves.filter((m) => m === null).length > 20);
  assert.deepEqual(got.slow, [null, null, true]);
});
