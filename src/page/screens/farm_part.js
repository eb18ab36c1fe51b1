// A form for one part of the farm file: a hatch, a feed, a hopper ... Each change is a change of one line of the text.
import { useEffect, useRef, useState } from "preact/hooks";
import { useAnswer, usePage } from "../answer.js";
import { faultOf } from "../ask.js";
import { checkWords, edit, placeOfFault, textOf } from "../edits.js";
import { SORTS } from "../fields.js";
import { html } from "../html.js";
import { linesOf, readTable, withoutItem, withoutKey, withValue } from "../toml_lines.js";
import { ValueField } from "./value_field.js";

const PAUSE = 400; // ms without typing before a change is saved

/** The fault of the text as it is being written; null where it has none. */
export function useFault() {
  const { record, now } = usePage();
  const { answer } = useAnswer(record.draft === null ? null : checkWords(now), { farm: textOf(record), diary: null });
  return record.draft !== null && answer && answer.status !== 0 ? faultOf(answer) : null;
}

/** Typed values, shown at once and written to the farm a moment later, or when the form is left. */
function useTyped(barn, sort, which) {
  const [typed, type] = useState({});
  const waiting = useRef(new Map());
  const timer = useRef(0);
  const write = () => {
    clearTimeout(timer.current);
    const changes = [...waiting.current];
    waiting.current.clear();
    if (changes.length === 0) return;
    edit(barn, (text) => changes.reduce((all, [key, value]) => value === undefined
      ? withoutKey(all, sort, which, key) : withValue(all, sort, which, key, value), text));
  };
  useEffect(() => {
    addEventListener("pagehide", write);
    return () => {
      removeEventListener("pagehide", write);
      write();
    };
  }, []);
  const say = (key, value) => {
    type((all) => ({ ...all, [key]: value }));
    waiting.current.set(key, value);
    clearTimeout(timer.current);
    timer.current = setTimeout(write, PAUSE);
  };
  const forget = () => waiting.current.clear();
  return { typed, say, forget };
}

/** Whether a question waits behind "More questions": few farms need it, and the file does not say it. */
function isFolded(spec, key, values) {
  const housed = values.housing !== undefined && ["hopper", "drinker"].includes(key);
  return (spec.rare?.includes(key) || housed) && values[key] === undefined;
}

function Gone({ sort }) {
  return html`<p>There is no such ${SORTS[sort]?.one ?? "part"} any more.</p><p><a href="#farm">Back to the farm</a></p>`;
}

export function FarmPart({ rest: [sort, name] }) {
  const { barn, record, units } = usePage();
  const text = textOf(record);
  const spec = SORTS[sort];
  const which = spec?.single ? null : spec?.listed ? Number(name) : name;
  const values = readTable(text, sort, which);
  const opened = useRef(values); // what the file said when the form was opened: no field moves while one writes
  const { typed, say, forget } = useTyped(barn, sort, which);
  const fault = useFault();
  const place = fault && placeOfFault(text, fault);
  const [leaving, leave] = useState(false);
  if (!spec || !linesOf(text, sort, which)) return html`<h1>Farm</h1><${Gone} sort=${sort} />`;
  const mine = place && place.sort === sort && place.which === which ? place : null;
  const atField = mine && spec.fields.some(({ key }) => key === mine.key);
  const others = Object.keys(values).filter((key) => !spec.fields.some((field) => field.key === key));
  const remove = () => {
    forget();
    location.hash = "#farm";
    edit(barn, (all) => withoutItem(all, sort, which));
  };
  const field = (one) => html`<${ValueField} key=${one.key} field=${one} text=${text} units=${units} id=${`f-${one.key}`}
    value=${one.key in typed ? typed[one.key] : values[one.key]} fault=${mine?.key === one.key ? mine.words : null}
    onChange=${(value) => say(one.key, value)} />`;
  const folded = spec.fields.filter(({ key }) => isFolded(spec, key, opened.current) && mine?.key !== key);
  const title = values.title ?? (spec.listed ? values.name : name) ?? spec.title;
  return html`<p><a class="back" href="#farm">‹ Farm</a></p>
    <h1><bdi>${String(title)}</bdi></h1>
    ${fault && !atField && html`<p class="fault" role="alert" dir="auto">${fault}</p>`}
    <div class="sides">
      <form onSubmit=${(e) => e.preventDefault()}>
        ${spec.fields.filter((one) => !folded.includes(one)).map(field)}
        ${folded.length > 0 && html`<details class="more"><summary>More questions</summary>${folded.map(field)}</details>`}
        ${others.length > 0 && html`<p>Also in the file: ${others.join(", ")}. <a href="#text">Change its text</a></p>`}
        ${!spec.single && (leaving
          ? html`<div class="row"><button type="button" class="main" onClick=${remove}>Yes, take it out</button>
              <button type="button" onClick=${() => leave(false)}>Leave it</button></div>`
          : html`<button type="button" onClick=${() => leave(true)}>Take this ${spec.one} out</button>`)}
      </form>
      <section aria-label="In the file"><h2>In the file</h2><pre tabindex="0">${linesOf(text, sort, which)}</pre></section>
    </div>`;
}
