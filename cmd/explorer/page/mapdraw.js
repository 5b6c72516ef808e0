// What of the map stays while the point moves: squares, outline, hatching with the limits'
// names, lines of equal difference, the scale of inharmonicity and the two rules.

import { px, svg } from "./dom.js";
import { divisions, fixed } from "./units.js";

/** @typedef {import("./grid.js").Grid} Grid */
/** @typedef {import("./units.js").Units} Units */

/**
 * Where things are, in pixels.
 * @typedef {{left: number, top: number, width: number, height: number, whole: number, narrow: boolean,
 *   x: (bass: number) => number, y: (treble: number) => number, perMm: number}} Frame
 */

const PALER = 6; // steps of the tint outside the outline

/**
 * A frame with the same millimetres on both axes, unless the range is too flat or too tall for that.
 * @param {Grid} grid
 * @param {number} whole width that there is
 * @returns {Frame}
 */
export function frame(grid, whole) {
  const narrow = whole < 420;
  const left = narrow ? 42 : 50, top = grid.cells.some((c) => c.cents) ? (narrow ? 38 : 42) : 16, width = whole - left - 2;
  const [b0, b1] = ends(grid.bassEdges), [t0, t1] = ends(grid.trebleEdges);
  const height = Math.round(Math.max(width * 0.62, Math.min(width * 1.2, (width * (t1 - t0)) / (b1 - b0))));
  return {
    left, top, width, height, whole, narrow, perMm: width / (b1 - b0),
    x: (bass) => left + ((bass - b0) / (b1 - b0)) * width,
    y: (treble) => top + height - ((treble - t0) / (t1 - t0)) * height,
  };
}

/**
 * @param {Grid} grid
 * @param {Frame} f
 * @param {Units} units
 * @returns {SVGElement[]}
 */
export function still(grid, f, units) {
  return [svg("rect", { class: "paper", x: f.left, y: f.top, width: f.width, height: f.height }),
    ...squares(grid, f), ...differences(grid, f, units), ...limitWords(grid, f), ...inharmonicity(grid, f), ...rules(grid, f, units)];
}

/** @param {Grid} grid @param {Frame} f */
function squares(grid, f) {
  const kept = grid.cells.filter((c) => !c.limit).map((c) => c.error);
  const least = Math.min(...kept), range = Math.max(...kept) - least || 1;
  /** @type {Map<string, string>} */
  const paths = new Map();
  let outline = "";
  grid.trebles.forEach((_, j) => grid.basses.forEach((_, i) => {
    const c = grid.cell(i, j);
    if (!c) return;
    const [l, r] = [px(f.x(grid.bassEdges[i])), px(f.x(grid.bassEdges[i + 1]))];
    const [t, b] = [px(f.y(grid.trebleEdges[j + 1])), px(f.y(grid.trebleEdges[j]))];
    const tint = c.limit ? "dropped" : c.good ? "good" : "pale-" + Math.min(PALER - 1, Math.floor(((c.error - least) / range) * PALER));
    paths.set(tint, (paths.get(tint) ?? "") + `M${l} ${t}H${r}V${b}H${l}z`);
    if (tint !== "good") return;
    const good = (/** @type {number} */ di, /** @type {number} */ dj) => {
      const n = grid.cell(i + di, j + dj);
      return n && n.good && !n.limit;
    };
    if (!good(-1, 0)) outline += `M${l} ${t}V${b}`;
    if (!good(1, 0)) outline += `M${r} ${t}V${b}`;
    if (!good(0, 1)) outline += `M${l} ${t}H${r}`;
    if (!good(0, -1)) outline += `M${l} ${b}H${r}`;
  }));
  return [...[...paths].map(([tint, d]) => svg("path", { class: "squares " + tint, d })), svg("path", { class: "outline", d: outline })];
}

/**
 * Lines of equal difference, each with its number, as on a contour map.
 * @param {Grid} grid
 * @param {Frame} f
 * @param {Units} units
 */
function differences(grid, f, units) {
  const [b0, b1] = ends(grid.bassEdges), [t0, t1] = ends(grid.trebleEdges);
  const by = [5, 10, 20, 50, 100].find((d) => units.mm(units.inches ? d / 20 : d) * f.perMm >= 44) ?? 100;
  const step = units.mm(units.inches ? by / 20 : by);
  const lines = [];
  let d = "";
  const slope = (Math.atan2(f.y(t0 + 1) - f.y(t0), f.x(b0 + 1) - f.x(b0)) * 180) / Math.PI;
  for (let n = Math.ceil((b0 - t1) / step); n * step <= b1 - t0; n++) {
    const diff = n * step, from = Math.max(b0, t0 + diff), to = Math.min(b1, t1 + diff);
    if (to - from < step / 2) continue;
    d += `M${px(f.x(from))} ${px(f.y(from - diff))}L${px(f.x(to))} ${px(f.y(to - diff))}`;
    const at = from + (to - from) * (n % 2 ? 0.3 : 0.16);
    const words = n === 0 ? "straight" : n === 1 && !f.narrow && to - from > 8 * step ? `difference ${units.len(diff, 0)}` : units.scale(diff);
    if ((to - from) * f.perMm < 50 || grid.at(grid.nearest({ bass: at, treble: at - diff }))?.limit) continue;
    lines.push(svg("text", { class: "halo soft", "text-anchor": "middle", transform: `translate(${px(f.x(at))} ${px(f.y(at - diff))}) rotate(${slope.toFixed(1)}) translate(0 ${n === 0 ? -6 : 4})` }, words));
  }
  return [svg("path", { class: "equal", d }), ...lines];
}

/**
 * The name of each limit on its hatching, along the longest run of its squares.
 * @param {Grid} grid
 * @param {Frame} f
 */
function limitWords(grid, f) {
  const out = [];
  for (const limit of new Set(grid.cells.map((c) => c.limit))) {
    if (!limit) continue;
    const words = grid.limits[limit] ?? limit, room = words.length * 6.2 + 16;
    const across = longest(grid.trebles.length, grid.basses.length, (j, i) => grid.cell(i, j)?.limit === limit);
    const up = longest(grid.basses.length, grid.trebles.length, (i, j) => grid.cell(i, j)?.limit === limit);
    const wide = f.x(grid.bassEdges[across.to]) - f.x(grid.bassEdges[across.from]), tall = f.y(grid.trebleEdges[up.from]) - f.y(grid.trebleEdges[up.to]);
    if (wide >= room) {
      const x = (f.x(grid.bassEdges[across.from]) + f.x(grid.bassEdges[across.to])) / 2;
      out.push(svg("text", { class: "halo soft limit", "text-anchor": "middle", x: px(x), y: px(f.y(grid.trebles[across.row]) + 4) }, words));
    } else if (tall >= room) {
      const y = (f.y(grid.trebleEdges[up.from]) + f.y(grid.trebleEdges[up.to])) / 2;
      out.push(svg("text", { class: "halo soft limit", "text-anchor": "middle", transform: `translate(${px(f.x(grid.basses[up.row]) + 4)} ${px(y)}) rotate(-90)` }, words));
    }
  }
  return out;
}

/**
 * The longest run over all rows; of equal ones the middle row's.
 * @param {number} rows
 * @param {number} columns
 * @param {(row: number, column: number) => boolean} is
 */
function longest(rows, columns, is) {
  let runs = [{ row: 0, from: 0, to: 0 }];
  for (let row = 0; row < rows; row++)
    for (let from = 0; from < columns; from++) {
      let to = from;
      while (to < columns && is(row, to)) to++;
      if (to - from > runs[0].to - runs[0].from) runs = [{ row, from, to }];
      else if (to > from && to - from === runs[0].to - runs[0].from) runs.push({ row, from, to });
      from = Math.max(from, to);
    }
  return runs[runs.length >> 1];
}

/**
 * The lowest string is as long as the bass scale, so its inharmonicity is a second scale above the map.
 * @param {Grid} grid
 * @param {Frame} f
 */
function inharmonicity(grid, f) {
  /** @type {SVGElement[]} */
  const out = [];
  let last = -Infinity;
  grid.basses.forEach((bass, i) => {
    const column = grid.trebles.map((_, j) => grid.cell(i, j)).filter((c) => c && c.cents);
    const c = column.find((c) => c?.good) ?? column.find((c) => c && !c.limit) ?? column[0];
    if (!c?.cents || f.x(bass) < last + 34) return;
    last = f.x(bass);
    out.push(svg("text", { x: px(last), y: f.top - 7, "text-anchor": "middle", class: c.limit ? "soft" : null }, fixed(c.cents, 0)));
  });
  if (!out.length) return [];
  return [svg("text", { class: "soft", x: f.left, y: 13 }, f.narrow ? "lowest string, cents" : "lowest string, inharmonicity in cents"),
    svg("text", { class: "soft", x: f.left + f.width, y: 13, "text-anchor": "end" }, "clearer →"), ...out];
}

/**
 * Two steel rules. A number hides where the flag of the point covers it, so each says what it stands for.
 * @param {Grid} grid
 * @param {Frame} f
 * @param {Units} units
 */
function rules(grid, f, units) {
  const bottom = f.top + f.height + 1, out = [];
  let d = `M${f.left} ${bottom}H${f.left + f.width}M${f.left - 1} ${f.top}V${f.top + f.height}`;
  for (const { mm, rank } of divisions(...ends(grid.bassEdges), f.perMm, units, units.length === "in64" ? 50 : 36)) {
    d += `M${px(f.x(mm))} ${bottom}v${[11, 8, 4][rank]}`;
    if (rank === 0) out.push(svg("text", { "data-bass": mm, x: px(f.x(mm)), y: bottom + 24, "text-anchor": "middle" }, units.scale(mm)));
  }
  for (const { mm, rank } of divisions(...ends(grid.trebleEdges), f.perMm, units, 24)) {
    d += `M${f.left - 1} ${px(f.y(mm))}h-${[9, 6, 3][rank]}`;
    if (rank === 0) out.push(svg("text", { "data-treble": mm, x: f.left - 12, y: px(f.y(mm) + 4), "text-anchor": "end" }, units.scale(mm)));
  }
  return [svg("path", { class: "rule-lines", d }), ...out];
}

/** @param {number[]} list @returns {[number, number]} */
function ends(list) {
  return [list[0], list[list.length - 1]];
}
