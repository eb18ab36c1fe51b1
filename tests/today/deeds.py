"""What a farm asks somebody to do and at which chore, read anew in Python from `plan --json`, `season --json` (who is
in which house), `buy --plan --json` (trips), the farm's own file and rations/birds/*.toml by the rules of DESIGN,
sections 7 and 8; nothing of it comes from `today` or `calendar`."""
import dataclasses
import datetime as dt
import json
import pathlib
import re
import subprocess
import tomllib

UNITS = {"wk": 7, "week": 7, "weeks": 7, "d": 1, "day": 1, "days": 1, "h": 1 / 24, "hours": 1 / 24, "min": 1 / 1440}
MINUTE = dt.timedelta(minutes=1)
NONE = {"fills": [], "count": 0}
ROUTINE = ("look", "top-up", "change-water")
VESSEL_WORK = ("top-up", "change-water", "change-feed", "stir")
LONGEST = dt.timedelta(days=5 * 365)


def moment(text):
    return dt.datetime.fromisoformat(str(text))


def ask(program, *words, folder=None, env=None):
    """What the program answers in JSON, or None where it has no answer."""
    done = subprocess.run([program, *map(str, words), "--json"], capture_output=True, text=True, cwd=folder, env=env,
                          timeout=120)
    if done.returncode == 1:
        return None
    if done.returncode:
        raise SystemExit(f"{' '.join(map(str, words))} ended with {done.returncode}: {done.stderr}")
    return json.loads(done.stdout)


def duration(text):
    """Of "6 wk", "17 1/4 d", "36 h"."""
    *figures, unit = str(text).split()
    days = 0.0
    for figure in figures:
        over, _, under = figure.partition("/")
        days += float(over) / float(under or 1)
    return dt.timedelta(days=days * UNITS[unit])


@dataclasses.dataclass
class Deed:
    at: dt.datetime
    work: str
    hatch: str = ""
    house: str = ""
    numbers: tuple = ()
    houses: int = 1
    vessel: str = ""
    vessels: int = 0
    what: str = ""            # key of the feed or supplement
    amount: float = None      # kg or L put in in all, or stirred
    each: float = None        # L that stand in each drinker when it is done
    share: float = None       # of full
    until: dt.datetime = None
    birds: float = None
    packs: int = None
    row: object = None        # air from and to, in degrees of the kind's file; the batch; the days of a withdrawal
    works: tuple = ()         # what else it may be called

    def said(self):
        """In short: what is stated of it."""
        some = ((key, value) for key, value in vars(self).items() if key not in ("at", "row"))
        return " ".join(f"{key}={value}" for key, value in some if value not in (None, "", 0, ()))


class Chores:
    """When somebody is in the barn: the first chore from a moment on, and the last by it."""

    def __init__(self, farm):
        self.hours = sorted(dt.time.fromisoformat(h) for h in farm["farm"].get("chores", ["07:00", "18:00"]))

    def all_from(self, day):
        while True:
            yield from (dt.datetime.combine(day, hour) for hour in self.hours)
            day += dt.timedelta(days=1)

    def first_from(self, at):
        return next(chore for chore in self.all_from(at.date()) if chore >= at - MINUTE / 2)

    def last_by(self, at):
        days = (at.date(), at.date() - dt.timedelta(days=1))
        return max(dt.datetime.combine(d, h) for d in days for h in self.hours
                   if dt.datetime.combine(d, h) <= at + MINUTE / 2)

    def of_date(self, value):
        """A date without an hour means the first chore of that day."""
        text = str(value)
        return moment(text) if len(text) > 10 else dt.datetime.combine(moment(text).date(), self.hours[0])


def kinds_of(rations):
    found = {}
    for file in sorted((pathlib.Path(rations) / "birds").glob("*.toml")):
        found[file.stem] = tomllib.loads(file.read_text())
    return found


class Reading:
    """All deeds of one plan from a moment until another; a date without an hour is the first chore of its day."""

    def __init__(self, plan, season, trips, text, kinds, since, until=None, begins=None):
        self.plan, self.season, self.trips, self.kinds = plan, season or {"brooders": []}, trips, kinds
        self.farm = tomllib.loads(text)
        self.chores = Chores(self.farm)
        self.since, self.until = since, self.chores.of_date(until or "2199-12-31")
        self.begins = begins or since     # of the plan
        self.units = None         # of what is printed, where they are not the farm's
        self.deeds = []
        for hatch in plan["hatches"]:
            self.hatch(hatch)
        self.fetch()
        self.deeds = [one for one in self.deeds if self.since <= one.at < self.until]

    def own(self, hatch):
        """The farm file's words for a hatch; repeats bear its name and their number."""
        for one in self.farm["hatch"]:
            name = one.get("name", hatch["name"])
            if hatch["name"] == name or "times" in one and re.fullmatch(re.escape(name) + r" \d+", hatch["name"]):
                return one
        raise SystemExit(f"no hatch is called {hatch['name']!r}")

    def title(self, key, table="feed"):
        return self.farm.get(table, {}).get(key, {}).get("title", "") or key

    def put(self, at, work, hatch, stage=None, **more):
        house = {}
        if stage and stage["house"]:
            house = {"house": stage["house"], "houses": stage["houses"], "numbers": tuple(stage["numbers"])}
        self.deeds.append(Deed(at, work, hatch["name"] if hatch else "", **{**house, **more}))

    def hatch(self, hatch):
        own = self.own(hatch)
        date = self.chores.of_date(hatch["date"])
        age = lambda at: (at - date) / dt.timedelta(days=1)
        stage_at = lambda at: next((s for s in hatch["stages"] if s["from_d"] <= age(at) + 1e-6 < s["to_d"]), None)
        first = dt.timedelta(days=0)
        if "age" in own:
            first = duration(own["age"])
        came, until = date + first, date + duration(own["until"])
        end = date + dt.timedelta(days=hatch["feeds"][-1]["to_d"])
        ends = end > until - MINUTE
        # one looks in at every chore with birds
        chore = self.chores.first_from(max(came + MINUTE, self.since))
        while chore < min(end - MINUTE / 2, self.until):
            self.put(chore, "look", hatch, stage_at(chore))
            chore = self.chores.first_from(chore + MINUTE)
        for row in self.kinds[hatch["kind"]]["brooding"]["rows"]:
            turns = date + dt.timedelta(days=row[0] - 1)
            begins = date + dt.timedelta(days=hatch["feeds"][0]["from_d"])
            if begins - MINUTE / 2 <= turns < end - MINUTE / 2:
                self.put(self.chores.first_from(turns), "warmth", hatch, stage_at(turns), row=row[2:])
        self.moves(hatch, own, date, came)
        self.vessels(hatch, own, date)
        for gone in own.get("removed", []):
            at = date + duration(gone["at"])
            if at >= came:
                self.put(self.chores.last_by(at), "remove", hatch, stage_at(at), birds=gone["birds"])
        if ends:
            self.put(self.chores.last_by(until), "remove", hatch, hatch["stages"][-1] if hatch["stages"] else None,
                     works=("last",))
        self.withdrawals(hatch, own, date, until, stage_at)
        self.places(hatch, own, date)

    def moves(self, hatch, own, date, came):
        """Chicks come at the first chore not before them, and move at the last not later than their age."""
        stages = own.get("housing", [{"from": "0 d"}])
        for number, said in enumerate(stages):
            begins = date + duration(said["from"])
            of_age = lambda one: abs(date + dt.timedelta(days=one["from_d"]) - begins) < MINUTE
            stage = next(filter(of_age, hatch["stages"]), None)
            if stage is None or begins < came or number == 0 and came > date:
                continue
            first = number == 0
            birds = next((f["birds"] for key in ("hoppers", "drinkers") for f in (stage[key] or NONE)["fills"]
                          if f["age_d"] == stage["from_d"]), None)
            at = self.chores.first_from(begins) if first else self.chores.last_by(begins)
            self.put(at, "move", hatch, stage, birds=hatch["chicks"] if first else birds,
                     works=("come",) if first else ())

    def vessels(self, hatch, own, date):
        changes = {self.chores.last_by(date + duration(step["from"])): step["feed"] for step in own["feeding"][1:]}
        fed = sorted((duration(step["from"]), step["feed"]) for step in own["feeding"])
        batches = [(m["supplement"], b) for m in hatch["mixes"] for b in m["batches"]]
        stirred = {self.chores.last_by(moment(b["at"])) for _, b in batches}
        covered = set()
        for stage in hatch["stages"]:
            hoppers, drinkers = stage["hoppers"] or NONE, stage["drinkers"] or NONE
            for fill in hoppers["fills"]:
                if fill["put_in_kg"] < 0.0005:
                    continue  # nothing that could be weighed: a look
                at = moment(fill["do_at"])
                feed = [f for turns, f in fed if turns <= dt.timedelta(days=fill["age_d"]) + MINUTE][-1]
                self.put(at, "change-feed" if at in changes else "top-up", hatch, stage, vessel=hoppers["hopper"],
                         vessels=hoppers["count"], what=changes.get(at, feed), amount=fill["put_in_kg"],
                         share=fill["share_of_full"], until=moment(fill["until"]))
            begins, stops = (date + dt.timedelta(days=stage[key]) for key in ("from_d", "to_d"))
            for at, feed in changes.items():
                if stage["hoppers"] is None and begins - MINUTE <= at < stops - MINUTE:
                    self.put(at, "change-feed", hatch, stage, what=feed)
            for fill in drinkers["fills"]:
                at, whole = moment(fill["do_at"]), drinkers["count"] * fill["content_l"]
                if at in stirred:
                    continue
                some = fill["put_in_l"] < whole * (1 - 1e-9)
                self.put(at, "top-up" if some else "change-water", hatch, stage, vessel=drinkers["drinker"],
                         vessels=drinkers["count"], amount=fill["put_in_l"], each=fill["content_l"],
                         share=fill["share_of_full"], until=moment(fill["until"]),
                         works=() if some else ("top-up",))
        for key, batch in batches:
            at = moment(batch["at"])
            stage = next((s for s in hatch["stages"] if s["from_d"] <= batch["age_d"] + 1e-6 < s["to_d"]), None)
            poured = stage and stage["drinkers"] and batch["stock_ml"] is None
            self.put(self.chores.last_by(at), "stir", hatch, stage, what=key, amount=batch["water_l"], row=batch,
                     vessel=stage["drinkers"]["drinker"] if poured else "",
                     vessels=stage["drinkers"]["count"] if poured else 0,
                     each=batch["each_drinker_l"] if poured else None,
                     until=at + dt.timedelta(days=batch["lasts_d"], microseconds=100))

    def withdrawals(self, hatch, own, date, until, stage_at):
        """Over at the first chore not before the planned end of the feed and the days after it."""
        steps = own["feeding"]
        for number, step in enumerate(steps):
            said = self.farm["feed"][step["feed"]].get("medicated", {}).get("withdrawal")
            fed = min(until, date + duration(steps[number + 1]["from"])) if number + 1 < len(steps) else until
            if said and duration(said) > dt.timedelta(0) and date + duration(step["from"]) < fed:
                over = fed + duration(said)
                self.put(self.chores.first_from(over), "withdrawal-ends", hatch, stage_at(over), what=step["feed"],
                         row={"days": said})

    def places(self, hatch, own, date):
        """Houses are ready two days before the earliest birds (a brooder of the old form: its rest, or a day), or when
        the last have left them; cleaned when left."""
        days, earliest = dt.timedelta(days=2), date
        if "set" in own:
            low = self.kinds[hatch["kind"]]["incubation"]["low"]
            earliest = min(date, self.chores.of_date(own["set"]) + dt.timedelta(days=low))
        if "housing" not in own and "brooder" in own:
            days = duration(self.farm["brooder"][own["brooder"]].get("rest", "1 d"))
        found = {}
        for stay in self.season["brooders"]:
            if stay["hatch"] != hatch["name"]:
                continue
            begins, stops = moment(stay["from"]), moment(stay["to"])
            ready = begins - (date - earliest if begins == date else dt.timedelta(0)) - days
            before = [moment(s["to"]) for s in self.season["brooders"] if moment(s["from"]) < begins
                      and (s["brooder"], s["number"]) == (stay["brooder"], stay["number"])]
            ready = max([ready, *before])
            for work, at, until in (("ready", self.chores.last_by(ready), begins),
                                    ("clean", self.chores.first_from(stops), None)):
                found.setdefault((work, stay["brooder"], at), []).append((stay["number"], until))
        for (work, house, at), those in found.items():
            numbers = tuple(sorted(n for n, _ in those))
            self.put(at, work, hatch, house=house, numbers=numbers, houses=len(numbers), until=those[0][1])

    def gives(self, hatch, mix):
        """Whether a course is being given when the plan begins."""
        date = self.chores.of_date(hatch["date"])
        return date + dt.timedelta(days=mix["from_d"]) < self.begins < date + dt.timedelta(days=mix["to_d"])

    def fetch(self):
        """The trips; what no trip brings, the day before it is needed, and on no day before today."""
        for trip in self.trips["trips"] if self.trips else []:
            for feed in trip["feeds"]:
                self.put(self.chores.of_date(trip["date"]), "fetch", None, what=feed["feed"], amount=feed["feed_kg"],
                         packs=sum(b["bags"] for b in feed["bags"]))
        day = lambda at: max(moment(at).date() - dt.timedelta(days=1), self.begins.date())
        when = lambda at: self.chores.first_from(self.begins) if day(at) == self.begins.date() else \
            self.chores.of_date(day(at))
        put = lambda at, what, **more: self.put(when(at), "fetch", None, what=what, **more)
        for feed in [] if self.trips else self.plan["buy"]:
            more = feed["put_in_kg"] + feed["stays_behind_kg"] + feed["spare_kg"] - feed["stock_kg"]
            if feed["bags_p95"] if feed["bags_p95"] is not None else more > 0:
                put(feed["first_needed"], feed["feed"], packs=feed["bags_p95"],
                    amount=more if feed["bags_p95"] is None else feed["bought_kg"])
        on = {s["supplement"]: s["date"] for s in self.trips["supplements"]} if self.trips else {}
        given = {m["supplement"] for hatch in self.plan["hatches"] for m in hatch["mixes"] if self.gives(hatch, m)}
        for bought in self.plan["supplements"]:
            if bought["supplement"] in given and not on.get(bought["supplement"]):
                continue  # it is there
            if on.get(bought["supplement"]):
                self.put(self.chores.of_date(on[bought["supplement"]]), "fetch", None, what=bought["supplement"],
                         packs=bought["packs"])
            else:
                put(bought["first_needed"], bought["supplement"], packs=bought["packs"])
        for one in self.plan["bedding"]:
            put(one["first_needed"], one["brooder"], packs=one["bags"])
        for one in self.plan["disinfectant"]:
            put(one["first_needed"], one["disinfectant"], packs=one["packs"])


def reading(program, file, rations, words=(), since=None, until=None, folder=None, kinds=None):
    """The deeds of a farm file, asked with further words such as --now."""
    path = pathlib.Path(folder or ".") / file
    text = path.read_text()
    plan = ask(program, "plan", file, *words, folder=folder)
    if plan is None:
        return None
    now = [w for pair in zip(words, words[1:]) if pair[0] == "--now" for w in pair]
    farm = tomllib.loads(text)
    season = trips = None
    if "house" in farm or "brooder" in farm:
        own = ["--no-diary"] if "--no-diary" in words else []
        season = ask(program, "season", file, *now, *own, "--from", "start", folder=folder)
    if "store" in farm:
        trips = ask(program, "buy", file, "--plan", *words, folder=folder)
    return Reading(plan, season, trips, text, kinds or kinds_of(rations), since, until, moment(now[1]) if now else None)
