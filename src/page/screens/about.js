// What this page is: the program's version, what its figures rest on, the tables built in, and whose work it stands on.
import { useState } from "preact/hooks";
import { jsonOf, useAnswer, usePage } from "../answer.js";
import { html } from "../html.js";
import { AnswerPage } from "./answer_page.js";
import { Fault, Waiting } from "./parts.js";

/** Whose work is in this page, and under which licence. */
const LICENCES = [
  ["Clp, CoinUtils (COIN-OR)", "EPL-1.0"],
  ["Eigen", "MPL-2.0"],
  ["Boost", "BSL-1.0"],
  ["toml++", "MIT"],
  ["CLI11", "BSD-3-Clause"],
  ["JSON for Modern C++", "MIT"],
  ["{fmt}", "MIT"],
  ["fast_float", "MIT, or Apache-2.0, or BSL-1.0"],
  ["SQLite", "public domain"],
  ["Emscripten and its libraries", "MIT, or UIUC/NCSA"],
  ["Preact", "MIT"],
  ["HTM", "Apache-2.0"],
  ["idb", "ISC"],
];

/** What a plan of this farm rests on, in the program's words. */
function Rests() {
  const { record, now } = usePage();
  const { answer, waiting, trouble } = useAnswer(["plan", "farm.toml", "--json", "--now", now], record);
  const assumptions = jsonOf(answer)?.assumptions ?? [];
  return html`<${Waiting} when=${waiting} what="the plan" /><${Fault} answer=${answer} trouble=${trouble} />
    <ul class="rests">${assumptions.map(({ text, source, standing }) => html`<li key=${text}>
      <p><strong>${standing}</strong>: <span dir="auto">${text}</span></p>
      <p class="note" dir="auto">${source}</p></li>`)}</ul>`;
}

function Tables() {
  const { units } = usePage();
  const [open, show] = useState(null);
  const { answer } = useAnswer(["table", "--json"], null);
  const tables = jsonOf(answer)?.tables ?? [];
  return html`<div class="buttons">${tables.map((name) => html`<button key=${name} aria-pressed=${open === name}
      onClick=${() => show(open === name ? null : name)}>${name}</button>`)}</div>
    ${open && html`<${AnswerPage} words=${["table", open, "--units", units]} what="the table" farm=${false} sources=${false} />`}`;
}

export function About() {
  const { record } = usePage();
  const { answer } = useAnswer(["--version"], null);
  const [rests, showRests] = useState(false);
  return html`<h1>About</h1>
    <p>${answer?.out || "cropful"}</p>
    <p>It counts; it does not prescribe. For medicated feed, drugs in water, disinfectants and
      withdrawal times the product's label, your veterinarian and local law decide. Look at the birds every day, whatever
      this page says.</p>
    <p>Nothing leaves this device: farm and diary are kept in this browser, and go out as files when you take them out.</p>
    ${record.farm && html`<h2>What this farm's figures rest on</h2>
      <button aria-expanded=${rests} onClick=${() => showRests(!rests)}>${rests ? "Fold it up" : "Show every figure and its source"}</button>
      ${rests && html`<${Rests} />`}`}
    <h2>What is built in, and its sources</h2>
    <${Tables} />
    <h2>Whose work is in this page</h2>
    <table class="headed compact"><thead><tr><th scope="col">Work</th><th scope="col">Licence</th></tr></thead>
      <tbody>${LICENCES.map(([work, licence]) => html`<tr key=${work}><th scope="row">${work}</th><td>${licence}</td></tr>`)}</tbody></table>
    <p>cropful itself is free under the MIT licence. Each licence's text is at its work; where a source is owed, it is the
      one Debian distributes.</p>`;
}
