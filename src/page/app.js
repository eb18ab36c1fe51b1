// The frame around the screens: the farm's name, five ways to go at the bottom, what is not kept, and the screen.
import { useEffect, useErrorBoundary, useRef, useState } from "preact/hooks";
import { Page } from "./answer.js";
import { NOT_KEPT } from "./barn.js";
import { html } from "./html.js";
import { now } from "./moment.js";
import { farmName, unitsOf } from "./toml_lines.js";
import { About } from "./screens/about.js";
import { Away } from "./screens/away.js";
import { CarriedOther } from "./screens/carried_other.js";
import { Farm } from "./screens/farm.js";
import { FarmPart } from "./screens/farm_part.js";
import { FarmText } from "./screens/farm_text.js";
import { Flock } from "./screens/flock.js";
import { Mix } from "./screens/mix.js";
import { Quick } from "./screens/quick.js";
import { Shop } from "./screens/shop.js";
import { Start } from "./screens/start.js";
import { Today } from "./screens/today.js";

const BOTTOM = ["Today", "Away", "Mix", "Shop", "Flock"];
const SCREENS = {
  today: ["Today", Today],
  away: ["Away", Away],
  mix: ["Mix", Mix],
  shop: ["Shop", Shop],
  flock: ["Flock", Flock],
  farm: ["Farm", Farm],
  part: ["Farm", FarmPart],
  text: ["The farm file", FarmText],
  quick: ["Quick question", Quick],
  about: ["About", About],
};
const OF_FARM = ["farm", "part", "text", "quick", "about"];
const WITHOUT_FARM = ["farm", "quick", "about", "text"];
const LOOK_AGAIN = 5 * 60 * 1000; // ms after which the clock is looked at anew

function useBarn(barn) {
  const [, again] = useState(0);
  useEffect(() => barn.whenChanged(() => again((n) => n + 1)), [barn]);
  return barn.now;
}

/** The moment by the clock, looked at anew when the page is seen again. */
function useNow() {
  const [moment, set] = useState(now);
  useEffect(() => {
    const look = () => document.visibilityState === "visible" && set(now());
    document.addEventListener("visibilitychange", look);
    const often = setInterval(look, LOOK_AGAIN);
    return () => {
      document.removeEventListener("visibilitychange", look);
      clearInterval(often);
    };
  }, []);
  return moment;
}

/** "#part/hatch/2" as ["part", "hatch", "2"]. */
function useRoute() {
  const read = () => location.hash.slice(1).split("/").filter(Boolean).map(decodeURIComponent);
  const [route, set] = useState(read);
  useEffect(() => {
    const moved = () => set(read());
    addEventListener("hashchange", moved);
    return () => removeEventListener("hashchange", moved);
  }, []);
  return route.length ? route : ["today"];
}

const Notice = ({ children }) => html`<p class="notice" role="status"><span aria-hidden="true">! </span>${children}</p>`;

function Screen({ name, rest, record }) {
  const [error, again] = useErrorBoundary();
  if (error) {
    return html`<${Notice}>This screen cannot be shown: ${error.message}</${Notice}>
      <button onClick=${again}>Try again</button>`;
  }
  if (!record.farm && !WITHOUT_FARM.includes(name)) return html`<${Start} />`;
  return html`<${SCREENS[name][1]} rest=${rest} key=${[name, ...rest].join("/")} />`;
}

export function App({ barn }) {
  const record = useBarn(barn);
  const moment = useNow();
  const route = useRoute();
  const name = SCREENS[route[0]] ? route[0] : "today";
  const main = useRef(null);
  const moved = useRef(false);
  const title = SCREENS[name][0];
  useEffect(() => {
    document.title = record.farm ? `${title} · ${farmName(record.farm)}` : title;
    if (moved.current) main.current.focus();
    moved.current = true;
    scrollTo(0, 0);
  }, [route.join("/")]);
  const link = (label) => html`<a href="#${label.toLowerCase()}"
    aria-current=${label.toLowerCase() === name ? "page" : null}>${label}</a>`;
  return html`<${Page.Provider} value=${{ barn, record, now: moment, units: unitsOf(record.farm) }}>
    <header>
      <a class="farm-name" href="#today"><bdi>${record.farm ? farmName(record.farm) : "cropful"}</bdi></a>
      <a class="to-farm" href="#farm" aria-current=${OF_FARM.includes(name) ? "page" : null}>Farm</a>
    </header>
    <main ref=${main} tabindex="-1" class=${name}>
      ${barn.trouble && html`<${Notice}>${NOT_KEPT[barn.trouble]}</${Notice}>`}
      ${barn.news && html`<${Notice}>${barn.news}</${Notice}>`}
      ${record.draft && !["part", "text"].includes(name) && html`<${Notice}>
        Changes to the farm wait for a fault to be mended: <a href="#text">see the fault</a></${Notice}>`}
      <${CarriedOther} />
      <${Screen} name=${name} rest=${route.slice(1)} record=${record} key=${name} />
    </main>
    ${record.farm && html`<nav aria-label="Screens">${BOTTOM.map(link)}</nav>`}
  </${Page.Provider}>`;
}
