// The empty page: what the first step is, with one button, and a short way from there to a farm.
import { useEffect, useState } from "preact/hooks";
import { usePage } from "../answer.js";
import { faultIn, placeOfFault } from "../edits.js";
import { firstFarm, QUESTION_OF } from "../first_farm.js";
import { MEASURES } from "../fields.js";
import { html } from "../html.js";
import { dayOf } from "../moment.js";
import { BringIn } from "./out_and_in.js";
import { Choice, Field } from "./parts.js";
import { useKinds } from "./quick.js";

const USUAL = {
  us: { bag: "50 lb", hopper: "3 gal", drinker: "1 gal" },
  metric: { bag: "20 kg", hopper: "12 L", drinker: "4 L" },
  uk: { bag: "20 kg", hopper: "12 L", drinker: "4 L" },
};
const COUNT = { inputmode: "numeric" };
const STEPS = [
  { title: "The farm", keys: ["name", "units"] },
  { title: "The birds", keys: ["kind", "date", "chicks", "until"] },
  { title: "Feed and water", keys: ["feed", "protein", "bag", "hopper", "hoppers", "drinker", "drinkers"] },
];

const EMPTY = { name: "My farm", units: "us", kind: "bobwhite", chicks: "", until: "6 wk", feed: "Starter", protein: "", bag: "",
  hopper: "", hoppers: "1", drinker: "", drinkers: "1" };

let before = {}; // what was said already, for who goes to another screen and comes back

function Guide({ onLeave }) {
  const { barn, now } = usePage();
  const kinds = useKinds();
  const [step, go] = useState(0);
  const [fault, setFault] = useState(null);
  const [said, set] = useState({ ...EMPTY, date: dayOf(now), ...before });
  useEffect(() => {
    before = said;
  }, [said]);
  const usual = USUAL[said.units];
  const say = (key, value) => set({ ...said, [key]: value });
  const faultOf = (key) => (fault?.key === key ? fault.words : null);
  const ask = (key, label, hint, more = {}) => html`<${Field} label=${label} id=${key} hint=${hint} fault=${faultOf(key)}>
    <input id=${key} required autocomplete="off" value=${said[key]} aria-invalid=${faultOf(key) ? "true" : null}
      aria-describedby=${hint ? `${key}-hint` : null} onInput=${(e) => say(key, e.target.value)} ...${more} />
  </${Field}>`;
  const pick = (key, label, choices) => html`<${Field} label=${label} id=${key} fault=${faultOf(key)}>
    <${Choice} id=${key} value=${said[key]} choices=${choices} onChange=${(value) => say(key, value)} /></${Field}>`;
  const make = async () => {
    const text = firstFarm(said);
    const words = await faultIn(text);
    if (!words) return barn.change(async () => ({ farm: text, name: "farm.toml", diary: null, ticked: [], draft: null }));
    const { sort, key, words: short } = placeOfFault(text, words);
    const question = QUESTION_OF[`${sort}.${key}`] ?? null;
    setFault({ key: question, words: question ? short : words });
    const at = STEPS.findIndex(({ keys }) => keys.includes(question));
    if (at >= 0) go(at);
  };
  const next = (event) => {
    event.preventDefault();
    setFault(null);
    if (step < STEPS.length - 1) go(step + 1);
    else make().catch((error) => setFault({ key: null, words: error.message }));
  };
  return html`<h1>${STEPS[step].title} <span class="when">${step + 1} of ${STEPS.length}</span></h1>
    <form class="guide" onSubmit=${next}>
      ${fault && fault.key === null && html`<p class="fault" role="alert" dir="auto">${fault.words}</p>`}
      ${step === 0 && html`${ask("name", "What is the farm called?")}${pick("units", "Which measures are on the bags?", MEASURES)}`}
      ${step === 1 && html`${pick("kind", "Which birds?", kinds)}
        ${ask("date", "When do they hatch, or did?", null, { type: "date" })}
        ${ask("chicks", "How many chicks?", null, { ...COUNT, placeholder: "100" })}
        ${ask("until", "To what age are they kept?", "Such as 6 wk or 45 d.")}`}
      ${step === 2 && html`${ask("feed", "What is the feed called?")}
        ${ask("protein", "Protein, by its label", null, { placeholder: "24 %" })}
        ${ask("bag", "A bag holds", null, { placeholder: usual.bag })}
        ${ask("hopper", "A hopper holds", "Measure it with water.", { placeholder: usual.hopper })}
        ${ask("hoppers", "How many hoppers do the birds have?", null, COUNT)}
        ${ask("drinker", "A drinker holds", null, { placeholder: usual.drinker })}
        ${ask("drinkers", "How many drinkers do they have?", null, COUNT)}`}
      <div class="row">
        <button class="main">${step < STEPS.length - 1 ? "Next" : "Make the farm"}</button>
        <button type="button" onClick=${() => (step > 0 ? go(step - 1) : onLeave())}>Back</button>
      </div>
    </form>`;
}

export function Start() {
  const [started, start] = useState(false);
  if (started) return html`<${Guide} onLeave=${() => start(false)} />`;
  return html`<div class="empty">
    <h1>What to feed, fill and fetch</h1>
    <p>Say which birds hatch when, and what their feed and vessels hold. From then on this page says each day what there is
      to do. It needs no network; nothing leaves this device.</p>
    <button class="main" onClick=${() => start(true)}>Make a farm</button>
    <${BringIn} label="Or bring in a farm file" />
    <ul class="links">
      <li><a href="#quick">Ask a quick question</a></li>
      <li><a href="#about">About</a></li>
    </ul>
  </div>`;
}
