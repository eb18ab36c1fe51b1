// Sheets on paper: how many pages, and how large what is read at arm's length. Pages as poppler's pdfinfo counts them;
// the bars are the project's own: 8 pages for the demo farm (on the days asked), 60 for 52 hatches, 14 points for what
// is to be done.
import { execFileSync } from "node:child_process";
import fs from "node:fs";
import path from "node:path";
import { withPage } from "./browser.mjs";

async function pagesOf(browser, html, folder, format) {
  const file = path.join(folder, "paper.pdf");
  await withPage(browser, html, (page) => page.pdf({ path: file, format, preferCSSPageSize: true }), { javaScriptEnabled: false });
  return Number(/^Pages:\s+(\d+)/m.exec(execFileSync("pdfinfo", [file], { encoding: "utf8" }))[1]);
}

/** Points of the smallest letters of what is to be done, in print. */
async function pointsOf(browser, html) {
  return withPage(browser, html, async (page) => {
    await page.emulateMedia({ media: "print" });
    const pixels = await page.evaluate(() =>
      Math.min(...[...document.querySelectorAll(".days .tick, .days .when")].map((e) => parseFloat(getComputedStyle(e).fontSize))));
    return pixels * 0.75; // 96 px and 72 points an inch
  });
}

/** The demo farm's barn with room for all, and a hatch every week for a year that stays for more than another. */
function weekly(saltgrass) {
  const farm = saltgrass.slice(0, saltgrass.indexOf("[[hatch]]")).replace(/^count = \d+/gm, "count = 400");
  return `${farm}
[[hatch]]
name = "Weekly"
kind = "bobwhite"
date = 2026-06-01
chicks = 240
every = "1 wk"
times = 52
feeding = [{ feed = "starter", from = "0 d" }, { feed = "grower", from = "6 wk" }]
until = "60 wk"
courses = [{ supplement = "tonic", from = "0 d", days = 5 }]
housing = [
    { from = "0 d", house = "tank", hopper = "tube", drinker = "jar", drinkers = 2 },
    { from = "3 wk", house = "pen", hopper = "trough", hoppers = 2, drinker = "bell", drinkers = 2 },
]
`;
}

export async function paperFindings(browser, cropful, root, folder) {
  const findings = [];
  const saltgrass = path.join(root, "rations/farms/saltgrass.toml");
  for (const now of ["2027-04-01T12:00", "2027-05-05T05:00", "2027-05-28T05:00", "2027-06-20T05:00", "2027-08-05T05:00"]) {
    const html = cropful("sheet", saltgrass, "--now", now);
    for (const format of ["A4", "Letter"]) {
      const pages = await pagesOf(browser, html, folder, format);
      if (pages > 8) findings.push(`the demo farm at ${now} takes ${pages} pages of ${format}`);
    }
    const points = await pointsOf(browser, html);
    if (!(points >= 13.99)) findings.push(`what is to be done at ${now} is set in ${points} points`);
  }
  const many = path.join(folder, "weekly.toml");
  fs.writeFileSync(many, weekly(fs.readFileSync(saltgrass, "utf8")));
  const pages = await pagesOf(browser, cropful("sheet", many, "--now", "2027-05-24T06:00"), folder, "Letter");
  if (pages > 60) findings.push(`52 hatches take ${pages} pages`);
  if (pages < 52) findings.push(`52 hatches take ${pages} pages: not all are there`);
  return findings;
}
