// A list of small tables, such as which feed from which age on: a card for each, fields for what it says.
import { html } from "../html.js";
import { ValueField } from "./value_field.js";

export function Rows({ field, value = [], text, units, onChange, id }) {
  const put = (i, key, said) => {
    const row = { ...value[i] };
    if (said === undefined) delete row[key];
    else row[key] = said;
    onChange(value.map((one, j) => (j === i ? row : one)));
  };
  const without = (i) => {
    const rest = value.filter((_, j) => j !== i);
    onChange(rest.length > 0 ? rest : undefined);
  };
  return html`${value.map((row, i) => html`<div class="card" key=${i} role="group" aria-label=${`${field.label} ${i + 1}`}>
      ${field.fields.map((one) => html`<${ValueField} key=${one.key} field=${one} value=${row[one.key]} text=${text}
        units=${units} id=${`${id}-${i}-${one.key}`} onChange=${(said) => put(i, one.key, said)} />`)}
      <button type="button" onClick=${() => without(i)}>Take this ${field.one} out</button>
    </div>`)}
    <button type="button" onClick=${() => onChange([...value, { ...value.at(-1) }])}>Add a ${field.one}</button>`;
}
