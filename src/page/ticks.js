// Ticks: `diary done` and, to take one back, `diary edit --remove` of the entries it wrote.
import { filesOf } from "./answer.js";
import { ask, faultOf } from "./ask.js";
import { dayOf, now } from "./moment.js";

async function answered(words, files) {
  const answer = await ask({ words, files });
  if (answer.status !== 0) throw new Error(faultOf(answer));
  return answer;
}

/** The deeds of today by their id, as the program numbers them for this record. */
async function numbersNow(record, moment) {
  const answer = await answered(["today", "farm.toml", "--json", "--now", moment], filesOf(record));
  return new Map(JSON.parse(answer.out).chores.flatMap((chore) => chore.deeds.map((deed) => [deed.id, deed.n])));
}

const entryOf = (entry) => JSON.stringify([entry.at, entry.hatch, entry.what, entry.feed_kg, entry.water_l, entry.birds, entry.note]);

/** The entries of each part: a part's begin with its `done`. */
function byPart(entries, parts) {
  const of = new Map(parts.map((part) => [part.id, []]));
  let own = null;
  for (const entry of entries) {
    if (entry.what === "done") own = of.get(entry.note);
    own?.push(entryOf(entry));
  }
  return of;
}

/** The fields that change when these parts are ticked by these numbers; null where the program understands others by them. */
async function ticked(record, parts, numbers, amounts, moment) {
  const words = parts.map(({ id }) => (amounts[id] ? `${numbers.get(id)}=${amounts[id]}` : `${numbers.get(id)}`));
  const answer = await answered(["diary", "done", "farm.toml", ...words, "--json", "--now", moment], filesOf(record));
  const entries = byPart(JSON.parse(answer.out).entries, parts);
  if ([...entries.values()].some((own) => own.length === 0)) return null;
  const news = parts.map(({ ticked: _, ...deed }) => ({ deed, day: dayOf(moment), at: moment, entries: entries.get(deed.id) }));
  const kept = record.ticked.filter((one) => one.day === dayOf(moment));
  return { diary: answer.files["farm.diary"], ticked: [...kept, ...news] };
}

/**
 * Ticks all parts of a line of the list `today`, which is about the record `about`; `amounts` maps ids to what was
 * measured. Numbers hold for the day whatever is ticked, so those shown are tried first on the same farm; where they are
 * others by now they are asked for anew.
 */
export function tick(barn, { today, about }, line, amounts = {}) {
  return barn.change(async (record) => {
    const moment = now();
    if (record.farm === about.farm && dayOf(moment) === dayOf(today.now)) {
      const shown = new Map(line.parts.map((part) => [part.id, part.n]));
      const fields = record === about
        ? await ticked(record, line.parts, shown, amounts, moment)
        : await ticked(record, line.parts, shown, amounts, moment).catch(() => null);
      if (fields) return fields;
    }
    const numbers = await numbersNow(record, moment);
    const there = line.parts.filter((part) => numbers.has(part.id));
    if (there.length === 0) return null; // done already, by another tab
    const fields = await ticked(record, there, numbers, amounts, moment);
    if (!fields) throw new Error("The list has changed: look again.");
    return fields;
  });
}

/** Takes back all parts of a line. */
export function untick(barn, line) {
  const ids = new Set(line.parts.map((part) => part.id));
  return barn.change(async (record) => {
    const mine = record.ticked.filter((one) => ids.has(one.deed.id));
    let diary = record.diary;
    for (const entry of mine.flatMap((one) => one.entries)) {
      const files = filesOf({ ...record, diary });
      const shown = JSON.parse((await answered(["diary", "show", "farm.toml", "--json", "--all"], files)).out);
      const n = shown.entries.findLastIndex((one) => entryOf(one) === entry) + 1;
      if (n === 0) continue; // taken out by another way already
      const words = ["diary", "edit", "farm.toml", `${n}`, "--remove", "--json", "--now", now()];
      diary = (await answered(words, files)).files["farm.diary"];
    }
    return { diary, ticked: record.ticked.filter((one) => !ids.has(one.deed.id)) };
  });
}
