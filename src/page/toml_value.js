// One value of TOML: where it ends in a text, what it is, and how it is written. Values of a farm file: text, numbers,
// dates, true and false, lists and inline tables.

export class NotAValue extends Error {}

const ESCAPES = { b: "\b", t: "\t", n: "\n", f: "\f", r: "\r", '"': '"', "\\": "\\" };

class Reader {
  constructor(text, at) {
    this.text = text;
    this.at = at;
  }

  /** Spaces; between the items of a list line ends and comments too. */
  skip(lines) {
    for (;;) {
      const c = this.text[this.at];
      if (c === " " || c === "\t" || (lines && (c === "\n" || c === "\r"))) this.at += 1;
      else if (lines && c === "#") while (this.at < this.text.length && this.text[this.at] !== "\n") this.at += 1;
      else return;
    }
  }

  expect(c) {
    if (this.text[this.at] !== c) throw new NotAValue(c);
    this.at += 1;
  }

  quoted() {
    const mark = this.text[this.at];
    if (this.text.startsWith(mark.repeat(3), this.at)) throw new NotAValue("text of several lines");
    let words = "";
    for (this.at += 1; this.text[this.at] !== mark; this.at += 1) {
      const c = this.text[this.at];
      if (c === undefined || c === "\n") throw new NotAValue("open text");
      words += c === "\\" && mark === '"' ? this.escape() : c;
    }
    this.at += 1;
    return words;
  }

  /** Stands on the backslash, and afterwards on the last sign of the escape. */
  escape() {
    const c = this.text[(this.at += 1)];
    const length = { u: 4, U: 8 }[c];
    if (!length) {
      if (!(c in ESCAPES)) throw new NotAValue("escape");
      return ESCAPES[c];
    }
    const code = parseInt(this.text.slice(this.at + 1, this.at + 1 + length), 16);
    if (!(code <= 0x10ffff)) throw new NotAValue("escape");
    this.at += length;
    return String.fromCodePoint(code);
  }

  bare() {
    const word = /^[^\s,\]}#]+/.exec(this.text.slice(this.at))?.[0];
    if (!word) throw new NotAValue("nothing");
    this.at += word.length;
    if (word === "true" || word === "false") return word === "true";
    if (/^\d{4}-\d{2}-\d{2}/.test(word)) return new Bare(word);
    const number = Number(word.replaceAll("_", ""));
    return Number.isNaN(number) ? new Bare(word) : number;
  }

  value() {
    const c = this.text[this.at];
    if (c === '"' || c === "'") return this.quoted();
    if (c === "[") return this.list();
    if (c === "{") return this.table();
    return this.bare();
  }

  list() {
    const all = [];
    this.expect("[");
    for (this.skip(true); this.text[this.at] !== "]"; this.skip(true)) {
      all.push(this.value());
      this.skip(true);
      if (this.text[this.at] !== "]") this.expect(",");
    }
    this.expect("]");
    return all;
  }

  table() {
    const all = {};
    this.expect("{");
    for (this.skip(); this.text[this.at] !== "}"; this.skip()) {
      const key = this.key();
      this.skip();
      this.expect("=");
      this.skip();
      all[key] = this.value();
      this.skip();
      if (this.text[this.at] !== "}") this.expect(",");
    }
    this.expect("}");
    return all;
  }

  key() {
    if (/["']/.test(this.text[this.at])) return this.quoted();
    const word = /^[A-Za-z0-9_-]+/.exec(this.text.slice(this.at))?.[0];
    if (!word) throw new NotAValue("a key");
    this.at += word.length;
    return word;
  }
}

/** A word without quotes that is no number: a date. */
export class Bare {
  constructor(word) {
    this.word = word;
  }
  toString() {
    return this.word;
  }
}

/** {value, end} of the value that begins at `at`; throws NotAValue. */
export function readValue(text, at) {
  const reader = new Reader(text, at);
  const value = reader.value();
  return { value, end: reader.at };
}

/** {key, end}: the name at `at`, quoted or not. */
export function readKey(text, at) {
  const reader = new Reader(text, at);
  const key = reader.key();
  return { key, end: reader.at };
}

// Control characters are written as escapes, as TOML wants them.
const quote = (words) =>
  `"${words.replace(/["\\]/g, "\\$&").replace(/[\u0000-\u001f\u007f]/g, (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, "0")}`)}"`;

export const writeKey = (key) => (/^[A-Za-z0-9_-]+$/.test(key) ? key : quote(key));

export function writeValue(value) {
  if (typeof value === "string") return quote(value);
  if (Array.isArray(value)) {
    const items = value.map(writeValue);
    const line = `[${items.join(", ")}]`;
    const isOfTables = value.some((item) => item?.constructor === Object);
    return isOfTables && line.length > 90 ? `[\n${items.map((item) => `    ${item},\n`).join("")}]` : line;
  }
  if (value?.constructor === Object) {
    return `{ ${Object.entries(value).map(([k, v]) => `${writeKey(k)} = ${writeValue(v)}`).join(", ")} }`;
  }
  return String(value);
}
