// The gauge in hand: its density, what is suspect in it, and its readings, edited in place.

import { arranged, attr, el, list, offer, say, show } from "./dom.js";
import { capital, fixed, uncertain } from "./units.js";
import { inWords } from "./words.js";

/** @typedef {import("./types.js").GaugeOf} GaugeOf */
/** @typedef {import("./types.js").Suspect} Suspect */
/** @typedef {import("./types.js").Fault} Fault */
/** @typedef {{line: number, cells: Record<string, string>}} RowOf */
/** @typedef {{column: string, text: string, fault: string, words: string[]}} Cell */
/** @typedef {{line?: number, column?: string, text?: string, remove?: boolean, add?: Record<string, string>}} Edit */
/** @typedef {{label: string, rows: RowOf[], gauge: GaugeOf | null, suspect: Suspect | null, faults: Fault[]}} Entry */

const PRESS = 300; // ms that a button which is being pressed keeps its place (judgement)
const FIRST = ["pieces", "length_mm", "length_in", "mass_g"]; // cells that a weighing needs
const ONCE = ["construction", "outer_mm", "outer_in"]; // cells that a gauge without a diameter needs too; the others fold away

/**
 * The gauge in hand: its density, what is suspect with the likely slip as a button, its rows.
 * @param {HTMLElement} box
 * @param {import("./app.js").App} app
 * @param {(edits: Edit[]) => Promise<string>} edit
 * @param {import("./rows.js").Rows} numbers
 */
export function gaugePanel(box, app, edit, numbers) {
  let label = "";
  const name = el("b"), what = el("span", { class: "small" }), density = el("span"), u = el("small"), heading = el("h2");
  const slip = el("div", { class: "slip" }), why = el("p"), ways = el("ul"), rows = el("div"), notes = el("p", { class: "small" });
  const arrange = arranged((/** @type {RowOf} */ r) => numbers.numbers.get(r.line), () => readingRow(app, edit, () => box.focus()));
  slip.append(why, ways);
  box.append(el("div", { class: "panel-name" }, name, what), el("p", { class: "density" }, density, " ", u), slip, heading, rows,
    el("button", { class: "button whole-width", onclick: () => again() }, "Add a reading"), notes);
  async function again() {
    const last = app.answers.readings?.rows.filter((r) => r.cells.gauge?.trim() === label).at(-1)?.cells ?? {};
    const { pieces, length_mm, length_in, mass_g, date, remark, ...same } = last;
    await edit([{ add: { ...same, gauge: label, kind: "weighed" } }]);
  }
  box.addEventListener("focusout", () => {
    const { fresh } = app;
    if (fresh) setTimeout(left, PRESS, fresh);
  });
  /** What a row that was just added lacks is said once the hand has left its cells. @param {number} row */
  function left(row) {
    if (app.fresh !== row || document.activeElement?.closest("#stock-panel .cells")) return;
    app.fresh = 0;
    app.answers.tell("gauges");
  }
  return {
    /** The hand goes to the last row. */
    begin() {
      /** @type {HTMLElement | null} */ (rows.querySelector(":scope > :last-child input"))?.focus();
    },
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
        const slips = likely(e, app.old("strings") ? [] : app.answers.readings?.columns ?? []); // whose lines may be old too
        say(why, `${e.label} ${e.suspect.why}${slips.length ? "" : `; ${e.suspect.would_fit}`}. Nothing was changed for you.`);
        list(ways, slips, () => way(edit));
      }
      say(heading, e.rows.length === 1 ? "1 row" : `${e.rows.length} rows`);
      arrange([{ parent: rows, items: e.rows }], e);
      say(notes, [g?.length_for_1_percent_standard_uncertainty_mm ? `${app.units.len(g.length_for_1_percent_standard_uncertainty_mm, 0)} of it, in one piece or several, give 1 % in one weighing.` : "", ...(g?.notes ?? []).map((note) => capital(note) + ".")].filter(Boolean).join(" "));
    },
  };
}

/** The line of the suspect reading. @param {Suspect | null} suspect */
export function lineOf(suspect) {
  return Number(/:(\d+):\d+$/.exec(suspect?.place ?? "")?.[1] ?? 0);
}

/** @typedef {{words: string, button: string, fix: Edit[]}} Slip */

/**
 * The likely slips, each with what takes it back, where the table has a column for the value.
 * A diameter stands in every row of its gauge, any other value in the suspect row.
 * @param {Entry} entry
 * @param {string[]} columns
 * @returns {Slip[]}
 */
function likely({ suspect, rows }, columns) {
  const line = lineOf(suspect), slips = suspect?.likely_slips ?? [];
  return (suspect?.likely_values ?? []).map(({ of, value }, i) => {
    const [, text, unit] = /^(.*?)(?: ([A-Za-z]+))?$/.exec(value) ?? [], first = of.split(" ")[0];
    const column = columns.find((c) => c.startsWith(first) && (!unit || c.endsWith("_" + unit.toLowerCase())));
    const lines = first === "outer" ? rows.filter((r) => column && r.cells[column]).map((r) => r.line) : [line];
    return { words: capital(`${of}: ${slips[i]}`), button: `Set ${of} to ${value}`, fix: column && line ? lines.map((line) => ({ line, column, text })) : [] };
  });
}

/** A likely slip in words, and the button that takes it back. @param {(edits: Edit[]) => void} edit */
function way(edit) {
  /** @type {Edit[]} */
  let fix = [];
  const words = el("p"), button = el("button", { class: "button", onclick: () => edit(fix) });
  return {
    node: el("li", {}, words, button),
    /** @param {Slip} slip */
    update(slip) {
      fix = slip.fix;
      say(words, slip.words);
      say(button, slip.button);
      button.hidden = !fix.length;
    },
  };
}

/**
 * One row of the table as fields.
 * @param {import("./app.js").App} app
 * @param {(edits: Edit[]) => Promise<string>} edit
 * @param {() => void} leave where the hand goes when the row goes
 */
function readingRow(app, edit, leave) {
  let line = 0;
  /** Columns that stand open stay so. @type {Set<string>} */
  const opened = new Set();
  const first = el("div", { class: "cells" }), rest = el("div", { class: "cells" }), out = el("p", { class: "small" });
  const remove = el("button", { class: "button flat", onclick: () => (leave(), edit([{ line, remove: true }])) }, "Remove this row");
  const node = el("fieldset", { class: "reading" }, first, out, el("details", { class: "more" }, el("summary", {}, "more"), rest, remove));
  const arrange = arranged((/** @type {Cell} */ c) => c.column, cell);
  function cell() {
    let column = "";
    const words = offer(), name = el("span"), input = el("input", { class: "text", autocomplete: "off", list: words.id }), slot = el("span", { class: "field" }, input), wrong = el("span", { class: "wrong-words", role: "alert" });
    input.addEventListener("change", () => edit([{ line, column, text: input.value.trim() }]));
    return {
      node: el("label", {}, name, slot, words.node, wrong),
      /** @param {Cell} c */
      update(c) {
        column = c.column;
        say(name, inWords(c.column));
        words.set(c.words);
        show(input, c.text);
        slot.classList.toggle("wrong", c.fault !== "");
        attr(input, "aria-invalid", c.fault !== "" && "true");
        say(wrong, c.fault);
      },
    };
  }
  return {
    node,
    /** @param {RowOf} row @param {Entry} entry */
    update(row, entry) {
      line = row.line;
      node.classList.toggle("suspect", line === lineOf(entry.suspect));
      const { columns: own = [], known_columns: known = [], words } = app.answers.readings ?? {}, columns = [...new Set([...own, ...known])];
      const cells = columns.map((column) => ({ column, text: row.cells[column] ?? "", fault: entry.faults.filter((f) => f.line === row.line && f.key === column).map((f) => app.wrong(f)).join("\n"), words: words?.[column] ?? [] }));
      const weighed = (row.cells.kind ?? "weighed") !== "listed";
      const bare = entry.rows.every((r) => !r.cells.outer_mm && !r.cells.outer_in);
      for (const { column, fault } of cells) if (fault || (own.includes(column) && ((weighed && FIRST.includes(column)) || (bare && ONCE.includes(column))))) opened.add(column);
      const [open, folded] = [true, false].map((is) => cells.filter((c) => opened.has(c.column) === is));
      arrange([{ parent: first, items: open }, { parent: rest, items: folded }], null);
      const reading = app.old("strings") ? null : entry.gauge?.readings_in_full?.find((r) => r.line === row.line);
      const [value, u] = reading ? uncertain(reading.linear_density_g_per_m, reading.linear_density_standard_uncertainty_g_per_m, 4) : ["", ""];
      say(out, reading ? `${value} ${u} g/m${reading.deviation_from_the_gauge_percent ? `, ${fixed(reading.deviation_from_the_gauge_percent, 1)} % from the gauge` : ""}` : weighed ? "" : "listed, not weighed");
    },
  };
}
