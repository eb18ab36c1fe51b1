// The drawings and tables of a sheet against `cropful plan --json` and `cropful sheet --json`: what is drawn is read
// back from its paths by the scales the drawing names. Units: NIST Handbook 44 (1 lb = 0.45359237 kg exactly).
import { withPage } from "./browser.mjs";

const KG = { lb: 0.45359237, kg: 1, g: 1e-3, bird: 1 };
const DAYS = { week: 7, day: 1 };

/** Drawings by id: the points of each series, in days and kg or birds, and how far one hundredth of a unit of the
 * drawing reaches; marks as their tips. Tables by id of their drawing, as texts. */
function readDrawings() {
  const point = (text, scale) => scale.from + ((text - scale.start) / (scale.end - scale.start)) * (scale.to - scale.from);
  const all = {};
  for (const svg of document.querySelectorAll("svg.chart")) {
    const scale = (axis) =>
      Object.fromEntries(["from", "to", "start", "end"].map((k) => [k, Number(svg.getAttribute(`data-${axis}-${k}`))]));
    const x = scale("x"), y = scale("y");
    const points = (path) =>
      path.getAttribute("d").replace(/ Z$/, "").split(/ ?[ML]/).slice(1)
        .map((pair) => pair.split(" ").map(Number))
        .map(([px, py]) => [point(px, x), point(py, y)]);
    const table = svg.closest("figure").querySelector("table");
    all[svg.id] = {
      xUnit: svg.dataset.xUnit,
      yUnit: svg.dataset.yUnit,
      xGrain: 0.01 * Math.abs((x.to - x.from) / (x.end - x.start)),
      yGrain: 0.01 * Math.abs((y.to - y.from) / (y.end - y.start)),
      series: Object.fromEntries([...svg.querySelectorAll("path[data-series]")].map((p) => [p.dataset.series, points(p)])),
      marks: [...svg.querySelectorAll("path.mark")].map((p) => points(p)[0][0]),
      rows: [...table.querySelectorAll("tbody tr")].map((row) => [...row.children].map((c) => c.textContent)),
    };
  }
  return all;
}

function toEngineUnits(drawing) {
  const inDays = DAYS[drawing.xUnit], inKg = KG[drawing.yUnit];
  const convert = ([x, y]) => [x * inDays, y * inKg];
  return {
    ...drawing,
    xGrain: drawing.xGrain * inDays,
    yGrain: drawing.yGrain * inKg,
    series: Object.fromEntries(Object.entries(drawing.series).map(([k, points]) => [k, points.map(convert)])),
    marks: drawing.marks.map((x) => x * inDays),
  };
}

/** Findings where a series is not the list of [days, amount] expected, point for point. */
function compare(name, drawing, series, expected) {
  const drawn = drawing.series[series];
  if (!drawn) return [`${name}: no series ${series}`];
  if (drawn.length !== expected.length) return [`${name} ${series}: ${drawn.length} points, not ${expected.length}`];
  const wrong = drawn.findIndex(
    ([x, y], i) => Math.abs(x - expected[i][0]) > drawing.xGrain || Math.abs(y - expected[i][1]) > drawing.yGrain,
  );
  return wrong < 0 ? [] : [`${name} ${series}: drawn ${drawn[wrong]}, not ${expected[wrong]}`];
}

/** The value of a line at x, straight between its points; the later one where it jumps, or has a point at x to within
 * `grain`. */
function valueAt(points, x, grain) {
  const i = Math.max(0, points.findLastIndex(([px]) => px <= x + grain));
  const [x0, y0] = points[i], [x1, y1] = points[i + 1] ?? points[i];
  if (Math.abs(x0 - x) <= grain) return y0;
  return x1 > x0 ? y0 + ((x - x0) / (x1 - x0)) * (y1 - y0) : y0;
}

/** Findings where a line does not go through [days, amount], to within `relative`. */
function through(name, drawing, series, expected, relative) {
  const drawn = (x) => valueAt(drawing.series[series] ?? [[0, NaN]], x, drawing.xGrain);
  return expected
    .filter(([x, y]) => !(Math.abs(drawn(x) - y) <= relative * Math.abs(y) + 2 * drawing.yGrain))
    .map(([x, y]) => `${name} ${series} at day ${x}: drawn ${drawn(x)}, not ${y}`);
}

function numbersAgree(name, words, kg, unit) {
  const read = words.replace(/,/g, "").match(/^([\d.]+) ?(lb|oz|kg|g)?/);
  if (!read) return [`${name}: no number in ${words}`];
  const factor = { oz: KG.lb / 16, ...KG }[read[2] ?? unit];
  const decimals = (read[1].split(".")[1] ?? "").length;
  return Math.abs(read[1] * factor - kg) <= factor * 0.5 * 10 ** -decimals * 1.0001 ? [] : [`${name}: ${words}, not ${kg} kg`];
}

function checkHatch(id, plan, sheet, drawings) {
  const birds = drawings[`${id}-birds`], feed = drawings[`${id}-feed`];
  const hopper = drawings[`${id}-hopper`], protein = drawings[`${id}-protein`];
  const findings = [
    ...compare(id, birds, "birds", sheet.heads.map((h) => [h.age_d, h.birds])),
    ...compare(id, feed, "central", sheet.days.map((d) => [d.age_d, d.feed_kg])),
    ...compare(id, feed, "p05", sheet.days.map((d) => [d.age_d, d.p05])),
    ...compare(id, feed, "p95", sheet.days.map((d) => [d.age_d, d.p95])),
    ...through(id, birds, "birds", plan.weeks.map((w) => [w.from_d, w.birds]), 1e-9),
    ...through(id, feed, "central", plan.weeks.map((w) => [w.from_d, w.feed_kg_per_d])
      .filter(([x]) => x <= sheet.days.at(-1).age_d), 1e-9),
  ];
  plan.weeks.forEach((week, i) => {
    const shown = birds.rows[i] ?? [];
    if (shown[0] !== String(week.week) || Math.abs(Number(shown[2]?.replace(/,/g, "")) - week.birds) > 0.5001) {
      findings.push(`${id}: table of birds says ${shown}, not week ${week.week}: ${week.birds}`);
    }
  });
  feed.rows.forEach((row, i) => {
    findings.push(...numbersAgree(`${id} feed of a day`, row[2], sheet.days[7 * i].feed_kg));
    findings.push(...numbersAgree(`${id} feed of a day, hungry`, row[3], sheet.days[7 * i].p95));
  });
  if (plan.hoppers && plan.hoppers.fills.length > 0) {
    const fills = plan.hoppers.fills.slice(0, 60);
    const end = plan.stages[0].to_d;
    const next = (i) => plan.hoppers.fills[i + 1]?.age_d ?? end;
    const teeth = fills.flatMap((f, i) => [[f.age_d, f.content_kg], [next(i), Math.max(0, f.content_kg - f.used_kg)]]);
    findings.push(...compare(id, hopper, "content", teeth));
    const astray = fills.some((f, i) => !(Math.abs(hopper.marks[i] - f.age_d) <= hopper.xGrain));
    if (astray || hopper.marks.length !== fills.length) findings.push(`${id}: marks are not at the fills`);
    hopper.rows.forEach((row, i) => findings.push(...numbersAgree(`${id} hopper`, row[1], fills[i].content_kg)));
  }
  const stated = plan.check.filter((c) => c.nutrient === "protein" && c.given_g_per_bird_d !== null);
  const middle = (c) => (c.from_d + c.to_d) / 2;
  if (stated.length > 0) {
    findings.push(
      ...through(id, protein, "given", stated.map((c) => [middle(c), c.given_g_per_bird_d / 1000]), 2e-3),
      ...through(id, protein, "need", stated.map((c) => [middle(c), c.need_g_per_bird_d / 1000]), 2e-3),
      ...stated.flatMap((c, i) => numbersAgree(`${id} protein`, protein.rows[i]?.[2] ?? "", c.given_g_per_bird_d / 1000)),
    );
  }
  return findings;
}

/** "2027-04-29T06:30" as the page says it: "Thu 29 Apr 6:30 am". */
function momentWords(iso, us) {
  const [date, time] = iso.split("T");
  const at = new Date(`${date}T00:00:00Z`);
  const day = `${at.toLocaleString("en-US", { weekday: "short", timeZone: "UTC" })} ${at.getUTCDate()} ` +
    at.toLocaleString("en-US", { month: "short", timeZone: "UTC" });
  const hour = Number(time.slice(0, 2));
  if (!us) return `${day} ${time}`;
  const minutes = time.slice(3) === "00" ? "" : time.slice(2);
  return `${day} ${hour % 12 || 12}${minutes} ${hour < 12 ? "am" : "pm"}`;
}

/** What is put into hoppers on the days that a sheet's pages list, against the fills of the plan. */
function checkFills(hatch, days, us) {
  const findings = [];
  const said = new Map(days.map(([day, lines]) => [day, lines]));
  for (const stage of hatch.stages) {
    for (const fill of stage.hoppers?.fills ?? []) {
      const day = momentWords(fill.do_at, us).split(" ").slice(0, 3).join(" ");
      if (!said.has(day) || fill.put_in_kg < 0.0005) continue;
      const vessels = `${stage.hoppers.count} x ${stage.hoppers.hopper}`;
      const there = said.get(day).some((line) => line.includes(vessels) && /top up|empty/.test(line));
      if (!there) findings.push(`${hatch.name}: nothing is put into ${vessels} on ${day}`);
    }
  }
  const listed = days.flatMap(([, lines]) => lines).filter((line) => /top up \d+ x .*(lb|oz|kg| g) /.test(line));
  if (days.length > 0 && listed.length === 0 && hatch.stages.some((s) => (s.hoppers?.fills ?? []).length > 0))
    findings.push(`${hatch.name}: nothing is ever put into its hoppers`);
  const first = days.map(([day]) => day);
  if (new Set(first).size === 0) return findings;
  const known = hatch.stages.flatMap((s) => [s.hoppers, s.drinkers]).flatMap((v) => v?.fills ?? [])
    .map((f) => momentWords(f.do_at, us).split(" ").slice(0, 3).join(" "));
  for (const [day, lines] of days) {
    const fills = lines.some((line) => /top up|fresh water|stir|empty/.test(line));
    if (fills && known.length > 0 && !known.includes(day)) findings.push(`${hatch.name}: no fill is planned on ${day}`);
  }
  return findings;
}

/** The drawings, the days to fill and the bags of a sheet against the plan's JSON. */
export async function agreesWithPlan(browser, html, plan, sheet) {
  const { drawn, days, bags } = await withPage(browser, html, (page) => page.evaluate(`(${readPage})(${readDrawings})`));
  const drawings = Object.fromEntries(Object.entries(drawn).map(([id, d]) => [id, toEngineUnits(d)]));
  const findings = [];
  plan.hatches.forEach((hatch, i) => {
    const id = `hatch-${i + 1}`;
    findings.push(...checkHatch(id, hatch, sheet.hatches[i], drawings));
    findings.push(...checkFills(hatch, days[id] ?? [], plan.units === "us"));
    const whole = hatch.feeds.map((f) => (f.bag_kg ? String(Math.ceil(f.p95 / f.bag_kg - 1e-9)) : "no"));
    if (whole.join() !== bags[i].join()) findings.push(`${id}: bags ${bags[i]}, not ${whole}`);
  });
  return findings;
}

function readPage(drawings) {
  const sections = [...document.querySelectorAll("section.sheet")];
  const sheets = sections.filter((s) => /^hatch-\d+$/.test(s.id));
  const texts = (sheet, selector) => [...sheet.querySelectorAll(selector)].map((e) => e.textContent.trim());
  const after = (sheet, words) =>
    [...sheet.querySelectorAll("h3")].find((h) => h.textContent === words)?.nextElementSibling ?? document.createElement("p");
  const days = {};
  for (const section of sections.filter((s) => /^hatch-\d+-\d+$/.test(s.id))) {
    const rows = [...section.querySelectorAll("table.days tbody tr")].map((row) => [
      row.querySelector(".when").textContent.trim(), texts(row, ".tick").map((line) => line.replace(/\s+/g, " "))]);
    (days[section.id.replace(/-\d+$/, "")] ??= []).push(...rows);
  }
  return {
    drawn: drawings(),
    days,
    bags: sheets.map((sheet) => texts(after(sheet, "Feed"), "tbody td:last-child").map((t) => t.split(" ")[0])),
  };
}
