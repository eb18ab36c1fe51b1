// `cropful page FARM -o FOLDER/`: the page as a site, kept by the telephone from the first visit on; and as one file.
//   node site.mjs PAGE PROGRAM ROOT
import assert from "node:assert/strict";
import fs from "node:fs";
import http from "node:http";
import path from "node:path";
import { after, before, test } from "node:test";
import { pathToFileURL } from "node:url";
import { cropful, demo, inFolder, launch, PAGE } from "./browser.mjs";

const MOST_BYTES = 6e6;
const TYPES = { ".html": "text/html", ".js": "text/javascript", ".svg": "image/svg+xml", ".png": "image/png",
  ".webmanifest": "application/manifest+json" };
const parts = path.dirname(path.resolve(PAGE));

let browser;
before(async () => (browser = await launch()));
after(() => browser.close());

/** Any static web server: what lies in the folder, under its name. */
async function serve(folder) {
  const server = http.createServer((request, response) => {
    const file = path.join(folder, request.url === "/" ? "index.html" : path.basename(request.url));
    if (!fs.existsSync(file)) return response.writeHead(404).end();
    response.writeHead(200, { "content-type": TYPES[path.extname(file)] });
    return response.end(fs.readFileSync(file));
  });
  await new Promise((listening) => server.listen(0, "127.0.0.1", listening));
  const stop = () => new Promise((stopped) => {
    server.close(stopped);
    server.closeAllConnections();
  });
  return { address: `http://127.0.0.1:${server.address().port}/`, stop };
}

const makeSite = (folder, farm, ...more) => cropful(folder, "page", demo(farm), "--parts", parts, "-o", "site/", ...more);

async function shows(page, name) {
  await page.getByText(name).first().waitFor();
  await page.locator(".deed, .coming, h1").first().waitFor();
}

const kept = (page) => page.evaluate(() => navigator.serviceWorker.ready.then(() => true));

test("the page and a farm in it stay small", () => inFolder((folder) => {
  cropful(folder, "page", demo("saltgrass"), "--parts", parts, "-o", "barn.html");
  const { size } = fs.statSync(path.join(folder, "barn.html"));
  assert.ok(size <= MOST_BYTES, `${size} bytes`);
  assert.throws(() => cropful(folder, "page", demo("backyard"), "--parts", parts, "-o", "barn.html"), /there is already such a file/);
}));

test("a file with its farm and diary answers without a network", () => inFolder(async (folder) => {
  fs.copyFileSync(demo("saltgrass"), path.join(folder, "farm.toml"));
  cropful(folder, "diary", "add", "farm.toml", "--now", "2027-04-07", "--at", "2027-04-06T06:00", "--hatch", "April bobwhites", "--died", "3");
  cropful(folder, "page", "farm.toml", "--parts", parts, "-o", "barn.html");
  const context = await browser.newContext({ offline: true });
  const page = await context.newPage();
  await page.goto(pathToFileURL(path.join(folder, "barn.html")).href);
  await shows(page, "Saltgrass Bend");
  const diary = await page.evaluate(() => atob(document.getElementById("diary").textContent).slice(0, 15));
  assert.equal(diary, "SQLite format 3");
  await context.close();
}));

test("a site answers when its server is gone after the first visit", () => inFolder(async (folder) => {
  makeSite(folder, "saltgrass");
  const server = await serve(path.join(folder, "site"));
  const context = await browser.newContext();
  const page = await context.newPage();
  await page.goto(server.address);
  await shows(page, "Saltgrass Bend");
  await kept(page);
  await server.stop();
  await page.reload();
  await shows(page, "Saltgrass Bend");
  const again = await context.newPage();
  await again.goto(`${server.address}?from=home#today`);
  await shows(again, "Saltgrass Bend");
  await context.close();
}));

/** Text that only the page of one version has. */
const versionOf = (page) => page.evaluate(() => document.documentElement.dataset.version);

async function newVersion(folder, version) {
  const file = path.join(folder, "parts/page.html");
  fs.writeFileSync(file, fs.readFileSync(path.join(parts, "page.html"), "utf8").replace("<html", `<html data-version="${version}"`));
  cropful(folder, "page", demo("saltgrass"), "--parts", "parts", "-o", "site/", "--force");
}

test("a new version waits until the old one is closed", () => inFolder(async (folder) => {
  fs.cpSync(parts, path.join(folder, "parts"), { recursive: true });
  await newVersion(folder, "1");
  const server = await serve(path.join(folder, "site"));
  const context = await browser.newContext();
  const page = await context.newPage();
  await page.goto(server.address);
  await shows(page, "Saltgrass Bend");
  await kept(page);
  await newVersion(folder, "2");
  await page.reload();
  await page.evaluate(async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    await registration.update();
    while (!registration.waiting) await new Promise((later) => setTimeout(later, 50));
  });
  assert.equal(await versionOf(page), "1");
  await page.reload();
  assert.equal(await versionOf(page), "1", "the new version was taken up while the old one was in use");
  await page.goto("about:blank");
  await page.waitForTimeout(0);
  const next = await context.newPage();
  await page.close();
  await next.goto(server.address);
  await shows(next, "Saltgrass Bend");
  if ((await versionOf(next)) === "1") await next.reload();  // taken up between two starts
  assert.equal(await versionOf(next), "2");
  assert.deepEqual(await next.evaluate(async () => (await caches.keys()).length), 1);
  await server.stop();
  await context.close();
}));
