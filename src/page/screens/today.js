// What to do now: alarms, then chore by chore with boxes to tick, then what is coming.
import { useEffect, useState } from "preact/hooks";
import { jsonOf, useAnswer, usePage } from "../answer.js";
import { html } from "../html.js";
import { choresOf } from "../deeds.js";
import { choreWords, dayWords, hourWords } from "../moment.js";
import { unbroken, withFigures } from "../figures.js";
import { placeOf } from "../places.js";
import { tick, untick } from "../ticks.js";
import { Deed } from "./deed.js";
import { Fault, Waiting } from "./parts.js";

function Alarms({ alarms }) {
  if (alarms.length === 0) return null;
  return html`<section class="alarms" aria-labelledby="alarms">
    <h2 id="alarms"><span aria-hidden="true">! </span>Look now</h2>
    ${alarms.map((words) => html`<p dir="auto">${unbroken(words)}</p>`)}
  </section>`;
}

function Chore({ chore, today, units, tickThese, undo }) {
  const name = chore.overdue ? "Still to be done" : choreWords(chore.at, today.now, units);
  return html`<section class="chore">
    <h2>${name}</h2>
    <ul class="deeds">
      ${chore.deeds.map((deed) => html`<${Deed} key=${deed.key} deed=${deed} units=${units}
        onTick=${(amounts) => tickThese(deed, amounts)} onUndo=${() => undo(deed)} />`)}
    </ul>
  </section>`;
}

function Coming({ coming }) {
  if (coming.length === 0) return null;
  return html`<section class="coming">
    <h2>Coming</h2>
    <dl>${coming.map((one) => html`<div key=${one.id}>
      <dt>${dayWords(one.at)}</dt>
      <dd><span dir="auto">${withFigures(one.words)}</span> <span class="place"><bdi>${placeOf(one)}</bdi></span></dd>
    </div>`)}</dl>
  </section>`;
}

export function Today() {
  const { barn, record, now, units } = usePage();
  const { answer, about, waiting, trouble } = useAnswer(["today", "farm.toml", "--json", "--now", now], record);
  const [said, say] = useState("");
  useEffect(() => say(""), [now]);
  const today = jsonOf(answer);
  const act = (change) => {
    say("");
    return change.catch((error) => say(error.message));
  };
  if (!today) return html`<h1>Today</h1><${Waiting} when=${waiting} what="what there is to do" /><${Fault} answer=${answer} trouble=${trouble} />`;
  const chores = choresOf(today, record.ticked);
  const left = chores.flatMap(({ deeds }) => deeds).filter(({ ticked, parts }) => !ticked && !parts[0].later).length;
  return html`
    <h1>Today <span class="when">${dayWords(today.now)}, ${hourWords(today.now, units)}</span></h1>
    <${Alarms} alarms=${today.alarms} />
    <div class="sides">
      <div>
        ${left === 0 && html`<p>${chores.length > 0 ? "Nothing more to do today." : "Nothing to do."}</p>`}
        ${chores.map((chore) => html`<${Chore} key=${chore.key} chore=${chore} today=${today} units=${units}
          tickThese=${(deed, amounts) => act(tick(barn, { today, about }, deed, amounts))}
          undo=${(deed) => act(untick(barn, deed))} />`)}
        ${said && html`<p class="fault" role="alert">${said}</p>`}
        <${Waiting} when=${waiting} what="what there is to do" />
      </div>
      <${Coming} coming=${today.coming} />
    </div>`;
}
