// The program's answer as a page, with where its figures come from when that is asked for.
import { useState } from "preact/hooks";
import { useAnswer, usePage } from "../answer.js";
import { Blocks } from "../blocks.js";
import { html } from "../html.js";
import { farmName } from "../toml_lines.js";
import { Fault, Waiting } from "./parts.js";

/** `words` is the question, null where it is not complete, `what` says what it works out; `farm` is false where it needs no farm file. */
export function AnswerPage({ words, what, farm = true, sources = true }) {
  const { record } = usePage();
  const [named, name] = useState(false);
  const { answer, waiting, trouble } = useAnswer(words && (named ? [...words, "--sources"] : words), farm ? record : null);
  return html`<section class="answer" aria-label="Answer">
    <${Waiting} when=${waiting} what=${what} />
    <${Fault} answer=${answer} trouble=${trouble} />
    ${answer?.page && html`<${Blocks} page=${answer.page} name=${record.farm && farmName(record.farm)} />`}
    ${answer?.out && html`<pre tabindex="0">${answer.out}</pre>`}
    ${sources && answer?.page && html`<button aria-pressed=${named} onClick=${() => name(!named)}>
      ${named ? "Leave the sources out" : "Where each figure comes from"}</button>`}
  </section>`;
}
