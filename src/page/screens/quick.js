// A question without a farm: how long what these birds have lasts.
import { useState } from "preact/hooks";
import { jsonOf, useAnswer, usePage } from "../answer.js";
import { MEASURES } from "../fields.js";
import { html } from "../html.js";
import { AnswerPage } from "./answer_page.js";
import { Choice, Field } from "./parts.js";

const EXAMPLE = { us: { hopper: "3 gal", drinker: "1 gal" }, metric: { hopper: "12 L", drinker: "4 L" }, uk: { hopper: "12 L", drinker: "4 L" } };

/** The kinds of birds that the program knows: [[name, title], ...]. */
export function useKinds() {
  const { answer } = useAnswer(["table", "kinds", "--json"], null);
  return (jsonOf(answer)?.kinds ?? []).map(({ kind, title }) => [kind, title]);
}

export function Quick() {
  const { units: own } = usePage();
  const kinds = useKinds();
  const [units, setUnits] = useState(own);
  const [all, set] = useState({ kind: "bobwhite", birds: "90", age: "3 d", protein: "", hopper: "", hoppers: "1", drinker: "", drinkers: "1" });
  const say = (key) => (e) => set({ ...all, [key]: e.target.value });
  const text = (key, label, hint, more = {}) => html`<${Field} label=${label} id=${key} hint=${hint}>
    <input id=${key} value=${all[key]} onInput=${say(key)} autocomplete="off"
      aria-describedby=${hint ? `${key}-hint` : null} ...${more} />
  </${Field}>`;
  const flags = ["birds", "age", "protein", "hopper", "hoppers", "drinker", "drinkers"]
    .filter((key) => all[key].trim() && !(key === "hoppers" && !all.hopper.trim()) && !(key === "drinkers" && !all.drinker.trim()))
    .flatMap((key) => [`--${key}`, all[key].trim()]);
  const enough = all.birds.trim() && (all.hopper.trim() || all.drinker.trim());
  const words = enough ? ["last", "--kind", all.kind, ...flags, "--units", units] : null;
  const count = { inputmode: "numeric" };
  return html`<h1>Quick question</h1>
    <p>How long does a full hopper or drinker last?</p>
    <form class="question" onSubmit=${(e) => e.preventDefault()}>
      <${Field} label="Kind" id="kind"><${Choice} id="kind" value=${all.kind} choices=${kinds}
        onChange=${(kind) => set({ ...all, kind })} /></${Field}>
      ${text("birds", "Birds", null, count)}
      ${text("age", "Age", "Such as 3 d or 5 wk.")}
      ${text("protein", "Protein of the feed", "From its label, such as 24 %; may be left empty.", { placeholder: "24 %" })}
      ${text("hopper", "A hopper holds", `Such as ${EXAMPLE[units].hopper}.`, { placeholder: EXAMPLE[units].hopper })}
      ${all.hopper && text("hoppers", "How many hoppers", null, count)}
      ${text("drinker", "A drinker holds", `Such as ${EXAMPLE[units].drinker}.`, { placeholder: EXAMPLE[units].drinker })}
      ${all.drinker && text("drinkers", "How many drinkers", null, count)}
      <${Field} label="Measures" id="units"><${Choice} id="units" value=${units} choices=${MEASURES} onChange=${setUnits} /></${Field}>
    </form>
    ${words ? html`<${AnswerPage} words=${words} what="how long all lasts" farm=${false} />` : html`<p>Say what a hopper or a drinker holds.</p>`}`;
}
