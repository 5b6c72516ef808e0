// Strings: the gauge table. At the left each gauge against what its family says, at the right
// the gauge in hand (inhand.js); changes of the table are made here.

import { attr, byId, el, list, px, say, svg } from "./dom.js";
import { figures } from "./figures.js";
import { gaugePanel } from "./inhand.js";
import { Rows } from "./rows.js";
import { announce } from "./shell.js";
import { capital, uncertain } from "./units.js";
import { inWords, wrongThere } from "./words.js";

/** @typedef {import("./types.js").GaugeOf} GaugeOf */
/** @typedef {import("./types.js").Fault} Fault */
/** @typedef {import("./inhand.js").Edit} Edit */
/** @typedef {import("./inhand.js").Entry} Entry */

const ENDS = 12; // percent at the ends of the scale (judgement)
const HALF_95 = 1.96;

/**
 * @param {import("./app.js").App} app
 */
export function stock(app) {
  const { store, answers } = app;
  const figure = figures();
  byId("stock-figure").append(figure.node);
  const paste = el("textarea", { rows: 2, placeholder: "Paste rows of a spreadsheet", "aria-label": "Paste rows of a spreadsheet", oninput: typed });
  const take = el("button", { class: "button take", hidden: true, onclick: pasted }, "Add these rows"), taken = el("p", { class: "small taken", role: "status" });
  const adding = el("input", { class: "text", placeholder: "its name", "aria-label": "Name of a new gauge", autocomplete: "off", onkeydown: (event) => event.key === "Enter" && add() });
  const clear = el("button", { class: "button flat remove-all", onclick: removeAll }, "Remove all rows");
  byId("stock-drop").append(paste, el("span", { class: "field" }, adding), el("button", { class: "button", onclick: add }, "Add a gauge"), take, taken, clear);
  paste.addEventListener("paste", () => setTimeout(pasted));
  store.addEventListener("change", () => say(taken, ""));
  byId("nothing-add").addEventListener("click", () => adding.focus());
  byId("nothing-paste").addEventListener("click", () => paste.focus());
  byId("nothing-demo").addEventListener("click", () => byId("begin-demo").click());
  const faults = byId("stock-faults"), lists = byId("stock-list"), numbers = new Rows(), panel = gaugePanel(byId("stock-panel"), app, edit, numbers);

  let chosen = "", added = 0; // a row that was added is in hand once it is in the table

  /** What is typed is taken by its button, what is pasted at once. */
  function typed() {
    take.hidden = !paste.value.trim();
    if (!take.hidden) say(taken, "");
  }

  async function pasted() {
    const text = paste.value;
    if (!text.trim()) return;
    paste.value = "";
    if (await edit([], text)) paste.value = text; // it stays to be mended
    typed();
  }

  /** Leaves the heading row; undo brings the rows back. */
  async function removeAll() {
    await app.inTurn(async () => store.change({ readings: await app.withoutRows(store.state) }));
    announce("All rows removed; undo brings them back");
    adding.focus();
  }

  /** @returns {Promise<void>} */
  async function add() {
    const gauge = adding.value.trim();
    if (!gauge) return adding.focus();
    adding.value = "";
    await edit([{ add: { gauge, kind: "weighed" } }]);
  }

  /**
   * Changes cells and rows; answers what is wrong, "" if nothing.
   * @param {Edit[]} edits
   * @param {string} [pastedText]
   */
  async function edit(edits, pastedText) {
    const of = answers.readings?.readings ?? ""; // the lines are of the table that is painted
    const fault = await app.inTurn(() => change(of, edits, pastedText));
    if (fault) app.refuse([], fault);
    return fault;
  }

  /** @param {string} of @param {Edit[]} edits @param {string} [pastedText] */
  async function change(of, edits, pastedText) {
    const { build, readings } = store.state;
    const placed = edits.map((e) => (e.line ? { ...e, line: numbers.follow(of, readings, e.line) ?? 0 } : e));
    if (placed.some((e) => e.line === 0)) return "The table was changed meanwhile, and this row is not where it was; nothing was changed.";
    const answer = await app.engine.quick("readings", { build, readings, edits: placed, paste: pastedText }, "edit");
    if (!answer?.result) return capital(app.wrongs(answer?.faults ?? []));
    const { readings: now, rows, added: more, pasted } = answer.result;
    if (edits.some((e) => e.add)) added = app.fresh = rows.at(-1).line;
    numbers.changed(readings, now, placed.flatMap((e) => (e.remove && e.line ? [e.line] : [])));
    store.change({ readings: now });
    if (pastedText) say(taken, `${more === 1 ? "1 row" : `${more} rows`} added, read as ${pasted.map(inWords).join("; ")}. Undo takes ${more === 1 ? "it" : "them"} back.`);
    return "";
  }

  /** The rows of the table by gauge, with what the engine says of each. @returns {Entry[]} */
  function rowsOf() {
    /** @type {Map<string, Entry>} */
    const out = new Map();
    const wrong = app.wrongRows();
    for (const row of answers.readings?.rows ?? []) {
      const label = (row.cells.gauge ?? "").trim();
      let entry = out.get(label);
      if (!entry) {
        const gauge = answers.gauges?.gauges.find((g) => g.gauge === label) ?? null;
        out.set(label, (entry = { label, rows: [], gauge, suspect: answers.gauges?.suspects.find((s) => s.gauge === label) ?? null, faults: [] }));
      }
      entry.rows.push(row);
      entry.faults.push(...wrong.filter((f) => f.line === row.line));
    }
    return [...out.values()];
  }

  return function paint() {
    const rows = answers.readings?.rows ?? [];
    numbers.number(answers.readings?.readings ?? "", rows.map((r) => r.line));
    const entries = rowsOf(), looks = entries.filter((e) => e.suspect || e.faults.length);
    const begun = entries.find((e) => e.rows.some((r) => r.line === added));
    if (begun) [chosen, added] = [begun.label, 0];
    if (!entries.some((e) => e.label === chosen)) chosen = (looks[0] ?? entries[0])?.label ?? "";
    byId("stock-nothing").hidden = entries.length > 0 || !answers.readings;
    figure.set(String(entries.length));
    const guesses = entries.filter((e) => e.gauge?.flags.includes("estimated")).length;
    say(byId("stock-say"), [entries.length === 1 ? "gauge in stock." : "gauges in stock.", looks.length ? `${looks.length} to check.` : "", guesses ? `${guesses} estimated from the fit.` : ""].filter(Boolean).join(" "));
    const loose = app.wrongRows().filter((f) => !entries.some((e) => e.faults.includes(f)));
    faults.hidden = !loose.length || !entries.length;
    clear.hidden = !entries.length;
    list(faults, loose, () => {
      const node = el("li");
      return { node, update: (/** @type {Fault} */ f) => say(node, wrongThere(f, app.names())) };
    });
    /** @type {Map<string, Entry[]>} */
    const families = new Map();
    for (const e of entries) {
      const family = e.gauge?.construction ?? e.rows[0].cells.construction ?? "";
      families.set(family, [...(families.get(family) ?? []), e]);
    }
    list(lists, [...families], () => familyTable((label) => {
      chosen = label;
      paint();
      announce(`${label} in hand`);
      if (matchMedia("(max-width: 1279px)").matches) byId("stock-panel").scrollIntoView({ block: "nearest" });
    }, () => chosen));
    const entry = entries.find((e) => e.label === chosen);
    byId("stock-panel").hidden = !entry;
    if (entry) panel.set(entry);
    if (begun) panel.begin();
  };
}

/**
 * The gauges of one construction, each against its family.
 * @param {(label: string) => void} choose
 * @param {() => string} chosen
 */
function familyTable(choose, chosen) {
  const name = el("span"), body = el("tbody");
  const node = el("table", { class: "family" }, el("caption", {}, name),
    el("thead", {}, el("tr", {}, el("th", { scope: "col" }, "Gauge"), el("th", { scope: "col", class: "n" }, "Linear density, g/m"),
      el("th", { scope: "col" }, el("span", { class: "bar-scale" }, el("i", {}, `−${ENDS}`), el("i", {}, `+${ENDS} %`))), el("th", { scope: "col" }, "Known by"))), body);
  function row() {
    let label = "";
    const name = el("span"), again = el("small", { class: "again", "aria-hidden": "true" }, "look again"), button = el("button", { onclick: () => choose(label) }, name, again), density = el("span"), u = el("small"), known = el("td", { class: "known" });
    const bar = intervalBar(), cell = el("td", {}, bar.node), tr = el("tr", {}, el("th", { scope: "row" }, button), el("td", { class: "n" }, density, " ", u), cell, known);
    return {
      node: tr,
      /** @param {Entry} e */
      update(e) {
        label = e.label;
        say(name, label || "without a name");
        attr(button, "aria-pressed", String(label === chosen()));
        tr.classList.toggle("on", label === chosen());
        const [value, ofIt] = e.gauge ? uncertain(e.gauge.linear_density_g_per_m, e.gauge.linear_density_standard_uncertainty_g_per_m, 4) : ["–", ""];
        say(density, value);
        say(u, ofIt);
        bar.set(e.gauge, Boolean(e.suspect));
        const look = e.suspect || e.faults.length;
        again.hidden = !look;
        known.classList.toggle("look", Boolean(look));
        say(known, look ? "look again" : !e.gauge ? "" : e.gauge.flags.includes("estimated") ? "estimated" : e.gauge.readings === 1 ? "1 reading" : `${e.gauge.readings} readings`);
      },
    };
  }
  return {
    node,
    /** @param {[string, Entry[]]} family */
    update([family, entries]) {
      say(name, capital(family || "construction not given"));
      list(body, entries, row);
    },
  };
}

/** A gauge's deviation from its family with its interval; hatched where it is estimated. */
function intervalBar() {
  const line = svg("path", { class: "interval-line" }), dot = svg("circle", { r: 3.5, cy: 14 }), guess = svg("rect", { y: 8, height: 12, class: "guess" });
  const node = svg("svg", { class: "against", viewBox: "0 0 100 28", "aria-hidden": "true" }, svg("path", { class: "base", d: "M50 5v18" }), guess, line, dot);
  return {
    node,
    /** @param {GaugeOf | null} gauge @param {boolean} suspect */
    set(gauge, suspect) {
      const estimated = gauge?.flags.includes("estimated") ?? false, off = estimated ? 0 : gauge?.deviation_percent ?? null;
      const half = estimated ? (gauge?.linear_density_95_percent_interval_half_width_percent ?? 0) : HALF_95 * (gauge?.deviation_standard_uncertainty_percent ?? 0);
      const x = (/** @type {number} */ percent) => px(50 + (50 * Math.max(-ENDS, Math.min(ENDS, percent))) / ENDS);
      attr(node, "visibility", off === null ? "hidden" : null);
      node.classList.toggle("suspect", suspect);
      if (off === null) return;
      attr(guess, "visibility", estimated ? null : "hidden");
      attr(dot, "visibility", estimated ? "hidden" : null);
      attr(guess, "x", x(off - half));
      attr(guess, "width", x(off + half) - x(off - half));
      attr(dot, "cx", x(off));
      attr(line, "d", estimated ? "M0 0" : `M${x(off - half)} 14H${x(off + half)}M${x(off - half)} 9v10M${x(off + half)} 9v10`);
    },
  };
}
