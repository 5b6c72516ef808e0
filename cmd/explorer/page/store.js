// What the builder has: three texts and how they are looked at. Every change makes a new
// state, and a step back to the one before. State and steps are kept in the browser's storage.

/**
 * @typedef {object} View
 * @property {number | null} bass in mm; null: the pick that the build prefers
 * @property {number | null} treble in mm
 * @property {string | null} neutral neutral fret as in the build file; null: the build's
 * @property {string[] | null} gauges the set that is kept, low string first; null: the best for each pair
 * @property {Kept | null} a the pair that the one shown is compared with
 * @property {string | null} blank the name of the blank that the board is laid in; null: the first that fits
 * @property {{bass: number, treble: number} | null} marked the pair on which marks were measured
 * @property {boolean} leftHanded
 *
 * @typedef {{bass: number, treble: number, neutral: string | null, gauges: string[], own?: string[] | null}} Kept own: the view's gauges when it was kept
 * @typedef {{build: string, readings: string, marks: string, view: View}} State
 * @typedef {"build" | "readings" | "marks"} TextName
 * @typedef {Record<TextName | "pair", string>} Saved
 *
 * What makes one state of another: of each text that differs how much of its beginning and
 * of its end stays, and what comes between; the view where it differs.
 * @typedef {{texts: Partial<Record<TextName, [number, number, string]>>, view?: View}} Step
 */

const TEXTS = /** @type {const} */ (["build", "readings", "marks"]);
const KEY = "scalepair";
const MOST = 500; // steps in the history (judgement)
const REST = 100; // ms after a change until it is kept (judgement)

/** @type {View} */
export const FIRST_VIEW = { bass: null, treble: null, neutral: null, gauges: null, a: null, blank: null, marked: null, leftHanded: false };

export class Store extends EventTarget {
  /**
   * @param {Storage | null} storage null where the browser allows none
   * @param {State} first the state to begin with where none is kept
   */
  constructor(storage, first) {
    super();
    this.storage = storage;
    /** What the last change was of; changes of one thing in one go are one step back. @type {string | null} */
    this.going = null;
    /** Why the state could not be kept; "" where it was. */
    this.notKept = "";
    /** @type {ReturnType<typeof setTimeout> | undefined} */
    this.keeping = undefined;
    const kept = this.restore();
    this.state = kept?.state ?? first;
    /** The steps back, the next one last. @type {Step[]} */
    this.past = kept?.past ?? [];
    /** The steps forward again, the next one last. @type {Step[]} */
    this.future = kept?.future ?? [];
    /** The three texts, and the pair, as they were last downloaded, or came with the page. @type {Saved} */
    this.saved = kept?.saved ?? filed(first);
  }

  /**
   * Changes the state. With a name, changes that follow each other under that name are one
   * step of the history until settle() is called: a drag is undone at once.
   * @param {Partial<Omit<State, "view">> & {view?: Partial<View>}} change
   * @param {string | null} [going]
   */
  change(change, going = null) {
    const next = { ...this.state, ...change, view: change.view ? { ...this.state.view, ...change.view } : this.state.view };
    if (same(next, this.state)) return;
    const first = going !== null && going === this.going ? this.past.pop() : undefined;
    this.past.push(step(next, first ? after(this.state, first) : this.state));
    if (this.past.length > MOST) this.past.shift();
    this.going = going;
    this.future = [];
    this.enter(next);
  }

  /** Ends what is going on: the next change is a step of its own. */
  settle() {
    this.going = null;
  }

  undo() {
    this.move(this.past, this.future);
  }

  redo() {
    this.move(this.future, this.past);
  }

  /** Takes a step, and notes the one that takes it back. @param {Step[]} from @param {Step[]} to */
  move(from, to) {
    const taken = from.pop();
    if (!taken) return;
    const next = after(this.state, taken);
    to.push(step(next, this.state));
    this.going = null;
    this.enter(next);
  }

  /**
   * Notes that texts went into files.
   * @param {Partial<Record<TextName, string>>} texts as they stand there
   */
  downloaded(texts) {
    Object.assign(this.saved, texts);
    if (texts.build !== undefined) this.saved.pair = filed(this.state).pair;
    this.keep();
    this.dispatchEvent(new Event("saved"));
  }

  /** The texts that are in no file yet. @returns {TextName[]} */
  unsaved() {
    const now = filed(this.state);
    return TEXTS.filter((name) => now[name] !== this.saved[name] || (name === "build" && now.pair !== this.saved.pair));
  }

  /** @param {State} state */
  enter(state) {
    this.state = state;
    this.dispatchEvent(new Event("change"));
    clearTimeout(this.keeping);
    this.keeping = setTimeout(() => this.keep(), REST);
  }

  /**
   * Keeps state and history in the browser's storage: soon after each change, and before the
   * page goes. Where there is no room for all of it the oldest steps are left out.
   */
  keep() {
    clearTimeout(this.keeping);
    const before = this.notKept;
    try {
      if (!this.storage) throw new Error("this browser allows none for files");
      for (let n = MOST; !this.keepSteps(this.storage, n); n = Math.floor(n / 2));
      this.notKept = "";
    } catch (error) {
      this.notKept = error instanceof Error ? error.message : String(error);
    }
    if (this.notKept !== before) this.dispatchEvent(new Event("saved"));
  }

  /** Reports whether there is room for that many steps; for none of them there must be. @param {Storage} storage @param {number} n */
  keepSteps(storage, n) {
    const last = (/** @type {Step[]} */ steps) => steps.slice(Math.max(0, steps.length - n));
    try {
      storage.setItem(KEY, JSON.stringify({ state: this.state, saved: this.saved, past: last(this.past), future: last(this.future) }));
      return true;
    } catch (error) {
      if (n === 0) throw error;
      return false;
    }
  }

  /** @returns {{state: State, saved: Saved, past?: Step[], future?: Step[]} | null} */
  restore() {
    try {
      const kept = JSON.parse(this.storage?.getItem(KEY) ?? "null");
      const { build, readings, marks } = kept.state;
      if (![build, readings, marks].every((text) => typeof text === "string")) return null;
      return { ...kept, state: { build, readings, marks, view: { ...FIRST_VIEW, ...kept.state.view } } };
    } catch {
      return null; // nothing kept, or kept by another version
    }
  }
}

/** @param {State} a @param {State} b */
function same(a, b) {
  return TEXTS.every((name) => a[name] === b[name]) && JSON.stringify(a.view) === JSON.stringify(b.view);
}

/** The step from one state to another. @param {State} from @param {State} to @returns {Step} */
function step(from, to) {
  /** @type {Step} */
  const out = { texts: {} };
  for (const name of TEXTS) {
    const a = from[name], b = to[name], most = Math.min(a.length, b.length);
    if (a === b) continue;
    let [head, tail] = [0, 0];
    while (head < most && a[head] === b[head]) head++;
    while (tail < most - head && a[a.length - 1 - tail] === b[b.length - 1 - tail]) tail++;
    out.texts[name] = [head, tail, b.slice(head, b.length - tail)];
  }
  return from.view === to.view ? out : { ...out, view: to.view };
}

/** The state that a step makes of another. @param {State} state @param {Step} step @returns {State} */
function after(state, { texts, view }) {
  const next = { ...state, view: view ?? state.view };
  for (const name of TEXTS) {
    const [head, tail, between] = texts[name] ?? [0, 0, null], text = state[name];
    if (between !== null) next[name] = text.slice(0, head) + between + text.slice(text.length - tail);
  }
  return next;
}

/** What goes into files. @param {State} state @returns {Saved} */
function filed({ build, readings, marks, view }) {
  return { build, readings, marks, pair: JSON.stringify([view.bass, view.treble, view.neutral, view.gauges]) };
}

/** The browser's storage; null where it allows none. @returns {Storage | null} */
export function browserStorage() {
  try {
    return window.localStorage;
  } catch {
    return null;
  }
}
