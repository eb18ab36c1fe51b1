// The deeds of `today`, with those ticked here back in their chores, and those told in the same words in one line.
import { dayOf } from "./moment.js";

/** Deeds that several hatches share word for word: one box ticks them all. */
function together(deeds) {
  const lines = new Map();
  for (const deed of deeds) {
    const key = [deed.deed, deed.words, deed.overdue, Boolean(deed.ticked)].join("\n");
    if (!lines.has(key)) lines.set(key, { key: deed.id, words: deed.words, deed: deed.deed, parts: [] });
    lines.get(key).parts.push(deed);
  }
  return [...lines.values()].map((line) => ({ ...line, ticked: line.parts.every((part) => part.ticked) }));
}

/**
 * Chores in the order of time, what is overdue first: {key, at, overdue, deeds}. `later` deeds are of a day to come and
 * cannot be ticked yet.
 */
export function choresOf(today, ticked) {
  const here = today.chores.flatMap((chore) => chore.deeds.map((deed) => ({ ...deed, at: chore.at })));
  const ids = new Set(here.map((deed) => deed.id));
  const back = ticked.filter((one) => one.day === dayOf(today.now) && !ids.has(one.deed.id));
  const all = [...here, ...back.map((one) => ({ ...one.deed, ticked: one }))];
  const chores = new Map();
  for (const deed of all.sort((a, b) => a.at.localeCompare(b.at) || a.n - b.n)) {
    const key = deed.overdue ? "overdue" : deed.at;
    if (!chores.has(key)) chores.set(key, { key, at: deed.at, overdue: deed.overdue, deeds: [] });
    chores.get(key).deeds.push({ ...deed, later: dayOf(deed.at) > dayOf(today.now) });
  }
  return [...chores.values()]
    .sort((a, b) => b.overdue - a.overdue || a.at.localeCompare(b.at))
    .map((chore) => ({ ...chore, deeds: together(chore.deeds) }));
}
