// The map of pairs, which is the control: a pointer, a finger or the arrow keys move the pair.
// The search draws it; a movement redraws the point only.

import { attr, clamp, el, holdsTouch, list, px, say, svg } from "./dom.js";
import { Grid } from "./grid.js";
import { frame, still } from "./mapdraw.js";
import { capital, fixed } from "./units.js";

/** @typedef {import("./grid.js").Place} Place */
/** @typedef {import("./units.js").Units} Units */
/** @typedef {{pick: string, bass_mm: number, treble_mm: number}} PickPlace */
/** @typedef {{names: string[], bass_mm: number, treble_mm: number}} Named a pair with the names of its picks */

/**
 * @param {HTMLElement} box
 * @param {(place: Place, going: boolean) => void} go moves the pair; going while a pointer is held down
 */
export function pairMap(box, go) {
  const hint = el("p", { class: "small hint", "aria-hidden": "true" }), HINT = "Drag the point, or tap a square.";
  say(hint, HINT);
  const back = svg("g"), over = svg("g"), picks = svg("g"), compared = svg("g", { class: "compared" }, svg("rect", { width: 18, height: 18, x: -9, y: -9 }), svg("text", { "text-anchor": "middle", y: 4.5 }, "A"));
  const cross = svg("path", { class: "cross" }), disc = svg("circle", { class: "disc", r: 11 }), dot = svg("circle", { class: "dot", r: 6 });
  const grip = svg("circle", { class: "grip", r: 24 });
  const bassFlag = flag(), trebleFlag = flag();
  const point = svg("g", {}, bassFlag.node, trebleFlag.node, disc, dot, grip);
  const node = svg("svg", {
    class: "map", tabindex: 0, role: "application", "aria-roledescription": "map of pairs",
    "aria-label": "Map of pairs, bass across and treble up. Arrow keys move the pair by one step, with shift by four.",
  }, back, cross, over, picks, compared, point);
  box.append(el("div", { class: "map-head" }, el("h2", {}, "Every pair", el("span", { class: "wide" }, ", one square each")), hint), node, legend());

  /** @type {Grid | null} */
  let grid = null;
  /** @type {import("./mapdraw.js").Frame | null} */
  let f = null;
  /** @type {Units | null} */
  let units = null;
  /** @type {Place | null} */
  let shown = null;
  /** @type {Place | null} */
  let a = null;
  /** @type {Named[]} */
  let named = [];
  /** Where their names stand. @type {ReturnType<typeof spotsOf>} */
  let spots = new Map();

  function redraw() {
    if (!grid || !units) return;
    box.classList.toggle("none-near", grid.noneNear);
    f = frame(grid, Math.floor(box.clientWidth) || 496);
    attr(node, "viewBox", `0 0 ${f.whole} ${f.top + f.height + 34}`);
    node.style.height = f.top + f.height + 34 + "px";
    const drawn = still(grid, f, units), words = drawn.filter((o) => o.classList.contains("halo"));
    back.replaceChildren(...drawn.filter((o) => !words.includes(o)));
    over.replaceChildren(...words); // the cross runs behind them
    spots = spotsOf(named, f, shown);
    list(picks, named, pickMark);
    move();
  }

  function pickMark() {
    const ring = svg("circle", { r: 6 }), name = svg("text");
    return {
      node: svg("g", { class: "pick-mark" }, ring, name),
      /** @param {Named} pick */
      update(pick) {
        if (!f) return;
        const spot = spots.get(pick);
        attr(ring, "cx", px(f.x(pick.bass_mm)));
        attr(ring, "cy", px(f.y(pick.treble_mm)));
        attr(name, "x", px(spot?.x ?? 0));
        attr(name, "y", px(spot?.y ?? 0));
        attr(name, "class", spot && [spot.x, spot.x + spot.wide].every((x) => good(x, spot.y - 4)) ? "halo on-good" : "halo");
        say(name, spot?.words ?? "");
      },
    };
  }

  function move() {
    if (!f || !units || !shown) return;
    const x = clamp(f.x(shown.bass), f.left, f.left + f.width), y = clamp(f.y(shown.treble), f.top, f.top + f.height);
    const bottom = f.top + f.height + 1;
    attr(cross, "d", `M${px(x)} ${px(y)}V${bottom}M${px(x)} ${px(y)}H${f.left - 1}`);
    for (const c of [disc, dot, grip]) {
      attr(c, "cx", px(x));
      attr(c, "cy", px(y));
    }
    bassFlag.set(units.scale(shown.bass), clamp(x, f.left + 20, f.whole - 24), bottom + 20);
    trebleFlag.set(units.scale(shown.treble), f.left - 26, y);
    for (const text of back.querySelectorAll("text[data-bass], text[data-treble]")) {
      const bass = text.getAttribute("data-bass");
      const covered = bass ? Math.abs(Number(text.getAttribute("x")) - x) < 40 : Math.abs(Number(text.getAttribute("y")) - 4 - y) < 18;
      attr(text, "visibility", covered ? "hidden" : null);
    }
    attr(compared, "visibility", a ? null : "hidden");
    if (a) attr(compared, "transform", `translate(${px(f.x(a.bass))} ${px(f.y(a.treble))})`);
  }

  /** The square under a pointer. @param {PointerEvent} event @returns {Place | null} */
  function under(event) {
    const box = node.getBoundingClientRect(), scale = (f?.whole ?? 0) / box.width;
    return squareAt((event.clientX - box.left) * scale, (event.clientY - box.top) * scale);
  }

  /** Whether a spot lies on what is as good as the best. @param {number} x @param {number} y */
  function good(x, y) {
    const place = squareAt(x, y);
    return Boolean(place && grid?.at(place)?.good);
  }

  /** The square at a spot of the drawing. @param {number} x @param {number} y @returns {Place | null} */
  function squareAt(x, y) {
    if (!f || !grid) return null;
    const [b0, b1] = [grid.bassEdges[0], grid.bassEdges[grid.basses.length]], [t0, t1] = [grid.trebleEdges[0], grid.trebleEdges[grid.trebles.length]];
    return grid.nearest({ bass: b0 + ((x - f.left) / f.width) * (b1 - b0), treble: t0 + ((f.top + f.height - y) / f.height) * (t1 - t0) });
  }

  let held = false;
  node.addEventListener("pointerdown", (event) => {
    const place = under(event);
    if (!place || event.button !== 0) return;
    // A finger scrolls the page over the map, and drags by the point only.
    held = event.pointerType === "mouse" || event.target === grip;
    if (held) node.setPointerCapture(event.pointerId);
    if (event.pointerType === "mouse") go(place, true);
  });
  holdsTouch(node, () => held);
  node.addEventListener("pointermove", (event) => {
    const place = under(event);
    if (!place) return;
    if (held) go(place, true);
    readOut(place);
  });
  node.addEventListener("pointerup", (event) => {
    const place = under(event);
    if (place && (held || event.pointerType !== "mouse")) go(place, false);
    held = false;
  });
  node.addEventListener("pointercancel", () => {
    if (held && shown) go(shown, false);
    held = false;
  });
  node.addEventListener("pointerleave", () => say(hint, HINT));
  node.addEventListener("keydown", (event) => {
    const [across, up] = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[event.key] ?? [0, 0];
    if (!grid || !shown || (!across && !up)) return;
    event.preventDefault();
    const far = event.shiftKey ? 4 : 1;
    go(grid.step(shown, across * far, up * far), false);
  });
  new ResizeObserver(() => {
    if (f && Math.floor(box.clientWidth) !== f.whole && box.clientWidth) redraw();
  }).observe(box);

  /** @param {Place} place */
  function readOut(place) {
    const cell = grid?.at(place);
    if (!cell || !units) return;
    const what = cell.limit ? grid?.limits[cell.limit] ?? cell.limit : cell.good ? "as good as the best" : `feel error ${fixed(cell.error, 1)} %`;
    say(hint, `${units.scale(place.bass)} / ${units.scale(place.treble)}: ${what}`);
  }

  return {
    /**
     * Draws what a search found.
     * @param {Grid} found
     * @param {PickPlace[]} picksFound
     * @param {Units} inUnits
     */
    draw(found, picksFound, inUnits) {
      [grid, named, units] = [found, together(picksFound), inUnits];
      redraw();
    },
    /** Moves the point. @param {Place} place @param {Place | null} against the pair A */
    move(place, against) {
      if (!held && (place.bass !== shown?.bass || place.treble !== shown?.treble)) say(hint, HINT);
      const first = !shown;
      [shown, a] = [place, against];
      first ? redraw() : move();
    },
  };
}

/** Picks of one pair have one mark. @param {PickPlace[]} picks @returns {Named[]} */
function together(picks) {
  /** @type {Named[]} */
  const out = [];
  for (const { pick, bass_mm, treble_mm } of picks) {
    const same = out.find((p) => p.bass_mm === bass_mm && p.treble_mm === treble_mm);
    if (same) same.names.push(pick);
    else out.push({ names: [pick], bass_mm, treble_mm });
  }
  return out;
}

/**
 * Finds a spot for the names of each pick: beside its ring, in the nearest row where they are
 * clear of all rings, of the names before them and of the cross, and inside the frame.
 * @param {Named[]} named
 * @param {import("./mapdraw.js").Frame} f
 * @param {Place | null} shown
 */
function spotsOf(named, f, shown) {
  /** @type {[number, number, number, number][]} left, top, right, bottom of what must stay clear */
  const taken = named.map((p) => [f.x(p.bass_mm) - 8, f.y(p.treble_mm) - 8, f.x(p.bass_mm) + 8, f.y(p.treble_mm) + 8]);
  if (shown) taken.push([f.x(shown.bass) - 3, f.y(shown.treble), f.x(shown.bass) + 3, f.top + f.height], [f.left, f.y(shown.treble) - 1, f.x(shown.bass), f.y(shown.treble) + 1]);
  const out = new Map();
  for (const pick of named) {
    const words = capital(pick.names.map((n) => (f.narrow ? n.split(" ")[0] : n)).join(", ")), wide = words.length * 7.4;
    const all = Array.from({ length: 24 }, (_, i) => (i % 2 ? -12 - 8 * (i - 1) : 20 + 8 * i)).flatMap((down) => [10, -10 - wide].map((right) => (
      { x: clamp(f.x(pick.bass_mm) + right, f.left + 3, f.whole - 5 - wide), y: f.y(pick.treble_mm) + down, words, wide })));
    const box = (/** @type {typeof all[0]} */ s) => /** @type {[number, number, number, number]} */ ([s.x, s.y - 11, s.x + wide, s.y + 3]);
    const spot = all.find((s) => {
      const [l, t, r, b] = box(s);
      return t > f.top - 2 && b < f.top + f.height && !taken.some(([l2, t2, r2, b2]) => l < r2 && l2 < r && t < b2 && t2 < b);
    }) ?? all[0];
    taken.push(box(spot));
    out.set(pick, spot);
  }
  return out;
}

/** The length in a flag on a rule. */
function flag() {
  const box = svg("rect", { height: 24, rx: 3 }), text = svg("text", { "text-anchor": "middle", y: 4.5 });
  const node = svg("g", { class: "flag" }, box, text);
  return {
    node,
    /** @param {string} words @param {number} x @param {number} y the middle */
    set(words, x, y) {
      const width = Math.max(38, words.length * 7.5 + 12);
      say(text, words);
      attr(box, "width", width);
      attr(box, "x", -width / 2);
      attr(box, "y", -12);
      attr(node, "transform", `translate(${px(x)} ${px(y)})`);
    },
  };
}

function legend() {
  const key = (/** @type {string} */ kind, /** @type {string} */ words) => el("span", { class: "key-" + kind }, svg("svg", { viewBox: "0 0 22 14", "aria-hidden": "true" },
    svg("rect", { class: "key " + kind, x: 1, y: 1, width: 20, height: 12 })), words);
  return el("div", { class: "legend" }, key("good", "as good as the best"), key("pale", "further from the feel"), key("dropped", "breaks a limit"));
}
