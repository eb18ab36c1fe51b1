// What the forms ask, sort by sort: the keys of the farm file (docs/files.md) that most farms need. The rest is written
// in the file's text.

/** What `units` of a farm may be. */
export const MEASURES = [["us", "US: lb, gal"], ["metric", "metric: kg, L"], ["uk", "UK: kg, L, imperial gal"]];

const WEIGHT = { us: ["lb", "oz", "kg", "g"], metric: ["kg", "g", "lb"], uk: ["kg", "g", "lb", "oz"] };
const VOLUME = {
  us: ["gal", "qt", "pt", "fl oz", "L", "mL", "in3", "ft3"],
  metric: ["L", "mL", "gal"],
  uk: ["L", "mL", "imp gal", "US gal"],
};
const TIME = { us: ["d", "wk", "h"], metric: ["d", "wk", "h"], uk: ["d", "wk", "h"] };
const WARMTH = { us: ["degF", "degC"], metric: ["degC", "degF"], uk: ["degC", "degF"] };
const LENGTH = { us: ["in", "ft", "cm", "m"], metric: ["cm", "m", "mm", "in"], uk: ["cm", "m", "in", "ft"] };
const SHARE = { us: ["%"], metric: ["%"], uk: ["%"] };

const text = (key, label, more) => ({ key, label, kind: "text", ...more });
const count = (key, label, more) => ({ key, label, kind: "count", ...more });
const number = (key, label, more) => ({ key, label, kind: "number", ...more });
const day = (key, label, more) => ({ key, label, kind: "date", ...more });
const yes = (key, label, more) => ({ key, label, kind: "yes", ...more });
const amount = (units) => (key, label, more) => ({ key, label, kind: "amount", units, ...more });
const weight = amount(WEIGHT), volume = amount(VOLUME), time = amount(TIME), share = amount(SHARE);
const length = amount(LENGTH), warmth = amount(WARMTH);
const choice = (key, label, choices, more) => ({ key, label, kind: "choice", choices, ...more });
const named = (key, label, sort, more) => ({ key, label, kind: "named", sort, ...more });
const rows = (key, label, one, fields, more) => ({ key, label, kind: "rows", one, fields, ...more });

const vessels = [named("hopper", "Hopper", "hopper"), count("hoppers", "How many hoppers", { usual: "1" }),
  named("drinker", "Drinker", "drinker"), count("drinkers", "How many drinkers", { usual: "1" })];

export const SORTS = {
  farm: {
    title: "Farm",
    single: true,
    rare: ["currency", "warmth"],
    fields: [
      text("name", "Name"),
      choice("units", "Measures", MEASURES),
      text("currency", "Currency", { usual: "USD" }),
      warmth("warmth", "Air in the barn after brooding", { usual: { us: "70", metric: "21", uk: "21" } }),
      { key: "chores", label: "When somebody is in the barn", kind: "hours", usual: "07:00, 18:00" },
    ],
  },
  hatch: {
    title: "Hatches",
    one: "hatch", listed: true,
    rare: ["set", "eggs", "hatch_rate", "birds", "age", "on", "laying_from", "courses", "removed", "housing", "hoppers", "drinkers"], // folded away while the file does not say them
    start: ({ today, first }) => ({ name: "New hatch", kind: "bobwhite", date: today, chicks: 100,
      ...(first.feed ? { feeding: [{ feed: first.feed, from: "0 d" }] } : {}), until: "6 wk",
      ...(first.hopper ? { hopper: first.hopper } : {}), ...(first.drinker ? { drinker: first.drinker } : {}) }),
    fields: [
      text("name", "Name", { hint: "A hatch that is called anew loses what the diary says of it." }),
      { key: "kind", label: "Kind", kind: "bird" },
      day("date", "Day of hatch"), count("chicks", "Chicks hatched"),
      day("set", "Or: day the eggs were set"), count("eggs", "Eggs set"), share("hatch_rate", "Of them hatch"),
      count("birds", "Or: birds that are there already"), time("age", "So old"), day("on", "On that day"),
      time("until", "Kept to the age of"), time("laying_from", "Lay from the age of"),
      rows("feeding", "Feeding", "feed", [named("feed", "Feed", "feed"), time("from", "From the age of")]),
      ...vessels,
      rows("housing", "Housing", "house", [time("from", "From the age of"), named("house", "House", "house"),
        count("houses", "How many houses"), ...vessels]),
      rows("courses", "Courses", "course", [named("supplement", "Supplement", "supplement"), time("from", "From the age of"),
        count("days", "For so many days")]),
      rows("removed", "Sold or moved", "time", [time("at", "At the age of"), count("birds", "Birds")]),
    ],
  },
  feed: {
    title: "Feeds",
    one: "feed",
    rare: ["spare", "keeps", "on_hand", "form"],
    start: ({ units }) => ({ title: "New feed", protein: "24 %", bag: units === "us" ? "50 lb" : "20 kg" }),
    fields: [
      text("title", "Name on the bag"), share("protein", "Protein, by its label", { usual: "24" }),
      choice("form", "Looks like", [["", "not said"], ["mash", "mash"], ["crumble", "crumble"], ["pellet", "pellet"]]),
      weight("bag", "A bag holds", { usual: { us: "50", metric: "20", uk: "20" } }), number("price", "A bag costs"),
      weight("on_hand", "In the store"), weight("spare", "To keep over"), time("keeps", "Keeps", { usual: "8" }),
    ],
  },
  hopper: {
    title: "Hoppers",
    one: "hopper",
    rare: ["parts", "fill", "fill_for", "extra_waste"],
    start: ({ units }) => ({ volume: units === "us" ? "3 gal" : "12 L" }),
    fields: [
      volume("volume", "Holds"),
      rows("parts", "Or: its shape", "part", [choice("shape", "Shape", [["cylinder", "cylinder"], ["frustum", "cone, cut off"], ["box", "box"]]),
        length("diameter", "Diameter"), length("top", "Diameter at the top"), length("bottom", "Diameter at the bottom"),
        length("length", "Length"), length("width", "Width"), length("height", "Height")]),
      share("stays_behind", "Out of the birds' reach", { usual: "5" }), share("fill", "Filled to", { usual: "100" }),
      time("fill_for", "Filled for"), share("extra_waste", "Wasted beyond the usual", { usual: "0" }),
    ],
  },
  drinker: {
    title: "Drinkers",
    one: "drinker",
    rare: ["least", "spill", "plumbed", "displaced"],
    start: ({ units }) => ({ volume: units === "us" ? "1 gal" : "4 L", change_every: "1 d" }),
    fields: [
      volume("volume", "Holds"), volume("displaced", "Taken up by marbles or stones"),
      volume("least", "Its trough needs at least"), time("change_every", "Fresh water every", { usual: "1" }),
      share("spill", "Spilt", { usual: "0" }), yes("plumbed", "A water line, never empty"),
    ],
  },
  supplement: {
    title: "Supplements",
    one: "supplement",
    rare: ["drug", "withdrawal", "sodium", "price", "pack", "from"],
    start: () => ({ rate: "1 tsp per gal", days: 5 }),
    fields: [
      text("title", "Name"), text("rate", "Rate, in the label's words", { usual: "1 tsp per gal" }),
      text("spoon", "A spoonful weighs", { usual: "5 g per tsp" }), time("keeps", "Mixed water keeps", { usual: "24" }),
      count("days", "Given for so many days"), time("from", "From the age of", { usual: "0" }),
      share("sodium", "Sodium, by its label"), text("drug", "Of a medicine: its drug"),
      time("withdrawal", "No slaughter so long after it"), text("pack", "A pack holds"), number("price", "A pack costs"),
    ],
  },
  house: {
    title: "Houses",
    one: "house",
    rare: ["shared"],
    start: () => ({ count: 1, holds: 100 }),
    fields: [
      count("count", "How many there are", { usual: "1" }), count("holds", "Birds that one of them holds"),
      time("rest", "Stands empty before the next birds", { usual: "3" }), yes("shared", "Several hatches may share one"),
    ],
  },
};
