// One mark at a time in large figures, with what was measured beside it: by ruler from the
// nut, by calipers from the mark before. The check judges both passes together.

import { attr, el, list, say, show } from "./dom.js";
import { figures } from "./figures.js";
import { angle, capital, signed } from "./units.js";

/** @typedef {import("./types.js").Mark} Mark */
/** @typedef {import("./types.js").CheckedMark} CheckedMark */

const LINES = /** @type {const} */ (["bass", "treble"]);
const PASSES = /** @type {const} */ (["ruler", "caliper"]);
const WHOLE = ["diagonal from bass nut", "diagonal from treble nut", "nut offset"];

/**
 * @param {HTMLElement} box
 * @param {import("./app.js").App} app
 * @param {(fret: number) => void} turn
 */
export function markCard(box, app, turn) {
  let fret = 1, last = 24;
  const arrow = (/** @type {string} */ name, /** @type {number} */ by, /** @type {string} */ sign) => el("button", { class: "button square", "aria-label": name, onclick: () => turn(Math.max(1, Math.min(last, fret + by))) }, sign);
  const before = arrow("Fret before", -1, "‹"), after = arrow("Next fret", 1, "›"), name = el("b"), slant = el("small");
  const lines = LINES.map(lineOf), whole = WHOLE.map((line) => measured(line, "", capital(line)));
  box.append(el("h2", {}, "Mark by mark"), el("div", { class: "card" }, el("div", { class: "fret-head" }, before, el("span", {}, name, slant), after), ...lines.map((l) => l.node)),
    el("details", { class: "more" }, el("summary", {}, "Diagonals and nut offset"), ...whole.map((m) => m.node)));

  /** @param {"bass" | "treble"} line */
  function lineOf(line) {
    const step = el("span"), value = figures(1.4), spoken = el("span", { class: "unseen" }), verdict = el("p", { class: "verdict", "aria-live": "polite" });
    const fields = PASSES.map((pass) => measured(line, pass, pass === "ruler" ? "by ruler, from the nut" : "by calipers, from the mark before"));
    return {
      node: el("div", { class: "mark-line" }, el("div", { class: "mark-words" }, el("span", {}, `${capital(line)} line, from the nut`), step), value.node, spoken, el("div", { class: "two" }, ...fields.map((f) => f.node)), verdict),
      /** @param {Mark} m @param {Mark | undefined} before */
      set(m, before) {
        const { units } = app, key = line === "bass" ? "bass_from_nut_mm" : "treble_from_nut_mm";
        const text = units.mark(m[key]);
        value.set(text);
        say(spoken, `${text} ${units.lengthName}`);
        say(step, `${units.mark(m[key], before?.[key])} from ${m.fret === 1 ? "the nut" : `fret ${m.fret - 1}`}`);
        for (const field of fields) field.set(m.fret);
        const judged = app.answers.check?.lines.find((l) => l.line === line)?.marks.find((c) => c.fret === m.fret);
        const slip = slipOf(app.answers.check, line, m.fret);
        say(verdict, judged && judged.readings ? judgement(judged, slip, app) : "");
        attr(verdict, "class", "verdict" + (judged?.verdict === "outside" || judged?.in_doubt || slip ? " bad" : judged?.verdict === "within" ? " fine-mark" : ""));
      },
    };
  }

  /** A field for one measured value. @param {string} line @param {string} pass @param {string} words */
  function measured(line, pass, words) {
    let at = 0;
    const input = el("input", { inputmode: "decimal", autocomplete: "off", placeholder: "measured", disabled: true }), unit = el("span"), slot = el("span", { class: "field" }, input, unit), wrong = el("span", { class: "wrong-words", role: "alert" });
    const take = () => app.measure(line, pass, at, input.value.trim());
    input.addEventListener("change", take);
    input.addEventListener("keydown", (event) => {
      if (event.key !== "Enter" || !pass) return;
      event.preventDefault(); // the change is taken here, before the field is the next fret's
      take();
      if (at < last) turn(at + 1);
      input.select();
    });
    return {
      node: el("label", { class: "measured" }, el("span", {}, words), slot, wrong),
      /** @param {number} fretAt */
      set(fretAt) {
        const moved = at !== fretAt;
        input.disabled = false;
        at = fretAt;
        const row = app.answers.marks?.rows.find((r) => r.cells.line === line && (r.cells.pass ?? "") === pass && (pass === "" || Number(r.cells.fret) === fretAt));
        const inches = app.answers.marks?.columns.includes("measured_in") ?? app.units.inches;
        const text = row?.cells[inches ? "measured_in" : "measured_mm"] ?? "";
        if (moved) input.value = text;
        else show(input, text);
        say(unit, inches ? "in" : "mm");
        const found = (app.answers.faults.marks ?? []).find((f) => f.input === "measured.csv" && f.line === row?.line), fault = found ? app.wrong(found) : "";
        slot.classList.toggle("wrong", fault !== "");
        attr(input, "aria-invalid", fault !== "" && "true");
        say(wrong, fault);
      },
    };
  }

  return {
    /** @param {Mark[]} marks @param {number} to */
    set(marks, to) {
      [fret, last] = [to, marks.length];
      const m = marks[to - 1];
      say(name, `Fret ${to}`);
      say(slant, `of ${last}, slant ${angle(m.slant_deg)}`);
      before.disabled = to === 1;
      after.disabled = to === last;
      for (const line of lines) line.set(m, marks[to - 2]);
      for (const field of whole) field.set(0);
    },
  };
}

/** What the check says went wrong at a mark, "" if nothing. @param {import("./types.js").Check | null} check @param {string} line @param {number} fret */
const slipOf = (check, line, fret) => check?.slips.find((s) => s.line === line && s.fret === fret)?.words ?? "";

/** What the check found of a mark. @param {CheckedMark} c @param {string} slip @param {import("./app.js").App} app */
function judgement(c, slip, app) {
  if (c.error_mm === undefined || c.error_cents === undefined) return c.verdict;
  const error = `error ${signed(app.units.of(c.error_mm), app.units.inches ? 3 : 2)} ${app.units.lengthName}, ${signed(c.error_cents, 1)} cents`;
  return `${error}: ${c.verdict}${slip ? `; ${slip}` : c.in_doubt ? ", in doubt" : c.sure ? "" : ", not sure"}`;
}

/**
 * A square for every mark, and what the check says in all.
 * @param {HTMLElement} box
 * @param {(fret: number) => void} turn
 */
export function markSquares(box, turn) {
  const said = el("ul", { class: "check-words" }), rows = el("div", { class: "squares-of-marks" });
  box.append(el("div", { class: "checked" }, said, rows));
  return {
    /** @param {import("./types.js").Check | null} check @param {number} last @param {number} fret */
    set(check, last, fret) {
      list(said, check ? [...check.says, ...check.advice] : [], () => {
        const node = el("li");
        return { node, update: (/** @type {string} */ text) => say(node, text) };
      });
      list(rows, ["treble", "bass"].map((line) => ({
        line,
        squares: Array.from({ length: last }, (_, i) => {
          const m = check?.lines.find((l) => l.line === line)?.marks.find((c) => c.fret === i + 1);
          return { line, fret: i + 1, state: !m?.readings ? "not measured" : m.verdict === "within" && (m.in_doubt || slipOf(check, line, i + 1)) ? "in doubt" : m.verdict === "within" && !m.sure ? "not sure" : m.verdict, inHand: i + 1 === fret };
        }),
      })), () => {
        const name = el("span"), squares = el("span", { class: "row-of-marks" });
        return {
          node: el("div", {}, name, squares),
          update(row) {
            say(name, row.line);
            list(squares, row.squares, () => square(turn));
          },
        };
      });
    },
  };
}

/** @param {(fret: number) => void} turn */
function square(turn) {
  let at = 0;
  const node = el("button", { onclick: () => turn(at) });
  return {
    node,
    /** @param {{line: string, fret: number, state: string, inHand: boolean}} s */
    update(s) {
      at = s.fret;
      say(node, String(s.fret));
      attr(node, "class", s.state.replaceAll(" ", "-") + (s.inHand ? " in-hand" : ""));
      attr(node, "aria-label", `${s.line} mark ${s.fret}: ${s.state}`);
    },
  };
}
