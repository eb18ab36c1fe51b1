// The program in a worker, behind emscripten's cropful.js. The first message starts it: {wasm}, gzipped, in base64. Each
// other one is a question, {id, words, files}: a command line, and files by name, texts or bytes, that lie alone in the
// folder it is asked in.
// The answer is {id, status, out, page, err, files}, with the files that the command wrote, as bytes.

const FOLDER = "/barn";
const nothing = () => null;
let program;

function bytesOf(base64) {
  const text = atob(base64.trim());
  const bytes = new Uint8Array(text.length);
  for (let i = 0; i < text.length; i += 1) bytes[i] = text.charCodeAt(i);
  return bytes;
}

const unzipped = (bytes) => new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"))).arrayBuffer();

/** Its streams are no terminal: nothing is drawn or coloured, and nothing is told while it works. */
async function start(wasm) {
  const wasmBinary = await unzipped(bytesOf(wasm));
  const { FS, cwrap } = await cropful({ wasmBinary, stdin: nothing, stdout: nothing, stderr: nothing });
  FS.mkdir(FOLDER);
  FS.chdir(FOLDER);
  return { FS, ask: cwrap("cropful_ask", "string", ["string"]) };
}

const names = (FS) => FS.readdir(FOLDER).filter((name) => FS.isFile(FS.stat(name).mode));

const same = (a, b) => a?.length === b.length && b.every((byte, i) => a[i] === byte);

function answer({ FS, ask }, { id, words, files = {} }) {
  for (const name of names(FS)) FS.unlink(name);
  for (const [name, content] of Object.entries(files)) FS.writeFile(name, content);
  const before = Object.fromEntries(names(FS).map((name) => [name, FS.readFile(name)]));
  const said = JSON.parse(ask(JSON.stringify({ words })));
  const written = names(FS).map((name) => [name, FS.readFile(name)]).filter(([name, bytes]) => !same(before[name], bytes));
  return { id, ...said, files: Object.fromEntries(written) };
}

self.onmessage = ({ data }) => {
  if (data.wasm !== undefined) {
    program = start(data.wasm);
    return;
  }
  program.then((running) => self.postMessage(answer(running, data)))
    .catch((fault) => setTimeout(() => { throw fault; }));  // the page hears of it as an error of the worker
};
