// The program's pages: blocks of words as headings, paragraphs and tables. The words are the program's, all of them but
// two: the farm's name, which stands above every screen, and the flag --sources, in whose place the page has a button.
import { unbroken } from "./figures.js";
import { html } from "./html.js";

const plain = (styled) => styled.map((run) => run.text).join("");
const SOURCES = /\s*--sources\s+lists\s+(them|it) and where each comes from\.$/;

/** Runs of words; what stands out on the terminal does here. */
export const Words = ({ words }) => html`${words.map((run) => {
  const text = unbroken(run.text.replace(SOURCES, ""));
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

/** A cell; the first one of a row under headings names the row. Roles say again what a narrow screen's style hides. */
function Cell({ words, align, label, names }) {
  return names
    ? html`<th scope="row" role="rowheader" class=${align} dir="auto"><${Words} words=${words} /></th>`
    : html`<td role="cell" class=${align} data-label=${label} dir="auto"><${Words} words=${words} /></td>`;
}

/** A table; on a narrow screen each row is a few lines, with the headings before the figures (style.css). */
function Table({ block: { columns, headed, rows } }) {
  const [head, ...body] = headed ? rows : [null, ...rows];
  const labels = head ? head.cells.map(plain) : [];
  return html`<div class="wide"><table role="table" class=${head ? "headed" : "bare"}>
    ${head && html`<thead role="rowgroup"><tr role="row">${head.cells.map((words, i) => (plain(words)
      ? html`<th scope="col" role="columnheader" class=${columns[i]}><${Words} words=${words} /></th>`
      : html`<td role="cell"></td>`))}</tr></thead>`}
    <tbody role="rowgroup">${body.map((row) => html`<tr role="row">${row.cells.map((words, i) => html`<${Cell}
      words=${words} align=${columns[i]} label=${labels[i]} names=${i === 0 && head !== null && plain(words) !== ""} />`)}</tr>`)}</tbody>
  </table></div>`;
}

function Block({ block, name }) {
  switch (block.block) {
    case "title":
      return html`<p class="title"><${Words} words=${block.time} /></p>`;
    case "two-ends":
      return plain(block.left) === name ? null : html`<p class="two-ends"><span><${Words} words=${block.left} /></span>
        <span> <${Words} words=${block.right} /></span></p>`;
    case "heading":
      return block.indent > 0
        ? html`<h3 dir="auto"><${Words} words=${block.words} /></h3>`
        : html`<h2 dir="auto"><${Words} words=${block.words} /></h2>`;
    case "paragraph":
      return plain(block.words) === name ? null : html`<${Paragraph} block=${block} />`;
    case "table":
      return html`<${Table} block=${block} />`;
    default:
      return null; // rules and empty lines are the style's; pictures are for terminals
  }
}

/** A whole page of the program about the farm of this name. */
export const Blocks = ({ page, name }) => html`<div class="blocks">${page.map((block) => html`<${Block} block=${block} name=${name} />`)}</div>`;
