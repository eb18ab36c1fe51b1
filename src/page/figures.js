// How figures stand in a line: never broken from what they count, and those of a measure larger.
import { html } from "./html.js";

const MEASURES = "lb|oz|kg|g|mg|L|mL|gal|qt|pt|fl\\soz|cups?|tbsp|tsp|bags?|packs?";
const FIGURE = new RegExp(`(\\d[\\d.,]*(?:\\s\\d+/\\d+|/\\d+)?\\s(?:${MEASURES})(?![\\w/]))`, "u");

/** A number keeps to the word behind it, where that is short enough to fit on any line. */
export const unbroken = (text) =>
  text.replace(/(\d[\d.,/:]*|\bfl) (?=[^\s]{1,10}(?:\s|$))/gu, "$1\u00a0");

/** The program's words with amounts as <b class="figure">. */
export function withFigures(text) {
  return unbroken(text)
    .split(FIGURE)
    .map((part, i) => (i % 2 ? html`<b class="figure">${part}</b>` : part));
}
