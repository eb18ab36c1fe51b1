// The flock drawn: birds, feed a day with its band, the tables under the drawings, and what the diary taught.
import { useState } from "preact/hooks";
import { jsonOf, useAnswer, usePage } from "../answer.js";
import { Chart } from "../chart.js";
import { readCsv } from "../csv.js";
import { html } from "../html.js";
import { dayOf, dayWords } from "../moment.js";
import { AnswerPage } from "./answer_page.js";
import { Choice, Fault, Field, Waiting } from "./parts.js";

const KG = { lb: 0.45359237, kg: 1 }; // NIST Handbook 44, exactly

const short = (figure) => String(Number(Number(figure).toPrecision(3)));

/** The weeks of a hatch out of `plan --csv`: {names, rows, weight}; weight is the measure of its feed. */
function weeksOf(csv, hatch) {
  const [names, ...rows] = readCsv(csv);
  const weight = /\((\w+)\/d\)/.exec(names.find((name) => name.startsWith("feed (")) ?? "")?.[1] ?? "kg";
  return { names, rows: rows.filter((row) => row[0] === hatch), weight };
}

function Weeks({ names, rows }) {
  const shown = names.map((name, i) => [name, i]).slice(2).filter(([name]) => name !== "age (d)");
  const words = (name, cell) => (name === "date" ? dayWords(cell) : Number.isNaN(Number(cell)) || cell === "" ? cell : short(cell));
  return html`<table class="headed figures">
    <caption>Week by week</caption>
    <thead><tr>${shown.map(([name]) => html`<th scope="col">${name}</th>`)}</tr></thead>
    <tbody>${rows.map((row) => html`<tr>${shown.map(([name, i], n) => (n === 0
      ? html`<th scope="row" data-label=${name}>${words(name, row[i])}</th>`
      : html`<td data-label=${name} class=${Number.isNaN(Number(row[i])) ? "left" : "right"}>${words(name, row[i])}</td>`))}</tr>`)}</tbody>
  </table>`;
}

/** The age on a day, by the week of the table that begins last before it. */
function ageOn(day, { names, rows }) {
  const date = names.indexOf("date"), age = names.indexOf("age (d)");
  const [first] = rows;
  return first ? Number(first[age]) + (new Date(day) - new Date(first[date])) / 864e5 : NaN;
}

function Charts({ hatch, weeks, now }) {
  const kg = KG[weeks.weight] ?? 1;
  const marks = [{ x: ageOn(dayOf(now), weeks), name: "today" }];
  const heads = hatch.heads.map((one) => [one.age_d, one.birds]);
  const feed = hatch.days.map((one) => [one.age_d, one.feed_kg / kg]);
  const band = hatch.days.map((one) => [one.age_d, one.p05 / kg, one.p95 / kg]);
  return html`
    <h2>Birds</h2>
    <${Chart} id="birds" unit="birds" marks=${marks} lines=${[{ name: "birds", points: heads }]}
      label=${`Birds by age: ${short(heads[0][1])} first, ${short(heads.at(-1)[1])} last. The table below has every week.`} />
    <h2>Feed a day</h2>
    <p class="note">The line is what they usually eat; 9 flocks in 10 are within the band.</p>
    <${Chart} id="feed" unit=${`${weeks.weight} a day`} marks=${marks} lines=${[{ name: "feed", points: feed }]}
      band=${{ points: band }}
      label=${`Feed a day by age, in ${weeks.weight}: ${short(feed[0][1])} first, ${short(feed.at(-1)[1])} last. The table below has every week.`} />`;
}

export function Flock() {
  const { record, now } = usePage();
  const [chosen, choose] = useState("");
  const span = ["--from", "start", "--now", now];
  const sheet = useAnswer(["sheet", "farm.toml", "--json", ...span], record);
  const plan = useAnswer(["plan", "farm.toml", "--csv", ...span], record);
  const hatches = jsonOf(sheet.answer)?.hatches ?? [];
  const csv = plan.answer?.status === 0 ? plan.answer.out : null;
  const hatch = hatches.find(({ name }) => name === chosen) ?? hatches[0];
  const weeks = hatch && csv && weeksOf(csv, hatch.name);
  return html`<h1>Flock</h1>
    <${Waiting} when=${sheet.waiting || plan.waiting} />
    <${Fault} answer=${sheet.answer} trouble=${sheet.trouble} />
    ${hatches.length > 1 && html`<${Field} label="Hatch" id="which">
      <${Choice} id="which" value=${hatch.name} onChange=${choose} choices=${hatches.map(({ name }) => [name, name])} />
    </${Field}>`}
    ${weeks && hatch.heads.length > 0 && hatch.days.length > 0 && html`<${Charts} hatch=${hatch} weeks=${weeks} now=${now} />`}
    ${weeks && html`<${Weeks} ...${weeks} />`}
    <h2>What the diary says</h2>
    <${AnswerPage} words=${["diary", "show", "farm.toml"]} sources=${false} />`;
}
