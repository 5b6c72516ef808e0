// Make: the board in its blank, the marks with what was measured beside each and what the
// check says of it, and everything as files.

import { attr, byId, el, list, say } from "./dom.js";
import { fanDrawing } from "./fan.js";
import { markCard, markSquares } from "./marks.js";
import { largePair, worth } from "./picks.js";
import { printsAsSheet } from "./sheet.js";
import { angle, capital } from "./units.js";
import { plain, wrongThere } from "./words.js";

/** @typedef {import("./types.js").Blank} Blank */
/** @typedef {import("./types.js").Mark} Mark */
/** @typedef {import("./store.js").TextName} TextName */

/** What can be taken to the bench: kind of file, name, what it is, flags. */
const FILES = /** @type {const} */ ([
  ["sheet", "Bench sheet", "tables, cautions and drawings, to print", "HTML", {}],
  ["pdf", "Full-size drawing, A4", "on pages with long check bars", "PDF", { paper: "a4" }],
  ["pdf", "Full-size drawing, Letter", "the same on the other paper", "PDF", { paper: "letter" }],
  ["dxf", "Drawing for a router", "centre lines, slots, outline", "DXF", {}],
  ["svg", "Drawing to edit", "the same lines", "SVG", {}],
  ["build", "Build file", "opens here, and on the command line", "TOML", {}],
  ["readings", "Readings", "the gauge table as it stands", "CSV", {}],
  ["marks", "Measured marks", "what you measured, as the check reads it", "CSV", {}],
]);

/** @param {import("./app.js").App} app */
export function make(app) {
  const { store, answers } = app;
  const large = largePair(byId("make-pair")), fan = fanDrawing(byId("make-fan"), null), nothing = worth(byId("make-nothing"));
  let fret = 1;
  const turn = (/** @type {number} */ to) => {
    fret = to;
    paint();
  };
  const card = markCard(byId("make-one"), app, turn), squares = markSquares(byId("make-one"), (to) => {
    turn(to);
    byId("make-one").scrollIntoView({ block: "nearest" });
  });
  const back = el("button", { class: "button", onclick: () => store.state.view.marked && app.go(store.state.view.marked) });
  byId("make-sheet").parentElement?.append(back);
  const body = el("tbody"), unit = el("span");
  byId("make-marks").append(el("table", { class: "marks" }, el("caption", {}, el("h2", {}, "Marks from the nut, ", unit)),
    el("thead", {}, el("tr", {}, ...["Fret", "Bass line", "step", "Treble line", "step", "Slant"].map((h) => el("th", { scope: "col" }, h)))), body));
  const blanks = el("div", { class: "blanks", role: "radiogroup", "aria-label": "Blank" });
  byId("make-blanks").append(el("h2", {}, "Blank"), blanks);
  const files = el("ul", { class: "files" });
  byId("make-files").append(el("h2", {}, "Take it to the bench"), files);
  for (const [kind, name, what, ending, flags] of FILES)
    files.append(el("li", {}, el("button", { onclick: () => save(kind, flags) }, el("span", {}, el("b", {}, name), el("small", {}, what)), el("span", { class: "ending" }, ending))));
  const print = printsAsSheet(app);
  byId("make-sheet").addEventListener("click", () => save("sheet", {}));
  byId("make-print").addEventListener("click", print);
  const cautions = el("ul");
  byId("make-cautions").append(cautions);

  /** @param {string} kind @param {Record<string, string>} own */
  function save(kind, own) {
    /** @type {Record<string, string | boolean>} */
    const flags = { ...own };
    if (["pdf", "svg"].includes(kind) && store.state.view.leftHanded) flags["left-handed"] = true;
    app.download(kind, flags);
  }

  /** Where the chosen blank lies under the board. @param {Blank | undefined} b @returns {import("./types.js").Point[] | null} */
  function outlineOf(b) {
    if (!b || b.nut_line_from_its_nut_end_mm === null || b.centreline_from_its_bass_edge_mm === null) return null;
    const [x, y] = [-b.nut_line_from_its_nut_end_mm, b.centreline_from_its_bass_edge_mm];
    return [[x, y], [x + b.length_mm, y], [x + b.length_mm, y - b.width_mm], [x, y - b.width_mm]];
  }

  function markRow() {
    let at = 0;
    const button = el("button", { onclick: () => turn(at) }), cells = [0, 1, 2, 3, 4].map((i) => el("td", { class: i % 2 || i === 4 ? "soft" : null }));
    const node = el("tr", {}, el("th", { scope: "row" }, button), ...cells);
    return {
      node,
      /** @param {{mark: Mark, before: Mark | undefined}} row */
      update({ mark: m, before }) {
        at = m.fret;
        say(button, String(m.fret));
        attr(button, "aria-label", `Fret ${m.fret}`);
        attr(button, "aria-current", m.fret === fret && "true");
        node.classList.toggle("on", m.fret === fret);
        const { units } = app;
        [units.mark(m.bass_from_nut_mm), units.mark(m.bass_from_nut_mm, before?.bass_from_nut_mm), units.mark(m.treble_from_nut_mm), units.mark(m.treble_from_nut_mm, before?.treble_from_nut_mm), angle(m.slant_deg)].forEach((text, i) => say(cells[i], text));
      },
    };
  }

  function blankRow() {
    let name = "";
    const input = el("input", { type: "radio", name: "blank", onchange: () => store.change({ view: { blank: name } }) }), title = el("span"), size = el("small"), fit = el("span");
    return {
      node: el("label", {}, input, el("span", {}, title, size), fit),
      /** @param {Blank & {laid: boolean}} b */
      update(b) {
        name = b.name;
        const { units } = app, lacks = b.spare_length_mm < 0 ? `${units.len(-b.spare_length_mm)} short` : `${units.len(-b.spare_width_mm)} narrow`;
        say(title, b.name);
        say(size, `${units.bare(b.length_mm)} × ${units.len(b.width_mm)}`);
        say(fit, b.fits ? "fits" : b.spare_length_mm < 0 || b.spare_width_mm < 0 ? lacks : "does not fit");
        attr(fit, "class", b.fits ? "fits" : "lacks");
        input.checked = b.laid;
        input.disabled = !b.fits;
      },
    };
  }

  /** What is missing where there is no pair, and where it is entered. @returns {import("./picks.js").Worth} */
  function missing() {
    const none = answers.readings?.rows.length === 0, faults = answers.faults.pair ?? [];
    const to = (/** @type {string} */ name) => ({ words: `To ${name}`, press: () => (location.hash = name.toLowerCase()) });
    if (none) return { large: "Nothing to set out yet: weigh your strings and enter them in Strings.", bad: true, lines: [], buttons: [to("Strings"), to("Choose")] };
    return { large: faults.length ? "Nothing to set out yet: mend this first." : "", bad: true, lines: faults.map((f) => wrongThere(f, app.names())), buttons: faults.length ? [to("Strings"), to("Choose")] : [] };
  }

  function paint() {
    const { pair, check } = answers, { units } = app, place = answers.place();
    byId("make").classList.toggle("no-pair", !pair);
    if (!pair) nothing.set(missing());
    if (!pair?.layout || !place) return;
    const { layout, tension } = pair;
    large.set(place, units);
    const fits = layout.blanks.filter((b) => b.fits);
    const laid = fits.find((b) => b.name === store.state.view.blank) ?? fits[0];
    const broken = [...tension.limits_broken, ...layout.limits_broken];
    const head = byId("make-say"), { marked } = store.state.view, moved = marked && store.state.marks && (marked.bass !== place.bass || marked.treble !== place.treble);
    const named = (/** @type {import("./grid.js").Place} */ p) => `${units.scale(p.bass)} / ${units.scale(p.treble)}`;
    back.hidden = !moved;
    if (moved) {
      broken.unshift(`The marks were measured on ${named(marked)}; they are judged by ${named(place)}, which is shown.`);
      say(back, `Back to ${named(marked)}`);
    }
    say(head, broken.length ? plain(broken[0], app.names()) : `At least ${units.atLeast(layout.blank_length_mm)} × ${units.atLeast(layout.blank_width_mm)} ${units.lengthName} of board${layout.blanks.length ? (fits.length ? `; fits: ${fits.map((b) => b.name).join(", ")}` : "; none of your blanks fits") : ""}.`);
    head.classList.toggle("bad", broken.length > 0);
    fret = Math.min(fret, layout.marks.length);
    const verdicts = (check?.lines ?? []).flatMap((l) => l.marks.filter((m) => m.readings > 0).map((m) => ({ line: l.line, fret: m.fret, verdict: { outside: "again", within: "checked" }[m.verdict] ?? "" })));
    fan.draw({ fan: pair.fan, tension, blank: outlineOf(laid), units, reference: app.keyText("reference.name"), leftHanded: store.state.view.leftHanded, marks: verdicts, fret });
    say(unit, units.lengthName + (units.length === "in64" ? " in decimals, for calipers" : ""));
    card.set(layout.marks, fret);
    squares.set(check, layout.marks.length, fret);
    list(body, layout.marks.map((mark, i) => ({ mark, before: layout.marks[i - 1] })), markRow);
    list(blanks, layout.blanks.map((b) => ({ ...b, laid: b === laid })), blankRow);
    list(cautions, layout.cautions, () => {
      const node = el("li");
      return { node, update: (/** @type {string} */ words) => say(node, capital(words)) };
    });
  }
  return paint;
}
