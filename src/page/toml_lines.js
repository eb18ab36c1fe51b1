// The farm file as lines: its tables and keys found, one value changed, all else (comments, order, spaces) as it was.
import { readKey, readValue, writeKey, writeValue } from "./toml_value.js";

const LIST = { hatch: true }; // [[hatch]]; the others are [feed.NAME]

function headerOf(line) {
  const opened = /^\s*(\[\[?)\s*/.exec(line);
  if (!opened) return null;
  const path = [];
  let at = opened[0].length;
  try {
    for (;;) {
      const { key, end } = readKey(line, at);
      path.push(key);
      at = end + /^\s*/.exec(line.slice(end))[0].length;
      if (line[at] !== ".") break;
      at += 1 + /^\s*/.exec(line.slice(at + 1))[0].length;
    }
  } catch {
    return null;
  }
  return line.startsWith("]", at) ? { path, listed: opened[1] === "[[" } : null;
}

/** `key = ` at the beginning of the line that starts at `at`, or of a comment that holds one. */
function keyAt(text, at, commented) {
  const begin = (commented ? /^\s*#\s*/ : /^\s*/).exec(text.slice(at))[0];
  if (begin.includes("\n")) return null;
  try {
    const { key, end } = readKey(text, at + begin.length);
    const equals = /^\s*=\s*/.exec(text.slice(end))?.[0];
    if (!equals || equals.includes("\n")) return null;
    const from = end + equals.length;
    return { key, at, name: at + begin.length, from, ...readValue(text, from) };
  } catch {
    return null;
  }
}

const lineEnd = (text, at) => {
  const end = text.indexOf("\n", at);
  return end < 0 ? text.length : end + 1;
};

/**
 * Tables in their order: {path, listed, at, body, end, keys, offered}. `keys` are its values; `offered` those that stand
 * behind a # and can be taken up. Positions are offsets into the text.
 */
export function tablesOf(text) {
  const tables = [];
  let table = { path: [], listed: false, at: 0, body: 0, keys: [], offered: [] };
  for (let at = 0; at < text.length; ) {
    const line = text.slice(at, lineEnd(text, at));
    const header = headerOf(line);
    const here = header ? null : keyAt(text, at, false);
    if (header) {
      tables.push(Object.assign(table, { end: at }));
      table = { ...header, at, body: lineEnd(text, at), keys: [], offered: [] };
    } else if (here) {
      table.keys.push(here);
    } else if (/^\s*#\s*\[/.test(line)) {
      table.closed = true; // what follows is offered for a table that is itself behind a #
    } else if (/^\s*#/.test(line) && !table.closed) {
      const offered = keyAt(text, at, true);
      if (offered && !text.slice(at, offered.end).trimEnd().includes("\n")) table.offered.push(offered);
    }
    at = lineEnd(text, here ? here.end : at);
  }
  tables.push(Object.assign(table, { end: text.length }));
  return tables;
}

/** The tables of a sort: [{name, index, values}]; hatches have an index only. */
export function itemsOf(text, sort) {
  return tablesOf(text)
    .filter((table) => table.path[0] === sort && table.path.length === (LIST[sort] ? 1 : 2))
    .map((table, index) => ({ name: table.path[1] ?? null, index, values: valuesOf(table) }));
}

const valuesOf = (table) => Object.fromEntries(table.keys.map(({ key, value }) => [key, value]));

function find(text, sort, which) {
  const tables = tablesOf(text).filter((table) => table.path[0] === sort);
  if (LIST[sort]) return tables.filter((table) => table.path.length === 1)[which];
  return tables.find((table) => (which === null ? table.path.length === 1 : table.path.length === 2 && table.path[1] === which));
}

/** The values of [farm], or of one table of a sort; {} where there is none. */
export function readTable(text, sort, which = null) {
  const table = find(text, sort, which);
  return table ? valuesOf(table) : {};
}

const replaced = (text, from, to, by) => text.slice(0, from) + by + text.slice(to);

/** The same, with a comment behind it staying in its column where there is room. */
function withWords(text, from, to, words) {
  const gap = /^ +(?=#)/.exec(text.slice(to))?.[0].length ?? 0;
  const spaces = gap > 0 ? Math.max(1, gap + to - from - words.length) : 0;
  return replaced(text, from, to + gap, words + " ".repeat(spaces));
}

/** Sets one key: in its place, in place of the comment that offers it, or behind the last key of its table. */
export function withValue(text, sort, which, key, value) {
  const table = find(text, sort, which);
  const words = writeValue(value);
  const there = table.keys.find((one) => one.key === key);
  if (there) return withWords(text, there.from, there.end, words);
  const offered = table.offered.find((one) => one.key === key);
  if (offered) return withWords(text, offered.at, offered.end, `${writeKey(key)} = ${words}`);
  const last = table.keys.at(-1);
  const at = last ? lineEnd(text, last.end) : table.body;
  const before = at > 0 && text[at - 1] !== "\n" ? "\n" : "";
  return replaced(text, at, at, `${before}${writeKey(key)} = ${words}\n`);
}

/** Takes a key out: a line of its own becomes a comment that keeps what it said, several lines go. */
export function withoutKey(text, sort, which, key) {
  const there = find(text, sort, which).keys.find((one) => one.key === key);
  if (!there) return text;
  const lines = text.slice(there.at, there.end).trimEnd();
  return lines.includes("\n")
    ? replaced(text, there.at, lineEnd(text, there.end), "")
    : replaced(text, there.at, there.at, "# ");
}

/** Where a table ends: behind its last key, and behind the comments that follow that without an empty line. */
function tableEnd(text, table) {
  let at = table.keys.length > 0 ? lineEnd(text, table.keys.at(-1).end) : table.body;
  while (/^[ \t]*#/.test(text.slice(at, lineEnd(text, at)))) at = lineEnd(text, at);
  return at;
}

const blankBefore = (text) => (text === "" || text.endsWith("\n\n") ? "" : text.endsWith("\n") ? "\n" : "\n\n");

/** A new table of a sort with these values, behind the last of its sort. */
export function withItem(text, sort, name, values) {
  const same = tablesOf(text).filter((table) => table.path[0] === sort);
  const header = LIST[sort] ? `[[${sort}]]` : name === null ? `[${sort}]` : `[${sort}.${writeKey(name)}]`;
  const lines = Object.entries(values).map(([key, value]) => `${writeKey(key)} = ${writeValue(value)}\n`).join("");
  const last = same.at(-1);
  const at = last ? tableEnd(text, last) : text.length;
  const before = text.slice(0, at);
  return `${before}${blankBefore(before)}${header}\n${lines}${text.slice(at)}`;
}

/** Without one table; comments that stand apart from it stay. */
export function withoutItem(text, sort, which) {
  const table = find(text, sort, which);
  const before = text.slice(0, table.at), after = text.slice(tableEnd(text, table));
  const isApart = before.endsWith("\n\n") && (after === "" || after.startsWith("\n"));
  return (isApart ? before.slice(0, -1) : before) + after;
}

export const farmName = (text) => String(readTable(text, "farm").name ?? "My farm");

export const unitsOf = (text) => {
  const units = readTable(text, "farm").units;
  return ["us", "metric", "uk"].includes(units) ? units : "us";
};

/** The lines of one table, as they stand in the file; null where there is none. */
export function linesOf(text, sort, which) {
  const table = find(text, sort, which);
  if (!table) return null;
  return text.slice(table.at, tableEnd(text, table)).trimEnd();
}
