// What stands round the three places: which one is shown, undo and redo, what is in no file
// yet, units, light, and what is read out.

import { attr, byId, el, say } from "./dom.js";
import { FORCE_UNITS, LENGTH_UNITS } from "./units.js";

/** @typedef {import("./store.js").Store} Store */
/** @typedef {"strings" | "choose" | "make"} PlaceName */

const PLACES = /** @type {const} */ ({ strings: "Strings", choose: "Choose", make: "Make" });
const WORDS = { build: "build file", readings: "readings", marks: "measured marks" };

/** The place that the address names. @returns {PlaceName} */
export function placeShown() {
  const name = location.hash.slice(1);
  return name in PLACES ? /** @type {PlaceName} */ (name) : "choose";
}

/**
 * @param {Store} store
 * @param {object} on
 * @param {() => void} on.enter a place is shown now
 * @param {(key: string, text: string) => void} on.unit sets a unit of the build file
 * @param {() => void} on.save
 */
export function shell(store, on) {
  const undo = button("undo", () => store.undo()), redo = button("redo", () => store.redo());
  button("save", on.save);
  const kept = byId("kept"), leftHanded = /** @type {HTMLInputElement} */ (byId("left-handed"));

  function enter() {
    const place = placeShown();
    for (const [name, title] of Object.entries(PLACES)) {
      byId(name).hidden = name !== place;
      attr(/** @type {Element} */ (document.querySelector(`.places a[href="#${name}"]`)), "aria-current", name === place && "page");
      if (name === place) document.title = `${title} · scalepair`;
    }
    on.enter();
  }
  window.addEventListener("hashchange", () => {
    enter();
    window.scrollTo(0, 0);
  });

  function state() {
    undo.disabled = !store.past.length;
    redo.disabled = !store.future.length;
    const unsaved = store.unsaved();
    kept.classList.toggle("filed", !unsaved.length && !store.notKept);
    say(/** @type {Node} */ (kept.lastElementChild), store.notKept ? `Not kept: ${store.notKept}` : unsaved.length ? "Kept here, not in a file yet" : "Kept here and in files");
    attr(kept, "title", unsaved.map((name) => WORDS[name]).join(", ") || null);
    leftHanded.checked = store.state.view.leftHanded;
  }
  store.addEventListener("change", state);
  store.addEventListener("saved", state);
  window.addEventListener("pagehide", () => store.keep());
  window.addEventListener("beforeunload", (event) => {
    if (store.unsaved().length) event.preventDefault();
  });
  document.addEventListener("keydown", (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey || typing(event.target)) return;
    const key = event.key.toLowerCase();
    if (key === "z" || key === "y") {
      event.preventDefault();
      if (key === "y" || event.shiftKey) store.redo();
      else store.undo();
    }
  });
  leftHanded.addEventListener("change", () => store.change({ view: { leftHanded: leftHanded.checked } }));

  const lengths = options("length-unit", LENGTH_UNITS, (unit) => on.unit("length_unit", unit));
  const forces = options("force-unit", FORCE_UNITS, (unit) => on.unit("force_unit", unit));
  light();
  enter();
  state();
  return {
    /** @param {import("./units.js").Units} units */
    units(units) {
      lengths.value = units.length;
      forces.value = units.force;
    },
  };
}

/** Light as the system has it, or as chosen here; the choice is kept beside the state. */
function light() {
  const chosen = /** @type {HTMLSelectElement} */ (byId("theme")), dark = matchMedia("(prefers-color-scheme: dark)");
  const asked = new URLSearchParams(location.search).get("theme");
  try {
    chosen.value = asked ?? localStorage.getItem("scalepair light") ?? "";
  } catch {
    chosen.value = asked ?? "";
  }
  const set = () => (document.documentElement.dataset.theme = chosen.value || (dark.matches ? "dark" : "light"));
  chosen.addEventListener("change", () => {
    set();
    try {
      localStorage.setItem("scalepair light", chosen.value);
    } catch {
      // it holds until the page is closed
    }
  });
  dark.addEventListener("change", set);
  set();
}

/** @param {string} id @param {() => void} press @returns {HTMLButtonElement} */
function button(id, press) {
  const node = /** @type {HTMLButtonElement} */ (byId(id));
  node.addEventListener("click", press);
  return node;
}

/**
 * @param {string} id
 * @param {Record<string, string>} words
 * @param {(value: string) => void} choose
 */
function options(id, words, choose) {
  const node = /** @type {HTMLSelectElement} */ (byId(id));
  node.append(...Object.entries(words).map(([value, text]) => el("option", { value }, text)));
  node.addEventListener("change", () => choose(node.value));
  return node;
}

/** Whether a key press belongs to a text that is being typed. @param {EventTarget | null} target */
function typing(target) {
  return target instanceof HTMLTextAreaElement || (target instanceof HTMLInputElement && !["range", "checkbox", "radio", "button"].includes(target.type));
}

/** @type {ReturnType<typeof setTimeout> | undefined} */
let speaking;

/** Says something to a screen reader once the hand rests. @param {string} words */
export function announce(words) {
  clearTimeout(speaking);
  speaking = setTimeout(() => say(byId("live"), words), 400);
}

/** Shows what is wrong above the place, and a way out. @param {string} words @param {{words: string, press: () => void} | null} [way] */
export function notice(words, way = null) {
  const node = byId("notice");
  node.hidden = words === "";
  if (node.dataset.words === words) return;
  node.dataset.words = words;
  node.replaceChildren(words, ...(way ? [el("br"), el("button", { class: "button", onclick: way.press }, way.words)] : []));
}
