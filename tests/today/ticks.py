"""What ticks of `diary done` do, by the words of DESIGN, section 8, on one farm at a time."""
import collections
import datetime as dt

KG = {"kg": 1, "g": 1e-3, "lb": 0.45359237, "oz": 0.45359237 / 16}
SOON = dt.timedelta(hours=2)  # a chore is begun so long before its hour at most: `all` takes no later deeds


class Findings:
    def __init__(self):
        self.found, self.tried = [], 0

    def want(self, true, words):
        self.tried += 1
        if not true:
            self.found.append(words)


def numbered(today, listed, day):
    """Of the deeds of a calendar day, n by id."""
    return {deed["id"]: deed["n"] for deed in listed(today) if deed["at"].date() == day}


def vessel_of(deed):
    return deed["hatch"], deed["vessel"]


def kept(before, after, gone, day, listed):
    """Words for what changed of the deeds of a day besides those ticked. What stands in a vessel that was filled may
    now last longer or shorter; all else stays, with its number."""
    filled = {vessel_of(deed) for deed in gone if deed["vessel"]}
    old = {deed["id"]: deed for deed in listed(before) if deed["at"].date() == day and vessel_of(deed) not in filled}
    new = {deed["id"]: deed for deed in listed(after) if deed["at"].date() == day and vessel_of(deed) not in filled}
    fetched = any(deed["deed"] == "fetch" for deed in gone)
    for key, deed in old.items():
        if deed["n"] in {one["n"] for one in gone} or deed["deed"] == "fetch" and fetched:
            continue
        if key not in new:
            yield f"{key} went as well"
        elif new[key]["n"] != deed["n"]:
            yield f"{key} was {deed['n']} and is {new[key]['n']}"
    yield from (f"{key} came" for key in new if key not in old and new[key]["deed"] != "fetch")


def rows_of(rows, deed):
    return [row for row in rows if row["note"] == deed["id"]]


def typed(deed, rng):
    """An amount a person might type beside a deed's number, and the row that keeps it: what, kg or L or birds, unit."""
    work = deed["deed"]
    if work == "look":
        return "1", ("died", 1, "birds")
    if work == "remove":
        return "3", ("moved out", 3, "birds")
    if work == "fetch" and "amount_kg" in deed:
        return "60 lb", ("bought", 60 * KG["lb"], "kg")
    if work in ("top-up", "change-feed") and deed.get("amount_kg", 0) > 0.02:
        grams = int(deed["amount_kg"] * 1000 * rng.uniform(0.3, 0.9)) + 1
        what = {"change-feed": ("level left",)}.get(work, ("topped up", "part filled"))
        return f"{grams} g", (what, grams / 1000, "kg")
    if work in ("top-up", "change-water") and deed.get("amount_l", 0) > 0.02 and deed["vessel"]:
        ml = int(deed["amount_l"] * 1000 * rng.uniform(0.3, 0.9)) + 1
        what = ("level left",) if work == "change-water" else ("topped up", "part filled")
        return f"{ml} mL", (what, ml / 1000, "L")
    return None


class Day:
    """One calendar day of a farm, from shortly before its first chore with deeds."""

    def __init__(self, trial, listed):
        self.trial, self.listed, self.said = trial, listed, Findings()
        self.now = dt.datetime.combine(trial.now.date(), dt.time(5))
        self.before = trial.today(self.now)

    def done(self, *words, at=None):
        return self.trial.run("diary", "done", self.trial.file, *words, "--now",
                              (at or self.now).isoformat(timespec="minutes"))

    def deeds(self, today):
        return [deed for deed in self.listed(today) if deed["at"].date() == self.now.date()]

    def hold(self, ticked, after, words):
        """Ticked deeds are gone, and all others stay."""
        left = numbered(after, self.listed, self.now.date())
        for deed in ticked:
            self.said.want(deed["id"] not in left, f"{words}: {deed['id']} is still to be done")
        for one in kept(self.before, after, ticked, self.now.date(), self.listed):
            self.said.want(False, f"{words}: {one}")

    def tick_one(self, deed):
        want = self.said.want
        status, text = self.done(deed["n"])
        want(status == 0 and deed["words"].split(",")[0][:20] in " ".join(text.split()),
             f"done {deed['n']} says {status} {text!r}, not {deed['words']!r}")
        after, rows = self.trial.today(self.now), self.trial.exported()
        self.hold([deed], after, f"done {deed['n']}")
        mine = collections.Counter(row["what"] for row in rows_of(rows, deed))
        want(mine["done"] == 1, f"the diary holds {mine} of {deed['id']}")
        filled = deed["vessel"] is not None and deed["deed"] in ("top-up", "change-water", "change-feed", "stir")
        want(mine["level left"] == int(filled), f"levels in the diary: {mine} of {deed['id']}")
        bought = [row for row in rows if row["what"] == "bought"]
        feed = deed["deed"] == "fetch" and "amount_kg" in deed
        want(len(bought) == int(feed), f"{bought} for {deed['id']}")
        want(not self.trial.learned(), f"the tick of {deed['id']} taught something")
        status, text = self.done(deed["n"])
        want(status == 2 and f"{deed['n']} is done already" in text, f"done twice says {status} {text!r}")
        self.undo()

    def undo(self):
        status, text = self.trial.run("diary", "undo", self.trial.file)
        self.said.want(status == 0, f"undo says {text!r}")
        self.said.want(self.trial.today(self.now) == self.before, "undo does not bring back what was ticked")

    def type_one(self, deed):
        amount, (whats, much, unit) = typed(deed, self.trial.rng)
        status, text = self.done(f"{deed['n']}={amount}")
        self.said.want(status == 0, f"{deed['n']}={amount} of {deed['id']} says {text!r}")
        rows = [row for row in self.trial.exported() if row["what"] in whats]
        same = [row for row in rows if row["unit"] == unit and abs(float(row["amount"]) - much) < 1e-9]
        self.said.want(len(same) == 1, f"typed {amount} for {deed['id']}, the diary holds {rows}")
        if status == 0:
            self.hold([deed], self.trial.today(self.now), f"done {deed['n']}={amount}")
            self.undo()

    def tick_all(self):
        soon = [deed for deed in self.deeds(self.before) if deed["at"] < self.now + SOON]
        status, text = self.done("all")
        if not soon:
            return self.said.want(status == 1, f"done all says {status} {text!r}")
        after = self.trial.today(self.now)
        self.said.want(status == 0, f"done all says {text!r}")
        self.hold(soon, after, "done all")
        rows = [row["note"] for row in self.trial.exported() if row["what"] == "done"]
        self.said.want(sorted(rows) == sorted(deed["id"] for deed in soon), f"done all wrote {rows}")
        self.said.want(not self.trial.learned(), "done all taught something")
        status, text = self.done("all")
        self.said.want(status == 1 and "nothing is to be done" in text, f"done all twice says {status} {text!r}")
        return self.undo()

    def over_the_day(self):
        """Numbers hold until midnight."""
        first = numbered(self.before, self.listed, self.now.date())
        for hour in (12, 17):
            later = self.trial.today(self.now.replace(hour=hour))
            for key, number in numbered(later, self.listed, self.now.date()).items() if later else []:
                self.said.want(first.get(key) == number, f"at {hour}:00 {key} is {number}, it was {first.get(key)}")


def findings(trial, listed):
    day = Day(trial, listed)
    deeds = day.deeds(day.before) if day.before else []
    if not deeds:
        return day.said
    day.over_the_day()
    kinds = {}
    for deed in deeds:
        kinds.setdefault(deed["deed"], deed)
    for deed in trial.rng.sample(sorted(kinds.values(), key=lambda one: one["n"]), min(3, len(kinds))):
        day.tick_one(deed)
    can = [deed for deed in deeds if typed(deed, trial.rng)]
    for deed in trial.rng.sample(can, min(2, len(can))):
        day.type_one(deed)
    day.tick_all()
    status, text = day.done(len(deeds) + 900)
    day.said.want(status == 2 and "is no number of today's list" in text, f"a number too high: {status} {text!r}")
    return day.said
