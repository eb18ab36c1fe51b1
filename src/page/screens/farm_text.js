// The farm file as text; what the program finds wrong in it, and where.
import { useEffect, useRef, useState } from "preact/hooks";
import { usePage } from "../answer.js";
import { edit, partsOf, textOf } from "../edits.js";
import { html } from "../html.js";
import { useFault } from "./farm_part.js";

const PAUSE = 600; // ms without typing before the text is checked and saved

/** The offsets at which a line begins and ends. */
function lineAt(text, line) {
  const lines = text.split("\n");
  const begin = lines.slice(0, line - 1).reduce((sum, one) => sum + one.length + 1, 0);
  return [begin, begin + (lines[line - 1]?.length ?? 0)];
}

export function FarmText() {
  const { barn, record } = usePage();
  const [typed, type] = useState(null);
  const area = useRef(null);
  const timer = useRef(0);
  const waiting = useRef(null);
  const fault = useFault();
  const write = () => {
    clearTimeout(timer.current);
    const text = waiting.current;
    waiting.current = null;
    if (text !== null) edit(barn, () => text);
  };
  useEffect(() => {
    addEventListener("pagehide", write);
    return () => {
      removeEventListener("pagehide", write);
      write();
    };
  }, []);
  const changed = (text) => {
    type(text);
    waiting.current = text;
    clearTimeout(timer.current);
    timer.current = setTimeout(write, PAUSE);
  };
  const text = typed ?? textOf(record);
  const line = fault && partsOf(fault).line;
  const goThere = () => {
    area.current.focus();
    area.current.setSelectionRange(...lineAt(text, line));
  };
  return html`<p><a class="back" href="#farm">‹ Farm</a></p>
    <h1><label for="text">The farm file</label></h1>
    ${fault && html`<p class="fault" role="alert" id="text-fault" dir="auto">${fault}</p>`}
    ${line && html`<button onClick=${goThere}>Go to line ${line}</button>`}
    ${record.draft !== null && html`<div class="row"><button onClick=${() => {
      waiting.current = null;
      type(null);
      barn.change(async () => ({ draft: null }));
    }}>Back to the file without the fault</button></div>`}
    <textarea id="text" ref=${area} value=${text} spellcheck="false" autocapitalize="off" autocomplete="off"
      aria-describedby=${fault ? "text-fault" : null} rows="30" onInput=${(e) => changed(e.target.value)}></textarea>`;
}
