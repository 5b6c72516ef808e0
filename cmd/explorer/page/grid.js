// The pairs that were tried, as rows and columns of lengths.

/** @typedef {import("./types.js").Cell} Cell */
/** @typedef {{bass: number, treble: number}} Place in mm */

export class Grid {
  /** @param {Cell[]} cells */
  constructor(cells) {
    this.cells = cells;
    this.basses = lengths(cells.map((c) => c.bass_mm));
    this.trebles = lengths(cells.map((c) => c.treble_mm));
    this.bassEdges = edges(this.basses);
    this.trebleEdges = edges(this.trebles);
    /** @type {Map<string, Cell>} */
    this.byPlace = new Map(cells.map((c) => [`${c.bass_mm}/${c.treble_mm}`, c]));
  }

  /** The cell in a column and a row. @param {number} i @param {number} j */
  cell(i, j) {
    return this.byPlace.get(`${this.basses[i]}/${this.trebles[j]}`);
  }

  /** @param {Place} place */
  at(place) {
    return this.byPlace.get(`${place.bass}/${place.treble}`);
  }

  /** The tried pair nearest to a place. @param {Place} place @returns {Place} */
  nearest(place) {
    return { bass: this.basses[nearest(this.basses, place.bass)], treble: this.trebles[nearest(this.trebles, place.treble)] };
  }

  /**
   * The pair some steps on; from a place between two steps the first one goes to the next.
   * @param {Place} place
   * @param {number} across
   * @param {number} up
   * @returns {Place}
   */
  step(place, across, up) {
    return { bass: stepped(this.basses, place.bass, across), treble: stepped(this.trebles, place.treble, up) };
  }

  /** The nearest pair that no limit drops, if there is one. @param {Place} place @returns {Place | null} */
  nearestKept(place) {
    let [best, least] = [/** @type {Cell | null} */ (null), Infinity];
    for (const c of this.cells) {
      const far = Math.hypot(c.bass_mm - place.bass, c.treble_mm - place.treble);
      if (!c.limit && far < least) [best, least] = [c, far];
    }
    return best && { bass: best.bass_mm, treble: best.treble_mm };
  }
}

/** Rising, each once. @param {number[]} values */
function lengths(values) {
  return [...new Set(values)].sort((a, b) => a - b);
}

/** The borders of the squares: half way between neighbours. @param {number[]} at @returns {number[]} */
function edges(at) {
  const first = (at[1] ?? at[0] + 5) - at[0], last = at.length > 1 ? at[at.length - 1] - at[at.length - 2] : first;
  return [at[0] - first / 2, ...at.slice(1).map((v, i) => (v + at[i]) / 2), at[at.length - 1] + last / 2];
}

/** The index of the nearest. @param {number[]} at @param {number} value */
export function nearest(at, value) {
  let best = 0;
  for (let i = 1; i < at.length; i++) if (Math.abs(at[i] - value) < Math.abs(at[best] - value)) best = i;
  return best;
}

/** @param {number[]} at @param {number} value @param {number} steps */
function stepped(at, value, steps) {
  if (!steps) return value;
  let i = nearest(at, value);
  const between = Math.abs(at[i] - value) > 1e-6;
  if (between && at[i] > value === steps > 0) steps -= Math.sign(steps);
  return at[Math.max(0, Math.min(at.length - 1, i + steps))];
}
