// How long the page takes from its opening to the first deed on it, and its program for each answer. Not a test: run by hand
// on an idle machine, in the folder of the page tests (build/tests/page/tests).
//   node first_answer.mjs PAGE PROGRAM ROOT
import fs from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { cropful, demo, inFolder, launch, NOW, PAGE } from "./browser.mjs";
import { openProgram } from "./program.mjs";

const RUNS = 7;
const parts = path.dirname(path.resolve(PAGE));

const median = (times) => Math.round(times.sort((a, b) => a - b)[times.length >> 1]);
const shown = (what, ms) => console.log(`${what.padEnd(60)} ${ms} ms`);

/** Runs before the page: the clock stands at `now`, and window.firstDeed is when the first deed is there, in ms from its opening. */
function watchDeeds(now) {
  const Real = Date;
  const at = Real.parse(now);
  window.Date = class extends Real {
    constructor(...all) {
      super(...(all.length > 0 ? all : [at]));
    }
    static now() {
      return at;
    }
  };
  new MutationObserver(() => {
    if (!window.firstDeed && document.querySelector(".deed")) window.firstDeed = performance.now();
  }).observe(document, { childList: true, subtree: true });
}

/** `slower`: how many times the browser slows the page down. */
async function inBrowser(browser, farm, folder, slower) {
  const file = path.join(folder, `${farm}.html`);
  cropful(folder, "page", demo(farm), "--parts", parts, "-o", file, "--force");
  const times = [];
  for (let run = 0; run < RUNS; run += 1) {
    const context = await browser.newContext({ timezoneId: "UTC" });
    const page = await context.newPage();
    await page.addInitScript(watchDeeds, `${NOW}:00Z`);
    const devtools = await context.newCDPSession(page);
    await devtools.send("Emulation.setCPUThrottlingRate", { rate: slower });
    await page.goto(pathToFileURL(file).href, { waitUntil: "commit" });
    await page.waitForFunction(() => window.firstDeed);
    times.push(await page.evaluate(() => window.firstDeed));
    await context.close();
  }
  shown(`${farm}.html from opening to the first deed, slower ${slower} times`, median(times));
}

async function eachAnswer(farm) {
  const ask = openProgram(PAGE);
  const files = { "farm.toml": fs.readFileSync(demo(farm), "utf8") };
  for (const words of [["--version"], ["today"], ["today"], ["plan"], ["buy"], ["check"], ["away", "--until", "2027-04-07T07:00"]]) {
    const [command, ...flags] = words;
    const start = performance.now();
    await ask(command.startsWith("-") ? words : [command, "farm.toml", ...flags, "--json", "--now", NOW], files);
    shown(`${farm}: ${words.join(" ")}`, Math.round(performance.now() - start));
  }
}

const browser = await launch();
await inFolder(async (folder) => {
  for (const farm of ["backyard", "saltgrass"]) for (const slower of [1, 4]) await inBrowser(browser, farm, folder, slower);
});
await browser.close();
await eachAnswer("saltgrass");
