// Elements of the page: made once, and written again only where something changed.

const SVG = "http://www.w3.org/2000/svg";

/** @typedef {Record<string, string | number | boolean | null | undefined | ((event: any) => void)>} Attributes */

/**
 * The element with this id, which index.html holds.
 * @param {string} id
 * @returns {HTMLElement}
 */
export function byId(id) {
  const node = document.getElementById(id);
  if (!node) throw new Error(`the page has no #${id}`);
  return node;
}

/**
 * A new element. Attributes that begin with "on" are listeners; text is text, never markup.
 * @template {keyof HTMLElementTagNameMap} K
 * @param {K} tag
 * @param {Attributes} [attributes]
 * @param {...(Node | string | null)} children
 * @returns {HTMLElementTagNameMap[K]}
 */
export function el(tag, attributes = {}, ...children) {
  return fill(document.createElement(tag), attributes, children);
}

/**
 * A new element of a drawing.
 * @template {keyof SVGElementTagNameMap} K
 * @param {K} tag
 * @param {Attributes} [attributes]
 * @param {...(Node | string | null)} children
 * @returns {SVGElementTagNameMap[K]}
 */
export function svg(tag, attributes = {}, ...children) {
  return fill(document.createElementNS(SVG, tag), attributes, children);
}

/**
 * @template {Element} E
 * @param {E} node
 * @param {Attributes} attributes
 * @param {(Node | string | null)[]} children
 * @returns {E}
 */
function fill(node, attributes, children) {
  for (const [name, value] of Object.entries(attributes)) {
    if (typeof value === "function") node.addEventListener(name.slice(2), value);
    else attr(node, name, value);
  }
  for (const child of children) if (child !== null) node.append(child);
  return node;
}

/**
 * Sets an attribute where it differs; false, null and undefined take it away.
 * @param {Element} node
 * @param {string} name
 * @param {string | number | boolean | null | undefined} value
 */
export function attr(node, name, value) {
  if (value === false || value === null || value === undefined) node.removeAttribute(name);
  else {
    const text = value === true ? "" : String(value);
    if (node.getAttribute(name) !== text) node.setAttribute(name, text);
  }
}

/**
 * Sets the text where it differs.
 * @param {Node} node
 * @param {string} text
 */
export function say(node, text) {
  if (node.textContent !== text) node.textContent = text;
}

/**
 * Sets what an input shows, unless somebody is typing in it.
 * @param {HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement} input
 * @param {string} value
 */
export function show(input, value) {
  if (input !== document.activeElement && input.value !== value) input.value = value;
}

/**
 * Makes the children of a parent match a list: one node each, kept from one call to the next,
 * so that focus stays where it is.
 * @template T
 * @param {Element} parent
 * @param {readonly T[]} items
 * @param {(index: number) => {node: Element, update: (item: T, index: number) => void}} make
 */
export function list(parent, items, make) {
  /** @type {{node: Element, update: (item: T, index: number) => void}[]} */
  const kept = kids.get(parent) ?? [];
  kids.set(parent, kept);
  while (kept.length > items.length) kept.pop()?.node.remove();
  items.forEach((item, i) => {
    if (!kept[i]) parent.append((kept[i] = make(i)).node);
    kept[i].update(item, i);
  });
}

/** @type {WeakMap<Element, any[]>} */
const kids = new WeakMap();

/**
 * The same with a node for each key, whatever comes or goes before it, so that what is typed in
 * it stays, and the hand where it is. All items are shown with one thing more.
 * @template T, A
 * @param {(item: T) => unknown} keyOf
 * @param {() => {node: HTMLElement, update: (item: T, all: A) => void}} make
 */
export function arranged(keyOf, make) {
  /** @type {Map<unknown, ReturnType<typeof make>>} */
  const kept = new Map();
  return (/** @type {{parent: HTMLElement, items: T[]}[]} */ groups, /** @type {A} */ all) => {
    const at = document.activeElement, wanted = new Map(groups.flatMap(({ parent, items }) => items.map((item) => [keyOf(item), parent])));
    // What goes elsewhere goes first, so that nothing else has to move.
    for (const [key, { node }] of kept) {
      if (wanted.get(key) !== node.parentElement) node.remove();
      if (!wanted.has(key)) kept.delete(key);
    }
    for (const { parent, items } of groups)
      items.forEach((item, i) => {
        const one = kept.get(keyOf(item)) ?? make();
        kept.set(keyOf(item), one);
        if (parent.children[i] !== one.node) parent.insertBefore(one.node, parent.children[i] ?? null);
        one.update(item, all);
      });
    if (at instanceof HTMLElement && at !== document.activeElement && groups.some(({ parent }) => parent.contains(at))) at.focus();
  };
}

let offers = 0;

/** Words that inputs with this list offer. */
export function offer() {
  const id = `offer-${++offers}`, node = el("datalist", { id });
  return {
    id, node,
    /** @param {string[]} words */
    set(words) {
      list(node, words, () => {
        const node = el("option");
        return { node, update: (/** @type {string} */ word) => attr(node, "value", word) };
      });
    },
  };
}

/**
 * Keeps a finger that holds something from scrolling the page; beside it the page scrolls as ever.
 * @param {Element} node
 * @param {() => boolean} held
 */
export function holdsTouch(node, held) {
  node.addEventListener("touchmove", (event) => held() && event.cancelable && event.preventDefault(), { passive: false });
}

/** Pixels, to a hundredth. @param {number} value */
export function px(value) {
  return Math.round(value * 100) / 100;
}

/** @param {number} value @param {number} least @param {number} most */
export function clamp(value, least, most) {
  return Math.max(least, Math.min(most, value));
}
