// The engine: the program itself, compiled for the browser, in workers of its own. One is
// quick, for what follows a hand, and answers call after call; one is slow, for what takes
// its time, and is thrown away for the next call that comes.

/**
 * @typedef {object} Fault
 * @property {string} input "build.toml", "readings.csv", "measured.csv" or a flag such as "--bass"
 * @property {number} line from 1, 0 for none
 * @property {number} column in characters, from 1
 * @property {string} key of the build file, or a column's heading
 * @property {string} what
 * @property {string} given
 * @property {string} remedy
 * @property {string} text the whole message
 *
 * @typedef {object} Answer
 * @property {boolean} ok
 * @property {any} result
 * @property {string[]} notes
 * @property {Fault[]} faults
 *
 * @typedef {{build?: string, readings?: string, marks?: string, flags?: Record<string, unknown>,
 *   edits?: object[], paste?: string, columns?: Record<string, string>[]}} Request
 *
 * @typedef {{name: string, request: Request, lane: string, resolve: (answer: Answer | null) => void}} Call
 */

/** @param {string} text @returns {Answer} */
const failed = (text) => ({
  ok: false, result: undefined, notes: [],
  faults: [{ input: "", line: 0, column: 0, key: "", what: text, given: "", remedy: "", text }],
});

/** Reads an answer; the bytes of a file are base64 in it. @param {string} text @returns {Answer} */
function read(text) {
  const answer = JSON.parse(text);
  if (typeof answer.result?.bytes === "string") answer.result.bytes = bytesOf(answer.result.bytes);
  return { ...answer, notes: answer.notes ?? [], faults: answer.faults ?? [] };
}

/** @param {string} base64 */
function bytesOf(base64) {
  const text = atob(base64);
  const bytes = new Uint8Array(text.length);
  for (let i = 0; i < text.length; i++) bytes[i] = text.charCodeAt(i);
  return bytes;
}

/** A fault's words at its field, where its place in the file says nothing. @param {Fault} fault */
export function atField(fault) {
  return fault.text.replace(/^(\S+\.(toml|csv):\d+(:\d+)?|--[\w-]+): /, "");
}

/** One engine in its worker; it answers one call at a time. */
class Seat {
  /** @param {WebAssembly.Module} module @param {string} script */
  constructor(module, script) {
    this.worker = new Worker(script);
    /** @type {Call | null} */
    this.call = null;
    this.number = 0;
    this.dead = false;
    this.done = () => {};
    this.ready = new Promise((resolve, reject) => {
      this.worker.onmessage = ({ data }) => {
        if (data.ready) resolve(this);
        else if (data.ended) {
          reject(new Error(data.why ?? "the program ended before it began"));
          this.die(data.why ?? "the program ended; the last change was too much for it");
        }
        else if (data.number === this.number) this.finish(read(data.answer));
      };
      this.worker.onerror = (event) => {
        reject(new Error(event.message));
        this.die(event.message);
      };
    });
    this.ready.catch(() => {}); // said where it is waited for
    this.worker.postMessage(module);
  }

  /** @param {Call} call */
  start(call) {
    this.call = call;
    this.ready.then(
      () => this.worker.postMessage({ number: ++this.number, name: call.name, request: JSON.stringify(call.request) }),
      (error) => this.die(String(error)),
    );
  }

  /** @param {Answer | null} answer */
  finish(answer) {
    const call = this.call;
    this.call = null;
    call?.resolve(answer);
    this.done();
  }

  /** @param {string} why */
  die(why) {
    this.dead = true;
    this.worker.terminate();
    this.finish(failed(why));
  }

  stop() {
    this.dead = true;
    this.worker.terminate();
    this.finish(null);
  }
}

export class Engine {
  /** @param {() => Seat} seat makes an engine @param {Seat} first */
  constructor(seat, first) {
    this.seat = seat;
    /** @type {Call[]} */
    this.waiting = [];
    this.useForQuick(first);
    this.slowly = seat();
    this.spare = seat(); // so that a slow call that is thrown away costs the next one nothing
    /** The first state, as it was built in. @type {{build: string, readings: string, marks: string, demo: boolean}} */
    this.first = JSON.parse(textOf("first"));
  }

  /** @param {Seat} seat */
  useForQuick(seat) {
    this.quickly = seat;
    seat.done = () => this.next();
  }

  /**
   * A call that is answered soon. While calls wait, one gives way to the next of its lane: its
   * promise then gives null.
   * @param {string} name @param {Request} request @param {string} [lane]
   * @returns {Promise<Answer | null>}
   */
  quick(name, request, lane = name) {
    return new Promise((resolve) => {
      const older = this.waiting.findIndex((call) => call.lane === lane);
      if (older >= 0) this.waiting.splice(older, 1)[0].resolve(null);
      this.waiting.push({ name, request, lane, resolve });
      this.next();
    });
  }

  next() {
    if (this.quickly?.dead) this.useForQuick(this.seat());
    const seat = /** @type {Seat} */ (this.quickly);
    if (seat.call) return;
    const call = this.waiting.shift();
    if (call) seat.start(call);
  }

  /**
   * A call that may take long. It ends the one before, whose promise then gives null.
   * @param {string} name @param {Request} request
   * @returns {Promise<Answer | null>}
   */
  slow(name, request) {
    if (this.slowly.call) this.slowly.stop();
    if (this.slowly.dead) {
      this.slowly = this.spare.dead || this.spare.call ? this.seat() : this.spare;
      if (this.slowly === this.spare) this.spare = this.seat();
    }
    return new Promise((resolve) => this.slowly.start({ name, request, lane: name, resolve }));
  }

  /**
   * A call that neither waits for the others nor keeps them waiting. It ends the one before.
   * @param {string} name @param {Request} request
   * @returns {Promise<Answer | null>}
   */
  aside(name, request) {
    if (this.spare.call) this.spare.stop();
    if (this.spare.dead) this.spare = this.seat();
    return new Promise((resolve) => this.spare.start({ name, request, lane: name, resolve }));
  }
}

/** @param {string} id @returns {string} what an element holds that is no script */
const textOf = (id) => /** @type {HTMLElement} */ (document.getElementById(id)).textContent ?? "";

/** Compiles the engine that lies packed in the page. */
async function compile() {
  const stream = new Blob([bytesOf(textOf("engine").trim())]).stream().pipeThrough(new DecompressionStream("gzip"));
  return WebAssembly.compileStreaming(new Response(stream, { headers: { "Content-Type": "application/wasm" } }));
}

/** @returns {Promise<Engine>} */
export async function startEngine() {
  if (!("WebAssembly" in globalThis && "DecompressionStream" in globalThis)) throw new Error("this browser is too old for the page: it needs one of 2023 or later");
  const module = await compile();
  const script = URL.createObjectURL(new Blob([textOf("worker")], { type: "text/javascript" }));
  const seat = () => new Seat(module, script);
  const first = seat();
  await first.ready;
  const engine = new Engine(seat, first);
  Object.assign(globalThis, { scalepair: engine }); // for tests, and for whoever opens the console
  return engine;
}
