// The page starts here: what is kept is read, what the page carries is looked at, then the screens are shown.
import { render } from "preact";
import { App } from "./app.js";
import { readProgram, startProgram } from "./ask.js";
import { Barn } from "./barn.js";
import { takeCarried } from "./carried.js";
import { html } from "./html.js";

async function start() {
  const barn = new Barn();
  await barn.open();
  takeCarried(barn);
  const root = document.getElementById("page");
  root.replaceChildren();
  render(html`<${App} barn=${barn} />`, root);
}

self.readProgram = readProgram;
startProgram();
start();
