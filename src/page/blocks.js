// The program's pages: blocks of words as headings, paragraphs and tables. The words are the program's, all of them.
import { unbroken } from "./figures.js";
import { html } from "./html.js";

const plain = (styled) => styled.map((run) => run.text).join("");

/** Runs of words; what stands out on the terminal does here. */
export const Words = ({ words }) => html`${words.map((run) => {
  const text = unbroken(run.text);
  return run.look === "plain" ? text : html`<strong class=${run.look}>${text}</strong>`;
})}`;

/** How a paragraph begins: "  ! " before what warns, "  ok  " before what holds, or only room. */
function Paragraph({ block }) {
  const mark = plain(block.first).trim();
  const warns = mark === "!" || block.first.some((run) => run.look === "alarm");
  const depth = Math.min(2, Math.floor(/^ */.exec(plain(block.first))[0].length / 2));
  return html`<p class=${`depth-${depth} ${mark ? "marked" : ""} ${warns ? "warns" : ""}`} dir="auto">
    ${mark && html`<span class="mark">${mark} </span>`}<span><${Words} words=${block.words} /></span>
  </p>`;
}

const Cell = ({ cell, align, as: Tag = "td", label }) => html`<${Tag} class=${align} data-label=${label}
  scope=${Tag === "th" ? "row" : null} dir="auto"><${Words} words=${cell} /></${Tag}>`;

/**
 * A table. Where its columns are headed, a narrow screen shows each row as a card with the headings before the figures
 * (style.css). The first cell of a row names it.
 */
function Table({ block }) {
  const [head, ...rows] = block.headed ? block.rows : [null, ...block.rows];
  const labels = head ? head.cells.map(plain) : [];
  return html`<table class=${`${head ? "headed" : "bare"} columns-${block.columns.length}`}>
    ${head && html`<thead><tr>${head.cells.map((cell, i) => html`<th scope="col" class=${block.columns[i]}>
      <${Words} words=${cell} /></th>`)}</tr></thead>`}
    <tbody>${rows.map((row) => html`<tr>${row.cells.map((cell, i) => html`<${Cell} cell=${cell}
      align=${block.columns[i]} as=${i === 0 && head ? "th" : "td"} label=${labels[i]} />`)}</tr>`)}</tbody>
  </table>`;
}

function Block({ block }) {
  switch (block.block) {
    case "title":
      return html`<p class="two-ends title"><strong><${Words} words=${block.name} /></strong> <span><${Words} words=${block.time} /></span></p>`;
    case "two-ends":
      return html`<p class="two-ends"><span><${Words} words=${block.left} /></span> <span><${Words} words=${block.right} /></span></p>`;
    case "heading":
      return block.indent > 0
        ? html`<h3 dir="auto"><${Words} words=${block.words} /></h3>`
        : html`<h2 dir="auto"><${Words} words=${block.words} /></h2>`;
    case "paragraph":
      return html`<${Paragraph} block=${block} />`;
    case "table":
      return html`<${Table} block=${block} />`;
    default:
      return null; // rules and empty lines are the style's; pictures are for terminals
  }
}

/** A whole page of the program. */
export const Blocks = ({ page }) => html`<div class="blocks">${page.map((block) => html`<${Block} block=${block} />`)}</div>`;
