// Draws the icon of the page, a speckled quail's egg, as icon.svg and in pixels: node icons.mjs FOLDER
import fs from "node:fs";
import path from "node:path";
import { deflateSync } from "node:zlib";

// In a square of 1 by 1. An egg is half an ellipse above its middle and half a flatter one below.
const ground = "#2f4a3a";
const egg = { x: 0.5, y: 0.55, across: 0.235, above: 0.33, below: 0.255, colour: "#f1e6cf" };
const speckles = [[0.43, 0.34, 0.03, 0.022], [0.57, 0.4, 0.04, 0.028], [0.4, 0.5, 0.045, 0.03], [0.54, 0.56, 0.028, 0.036],
  [0.64, 0.6, 0.03, 0.024], [0.44, 0.66, 0.036, 0.027], [0.56, 0.7, 0.045, 0.025], [0.5, 0.27, 0.018, 0.014]]
  .map(([x, y, across, high]) => ({ x, y, across, above: high, below: high, colour: "#5a3f2b" }));
const shapes = [egg, ...speckles];

function svg() {
  const paths = shapes.map(({ x, y, across, above, below, colour }) =>
    `<path fill="${colour}" d="M${x - across} ${y}A${across} ${above} 0 0 1 ${x + across} ${y}` +
    `A${across} ${below} 0 0 1 ${x - across} ${y}Z"/>`);
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1 1"><path fill="${ground}" d="M0 0H1V1H0Z"/>` +
    `${paths.join("")}</svg>\n`;
}

const rgb = (colour) => [1, 3, 5].map((i) => parseInt(colour.slice(i, i + 2), 16));

function colourAt(x, y) {
  const inside = ({ x: cx, y: cy, across, above, below }) =>
    ((x - cx) / across) ** 2 + ((y - cy) / (y < cy ? above : below)) ** 2 <= 1;
  return rgb(shapes.findLast(inside)?.colour ?? ground);
}

/** The mean of 4 by 4 points. */
function pixel(column, row, size) {
  const sum = [0, 0, 0];
  for (let i = 0; i < 16; i += 1) {
    const at = (whole, part) => (whole + (part + 0.5) / 4) / size;
    colourAt(at(column, i % 4), at(row, i >> 2)).forEach((value, c) => { sum[c] += value / 16; });
  }
  return sum.map(Math.round);
}

/** The check sum of PNG (ISO 3309), bit by bit. */
function crc32(bytes) {
  let sum = ~0;
  for (const byte of bytes) {
    sum ^= byte;
    for (let bit = 0; bit < 8; bit += 1) sum = (sum >>> 1) ^ (sum & 1 ? 0xedb88320 : 0);
  }
  return ~sum >>> 0;
}

function chunk(name, data) {
  const body = Buffer.concat([Buffer.from(name), data]);
  const length = Buffer.alloc(4), sum = Buffer.alloc(4);
  length.writeUInt32BE(data.length);
  sum.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, sum]);
}

function png(size) {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(size, 0);
  head.writeUInt32BE(size, 4);
  head.set([8, 2, 0, 0, 0], 8);  // 8 bits, red green blue
  const rows = [];
  for (let row = 0; row < size; row += 1) {
    rows.push(0);  // no filter
    for (let column = 0; column < size; column += 1) rows.push(...pixel(column, row, size));
  }
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  const pixels = deflateSync(Buffer.from(rows), { level: 9 });
  return Buffer.concat([signature, chunk("IHDR", head), chunk("IDAT", pixels), chunk("IEND", Buffer.alloc(0))]);
}

const folder = process.argv[2];
fs.writeFileSync(path.join(folder, "icon.svg"), svg());
for (const size of [192, 512]) fs.writeFileSync(path.join(folder, `icon-${size}.png`), png(size));
