// This page brings another farm than is kept here: which of them it shall be.
import { usePage } from "../answer.js";
import { carriedFarm, isOther } from "../carried.js";
import { html } from "../html.js";
import { farmName } from "../toml_lines.js";

export function CarriedOther() {
  const { barn, record } = usePage();
  if (!isOther(record)) return null;
  const carried = carriedFarm();
  const keep = () => barn.change(async () => ({ carried: carried.farm }));
  const take = (more) => barn.change(async (now) => ({ ...carried, carried: carried.farm, draft: null, ...more(now) }));
  return html`<section class="ask" aria-labelledby="other">
    <h2 id="other">Which farm?</h2>
    <p>This page brings the farm file of <strong><bdi>${farmName(carried.farm)}</bdi></strong>. Kept here is another:
      <strong> <bdi>${farmName(record.farm)}</bdi></strong>.</p>
    <div class="row">
      <button class="main" onClick=${keep}>Stay with what is kept here</button>
      <button onClick=${() => take(({ diary }) => ({ diary }))}>Take the page's, with the diary kept here</button>
      <button onClick=${() => take(() => ({ ticked: [] }))}>
        Take the page's, with ${carried.diary ? "its diary" : "an empty diary"}</button>
    </div>
  </section>`;
}
