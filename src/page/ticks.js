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

/**
 * Ticks all parts of a line of the list; `amounts` maps ids to what was measured. The numbers shown hold for the day of
 * the list; on any other farm, diary or day they are asked for anew.
 */
export function tick(barn, today, line, amounts = {}) {
  const shown = barn.now;
  return barn.change(async (record) => {
    const moment = now();
    const same = record === shown && dayOf(moment) === dayOf(today.now);
    const numbers = same ? null : await numbersNow(record, moment);
    const there = line.parts.filter((part) => !numbers || numbers.has(part.id));
    if (there.length === 0) return null; // done already, by another tab
    const words = there.map((part) => {
      const n = numbers ? numbers.get(part.id) : part.n;
      return amounts[part.id] ? `${n}=${amounts[part.id]}` : `${n}`;
    });
    const answer = await answered(["diary", "done", "farm.toml", ...words, "--json", "--now", moment], filesOf(record));
    const entries = byPart(JSON.parse(answer.out).entries, there);
    if ([...entries.values()].some((own) => own.length === 0)) throw new Error("The list has changed: look again.");
    const ticked = there.map(({ ticked: _, ...deed }) => ({ deed, day: dayOf(moment), at: moment, entries: entries.get(deed.id) }));
    const kept = record.ticked.filter((one) => one.day === dayOf(moment));
    return { diary: answer.files["farm.diary"], ticked: [...kept, ...ticked] };
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
