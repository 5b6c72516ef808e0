// Choose: the shown pair and everything that moves with it.

import { byId, el, list, say } from "./dom.js";
import { fanDrawing } from "./fan.js";
import { buildForm, sectionOf } from "./form.js";
import { comparison } from "./compare.js";
import { Grid } from "./grid.js";
import { pairMap } from "./map.js";
import { largePair, picksTable, worth } from "./picks.js";
import { announce } from "./shell.js";
import { sliders } from "./sliders.js";
import { stringRows } from "./strings.js";
import { capital, fixed, glued } from "./units.js";
import { plain } from "./words.js";

/** @typedef {import("./grid.js").Place} Place */

/**
 * Builds the place; what it answers with paints it.
 * @param {import("./app.js").App} app
 */
export function choose(app) {
  const { store, answers } = app;
  const go = (/** @type {Place} */ place, /** @type {boolean} */ going = false) => {
    // On a phone the map lies beneath the words: they keep their height while a finger is on it.
    const node = byId("words");
    if (going && !node.style.height) node.style.height = node.offsetHeight + "px";
    if (!going) node.style.height = "";
    app.go(place, going);
  };
  const large = largePair(byId("pair")), words = worth(byId("words"));
  const map = pairMap(byId("map-box"), go), trying = el("p", { class: "small trying", role: "status" }, "Working: every pair is tried.");
  byId("map-box").append(trying);
  const slides = sliders(byId("map-box"), go, enter);
  const fan = fanDrawing(byId("fan"), (neutral, going) => {
    store.change({ view: { ...answers.place(), neutral } }, "neutral"); // the pair stays the one that is shown
    if (!going) store.settle();
  });
  const picks = picksTable(byId("picks"), ({ kind, place }) => {
    const { a } = store.state.view;
    if (kind === "a" && a) store.change({ view: { bass: a.bass, treble: a.treble, neutral: a.neutral, gauges: a.own ?? null } });
    else go(place);
  });
  const reasons = el("ul", { class: "small reasons" }), cautions = el("ul", { class: "caution" });
  byId("picks").append(reasons);
  const rows = stringRows(byId("each"), {
    gauge(number, label) {
      const set = [...(answers.pair?.tension.pair.gauges ?? [])];
      set[set.length - number] = label; // low string first
      store.change({ view: { ...answers.place(), gauges: set } });
    },
    keep(kept) {
      const set = answers.pair?.tension.pair.gauges ?? [];
      store.change({ view: { gauges: kept ? set : app.keyText("strings.gauges") ? [] : null } });
    },
  });
  byId("each").append(cautions);
  const compared = comparison(byId("compared"));
  const weigh = el("a", { class: "button", href: "#strings" }), weighWords = el("span");
  rows.tip.append(weighWords, weigh);
  const asked = el("p", { class: "small limits-asked" }), limits = sectionOf((edits) => app.edit(edits), (key) => app.faultOf(key));
  byId("map-box").append(el("details", { class: "limits" }, el("summary", {}, asked), limits.node));
  const form = buildForm(/** @type {HTMLElement} */ (byId("form").lastElementChild), (edits) => app.edit(edits), (key) => app.faultOf(key));
  const name = el("span"), notes = el("b"), change = el("button", { class: "link", onclick: openForm }, "Change");
  byId("brief").append(name, ": ", notes, change);
  const keepA = byId("keep-a"), mini = byId("mini");
  keepA.addEventListener("click", () => {
    const { view } = store.state, pair = answers.pair?.tension.pair;
    if (!pair) return;
    store.change({ view: { a: isA({ bass: pair.bass_mm, treble: pair.treble_mm }) ? null : { bass: pair.bass_mm, treble: pair.treble_mm, neutral: view.neutral, gauges: pair.gauges, own: view.gauges } } });
  });
  new IntersectionObserver(([entry]) => document.body.classList.toggle("away", !entry.isIntersecting && !byId("choose").hidden), { rootMargin: "-56px 0px 0px" }).observe(byId("pair"));

  /** @type {Grid | null} */
  let grid = null;
  /** @type {unknown} */
  let drawn = null;
  let drawnIn = "";
  /** What the form was painted of. @type {unknown[]} */
  let formOf = [];

  /** Whether a pair, with the neutral fret that is asked for, is the one kept as A. @param {Place} place */
  function isA(place) {
    const { a, neutral } = store.state.view;
    return a !== null && a.bass === place.bass && a.treble === place.treble && a.neutral === neutral;
  }

  /** Which gauge to weigh next, where that is worth it. */
  function paintNext() {
    const first = answers.next?.a_weighing_is_worth_it ? answers.next.next[0] : null;
    rows.tip.hidden = !first;
    if (!first) return;
    say(weighWords, `String ${first.strings.join(", ")}: ${app.units.len(first.length_to_weigh_mm, 0)} of ${first.gauge}, in one piece or several.`);
    say(weigh, `Weigh ${first.gauge} next`);
  }

  function openForm() {
    const details = /** @type {HTMLDetailsElement} */ (byId("form"));
    details.open = true;
    details.querySelector("summary")?.focus();
  }

  /** Takes a typed length. @param {"bass" | "treble"} side @param {string} text */
  async function enter(side, text) {
    const request = answers.pairRequest(), place = answers.place();
    Object.assign(request.flags, place && { bass: `${place.bass} mm`, treble: `${place.treble} mm` }, { [side]: /[a-z"″]/i.test(text) ? text : `${text} ${app.units.lengthName}` });
    const answer = await app.engine.quick("pair", request, "field " + side);
    if (!answer) return "";
    if (!answer.ok) return answer.faults.map((f) => app.wrong(f))[0] ?? "";
    const { pair } = answer.result.tension;
    go({ bass: pair.bass_mm, treble: pair.treble_mm });
    return "";
  }

  function paintMap() {
    const { map: found, advice } = answers, { units } = app;
    if (!found || (found === drawn && drawnIn === units.length)) return;
    [drawn, drawnIn] = [found, units.length];
    grid = new Grid(found);
    trying.hidden = true;
    map.draw(grid, advice?.picks ?? [], units);
  }

  function paintForm() {
    const of = [answers.keys, answers.advice, answers.faults.pair, answers.faults.advise, answers.pair?.tension.tunings.length, app.units];
    if (of.every((one, i) => one === formOf[i])) return;
    formOf = of;
    const sections = answers.keys?.sections ?? [], limitsKeys = sections.find((s) => s.path === "limits");
    form.set(sections, app.units);
    if (limitsKeys) limits.update(limitsKeys, app.units);
    say(asked, answers.advice?.asked.find((line) => line.startsWith("Limits")) ?? "Limits");
    byId("brief").hidden = !answers.pair || !app.keyText("name");
    say(name, app.keyText("name"));
    say(notes, answers.pair?.tension.tunings.map((t) => t.tuning_name).join("; ") ?? "");
  }

  return function paint() {
    const { advice, pair } = answers, { units } = app, { view } = store.state;
    byId("choose").classList.toggle("working", answers.working);
    paintMap();
    paintForm();
    const place = answers.place(), impossible = !pair && Boolean(answers.faults.pair?.length);
    byId("choose").classList.toggle("no-pair", impossible);
    byId("choose").classList.toggle("no-map", !answers.map);
    if (impossible) {
      words.set(worthOf());
      say(mini, "");
    }
    if (!place) return;
    large.set(place, units);
    say(mini, `${units.scale(place.bass)} / ${units.scale(place.treble)}`);
    map.move(place, view.a);
    slides.set(grid, place, units);
    say(keepA, isA(place) ? "Forget A" : view.a ? "Keep as A instead" : "Keep as A");
    if (!pair) return;
    const { tension } = pair;
    const value = worthOf();
    words.set(value);
    fan.draw({ fan: pair.fan, tension, neutral: view.neutral, units, reference: app.keyText("reference.name"), leftHanded: view.leftHanded });
    rows.set(tension, stock(), units, kept(), unknown());
    byId("picks").hidden = !advice && !answers.working;
    if (advice) picks.set(pickRows(), units, advice.none_near);
    // The first stands beneath the pair, what stops a pick at the pick.
    list(reasons, (advice?.reasons ?? []).slice(1).filter((r) => !/^(Smaller fan|Longer bass):/.test(r)), sentence);
    list(cautions, tension.cautions, sentence);
    byId("compared").hidden = !answers.compared;
    if (answers.compared) compared.set(answers.compared, units);
    paintNext();
    announce(`${units.scale(place.bass)} over ${units.scale(place.treble)}: ${value.large}`);
  };

  function sentence() {
    const node = el("li");
    return { node, update: (/** @type {string} */ words) => say(node, glued(capital(plain(words, app.names())))) };
  }

  /** What the shown pair is worth, by the square of the map on which it stands. @returns {import("./picks.js").Worth} */
  function worthOf() {
    const { advice, pair, faults } = answers, place = answers.place();
    const near = place && grid?.nearestKept(place), cell = place && grid?.at(place);
    const back = near ? [{ words: `To ${app.units.scale(near.bass)} / ${app.units.scale(near.treble)}, the nearest that keeps all`, press: () => go(near) }] : [];
    if (answers.readings?.rows.length === 0)
      return { large: "Nothing weighed yet.", bad: false, lines: ["Weigh the cut-off ends of strings that you know, and type or paste them in Strings; then every pair is tried."], buttons: [{ words: "To Strings", press: () => (location.hash = "strings") }] };
    if (grid && pair && !grid.nearestKept({ bass: 0, treble: 0 })) return { large: "No pair keeps every limit.", bad: true, lines: (faults.advise ?? []).map((f) => app.what(f)), buttons: [] };
    // While the build is not complete the last good pair stays, and what is missing stands at its entry in the form.
    const incomplete = (faults.pair ?? []).filter((f) => /\.(toml|csv)$/.test(f.input));
    if (incomplete.length)
      return { large: pair ? "The last good pair." : "No pair yet.", bad: true, lines: incomplete.map((f) => `${app.what(f)}: see ${f.input.endsWith(".csv") ? "Strings" : "the form below"}`), buttons: [] };
    if (faults.pair?.length) return { large: "This pair is not possible.", bad: true, lines: faults.pair.map((f) => app.what(f)), buttons: back };
    const broken = pair?.tension.limits_broken ?? [];
    if (broken.length) return { large: "This pair breaks a limit.", bad: true, lines: broken.map((words) => capital(plain(words, app.names()))), buttons: back };
    const error = pair ? `Feel error ${fixed(pair.tension.pair.feel_error_percent, 1)} %.` : "";
    // Between the steps of the search no square says it.
    const good = cell ? cell.good : advice && pair && !advice.none_near && pair.tension.pair.feel_error_percent <= advice.allowed_feel_error_percent;
    return { large: good ? "As good as the best." : error, bad: false, lines: advice?.reasons.slice(0, 1) ?? [], buttons: [] };
  }

  /** Gauges that can be chosen, by linear density. */
  function stock() {
    const gauges = [...(answers.gauges?.gauges ?? [])].sort((a, b) => a.linear_density_g_per_m - b.linear_density_g_per_m);
    return gauges.map((g) => ({ label: g.gauge, words: `${app.units.diameter(g.outer_mm)} ${g.construction}` }));
  }

  /** Why columns of some strings are empty: the engine's words on their gauges, once. */
  function unknown() {
    const strings = (answers.pair?.tension.tunings[0].strings ?? []).filter((s) => s.inharmonicity_cents === null);
    const note = answers.gauges?.gauges.find((g) => strings.some((s) => s.gauge === g.gauge))?.notes.find((n) => n.startsWith("core unknown"));
    return note ? `–: ${strings.map((s) => s.gauge).join(", ")}: ${note}; the feel error leaves out what is not known.` : "";
  }

  /** Whether one set stands for every pair. */
  function kept() {
    const { gauges } = store.state.view;
    return gauges ? gauges.length > 0 : app.keyText("strings.gauges") !== "";
  }

  /** @returns {import("./picks.js").Row[]} */
  function pickRows() {
    const { advice, pair } = answers, place = answers.place(), { a } = store.state.view;
    if (!advice || !place) return [];
    const lowerBound = pair?.tension.tunings[0].strings[0].inharmonicity_is_lower_bound ?? false;
    const stays = (/** @type {string} */ pick) => {
      const sure = advice.confidence?.picks.find((p) => p.pick === pick);
      return sure && sure.stays_good_percent !== null ? `${fixed(sure.stays_good_percent, 0)} %${sure.uncertain ? ", uncertain" : ""}` : "";
    };
    const same = (/** @type {Place} */ p) => p.bass === place.bass && p.treble === place.treble;
    const chosen = advice.picks.find((p) => same({ bass: p.bass_mm, treble: p.treble_mm }));
    const why = (/** @type {string} */ pick) => {
      const stop = pick === "smallest fan" ? advice.stops_smallest_fan : pick === "longest bass" ? advice.stops_longest_bass : null;
      return stop ? `${pick === "smallest fan" ? "Smaller fan" : "Longer bass"}: ${plain(stop.why, app.names())}.` : "";
    };
    /** @type {import("./picks.js").Row[]} */
    const out = [{ kind: "now", name: "Shown now", why: "", place, pair: pair?.tension.pair ?? null, lowerBound, stays: chosen ? stays(chosen.pick) : "", on: false }];
    if (a) out.push({ kind: "a", name: "A", why: a.gauges.join(" "), place: a, pair: answers.compared?.columns[0].pair ?? null, lowerBound, stays: "", on: isA(place) });
    for (const p of advice.picks) {
      const at = { bass: p.bass_mm, treble: p.treble_mm };
      out.push({ kind: "pick", name: p.pick, why: why(p.pick), place: at, pair: p, lowerBound, stays: stays(p.pick), on: same(at) });
    }
    return out;
  }
}
