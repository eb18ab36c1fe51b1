// The first farm file, from the answers of the guided start.
import { withItem } from "./toml_lines.js";
import { Bare } from "./toml_value.js";

/** Where a fault of the file belongs among the questions, by its key. */
export const QUESTION_OF = {
  "farm.name": "name", "hatch.kind": "kind", "hatch.date": "date", "hatch.chicks": "chicks", "hatch.until": "until",
  "feed.title": "feed", "feed.protein": "protein", "feed.bag": "bag", "hopper.volume": "hopper", "hatch.hoppers": "hoppers",
  "drinker.volume": "drinker", "hatch.drinkers": "drinkers",
};

/** A count as typed: the program says what is wrong with anything else. */
const counted = (words) => (/^\d+$/.test(words.trim()) ? new Bare(words.trim()) : words);

export function firstFarm(said) {
  let text = "# Written by the page of cropful. Amounts stand in quotes with their unit; what follows a # is a note.\n\n";
  text = withItem(text, "farm", null, { name: said.name, units: said.units });
  text = withItem(text, "feed", "feed", { title: said.feed, protein: said.protein, bag: said.bag });
  text = withItem(text, "hopper", "hopper", { volume: said.hopper });
  text = withItem(text, "drinker", "drinker", { volume: said.drinker, change_every: "1 d" });
  return withItem(text, "hatch", null, {
    name: "First hatch",
    kind: said.kind,
    date: new Bare(said.date),
    chicks: counted(said.chicks),
    feeding: [{ feed: "feed", from: "0 d" }],
    until: said.until,
    hopper: "hopper",
    hoppers: counted(said.hoppers),
    drinker: "drinker",
    drinkers: counted(said.drinkers),
  });
}
