// The whole job from an empty page, and the farm that comes out of it given to the native program.
//   node whole_job.mjs PAGE PROGRAM ROOT
import assert from "node:assert/strict";
import fs from "node:fs";
import path from "node:path";
import { after, before, test } from "node:test";
import { assertSame, boxes, cropful, demo, goTo, inFolder, launch, newContext, NOW, openPage, settled, bringIn } from "./browser.mjs";

let browser;
before(async () => (browser = await launch()));
after(() => browser.close());

async function makeFarm(page) {
  await page.getByRole("button", { name: "Make a farm" }).click();
  await page.getByLabel("What is the farm called?").fill("Gull Point");
  await page.getByRole("button", { name: "Next" }).click();
  await page.getByLabel("Which birds?").selectOption("coturnix");
  await page.getByLabel("When do they hatch").fill("2027-04-05");
  await page.getByLabel("How many chicks?").fill("60");
  await page.getByLabel("To what age").fill("6 wk");
  await page.getByRole("button", { name: "Next" }).click();
  await page.getByLabel("Protein").fill("24 %");
  await page.getByLabel("A bag holds").fill("50 lb");
  await page.getByLabel("A hopper holds").fill("3 gal");
  await page.getByLabel("A drinker holds").fill("1 gal");
  await page.getByRole("button", { name: "Make the farm" }).click();
  await page.locator(".deed").first().waitFor();
}

async function takenOut(page, label, folder) {
  const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: label, exact: true }).click()]);
  await download.saveAs(path.join(folder, download.suggestedFilename()));
  return download.suggestedFilename();
}

/** The last answer that the page had to a command. */
const answered = (page, command) =>
  page.evaluate((name) => window.answered.findLast(({ words, status }) => words?.[0] === name && status === 0 && words.includes("--json")), command);

test("from an empty page to files that the program on a desk reads alike", () => inFolder(async (folder) => {
  const context = await newContext(browser, { acceptDownloads: true });
  const page = await openPage(context);
  await makeFarm(page);

  const deeds = await page.locator(".deed").count();
  assert.ok(deeds > 2, `${deeds} deeds`);
  await boxes(page).nth(0).click();
  await page.locator(".deed.done").waitFor();
  await settled(page);
  assert.equal(await page.locator(".deed.done").count(), 1);

  await goTo(page, "away");
  await page.getByLabel("Until").fill("2027-04-07T18:00");
  await page.getByText("Nobody there for").waitFor();

  await goTo(page, "mix");
  await page.getByLabel("The label's rate").fill("4 oz per 128 gal");
  await page.getByLabel("Water").fill("3 gal");
  await page.getByText(/Into 3\sgal of water stir 2.66\sg/).waitFor();

  await goTo(page, "shop");
  await page.getByText(/^BUY/).waitFor();

  await goTo(page, "flock");
  await page.locator("svg#feed").waitFor();
  await page.locator("svg#level").waitFor();

  await goTo(page, "farm");
  for (const label of ["The farm file", "The diary", "The diary as CSV", "The plan as CSV", "A calendar", "Sheets to print"]) {
    await takenOut(page, label, folder);
  }
  assert.deepEqual(fs.readdirSync(folder).sort(),
    ["farm-plan.csv", "farm.csv", "farm.diary", "farm.html", "farm.ics", "farm.toml"].sort());
  for (const command of ["today", "plan"]) {
    const { words, out } = await answered(page, command);
    assertSame(JSON.parse(out), JSON.parse(cropful(folder, ...words)), command);
  }
  const tick = JSON.parse(cropful(folder, "diary", "show", "farm.toml", "--json", "--all")).entries.find(({ what }) => what === "done");
  assert.equal(tick.at, NOW);
  assert.deepEqual(context.faults, []);
  await context.close();
}));

test("a tick is undone to the byte of what the diary says", async () => {
  const context = await newContext(browser);
  const page = await openPage(context);
  await bringIn(page, demo("saltgrass"));
  await page.locator(".deed").first().waitFor();
  const before = await page.locator(".deed").allTextContents();
  for (const n of [0, 1]) {
    await boxes(page).nth(0).click();
    await page.locator(".deed.done").nth(n).waitFor();
  }
  await page.locator(".deed .measure").last().click();
  await page.locator(".measured input").fill("2");
  await page.getByRole("button", { name: "Tick with this" }).click();
  await page.locator(".deed.done").nth(2).waitFor();
  for (let left = 3; left > 0; left -= 1) {
    await page.locator(".deed.done input").first().click();
    await page.waitForFunction((n) => document.querySelectorAll(".deed.done").length === n, left - 1);
  }
  await settled(page);
  assert.deepEqual(await page.locator(".deed").allTextContents(), before);
  await goTo(page, "flock");
  await page.getByText("Nothing is written yet").first().waitFor();
  assert.deepEqual(context.faults, []);
  await context.close();
});

test("each demo farm is answered as the program on a desk does", async () => {
  for (const name of ["saltgrass", "backyard", "larkmead", "rolling", "trips"]) {
    const context = await newContext(browser);
    const page = await openPage(context);
    await bringIn(page, demo(name));
    await page.waitForFunction(() => location.hash === "#today");
    await settled(page);
    await goTo(page, "flock");
    for (const command of ["plan", "sheet"]) {
      await page.waitForFunction((name) => window.answered.some(({ words }) => words?.[0] === name && words.includes("--json")), command);
    }
    for (const command of ["today", "plan", "sheet"]) {
      const { words, out } = await answered(page, command);
      const own = words.map((word) => (word === "farm.toml" ? demo(name) : word));
      assertSame(JSON.parse(out), JSON.parse(cropful(".", ...own)), `${name}: ${command}`);
    }
    assert.deepEqual(context.faults, []);
    await context.close();
  }
});

test("a quick question without a farm", async () => {
  const context = await newContext(browser);
  const page = await openPage(context, "quick");
  await page.getByText("Say what a hopper").waitFor();
  await page.getByLabel("A hopper holds").fill("12 L");
  await page.getByText(/bobwhite: 90\sbobwhite, day 3/).waitFor();
  await page.getByLabel("Birds").fill("a few");
  await page.locator(".fault").filter({ hasText: "birds" }).waitFor();
  assert.deepEqual(context.faults, []);
  await context.close();
});
