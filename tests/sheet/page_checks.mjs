// What any sheet must keep, whatever it says. Every check returns its findings; none is good.
// Outside authorities: html-validate (HTML standard), axe-core (WCAG rules), poppler's pdfinfo and pdftotext.
import { execFileSync } from "node:child_process";
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import axe from "axe-core";
import { HtmlValidate } from "html-validate";
import { desktop, phone, withPage } from "./browser.mjs";

const validator = new HtmlValidate({
  extends: ["html-validate:recommended"],
  rules: { "no-trailing-whitespace": "off", "long-title": "off", "no-raw-characters": "off" },
});

export async function validHtml(_browser, html) {
  const report = await validator.validateString(html);
  return report.results.flatMap((r) => r.messages.map((m) => `html-validate ${m.ruleId}, line ${m.line}: ${m.message}`));
}

const screens = { phone: [phone, "dark"], desktop: [desktop, "light"] };

/** axe-core takes seconds for each look: a sheet is looked at on the screens named. */
export const axeOn = (...names) => async (browser, html) => {
  const findings = [];
  for (const name of names) {
    const [viewport, colorScheme] = screens[name];
    const found = await withPage(
      browser,
      html,
      async (page) => {
        await page.evaluate(() => document.querySelectorAll("details").forEach((d) => (d.open = true)));
        await page.evaluate(axe.source);
        const result = await page.evaluate(() => globalThis.axe.run(document));
        return result.violations;
      },
      { viewport, colorScheme },
    );
    for (const v of found) findings.push(`axe ${v.id} (${name}, ${colorScheme}): ${v.nodes[0].html.slice(0, 120)}`);
  }
  return findings;
};

/** Nothing sticks out to the side: on a phone of 360 and of 320 px, on a desktop; figures unfolded too. */
export async function noSideways(browser, html) {
  const findings = [];
  for (const width of [320, phone.width, desktop.width]) {
    const wide = await withPage(
      browser,
      html,
      (page) =>
        page.evaluate(() => {
          document.querySelectorAll("details").forEach((d) => (d.open = true));
          return document.documentElement.scrollWidth;
        }),
      { viewport: { width, height: 740 } },
    );
    if (wide > width) findings.push(`scrolls sideways at ${width} px: ${wide} px wide`);
  }
  return findings;
}

/** On paper no element is wider or higher than its box, none leaves the page, and no word leaves its drawing. */
export async function fitsPaper(browser, html) {
  const findings = [];
  for (const [paper, width] of [["Letter", 816 - 106], ["A4", 793 - 106]]) {
    const found = await withPage(
      browser,
      html,
      async (page) => {
        await page.emulateMedia({ media: "print" });
        return page.evaluate((paperWidth) => {
          const found = [];
          const name = (e) => `<${e.tagName.toLowerCase()}> ${e.textContent.trim().slice(0, 40)}`;
          for (const e of document.querySelectorAll("main *:not(svg *)")) {
            const box = e.getBoundingClientRect();
            if (box.width === 0) continue;
            if (box.right > paperWidth + 1 || box.left < -1) found.push(`leaves the paper: ${name(e)}`);
            const inline = getComputedStyle(e).display === "inline";
            if (!inline && e.tagName !== "svg" && (e.scrollWidth > e.clientWidth + 1 || e.scrollHeight > e.clientHeight + 1))
              found.push(`is larger than its box: ${name(e)}`);
          }
          for (const text of document.querySelectorAll("svg text")) {
            const words = text.getBoundingClientRect(), drawing = text.ownerSVGElement.getBoundingClientRect();
            if (words.left < drawing.left - 0.5 || words.right > drawing.right + 0.5 || words.top < drawing.top - 0.5 ||
                words.bottom > drawing.bottom + 0.5)
              found.push(`a word leaves its drawing: ${text.textContent}`);
          }
          return found;
        }, width);
      },
      { viewport: { width, height: 900 } },
    );
    findings.push(...found.map((f) => `${paper}: ${f}`));
  }
  return findings;
}

/** Paper is white and ink dark also where the screen is dark. */
export async function lightInPrint(browser, html) {
  const [paper, ink] = await withPage(
    browser,
    html,
    async (page) => {
      await page.emulateMedia({ media: "print", colorScheme: "dark" });
      return page.evaluate(() => {
        const { backgroundColor, color } = getComputedStyle(document.documentElement);
        return [backgroundColor, color];
      });
    },
    { colorScheme: "dark" },
  );
  return paper === "rgb(255, 255, 255)" && ink === "rgb(17, 17, 17)" ? [] : [`prints ${ink} on ${paper}`];
}

/** It asks the network for nothing, runs nothing, and its figures unfold without a script. */
export async function standsAlone(browser, html) {
  const findings = [];
  if (/<script|\son\w+=|javascript:/i.test(html)) findings.push("holds a script");
  await withPage(
    browser,
    html,
    async (page, asked) => {
      const details = page.locator("details").first();
      await details.locator("summary").click();
      if (!(await details.locator("table").isVisible())) findings.push("figures do not unfold without a script");
      await page.waitForTimeout(200);
      for (const what of asked) findings.push(`asks for ${what}`);
    },
    { javaScriptEnabled: false },
  );
  return findings;
}

/** Without white space, and without pictures that the machine's fonts may lack. */
const squashed = (text) => text.replace(/[\s\p{Extended_Pictographic}\uFE0F]+/gu, "");

/** The pages of a printed sheet as text, and pdfinfo's page size in points. */
async function printed(browser, html, format) {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), "cropful-pdf-"));
  try {
    const file = path.join(folder, "sheet.pdf");
    await withPage(browser, html, (page) => page.pdf({ path: file, format, preferCSSPageSize: true }), {
      javaScriptEnabled: false,
    });
    const info = execFileSync("pdfinfo", [file], { encoding: "utf8" });
    const text = execFileSync("pdftotext", ["-raw", file, "-"], { encoding: "utf8" });
    const pages = text.split("\f").slice(0, -1);
    const count = Number(/^Pages:\s+(\d+)/m.exec(info)[1]);
    if (count !== pages.length) throw new Error(`pdfinfo counts ${count} pages, pdftotext ${pages.length}`);
    return { pages, size: /^Page size:\s+([\d.]+) x ([\d.]+)/m.exec(info).slice(1).map(Number) };
  } finally {
    fs.rmSync(folder, { recursive: true });
  }
}

const SIZES = { Letter: [612, 792], A4: [595.28, 841.89] }; // points; ISO 216 and ANSI Y14.1

/** Each sheet starts a page and heads each of its pages; nothing that stands in a table, list or heading is lost. */
export async function prints(browser, html) {
  const findings = [];
  const { titles, farm, words } = await withPage(browser, html, (page) =>
    page.evaluate(() => ({
      titles: [...document.querySelectorAll("section.sheet h2")].map((e) => e.textContent),
      farm: document.querySelector(".running .farm")?.textContent ?? "",
      words: [...document.querySelectorAll("main :is(h2, h3, th, td, caption, li, dt, dd, figcaption)")]
        .filter((e) => !e.closest("details"))
        .map((e) => e.textContent),
    })),
  );
  for (const [format, size] of Object.entries(SIZES)) {
    const { pages, size: printedSize } = await printed(browser, html, format);
    if (size.some((points, i) => Math.abs(points - printedSize[i]) > 1.5)) {
      findings.push(`${format}: pages of ${printedSize} points`);
    }
    let sheet = -1;
    for (const [i, text] of pages.entries()) {
      // pdftotext gives the page's number first, then what stands at the right of its top
      const head = squashed(text.slice(0, 600).replace(/^\d+\n/, "")).replace(squashed(farm), "");
      const next = titles[sheet + 1] !== undefined && squashed(titles[sheet + 1]);
      const starts = next && head.startsWith(next); // all pages of a sheet have its name at their top
      if (starts) sheet += 1;
      else if (sheet < 0 || !head.startsWith(squashed(titles[sheet]))) {
        findings.push(`${format}: page ${i + 1} starts with no sheet's name: ${text.slice(0, 60)}`);
      }
    }
    if (sheet + 1 !== titles.length) findings.push(`${format}: ${sheet + 1} sheets start a page, of ${titles.length}`);
    const all = squashed(pages.join(""));
    const wanted = new Map();
    for (const one of words.map(squashed)) wanted.set(one, (wanted.get(one) ?? 0) + 1);
    wanted.delete("");
    for (const [one, count] of wanted) {
      const there = all.split(one).length - 1; // table heads stand there more often
      if (there < count) findings.push(`${format}: ${there} times on paper, not ${count}: ${one.slice(0, 80)}`);
    }
  }
  return findings;
}

export const checks = { validHtml, noSideways, fitsPaper, lightInPrint, standsAlone, prints };
