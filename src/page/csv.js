// CSV as the program writes it (RFC 4180): the first row names the columns.
export function readCsv(text) {
  const rows = [[""]];
  let quoted = false;
  for (let i = 0; i < text.length; i += 1) {
    const c = text[i], row = rows.at(-1);
    if (quoted && c === '"' && text[i + 1] === '"') row[row.length - 1] += text[(i += 1)];
    else if (c === '"') quoted = !quoted;
    else if (quoted || !/[,\r\n]/.test(c)) row[row.length - 1] += c;
    else if (c === ",") row.push("");
    else if (c === "\n") rows.push([""]);
  }
  return rows.filter((row) => row.length > 1 || row[0] !== "");
}
