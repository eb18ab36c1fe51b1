// Leaving: from when until when, what to leave in each vessel, and who must come.
import { useState } from "preact/hooks";
import { usePage } from "../answer.js";
import { html } from "../html.js";
import { dayOf, later } from "../moment.js";
import { AnswerPage } from "./answer_page.js";
import { Field } from "./parts.js";

export function Away() {
  const { now } = usePage();
  const [from, setFrom] = useState("");
  const [until, setUntil] = useState(`${dayOf(later(now, 1))}T18:00`);
  const words = until ? ["away", "farm.toml", "--now", now, ...(from ? ["--from", from] : []), "--until", until] : null;
  return html`<h1>Away</h1>
    <form class="question" onSubmit=${(e) => e.preventDefault()}>
      <${Field} label="From" id="from" hint="Left empty: now, with what the diary says is in the vessels. Else all are full then.">
        <input type="datetime-local" id="from" aria-describedby="from-hint" value=${from}
          onInput=${(e) => setFrom(e.target.value)} />
      </${Field}>
      <${Field} label="Until" id="until" hint="When somebody is back.">
        <input type="datetime-local" id="until" aria-describedby="until-hint" required value=${until}
          onInput=${(e) => setUntil(e.target.value)} />
      </${Field}>
    </form>
    <${AnswerPage} words=${words} what="whether all holds" />`;
}
