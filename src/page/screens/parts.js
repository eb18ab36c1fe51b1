// Small things that every screen uses.
import { faultOf } from "../ask.js";
import { html } from "../html.js";

/** Says that `what` is being worked out; its line is always there, so that nothing jumps. */
export const Waiting = ({ when, what }) => html`<p class="waiting" role="status">${when ? `Working out ${what} …` : ""}</p>`;

/** What the program refused, in its words. */
export function Fault({ answer, trouble }) {
  const words = trouble || (answer && answer.status !== 0 && faultOf(answer));
  return words ? html`<p class="fault" role="alert" dir="auto">${words}</p>` : null;
}

/** A question with its field below it; `hint` says what is usual, `fault` what the program refused. */
export function Field({ label, id, hint, fault, children }) {
  return html`<div class="field">
    <label for=${id}>${label}</label>
    ${children}
    ${hint && html`<p class="hint" id="${id}-hint">${hint}</p>`}
    ${fault && html`<p class="fault" id="${id}-fault" role="alert" dir="auto">${fault}</p>`}
  </div>`;
}

export function Choice({ id, value, choices, onChange, label }) {
  return html`<select id=${id} aria-label=${label} value=${value} onChange=${(e) => onChange(e.target.value)}>
    ${choices.map(([key, words]) => html`<option key=${key} value=${key} selected=${key === value}>${words}</option>`)}
  </select>`;
}
