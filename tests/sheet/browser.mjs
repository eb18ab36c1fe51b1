// Debian's Chromium through playwright-core: one browser, a fresh page for each look at a sheet.
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { chromium } from "playwright-core";

const FLAGS = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

export const launch = () => chromium.launch({ executablePath: "/usr/bin/chromium", args: FLAGS });

export const phone = { width: 360, height: 740 };
export const desktop = { width: 1280, height: 900 };

/**
 * What `look(page, asked)` makes of a page that shows `html`; `asked` lists what the page asks of the network, which is
 * cut off.
 */
export async function withPage(browser, html, look, options = {}) {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), "cropful-sheet-"));
  const file = path.join(folder, "sheet.html");
  fs.writeFileSync(file, html);
  const context = await browser.newContext(options);
  try {
    const asked = [];
    await context.route("**/*", (route) => {
      if (route.request().url() === `file://${file}`) return route.continue();
      asked.push(route.request().url());
      return route.abort();
    });
    const page = await context.newPage();
    page.on("dialog", (dialog) => {
      asked.push(`a dialog: ${dialog.message()}`);
      dialog.dismiss();
    });
    await page.goto(`file://${file}`);
    return await look(page, asked);
  } finally {
    await context.close();
    fs.rmSync(folder, { recursive: true });
  }
}
