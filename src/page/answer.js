// Answers for screens: the old one stays until the new one is there.
import { useContext, useEffect, useRef, useState } from "preact/hooks";
import { createContext } from "preact";
import { ask } from "./ask.js";

/** {barn, record, now}: what every screen needs. */
export const Page = createContext(null);
export const usePage = () => useContext(Page);

export const filesOf = (record) =>
  record.diary ? { "farm.toml": record.farm, "farm.diary": record.diary } : { "farm.toml": record.farm };

const known = new Map(); // the last answer to each question, and about which farm: a screen looked at again is not empty
const MOST_KNOWN = 40;
const QUIET = 300; // ms before a line says that something is being worked out

/** A question whenever it is asked. */
const everAsked = (words) => words.filter((_, i) => words[i - 1] !== "--now").join("\n");

function remember(words, answer, about) {
  known.set(everAsked(words), { answer, about });
  if (known.size > MOST_KNOWN) known.delete(known.keys().next().value);
}

/**
 * {answer, about, waiting, trouble} for a question about the farm of a record, or about none; `words` is null where there
 * is no question yet. `about` is the record that the answer is about.
 */
export function useAnswer(words, record) {
  const question = words && words.join("\n");
  const [shown, show] = useState(() => {
    const before = words && known.get(everAsked(words));
    return { answer: null, about: null, trouble: null, ...(before?.about?.farm === record?.farm ? before : {}) };
  });
  const [waiting, wait] = useState(false);
  const asked = useRef(0);
  useEffect(() => {
    const mine = ++asked.current;
    if (!words) {
      wait(false);
      show({ answer: null, about: null, trouble: null });
      return undefined;
    }
    const quiet = setTimeout(() => wait(true), QUIET);
    ask({ words, files: record ? filesOf(record) : {} })
      .then((answer) => {
        remember(words, answer, record);
        if (mine === asked.current) show({ answer, about: record, trouble: null });
      })
      .catch((error) => mine === asked.current && show({ answer: null, about: null, trouble: error.message }))
      .finally(() => {
        clearTimeout(quiet);
        if (mine === asked.current) wait(false);
      });
    return () => clearTimeout(quiet);
  }, [question, record?.farm, record?.diary]);
  return { ...shown, waiting };
}

const read = new WeakMap();

/** The answer read as JSON, once; null where there is none or the program refused. */
export function jsonOf(answer) {
  if (!answer || answer.status !== 0 || !answer.out) return null;
  if (!read.has(answer)) read.set(answer, JSON.parse(answer.out));
  return read.get(answer);
}
