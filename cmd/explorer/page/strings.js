// One row a string: its gauge with a stepper, tension against what is wanted with its
// interval, bending force, part of the breaking strength, inharmonicity.

import { attr, el, list, px, say, svg } from "./dom.js";
import { fixed, signed } from "./units.js";

/** @typedef {import("./types.js").StringOf} StringOf */
/** @typedef {import("./types.js").Tension} Tension */
/** @typedef {import("./units.js").Units} Units */
/** @typedef {{label: string, words: string}} Gauge in the order of linear density */

const SCALES = [5, 10, 20, 40, 80]; // percent at the ends of the bars' scale (judgement)
const HALF_95 = 1.96; // standard uncertainties in half an interval of 95 %

/**
 * @param {HTMLElement} box
 * @param {object} on
 * @param {(number: number, label: string) => void} on.gauge puts a gauge on a string
 * @param {(keep: boolean) => void} on.keep keeps the set for every pair, or frees it
 */
export function stringRows(box, on) {
  const free = el("button", { onclick: () => on.keep(false) }, "Best gauges", el("span", { class: "wide" }, " for each pair"));
  const keep = el("button", { onclick: () => on.keep(true) }, "Keep these", el("span", { class: "wide" }, " gauges"));
  const tuning = el("select", { "aria-label": "Tuning shown" }), tunings = el("label", { class: "tuning-shown", hidden: true }, "In ", tuning);
  const scales = [0, 1].map(() => [el("i"), el("i"), el("i")]);
  const heads = [el("th", { scope: "col" }, "String"), el("th", { scope: "col" }, "Gauge"),
    el("th", { scope: "col", class: "bar-cell" }, "Tension against what is wanted", el("span", { class: "bar-scale", "aria-hidden": "true" }, ...scales[0])),
    ...["Tension", "Bending force", "% of breaking strength", "Inharmonicity, cents"].map((h) => el("th", { scope: "col", class: "n" }, h))];
  const body = el("tbody"), total = el("td", { class: "n tension" }), totalWords = el("td", { colspan: 3 });
  const why = el("p", { class: "small" }), tip = el("div", { class: "tip", hidden: true });
  box.append(el("div", { class: "each-head" }, el("h2", {}, "Each string on this pair"), tunings, el("div", { class: "two-way", role: "group", "aria-label": "Gauges" }, free, keep)),
    why, el("p", { class: "bar-scale above", "aria-hidden": "true" }, ...scales[1]),
    el("table", { class: "rows" }, el("thead", {}, el("tr", {}, ...heads)), body, el("tfoot", {}, el("tr", {}, totalWords, total, el("td", { colspan: 3, class: "rest" })))), tip,
    el("p", { class: "fine" }, "± is one standard uncertainty, from the readings; the drawn intervals are 95 %. The model adds up to 1 % of tension and 20 % of bending force, most of which cancels between pairs. ≥ is a lower bound, not to be compared with a plain string's."));
  tuning.addEventListener("change", () => redraw());

  /** @type {{tension: Tension, stock: Gauge[], units: Units, kept: boolean} | null} */
  let shown = null;

  function redraw() {
    if (!shown) return;
    const { tension, units, kept } = shown;
    attr(free, "aria-pressed", String(!kept));
    attr(keep, "aria-pressed", String(kept));
    list(tuning, tension.tunings, (i) => {
      const node = el("option", { value: i });
      return { node, update: (/** @type {import("./types.js").Tuned} */ t) => say(node, t.tuning_name) };
    });
    tunings.hidden = tension.tunings.length < 2;
    const tuned = tension.tunings[Number(tuning.value) || 0] ?? tension.tunings[0];
    const far = Math.max(0, ...tension.tunings.flatMap((t) => t.strings).map((s) => Math.abs(s.tension_deviation_percent ?? 0) + (HALF_95 * 100 * s.tension_standard_uncertainty_n) / s.tension_n));
    const ends = SCALES.find((s) => s >= far) ?? SCALES[SCALES.length - 1];
    for (const scale of scales) [`slacker, ${signed(-ends, 0)} %`, "as wanted", `${signed(ends, 0)} %, tighter`].forEach((words, i) => say(scale[i], words));
    const rows = [...tuned.strings].reverse().map((string) => ({ string, ends, units, stock: /** @type {NonNullable<typeof shown>} */ (shown).stock }));
    list(body, rows, row);
    const [value, u] = units.uncertainForce(tuned.total_tension_n, tuned.total_tension_standard_uncertainty_n);
    total.replaceChildren(el("b", {}, value), " ", el("small", { class: "interval" }, u), " ", el("small", {}, units.force));
    const reference = tension.reference_total_tension_n, each = tuned.change_per_string_percent;
    say(totalWords, reference ? `All strings; the reference: ${units.bareForce(reference)} ${units.force}${each === undefined ? "" : `, with other strings; a string ${signed(each, 1)} %`}` : "All strings");
  }

  function row() {
    /** @type {StringOf | null} */
    let string = null;
    /** @type {Gauge[]} */
    let stock = [];
    const number = el("span"), note = el("b"), label = el("b"), words = el("small"), estimated = el("span", { class: "estimated", hidden: true }, "estimated");
    const step = (/** @type {number} */ by) => () => {
      const at = stock.findIndex((g) => g.label === string?.gauge), to = stock[at + by];
      if (string && to) on.gauge(string.string, to.label);
    };
    const lighter = el("button", { class: "button square", onclick: step(-1) }, "−"), heavier = el("button", { class: "button square", onclick: step(1) }, "+");
    const bar = deviationBar(), tension = el("b"), u = el("small", { class: "interval" }), wanted = el("small", { class: "soft" });
    const bend = el("b"), bendWanted = el("small"), meter = strengthMeter(), share = el("b"), cents = el("b");
    const named = (/** @type {string} */ name) => el("span", { class: "named" }, name + " ");
    return {
      node: el("tr", {}, el("th", { scope: "row" }, el("span", { class: "note" }, number, note)),
        el("td", { class: "gauge-cell" }, el("span", { class: "stepper" }, lighter, el("span", { class: "gauge" }, el("span", {}, label, estimated), words), heavier)),
        el("td", { class: "bar-cell" }, bar.node), el("td", { class: "n tension" }, tension, " ", u, " ", wanted),
        el("td", { class: "n bend" }, named("bend"), bend, " ", bendWanted), el("td", { class: "n strength" }, named("breaking"), meter.node, share), el("td", { class: "n cents" }, named("inharmonicity"), cents)),
      /** @param {{string: StringOf, ends: number, units: Units, stock: Gauge[]}} item */
      update(item) {
        string = item.string;
        stock = item.stock;
        const s = item.string, at = stock.findIndex((g) => g.label === s.gauge), guess = s.gauge_flags.includes("estimated");
        say(number, String(s.string));
        say(note, s.note);
        say(label, s.gauge);
        say(words, stock[at]?.words ?? "");
        estimated.hidden = !guess;
        lighter.disabled = at <= 0;
        heavier.disabled = at < 0 || at === stock.length - 1;
        attr(lighter, "aria-label", `String ${s.string}: lighter gauge${at > 0 ? " " + stock[at - 1].label : ""}`);
        attr(heavier, "aria-label", `String ${s.string}: heavier gauge${stock[at + 1] ? " " + stock[at + 1].label : ""}`);
        bar.set(s, item.ends, guess);
        const [value, ofIt] = item.units.uncertainForce(s.tension_n, s.tension_standard_uncertainty_n);
        say(tension, value);
        say(u, ofIt);
        say(wanted, s.wanted_tension_n ? `wanted ${item.units.bareForce(s.wanted_tension_n)}` : item.units.force);
        const b = s.bends[s.bends.length - 1];
        say(bend, !b || b.not_computed ? "–" : item.units.bareForce(b.bending_force_n));
        say(bendWanted, !b ? "" : b.not_computed ?? `${b.wanted_bending_force_n ? `wanted ${item.units.bareForce(b.wanted_bending_force_n)}, ` : ""}fret ${b.fret}`);
        const breaking = s.breaking_strength_bent_percent ?? s.breaking_strength_percent;
        meter.set(breaking);
        say(share, breaking === null ? "–" : fixed(breaking, 0));
        say(cents, s.inharmonicity_cents === null ? "–" : (s.inharmonicity_is_lower_bound ? "≥ " : "") + fixed(s.inharmonicity_cents, 1));
      },
    };
  }

  return {
    tip,
    /** @param {Tension} tension @param {Gauge[]} stock @param {Units} units @param {boolean} kept @param {string} unknown why cells are empty */
    set(tension, stock, units, kept, unknown) {
      say(why, unknown);
      why.hidden = !unknown;
      shown = { tension, stock, units, kept };
      redraw();
    },
  };
}

/** A bar from the wanted tension to the one that is, with its interval and a tick at the wanted. */
function deviationBar() {
  const bar = svg("rect", { y: 13, height: 10 }), interval = svg("path", { class: "interval-line interval" });
  const node = svg("svg", { class: "deviation", viewBox: "0 0 200 36", preserveAspectRatio: "none", "aria-hidden": "true" },
    svg("path", { class: "base", d: "M0 18H200M50 14v8M150 14v8" }), bar, interval, svg("path", { class: "target", d: "M100 6V30" }));
  return {
    node,
    /** @param {StringOf} s @param {number} ends @param {boolean} guess */
    set(s, ends, guess) {
      const off = s.tension_deviation_percent, x = (/** @type {number} */ percent) => 100 + Math.max(-100, Math.min(100, (percent / ends) * 100));
      const half = (HALF_95 * 100 * s.tension_standard_uncertainty_n) / s.tension_n;
      attr(node, "visibility", off === null ? "hidden" : null);
      if (off === null) return;
      attr(bar, "class", guess ? "guess" : "sure");
      attr(bar, "x", px(Math.min(100, x(off))));
      attr(bar, "width", px(Math.abs(x(off) - 100)));
      const [from, to] = [px(x(off - half)), px(x(off + half))];
      attr(interval, "d", `M${from} 18H${to}M${from} 11v14M${to} 11v14`);
    },
  };
}

/** How much of the least strength is used. */
function strengthMeter() {
  const fill = svg("rect", { y: 3, height: 4, x: 0 });
  return {
    node: svg("svg", { class: "meter", viewBox: "0 0 64 10", "aria-hidden": "true" }, svg("rect", { class: "frame", x: 0.5, y: 1.5, width: 63, height: 7 }), fill),
    /** @param {number | null} percent */
    set(percent) {
      attr(fill, "width", px(0.64 * Math.min(100, percent ?? 0)));
    },
  };
}
