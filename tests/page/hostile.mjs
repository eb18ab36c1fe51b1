// Names that try to be more than names: as text on every screen, nothing runs, nothing is cut off, nothing breaks.
//   node hostile.mjs PAGE PROGRAM ROOT
import assert from "node:assert/strict";
import fs from "node:fs";
import path from "node:path";
import { after, before, test } from "node:test";
import { boxes, bringIn, cropful, demo, goTo, inFolder, launch, newContext, openPage, record, settled } from "./browser.mjs";

const HARD = {
  markup: `<img src=x onerror="alert(1)"><script>alert(2)</script></script><!--`,
  quotes: `"two" 'one' \`three\` \\ \${4} & &amp;`,
  letters: "\u05d7\u05d5\u05d5\u05d4 \u0645\u0632\u0631\u0639\u0629 \u{1F423}\u{1F469}\u200d\u{1F33E} \u0130\u0131\u00df",
  long: "Wonderfullylongwordwithoutanyplacetobreak".repeat(4),
};
const SCREENS = ["today", "away", "mix", "shop", "flock", "farm", "part/farm", "part/hatch/0", "part/feed/starter", "part/supplement/tonic", "text", "about"];

let browser;
before(async () => (browser = await launch()));
after(() => browser.close());

/** The demo farm with a hard name in every place for one, as far as it stays one farm. */
function hardFarm(folder, hard) {
  let n = 0;
  const house = JSON.stringify([...hard].slice(0, 50).join("")); // a table's name has at most 60 letters, a title 200
  const text = fs.readFileSync(demo("saltgrass"), "utf8")
    .replace(/^(name|title) = ".*?"/gm, (_, key) => `${key} = ${JSON.stringify(`${hard} ${(n += 1)}`)}`)
    .replace("[house.tank]", () => `[house.${house}]`).replaceAll('house = "tank"', () => `house = ${house}`);
  const file = path.join(folder, "hard.toml");
  fs.writeFileSync(file, text);
  return file;
}

const elements = (page) => page.evaluate(() => ["script", "img", "iframe", "object"].map((name) => document.querySelectorAll(name).length));

for (const [name, hard] of Object.entries(HARD)) {
  test(`names with ${name}`, () => inFolder(async (folder) => {
    const context = await newContext(browser, { viewport: { width: 320, height: 640 } });
    const page = await openPage(context);
    const there = await elements(page);
    const file = hardFarm(folder, hard);
    await bringIn(page, file);
    await page.locator(".deed").first().waitFor();
    for (const screen of SCREENS) {
      await goTo(page, screen);
      assert.deepEqual(await elements(page), there, screen);
      const width = await page.evaluate(() => document.documentElement.scrollWidth);
      assert.ok(width <= 320, `${screen} is ${width} px wide`);
    }
    const words = hard.replaceAll("\u00a0", " ");
    const shown = async () => (await page.locator("body").textContent()).replaceAll("\u00a0", " ");
    await goTo(page, "today");
    assert.ok((await shown()).includes(`${words} 1`), "the farm's name");
    assert.equal(await page.title(), `Today · ${hard} 1`);
    await boxes(page).first().click();
    await page.locator(".deed.done").first().waitFor();
    await page.locator(".deed.done input").first().click();
    await page.waitForFunction(() => !document.querySelector(".deed.done"));
    await goTo(page, "part/hatch/0");
    assert.equal(await page.locator("#f-name").inputValue(), `${hard} 8`);
    assert.deepEqual(context.faults, []);
    await context.close();
  }));
}

test("typed names are written so that the program reads them back", () => inFolder(async (folder) => {
  const context = await newContext(browser);
  const page = await openPage(context);
  await bringIn(page, demo("saltgrass"));
  await page.locator(".deed").first().waitFor();
  for (const hard of Object.values(HARD)) {
    await goTo(page, "part/hatch/0");
    await page.locator("#f-name").fill(hard);
    await page.waitForFunction((words) => document.querySelector("pre").textContent.includes(words), JSON.stringify(hard).slice(1, -1));
    await settled(page);
    const kept = await record(page);
    assert.equal(kept.draft, null);
    fs.writeFileSync(path.join(folder, "farm.toml"), kept.farm);
    const plan = JSON.parse(cropful(folder, "plan", "farm.toml", "--json"));
    assert.ok(plan.hatches.some((hatch) => hatch.name === hard), hard);
  }
  await context.close();
}));

test("what the program refuses is said at its field, kept as typed, and the farm goes on as it was", async () => {
  const context = await newContext(browser);
  const page = await openPage(context);
  await bringIn(page, demo("saltgrass"));
  await page.locator(".deed").first().waitFor();
  await settled(page);
  const deeds = await page.locator(".deed").allTextContents();
  const faulty = async (part, field, typed, words) => {
    await goTo(page, part);
    const input = page.locator(`#f-${field}`);
    const was = await input.inputValue();
    await input.fill(typed);
    await page.locator(`#f-${field}-fault`).filter({ hasText: words }).waitFor();
    await goTo(page, "today");
    await settled(page);
    assert.deepEqual(await page.locator(".deed").allTextContents(), deeds);
    await page.locator(".notice").filter({ hasText: "fault" }).waitFor();
    await goTo(page, part);
    assert.equal(await page.locator(`#f-${field}`).inputValue(), typed, "what was typed is lost");
    await page.locator(`#f-${field}`).fill(was);
    await page.waitForFunction(() => !document.querySelector(".fault"));
    await settled(page);
  };
  await faulty("part/feed/starter", "protein", "two hundred", "expected");
  await faulty("part/hatch/0", "chicks", "many", "expected");
  await faulty("part/hatch/0", "name", "turned \u202e about", "turn");
  await goTo(page, "today");
  assert.equal(await page.locator(".notice").count(), 0);
  const text = await record(page);
  assert.equal(text.farm, fs.readFileSync(demo("saltgrass"), "utf8"));
  assert.deepEqual(context.faults, []);
  await context.close();
});

test("a faulty file is refused as it comes in, in the program's words", () => inFolder(async (folder) => {
  const context = await newContext(browser);
  const page = await openPage(context);
  const file = path.join(folder, "bad.toml");
  fs.writeFileSync(file, "[farm]\nname = 3\n");
  await bringIn(page, file);
  await page.locator(".said").filter({ hasText: "bad.toml: hatch: found nothing" }).waitFor();
  assert.equal(await record(page), null);
  await context.close();
}));
