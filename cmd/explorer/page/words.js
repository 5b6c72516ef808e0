// The program's sentences as they read on the page: a key of the build file and a column of the
// table have the names of their fields, lengths and forces are in the builder's units, and places
// in files that nobody sees are left out.

import { atField } from "./engine.js";
import { capital } from "./units.js";

/** @typedef {import("./types.js").Fault} Fault */
/** @typedef {import("./units.js").Units} Units */
/** @typedef {{sections: Set<string>, keys: Set<string>, columns: Set<string>, gauges: Map<number, string>, units: Units}} Names that stand in sentences as the files have them; the gauges by their lines */

/** @param {import("./types.js").Keys | null} keys @param {import("./types.js").Readings | null} readings @param {Units} units @returns {Names} */
export function namesOf(keys, readings, units) {
  const sections = keys?.sections ?? [], { columns = [], known_columns: known = [], rows = [] } = readings ?? {};
  return {
    sections: new Set(sections.map((s) => s.name)), keys: new Set(sections.flatMap((s) => s.keys.map((k) => k.name))),
    columns: new Set([...columns, ...known]), gauges: new Map(rows.map((r) => [r.line, r.cells.gauge ?? ""])), units,
  };
}

/** The heading of a section of the build: "Blanks 2". @param {string} path */
export function sectionTitle(path) {
  const [, name, entry] = /^(.*?)(?:\[(\d+)\])?$/.exec(path) ?? [];
  return name ? capital(name.replaceAll("_", " ")) + (entry ? ` ${Number(entry) + 1}` : "") : "The build";
}

const UNITS = { percent: "%", hz: "Hz", gpa: "GPa", mpa: "MPa", g_cm3: "g/cm³", kg_m3: "kg/m³", m_s2: "m/s²" };

/** The name of a key or a column in words, its unit after a comma. @param {string} name */
export function inWords(name) {
  return name.replace(/_(mm|in|oz|k?g|deg|percent|cents|hz|gpa|mpa|g_cm3|kg_m3|m_s2)$/, (_, unit) => ", " + (UNITS[/** @type {"hz"} */ (unit)] ?? unit)).replaceAll("_", " ");
}

/** A field by its section and its name: "Blanks 2, width". @param {string} key */
function fieldName(key) {
  const [, path = "", name] = /^(?:(.+)\.)?([^.]+?)(?:\[\d+\])?$/.exec(key) ?? ["", "", key];
  return /\]$/.test(key) && !path ? sectionTitle(key) : [sectionTitle(path), inWords(name)].join(", ");
}

/** @param {string} text @param {Names} names */
export function plain(text, { sections, keys, columns, units }) {
  return text
    .replace(/(it goes from |"bass )(\S+ \w+)( to |, treble )(\S+ \w+)/, (_, from, a, to, b) => from + units.ofText(a) + to + units.ofText(b))
    .replace(/ \((line \d+|\S+\.(toml|csv):\d+(:\d+)?)\)/g, "")
    .replace(/ \((\w+)(\.\w+)?\)/g, (all, section) => (sections.has(section) ? "" : all))
    .replace(/\[\[?([a-z_]+)\]\]?/g, (all, name) => (sections.has(name) ? sectionTitle(name) : all))
    .replace(/\b([a-z_]+)\.([a-z0-9_]+)\b/g, (all, section, key) => (sections.has(section) && keys.has(key) ? fieldName(all) : all))
    .replace(/\b([a-z0-9_]+) = /g, (all, key) => (keys.has(key) ? `${inWords(key)}: ` : all))
    .replace(/\b[a-z0-9]+(?:_[a-z0-9]+)+\b/g, (all) => (keys.has(all) || columns.has(all) ? inWords(all) : all));
}

/** What is wrong, in words for its field. @param {Fault} fault @param {Names} names */
export function wrongHere(fault, names) {
  return plain(atField(fault), names);
}

/** What is wrong, with the name of its field, for anywhere else. @param {Fault} fault @param {Names} names */
export function wrongThere(fault, names) {
  const words = wrongHere(fault, names);
  if (fault.input === "measured.csv") return `Marks, line ${fault.line}: ${words}`;
  if (fault.input === "readings.csv") return `${["Strings", names.gauges.get(fault.line)].filter(Boolean).join(", ")}: ${words}`;
  if (!fault.key) return words;
  const field = fieldName(fault.key), own = field.replace(/^.*, /, "") + ": ";
  return `${field}: ${words.startsWith(own) ? words.slice(own.length) : words}`;
}
