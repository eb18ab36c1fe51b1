// Questions to the program, which runs in a worker so that the page never stands still. One question at a time.

const START_AGAIN = "The program stopped. It was started again: try once more.";

function startWorker() {
  const text = document.getElementById("worker").textContent;
  const url = URL.createObjectURL(new Blob([text], { type: "text/javascript" }));
  const worker = new Worker(url);
  URL.revokeObjectURL(url);
  worker.postMessage({ wasm: document.getElementById("wasm").textContent });
  return worker;
}

let worker = null;
let last = 0;
const waiting = new Map();

function stopped(event) {
  event.preventDefault?.();
  worker.terminate();
  worker = null;
  for (const { reject } of waiting.values()) reject(new Error(START_AGAIN));
  waiting.clear();
}

function running() {
  if (worker) return worker;
  worker = startWorker();
  worker.onerror = stopped;
  worker.onmessage = ({ data }) => {
    waiting.get(data.id)?.resolve(data);
    waiting.delete(data.id);
  };
  return worker;
}

/**
 * `words` is a command line without the program's name, `files` maps names to a text or to bytes. The answer:
 * {status, out, page, err, files}, with the files that the command wrote.
 */
export function ask({ words, files = {} }) {
  const id = ++last;
  return new Promise((resolve, reject) => {
    waiting.set(id, { resolve, reject });
    running().postMessage({ id, words, files });
  });
}

/** What a refused question says, without the program's name. */
export const faultOf = (answer) => answer.err.trim().replace(/^cropful: /, "");
