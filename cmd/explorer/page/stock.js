// Strings: the gauge table. At the left each gauge against what its family says, at the right
// the readings of the gauge in hand, edited in place.

import { attr, byId, el, list, px, say, show, svg } from "./dom.js";
import { atField } from "./engine.js";
import { figures } from "./figures.js";
import { announce } from "./shell.js";
import { capital, fixed, uncertain } from "./units.js";

/** @typedef {import("./types.js").GaugeOf} GaugeOf */
/** @typedef {import("./types.js").Suspect} Suspect */
/** @typedef {import("./types.js").Fault} Fault */
/** @typedef {{line: number, cells: Record<string, string>}} RowOf */
/** @typedef {{label: string, rows: RowOf[], gauge: GaugeOf | null, suspect: Suspect | null, faults: Fault[]}} Entry */

const FIRST = ["pieces", "length_mm", "length_in", "mass_g"]; // cells that a weighing needs; the others fold away
const ENDS = 12; // percent at the ends of the scale (judgement)
const HALF_95 = 1.96;

/**
 * @param {import("./main.js").App} app
 */
export function stock(app) {
  const { store, answers } = app;
  const figure = figures();
  byId("stock-figure").append(figure.node);
  const paste = el("textarea", { rows: 2, placeholder: "Paste rows of a spreadsheet", "aria-label": "Paste rows of a spreadsheet" });
  const adding = el("input", { class: "text", placeholder: "its name", "aria-label": "Name of a new gauge", autocomplete: "off" });
  byId("stock-drop").append(paste, el("span", { class: "field" }, adding), el("button", { class: "button", onclick: add }, "Add a gauge"));
  const clear = el("button", { class: "button flat remove-all", onclick: removeAll }, "Remove all rows");
  byId("stock-drop").append(clear);
  paste.addEventListener("paste", () => setTimeout(pasted));
  paste.addEventListener("change", pasted);
  byId("nothing-add").addEventListener("click", () => adding.focus());
  byId("nothing-paste").addEventListener("click", () => paste.focus());
  byId("nothing-demo").addEventListener("click", () => byId("begin-demo").click());
  const faults = byId("stock-faults"), lists = byId("stock-list"), panel = gaugePanel(byId("stock-panel"), app, edit);

  let chosen = "", added = ""; // a gauge that was added is in hand once it is in the table

  async function pasted() {
    const text = paste.value;
    if (!text.trim()) return;
    paste.value = "";
    const fault = await edit([], text);
    if (!fault) return;
    paste.value = text; // it stays to be mended
    app.refuse([], fault);
  }

  /** Leaves the heading row; undo brings the rows back. */
  async function removeAll() {
    const { build, readings } = store.state;
    store.change({ readings: await app.withoutRows({ build, readings }) });
    announce("All rows removed; undo brings them back");
    adding.focus();
  }

  async function add() {
    const gauge = adding.value.trim();
    if (!gauge) return adding.focus();
    adding.value = "";
    const like = rowsOf().find((e) => e.label === chosen)?.rows.at(-1)?.cells;
    added = gauge;
    await edit([{ add: { gauge, construction: like?.construction ?? "plain", kind: "weighed" } }]);
  }

  /** @param {object[]} edits @param {string} [pastedText] */
  function edit(edits, pastedText) {
    return app.inTurn(() => change(edits, pastedText));
  }

  /** @param {object[]} edits @param {string} [pastedText] */
  async function change(edits, pastedText) {
    const { build, readings } = store.state;
    const answer = await app.engine.quick("readings", { build, readings, edits, paste: pastedText }, "edit");
    if (!answer?.result) return answer?.faults?.[0]?.text ?? "";
    store.change({ readings: answer.result.readings });
    return "";
  }

  /** The rows of the table by gauge, with what the engine says of each. @returns {Entry[]} */
  function rowsOf() {
    /** @type {Map<string, Entry>} */
    const out = new Map();
    const wrong = [...(answers.faults.readings ?? [])];
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
    const entries = rowsOf(), looks = entries.filter((e) => e.suspect || e.faults.length);
    if (entries.some((e) => e.label === added)) {
      [chosen, added] = [added, ""];
      byId("stock-panel").hidden = false;
      byId("stock-panel").focus();
    }
    if (!entries.some((e) => e.label === chosen)) chosen = (looks[0] ?? entries[0])?.label ?? "";
    byId("stock-nothing").hidden = entries.length > 0 || !answers.readings;
    figure.set(String(entries.length));
    const guesses = entries.filter((e) => e.gauge?.flags.includes("estimated")).length;
    say(byId("stock-say"), [entries.length === 1 ? "gauge in stock." : "gauges in stock.", looks.length ? `${looks.length} to check.` : "", guesses ? `${guesses} estimated from the fit.` : ""].filter(Boolean).join(" "));
    const loose = (answers.faults.readings ?? []).filter((f) => !entries.some((e) => e.faults.includes(f)));
    faults.hidden = !loose.length || !entries.length;
    clear.hidden = !entries.length;
    list(faults, loose, () => {
      const node = el("li");
      return { node, update: (/** @type {Fault} */ f) => say(node, f.text) };
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

/**
 * The gauge in hand: its density, what is suspect with the likely slip as a button, its rows.
 * @param {HTMLElement} box
 * @param {import("./main.js").App} app
 * @param {(edits: object[]) => Promise<string>} edit
 */
function gaugePanel(box, app, edit) {
  let label = "";
  const name = el("b"), what = el("span", { class: "small" }), density = el("span"), u = el("small"), heading = el("h2");
  const slip = el("div", { class: "slip" }), why = el("p"), ways = el("div", { class: "acts-here" }), rows = el("div"), notes = el("p", { class: "small" });
  slip.append(why, ways);
  box.append(el("div", { class: "panel-name" }, name, what), el("p", { class: "density" }, density, " ", u), slip, heading, rows,
    el("button", { class: "button whole-width", onclick: () => again() }, "Add a reading"), notes);
  async function again() {
    const last = app.answers.readings?.rows.filter((r) => r.cells.gauge?.trim() === label).at(-1)?.cells ?? {};
    const { pieces, length_mm, mass_g, date, remark, ...same } = last;
    await edit([{ add: { ...same, gauge: label, kind: "weighed" } }]);
  }
  return {
    /** @param {Entry} e */
    set(e) {
      label = e.label;
      say(name, e.label);
      const g = e.gauge;
      say(what, g ? `${app.units.diameter(g.outer_mm)} ${g.construction}${g.core_mm && g.construction !== "plain" ? `, core ${app.units.diameter(g.core_mm)}` : ""}` : "");
      const [value, ofIt] = g ? uncertain(g.linear_density_g_per_m, g.linear_density_standard_uncertainty_g_per_m, 4) : ["", ""];
      say(density, value);
      say(u, g ? `${ofIt} g/m${g.flags.includes("estimated") ? ", estimated" : ""}` : "");
      slip.hidden = !e.suspect;
      if (e.suspect) {
        say(why, `${e.label} ${e.suspect.why}; ${e.suspect.would_fit}. Nothing was changed for you.`);
        list(ways, likely(e.suspect, app.answers.readings?.columns ?? []), () => {
          let fix = { line: 0, column: "", text: "" };
          const node = el("button", { class: "button", onclick: () => edit([fix]) });
          return {
            node,
            update: (/** @type {{words: string, line: number, column: string, text: string}} */ l) => {
              fix = { line: l.line, column: l.column, text: l.text };
              say(node, l.words);
            },
          };
        });
      }
      say(heading, e.rows.length === 1 ? "1 row" : `${e.rows.length} rows`);
      list(rows, e.rows.map((row) => ({ row, entry: e })), () => readingRow(app, edit));
      say(notes, [g?.length_for_1_percent_standard_uncertainty_mm ? `${app.units.len(g.length_for_1_percent_standard_uncertainty_mm, 0)} of it, in one piece or several, give 1 % in one weighing.` : "", ...(g?.notes ?? []).map((note) => capital(note) + ".")].filter(Boolean).join(" "));
    },
  };
}

/**
 * The likely slips as changes of a cell, where the table has a column for the value.
 * @param {Suspect} suspect
 * @param {string[]} columns
 */
function likely(suspect, columns) {
  const line = Number(/:(\d+):\d+$/.exec(suspect.place)?.[1] ?? 0);
  return suspect.likely_values.flatMap(({ of, value }) => {
    const [text, unit] = value.split(" "), column = columns.find((c) => c.startsWith(of.split(" ")[0]) && (!unit || c.endsWith("_" + unit.toLowerCase())));
    return column && line ? [{ words: `It was ${value}`, line, column, text }] : [];
  });
}

/**
 * One row of the table as fields.
 * @param {import("./main.js").App} app
 * @param {(edits: object[]) => Promise<string>} edit
 */
function readingRow(app, edit) {
  let line = 0;
  const first = el("div", { class: "cells" }), rest = el("div", { class: "cells" }), out = el("p", { class: "small" });
  const remove = el("button", { class: "button flat", onclick: () => edit([{ line, remove: true }]) }, "Remove this row");
  const node = el("fieldset", { class: "reading" }, first, out, el("details", { class: "more" }, el("summary", {}, "more"), rest, remove));
  function cell() {
    let column = "";
    const name = el("span"), input = el("input", { class: "text", autocomplete: "off" }), slot = el("span", { class: "field" }, input), wrong = el("span", { class: "wrong-words", role: "alert" });
    input.addEventListener("change", () => edit([{ line, column, text: input.value.trim() }]));
    return {
      node: el("label", {}, name, slot, wrong),
      /** @param {{column: string, text: string, fault: string}} c */
      update(c) {
        if (column !== c.column) input.value = c.text;
        column = c.column;
        say(name, c.column.replace(/_(mm|in|g)$/, ", $1").replaceAll("_", " "));
        show(input, c.text);
        slot.classList.toggle("wrong", c.fault !== "");
        attr(input, "aria-invalid", c.fault !== "" && "true");
        say(wrong, c.fault);
      },
    };
  }
  return {
    node,
    /** @param {{row: RowOf, entry: Entry}} item */
    update({ row, entry }) {
      line = row.line;
      const { columns: own = [], known_columns: known = [] } = app.answers.readings ?? {}, columns = [...new Set([...own, ...known])];
      const cells = columns.map((column) => ({ column, text: row.cells[column] ?? "", fault: entry.faults.filter((f) => f.line === row.line && f.key === column).map(atField).join("\n") }));
      const weighed = (row.cells.kind ?? "weighed") !== "listed";
      const open = cells.filter((c) => (weighed && FIRST.includes(c.column) && own.includes(c.column)) || c.fault);
      list(first, open, cell);
      list(rest, cells.filter((c) => !open.includes(c)), cell);
      const reading = entry.gauge?.readings_in_full?.find((r) => r.line === row.line);
      const [value, u] = reading ? uncertain(reading.linear_density_g_per_m, reading.linear_density_standard_uncertainty_g_per_m, 4) : ["", ""];
      say(out, reading ? `${value} ${u} g/m${reading.deviation_from_the_gauge_percent ? `, ${fixed(reading.deviation_from_the_gauge_percent, 1)} % from the gauge` : ""}` : weighed ? "" : "listed, not weighed");
    },
  };
}
