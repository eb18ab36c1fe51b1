// Changes of the farm file. A text that the program takes becomes the farm; one with a fault waits as a draft, so that
// nothing typed is lost and the rest of the page goes on with the farm as it was.
import { filesOf } from "./answer.js";
import { ask, faultOf } from "./ask.js";
import { now } from "./moment.js";
import { tablesOf } from "./toml_lines.js";

export const textOf = (record) => record.draft ?? record.farm;

/** The question that reads the whole file. */
export const checkWords = (moment) => ["today", "farm.toml", "--json", "--no-diary", "--now", moment];

/** What is wrong with a farm's text, in the program's words; null where nothing is. */
export async function faultIn(text) {
  const answer = await ask({ words: checkWords(now()), files: filesOf({ farm: text, diary: null }) });
  return answer.status === 0 ? null : faultOf(answer);
}

export function edit(barn, make) {
  return barn.change(async (record) => {
    const text = make(textOf(record));
    if (text === textOf(record)) return null;
    return (await faultIn(text)) ? { draft: text } : { farm: text, draft: null };
  });
}

/** "farm.toml:8: feed.starter.bag: found ..." as {line, path, words}; all is words where it names no line. */
export function partsOf(fault) {
  const [, line, words] = /^farm\.toml:(\d+): (.*)$/s.exec(fault) ?? [null, null, fault];
  const [, path, rest] = /^((?:[\w-]+|"[^"]*")(?:\.(?:[\w-]+|"[^"]*"))+): (.*)$/s.exec(words) ?? [null, "", words];
  return { line: line && Number(line), path: path ? path.split(".") : [], words: rest };
}

/** Where a fault belongs: {sort, which, key, words}; `which` is the number of a hatch, else the name. */
export function placeOfFault(text, fault) {
  const { line, path, words } = partsOf(fault);
  if (!line) return { sort: null, which: null, key: null, words };
  const at = text.split("\n").slice(0, line - 1).join("\n").length + (line > 1 ? 1 : 0);
  const tables = tablesOf(text).slice(1);
  const table = tables.findLast((one) => one.at <= at) ?? { path: [], keys: [] };
  const sort = table.path[0] ?? null;
  const which = table.listed ? tables.filter((one) => one.listed && one.path[0] === sort).indexOf(table) : table.path[1] ?? null;
  const onLine = table.keys.find((one) => one.at <= at && at <= one.end);
  const key = onLine?.key ?? path[table.listed || table.path.length > 1 ? 2 : 1] ?? null;
  return { sort, which, key, words };
}
