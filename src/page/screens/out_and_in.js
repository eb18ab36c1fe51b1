// The farm as files: out, in, and away from this browser.
import { useState } from "preact/hooks";
import { usePage } from "../answer.js";
import { OUT, readFiles, takeIn, takeOut } from "../files_out.js";
import { html } from "../html.js";
import { EMPTY } from "../store.js";
import { farmName } from "../toml_lines.js";

/** Chooses files; what becomes of them is asked where a farm or diary here would be replaced. */
export function BringIn({ label }) {
  const { barn, record } = usePage();
  const [found, setFound] = useState(null);
  const [said, say] = useState("");
  const take = async (what, options) => {
    setFound(null);
    try {
      await takeIn(barn, what, options);
      say("Taken in.");
      if (what.farm !== undefined) location.hash = "#today";
    } catch (error) {
      say(error.message);
    }
  };
  const chosen = async (event) => {
    const files = [...event.target.files];
    event.target.value = "";
    say("");
    try {
      const what = await readFiles(files);
      const replaces = (what.farm !== undefined && record.farm !== "") || (what.diary && record.diary);
      if (replaces) setFound(what);
      else await take(what);
    } catch (error) {
      say(error.message);
    }
  };
  return html`
    <label class="button file">${label}<input type="file" multiple accept=".toml,.diary,.csv" onChange=${chosen} /></label>
    ${found && html`<section class="ask" aria-label="Bring in">
      <p>${found.farm !== undefined
        ? html`In place of the farm file of <strong><bdi>${farmName(record.farm)}</bdi></strong>: that of
            <strong> <bdi>${farmName(found.farm)}</bdi></strong>?`
        : "In place of the diary kept here?"}</p>
      <div class="row">
        <button class="main" onClick=${() => setFound(null)}>Leave all as it is</button>
        <button onClick=${() => take(found)}>${found.diary || !record.diary ? "Replace it" : "Replace it, keep the diary"}</button>
        ${!found.diary && record.diary && html`<button onClick=${() => take(found, { emptyDiary: true })}>
          Replace it, with an empty diary</button>`}
      </div>
    </section>`}
    <p class="said" role="status" dir="auto">${said}</p>`;
}

function Remove() {
  const { barn } = usePage();
  const [sure, ask] = useState(false);
  const remove = () => barn.change(async (record) => ({ ...EMPTY, version: record.version, carried: record.carried }));
  if (!sure) return html`<button onClick=${() => ask(true)}>Take the farm off this device</button>`;
  return html`<section class="ask" aria-label="Take the farm off this device">
    <p>Farm and diary are then gone from here. Take them out as files first.</p>
    <div class="row"><button class="main" onClick=${() => ask(false)}>Leave them</button>
      <button onClick=${remove}>Yes, take them off</button></div>
  </section>`;
}

export function OutAndIn() {
  const { record } = usePage();
  const [said, say] = useState("");
  const take = (one) => takeOut(one, record).then(() => say(""), (error) => say(error.message));
  return html`<section aria-labelledby="out">
      <h2 id="out">Take out</h2>
      <div class="buttons">${OUT.filter((one) => !one.needsDiary || record.diary).map((one) => html`
        <button key=${one.label} onClick=${() => take(one)}>${one.label}</button>`)}</div>
      <p class="said" role="status" dir="auto">${said}</p>
    </section>
    <section aria-labelledby="in">
      <h2 id="in">Bring in</h2>
      <${BringIn} label="A farm file, diary or CSV" />
      <div class="buttons"><${Remove} /></div>
    </section>`;
}
