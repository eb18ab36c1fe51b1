// The flock drawn: birds, feed a day with its band, how full hoppers are; the weeks as a table; what the diary taught.
import { useState } from "preact/hooks";
import { jsonOf, useAnswer, usePage } from "../answer.js";
import { Chart } from "../chart.js";
import { readCsv } from "../csv.js";
import { html } from "../html.js";
import { dateWords, dayOf, dayWords } from "../moment.js";
import { AnswerPage } from "./answer_page.js";
import { Choice, Fault, Field, Waiting } from "./parts.js";

const KG = { lb: 0.45359237, kg: 1 }; // NIST Handbook 44, exactly
const FILLS = 8; // at most so many are drawn

const short = (figure) => String(Number(Number(figure).toPrecision(3)));

/** The weeks of a hatch out of `plan --csv`: {names, rows, weight}; weight is the measure of its feed. */
function weeksOf(csv, hatch) {
  const [names, ...rows] = readCsv(csv);
  const weight = /\((\w+)\/d\)/.exec(names.find((name) => name.startsWith("feed (")) ?? "")?.[1] ?? "kg";
  return { names, rows: rows.filter((row) => row[0] === hatch), weight };
}

const isFigure = (cell) => cell !== "" && !Number.isNaN(Number(cell));

function Weeks({ names, rows }) {
  const week = names.indexOf("week"), date = names.indexOf("date");
  const shown = names.map((name, i) => [name, i]).filter(([name, i]) => i > week && name !== "age (d)");
  return html`<div class="wide" role="region" aria-label="Week by week" tabindex="0"><table class="headed compact">
    <caption>Week by week</caption>
    <thead><tr><th scope="col">wk</th><th scope="col">from</th>${shown.map(([name]) => html`<th scope="col">${name}</th>`)}</tr></thead>
    <tbody>${rows.map((row) => html`<tr key=${row[week]}>
      <th scope="row">${row[week]}</th><td>${dateWords(row[date]).replace(" ", "\u00a0")}</td>
      ${shown.map(([name, i]) => html`<td key=${name} class=${isFigure(row[i]) ? "right" : "left"} dir="auto">
        ${isFigure(row[i]) ? short(row[i]) : row[i]}</td>`)}</tr>`)}</tbody>
  </table></div>`;
}

/** The age on a day, in days. */
const ageOn = (day, { names, rows: [first] }) =>
  Number(first[names.indexOf("age (d)")]) + (new Date(day) - new Date(first[names.indexOf("date")])) / 864e5;

function Charts({ hatch, weeks, now }) {
  const kg = KG[weeks.weight] ?? 1;
  const marks = [{ x: ageOn(dayOf(now), weeks), name: "today" }];
  const heads = hatch.heads.map((one) => [one.age_d, one.birds]);
  const feed = hatch.days.map((one) => [one.age_d, one.feed_kg / kg]);
  const band = hatch.days.map((one) => [one.age_d, one.p05 / kg, one.p95 / kg]);
  return html`
    <h2>Birds alive</h2>
    <${Chart} id="birds" marks=${marks} lines=${[{ name: "birds", points: heads }]}
      label=${`From ${short(heads[0][1])} to ${short(heads.at(-1)[1])} birds; the table has every week.`} />
    <h2>Feed a day, ${weeks.weight}</h2>
    <${Chart} id="feed" marks=${marks} lines=${[{ name: "usually", points: feed }]} band=${{ name: "hungry", points: band }}
      label=${`From ${short(feed[0][1])} to ${short(feed.at(-1)[1])} ${weeks.weight} a day, and the band that holds 9 flocks in 10; the table has every week.`} />`;
}

/** How full the hoppers of one stage are: filled at a chore, less what is usually eaten until the next. */
function Level({ plan, name }) {
  const hatch = plan.hatches.find((one) => one.name === name);
  const stage = hatch?.stages.find(({ hoppers }) => hoppers?.fills?.length > 0);
  if (!stage) return null;
  const fills = stage.hoppers.fills.slice(0, FILLS);
  const days = (fill) => (new Date(fill.until) - new Date(fill.do_at)) / 864e5;
  const full = (fill) => 100 * fill.share_of_full;
  const left = (fill) => full(fill) * Math.max(0, 1 - fill.used_kg / fill.content_kg);
  const points = fills.flatMap((fill) => [[fill.age_d, full(fill)], [fill.age_d + days(fill), left(fill)]]);
  return html`
    <h2>In each <bdi>${stage.hoppers.hopper}</bdi>, % of full</h2>
    <${Chart} id="level" lines=${[{ name: "", points }]} dots=${fills.map((fill) => [fill.age_d, full(fill)])}
      label=${`Filled ${fills.length} times, to ${fills.map((fill) => short(full(fill))).join(", ")} % of full.`} />
    <p class="note">A triangle is a fill at a chore: ${fills.map((fill) => dayWords(fill.do_at)).join(", ")}.</p>`;
}

export function Flock() {
  const { record, now } = usePage();
  const [chosen, choose] = useState("");
  const span = ["--from", "start", "--now", now];
  const sheet = useAnswer(["sheet", "farm.toml", "--json", ...span], record);
  const csv = useAnswer(["plan", "farm.toml", "--csv", ...span], record);
  const plan = useAnswer(["plan", "farm.toml", "--json", "--now", now], record);
  const hatches = jsonOf(sheet.answer)?.hatches ?? [];
  const hatch = hatches.find(({ name }) => name === chosen) ?? hatches[0];
  const weeks = hatch && csv.answer?.status === 0 && weeksOf(csv.answer.out, hatch.name);
  const isDrawn = weeks && weeks.rows.length > 0 && hatch.heads.length > 0 && hatch.days.length > 0;
  const ahead = jsonOf(plan.answer);
  return html`<h1>Flock</h1>
    <${Waiting} when=${sheet.waiting || csv.waiting} what="the flock" />
    <${Fault} answer=${sheet.answer} trouble=${sheet.trouble} />
    ${hatches.length > 1 && html`<${Field} label="Hatch" id="which">
      <${Choice} id="which" value=${hatch.name} onChange=${choose} choices=${hatches.map(({ name }) => [name, name])} />
    </${Field}>`}
    ${isDrawn && html`<${Charts} hatch=${hatch} weeks=${weeks} now=${now} />`}
    ${hatch && ahead && html`<${Level} plan=${ahead} name=${hatch.name} />`}
    ${isDrawn && html`<${Weeks} ...${weeks} />`}
    <h2>What the diary says</h2>
    ${record.diary
      ? html`<${AnswerPage} words=${["diary", "show", "farm.toml", "--now", now]} what="what the diary teaches" sources=${false} />`
      : html`<p>Nothing is written yet. Tick what is done on <a href="#today">Today</a>, and weigh what goes in: that teaches
          how these birds eat.</p>`}`;
}
