// What the places share: the state is changed here, one change after another, files are opened
// and written, and what is wrong is said above the place.

import { byId, say } from "./dom.js";
import { download, readFiles } from "./files.js";
import { lineOf } from "./inhand.js";
import { announce, notice, placeShown } from "./shell.js";
import { FIRST_VIEW } from "./store.js";
import { Units, capital } from "./units.js";
import { namesOf, plain, wrongHere, wrongThere } from "./words.js";

/** @typedef {import("./store.js").TextName} TextName */
/** @typedef {import("./types.js").Fault} Fault */

/** Whether a fault is one of a key or of an entry of its list. @param {Fault} fault @param {string} key */
const isOf = (fault, key) => fault.key === key || fault.key.startsWith(key + "[");

export class App {
  /**
   * @param {import("./engine.js").Engine} engine
   * @param {import("./store.js").Store} store
   * @param {import("./answers.js").Answers} answers
   */
  constructor(engine, store, answers) {
    this.engine = engine;
    this.store = store;
    this.answers = answers;
    this.units = new Units();
    /** Why the last thing that was asked for was not done; it stays until it is closed or the state changes. */
    this.refused = "";
    /** The line of a row that was just added: until the hand leaves it, what it lacks is no fault. */
    this.fresh = 0;
    store.addEventListener("change", () => (this.refused = ""));
    /** @type {Promise<any>} */
    this.turn = Promise.resolve();
    /** The last sheet, and the state that it is of. @type {ReturnType<App["makeSheet"]> | undefined} */
    this.made = undefined;
    this.sheetOf = "";
  }

  /**
   * Lets a change of the texts wait until those before it are in the state, so that each is
   * made in the newest text, however fast they follow each other.
   * @template T
   * @param {() => Promise<T>} change
   * @returns {Promise<T>}
   */
  inTurn(change) {
    return (this.turn = this.turn.then(change, change));
  }

  /** The units that the build file asks for. */
  unitsOf() {
    return new Units(/** @type {any} */ (this.keyText("length_unit") || "mm"), /** @type {any} */ (this.keyText("force_unit") || "N"));
  }

  /**
   * Takes the keys of the build. With a second tuning the one tuning becomes the first of a list
   * (set): a further one is its second from the start, so that the hand stays in its fields.
   */
  readKeys() {
    this.units = this.unitsOf();
    const sections = this.answers.keys?.sections ?? [], further = sections.find((s) => s.name === "tunings");
    if (further && !further.given && this.keyText("strings.tuning"))
      for (const one of [further, ...further.keys]) one.path = one.path.replace("[0]", "[1]");
    for (const one of sections.flatMap((s) => [s, ...s.keys])) one.help = plain(one.help, this.names());
  }

  /** What the build file says of a key. @param {string} path */
  keyText(path) {
    for (const section of this.answers.keys?.sections ?? []) {
      const key = section.keys.find((k) => k.path === path);
      if (key) return key.text;
    }
    return "";
  }

  /** The names that stand in sentences as the files have them. */
  names() {
    return namesOf(this.answers.keys, this.answers.readings, this.units);
  }

  /** What is wrong in short, as a sentence. @param {Fault} fault */
  what(fault) {
    return capital(plain(fault.what + (fault.given && ` ("${fault.given}")`), this.names()));
  }

  /** What is wrong and what to do, for its field. @param {Fault} fault */
  wrong(fault) {
    return wrongHere(fault, this.names());
  }

  /** The same of several, each once. @param {Fault[]} faults */
  wrongs(faults) {
    return [...new Set(faults.map((f) => this.wrong(f)))].join("\n");
  }

  /** Whether what a place shows is of texts before the last change, since those of now have faults. @param {string} place */
  old(place) {
    const call = place === "strings" ? "gauges" : "pair";
    return Boolean(this.answers[call] && this.answers.faults[call]?.some((f) => f.line > 0));
  }

  /** What is wrong with the table of readings. */
  wrongRows() {
    const { readings = [], gauges = [] } = this.answers.faults;
    return [...readings, ...gauges.filter((f) => f.input.endsWith(".csv") && !readings.some((r) => r.text === f.text))].filter((f) => f.line !== this.fresh || f.given);
  }

  /** Shows another pair. @param {import("./grid.js").Place} place @param {boolean} [going] */
  go(place, going = false) {
    this.store.change({ view: { bass: place.bass, treble: place.treble } }, "pair");
    if (!going) this.store.settle();
  }

  /**
   * Changes the build file; answers what is wrong, "" if nothing.
   * @param {{key: string, text?: string, list?: string[], remove?: boolean, add?: boolean}[]} edits
   * @returns {Promise<string>}
   */
  edit(edits) {
    return this.inTurn(() => this.set(edits));
  }

  /** @param {Parameters<App["edit"]>[0]} edits */
  async set(edits) {
    const { build, readings } = this.store.state;
    if (edits.some((e) => e.key.startsWith("tunings[1]")) && !/^\s*\[\[tunings\]\]/m.test(build)) edits = [{ key: "tunings[0].tuning", text: this.keyText("strings.tuning") }, ...edits];
    const answer = await this.engine.quick("set", { build, readings, edits }, "set");
    if (!answer) return "";
    // What is wrong with the keys that were changed, or with how they are written, stands at their
    // fields, and nothing is kept; a further blank, say, is kept before it has its length.
    const own = (answer.faults ?? []).filter((/** @type {Fault} */ f) => (f.line > 0 && !f.key) || edits.some((e) => isOf(f, e.key)));
    if (own.length || !answer.result) return this.wrongs(own.length ? own : answer.faults);
    // A table that is still empty follows the build into another unit.
    const lengths = edits.find((e) => e.key === "length_unit")?.text, empty = lengths && readings === (await this.noReadings(this.units.length));
    // What is set in the form is what is shown, whatever a hand had laid over it.
    const view = { ...(edits.some((e) => e.key.endsWith("neutral_fret")) && { neutral: null }), ...(edits.some((e) => e.key === "strings.gauges") && { gauges: null }) };
    this.store.change({ build: answer.result.build, view, ...(empty && { readings: await this.noReadings(lengths) }) });
    return "";
  }

  /** What is wrong with a key or an entry of the build, "" if nothing. @param {string} key */
  faultOf(key) {
    return this.wrongs(Object.values(this.answers.faults).flat().filter((f) => f.input.endsWith(".toml") && isOf(f, key)));
  }

  /**
   * Notes a measured value in the form of the marks, which is made where there is none.
   * @param {string} line
   * @param {string} pass
   * @param {number} fret
   * @param {string} text
   */
  measure(line, pass, fret, text) {
    return this.inTurn(() => this.mark(line, pass, fret, text));
  }

  /** @param {string} line @param {string} pass @param {number} fret @param {string} text */
  async mark(line, pass, fret, text) {
    const request = this.answers.pairRequest(), marked = request.marks ? this.store.state.view.marked : this.answers.place();
    if (!request.marks) request.marks = (await this.engine.quick("form", request, "form"))?.result?.marks ?? "";
    const sheet = (await this.engine.quick("marks", request, "form"))?.result;
    if (!sheet) return;
    const column = sheet.columns.includes("measured_in") ? "measured_in" : "measured_mm";
    const row = sheet.rows.find((/** @type {{cells: Record<string, string>}} */ r) => r.cells.line === line && (r.cells.pass ?? "") === pass && (pass === "" || Number(r.cells.fret) === fret));
    const edit = row ? { line: row.line, column, text } : { add: { line, pass, fret: pass ? String(fret) : "", [column]: text } };
    const answer = await this.engine.quick("marks", { ...request, edits: [edit] }, "form");
    if (answer?.result) this.store.change({ marks: answer.result.marks, view: { marked } });
  }

  /** Begins anew: with the demo, or with the template and no readings. @param {"demo" | "init"} call */
  async begin(call) {
    const { length } = this.units, texts = (await this.engine.quick(call, call === "init" ? { flags: { lengths: length } } : {}, "begin"))?.result;
    if (!texts) return;
    const { build } = texts, readings = call === "init" ? await this.noReadings(length) : texts.readings;
    this.answers.forget();
    this.store.change({ build, readings, marks: "", view: { ...FIRST_VIEW, leftHanded: this.store.state.view.leftHanded } });
    if (call === "demo") return;
    location.hash = "strings";
    setTimeout(() => byId("strings-title").focus()); // once the place is shown
  }

  /** The template's table of readings without a row, with lengths in a unit. @param {string} lengths @returns {Promise<string>} */
  async noReadings(lengths) {
    const texts = (await this.engine.quick("init", { flags: { lengths } }, "template"))?.result;
    return texts ? (await this.withoutRows(texts)).replace(/^# INVENTED[^]*?\n#\n/, "") : "";
  }

  /** The readings' heading row alone, with the remarks above it. @param {{build: string, readings: string}} texts @returns {Promise<string>} */
  async withoutRows(texts) {
    const rows = (await this.engine.quick("readings", texts, "rows"))?.result?.rows ?? [];
    const bare = await this.engine.quick("readings", { ...texts, edits: rows.map((/** @type {{line: number}} */ r) => ({ line: r.line, remove: true })) }, "rows");
    return bare?.result?.readings ?? texts.readings;
  }

  /** Reads files that were dropped or picked. A broken one changes nothing. @param {Iterable<File>} list */
  async open(list) {
    try {
      const files = await readFiles(list), { build, readings, marks } = this.store.state;
      const texts = { build, readings, marks };
      for (const file of files) texts[file.kind] = file.text;
      for (const [call, wanted] of /** @type {[string, TextName][]} */ ([["keys", "build"], ["readings", "readings"], ["marks", "marks"]])) {
        const file = files.find((f) => f.kind === wanted), answer = file && (await this.engine.quick(call, texts, "open"));
        // The engine knows the file by the name of its kind.
        const named = (/** @type {Fault} */ f) => ({ ...f, text: f.text.replace(f.input, file?.name ?? "") });
        if (answer && !answer.ok) return this.refuse(answer.faults.map(named), `${file?.name} was not taken:\n`);
      }
      // On which pair marks of a file were measured nobody knows.
      const { leftHanded, marked } = this.store.state.view, own = { marked: files.some((f) => f.kind === "marks") ? null : marked };
      this.store.change({ ...texts, view: files.some((f) => f.kind === "build") ? { ...FIRST_VIEW, leftHanded, ...own } : own });
      this.store.downloaded(Object.fromEntries(files.map((f) => [f.kind, texts[f.kind]])));
      announce(files.map((f) => f.name).join(", ") + " read");
    } catch (error) {
      this.refuse([], error instanceof Error ? error.message : String(error));
    }
  }

  /** Downloads every text that is in no file yet; the build file always. */
  async save() {
    for (const name of new Set([/** @type {TextName} */ ("build"), ...this.store.unsaved()])) await this.download(name);
  }

  /**
   * Downloads what a command writes; the build file with the shown pair and its set in it.
   * @param {string} kind
   * @param {Record<string, string | boolean>} [flags]
   */
  async download(kind, flags = {}) {
    const request = this.answers.pairRequest();
    if (kind === "build" && this.answers.pair) {
      const faults = await this.inTurn(async () => {
        const kept = await this.chosen();
        if (!kept?.ok) return kept?.faults ?? [];
        Object.assign(request, { readings: this.store.state.readings, build: kept.result.build });
        this.store.change({ build: kept.result.build });
      });
      if (faults) return this.refuse(faults);
    }
    const answer = kind === "sheet" ? await this.sheet() : await this.engine.quick("file", { ...request, flags: { ...request.flags, kind, ...flags } }, `file ${kind} ${flags.paper ?? ""}`);
    if (!answer?.ok) return this.refuse(answer?.faults);
    const { name, type, bytes } = answer.result;
    // Drawings for different papers have names of their own, so that none takes the other's place.
    download(flags.paper ? name.replace(".", `-${flags.paper}.`) : name, type, bytes);
    if (kind === "build" || kind === "readings" || kind === "marks") this.store.downloaded({ [kind]: request[kind] });
  }

  /** The build file with the shown pair and its set in it. */
  chosen() {
    const request = this.answers.pairRequest(), pair = this.answers.pair?.tension.pair;
    if (pair) Object.assign(request.flags, { bass: `${pair.bass_mm} mm`, treble: `${pair.treble_mm} mm`, gauges: pair.gauges.join(" ") });
    return this.engine.quick("save", request, "chosen");
  }

  /** The bench sheet of the shown pair, as the command writes it for the build that has it chosen; made once for a state. */
  sheet() {
    const { blank, leftHanded } = this.store.state.view, of = JSON.stringify([this.answers.pairRequest(), blank, leftHanded]);
    if (of !== this.sheetOf)
      this.made = this.makeSheet().then((answer) => {
        if (!answer?.ok && this.sheetOf === of) this.sheetOf = ""; // it is tried again
        return answer;
      });
    this.sheetOf = of;
    return this.made;
  }

  async makeSheet() {
    const kept = await this.chosen(), { readings, view } = this.store.state;
    if (!kept?.ok) return kept;
    const sheet = (/** @type {Record<string, string>} */ own) => this.engine.aside("file", { build: kept.result.build, readings, flags: { kind: "sheet", ...(view.leftHanded && { "left-handed": true }), ...own } });
    const answer = await sheet(view.blank === null ? {} : { blank: view.blank });
    return answer && !answer.ok && view.blank !== null ? sheet({}) : answer; // one that is too small for the pair is left, as Make does
  }

  /** Says why something was not done. @param {Fault[]} [faults] @param {string} [before] */
  refuse(faults, before = "") {
    this.refused = before + (faults ?? []).map((f) => (before ? f.text : wrongThere(f, this.names()))).join("\n");
    this.complain();
  }

  /** Says above the place what is wrong with the texts; the last good answers stay. */
  complain() {
    const { gauges, readings } = this.answers, lines = new Set([...this.wrongRows().map((f) => f.line), ...(gauges?.suspects ?? []).map(lineOf)]);
    const none = readings?.rows.length === 0, count = none ? 0 : lines.size, badge = byId("to-check");
    badge.hidden = !count;
    say(badge, `${count} to check`);
    byId("invented").hidden = !/INVENTED|\(invented\)/.test(this.store.state.readings);
    // In Strings they stand at their cells, in Choose and Make where the pair would be if they leave
    // none; that nothing is weighed yet each place says itself.
    const place = placeShown(), said = { strings: "", choose: byId("words").textContent ?? "", make: this.answers.pair ? "" : (byId("make-nothing").textContent ?? "") }[place].toLowerCase().replaceAll("\u00a0", " ");
    const faults = Object.values(this.answers.faults).flat().filter((f) => (f.input === "measured.csv" ? place === "make" : (place !== "strings" && !none) || !f.input.endsWith(".csv")) && !said.includes(this.what(f).toLowerCase()));
    const words = [this.refused, ...new Set(faults.map((f) => wrongThere(f, this.names())))].filter(Boolean).join("\n");
    byId("main").classList.toggle("old", this.old(place));
    say(byId("old-words"), this.old(place) ? "Figures are of the last readings and build without faults." : "");
    notice(words, this.refused ? { words: "Close", press: () => ((this.refused = ""), this.complain()) } : null);
  }
}
