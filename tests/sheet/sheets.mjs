// Makes sheets of the demo farms and of a farm with hard names, and holds them to all checks.
//   node sheets.mjs PROGRAM ROOT               the program's sheets
//   node sheets.mjs PROGRAM ROOT --self-test   spoiled sheets, each of which a check must notice
import { execFileSync } from "node:child_process";
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { launch, withPage } from "./browser.mjs";
import { agreesWithPlan } from "./chart_checks.mjs";
import { axeOn, checks } from "./page_checks.mjs";
import { paperFindings } from "./paper.mjs";

const [program, root, mode] = process.argv.slice(2);
const HARD = `<script>alert(1)</script> & "two" 'one', \u{1F423}`;

const cropful = (...words) => execFileSync(program, words, { encoding: "utf8", maxBuffer: 1 << 28 });

function sheetOf(...words) {
  return {
    html: cropful("sheet", ...words, "--charts", "--sources"),
    plan: JSON.parse(cropful("plan", ...words, "--json")),
    sheet: JSON.parse(cropful("sheet", ...words, "--json")),
  };
}

/** A demo farm with a hard name in every place for a name. */
function hardFarm(folder) {
  const file = path.join(folder, "hard.toml");
  const text = fs.readFileSync(path.join(root, "rations/farms/saltgrass.toml"), "utf8");
  let hatches = 0;
  const named = text.replace(/^(\[\[hatch\]\]\n)?(name|title) = ".*"/gm, (_, hatch, key) =>
    hatch ? `${hatch}name = ${JSON.stringify(`${HARD} ${(hatches += 1)}`)}` : `${key} = ${JSON.stringify(HARD)}`);
  fs.writeFileSync(file, named);
  return file;
}

/** The farm of `cropful new` with the demo visits in its diary: heads counted, birds that eat less, an alarm. */
function farmWithDiary(folder) {
  const file = path.join(folder, "visited.toml");
  cropful("new", file);
  cropful("diary", "import", file, path.join(root, "rations/farms/visits.csv"));
  return file;
}

async function namesAreText(browser, html) {
  const findings = [];
  await withPage(browser, html, async (page, asked) => {
    const seen = await page.evaluate(() => ({
      scripts: document.querySelectorAll("script").length,
      h1: document.querySelector("h1").textContent,
      h2: document.querySelector("h2").textContent,
      feed: document.querySelector("table.feeds tbody th").textContent,
      text: document.body.textContent,
      title: document.title,
    }));
    if (seen.scripts > 0 || asked.length > 0) findings.push("a name runs as a script");
    for (const place of ["h1", "feed"]) if (seen[place] !== HARD) findings.push(`${place} reads ${seen[place]}`);
    if (!seen.h2.startsWith(`${HARD} 1`)) findings.push(`h2 reads ${seen.h2}`);
    if (!seen.title.startsWith(HARD)) findings.push(`the title reads ${seen.title}`);
    if (!seen.text.includes(` of ${HARD} into `)) findings.push("the supplement's name is not there");
  });
  return findings;
}

async function allFindings(browser, { html, plan, sheet }, screens) {
  const findings = await agreesWithPlan(browser, html, plan, sheet);
  for (const check of [...Object.values(checks), axeOn(...screens)]) findings.push(...(await check(browser, html)));
  return findings;
}

/** [what is spoiled, how, the check that must notice it] */
function spoilings({ html, plan, sheet }) {
  const change = (from, to) => {
    const spoiled = html.replace(from, to);
    if (spoiled === html) throw new Error(`nothing to spoil: ${from}`);
    return spoiled;
  };
  const agrees = (browser, text) => agreesWithPlan(browser, text, plan, sheet);
  const firstPath = (series) => new RegExp(`(<path class="[^"]*" d="M[\\d.]+ )[\\d.]+([^"]*" data-series="${series}")`);
  return [
    ["a bird more in the drawing", change(firstPath("birds"), "$171.00$2"), agrees],
    ["another day's feed", change(firstPath("central"), "$1100.00$2"), agrees],
    ["a fuller hopper", change(firstPath("content"), "$160.00$2"), agrees],
    ["another scale", change(/data-y-to="[\d.]+"/, 'data-y-to="999"'), agrees],
    ["a fill left out", change(/<div class="tick">(?:(?!<\/div>).)*top up(?:(?!<\/div>).)*<\/div>/s, ""), agrees],
    ["a bag more", change(/(\d+) of 50 lb<\/td>/, "99 of 50 lb</td>"), agrees],
    ["a table's figure", change(/(<td class="figure">)\d+(<\/td>)/, "$17$2"), agrees],
    ["an element too wide", change("<h3>Feed</h3>", '<h3 style="width:1500px">Feed</h3>'), checks.noSideways],
    ["the same on paper", change("<h3>Feed</h3>", '<h3 style="width:1500px">Feed</h3>'), checks.fitsPaper],
    ["a word outside its drawing", change(/(class="label" x=")[\d.]+/, "$1400.00"), checks.fitsPaper],
    ["an end tag lost", change("</figcaption>", ""), checks.validHtml],
    ["a drawing without a name", change(/<title id="hatch-1-birds-title">.*?<\/title>/, ""), axeOn("desktop")],
    ["pale words", change("--soft: #444", "--soft: #bbb"), axeOn("desktop")],
    ["pale words in the dark", change("--soft: #c8c8c8", "--soft: #555"), axeOn("phone")],
    ["a picture from elsewhere", change("<main>", '<main><img src="http://127.0.0.1:9/x.png" alt="x">'), checks.standsAlone],
    ["a script", change("<main>", "<main><script>1</script>"), checks.standsAlone],
    ["dark paper", change("@media screen and (prefers", "@media (prefers"), checks.lightInPrint],
    ["pages without their names", change("display: table-header-group; break-inside: avoid; f", "display: block; f"), checks.prints],
    ["a hatch that starts no page", change("break-before: page", "break-before: auto"), checks.prints],
    ["words cut off", change("<h3>Give them room</h3>", '<h3 style="display:none">Give them room</h3>'), checks.prints],
  ];
}

async function captionsAreThere(browser, html) {
  return withPage(browser, html, (page) =>
    page.evaluate(() =>
      [...document.querySelectorAll("table")]
        .filter((t) => !t.caption?.textContent || t.querySelector("th:not([scope])") || !t.tHead)
        .map((t) => `a table without caption, head or scope: ${t.textContent.trim().slice(0, 60)}`),
    ),
  );
}
checks.captionsAreThere = captionsAreThere;

async function selfTest(browser) {
  const demo = sheetOf(path.join(root, "rations/farms/saltgrass.toml"), "--to", "2027-05-06");
  const list = spoilings(demo);
  list.push(["a missing caption", demo.html.replace(/<caption>.*?<\/caption>/, ""), captionsAreThere]);
  let unnoticed = 0;
  for (const [what, html, check] of list) {
    const found = await check(browser, html);
    if (found.length > 0) continue;
    unnoticed += 1;
    console.log(`not noticed: ${what}`);
  }
  console.log(`${list.length} spoiled sheets, ${unnoticed} not noticed`);
  return unnoticed;
}

async function test(browser) {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), "cropful-hard-"));
  const hard = hardFarm(folder);
  const asked = {
    saltgrass: [path.join(root, "rations/farms/saltgrass.toml"), "--to", "2027-05-12"],
    backyard: [path.join(root, "rations/farms/backyard.toml"), "--to", "2027-04-12"],
    flags: ["--kind", "bobwhite", "--chicks", "90", "--date", "2027-04-05", "--until", "3 wk", "--hopper", "12 L",
      "--drinker", "1 gal", "--bag", "50 lb"],
    bare: ["--kind", "pheasant", "--birds", "7", "--age", "20 wk", "--date", "2027-04-05", "--until", "21 wk"],
    diary: [farmWithDiary(folder), "--from", "2027-05-01", "--to", "2027-05-15"],
    "hard names": [hard, "--to", "2027-05-06"],
  };
  let bad = 0;
  for (const [name, words] of Object.entries(asked)) {
    const made = sheetOf(...words);
    const screens = name === "saltgrass" ? ["phone", "desktop"] : [name === "hard names" ? "phone" : "desktop"];
    const findings = await allFindings(browser, made, screens);
    if (name === "hard names") findings.push(...(await namesAreText(browser, made.html)));
    for (const finding of findings) console.log(`${name}: ${finding}`);
    bad += findings.length;
  }
  const paper = await paperFindings(browser, cropful, root, folder);
  for (const finding of paper) console.log(`paper: ${finding}`);
  bad += paper.length;
  fs.rmSync(folder, { recursive: true });
  console.log(`${Object.keys(asked).length} sheets, ${bad} findings`);
  return bad;
}

const browser = await launch();
const bad = mode === "--self-test" ? await selfTest(browser) : await test(browser);
await browser.close();
process.exit(bad > 0 ? 1 : 0);
