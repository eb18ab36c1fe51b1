// The program in a worker, behind emscripten's cropful.js. It comes in pieces, {piece, left}: base64 of what is gzipped, and
// how many are left. Each other message is a question, {id, words, files}: a command line, and files by name, texts or bytes,
// that lie alone in the folder it is asked in.
// The answer is {id, status, out, page, err, files}, with the files that the command wrote, as bytes.

const FOLDER = "/barn";
const nothing = () => null;

function bytesOf(base64) {
  if (Uint8Array.fromBase64) return Uint8Array.fromBase64(base64);
  const text = atob(base64);
  const bytes = new Uint8Array(text.length);
  for (let i = 0; i < text.length; i += 1) bytes[i] = text.charCodeAt(i);
  return bytes;
}

const zipped = new TransformStream(undefined, { highWaterMark: Infinity });
const pieces = zipped.writable.getWriter();
const wasm = new Response(zipped.readable.pipeThrough(new DecompressionStream("gzip")), {
  headers: { "Content-Type": "application/wasm" },
});

function take({ piece, left }) {
  pieces.write(bytesOf(piece));
  if (left === 0) pieces.close();
}

/** Its streams are no terminal: nothing is drawn or coloured, and nothing is told while it works. */
async function start() {
  const instantiateWasm = (imports, done) => {
    WebAssembly.instantiateStreaming(wasm, imports).then(({ instance, module }) => done(instance, module), stop);
    return {};
  };
  const { FS, cwrap } = await cropful({ instantiateWasm, stdin: nothing, stdout: nothing, stderr: nothing });
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

/** The page hears of it as an error of the worker. */
const stop = (fault) => setTimeout(() => { throw fault; });

const program = start();

self.onmessage = ({ data }) => {
  if (data.piece !== undefined) take(data);
  else program.then((running) => self.postMessage(answer(running, data))).catch(stop);
};
