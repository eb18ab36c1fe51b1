// What is kept: over reloads and crashes, between two tabs, where the store is refused or full, and by a newer page.
//   node kept.mjs PAGE PROGRAM ROOT
import assert from "node:assert/strict";
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { after, before, test } from "node:test";
import { pathToFileURL } from "node:url";
import { chromium } from "playwright-core";
import { boxes, bringIn, cropful, demo, FLAGS, goTo, inFolder, isFile, launch, newContext, NOW, openPage, PAGE, record, settled } from "./browser.mjs";

const CRASHES = 50, KILLS = 5;

let browser;
before(async () => (browser = await launch()));
after(() => browser.close());

async function withFarm(context, name = "saltgrass") {
  const page = await openPage(context);
  await bringIn(page, demo(name));
  await page.locator(".deed").first().waitFor();
  await settled(page);
  return page;
}

/** The entries of a kept record, as the native program reads its diary. */
const entriesOf = ({ farm, diary }) => inFolder(async (folder) => {
  fs.writeFileSync(path.join(folder, "farm.toml"), farm);
  if (diary) fs.writeFileSync(path.join(folder, "farm.diary"), Buffer.from(diary));
  return JSON.parse(cropful(folder, "diary", "show", "farm.toml", "--json", "--all")).entries;
});

/** Runs before the page: says each deed aloud as it is shown ticked. */
function tellTicks() {
  const told = new Set();
  const look = () => {
    for (const line of document.querySelectorAll(".deed.done .words")) {
      const one = document.querySelector(".when").textContent + line.textContent;
      if (!told.has(one)) console.log(`ticked ${line.textContent}`);
      told.add(one);
    }
  };
  new MutationObserver(look).observe(document, { subtree: true, childList: true, attributes: true });
}

test("a reload shows the farm, its ticks and its diary again", async () => {
  const context = await newContext(browser);
  const page = await withFarm(context);
  await boxes(page).first().click();
  await page.locator(".deed.done").waitFor();
  const shown = await page.locator(".deed").allTextContents();
  await page.reload();
  await page.locator(".deed.done").waitFor();
  await settled(page);
  assert.deepEqual(await page.locator(".deed").allTextContents(), shown);
  await context.close();
});

/** A day later each time, so that there is something to tick. */
const dayAfter = (days) => new Date(Date.parse(`${NOW}:00Z`) + days * 864e5).toISOString().slice(0, 16);

test(`${CRASHES} tabs that crash while they save: what was shown as ticked is there`, async () => {
  const context = await newContext(browser);
  await context.addInitScript(tellTicks);
  let told = [];
  const listened = (page) => {
    page.on("console", (message) => message.text().startsWith("ticked ") && told.push(message.text().slice(7).replaceAll("\u00a0", " ")));
    return page;
  };
  await context.newPage(); // so that the context is never without a page: it might forget its store
  let page = listened(await withFarm(context));
  const counts = { shown: 0, lost: 0 };
  for (let n = 0; n < CRASHES; n += 1) {
    await page.clock.setFixedTime(new Date(`${dayAfter(n)}:00Z`));
    await page.evaluate(() => document.dispatchEvent(new Event("visibilitychange"))); // the page looks at the clock
    await settled(page);
    told = [];
    const session = await context.newCDPSession(page);
    const crashed = page.waitForEvent("crash");
    await boxes(page).first().click();
    if (n % 5 === 4) await page.locator(".deed.done").first().waitFor(); // just shown
    else for (let frames = 0; frames < n * 2; frames += 1) await page.evaluate(() => new Promise(requestAnimationFrame));
    session.send("Page.crash").catch(() => {});
    await crashed;
    const shown = told;
    await page.close();
    page = listened(await openPage(context, "today", dayAfter(n)));
    await page.locator(".deed").first().waitFor();
    const kept = await record(page);
    const words = kept.ticked.filter(({ day }) => day === dayAfter(n).slice(0, 10)).map(({ deed }) => deed.words);
    counts.shown += shown.length;
    counts.lost += shown.filter((one) => !words.includes(one)).length;
    const notes = (await entriesOf(kept)).map(({ note }) => note);
    for (const { deed } of kept.ticked) assert.ok(notes.includes(deed.id), `${deed.id} is not in the diary`);
  }
  assert.ok(counts.shown >= CRASHES / 5, `only ${counts.shown} ticks were shown`);
  assert.equal(counts.lost, 0);
  await context.close();
});

test(`${KILLS} browsers killed after a tick`, async () => {
  const profile = fs.mkdtempSync(path.join(os.tmpdir(), "cropful-profile-"));
  const start = async () => {
    const context = await chromium.launchPersistentContext(profile, { executablePath: "/usr/bin/chromium", args: FLAGS, timezoneId: "UTC" });
    context.faults = [];
    return context;
  };
  /** The browser's own processes: those whose command line names this profile. */
  const kill = () => {
    for (const pid of fs.readdirSync("/proc").filter((name) => /^\d+$/.test(name))) {
      try {
        if (fs.readFileSync(`/proc/${pid}/cmdline`, "utf8").includes(`--user-data-dir=${profile}`)) process.kill(Number(pid), "SIGKILL");
      } catch {
        // it has ended by itself
      }
    }
  };
  try {
    let context = await start();
    await (await withFarm(context)).close();
    for (let n = 0; n < KILLS; n += 1) {
      const page = await openPage(context, "today", dayAfter(n));
      await boxes(page).first().click();
      await page.locator(".deed.done").first().waitFor();
      const shown = await page.locator(".deed.done .words").allTextContents();
      kill();
      await context.close().catch(() => {});
      context = await start();
      const again = await openPage(context, "today", dayAfter(n));
      await again.locator(".deed.done").first().waitFor();
      assert.deepEqual(await again.locator(".deed.done .words").allTextContents(), shown);
    }
    await context.close();
  } finally {
    fs.rmSync(profile, { recursive: true, force: true });
  }
});

test("two tabs: each sees what the other ticked, and neither loses a tick", async () => {
  const context = await newContext(browser);
  const one = await withFarm(context);
  const two = await openPage(context);
  await boxes(two).nth(1).waitFor();
  await boxes(one).nth(0).click();
  await one.locator(".deed.done").waitFor();
  await two.locator(".deed.done").waitFor();
  await boxes(two).nth(0).click();
  await two.locator(".deed.done").nth(1).waitFor();
  await one.locator(".deed.done").nth(1).waitFor();
  assert.equal((await record(one)).ticked.length, 2);
  assert.deepEqual(context.faults, []);
  await context.close();
});

test("two tabs that tick at once, each blind to the other: the second is done again, and says so", async () => {
  const context = await newContext(browser);
  const one = await withFarm(context);
  await context.addInitScript(() => {
    window.BroadcastChannel = class { // tells nobody, and hears nothing
      postMessage() {}
    };
  });
  const two = await openPage(context);
  await boxes(two).nth(1).waitFor();
  await settled(two);
  await boxes(one).nth(0).click();
  await one.locator(".deed.done").waitFor();
  await boxes(two).nth(1).click();
  await two.locator(".notice").filter({ hasText: "done again" }).waitFor();
  await two.locator(".deed.done").nth(1).waitFor();
  const kept = await record(two);
  assert.equal(kept.ticked.length, 2);
  const done = (await entriesOf(kept)).filter(({ what }) => what === "done").map(({ note }) => note);
  assert.equal(new Set(done).size, 2);
  await context.close();
});

const REFUSED = {
  "refused when it is opened": () => (IDBFactory.prototype.open = () => { throw new DOMException("no", "SecurityError"); }),
  "full": () => (IDBObjectStore.prototype.put = () => { throw new DOMException("no room", "QuotaExceededError"); }),
};
const SAID = { "refused when it is opened": "keeps nothing", full: "no room left" };

for (const [name, spoil] of Object.entries(REFUSED)) {
  test(`a store that is ${name}: the page says so and goes on`, async () => {
    const context = await newContext(browser);
    await context.addInitScript(spoil);
    const page = await withFarm(context);
    await page.locator(".notice").filter({ hasText: SAID[name] }).waitFor();
    await boxes(page).first().click();
    await page.locator(".deed.done").waitFor();
    await goTo(page, "shop");
    await page.getByText(/^BUY/).waitFor();
    assert.deepEqual(context.faults, []);
    await context.close();
  });
}

test("what a newer page wrote is left as it is; what an older one wrote is read", async () => {
  const context = await newContext(browser);
  const page = await withFarm(context);
  const put = (schema, drop) => page.evaluate(([number, without]) => new Promise((resolve) => {
    const opened = indexedDB.open("cropful");
    opened.onsuccess = () => {
      const store = opened.result.transaction("barns", "readwrite").objectStore("barns");
      store.get("barn").onsuccess = ({ target }) => {
        const changed = { ...target.result, schema: number };
        for (const key of without) delete changed[key];
        store.put(changed, "barn").onsuccess = () => (opened.result.close(), resolve());
      };
    };
  }), [schema, drop]);
  await put(99, []);
  await page.reload();
  await page.locator(".notice").filter({ hasText: "newer page" }).waitFor();
  assert.equal((await record(page)).schema, 99);
  await put(0, ["draft", "ticked", "carried"]);
  await page.reload();
  await page.locator(".deed").first().waitFor();
  assert.equal(await page.locator(".notice").count(), 0);
  await context.close();
});

test("a diary goes out as CSV and comes in again", () => inFolder(async (folder) => {
  const context = await newContext(browser, { acceptDownloads: true });
  const page = await withFarm(context);
  await boxes(page).first().click();
  await page.locator(".deed.done").waitFor();
  await goTo(page, "farm");
  const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "The diary as CSV" }).click()]);
  const csv = path.join(folder, "again.csv");
  await download.saveAs(csv);
  fs.appendFileSync(csv, "2027-04-05T04:30,April bobwhites,died,3,birds,,0\n");
  await bringIn(page, csv);
  await page.getByText("Taken in.").waitFor();
  const entries = await entriesOf(await record(page));
  assert.deepEqual(entries.map(({ what }) => what), ["died", "done"]);
  fs.writeFileSync(csv, "no,such,columns\n");
  await page.locator("input[type=file]").setInputFiles(csv);
  await page.locator(".said").filter({ hasText: "expected" }).waitFor();
  assert.equal((await entriesOf(await record(page))).length, 2);
  await context.close();
}));

/** The page with a farm in it, as `cropful page` writes it. */
function carrying(folder, name) {
  const file = path.join(folder, "barn.html");
  const html = fs.readFileSync(PAGE, "utf8");
  const empty = 'id="farm" data-name="">';
  assert.ok(html.includes(empty));
  fs.writeFileSync(file, html.replace(empty, `id="farm" data-name="${name}.toml">${fs.readFileSync(demo(name), "base64")}`));
  return pathToFileURL(file).href;
}

test("a page that brings a farm: into an empty store; else it asks, once", { skip: !isFile && "needs page.html" }, () => inFolder(async (folder) => {
  const context = await newContext(browser);
  const page = await context.newPage();
  await page.clock.setFixedTime(new Date(`${NOW}:00Z`));
  await page.goto(carrying(folder, "saltgrass"));
  await page.locator(".deed").first().waitFor();
  await settled(page);
  const first = await record(page);
  assert.deepEqual([first?.name, first?.carried === first?.farm], ["saltgrass.toml", true], "what it brings is kept before any tick");
  await boxes(page).first().click();
  await page.locator(".deed.done").waitFor();
  const open = async (name) => {
    await page.goto("about:blank");
    await page.goto(carrying(folder, name));
    await page.locator("h1").first().waitFor();
    await settled(page);
  };
  await open("backyard");
  const question = page.getByRole("region", { name: "Which farm?" });
  await question.waitFor();
  await page.getByRole("button", { name: "Stay with what is kept" }).click();
  await question.waitFor({ state: "hidden" });
  assert.equal((await record(page)).name, "saltgrass.toml");
  await open("backyard");
  assert.equal(await question.count(), 0, "it asks again");
  assert.equal(await page.locator(".deed.done").count(), 1);
  await open("trips");
  await page.getByRole("button", { name: "with an empty diary" }).click();
  await question.waitFor({ state: "hidden" });
  const kept = await record(page);
  assert.deepEqual([kept.name, kept.diary, kept.ticked.length], ["trips.toml", null, 0]);
  await page.evaluate(() => (location.hash = "farm"));
  await page.getByRole("button", { name: "Take the farm off this device" }).click();
  await page.getByRole("button", { name: "Yes, take them off" }).click();
  await page.getByText("Bring in a farm file").waitFor();
  await page.reload();
  await settled(page);
  assert.equal((await record(page)).farm, "", "the farm is back");
  await context.close();
}));
