// The pairs that were tried, as rows and columns of lengths.

/** @typedef {{bass: number, treble: number}} Place in mm */
/** @typedef {{bass: number, treble: number, error: number, good: boolean, limit: string, cents: number | null}} Cell */

export class Grid {
  /** @param {import("./types.js").Searched} found */
  constructor(found) {
    this.basses = found.bass_mm;
    this.trebles = found.treble_mm;
    this.limits = found.limits;
    this.noneNear = found.none_near; // then no pair is called as good
    this.bassEdges = edges(this.basses);
    this.trebleEdges = edges(this.trebles);
    /** By column and row. @type {Cell[][]} */
    this.columns = this.basses.map((bass, i) => this.trebles.map((treble, j) => ({
      bass, treble, error: found.feel_error_percent[i][j] ?? NaN, good: found.as_good[i][j], limit: found.limit[i][j], cents: found.inharmonicity_cents[i][j],
    })));
    this.cells = this.columns.flat();
  }

  /** The cell in a column and a row. @param {number} i @param {number} j */
  cell(i, j) {
    return this.columns[i]?.[j];
  }

  /** The cell of a pair, if it was tried. @param {Place} place */
  at(place) {
    const cell = this.cell(nearest(this.basses, place.bass), nearest(this.trebles, place.treble));
    return cell && Math.abs(cell.bass - place.bass) + Math.abs(cell.treble - place.treble) < 1e-6 ? cell : undefined;
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
      const far = Math.hypot(c.bass - place.bass, c.treble - place.treble);
      if (!c.limit && far < least) [best, least] = [c, far];
    }
    return best && { bass: best.bass, treble: best.treble };
  }
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
