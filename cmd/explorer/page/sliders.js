// Two rules with a slide each, buttons beside them and a field for the very length.

import { attr, el, say } from "./dom.js";
import { nearest } from "./grid.js";

/** @typedef {import("./grid.js").Place} Place */
/** @typedef {import("./units.js").Units} Units */
/** @typedef {"bass" | "treble"} Side */

/**
 * @param {HTMLElement} box
 * @param {(place: Place, going: boolean) => void} go
 * @param {(side: Side, text: string) => Promise<string>} enter takes a typed length; answers what is wrong with it, "" if nothing
 */
export function sliders(box, go, enter) {
  /** @type {Place | null} */
  let shown = null;
  /** @type {import("./grid.js").Grid | null} */
  let grid = null;
  /** @type {Units | null} */
  let units = null;
  const sides = /** @type {Side[]} */ (["bass", "treble"]).map(row);
  box.append(el("div", { class: "sliders" }, ...sides.flatMap((s) => s.nodes)));

  /** @param {Side} side */
  function row(side) {
    const name = side === "bass" ? "Bass" : "Treble";
    const slide = el("input", { type: "range", min: 0, step: 1, "aria-label": `${name} scale length` });
    const ruler = el("span", { class: "ruler" }, slide);
    const field = el("input", { id: side + "-length", inputmode: "decimal", autocomplete: "off", "aria-describedby": side + "-wrong" });
    const unit = el("span"), frame = el("span", { class: "field" }, field, unit), wrong = el("p", { class: "wrong-words", id: side + "-wrong", role: "alert", hidden: true });
    const less = el("button", { class: "button square shorter", "aria-label": `${name} one step shorter`, onclick: () => step(-1) }, "−");
    const more = el("button", { class: "button square longer", "aria-label": `${name} one step longer`, onclick: () => step(1) }, "+");

    const all = () => (side === "bass" ? grid?.basses : grid?.trebles) ?? [];
    const move = (/** @type {number} */ length, /** @type {boolean} */ going) => shown && go({ ...shown, [side]: length }, going);
    function step(/** @type {number} */ by) {
      if (grid && shown) go(side === "bass" ? grid.step(shown, by, 0) : grid.step(shown, 0, by), false);
    }
    slide.addEventListener("input", () => move(all()[Number(slide.value)], true));
    slide.addEventListener("change", () => move(all()[Number(slide.value)], false));
    let typing = false;
    field.addEventListener("input", () => (typing = true));
    field.addEventListener("blur", () => (typing = false));
    field.addEventListener("keydown", (event) => event.key === "Enter" && (typing = false));
    field.addEventListener("change", async () => {
      typing = false;
      const words = await enter(side, field.value.trim());
      complain(words);
      if (!words && shown && units) field.value = units.scale(shown[side]);
    });
    function complain(/** @type {string} */ words) {
      frame.classList.toggle("wrong", words !== "");
      attr(field, "aria-invalid", words !== "" && "true");
      say(wrong, words);
      wrong.hidden = words === "";
    }
    return {
      nodes: [el("div", { class: "slider-row" }, el("label", { for: side + "-length" }, name), less, ruler, more, frame), wrong],
      set() {
        if (!units) return;
        const lengths = all();
        attr(slide, "max", Math.max(0, lengths.length - 1));
        slide.disabled = less.disabled = more.disabled = lengths.length < 2;
        ruler.style.setProperty("--divisions", String(Math.max(1, Math.min(40, lengths.length - 1))));
        say(unit, units.lengthName);
        if (!shown) return;
        slide.value = String(nearest(lengths, shown[side]));
        attr(slide, "aria-valuetext", units.len(shown[side]));
        if (typing || (frame.classList.contains("wrong") && document.activeElement === field)) return;
        field.value = units.scale(shown[side]);
        complain("");
      },
    };
  }

  return {
    /** @param {import("./grid.js").Grid | null} found @param {Place} place @param {Units} inUnits */
    set(found, place, inUnits) {
      [grid, shown, units] = [found, place, inUnits];
      for (const side of sides) side.set();
    },
  };
}
