// The farm file changed line by line: what is read is what the program reads, and all else stays as it was.
//   node lines.mjs PAGE PROGRAM ROOT
import assert from "node:assert/strict";
import fs from "node:fs";
import path from "node:path";
import { test } from "node:test";
import { pathToFileURL } from "node:url";

const [, PROGRAM, ROOT] = process.argv.slice(2);
const source = (name) => import(pathToFileURL(path.resolve(ROOT, "src/page", name)).href);
const lines = await source("toml_lines.js");
const { Bare, readValue, writeValue } = await source("toml_value.js");
const { execFileSync } = await import("node:child_process");

const FARMS = fs.readdirSync(path.join(ROOT, "rations/farms")).filter((name) => name.endsWith(".toml"));
const textOf = (name) => fs.readFileSync(path.join(ROOT, "rations/farms", name), "utf8");
const starter = execFileSync(path.resolve(PROGRAM), ["new", "-"], { encoding: "utf8" });

/** Every table of a text: its sort, and its name or number. */
function places(text) {
  const counts = {};
  return lines.tablesOf(text).slice(1).filter(({ path: words }) => words.length <= 2).map(({ path: [sort, name], listed, keys }) => ({
    sort, which: listed ? (counts[sort] = (counts[sort] ?? -1) + 1) : name ?? null, keys: keys.map(({ key }) => key) }));
}

test("a value set to what it is leaves the text as it is read", () => {
  for (const text of [...FARMS.map(textOf), starter]) {
    for (const { sort, which, keys } of places(text)) {
      for (const key of keys) {
        const value = lines.readTable(text, sort, which)[key];
        const again = lines.withValue(text, sort, which, key, value);
        assert.deepEqual(lines.readTable(again, sort, which)[key], value, `${sort} ${which} ${key}`);
        if (typeof value === "string" || value instanceof Bare) assert.equal(again, text, `${sort} ${which} ${key}`);
      }
    }
  }
});

test("one line changes, and its comment stays in its column", () => {
  const changed = lines.withValue(starter, "hopper", "tube", "volume", "14 qt");
  const differ = changed.split("\n").filter((line, i) => line !== starter.split("\n")[i]);
  assert.deepEqual(differ, ['volume = "14 qt"                     # what it holds to the brim; measure it with water']);
  const [before] = starter.split("\n").filter((line) => line.includes("what it holds to the brim"));
  assert.equal(differ[0].indexOf("#") - before.indexOf("#"), 0);
});

test("a key taken out becomes a comment, and is taken up from it again", () => {
  const without = lines.withoutKey(starter, "hopper", "tube", "stays_behind");
  assert.equal("stays_behind" in lines.readTable(without, "hopper", "tube"), false);
  assert.match(without, /^# stays_behind = "5 %" +# feed below the lip/m);
  const again = lines.withValue(without, "hopper", "tube", "stays_behind", "5 %");
  assert.equal(lines.readTable(again, "hopper", "tube").stays_behind, "5 %");
  assert.equal(again.split("\n").length, starter.split("\n").length);
});

test("a comment that offers a key for a table behind a # is not taken up for the one before it", () => {
  const changed = lines.withValue(starter, "drinker", "jar", "title", "Jar");
  assert.equal(lines.readTable(changed, "drinker", "jar").title, "Jar");
  const rate = lines.withValue(starter, "drinker", "jar", "rate", "1 tsp per gal");
  assert.match(rate, /^# rate = /m);
});

test("tables come and go, comments of the next one stay", () => {
  const more = lines.withItem(starter, "hopper", "long trough", { volume: "5 gal" });
  assert.deepEqual(lines.itemsOf(more, "hopper").map(({ name }) => name), ["tube", "long trough"]);
  assert.ok(more.indexOf("long trough") < more.indexOf("# ---- Drinkers."));
  const fewer = lines.withoutItem(more, "hopper", "long trough");
  assert.equal(fewer, starter);
  assert.deepEqual(lines.itemsOf(lines.withoutItem(textOf("saltgrass.toml"), "hatch", 1), "hatch").map(({ values }) => values.name),
    ["April bobwhites", "Breeders", "June jumbos"]);
});

test("values are read and written as TOML has them", () => {
  const read = (words) => readValue(words, 0).value;
  assert.equal(read('"a \\"b\\" \\\\ \\u00e9 \\U0001F423" # x'), 'a "b" \\ \u00e9 \u{1F423}');
  assert.equal(read("'a \\ b'"), "a \\ b");
  assert.deepEqual(read('[ "a", # one\n  "b",\n]'), ["a", "b"]);
  assert.deepEqual(read('{ at = "8 wk", birds = 20 }'), { at: "8 wk", birds: 20 });
  assert.equal(String(read("2027-04-05 # day")), "2027-04-05");
  for (const hard of ['"', "\\", "</script>", "\u{1F423}", "#", "a = b", "\t", "\u0001", "]]"]) {
    assert.equal(read(writeValue(hard)), hard);
    const text = lines.withValue(starter, "farm", null, "name", hard);
    assert.equal(lines.readTable(text, "farm").name, hard);
    assert.equal(lines.itemsOf(text, "feed").length, 2);
  }
});

test("a faulty text is read as far as it goes", () => {
  for (const text of ["", "[farm", "[farm]\nname = ", "[farm]\nname = \"open\n", "= 3\n", "[[hatch]]\nname = [1, \n", "[a.b.c]\nx = 1", "\r\n[farm]\r\nname = \"x\"\r\n"]) {
    assert.ok(Array.isArray(lines.tablesOf(text)));
    assert.ok(typeof lines.farmName(text) === "string");
  }
  assert.equal(lines.farmName('\r\n[farm]\r\nname = "x"\r\n'), "x");
});
