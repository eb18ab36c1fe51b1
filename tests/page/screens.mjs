// Every screen by axe-core, in dark and light, narrow and wide; what can be touched is large enough, nothing is cut off, and
// all of it goes by keyboard.   node screens.mjs PAGE PROGRAM ROOT
import assert from "node:assert/strict";
import fs from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import { after, before, test } from "node:test";
import { bringIn, cropful, demo, goTo, inFolder, launch, newContext, openPage, ROOT, settled } from "./browser.mjs";

const AXE = fs.readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const SCREENS = ["today", "away", "mix", "shop", "flock", "farm", "part/farm", "part/hatch/0", "part/feed/starter", "part/hopper/tube",
  "part/drinker/jar", "part/house/tank", "text", "quick", "about"];
const WIDTHS = [320, 1280];
const SCHEMES = ["light", "dark"];
const TOUCH = 48; // px, the least height of what can be touched
const ALARMED = "2027-05-08T07:00"; // the farm with visits has alarms then

let browser;
before(async () => (browser = await launch()));
after(() => browser.close());

/** What axe-core finds: rule and first place. */
async function axeFindings(page) {
  await page.evaluate(AXE);
  const { violations } = await page.evaluate(() => axe.run(document, { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] }));
  return violations.map(({ id, nodes }) => `${id}: ${nodes[0].html.slice(0, 120)} (${nodes[0].failureSummary})`);
}

/** What can be touched and is lower than TOUCH; links within a sentence excepted, and boxes whose line is the target. */
const lowTargets = (page) =>
  page.evaluate((least) => [...document.querySelectorAll("a, button, input:not([type=checkbox], [type=file]), select, textarea, summary, .deed > label, .file")]
    .filter((one) => one.checkVisibility() && !one.closest("p:not(:has(.back))"))
    .filter((one) => one.getBoundingClientRect().height < least - 0.5)
    .map((one) => `${one.tagName} ${one.textContent.trim().slice(0, 30)}: ${one.getBoundingClientRect().height} px high`), TOUCH);

/** What reaches over the right edge of the screen, but for what scrolls within it. */
const cutOff = (page) =>
  page.evaluate(() => {
    if (document.documentElement.scrollWidth <= innerWidth) return [];
    return [...document.querySelectorAll("body *")].filter((one) => one.getBoundingClientRect().right > innerWidth + 1)
      .map((one) => `${one.tagName}.${one.className} to ${one.getBoundingClientRect().right} px`).slice(0, 3);
  });

/** Text smaller than 15 px, and notes aside, than 18. */
const smallText = (page) =>
  page.evaluate(() => [...document.querySelectorAll("main *")]
    .filter((one) => [...one.childNodes].some((node) => node.nodeType === 3 && node.textContent.trim() !== "") && one.checkVisibility())
    .filter((one) => parseFloat(getComputedStyle(one).fontSize) < 14.9)
    .map((one) => `${one.tagName} ${one.textContent.slice(0, 30)}`));

async function withVisits(page, folder) {
  cropful(folder, "new", "spring.toml");
  cropful(folder, "diary", "import", "spring.toml", path.resolve(ROOT, "rations/farms/visits.csv"));
  await bringIn(page, path.join(folder, "spring.toml"), path.join(folder, "spring.diary"));
  await page.waitForFunction(() => location.hash === "#today");
}

for (const width of WIDTHS) {
  for (const colorScheme of SCHEMES) {
    test(`${width} px, ${colorScheme}`, () => inFolder(async (folder) => {
      const context = await newContext(browser, { viewport: { width, height: 720 }, colorScheme });
      const page = await openPage(context, "today", ALARMED);
      const look = async (name) => {
        assert.deepEqual(await axeFindings(page), [], `axe on ${name}`);
        assert.deepEqual(await lowTargets(page), [], `low on ${name}`);
        assert.deepEqual(await cutOff(page), [], `cut off on ${name}`);
        assert.deepEqual(await smallText(page), [], `small on ${name}`);
      };
      await look("the empty page");
      await page.getByRole("button", { name: "Make a farm" }).click();
      await look("the guided start");
      await withVisits(page, folder);
      for (const screen of SCREENS) {
        await goTo(page, screen);
        await look(screen);
      }
      await goTo(page, "today");
      await page.locator(".alarms").waitFor();
      await page.locator(".measure").first().click();
      await look("today with a count");
      assert.deepEqual(context.faults, []);
      await context.close();
    }));
  }
}

test("each check finds what is wrong", async () => {
  const context = await newContext(browser, { viewport: { width: 320, height: 720 } });
  const page = await openPage(context);
  await page.evaluate(() => document.querySelector("main").insertAdjacentHTML("beforeend",
    `<button style="min-height:0;height:20px;color:#ccc;background:#fff;font-size:9px">pale words</button><div style="width:900px">wide</div>`));
  assert.notDeepEqual(await axeFindings(page), []);
  assert.notDeepEqual(await lowTargets(page), []);
  assert.notDeepEqual(await cutOff(page), []);
  assert.notDeepEqual(await smallText(page), []);
  await context.close();
});

test("by keyboard alone: to a deed, ticked, undone, and to another screen", async () => {
  const context = await newContext(browser);
  const page = await openPage(context);
  await bringIn(page, demo("saltgrass"));
  await page.locator(".deed").first().waitFor();
  await settled(page);
  const focused = () => page.evaluate(() => document.activeElement.matches(".deed input"));
  await page.evaluate(() => document.querySelector("main").focus());
  for (let steps = 0; steps < 10 && !(await focused()); steps += 1) await page.keyboard.press("Tab");
  assert.ok(await focused(), "no box has the focus");
  await page.keyboard.press("Space");
  await page.locator(".deed.done").waitFor();
  assert.ok(await focused(), "the focus was lost by a tick");
  await page.keyboard.press("Space");
  await page.waitForFunction(() => !document.querySelector(".deed.done"));
  const link = page.getByRole("link", { name: "Away" });
  for (let steps = 0; steps < 40 && !(await link.evaluate((one) => one === document.activeElement)); steps += 1) await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await page.getByRole("heading", { name: "Away" }).waitFor();
  assert.equal(await page.evaluate(() => document.activeElement.tagName), "MAIN");
  await context.close();
});

test("nothing moves where less motion is asked for", async () => {
  const context = await newContext(browser, { reducedMotion: "reduce" });
  const page = await openPage(context);
  const moving = await page.evaluate(() => [...document.querySelectorAll("*")].filter((one) => {
    const style = getComputedStyle(one);
    return parseFloat(style.transitionDuration) > 0 || style.animationName !== "none";
  }).length);
  assert.equal(moving, 0);
  await context.close();
});
