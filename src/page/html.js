// Markup in JavaScript without a compiler; preact escapes every text and attribute.
import htm from "htm";
import { h } from "preact";

export const html = htm.bind(h);
