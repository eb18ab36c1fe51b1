// Questions to the program, which runs in a worker so that the page never stands still. One question at a time.

const START_AGAIN = "The program stopped. It was started again: try once more.";

/** Gives the worker the pieces of the program that the page has read and it has not got. */
function giveProgram() {
  const pieces = document.getElementsByClassName("program");
  for (; given < read; given += 1) {
    worker.postMessage({ piece: pieces[given].textContent, left: Number(pieces[given].dataset.left) });
  }
}

function startWorker() {
  const text = document.getElementById("worker").textContent;
  const url = URL.createObjectURL(new Blob([text], { type: "text/javascript" }));
  const started = new Worker(url);
  URL.revokeObjectURL(url);
  return started;
}

let worker = null;
let read = 0; // pieces of the program, whole
let given = 0; // of them, to this worker
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
  given = 0;
  worker.onerror = stopped;
  worker.onmessage = ({ data }) => {
    waiting.get(data.id)?.resolve(data);
    waiting.delete(data.id);
  };
  giveProgram();
  return worker;
}

/** A worker takes a while to begin: it does so while the page is still being read. */
export const startProgram = () => void running();

/** Called behind each piece of the program, which is compiled while the rest is read. */
export function readProgram() {
  read += 1;
  running();
  giveProgram();
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
