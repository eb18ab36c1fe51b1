// One line of the day's list: a box, what to do, where; and, where somebody measures or counts, how much it was.
import { useState } from "preact/hooks";
import { withFigures } from "../figures.js";
import { html } from "../html.js";
import { dayWords, hourWords } from "../moment.js";
import { placeOf } from "../places.js";

/** What may be said with a tick, by deed, and an example; null where the program takes no amount. */
function measuredOf({ deed, parts: [first] }, units) {
  const weight = units === "us" ? "14 lb" : "6 kg";
  const water = units === "us" ? "3 gal" : "12 L";
  const feed = first.amount_kg !== undefined;
  if (deed === "look") return { ask: "How many died?", button: "Count", example: "0", counts: true };
  if (deed === "remove") return { ask: "How many went?", button: "Count", example: "0", counts: true };
  if (deed === "top-up") return { ask: "How much went in, in all?", button: "Weigh", example: feed ? weight : water };
  if (deed === "fetch" && feed) return { ask: "How much was brought?", button: "Count", example: "3 bags" };
  return null;
}

function Measured({ line, measured: { ask, example, counts }, onSay, onClose }) {
  const [amounts, set] = useState({});
  return html`<form class="measured" onSubmit=${(e) => (e.preventDefault(), onSay(amounts))}>
    <p>${ask}</p>
    ${line.parts.map((part) => html`<label key=${part.id}>
      <span><bdi>${placeOf(part) || line.words}</bdi></span>
      <input value=${amounts[part.id] ?? ""} placeholder=${example} autocomplete="off"
        inputmode=${counts ? "numeric" : "text"}
        onInput=${(e) => set({ ...amounts, [part.id]: e.target.value.trim() })} />
    </label>`)}
    <div class="row"><button class="main">Tick with this</button><button type="button" onClick=${onClose}>Leave it</button></div>
  </form>`;
}

export function Deed({ deed: line, units, onTick, onUndo }) {
  const [busy, setBusy] = useState(false);
  const [open, setOpen] = useState(false);
  const run = async (act) => {
    setBusy(true);
    await act();
    setBusy(false);
    setOpen(false);
  };
  const later = line.parts.some((part) => part.later);
  const measured = later || line.ticked ? null : measuredOf(line, units);
  const places = line.parts.map(placeOf).filter(Boolean);
  const overdue = !line.ticked && line.parts[0].overdue;
  const ticked = line.ticked && line.parts[0].ticked;
  return html`<li class=${`deed ${line.ticked ? "done" : ""} ${later ? "later" : ""}`}>
    <label>
      ${!later && html`<input type="checkbox" checked=${line.ticked} aria-busy=${busy}
        onChange=${(e) => {
          e.target.checked = line.ticked; // the tick shows once it is saved
          if (!busy) run(line.ticked ? onUndo : () => onTick({}));
        }} />`}
      <span class="words" dir="auto">${withFigures(line.words)}</span>
      <span class="place">${places.map((place) => html`<bdi key=${place}>${place}</bdi>`)}
        ${overdue && html`<span>due ${dayWords(line.parts[0].at)}, ${hourWords(line.parts[0].at, units)}</span>`}
        ${ticked && html`<span class="undo">done ${hourWords(ticked.at, units)} · undo</span>`}</span>
    </label>
    ${measured && html`<button class="measure" aria-label=${`${measured.button}: ${line.words}`} aria-expanded=${open} onClick=${() => setOpen(!open)}>${measured.button}</button>`}
    ${measured && open && html`<${Measured} line=${line} measured=${measured} onClose=${() => setOpen(false)}
      onSay=${(amounts) => run(() => onTick(amounts))} />`}
  </li>`;
}
