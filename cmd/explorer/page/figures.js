// Large figures of one stroke, as an engraver cuts them.

import { attr, svg } from "./dom.js";

// Each figure: how wide it is and its stroke, on a body 16 high.
/** @type {Record<string, [number, string]>} */
const STROKES = {
  0: [10, "M0 5.2a5 5.2 0 0 1 10 0v5.6a5 5.2 0 0 1-10 0z"],
  1: [10, "M2.4 3.8L6.6 0v16"],
  2: [10, "M.4 4.8A4.7 4.8 0 0 1 9.7 4.6c0 3.6-4.3 5.9-9.5 11.4H10"],
  3: [10, "M.7 3.2C1.5 1.1 3.1 0 5 0c2.6 0 4.3 1.6 4.3 3.7S7.6 7.3 5 7.3H3.8M5 7.3c3 0 5 1.8 5 4.4S7.9 16 5 16c-2.5 0-4.4-1.3-5-3.6"],
  4: [10, "M7.4 16V0L0 11.6h10"],
  5: [10, "M9.2 0H1.8L1 7.2c1.2-1 2.5-1.4 4-1.4 2.9 0 5 2.1 5 5S7.9 16 4.9 16C2.5 16 .7 14.7 0 12.6"],
  6: [10, "M8.3 0C3.9 2.9 0 6.7 0 11a5 5 0 1 0 10 0 5 5 0 1 0-10 0"],
  7: [10, "M0 0h10L3.7 16"],
  8: [10, "M5 7.2a3.9 3.6 0 1 1 0-7.2 3.9 3.6 0 1 1 0 7.2 5 4.4 0 1 0 0 8.8 5 4.4 0 1 0 0-8.8"],
  9: [10, "M1.7 16C6.1 13.1 10 9.3 10 5A5 5 0 1 0 0 5a5 5 0 1 0 10 0"],
  ".": [2, "M1 15.9v.1"],
  "/": [9, "M0 18.4L9-2.4"],
  " ": [3, ""],
};
const GAP = 3.6;

/**
 * Figures of which set() changes the text. A screen reader reads the text that stands beside
 * them, not the strokes.
 * @param {number} [weight] of the stroke
 */
export function figures(weight = 1.5) {
  const group = svg("g");
  const node = svg("svg", { class: "figures", "aria-hidden": "true" }, group);
  let shown = "";
  return {
    node,
    /** @param {string} text */
    set(text) {
      if (text === shown) return;
      shown = text;
      let x = 0;
      group.replaceChildren();
      for (const letter of text) {
        const [width, path] = STROKES[letter] ?? STROKES[" "];
        group.append(svg("path", { d: path, transform: `translate(${x.toFixed(1)} 0)`, "stroke-width": weight }));
        x += width + GAP;
      }
      attr(node, "viewBox", `-1 -1 ${(x - GAP + 2).toFixed(1)} 18`);
    },
  };
}
