// The farm: what it has, sort by sort, each with its form; the file; quick questions; what this page is.
import { usePage } from "../answer.js";
import { edit, textOf } from "../edits.js";
import { SORTS } from "../fields.js";
import { html } from "../html.js";
import { dayOf } from "../moment.js";
import { itemsOf, withItem } from "../toml_lines.js";
import { Bare } from "../toml_value.js";
import { BringIn, OutAndIn } from "./out_and_in.js";

const labelOf = ({ name, values }) => String(values.title ?? values.name ?? name ?? "");

const linkTo = (sort, item) => `#part/${sort}/${encodeURIComponent(SORTS[sort].listed ? item.index : item.name)}`;

/** "hopper", "hopper-2", ...: the first that is free. */
function freeName(text, sort) {
  const taken = new Set(itemsOf(text, sort).map(({ name }) => name));
  for (let n = 1; ; n += 1) {
    const name = n === 1 ? sort : `${sort}-${n}`;
    if (!taken.has(name)) return name;
  }
}

function Sort({ sort, text }) {
  const { barn, now, units } = usePage();
  const spec = SORTS[sort];
  const items = itemsOf(text, sort);
  const add = () => {
    const name = spec.listed ? null : freeName(text, sort);
    const first = Object.fromEntries(["feed", "hopper", "drinker"].map((one) => [one, itemsOf(text, one)[0]?.name]));
    const values = spec.start({ units, today: new Bare(dayOf(now)), first });
    edit(barn, (all) => withItem(all, sort, name, values))
      .then(() => (location.hash = linkTo(sort, { name, index: items.length })));
  };
  return html`<section aria-labelledby=${`s-${sort}`}>
    <div class="with-button"><h2 id=${`s-${sort}`}>${spec.title}</h2><button onClick=${add} aria-label=${`Add a ${spec.one}`}>Add</button></div>
    <ul class="links">${items.map((item) => html`<li key=${item.name ?? item.index}>
      <a href=${linkTo(sort, item)}><bdi>${labelOf(item)}</bdi></a></li>`)}</ul>
  </section>`;
}

const Others = () => html`<section aria-labelledby="others">
  <h2 id="others">More</h2>
  <ul class="links">
    <li><a href="#quick">Quick question</a></li>
    <li><a href="#about">About</a></li>
  </ul>
</section>`;

export function Farm() {
  const { record } = usePage();
  const text = textOf(record);
  if (!text) return html`<h1>Farm</h1><${BringIn} label="Bring in a farm file" /><${Others} />`;
  return html`<h1>Farm</h1>
    <div class="sorts">
      <section aria-labelledby="whole">
        <h2 id="whole">The whole</h2>
        <ul class="links">
          <li><a href="#part/farm">Name, measures, chores</a></li>
          <li><a href="#text">The farm file</a></li>
        </ul>
      </section>
      ${["hatch", "feed", "hopper", "drinker", "supplement", "house"].map((sort) => html`
        <${Sort} key=${sort} sort=${sort} text=${text} />`)}
      <${OutAndIn} />
      <${Others} />
    </div>`;
}
