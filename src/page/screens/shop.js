// What to buy; and where the farm file tells of a store, when to go.
import { useState } from "preact/hooks";
import { usePage } from "../answer.js";
import { html } from "../html.js";
import { tablesOf } from "../toml_lines.js";
import { AnswerPage } from "./answer_page.js";

export function Shop() {
  const { record, now } = usePage();
  const hasStore = tablesOf(record.farm).some(({ path }) => path.length === 1 && path[0] === "store");
  const [trips, setTrips] = useState(hasStore);
  const words = ["buy", "farm.toml", "--now", now, ...(trips && hasStore ? ["--plan"] : [])];
  return html`<h1>Shop</h1>
    ${hasStore && html`<div class="row" role="group" aria-label="What to see">
      <button aria-pressed=${trips} onClick=${() => setTrips(true)}>When to go</button>
      <button aria-pressed=${!trips} onClick=${() => setTrips(false)}>How much in all</button>
    </div>`}
    <${AnswerPage} words=${words} what=${trips && hasStore ? "when to go" : "what to buy"} />`;
}
