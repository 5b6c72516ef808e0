// The build file as a form, made from the engine's description of its keys: those that are
// given stand open, every other one behind 'more'.

import { capital } from "./units.js";
import { attr, el, list, say, show } from "./dom.js";

/** @typedef {import("./types.js").Key} Key */
/** @typedef {import("./types.js").Section} Section */
/** @typedef {{key: string, text?: string, list?: string[], remove?: boolean}} Edit */

/**
 * @param {HTMLElement} box
 * @param {(edits: Edit[]) => Promise<string>} edit answers what is wrong, "" if nothing
 * @param {(key: string) => string} faultOf what is wrong with a key of the build, "" if nothing
 */
export function buildForm(box, edit, faultOf) {
  const sections = el("div", { class: "form-sections" });
  box.append(sections);
  return {
    /** @param {Section[]} found */
    set(found) {
      list(sections, found, () => sectionOf(edit, faultOf));
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
    say(wrong, words);
    wrong.hidden = words === "";
  }
  return {
    node: el("section", { class: "form-section" }, title, help, given, more, remove, wrong),
    /** @param {Section} section */
    update(section) {
      path = section.path;
      const entry = Number(/\[(\d+)\]$/.exec(path)?.[1] ?? -1);
      say(title, path === "" ? "The build" : capital(section.name.replaceAll("_", " ")) + (entry < 0 ? "" : section.given ? ` ${entry + 1}` : ", one more"));
      say(help, section.help);
      help.hidden = !section.help;
      remove.hidden = !section.list || !section.given;
      list(given, section.keys.filter((k) => k.given), () => keyField(edit, faultOf));
      const closed = section.keys.filter((k) => !k.given);
      list(rest, closed, () => keyField(edit, faultOf));
      more.hidden = !closed.length;
    },
  };
}

// Lists whose entries are single words, so that spaces part them too.
const WORDLIKE = ["string", "int", "direction"];
let fields = 0;

/**
 * The field of one key. What is wrong with its value stands beneath it; the build keeps the last good one.
 * @param {(edits: Edit[]) => Promise<string>} edit
 * @param {(key: string) => string} faultOf
 */
function keyField(edit, faultOf) {
  /** @type {Key | null} */
  let key = null;
  let kind = "";
  const id = `words-${++fields}`, words = el("datalist", { id });
  const name = el("span", { class: "key-name" }), help = el("small"), wrong = el("span", { class: "wrong-words", role: "alert" });
  const slot = el("span", { class: "field" }), node = el("label", { class: "key" }, name, slot, help, wrong);
  /** @type {HTMLInputElement | HTMLSelectElement} */
  let input = el("input");
  const complain = (/** @type {string} */ words) => {
    slot.classList.toggle("wrong", words !== "");
    attr(input, "aria-invalid", words !== "" && "true");
    say(wrong, words);
  };
  async function changed() {
    if (!key) return;
    const text = input.value.trim(), isList = key.list && (text.includes(",") || WORDLIKE.includes(key.type));
    if (text === shownText(key)) return complain("");
    complain(await edit([text === "" ? { key: key.path, remove: true } : isList ? { key: key.path, list: split(text) } : { key: key.path, text }]));
  }
  return {
    node,
    /** @param {Key} next */
    update(next) {
      const moved = key?.path !== next.path;
      key = next;
      const wanted = next.type === "bool" ? "select" : "input";
      if (kind !== wanted) {
        kind = wanted;
        input = wanted === "select" ? el("select", {}, ...["", "true", "false"].map((value) => el("option", { value }, value || "not given"))) : el("input", { class: "text", autocomplete: "off", spellcheck: false, list: id });
        input.addEventListener("change", changed);
        slot.replaceChildren(input, words);
      }
      list(words, next.words, () => {
        const node = el("option");
        return { node, update: (/** @type {string} */ word) => attr(node, "value", word) };
      });
      node.classList.toggle("long", shownText(next).length > 20);
      say(name, next.name.replaceAll("_", " "));
      const range = next.range.split(", ");
      say(help, [next.help.replace(/^example(?!s)[,:;]?\s*/, ""), range.length === 2 ? `from ${range[0]} to ${range[1]}` : ""].filter(Boolean).join("; "));
      const sample = next.sample.replace(/^"(.*)"$/, "$1");
      if (kind === "input") attr(input, "placeholder", sample ? (next.sample_is_default ? sample : `such as ${sample}`) : null);
      if (moved) input.value = shownText(next);
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

/** The entries of a list: by commas where there are any, else by spaces. @param {string} text */
function split(text) {
  return text.split(text.includes(",") ? /\s*,\s*/ : /\s+/).filter(Boolean);
}
