// What the builder has: three texts and how they are looked at. Every change makes a new
// state; the earlier ones are the history. The last one is kept in the browser's storage.

/**
 * @typedef {object} View
 * @property {number | null} bass in mm; null: the pick that the build prefers
 * @property {number | null} treble in mm
 * @property {string | null} neutral neutral fret as in the build file; null: the build's
 * @property {string[] | null} gauges the set that is kept, low string first; null: the best for each pair
 * @property {Kept | null} a the pair that the one shown is compared with
 * @property {boolean} leftHanded
 *
 * @typedef {{bass: number, treble: number, neutral: string | null, gauges: string[]}} Kept
 * @typedef {{build: string, readings: string, marks: string, view: View}} State
 * @typedef {"build" | "readings" | "marks"} TextName
 * @typedef {Record<TextName | "pair", string>} Saved
 */

const KEY = "scalepair";
const MOST = 500; // states in the history (judgement)
const REST = 100; // ms after a change until it is kept (judgement)

/** @type {View} */
export const FIRST_VIEW = { bass: null, treble: null, neutral: null, gauges: null, a: null, leftHanded: false };

export class Store extends EventTarget {
  /**
   * @param {Storage | null} storage null where the browser allows none
   * @param {State} first the state to begin with where none is kept
   */
  constructor(storage, first) {
    super();
    this.storage = storage;
    /** @type {State[]} */
    this.past = [];
    /** @type {State[]} */
    this.future = [];
    /** What the last change was of; changes of one thing in one go are one step back. @type {string | null} */
    this.going = null;
    /** Why the state could not be kept; "" where it was. */
    this.notKept = "";
    /** @type {ReturnType<typeof setTimeout> | undefined} */
    this.keeping = undefined;
    const kept = this.restore();
    this.state = kept?.state ?? first;
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
    const next = { ...this.state, ...change, view: { ...this.state.view, ...change.view } };
    if (same(next, this.state)) return;
    if (going === null || going !== this.going) {
      this.past.push(this.state);
      if (this.past.length > MOST) this.past.shift();
    }
    this.going = going;
    this.future = [];
    this.enter(next);
  }

  /** Ends what is going on: the next change is a step of its own. */
  settle() {
    this.going = null;
  }

  undo() {
    const before = this.past.pop();
    if (!before) return;
    this.future.push(this.state);
    this.going = null;
    this.enter(before);
  }

  redo() {
    const after = this.future.pop();
    if (!after) return;
    this.past.push(this.state);
    this.going = null;
    this.enter(after);
  }

  /**
   * Notes that texts went into files.
   * @param {...TextName} names
   */
  downloaded(...names) {
    const now = filed(this.state);
    for (const name of names) this.saved[name] = now[name];
    if (names.includes("build")) this.saved.pair = now.pair;
    this.keep();
    this.dispatchEvent(new Event("saved"));
  }

  /** The texts that are in no file yet. @returns {TextName[]} */
  unsaved() {
    const now = filed(this.state);
    return /** @type {TextName[]} */ (["build", "readings", "marks"]).filter((name) => now[name] !== this.saved[name] || (name === "build" && now.pair !== this.saved.pair));
  }

  /** @param {State} state */
  enter(state) {
    this.state = state;
    this.dispatchEvent(new Event("change"));
    clearTimeout(this.keeping);
    this.keeping = setTimeout(() => this.keep(), REST);
  }

  /** Keeps the state in the browser's storage: soon after each change, and before the page goes. */
  keep() {
    clearTimeout(this.keeping);
    const before = this.notKept;
    try {
      if (!this.storage) throw new Error("this browser allows none for files");
      this.storage.setItem(KEY, JSON.stringify({ state: this.state, saved: this.saved }));
      this.notKept = "";
    } catch (error) {
      this.notKept = error instanceof Error ? error.message : String(error);
    }
    if (this.notKept !== before) this.dispatchEvent(new Event("saved"));
  }

  /** @returns {{state: State, saved: Saved} | null} */
  restore() {
    try {
      const kept = JSON.parse(this.storage?.getItem(KEY) ?? "null");
      const { build, readings, marks } = kept.state;
      if (![build, readings, marks].every((text) => typeof text === "string")) return null;
      return { state: { build, readings, marks, view: { ...FIRST_VIEW, ...kept.state.view } }, saved: kept.saved };
    } catch {
      return null; // nothing kept, or kept by another version
    }
  }
}

/** @param {State} a @param {State} b */
function same(a, b) {
  return a.build === b.build && a.readings === b.readings && a.marks === b.marks && JSON.stringify(a.view) === JSON.stringify(b.view);
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
