// Puts page.html together: node assemble.mjs SRC PROGRAM PACKAGES OUTPUT
//   SRC       src/page     PROGRAM   folder of cropful.js and cropful.wasm
//   PACKAGES  node_modules of src/page/package.json
import { createRequire } from "node:module";
import fs from "node:fs";
import path from "node:path";
import { gzipSync } from "node:zlib";

const [source, program, packages, output] = process.argv.slice(2);
const { buildSync, transformSync } = createRequire(path.join(packages, "here.js"))("esbuild");
const read = (folder, name) => fs.readFileSync(path.join(folder, name), "utf8");

const bundle = buildSync({
  entryPoints: [path.join(source, "page.js")],
  bundle: true,
  minify: true,
  format: "iife",
  target: "es2020",
  charset: "utf8",
  nodePaths: [packages],
  write: false,
}).outputFiles[0].text;
const minified = (text, loader) => transformSync(text, { minify: true, loader, charset: "utf8" }).code;

/**
 * The program in pieces, each given to the worker as soon as it is read (src/page/ask.js), which compiles them while the rest
 * of the page is read.
 */
function programIn(wasm) {
  const text = gzipSync(wasm, { level: 9 }).toString("base64");
  const pieces = text.match(/.{1,786432}/g);
  const left = (i) => pieces.length - 1 - i;
  return pieces.map((piece, i) =>
    `<script type="text/plain" class="program" data-left="${left(i)}">${piece}</script><script>readProgram()</script>`).join("\n");
}

/** Each stands once in index.html. Nothing may end the element it stands in, or begin a comment. */
const pieces = {
  "/* @style */": minified(read(source, "style.css"), "css"),
  "@program": programIn(fs.readFileSync(path.join(program, "cropful.wasm"))),
  "@worker": minified(read(program, "cropful.js") + read(source, "worker.js"), "js"),
  "/* @page */": bundle,
};

let page = read(source, "index.html");
for (const [place, text] of Object.entries(pieces)) {
  if (page.split(place).length !== 2) throw new Error(`index.html has not one ${place}`);
  if (place !== "@program" && /<\/(script|style)|<!--/i.test(text)) throw new Error(`what goes to ${place} would end its element`);
  page = page.replace(place, () => text);
}
fs.writeFileSync(output, page);
