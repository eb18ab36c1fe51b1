// A drawing of lines over age: two axes, each line named where it ends, a band behind the one it belongs to.
import { useEffect, useRef, useState } from "preact/hooks";
import { html } from "./html.js";

const HEIGHT = 220, LEFT = 48, TOP = 26, BOTTOM = 34; // px

/** 1, 2 or 5 times a power of ten, so that at most `most` steps reach `end`. */
function step(end, most) {
  const power = 10 ** Math.floor(Math.log10(end / most || 1));
  return power * ([1, 2, 5].find((n) => n * power * most >= end) ?? 10);
}

const ticks = (from, to, by) => {
  const all = [];
  for (let at = Math.ceil(from / by) * by; at <= to + by * 1e-9; at += by) all.push(Number(at.toPrecision(12)));
  return all;
};

function useWidth() {
  const frame = useRef(null);
  const [width, set] = useState(320);
  useEffect(() => {
    const watch = new ResizeObserver(([entry]) => set(Math.max(220, Math.round(entry.contentRect.width))));
    watch.observe(frame.current);
    return () => watch.disconnect();
  }, []);
  return [frame, width];
}

/** Names at the ends of lines and band, at least a line of text apart: [{name, y}]. */
function endNames(ends) {
  const all = [];
  for (const { name, y } of ends.sort((a, b) => a.y - b.y)) {
    all.push({ name, y: Math.max(y, (all.at(-1)?.y ?? -Infinity) + 17) });
  }
  return all;
}

/**
 * `lines`: [{name, points}], `band`: {name, points: [[x, low, high]]} or null, `marks`: [{x, name}] upright lines, `dots`:
 * [[x, y]]; x in days of age. `label` says it all in words, for those who do not see it.
 */
export function Chart({ label, lines, band = null, marks = [], dots = [], id }) {
  const [frame, width] = useWidth();
  const names = [...lines, ...(band ? [band] : [])].map(({ name }) => name ?? "");
  const right = Math.max(22, Math.max(...names.map((name) => name.length)) * 8.5 + 12);
  const xs = lines.flatMap(({ points }) => points.map(([x]) => x));
  const ys = [...lines.flatMap(({ points }) => points.map(([, y]) => y)), ...(band?.points.map(([, , high]) => high) ?? [])];
  const [first, last] = [Math.min(...xs), Math.max(...xs)];
  const highest = Math.max(...ys, 1e-9);
  const by = step(highest, 4), top = Math.ceil(highest / by) * by;
  const toX = (x) => LEFT + ((x - first) / (last - first || 1)) * (width - LEFT - right);
  const toY = (y) => TOP + (1 - y / top) * (HEIGHT - TOP - BOTTOM);
  const path = (points) => points.map(([x, y], i) => `${i ? "L" : "M"}${toX(x).toFixed(1)} ${toY(y).toFixed(1)}`).join("");
  const weeks = ticks(first / 7, last / 7, Math.max(1, step((last - first) / 7, width < 500 ? 5 : 10)));
  const outline = band && `${path(band.points.map(([x, low]) => [x, low]))}${path(
    band.points.map(([x, , high]) => [x, high]).reverse()).replace("M", "L")}Z`;
  const ends = endNames([...lines.map(({ name, points }) => ({ name, y: toY(points.at(-1)[1]) + 5 })),
    ...(band ? [{ name: band.name, y: toY(band.points.at(-1)[2]) - 2 }] : [])].filter(({ name }) => name));
  return html`<div class="chart" ref=${frame}><svg id=${id} role="img" aria-label=${label} width=${width} height=${HEIGHT}
      viewBox="0 0 ${width} ${HEIGHT}">
    ${ticks(0, top, by).map((y) => html`<path class="grid" d="M${LEFT} ${toY(y)}H${width - right}" />
      <text class="y" x=${LEFT - 6} y=${toY(y) + 5} text-anchor="end">${y}</text>`)}
    ${weeks.map((week) => html`<text class="x" x=${toX(week * 7)} y=${HEIGHT - 12} text-anchor="middle">${week}\u00a0wk</text>`)}
    ${band && html`<path class="band" d=${outline} />`}
    ${lines.map(({ points }) => html`<path class="line" d=${path(points)} />`)}
    ${dots.map(([x, y]) => html`<path class="dot" d="M${toX(x) - 5} ${toY(y) - 11}h10l-5 9z" />`)}
    ${ends.map(({ name, y }) => html`<text x=${width - right + 6} y=${y}>${name}</text>`)}
    ${marks.filter(({ x }) => x >= first && x <= last).map(({ x, name }) => html`<path class="mark" d="M${toX(x)} ${TOP - 4}V${HEIGHT - BOTTOM}" />
      <text x=${toX(x) + (toX(x) > width / 2 ? -4 : 4)} y=${TOP - 8} text-anchor=${toX(x) > width / 2 ? "end" : "start"}>${name}</text>`)}
  </svg></div>`;
}
