// The pair in large figures, what it is worth, and the picks to settle it.

import { attr, el, list, say } from "./dom.js";
import { figures } from "./figures.js";
import { capital, fixed, glued } from "./units.js";

/** @typedef {import("./types.js").Advice} Advice */
/** @typedef {import("./types.js").Pair} Pair */
/** @typedef {import("./units.js").Units} Units */
/** @typedef {import("./grid.js").Place} Place */

/**
 * A pair in large figures.
 * @param {HTMLElement} box
 */
export function largePair(box) {
  const bass = figures(), slash = figures(1.1), treble = figures(), words = el("span", { class: "unseen" });
  slash.set("/");
  const unit = el("span"), wide = () => el("span", { class: "wide" }, " scale length");
  const under = el("span", { class: "under" }, "bass", wide()), under2 = el("span", { class: "under" }, "treble", wide(), ", ", unit);
  box.append(words, el("span", { class: "side" }, bass.node, under), el("span", { class: "side slash" }, slash.node, el("span", { class: "under" }, " ")), el("span", { class: "side" }, treble.node, under2));
  return {
    /** @param {Place} place @param {Units} units */
    set(place, units) {
      bass.set(units.scale(place.bass));
      treble.set(units.scale(place.treble));
      say(unit, units.lengthName);
      box.classList.toggle("long", (units.scale(place.bass) + units.scale(place.treble)).length > 7);
      say(words, `${units.len(place.bass)} bass, ${units.len(place.treble)} treble`);
    },
  };
}

/**
 * What the shown pair is worth: the first line large. Buttons lead to another pair.
 * @typedef {{large: string, bad: boolean, lines: string[], buttons: {words: string, press: () => void}[]}} Worth
 * @param {HTMLElement} box
 */
export function worth(box) {
  const large = el("p", { class: "say" }), lines = el("ul", { class: "lines" }), acts = el("div", { class: "acts-here" });
  box.append(large, lines, acts);
  return {
    /** @param {Worth} worth */
    set(worth) {
      say(large, worth.large);
      large.classList.toggle("bad", worth.bad);
      list(lines, worth.lines, () => {
        const node = el("li");
        return { node, update: (/** @type {string} */ line) => say(node, glued(line)) };
      });
      list(acts, worth.buttons, () => {
        let press = () => {};
        const node = el("button", { class: "button", onclick: () => press() });
        return {
          node,
          update: (/** @type {Worth["buttons"][0]} */ b) => {
            say(node, b.words);
            press = b.press;
          },
        };
      });
      acts.hidden = worth.buttons.length === 0;
    },
  };
}

/**
 * A row of the picks: the shown pair, the pair A, or a pick.
 * @typedef {object} Row
 * @property {"now" | "a" | "pick"} kind
 * @property {string} name
 * @property {string} why
 * @property {Place} place
 * @property {Pair | null} pair null while it is not known
 * @property {boolean} lowerBound of the inharmonicity
 * @property {string} stays in how many trials it stays as good, "" where not known
 * @property {boolean} on it is the pair shown
 */

/**
 * @param {HTMLElement} box
 * @param {(row: Row) => void} go
 */
export function picksTable(box, go) {
  const body = el("tbody"), heads = ["difference", "lowest string, cents", "feel error", "stays as good, of trials"];
  box.append(el("table", {}, el("caption", {}, el("h2", {}, "Ways to settle it")),
    el("thead", {}, el("tr", {}, el("th", { scope: "col" }, el("span", { class: "unseen" }, "pair")), ...heads.map((h, i) => el("th", { scope: "col", class: i === 3 ? "stays" : null }, h)))), body));
  function make() {
    /** @type {Row | null} */
    let shown = null;
    const pin = el("span", { class: "pin", "aria-hidden": "true" }), name = el("span"), pair = el("b"), why = el("span", { class: "why" });
    const button = el("button", { class: "choose-pick", onclick: () => shown && go(shown) }, pin, el("span", { class: "name" }, name, pair), why);
    const plain = el("span", { class: "now-name" }), first = el("th", { scope: "row" }, button, plain);
    const cells = [0, 1, 2, 3].map((i) => el("td", { class: i === 3 ? "stays" : null })), node = el("tr", {}, first, ...cells);
    return {
      node,
      /** @param {{row: Row, units: Units}} item */
      update({ row, units }) {
        shown = row;
        attr(node, "class", row.kind + (row.on ? " on" : ""));
        button.hidden = row.kind === "now";
        plain.hidden = row.kind !== "now";
        say(plain, row.name);
        say(pin, row.name.charAt(0).toUpperCase());
        say(name, capital(row.name));
        say(pair, `${units.scale(row.place.bass)} / ${units.scale(row.place.treble)}`);
        say(why, glued(row.why));
        attr(button, "aria-pressed", String(row.on));
        const p = row.pair;
        say(cells[0], p ? units.len(p.difference_mm, units.inches ? 1 : 0) : "");
        say(cells[1], p?.inharmonicity_cents ? (row.lowerBound ? "≥ " : "") + fixed(p.inharmonicity_cents, 0) : p ? "–" : "");
        say(cells[2], p ? fixed(p.feel_error_percent, 1) + " %" : "");
        say(cells[3], row.stays);
      },
    };
  }
  return {
    /** @param {Row[]} rows @param {Units} units @param {boolean} noneNear then nothing is as good */
    set(rows, units, noneNear) {
      box.classList.toggle("none-near", noneNear);
      list(body, rows.map((row) => ({ row, units })), make);
    },
  };
}
