// The program of a page.html under node: its own worker script and wasm, in a scope that stands in for a worker.
import fs from "node:fs";

function pieces(file) {
  const page = fs.readFileSync(file, "utf8");
  const [, worker] = page.match(/<script type="text\/plain" id="worker">([^]*?)<\/script>/);
  const program = page.matchAll(/<script type="text\/plain" class="program" data-left="(\d+)">([^]*?)<\/script>/g);
  return { worker, program: [...program].map(([, left, piece]) => ({ piece, left: Number(left) })) };
}

/** A function that asks as src/page/ask.js does: ask(words, files) gives {status, out, page, err, files}. */
export function openProgram(file) {
  const { worker, program } = pieces(file);
  const waiting = new Map();
  const self = { location: { href: "" }, postMessage: (data) => waiting.get(data.id)(data) };
  new Function("self", "importScripts", worker)(self, () => {});
  for (const data of program) self.onmessage({ data });
  let last = 0;
  return (words, files = {}) => new Promise((resolve) => {
    last += 1;
    waiting.set(last, resolve);
    self.onmessage({ data: { id: last, words, files } });
  });
}
