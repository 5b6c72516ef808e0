// The fan at its true proportions: one scale on both axes. On a narrow page it stands upright.

import { attr, clamp, holdsTouch, list, px, say, svg } from "./dom.js";
import { angle } from "./units.js";

/** @typedef {import("./types.js").Fan} Fan */
/** @typedef {import("./types.js").Point} Point */
/** @typedef {import("./types.js").Line} Line */
/** @typedef {import("./units.js").Units} Units */

const TAP = 4; // pixels that a hand may move while it taps (judgement)
const TIGHT = 640; // pixels, below which the caption has a line of its own (judgement)

/**
 * @typedef {object} Shown
 * @property {Fan} fan
 * @property {import("./types.js").Tension} tension of the pair
 * @property {string | null} [neutral] the neutral fret that is asked for, which the lines may not have followed yet
 * @property {Units} units
 * @property {boolean} leftHanded
 * @property {string} reference the name of the instrument whose frets are drawn in grey
 * @property {Point[] | null} [blank] the corners of the wood under the board
 * @property {{line: string, fret: number, verdict: string}[]} [marks] with what the check says of them
 * @property {number} [fret] the one in hand
 */

/**
 * @param {HTMLElement} box
 * @param {((neutral: string, going: boolean) => void) | null} turn moves the neutral fret; null where it cannot be moved
 */
export function fanDrawing(box, turn) {
  const blank = svg("path", { class: "blank" }), board = svg("path", { class: "board" }), ghosts = svg("path", { class: "reference" });
  const frets = svg("g"), strings = svg("g"), dots = svg("g"), marks = svg("g"), words = svg("g"), saddles = svg("g");
  const nut = svg("line", { class: "nut" }), saddle = svg("line", { class: "saddle" }), leaders = svg("path", { class: "leader" }), measures = svg("path", { class: "measure" });
  const hand = turn ? neutralHand() : null;
  const node = svg("svg", { class: "fan", role: "group", "aria-label": "Drawing of the fan" },
    blank, board, dots, frets, nut, strings, saddle, saddles, ghosts, marks, measures, leaders, words, hand?.node ?? null);
  box.append(node);

  /** @type {Shown | null} */
  let shown = null;
  /** From a point in mm to pixels. @type {(p: Point) => Point} */
  let at = (p) => p;
  let scale = 1, upright = false, whole = 0; // the width of the box, which is not asked for at every drawing: that would lay the page out

  /** @param {Shown} s */
  function draw(s) {
    shown = s;
    if (!whole) return;
    upright = whole < 440;
    const { fan } = s, all = [...fan.board_mm, ...fan.strings.flatMap((o) => [o.nut_mm, o.saddle_mm]), ...(s.blank ?? [])];
    const [x0, x1] = range(all.map((p) => p[0])), [y0, y1] = range(all.map((p) => p[1]));
    const room = upright ? { before: 30, after: 30, left: 76, right: 130 } : { before: 56, after: whole < TIGHT ? 86 : 64, left: 6, right: 6 };
    const side = s.leftHanded ? -1 : 1;
    if (upright) {
      // Head up, as the player's neck hangs on a wall: the bass side on the left.
      scale = Math.min((whole - room.left - room.right) / (y1 - y0), 720 / (x1 - x0));
      const middle = room.left + (whole - room.left - room.right) / 2;
      at = ([x, y]) => [middle - side * (y - (y0 + y1) / 2) * scale, room.before + (x - x0) * scale];
    } else {
      scale = (whole - room.left - room.right) / (x1 - x0);
      const middle = room.before + ((y1 - y0) * scale) / 2;
      at = ([x, y]) => [room.left + (x - x0) * scale, middle + side * (y - (y0 + y1) / 2) * scale];
    }
    const height = upright ? room.before + room.after + (x1 - x0) * scale : room.before + room.after + (y1 - y0) * scale;
    attr(node, "viewBox", `0 0 ${whole} ${Math.ceil(height)}`);
    node.style.height = Math.ceil(height) + "px";
    attr(board, "d", path(fan.board_mm));
    attr(blank, "d", s.blank ? path(s.blank) : null);
    ends(nut, fan.nut_mm);
    ends(saddle, fan.saddle_mm);
    list(frets, fan.frets.filter((o) => o.fret > 0), () => keep("line", "fret", (line, /** @type {Fan["frets"][0]} */ o) => {
      ends(line, o.slot_mm);
      attr(line, "class", o.fret === shown?.tension.neutral_fret ? "fret square-fret" : o.fret === shown?.fret ? "fret in-hand" : "fret");
    }));
    list(strings, fan.strings, () => keep("line", "string", (line, /** @type {Fan["strings"][0]} */ o) => {
      ends(line, [o.nut_mm, o.saddle_mm]);
      attr(line, "stroke-width", (0.7 + 0.16 * o.string).toFixed(2));
    }));
    list(saddles, fan.strings, () => keep("circle", "saddle-point", (dot, /** @type {Fan["strings"][0]} */ o) => centre(dot, o.saddle_mm, 2.2)));
    list(dots, fan.dots, () => keep("circle", "inlay", (dot, /** @type {Fan["dots"][0]} */ o) => centre(dot, o.at_mm, Math.max(1.5, (o.diameter_mm * scale) / 2))));
    attr(ghosts, "d", fan.reference_marks_mm.length ? referenceTicks(fan) : null);
    list(marks, s.marks ?? [], () => keep("circle", "mark", (dot, /** @type {{line: string, fret: number, verdict: string}} */ m) => {
      const fret = shown?.fan.frets.find((o) => o.fret === m.fret);
      if (!fret) return;
      attr(dot, "class", "mark " + m.verdict);
      centre(dot, fret.marks_mm[m.line === "bass" ? 0 : 1], 4);
    }));
    label(s);
    hand?.set(s);
  }

  /** @param {Shown} s */
  function label({ fan, tension: { pair }, units, reference }) {
    const slant = (/** @type {number} */ n) => fan.frets.find((o) => o.fret === n);
    const twelve = slant(12), last = fan.frets[fan.frets.length - 1];
    /** @type {[string, number, Line][]} */
    const lines = [["nut", pair.nut_slant_deg, fan.nut_mm]];
    if (twelve && last.fret > 15) lines.push(["fret 12", twelve.slant_deg, twelve.slot_mm]);
    lines.push(["last fret", last.slant_deg, last.slot_mm], ["saddle line", pair.saddle_slant_deg, fan.saddle_mm]);
    /** @type {{at: Point, anchor: string, words: string, figure: string, rotate?: number}[]} */
    const out = [];
    const box = node.viewBox.baseVal, tight = !upright && box.width < TIGHT, base = box.height - (tight ? 27 : 5);
    let dotted = "";
    for (const [name, degrees, line] of lines) {
      const p = line.map(at).reduce((a, b) => (upright ? (b[0] > a[0] ? b : a) : b[1] > a[1] ? b : a));
      if (upright) {
        dotted += `M${px(p[0] + 6)} ${px(p[1])}H${box.width - 126}`;
        out.push({ at: [box.width - 122, p[1] + 4.5], anchor: "start", words: name, figure: angle(degrees) });
      } else {
        dotted += `M${px(p[0])} ${px(p[1] + 14)}V${base - 15}`;
        out.push({ at: [clamp(p[0], 34, box.width - 56), base], anchor: "middle", words: name, figure: angle(degrees) });
      }
    }
    // The labels keep clear of each other, from the saddle line on.
    for (let i = out.length - 2; i >= 0 && !upright; i--) out[i].at[0] = Math.min(out[i].at[0], out[i + 1].at[0] - 106);
    attr(leaders, "d", dotted);
    let d = "";
    const [one, other] = fan.nut_mm.map(at), middle = [(one[0] + other[0]) / 2, (one[1] + other[1]) / 2];
    if (turn) for (const [side, name, mm] of /** @type {[string, string, number][]} */ ([["treble", "treble", pair.treble_mm], ["bass", "bass", pair.bass_mm]])) {
      const [a, b] = outer(fan, side).map(at);
      const above = upright ? a[0] > middle[0] : a[1] < middle[1];
      if (upright) {
        out.push({ at: [a[0] + (above ? -4 : 4), 14], anchor: above ? "start" : "end", words: name, figure: `${units.scale(mm)} ${units.lengthName}` });
        continue;
      }
      const off = above ? -24 : 24;
      d += `M${px(a[0])} ${px(a[1] + off - 5)}v10M${px(b[0])} ${px(b[1] + off - 5)}v10M${px(a[0])} ${px(a[1] + off)}L${px(b[0])} ${px(b[1] + off)}`;
      const part = above ? 0.74 : 0.5;
      out.push({ at: [a[0] + (b[0] - a[0]) * part, a[1] + (b[1] - a[1]) * part + off + 4.5], anchor: "middle", words: name, figure: `${units.scale(mm)} ${units.lengthName}` });
    }
    attr(measures, "d", d);
    const ticks = `small ticks: frets of ${reference || "the reference"}`, most = Math.floor(box.width / 6.6); // letters in the width
    if (fan.reference_marks_mm.length) out.push({ at: upright || tight ? [0, box.height - 3] : [box.width, 13], anchor: upright || tight ? "start" : "end", words: ticks.length > most ? ticks.slice(0, most - 1) + "…" : ticks, figure: "" });
    list(words, out, () => {
      const name = svg("tspan"), figure = svg("tspan", { class: "figure" });
      const text = svg("text", { class: "halo" }, name, " ", figure);
      return {
        node: text,
        update(o) {
          attr(text, "x", px(o.at[0]));
          attr(text, "y", px(o.at[1]));
          attr(text, "text-anchor", o.anchor);
          say(name, o.words);
          say(figure, o.figure);
        },
      };
    });
  }

  /** The grip on the neutral fret: dragged, or moved with the arrow keys by half a fret. */
  function neutralHand() {
    const stem = svg("line", { class: "stem" }), plate = svg("rect", { height: 28, y: -14, rx: 3 }), reach = svg("rect", { class: "reach", y: -22, height: 44 }), chevrons = svg("path", { class: "chevrons" });
    const words = svg("text", { "text-anchor": "middle", y: 4.5 });
    const tag = svg("g", { class: "tag", role: "slider", tabindex: 0, "aria-label": "Neutral fret", "aria-valuemin": 0 },
      reach, plate, chevrons, words);
    let held = false, last = ""; // where the hand is
    const steps = () => (shown ? shown.fan.frets[shown.fan.frets.length - 1].fret * 2 + 1 : 1);
    const asked = () => (!shown ? "0" : shown.neutral ?? (shown.tension.neutral_at_bridge ? "bridge" : String(shown.tension.neutral_fret)));
    const value = () => (asked() === "bridge" ? steps() : Number(asked()) * 2);
    const name = (/** @type {number} */ n) => (n >= steps() ? "bridge" : String(n / 2));
    let from = 0; // where the pointer went down
    const along = (/** @type {PointerEvent} */ event) => (upright ? event.clientY : event.clientX);
    holdsTouch(tag, () => held);
    tag.addEventListener("pointerdown", (event) => {
      if (event.button !== 0) return;
      [held, last, from] = [true, name(value()), along(event)];
      tag.setPointerCapture(event.pointerId);
    });
    tag.addEventListener("pointermove", (event) => {
      if (!held || !shown) return;
      if (Math.abs(along(event) - from) < TAP && last === asked()) return;
      const box = node.getBoundingClientRect(), to = along(event) - (upright ? box.top : box.left);
      let [best, least] = [0, Infinity];
      for (let n = 0; n <= steps(); n++) {
        const far = Math.abs(place(n)[upright ? 1 : 0] - to);
        if (far < least) [best, least] = [n, far];
      }
      turn?.((last = name(best)), true);
    });
    tag.addEventListener("pointerup", (event) => {
      if (!held) return;
      held = false;
      const box = plate.getBoundingClientRect(), later = event.clientX > box.left + box.width / 2;
      if (Math.abs(along(event) - from) < TAP && last === asked()) last = name(clamp(value() + (later ? 1 : -1), 0, steps())); // a tap on an arrow
      turn?.(last, false);
    });
    tag.addEventListener("pointercancel", () => {
      if (held) turn?.(last, false);
      held = false;
    });
    tag.addEventListener("keydown", (event) => {
      if (!shown) return;
      const by = { ArrowLeft: -1, ArrowDown: -1, ArrowRight: 1, ArrowUp: 1, PageDown: -4, PageUp: 4 }[event.key];
      const to = event.key === "Home" ? 0 : event.key === "End" ? steps() : by && clamp(value() + by, 0, steps());
      if (to === undefined) return;
      event.preventDefault();
      turn?.(name(to), false);
    });
    /** Where the middle of the n-th half fret stands. @param {number} n @returns {Point} */
    function place(n) {
      if (!shown) return [0, 0];
      const { fan } = shown, middle = (/** @type {Line} */ [a, b]) => /** @type {Point} */ ([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]);
      if (n >= steps()) return at(middle(fan.saddle_mm));
      const lines = [fan.nut_mm, ...fan.frets.filter((o) => o.fret > 0).map((o) => o.slot_mm)].map(middle);
      const [a, b] = [lines[Math.floor(n / 2)], lines[Math.min(lines.length - 1, Math.ceil(n / 2))]];
      return at([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]);
    }
    return {
      node: svg("g", { class: "neutral" }, stem, tag),
      /** @param {Shown} s */
      set(s) {
        const p = place(value()), box = node.viewBox.baseVal;
        const text = asked() === "bridge" ? "square at the bridge" : `square at fret ${asked()}`;
        const half = text.length * 3.9 + 24, to = upright ? [box.width - half - 2, p[1]] : [clamp(p[0], half + 2, box.width - half - 2), 16];
        say(words, text);
        for (const rect of [plate, reach]) {
          attr(rect, "x", -half);
          attr(rect, "width", 2 * half);
        }
        attr(chevrons, "d", upright ? `M${7 - half} 3l5-6 5 6M${half - 17}-3l5 6 5-6` : `M${12 - half}-5l-5 5 5 5M${half - 12}-5l5 5-5 5`);
        attr(tag, "transform", `translate(${px(to[0])} ${px(to[1])})`);
        attr(tag, "aria-valuemax", steps());
        attr(tag, "aria-valuenow", value());
        attr(tag, "aria-valuetext", text);
        const far = s.fan.board_mm.map(at).map((o) => o[upright ? 0 : 1]);
        attr(stem, "x1", px(upright ? to[0] - half : p[0]));
        attr(stem, "x2", px(upright ? Math.min(...far) : p[0]));
        attr(stem, "y1", px(upright ? p[1] : to[1] + 14));
        attr(stem, "y2", px(upright ? p[1] : Math.max(...far)));
      },
    };
  }

  /** @param {Point[]} points */
  function path(points) {
    return "M" + points.map((p) => at(p).map(px).join(" ")).join("L") + "z";
  }

  /** @param {SVGElement} line @param {Line} between */
  function ends(line, between) {
    const [a, b] = between.map(at);
    attr(line, "x1", px(a[0]));
    attr(line, "y1", px(a[1]));
    attr(line, "x2", px(b[0]));
    attr(line, "y2", px(b[1]));
  }

  /** @param {SVGElement} dot @param {Point} point @param {number} radius in pixels */
  function centre(dot, point, radius) {
    const [x, y] = at(point);
    attr(dot, "cx", px(x));
    attr(dot, "cy", px(y));
    attr(dot, "r", px(radius));
  }

  /**
   * The reference's frets, as ticks outside the board where they cross its outer strings.
   * @param {Fan} fan
   */
  function referenceTicks(fan) {
    let d = "";
    for (const side of ["bass", "treble"]) {
      const line = outer(fan, side);
      for (const marks of fan.reference_marks_mm) {
        const [x] = marks[side === "bass" ? 0 : 1];
        const t = (x - line[0][0]) / (line[1][0] - line[0][0]), y = line[0][1] + (line[1][1] - line[0][1]) * t;
        const p = at([x, y + (side === "bass" ? 1 : -1) * (4 + 4 / scale)]), q = at([x, y + (side === "bass" ? 1 : -1) * (4 + 9 / scale)]);
        d += `M${p.map(px).join(" ")}L${q.map(px).join(" ")}`;
      }
    }
    return d;
  }

  new ResizeObserver(() => {
    const before = whole; // 0 while another place is shown
    whole = Math.floor(box.clientWidth);
    if (shown && whole !== before) draw(shown);
  }).observe(box);
  return { draw };
}

/**
 * A part of a drawing that list() keeps.
 * @template T
 * @param {"line" | "circle"} tag
 * @param {string} kind
 * @param {(node: SVGElement, item: T) => void} update
 */
function keep(tag, kind, update) {
  const node = svg(tag, { class: kind });
  return { node, update: (/** @type {T} */ item) => update(node, item) };
}

/** The outer string line of a side. @param {Fan} fan @param {string} side @returns {Line} */
function outer(fan, side) {
  const sign = side === "bass" ? 1 : -1;
  const string = fan.strings.reduce((a, b) => (sign * b.nut_mm[1] > sign * a.nut_mm[1] ? b : a));
  return [string.nut_mm, string.saddle_mm];
}

/** @param {number[]} values @returns {[number, number]} */
function range(values) {
  return [Math.min(...values), Math.max(...values)];
}
