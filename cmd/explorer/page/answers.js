// Asks the engine what the state needs, and keeps the last good answers. The pair is asked for
// at every change; the search and its trials follow when the hand rests.

import { placeShown } from "./shell.js";

/** @typedef {import("./store.js").Store} Store */
/** @typedef {import("./types.js").PairAnswer} PairAnswer */
/** @typedef {import("./types.js").Advice} Advice */
/** @typedef {import("./types.js").Fault} Fault */

/** @type {Fault[]} */
const NONE = [];
const REST = 120; // ms without a change before the search begins (judgement)

export class Answers extends EventTarget {
  /**
   * @param {import("./engine.js").Engine} engine
   * @param {Store} store
   */
  constructor(engine, store) {
    super();
    this.engine = engine;
    this.store = store;
    /** @type {PairAnswer | null} */
    this.pair = null;
    /** @type {Advice | null} */
    this.advice = null;
    /** Every pair that was tried, also where none is kept. @type {import("./types.js").Searched | null} */
    this.map = null;
    /** @type {import("./types.js").Keys | null} */
    this.keys = null;
    /** @type {import("./types.js").GaugeList | null} */
    this.gauges = null;
    /** @type {import("./types.js").Readings | null} */
    this.readings = null;
    /** @type {import("./types.js").Marks | null} */
    this.marks = null;
    /** @type {import("./types.js").Check | null} */
    this.check = null;
    /** The pair that it judged by. */
    this.checkOf = "";
    /** The kept pair A beside the shown one. @type {import("./types.js").Compared | null} */
    this.compared = null;
    /** @type {import("./types.js").Next | null} */
    this.next = null;
    /** @type {Record<string, Fault[]>} */
    this.faults = {};
    /** Whether search or trials are still on their way. */
    this.working = true;
    /** What the last search was of. @type {string[]} */
    this.searched = [];
    /** The texts that gauges and keys were last asked of. */
    this.ofReadings = "";
    this.ofBuild = "";
    /** @type {ReturnType<typeof setTimeout> | undefined} */
    this.resting = undefined;
    store.addEventListener("change", () => this.ask());
  }

  /** Another build begins: the answers of the last one say nothing of it. */
  forget() {
    [this.pair, this.advice, this.map, this.gauges, this.next, this.compared, this.check] = [null, null, null, null, null, null, null];
  }

  /** What every call is given: the texts, and what is laid over them. */
  request() {
    const { build, readings, marks, view } = this.store.state;
    /** @type {Record<string, string | string[] | boolean>} */
    const flags = {};
    if (view.neutral !== null) flags.neutral = view.neutral;
    if (view.gauges?.length) flags.gauges = view.gauges.join(" ");
    else if (view.gauges) flags["free-gauges"] = true;
    return { build, readings, marks, flags };
  }

  /** The same with the pair that is shown. */
  pairRequest() {
    const request = this.request(), at = this.store.state.view.bass === null ? null : this.place();
    if (at) Object.assign(request.flags, { bass: `${at.bass} mm`, treble: `${at.treble} mm` });
    return request;
  }

  /** The pair that is shown: the builder's, else the one that the build chose or the search prefers. */
  place() {
    const { bass, treble } = this.store.state.view, shown = this.pair?.tension.pair;
    if (bass !== null && treble !== null) return { bass, treble };
    return shown ? { bass: shown.bass_mm, treble: shown.treble_mm } : null;
  }

  ask() {
    this.askPair();
    this.askTexts();
    this.askMarks();
    const { build, readings } = this.store.state, of = [build, readings, JSON.stringify(this.request().flags)];
    if (of.every((text, i) => text === this.searched[i])) return;
    this.searched = of;
    this.working = true;
    clearTimeout(this.resting);
    this.resting = setTimeout(() => this.search(), REST);
  }

  async askPair() {
    const request = this.pairRequest();
    Object.assign(request.flags, placeShown() === "make" && { marks: true });
    const answer = await this.engine.quick("pair", request);
    if (answer && this.take("pair", answer)) this.pair = answer.result;
    if (answer) this.tell("pair");
    this.askCompared();
  }

  async askCompared() {
    const { a } = this.store.state.view, pair = this.pair?.tension.pair;
    if (!a || !pair) {
      const had = this.compared;
      this.compared = null;
      delete this.faults.compare;
      if (had) this.tell("compared");
      return;
    }
    const column = (/** @type {import("./store.js").Kept} */ k) => ({ pair: `${k.bass} / ${k.treble} mm`, gauges: k.gauges.join(" "), ...(k.neutral && { neutral: k.neutral }) });
    const shown = { bass: pair.bass_mm, treble: pair.treble_mm, neutral: this.store.state.view.neutral, gauges: pair.gauges };
    const { build, readings } = this.store.state;
    const answer = await this.engine.quick("compare", { build, readings, columns: [{ name: "A", ...column(a) }, { name: "shown", ...column(shown) }] });
    if (answer) this.compared = this.take("compare", answer) ? answer.result : null;
    if (answer) this.tell("compared");
  }

  /** The marks that were measured, and the check of them. */
  async askMarks() {
    const request = this.pairRequest();
    if (!request.marks) {
      [this.marks, this.check, this.faults.marks] = [null, null, []];
      return;
    }
    const of = { marks: request.marks }, rows = await this.engine.quick("marks", request);
    if (this.over(of)) return; // it was asked again
    if (rows?.result) this.marks = rows.result;
    const check = await this.engine.quick("check", request);
    if (!check || this.over(of)) return;
    // What was wrong before is shown until it can be judged again, of another pair it is not.
    const { bass, treble } = request.flags, pair = `${bass} ${treble}`;
    if (this.take("marks", check)) [this.check, this.checkOf] = [check.result, pair];
    else if (pair !== this.checkOf) this.check = null;
    this.tell("marks");
  }

  /** What hangs on the texts alone: the strings in stock and the keys of the build. @returns {Promise<void>} */
  async askTexts() {
    const { build, readings } = this.store.state;
    if (readings !== this.ofReadings || build !== this.ofBuild) {
      const [rows, gauges] = await Promise.all([this.engine.quick("readings", { build, readings }), this.engine.quick("gauges", { build, readings })]);
      if (this.over({ build, readings })) return this.askTexts();
      if (rows) this.take("readings", rows);
      if (rows?.result) this.readings = rows.result;
      if (gauges && this.take("gauges", gauges)) this.gauges = gauges.result;
      if (rows && gauges) this.ofReadings = readings;
      this.tell("gauges");
    }
    if (build !== this.ofBuild) {
      const keys = await this.engine.quick("keys", { build });
      if (this.over({ build, readings })) return this.askTexts();
      if (!keys) return;
      this.ofBuild = build;
      if (keys.result) this.keys = keys.result;
      this.tell("keys");
    }
  }

  /** Whether texts that were asked of are no more those of the state. @param {Partial<import("./store.js").State>} of */
  over(of) {
    const { build, readings, marks } = this.store.state, now = { build, readings, marks };
    return Object.entries(of).some(([name, text]) => text !== now[/** @type {"build"} */ (name)]);
  }

  async search() {
    const request = this.request();
    const first = await this.engine.slow("advise", { ...request, flags: { ...request.flags, trials: "0" } });
    if (!first) return;
    if (!this.take("advise", first)) {
      // Where no pair is left the map shows which limits drop them.
      const map = await this.engine.slow("map", request);
      if (!map) return;
      if (map.ok) [this.map, this.advice] = [map.result, null];
      this.working = false;
      this.tell("advice");
      return;
    }
    this.advice = first.result;
    this.map = first.result.map;
    this.tell("advice");
    const sure = await this.engine.slow("advise", request);
    if (!sure) return;
    this.working = false;
    if (this.take("advise", sure)) this.advice = sure.result;
    this.tell("advice");
    const next = await this.engine.quick("next", this.pairRequest());
    if (next?.ok) this.next = next.result;
    this.tell("next");
  }

  /**
   * Notes what is wrong with a call; reports whether it has an answer.
   * @param {string} call
   * @param {{ok: boolean, faults?: Fault[], result?: any}} answer
   */
  take(call, answer) {
    this.faults[call] = answer.ok ? NONE : (answer.faults ?? NONE);
    return answer.ok;
  }

  /** @param {"pair" | "advice" | "gauges" | "keys" | "marks" | "compared" | "next"} what */
  tell(what) {
    this.dispatchEvent(new Event(what));
  }
}
