// The page, put together: the store has the state, the engine its answers, each module one
// part of a place. Read store.js, answers.js, app.js, choose.js, stock.js and make.js after this.

import { Answers } from "./answers.js";
import { App } from "./app.js";
import { choose } from "./choose.js";
import { byId } from "./dom.js";
import { startEngine } from "./engine.js";
import { dropped } from "./files.js";
import { make } from "./make.js";
import { notice, placeShown, shell } from "./shell.js";
import { stock } from "./stock.js";
import { FIRST_VIEW, Store, browserStorage } from "./store.js";

async function start() {
  const engine = await startEngine();
  const { demo, ...texts } = engine.first;
  const store = new Store(browserStorage(), { ...texts, view: FIRST_VIEW });
  const answers = new Answers(engine, store);
  const app = new App(engine, store, answers);
  const places = { strings: stock(app), choose: choose(app), make: make(app) };
  const show = () => {
    places[placeShown()]();
    app.complain();
  };
  const enter = () => {
    if (placeShown() === "make" && answers.pair && !answers.pair.layout) answers.askPair();
    show();
  };
  const frame = shell(store, { enter, unit: (key, text) => app.edit([{ key, text }]), save: () => app.save() });
  for (const what of ["pair", "advice", "gauges", "keys", "marks", "compared", "next"])
    answers.addEventListener(what, () => {
      if (what === "pair") ready();
      if (what === "keys") {
        app.readKeys();
        frame.units(app.units);
      }
      show();
    });
  store.addEventListener("change", show);
  const open = /** @type {HTMLInputElement} */ (byId("open"));
  open.addEventListener("change", () => {
    const files = [...(open.files ?? [])];
    open.value = ""; // so that the same file can be picked again
    app.inTurn(() => app.open(files));
  });
  dropped((files) => app.inTurn(() => app.open(files)));
  byId("begin-demo").addEventListener("click", () => app.inTurn(() => app.begin("demo")));
  byId("begin-empty").addEventListener("click", () => app.inTurn(() => app.begin("init")));
  answers.ask();
}

/** Nothing can be moved before there is a first answer to move. */
function ready() {
  const main = byId("main");
  byId("waiting").hidden = true;
  main.inert = false;
  main.removeAttribute("aria-disabled");
}

start().catch((error) => {
  byId("waiting").hidden = true;
  notice(error instanceof Error ? error.message : String(error));
});
