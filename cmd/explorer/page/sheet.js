// The page prints as the bench sheet: the engine's own document lies in it, unseen on the
// screen, and on paper stands alone with its own style.

import { byId } from "./dom.js";
import { placeShown } from "./shell.js";

/** ms without a change before the sheet is made: sooner where it is at hand (judgement). */
const rest = () => (placeShown() === "make" ? 1500 : 5000);

/**
 * Keeps the sheet of the shown pair ready. Answers with what prints it.
 * @param {import("./app.js").App} app
 */
export function printsAsSheet(app) {
  const box = byId("sheet"), style = new CSSStyleSheet({ media: "print" });
  document.adoptedStyleSheets = [style];
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let resting;
  /** The answer that lies there now. @type {import("./engine.js").Answer | null | undefined} */
  let laid;

  /** Makes it anew where the state is another; answers why it cannot be made. */
  async function make() {
    const answer = await app.sheet();
    if (answer?.ok && answer === laid) return [];
    laid = answer;
    if (!answer?.ok) {
      lay([], "", ""); // the sheet of an earlier state is not left to be printed
      return answer?.faults ?? [];
    }
    // The styles are taken out first: the page's policy lets no style in by markup.
    /** @type {string[]} */
    const styles = [];
    const html = new TextDecoder().decode(answer.result.bytes).replace(/<style>([^]*?)<\/style>/g, (_, css) => (styles.push(css), ""));
    const sheet = new DOMParser().parseFromString(html, "text/html");
    for (const unwanted of sheet.querySelectorAll("script, .skip, nav")) unwanted.remove();
    sheet.body.querySelector("#main")?.removeAttribute("id");
    lay([...sheet.body.childNodes].map((node) => document.importNode(node, true)), styles.join("\n") + "\nbody > :not(#sheet) { display: none } #sheet { display: block }", "screen");
    return [];
  }

  /** @param {Node[]} nodes @param {string} css @param {string} own where the page's own style holds */
  function lay(nodes, css, own) {
    style.replaceSync(css);
    box.replaceChildren(...nodes);
    for (const sheet of document.styleSheets) sheet.media.mediaText = own;
  }

  app.store.addEventListener("change", () => {
    if (laid) lay([], "", ""); // a sheet of the state before is not printed
    laid = undefined;
  });
  app.answers.addEventListener("pair", () => {
    clearTimeout(resting);
    resting = setTimeout(make, rest());
  });
  return async () => {
    const faults = await make();
    if (faults.length) app.refuse(faults);
    else if (laid?.ok) window.print();
  };
}
