// What to stir in: the courses of the hatches, or a product into so much water, such as one drinker holds.
import { useState } from "preact/hooks";
import { usePage } from "../answer.js";
import { html } from "../html.js";
import { itemsOf } from "../toml_lines.js";
import { AnswerPage } from "./answer_page.js";
import { Choice, Field } from "./parts.js";

const titleOf = ({ name, values }) => values.title ?? name;

/** The label's figures of a product, as flags. */
const flagsOf = ({ values }) => [
  "--rate", values.rate,
  ...(values.spoon ? ["--spoon", values.spoon] : []),
  ...(values.sodium ? ["--sodium", values.sodium] : []),
];

function Courses({ hatches }) {
  const { now } = usePage();
  const [hatch, choose] = useState("");
  return html`
    ${hatches.length > 1 && html`<${Field} label="Whose water" id="hatch">
      <${Choice} id="hatch" value=${hatch} onChange=${choose}
        choices=${[["", "All hatches"], ...hatches.map((name) => [name, name])]} />
    </${Field}>`}
    <${AnswerPage} words=${["mix", "farm.toml", "--now", now, ...(hatch ? ["--hatch", hatch] : [])]} what="what to stir in" />`;
}

function ThisDrinker({ products, drinkers }) {
  const { units } = usePage();
  const [product, setProduct] = useState(products[0]?.name ?? "");
  const [rate, setRate] = useState("");
  const [water, setWater] = useState(drinkers[0]?.values.volume ?? (units === "us" ? "1 gal" : "4 L"));
  const chosen = products.find((one) => one.name === product);
  const flags = chosen ? flagsOf(chosen) : rate.trim() ? ["--rate", rate.trim()] : null;
  const words = flags && water.trim() ? ["mix", ...flags, "--water", water.trim(), "--units", units] : null;
  return html`
    <form class="question" onSubmit=${(e) => e.preventDefault()}>
      ${products.length > 0 && html`<${Field} label="Product" id="product">
        <${Choice} id="product" value=${product} onChange=${setProduct}
          choices=${[...products.map((one) => [one.name, titleOf(one)]), ["", "Another, by its label"]]} />
      </${Field}>`}
      ${!chosen && html`<${Field} label="The label's rate" id="rate" hint="In the label's own words, such as 1 tsp per gal.">
        <input id="rate" aria-describedby="rate-hint" value=${rate} placeholder="1 tsp per gal" autocomplete="off"
          onInput=${(e) => setRate(e.target.value)} />
      </${Field}>`}
      ${drinkers.length > 0 && html`<${Field} label="Drinker" id="drinker">
        <${Choice} id="drinker" value=${water} onChange=${setWater}
          choices=${drinkers.map(({ name, values }) => [values.volume, `${name}, ${values.volume}`])} />
      </${Field}>`}
      <${Field} label="Water" id="water" hint="What goes into the drinker, such as 3 gal.">
        <input id="water" aria-describedby="water-hint" value=${water} autocomplete="off"
          onInput=${(e) => setWater(e.target.value)} />
      </${Field}>
    </form>
    <${AnswerPage} words=${words} what="what to stir in" farm=${false} sources=${false} />`;
}

export function Mix() {
  const { record } = usePage();
  const products = itemsOf(record.farm, "supplement").filter(({ values }) => typeof values.rate === "string");
  const drinkers = itemsOf(record.farm, "drinker").filter(({ values }) => typeof values.volume === "string");
  const hatches = itemsOf(record.farm, "hatch").map(({ values }) => values.name).filter(Boolean);
  const [one, setOne] = useState(products.length === 0);
  return html`<h1>Mix</h1>
    <div class="row" role="group" aria-label="What to mix">
      <button aria-pressed=${!one} onClick=${() => setOne(false)}>The courses</button>
      <button aria-pressed=${one} onClick=${() => setOne(true)}>This drinker</button>
    </div>
    ${one
      ? html`<${ThisDrinker} products=${products} drinkers=${drinkers} />`
      : html`<${Courses} hatches=${hatches} />`}`;
}
