// The program of a page.html under node: its own worker script and wasm, in a scope that stands in for a worker.
import fs from "node:fs";

function pieces(file) {
  const page = fs.readFileSync(file, "utf8");
  const textOf = (id) => page.match(new RegExp(`<script type="text/plain" id="${id}"[^>]*>([^]*?)</script>`))[1];
  return { wasm: textOf("wasm"), worker: textOf("worker") };
}

/** A function that asks as src/page/ask.js does: ask(words, files) gives {status, out, page, err, files}. */
export function openProgram(file) {
  const { wasm, worker } = pieces(file);
  const waiting = new Map();
  const self = { location: { href: "" }, postMessage: (data) => waiting.get(data.id)(data) };
  new Function("self", "importScripts", worker)(self, () => {});
  self.onmessage({ data: { wasm } });
  let last = 0;
  return (words, files = {}) => new Promise((resolve) => {
    last += 1;
    waiting.set(last, resolve);
    self.onmessage({ data: { id: last, words, files } });
  });
}
