// The page under test in Debian's Chromium, with the network cut off. PAGE is page.html, or the address of bridge.mjs.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { chromium } from "playwright-core";

export const [PAGE, PROGRAM, ROOT] = process.argv.slice(2);
export const isFile = !PAGE.startsWith("http");
export const ADDRESS = isFile ? pathToFileURL(path.resolve(PAGE)).href : PAGE;
export const NOW = "2027-04-05T05:00"; // of the page's clock, and of the program's where they are compared

export const FLAGS = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];
export const launch = () => chromium.launch({ executablePath: "/usr/bin/chromium", args: FLAGS });

export const demo = (name) => path.join(ROOT, "rations/farms", `${name}.toml`);

/** The native program's words about files in a folder. */
export const cropful = (folder, ...words) =>
  execFileSync(path.resolve(PROGRAM), words, { cwd: folder, encoding: "utf8", maxBuffer: 1 << 28, env: { ...process.env, CROPFUL_NOW: NOW } });

export async function inFolder(use) {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), "cropful-page-"));
  try {
    return await use(folder);
  } finally {
    fs.rmSync(folder, { recursive: true });
  }
}

/** Runs before the page: answers of the program to each command line stay in window.answered; window.toCome counts those to come. */
function listenToWorker() {
  window.answered = [];
  window.toCome = 0;
  const Real = Worker;
  window.Worker = class extends Real {
    constructor(...all) {
      super(...all);
      const asked = new Map();
      const post = this.postMessage.bind(this);
      this.postMessage = (message) => {
        if (message.words) {
          asked.set(message.id, message.words);
          window.toCome += 1;
        }
        post(message);
      };
      this.addEventListener("message", ({ data }) => {
        window.answered.push({ words: asked.get(data.id), status: data.status, out: data.out });
        window.toCome -= 1;
      });
    }
  };
}

/** A context of its own: empty store, fixed clock in UTC, no network but the bridge; `faults` collects what goes wrong. */
export async function newContext(browser, options = {}) {
  const context = await browser.newContext({ timezoneId: "UTC", locale: "en-GB", viewport: { width: 390, height: 844 }, ...options });
  context.faults = [];
  context.setDefaultTimeout(120_000); // ms, on a machine that has other things to do
  await context.addInitScript(listenToWorker);
  if (isFile) await context.setOffline(true);
  context.on("request", (request) => {
    const url = request.url();
    if (!url.startsWith(ADDRESS.split("#")[0]) && !/^(blob|data):/.test(url)) context.faults.push(`asked the network for ${url}`);
  });
  return context;
}

export async function openPage(context, screen = "today", moment = NOW) {
  const page = await context.newPage();
  page.on("pageerror", (error) => context.faults.push(error.message));
  page.on("dialog", (dialog) => {
    context.faults.push(`a dialog: ${dialog.message()}`);
    dialog.dismiss();
  });
  await page.clock.setFixedTime(new Date(`${moment}:00Z`));
  await page.goto(`${ADDRESS}#${screen}`);
  await page.locator("h1").first().waitFor();
  return page;
}

/** Goes to a screen and waits until it has its answer. */
export async function goTo(page, screen) {
  await page.evaluate((hash) => (location.hash = hash), screen);
  await settled(page);
}

/** Until every question that was asked is answered, and the page has shown it. */
export const settled = (page) =>
  page.evaluate(async () => {
    const frame = () => new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));
    for (let quiet = 0; quiet < 20; quiet = window.toCome > 0 ? 0 : quiet + 1) await frame();
  });

/** Brings files in by the Farm screen: paths. */
export async function bringIn(page, ...files) {
  await goTo(page, "farm");
  await page.locator("input[type=file]").setInputFiles(files);
  await page.waitForFunction(() => location.hash === "#today" || document.querySelector(".said:not(:empty), .ask button"));
}

export const record = (page) =>
  page.evaluate(() => new Promise((resolve, reject) => {
    const opened = indexedDB.open("cropful");
    opened.onerror = () => reject(opened.error);
    opened.onsuccess = () => {
      const got = opened.result.transaction("barns").objectStore("barns").get("barn");
      got.onsuccess = () => {
        opened.result.close();
        resolve(got.result ? { ...got.result, diary: got.result.diary && [...got.result.diary] } : null);
      };
    };
  }));

/** Same keys, words and counts; figures to 1e-9, since another C library rounds otherwise. */
export function assertSame(a, b, where = "answer") {
  if (typeof a === "number" && typeof b === "number") {
    assert.ok(Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a), Math.abs(b)), `${where}: ${a}, not ${b}`);
  } else if (a && b && typeof a === "object" && typeof b === "object") {
    assert.deepEqual(Object.keys(a), Object.keys(b), where);
    for (const key of Object.keys(a)) assertSame(a[key], b[key], `${where}.${key}`);
  } else {
    assert.equal(a, b, where);
  }
}

export const boxes = (page) => page.locator(".deed:not(.done) input[type=checkbox]");
