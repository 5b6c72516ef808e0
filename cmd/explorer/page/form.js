// The build file as a form, made from the engine's description of its keys: those that are
// given stand open, every other one behind 'more'.

import { attr, el, list, say, show } from "./dom.js";
import { capital } from "./map.js";

/** @typedef {import("./types.js").Key} Key */
/** @typedef {import("./types.js").Section} Section */
/** @typedef {{key: string, text?: string, list?: string[], remove?: boolean, add?: boolean}} Edit */

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
 * One section: its given keys, the others folded away; a list has an entry each and a button for one more.
 * @param {(edits: Edit[]) => Promise<string>} edit
 * @param {(key: string) => string} faultOf
 */
export function sectionOf(edit, faultOf) {
  let path = "";
  const title = el("h3"), help = el("p", { class: "small" }), given = el("div", { class: "keys" }), rest = el("div", { class: "keys" });
  const more = el("details", { class: "more" }, el("summary", {}, "more"), rest), wrong = el("p", { class: "wrong-words", role: "alert", hidden: true });
  const run = async (/** @type {Edit[]} */ edits) => {
    const words = await edit(edits);
    say(wrong, words);
    wrong.hidden = words === "";
  };
  const add = el("button", { class: "button", onclick: () => run([{ key: path, add: true }]) }, "Add one");
  const remove = el("button", { class: "button", onclick: () => run([{ key: path, remove: true }]) }, "Remove this one");
  const node = el("section", { class: "form-section" }, title, help, given, more, el("div", { class: "acts-here" }, add, remove), wrong);
  return {
    node,
    /** @param {Section} section */
    update(section) {
      path = section.path;
      const entry = /\[\d+\]$/.test(path);
      say(title, path === "" ? "The build" : capital(path.replaceAll("_", " ").replace(/\[(\d+)\]$/, (_, n) => ` ${Number(n) + 1}`)));
      say(help, section.help);
      help.hidden = !section.help;
      add.hidden = !section.list || entry;
      remove.hidden = !entry;
      const open = section.keys.filter((k) => k.given), closed = section.keys.filter((k) => !k.given);
      list(given, open, () => keyField(edit, faultOf));
      list(rest, closed, () => keyField(edit, faultOf));
      more.hidden = !closed.length;
    },
  };
}

/**
 * The field of one key. What is wrong with its value stands beneath it; the build keeps the last good one.
 * @param {(edits: Edit[]) => Promise<string>} edit
 * @param {(key: string) => string} faultOf
 */
function keyField(edit, faultOf) {
  /** @type {Key | null} */
  let key = null;
  let kind = "";
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
    const text = input.value.trim(), isList = key.type.startsWith("list");
    if (text === key.text) return complain("");
    complain(await edit([text === "" ? { key: key.path, remove: true } : isList ? { key: key.path, list: split(text) } : { key: key.path, text }]));
  }
  return {
    node,
    /** @param {Key} next */
    update(next) {
      const moved = key?.path !== next.path;
      key = next;
      const words = next.type === "bool" ? ["true", "false"] : next.words?.length && !next.type.startsWith("list") && next.type === "words" ? next.words : null;
      const wanted = words ? "choice " + words.join() : "text";
      if (kind !== wanted) {
        kind = wanted;
        input = words ? el("select", {}, el("option", { value: "" }, "not given"), ...words.map((w) => el("option", { value: w }, w))) : el("input", { class: "text", autocomplete: "off", spellcheck: false });
        input.addEventListener("change", changed);
        slot.replaceChildren(input);
      }
      say(name, next.name.replaceAll("_", " "));
      say(help, [next.help, next.range].filter(Boolean).join("; "));
      if (!words) attr(input, "placeholder", next.default || (next.example && `such as ${next.example}`) || null);
      if (moved) input.value = next.text;
      else show(input, next.text);
      const fault = faultOf(next.path);
      if (fault || moved || input !== document.activeElement) complain(fault);
    },
  };
}

/** The entries of a list: by commas where there are any, else by spaces. @param {string} text */
function split(text) {
  return text.split(text.includes(",") ? /\s*,\s*/ : /\s+/).filter(Boolean);
}
