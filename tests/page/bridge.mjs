// The page without its wasm, for work on its screens: the pieces put together as page.html has them, and a worker that
// asks the native door (tests/page/native_door.cpp) over this server.
//   node bridge.mjs DOOR [PORT] [FARM]
import { spawn } from "node:child_process";
import fs from "node:fs";
import http from "node:http";
import os from "node:os";
import path from "node:path";
import { createRequire } from "node:module";

const SOURCE = path.resolve(import.meta.dirname, "../../src/page");
const esbuild = createRequire(path.join(SOURCE, "package.json"))("esbuild");
const [door, port = "8016", farm = ""] = process.argv.slice(2);

/** A worker as the page starts it, with the bridge in place of the program. */
const worker = (origin) => `
  const text = (bytes) => { let all = ""; for (const b of bytes) all += String.fromCharCode(b); return btoa(all); };
  const bytes = (words) => Uint8Array.from(atob(words), (c) => c.charCodeAt(0));
  onmessage = async ({ data }) => {
    if (!data.words) return;
    const files = {};
    for (const [name, content] of Object.entries(data.files)) {
      files[name] = text(typeof content === "string" ? new TextEncoder().encode(content) : content);
    }
    const answer = await (await fetch("${origin}/ask", { method: "POST", body: JSON.stringify({ words: data.words, files }) })).json();
    for (const name of Object.keys(answer.files)) answer.files[name] = bytes(answer.files[name]);
    postMessage({ id: data.id, ...answer });
  };`;

async function pageHtml(origin) {
  const bundle = await esbuild.build({ entryPoints: [path.join(SOURCE, "page.js")], bundle: true, write: false, format: "iife", charset: "utf8" });
  const put = { "/* @style */": fs.readFileSync(path.join(SOURCE, "style.css"), "utf8"),
    "/* @page */": bundle.outputFiles[0].text.replaceAll("</script", "<\\/script"),
    'id="farm" data-name="">': `id="farm" data-name="${farm && path.basename(farm)}">${farm && fs.readFileSync(farm, "base64")}`,
    "@program": "", "@worker": worker(origin) };
  const template = fs.readFileSync(path.join(SOURCE, "index.html"), "utf8");
  return template.replace(/\/\* @style \*\/|\/\* @page \*\/|id="farm" data-name="">|@program|@worker/g, (name) => put[name]);
}

/** One question in a fresh folder with these files: the answer, and the files that it wrote. */
function answer({ words, files }) {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), "cropful-bridge-"));
  for (const [name, content] of Object.entries(files)) fs.writeFileSync(path.join(folder, path.basename(name)), Buffer.from(content, "base64"));
  return new Promise((resolve, reject) => {
    const child = spawn(door, [], { cwd: folder });
    let out = "";
    child.stdout.on("data", (part) => (out += part));
    child.on("error", reject);
    child.on("close", () => {
      const written = {};
      for (const name of fs.readdirSync(folder)) {
        const content = fs.readFileSync(path.join(folder, name)).toString("base64");
        if (content !== files[name]) written[name] = content;
      }
      fs.rmSync(folder, { recursive: true });
      resolve({ ...JSON.parse(out), files: written });
    });
    child.stdin.end(`${JSON.stringify({ words })}\n`);
  });
}

const bodyOf = async (request) => {
  let all = "";
  for await (const part of request) all += part;
  return all;
};

http.createServer(async (request, response) => {
  try {
    if (request.method === "POST") return response.end(JSON.stringify(await answer(JSON.parse(await bodyOf(request)))));
    response.setHeader("content-type", "text/html; charset=utf-8");
    response.end(await pageHtml(`http://${request.headers.host}`));
  } catch (error) {
    response.statusCode = 500;
    response.end(String(error));
  }
}).listen(Number(port), "127.0.0.1", () => console.log(`http://127.0.0.1:${port}/`));
