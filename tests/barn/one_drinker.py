#!/usr/bin/python3
"""One drinker at one instant: every answer must say the same of it (DESIGN 7, stirring: "the water a page says is in
the drinker during a course is that batch, in WATER, STIR, `today`, `away` and the calendar alike"; one answer).

    one_drinker.py PROGRAM [--farms 28] [--self-test]

Random farms of one hatch in one or two stages with one or two courses; an instant in a course on every other farm,
outside on the rest. What stands in each drinker then, how many there are, whether a product is in it and when
somebody next comes for it is read from
- WATER: the fills of `plan --json --from start`, and of the next one as asked from that instant on (`--now`);
- STIR: the batches of `plan`, and of `mix` as asked a minute before;
- `away --json`, for somebody who leaves at that instant for a day (plain water, where it says to leave that);
- the calendar, as libical reads it: the words of its Water and Mix events.
Outside a course a full drinker is volume less marbles, reckoned here. JSON agrees to 1e-9, printed words to 1 %,
moments to the minute. Then answers are spoiled, and must be refused. --self-test reads words and events made here."""
import argparse
import collections
import copy
import datetime as dt
import math
import re
import sys
import tempfile
import time

import numpy as np

import barn
from barn import TESTS, moment

from quantities import UNITS, split_text  # noqa: E402  (of ../scipy, whose path barn adds)

SEED, PRINTED, EXACT, STAMP = 20270705, 0.01, 1e-9, "2026-11-25T12:00"
MINUTE, DAY = dt.timedelta(minutes=1), dt.timedelta(days=1)
BROKEN_OFF = ("course-while-away", "solution-while-away")
KINDS = ("bobwhite", "coturnix", "coturnix-jumbo", "chukar", "pheasant")

# litres in each, how many, the product or None, and the next moment somebody comes for it (None: not said)
Says = collections.namedtuple("Says", "litres count product until")


def litres(words):
    parts = map(split_text, re.findall(r"[\d./ ]*\d [a-z A-Z]*[a-zA-Z]", words))
    return math.fsum(n * UNITS["volume"][unit] for n, unit in parts) * 1e3


def farm_text(rng, number):
    us = rng.random() < 0.5
    out = [f'[farm]\nname = "Invented"\nunits = "{"us" if us else "metric"}"']
    if rng.random() < 0.5:
        out.append(f'chores = ["0{rng.integers(5, 9)}:{rng.integers(0, 6)}0", "1{rng.integers(5, 9)}:30"]')
    out.append('[feed.f]\nprotein = "24 %"\nform = "mash"')
    brim = {}
    for name, volume in (("jug", rng.integers(4, 9)), ("bell", rng.integers(8, 20))):
        marbles = int(rng.integers(50, 400)) if rng.random() < 0.5 else 0
        brim[name] = volume - marbles / 1e3
        out.append(f'[drinker.{name}]\nvolume = "{volume} L"'
                   + (f'\ndisplaced = "{marbles} mL"\nleast = "{marbles + 50} mL"' if marbles else "")
                   + (f'\nchange_every = "{rng.integers(1, 4)} d"' if rng.random() < 0.6 else ""))
    for name in ("tonic", "bitters"):
        rate = ("1 tsp per gal", "1/2 tsp per gal") if us else ("2 g per L", "5 g per L")
        out.append(f'[supplement.{name}]\nrate = "{rate[rng.integers(2)]}"\nkeeps = "{rng.choice([12, 24])} h"'
                   + ('\nmix = "full"' if rng.random() < 0.2 else ""))
    out.append('[house.tank]\ncount = 20\nholds = 120\n[house.pen]\ncount = 20\nholds = 150')
    move, second = int(rng.integers(14, 26)), int(rng.integers(16, 28))
    courses = [f'{{ supplement = "tonic", from = "{rng.integers(0, 9)} d", days = {rng.integers(2, 6)} }}',
               f'{{ supplement = "bitters", from = "{second} d", days = {rng.integers(1, 5)} }}']
    housing = [f'{{ from = "0 d", house = "tank", drinker = "jug", drinkers = {rng.integers(1, 5)} }}',
               f'{{ from = "{move} d", house = "pen", drinker = "bell", drinkers = {rng.integers(1, 4)} }}']
    stages, given = int(rng.integers(1, 3)), int(rng.integers(1, 3))
    out.append(f'[[hatch]]\nname = "H"\nkind = "{KINDS[number % len(KINDS)]}"\ndate = 2027-04-05\n'
               f'chicks = {rng.integers(40, 300)}\nfeeding = [{{ feed = "f", from = "0 d" }}]\nuntil = "5 wk"\n'
               f'courses = [{", ".join(courses[:given])}]\nhousing = [{", ".join(housing[:stages])}]')
    return "\n".join(out) + "\n", brim


def water(plan, at):
    """From the fills: what stands there at an instant, and the fill itself."""
    hatch = plan["hatches"][0]
    batches = {b["at"]: m["supplement"] for m in hatch["mixes"] for b in m["batches"]}
    for stage in hatch["stages"]:
        for f in stage["drinkers"]["fills"]:
            if moment(f["at"]) <= at < moment(f["until"]):
                return Says(f["content_l"], stage["drinkers"]["count"], batches.get(f["at"]), moment(f["until"])), f
    return None, None


def stirred(mixes, at, count):
    for m in mixes:
        for b in m["batches"]:
            end = moment(b["at"]) + b["lasts_d"] * DAY
            end = (end + MINUTE / 2).replace(second=0, microsecond=0)
            if moment(b["at"]) <= at < end:
                return Says(b["each_drinker_l"], count, m["supplement"], end)
    return None


LINES = (re.compile(r": stir .+? of (?P<product>\w+) into [^,]+, (?P<each>.+?) into each of (?P<count>\d+) x "),
         re.compile(r": fresh water in (?P<count>\d+) x \w+: (?P<each>.+?)(?: each)?\.$"),
         re.compile(r": top up (?P<count>\d+) x \w+ with water, to (?P<each>.+?)(?: each)?(?:, until .*)?\.$"))


def calendar(events, at):
    """From the lines about water of the chores: the last not later, and the moment of the next."""
    every = sorted(((start, found) for e in events for start in e["occurrences"] for line in e["description"].split("\n")
                   for found in [next((m for m in (form.search(line) for form in LINES) if m), None)] if found),
                   key=lambda one: one[0])
    past, until = [v for v in every if v[0] <= at], next((v[0] for v in every if v[0] > at), None)
    if not past:
        return None
    line = past[-1][1]
    return Says(litres(line["each"]), int(line["count"]), line.groupdict().get("product"), until)


def left(away, product):
    v = next(v for v in away["vessels"] if "drinker" in v)
    return Says(v["content_l"], v["count"], product, None)


class Case:
    """A farm, an instant just after somebody was at its drinkers, and all that is said of it."""

    def __init__(self, program, number):
        rng = np.random.default_rng([SEED, number])
        self.text, self.brim = farm_text(rng, number)
        with tempfile.TemporaryDirectory() as folder:
            home = barn.Barn(program, folder, self.text)
            self.plan = home.ask("plan", home.farm, "--from", "start")
            hatch = self.plan["hatches"][0]
            given = {b["at"] for m in hatch["mixes"] for b in m["batches"]}
            fills = [(s, f) for s in hatch["stages"] for f in s["drinkers"]["fills"]
                     if (f["at"] in given) == (number % 2 == 0)]
            stage, fill = fills[rng.integers(len(fills))]
            self.at = moment(fill["at"])
            self.where = f"farm {number}, {fill['at']}, in {'a course' if number % 2 == 0 else 'no course'}"
            self.full = self.brim[stage["drinkers"]["drinker"]]
            before, end = self.at - MINUTE, self.at + 15 * DAY
            self.later = home.ask("plan", home.farm, "--now", self.at, "--to", end)
            self.mix = home.ask("mix", home.farm, "--now", before, "--to", end) if fill["at"] in given else None
            self.away = home.ask("away", home.farm, "--now", self.at, "--until", self.at + DAY)
            ics = home.run("calendar", home.farm, "--now", before, "--to", end, "--stamp", STAMP)
            self.events = libical_read(ics.encode())

    def findings(self):
        """[(what, words)]"""
        out, (right, _) = [], water(self.plan, self.at)
        if right is None:
            return [("WATER", f"{self.where}: no fill stands at that instant")]

        def same(what, said, tolerance=EXACT):
            if said is None:
                out.append((what, f"{self.where}, {what}: nothing is said"))
                return
            off = not abs(said.litres - right.litres) <= tolerance * right.litres
            off |= (said.count, said.product) != (right.count, right.product)
            off |= said.until is not None and abs(said.until - right.until) > MINUTE
            if off:
                out.append((what, f"{self.where}, {what}: {show(said)}; WATER: {show(right)}"))

        if right.product is None and abs(right.litres - self.full) > 1e-9:
            out.append(("full", f"{self.where}: {right.litres!r} L in each, full is {self.full!r} L"))
        mixed = stirred(self.plan["hatches"][0]["mixes"], self.at, right.count)
        if right.product or mixed:
            same("STIR", mixed)
            same("`mix`", self.mix and stirred([self.mix["hatches"][0]["mix"]], self.at, right.count))
        # who leaves while a course cannot be given is told so, and leaves full drinkers of plain water
        if any(c["id"] in BROKEN_OFF for c in self.away["cautions"]):
            full = Says(self.full, right.count, None, None)
            told = left(self.away, None)
            if told.count != full.count or abs(told.litres - full.litres) > EXACT:
                out.append(("`away`", f"{self.where}, `away`: {show(told)}, though plain water is to be left"))
        else:
            same("`away`", left(self.away, right.product))
        same("calendar", calendar(self.events, self.at), PRINTED)
        # who asks just after it is told of the next one, as it was
        again, _ = water(self.later, right.until)
        want, _ = water(self.plan, right.until)
        if want and (again is None or again != want):
            words = f"{self.where}, asked then, of the next: {show(again)}; from the start: {show(want)}"
            out.append(("the next", words))
        return out


def show(s):
    if s is None:
        return "nothing"
    return f"{s.count} x {s.litres:.4f} L, {s.product or 'plain'}, until {s.until or 'not said'}"


def libical_read(data):
    sys.path.insert(0, str(TESTS / "calendar"))
    import libical
    read, found = libical.read(data)
    if found:
        raise SystemExit(f"a calendar libical does not take: {found}")
    return read["events"]


def spoiled(cases):
    """Spoiled answers that nobody would notice, and how many were tried."""
    def fills(plan):
        return [f for s in plan["hatches"][0]["stages"] for f in s["drinkers"]["fills"]]

    def batches(answer):
        return [b for m in answer["hatches"][0]["mixes"] for b in m["batches"]]

    def scale(rows, key, by):
        for row in rows:
            row[key] *= by

    def words(case):
        for e in case.events:
            e["description"] = re.sub(r"([\d.]+)( \S+ (into )?each)", lambda m: f"{float(m[1]) * 1.1}{m[2]}",
                                      e["description"])

    def shift(case):
        for e in case.events:
            e["occurrences"] = [at if at <= case.at else at + 60 * MINUTE for at in e["occurrences"]]

    wrong = {"full": lambda c: scale([f for f in fills(c.plan) if f["at"] not in {b["at"] for b in batches(c.plan)}],
                                     "content_l", 1.01),
             "STIR": lambda c: scale(batches(c.plan), "lasts_d", 1.1),
             "`away`": lambda c: scale([v for v in c.away["vessels"] if "drinker" in v], "content_l", 1.01),
             "calendar": words, "calendar ": shift, "the next": lambda c: scale(fills(c.later), "content_l", 1.001)}
    missed = []
    before = collections.Counter(what for c in cases for what, _ in c.findings())
    for what, act in wrong.items():
        after = 0
        for case in cases:
            other = copy.deepcopy(case)
            act(other)
            after += sum(w == what.strip() for w, _ in other.findings())
        missed += [] if after > before[what.strip()] else [what]
    return missed, len(wrong)


def self_test():
    """Words and moments as they are read."""
    bad = [words for words, want in {"2.25 qt": 2.25 * 0.946352946, "900 mL": 0.9, "1 gal 2 qt": 5.678117676,
                                     "1/2 gal": 1.892705892, "12 fl oz": 0.35488235475}.items()
           if abs(litres(words) - want) > 1e-9]
    at, day = dt.datetime(2027, 4, 10, 7), DAY
    told = lambda when, *lines: {"occurrences": [when], "description": "\n".join(lines)}
    events = [told(at, "H, tanks 1-2: look in, count the dead.",
                   "H, tanks 1-2: stir 50 g of tonic into 25 L, 1.1 L into each of 4 x d."),
              told(at + day, "H, pen 1: fresh water in 3 x e: 5.25 gal each.", "", "It is medicated."),
              told(at + 3 * day, "H: top up 1 x e with water, to 8.5 L, until Mon 5 Apr 07:00.")]
    for when, want in ((at, Says(1.1, 4, "tonic", at + day)),
                       (at + 2 * day, Says(5.25 * 3.785411784, 3, None, at + 3 * day)),
                       (at + 3.5 * day, Says(8.5, 1, None, None))):
        said = calendar(events, when)
        if said is None or abs(said.litres - want.litres) > 1e-9 or said[1:] != want[1:]:
            bad.append(f"read as {said}, not {want}")
    return barn.ended(bad, [], "8 readings tried")


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("program", nargs="?")
    parser.add_argument("--farms", type=int, default=28)
    parser.add_argument("--self-test", action="store_true")
    asked, begun = parser.parse_args(), time.time()
    if asked.self_test:
        return self_test()
    cases = [Case(asked.program, number) for number in range(asked.farms)]
    found = [one for case in cases for one in case.findings()]
    missed, tried = spoiled(cases[:12])
    off = dict(collections.Counter(what for what, _ in found))
    found.sort(key=lambda one: list(off).index(one[0]))
    return barn.ended([words for _, words in found], missed,
                      f"{tried - len(missed)} of {tried} spoiled answers noticed; {len(cases)} drinkers, off: {off}; "
                      f"{time.time() - begun:.1f} s")


if __name__ == "__main__":
    sys.exit(main())
