// The pair that was kept as A beside the pair that is shown, string by string.

import { el, list, say } from "./dom.js";
import { angle, fixed, signed } from "./units.js";

/** @typedef {import("./types.js").Compared} Compared */
/** @typedef {import("./types.js").Column} Column */
/** @typedef {import("./types.js").StringOf} StringOf */
/** @typedef {import("./units.js").Units} Units */

/** @param {HTMLElement} box */
export function comparison(box) {
  const heads = [0, 1].map(() => el("th", { scope: "col", colspan: 3 })), body = el("tbody"), foot = el("tbody", { class: "whole-pair" });
  box.append(el("h2", {}, "A beside the pair shown"), el("div", { class: "sideways" }, el("table", { class: "compare" }, el("thead", {},
    el("tr", {}, el("td"), ...heads), el("tr", {}, el("th", { scope: "col" }, "String"), ...[0, 1].flatMap(() => ["Gauge", "Tension", "Deviation"].map((h) => el("th", { scope: "col", class: h === "Tension" && "tension-of" }, h))))), body, foot)));
  return {
    /** @param {Compared} found @param {Units} units */
    set(found, units) {
      const [a, b] = found.columns;
      [a, b].forEach((c, i) => say(heads[i], `${i ? "Shown" : "A"}: ${units.scale(c.pair.bass_mm)} / ${units.scale(c.pair.treble_mm)} ${units.lengthName}`));
      const [sa, sb] = [a, b].map((c) => [...c.tunings[0].strings].reverse());
      list(body, sa.map((s, i) => ({ pair: [s, sb[i]], units })), stringRow);
      list(foot, totals(a, b, units), () => {
        const name = el("th", { scope: "row" }), cells = [0, 1].map(() => el("td", { colspan: 3 }));
        return {
          node: el("tr", {}, name, ...cells),
          update: (/** @type {[string, string, string]} */ [words, ofA, ofB]) => {
            say(name, words);
            say(cells[0], ofA);
            say(cells[1], ofB);
          },
        };
      });
    },
  };
}

function stringRow() {
  const name = el("th", { scope: "row" }), cells = Array.from({ length: 6 }, (_, i) => el("td", { class: i % 3 === 1 && "tension-of" }));
  return {
    node: el("tr", {}, name, ...cells),
    update(/** @type {{pair: StringOf[], units: Units}} */ { pair, units }) {
      say(name, `${pair[0].string} ${pair[0].note}`);
      pair.forEach((s, i) => {
        const texts = [s.gauge + (s.gauge_flags.includes("estimated") ? " (estimated)" : ""), units.uncertainForce(s.tension_n, s.tension_standard_uncertainty_n).join(" "),
          s.tension_deviation_percent === null ? "–" : signed(s.tension_deviation_percent, 1) + " %"];
        texts.forEach((text, j) => say(cells[3 * i + j], text));
      });
    },
  };
}

/** What is said of a whole pair. @param {Column} a @param {Column} b @param {Units} units @returns {[string, string, string][]} */
function totals(a, b, units) {
  /** @type {[string, (c: Column) => string][]} */
  const rows = [
    ["total tension", (c) => `${units.uncertainForce(c.tunings[0].total_tension_n, c.tunings[0].total_tension_standard_uncertainty_n).join(" ")} ${units.force}`],
    ["feel error", (c) => fixed(c.pair.feel_error_percent, 1) + " %"],
    ["lowest string", (c) => {
      const { inharmonicity_cents: cents, inharmonicity_is_lower_bound: least } = c.tunings[0].strings[0];
      return cents === null ? "–" : `${least ? "≥ " : ""}${fixed(cents, 1)} cents`;
    }],
    ["nut, last fret, saddle line", (c) => [c.pair.nut_slant_deg, c.pair.last_fret_slant_deg, c.pair.saddle_slant_deg].map(angle).join(", ")],
    ["blank, at least", (c) => `${units.atLeast(c.pair.blank_length_mm)} × ${units.atLeast(c.pair.blank_width_mm)} ${units.lengthName}`],
    ["limits broken", (c) => c.limits_broken.join("; ") || "none"],
  ];
  return rows.map(([words, of]) => [words, of(a), of(b)]);
}
