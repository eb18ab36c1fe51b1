// One question of a form and its field, by the kind of its value; what the file says in another form is shown as text.
import { html } from "../html.js";
import { itemsOf } from "../toml_lines.js";
import { Bare, writeValue } from "../toml_value.js";
import { Choice, Field } from "./parts.js";
import { Rows } from "./rows_field.js";
import { useKinds } from "./quick.js";

/** "2.5 lb" as ["2.5", "lb"], what is no figure too where one of `units` follows; null where it is not one amount. */
function split(words, units) {
  const unit = units.findLast((one) => words.endsWith(` ${one}`));
  if (unit && !/\d\s+[a-z]/i.test(words.slice(0, -unit.length))) return [words.slice(0, -unit.length - 1), unit];
  return /^\s*([\d.,/ ]*\d)\s+([^\d].*?)\s*$/.exec(words)?.slice(1) ?? null;
}

const usualOf = (field, units) => (typeof field.usual === "object" ? field.usual[units] : field.usual) ?? "";

function Amount({ field, value, units, onChange, id, describedby }) {
  const choices = field.units[units];
  const [figure, unit] = value === undefined ? ["", choices[0]] : split(String(value), choices) ?? [String(value), ""];
  const listed = unit === "" ? ["", ...choices] : choices.includes(unit) ? choices : [unit, ...choices];
  const say = (f, u) => onChange(f.trim() === "" ? undefined : `${f.trim()}${u ? ` ${u}` : ""}`);
  return html`<div class="amount">
    <input id=${id} value=${figure} placeholder=${usualOf(field, units)} inputmode="decimal" autocomplete="off"
      aria-describedby=${describedby} onInput=${(e) => say(e.target.value, unit)} />
    <${Choice} label=${`${field.label}: unit`} value=${unit} choices=${listed.map((u) => [u, u || "as written"])}
      onChange=${(u) => say(figure, u)} />
  </div>`;
}

function Input({ field, value, onChange, id, describedby, type = "text", mode, read = (words) => words }) {
  return html`<input id=${id} type=${type} value=${value === undefined ? "" : String(value)} inputmode=${mode}
    placeholder=${usualOf(field)} autocomplete="off" aria-describedby=${describedby}
    onInput=${(e) => onChange(e.target.value.trim() === "" ? undefined : read(e.target.value))} />`;
}

/** A number as it was typed: the program says what is wrong with anything else. */
const numberOf = (words) => (/^\s*-?\d+(\.\d+)?\s*$/.test(words) ? new Bare(words.trim()) : words.trim());

function Kinds(props) {
  const kinds = useKinds();
  const known = kinds.some(([kind]) => kind === props.value) ? kinds : [[props.value ?? "", props.value ?? ""], ...kinds];
  return html`<${Choice} ...${props} choices=${known} />`;
}

function Control(props) {
  const { field, value, text, onChange, id, describedby } = props;
  const isOther = value !== undefined && typeof value === "object" && !(value instanceof Bare);
  if (isOther && !["rows", "hours"].includes(field.kind)) {
    return html`<code class="as-written" id=${id}>${writeValue(value)}</code>`;
  }
  switch (field.kind) {
    case "amount":
      return html`<${Amount} ...${props} />`;
    case "count":
    case "number":
      return html`<${Input} ...${props} mode=${field.kind === "count" ? "numeric" : "decimal"} read=${numberOf} />`;
    case "date":
      return html`<${Input} ...${props} type="date" value=${value === undefined ? undefined : String(value).slice(0, 10)}
        read=${(words) => new Bare(words)} />`;
    case "yes":
      return html`<${Choice} id=${id} value=${value === undefined ? "" : String(value)}
        choices=${[["", "not said"], ["true", "yes"], ["false", "no"]]}
        onChange=${(said) => onChange(said === "" ? undefined : said === "true")} />`;
    case "choice":
      return html`<${Choice} id=${id} value=${value ?? ""} choices=${value === undefined ? [["", "not said"], ...field.choices.filter(([k]) => k)] : field.choices}
        onChange=${(said) => onChange(said || undefined)} />`;
    case "named": {
      const names = itemsOf(text, field.sort).map(({ name, values }) => [name, values.title ?? name]);
      const known = value === undefined || names.some(([name]) => name === value) ? names : [[value, value], ...names];
      return html`<${Choice} id=${id} value=${value ?? ""} choices=${[["", "none"], ...known]}
        onChange=${(said) => onChange(said || undefined)} />`;
    }
    case "bird":
      return html`<${Kinds} id=${id} value=${value} onChange=${onChange} />`;
    case "hours":
      return html`<${Input} field=${field} id=${id} describedby=${describedby} value=${value?.join(", ")} onChange=${onChange}
        read=${(words) => words.split(",").map((hour) => hour.trim()).filter(Boolean)} />`;
    case "rows":
      return html`<${Rows} ...${props} />`;
    default:
      return html`<${Input} ...${props} />`;
  }
}

/** `text` is the farm file, for names that the field may choose from. */
export function ValueField({ field, value, text, units, fault, onChange, id }) {
  const described = [field.hint && `${id}-hint`, fault && `${id}-fault`].filter(Boolean).join(" ") || null;
  const control = html`<${Control} field=${field} value=${value} text=${text} units=${units} onChange=${onChange} id=${id}
    describedby=${described} />`;
  if (field.kind === "rows") {
    return html`<fieldset class="field"><legend>${field.label}</legend>${control}
      ${fault && html`<p class="fault" role="alert" dir="auto">${fault}</p>`}</fieldset>`;
  }
  return html`<${Field} label=${field.label} id=${id} hint=${field.hint} fault=${fault}>${control}</${Field}>`;
}
