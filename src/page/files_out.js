// Files out of the page and into it: the same farm.toml, farm.diary and CSV that the program on a desk reads and writes.
import { filesOf } from "./answer.js";
import { ask, faultOf } from "./ask.js";
import { faultIn } from "./edits.js";
import { now } from "./moment.js";

const stem = (name) => name.replace(/\.toml$/, "");

/** Hands a file to the browser, which keeps it where it keeps what was downloaded. */
export function handOut(name, content, type) {
  const url = URL.createObjectURL(new Blob([content], { type }));
  const link = Object.assign(document.createElement("a"), { href: url, download: name });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

/** What can be taken out: a name for each, and who makes it. */
export const OUT = [
  { label: "The farm file", of: (record) => [record.name, record.farm, "application/toml"] },
  { label: "The diary", needsDiary: true, of: (record) => [`${stem(record.name)}.diary`, record.diary, "application/vnd.sqlite3"] },
  { label: "The diary as CSV", needsDiary: true, ending: ".csv", type: "text/csv", words: ["diary", "export", "farm.toml"] },
  { label: "The plan as CSV", ending: "-plan.csv", type: "text/csv", words: ["plan", "farm.toml", "--csv"], clock: true },
  { label: "A calendar", ending: ".ics", type: "text/calendar", words: ["calendar", "farm.toml"], clock: true },
  { label: "Sheets to print", ending: ".html", type: "text/html", words: ["sheet", "farm.toml"], clock: true },
];

/** Takes one of them out; the program's fault as an error. */
export async function takeOut(one, record) {
  if (one.of) return handOut(...one.of(record));
  const answer = await ask({ words: one.clock ? [...one.words, "--now", now()] : one.words, files: filesOf(record) });
  if (answer.status !== 0) throw new Error(faultOf(answer));
  handOut(stem(record.name) + one.ending, answer.out, one.type);
}

/** Files that somebody chose, by what they are: {name, farm, diary, csv}. */
export async function readFiles(files) {
  const found = {};
  for (const file of files) {
    if (/\.toml$/i.test(file.name)) Object.assign(found, { name: file.name, farm: await file.text() });
    else if (/\.csv$/i.test(file.name)) found.csv = await file.text();
    else if (/\.diary$/i.test(file.name)) found.diary = new Uint8Array(await file.arrayBuffer());
    else throw new Error(`${file.name}: a farm file ends with .toml, a diary with .diary or .csv`);
  }
  return found;
}

async function answered(words, files) {
  const answer = await ask({ words, files });
  if (answer.status !== 0) throw new Error(faultOf(answer));
  return answer;
}

/** Takes files in; `emptyDiary` where the farm is another one. Nothing changes where the program refuses any of them. */
export function takeIn(barn, found, { emptyDiary = false } = {}) {
  return barn.change(async (record) => {
    const fields = {};
    if (found.farm !== undefined) {
      const fault = await faultIn(found.farm);
      if (fault) throw new Error(fault.replace("farm.toml", found.name));
      Object.assign(fields, { farm: found.farm, name: found.name, draft: null });
    }
    const farm = fields.farm ?? record.farm;
    if (!farm) throw new Error("First bring in the farm file: a diary belongs to a farm.");
    if (found.diary) {
      await answered(["diary", "show", "farm.toml", "--json"], filesOf({ farm, diary: found.diary }));
      Object.assign(fields, { diary: found.diary, ticked: [] });
    } else if (emptyDiary) {
      Object.assign(fields, { diary: null, ticked: [] });
    }
    if (found.csv !== undefined) {
      const files = { ...filesOf({ farm, diary: "diary" in fields ? fields.diary : record.diary }), "diary.csv": found.csv };
      fields.diary = (await answered(["diary", "import", "farm.toml", "diary.csv", "--json"], files)).files["farm.diary"] ?? record.diary;
    }
    return fields;
  });
}
