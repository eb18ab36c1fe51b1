// The page answers as the program on a desk: random farms through both. Words, counts and moments are the same, figures to
// 1e-9, since another C library rounds otherwise; and a diary that the page has written is read alike.
//   node same_answers.mjs PAGE PROGRAM ROOT [FARMS]
import assert from "node:assert/strict";
import { execFileSync, spawnSync } from "node:child_process";
import fs from "node:fs";
import path from "node:path";
import { test } from "node:test";
import { assertSame, inFolder, PAGE, PROGRAM, ROOT } from "./browser.mjs";
import { openProgram } from "./program.mjs";

const FARMS = Number(process.argv[5] ?? 50);
const ask = openProgram(PAGE);

function native(folder, words) {
  const { status, stdout, stderr } = spawnSync(path.resolve(PROGRAM), words, { cwd: folder, encoding: "utf8", maxBuffer: 1 << 28 });
  return { status, out: stdout, err: stderr.trim().replace(/^cropful: /, "") };
}

function assertSameAnswer(page, desk, where) {
  assert.equal(page.status, desk.status, `${where}: ${page.err || desk.err}`);
  assert.equal(page.err.trim(), desk.err, where);
  if (desk.status === 0) assertSame(JSON.parse(page.out), JSON.parse(desk.out), where);
}

/** Ticks all that is shown, as the page does, and gives the farm the diary that came of it; false where nothing is due. */
async function tickAll(files, now) {
  const done = await ask(["diary", "done", "farm.toml", "all", "--now", now], files);
  if (done.status === 0) files["farm.diary"] = done.files["farm.diary"];
  return done.status === 0;
}

test("figures that differ, words and keys are noticed", () => {
  assertSame({ a: [1, "b"] }, { a: [1 + 1e-12, "b"] });
  for (const other of [{ a: [1 + 1e-8, "b"] }, { a: [1, "c"] }, { a: [1] }, { b: [1, "b"] }, { a: ["1", "b"] }]) {
    assert.throws(() => assertSame({ a: [1, "b"] }, other));
  }
});

test(`${FARMS} random farms`, () => inFolder(async (made) => {
  execFileSync("/usr/bin/python3", ["-B", path.join(ROOT, "tests/page/random_farms.py"), `${FARMS}`, path.join(ROOT, "rations"), made]);
  let ticked = 0, answers = 0;
  for (let n = 0; n < FARMS; n += 1) {
    const { now, questions, tick } = JSON.parse(fs.readFileSync(path.join(made, `${n}.json`), "utf8"));
    const files = { "farm.toml": fs.readFileSync(path.join(made, `${n}.toml`), "utf8") };
    if (tick && (await tickAll(files, now))) ticked += 1;
    await inFolder(async (folder) => {
      for (const [name, content] of Object.entries(files)) fs.writeFileSync(path.join(folder, name), content);
      for (const words of [...questions, ["diary", "show", "farm.toml", "--json", "--all"]]) {
        const page = await ask(words, files);
        assertSameAnswer(page, native(folder, words), `farm ${n}, cropful ${words.join(" ")}`);
        if (page.status === 0) answers += 1;
      }
    });
  }
  assert.ok(answers > FARMS * 5, `only ${answers} answers`);
  assert.ok(ticked >= FARMS / 8, `something was due on ${ticked} farms only`);
}));
