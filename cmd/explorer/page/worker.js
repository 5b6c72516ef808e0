// A worker with an engine in it. The first message is the compiled engine; every other one
// a call, which is answered with the same number.

/** @type {any} */ const scope = globalThis; // the worker's, where Go puts its function

scope.onmessage = async (/** @type {MessageEvent} */ first) => {
  const go = new scope.Go();
  const instance = await WebAssembly.instantiate(first.data, go.importObject).catch((error) => scope.postMessage({ ended: true, why: String(error) }));
  if (!instance) return;
  const ended = go.run(instance);
  scope.onmessage = (/** @type {MessageEvent} */ { data: { number, name, request } }) =>
    scope.postMessage({ number, answer: scope.scalepair(name, request) });
  scope.postMessage({ ready: true });
  await ended; // it never ends by itself
  scope.postMessage({ ended: true });
};
