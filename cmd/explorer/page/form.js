// The build file as a form, made from the engine's description of its keys: those that are
// given stand open, every other one behind 'more'.

import { arranged, attr, el, offer, say, show } from "./dom.js";
import { inWords, sectionTitle } from "./words.js";

/** @typedef {import("./types.js").Key} Key */
/** @typedef {import("./types.js").Section} Section */
/** @typedef {import("./units.js").Units} Units */
/** @typedef {{key: string, text?: string, list?: string[], remove?: boolean}} Edit */

/**
 * @param {HTMLElement} box
 * @param {(edits: Edit[]) => Promise<string>} edit answers what is wrong, "" if nothing
 * @param {(key: string) => string} faultOf what is wrong with a key of the build, "" if nothing
 */
export function buildForm(box, edit, faultOf) {
  const sections = el("div", { class: "form-sections" }), arrange = arranged((/** @type {Section} */ s) => s.path, () => sectionOf(edit, faultOf));
  box.append(sections);
  return {
    /** @param {Section[]} found @param {Units} units */
    set(found, units) {
      arrange([{ parent: sections, items: found }], units);
    },
  };
}

/**
 * One section: its given keys stand open, the others are folded away. A list has a section for
 * each entry and an empty one after them, which is there once a key of it is given.
 * @param {(edits: Edit[]) => Promise<string>} edit
 * @param {(key: string) => string} faultOf
 */
export function sectionOf(edit, faultOf) {
  let path = "";
  const title = el("h3"), help = el("p", { class: "small" }), given = el("div", { class: "keys" }), rest = el("div", { class: "keys" });
  const more = el("details", { class: "more" }, el("summary", {}, "more"), rest), wrong = el("p", { class: "wrong-words", role: "alert", hidden: true });
  const remove = el("button", { class: "button flat", onclick: drop }, "Remove");
  async function drop() {
    const words = await edit([{ key: path, remove: true }]);
    complain(words);
  }
  function complain(/** @type {string} */ words) {
    say(wrong, words);
    wrong.hidden = words === "";
  }
  const arrange = arranged((/** @type {Key} */ k) => k.path, () => keyField(edit, faultOf));
  return {
    node: el("section", { class: "form-section" }, title, help, given, more, remove, wrong),
    /** @param {Section} section @param {Units} units */
    update(section, units) {
      path = section.path;
      say(title, section.list && !section.given ? `${sectionTitle(section.name)}, one more` : sectionTitle(path));
      say(help, section.help);
      help.hidden = !section.help;
      remove.hidden = !section.list || !section.given;
      const closed = section.keys.filter((k) => !k.given);
      arrange([{ parent: given, items: section.keys.filter((k) => k.given) }, { parent: rest, items: closed }], units);
      complain(path ? faultOf(path) : "");
      more.open ||= !wrong.hidden; // what is missing is among them
      more.hidden = !closed.length;
    },
  };
}

// Lists whose entries are single words, so that spaces part them too.
const WORDLIKE = ["string", "int", "direction"];

/**
 * The field of one key. What is wrong with its value stands beneath it; the build keeps the last good one.
 * @param {(edits: Edit[]) => Promise<string>} edit
 * @param {(key: string) => string} faultOf
 */
function keyField(edit, faultOf) {
  /** @type {Key | null} */
  let key = null;
  let kind = "";
  const words = offer(), name = el("span", { class: "key-name" }), help = el("small"), wrong = el("span", { class: "wrong-words", role: "alert" });
  const slot = el("span", { class: "field" }), node = el("label", { class: "key" }, name, slot, help, wrong);
  /** @type {HTMLInputElement | HTMLSelectElement} */
  let input = el("input");
  let given = ""; // what was typed here last and handed on
  const complain = (/** @type {string} */ words) => {
    slot.classList.toggle("wrong", words !== "");
    attr(input, "aria-invalid", words !== "" && "true");
    say(wrong, words);
  };
  async function changed() {
    if (!key) return;
    const text = input.value.trim(), wordlike = WORDLIKE.includes(key.type), entries = split(text, wordlike);
    given = input.value;
    if (text === shownText(key)) return complain("");
    complain(await edit([text === "" ? { key: key.path, remove: true } : key.list && (wordlike || entries.length > 1) ? { key: key.path, list: entries } : { key: key.path, text }]));
  }
  return {
    node,
    /** @param {Key} next @param {Units} units */
    update(next, units) {
      const moved = key?.path !== next.path, taken = key && shownText(key) !== shownText(next) && input.value === given;
      key = next;
      const wanted = next.type === "bool" ? "select" : "input";
      if (kind !== wanted) {
        kind = wanted;
        input = wanted === "select" ? el("select", {}, ...["", "true", "false"].map((value) => el("option", { value }, value || "not given"))) : el("input", { class: "text", autocomplete: "off", spellcheck: false, list: words.id });
        input.addEventListener("change", changed);
        slot.replaceChildren(input, words.node);
      }
      words.set(next.words);
      node.classList.toggle("long", next.list || next.type === "tuning" || shownText(next).length > 20);
      say(name, inWords(next.name));
      const range = next.range.split(", ").map((end) => units.ofText(end));
      say(help, [next.help.replace(/^example(?!s)[,:;]?\s*/, ""), range.length === 2 ? `from ${range[0]} to ${range[1]}` : ""].filter(Boolean).join("; "));
      const sample = next.sample.replace(/^"(.*)"$/, "$1");
      if (kind === "input") attr(input, "placeholder", sample ? (next.sample_is_default ? sample : `such as ${sample}`) : null);
      if (moved || taken) input.value = shownText(next);
      else show(input, shownText(next));
      const fault = faultOf(next.path);
      if (fault || moved || input !== document.activeElement) complain(fault);
    },
  };
}

/** @param {Key} key */
function shownText(key) {
  return key.texts.length ? key.texts.join(WORDLIKE.includes(key.type) ? " " : ", ") : key.text;
}

/**
 * The entries of a list: of words by commas where there are any, else by spaces; of quantities
 * by commas, but for one between two digits, which the reader of the file refuses.
 * @param {string} text @param {boolean} wordlike
 */
function split(text, wordlike) {
  if (text.startsWith("[")) return [text]; // as the file has it
  return text.split(!wordlike ? /\s*(?<!\d),\s*|\s*,(?!\d)\s*/ : text.includes(",") ? /\s*,\s*/ : /\s+/).filter(Boolean);
}
