#!/usr/bin/python3
"""A part of the farm's work says the same as the whole (one answer): where somebody asks until a day, or of one
hatch, no fill, batch or chore is another one.

    windows.py PROGRAM RATIONS [--windows 8]

Demo farms at random moments. `today --hatch` is compared with `today`, deed by deed (JSON, to 1e-9, but what is
fetched, which is for that hatch), and `calendar --to` with the calendar without, event by event and word for word.
Then answers are spoiled, and must be refused."""
import argparse
import copy
import datetime as dt
import math
import pathlib
import random
import re
import sys
import tempfile

import barn

SEED, EXACT, STAMP = 20270510, 1e-9, "2026-11-25T12:00"
FARMS = {"saltgrass": (dt.datetime(2027, 4, 4, 6), 200), "larkmead": (dt.datetime(2027, 4, 4, 6), 150)}


def deeds(today):
    """Every deed by its id, with all that is said of it but its number."""
    return {deed["id"]: {**{key: value for key, value in deed.items() if key != "n"}, "at": chore["at"]}
            for chore in today["chores"] for deed in chore["deeds"]}


def unlike(a, b):
    return [key for key in sorted(a.keys() | b.keys())
            if not (a.get(key) == b.get(key)
                    or isinstance(a.get(key), float) and isinstance(b.get(key), (int, float))
                    and math.isclose(a[key], b[key], rel_tol=EXACT, abs_tol=EXACT))]


def compared(part, whole, where):
    lost = sorted(map(str, whole.keys() ^ part.keys()))
    out = [f"{where}: {key} is in one of both only" for key in lost[:3]]
    for key in whole.keys() & part.keys():
        a, b = part[key], whole[key]
        if a != b and not (isinstance(a, dict) and not unlike(a, b)):
            out.append(f"{where}: {key}: {unlike(a, b) if isinstance(a, dict) else a} is not the same as {b}")
    return out


def events(ics, end=None):
    lines = re.sub(r"\r?\n ", "", ics)
    found = {}
    for event in re.findall(r"BEGIN:VEVENT.*?END:VEVENT", lines, re.S):
        if "TRANSP" not in event or "SUMMARY:Read first" in event:
            continue
        start = re.search(r"DTSTART:(\S+)", event)[1]
        if end is None or dt.datetime.strptime(start, "%Y%m%dT%H%M%S") < end:
            found[start] = re.search(r"DESCRIPTION:([^\r\n]*)", event)[1]
    return found


class Case:
    def __init__(self, program, rations, name, number):
        rng = random.Random(f"{SEED} {name} {number}")
        start, span = FARMS[name]
        now = start + dt.timedelta(days=rng.randrange(span), hours=rng.randrange(16))
        self.end = dt.datetime.combine(now.date(), dt.time(6, 30)) + dt.timedelta(days=rng.randrange(1, 30))
        self.where = f"{name}, {now} to {self.end}"
        with tempfile.TemporaryDirectory() as folder:
            home = barn.Barn(program, folder, (pathlib.Path(rations) / "farms" / f"{name}.toml").read_text())
            asked = ["--now", now]
            self.whole = deeds(home.ask("today", home.farm, *asked, "--days", 7))
            of_one = [deed["hatch"] for deed in self.whole.values() if deed["hatch"]]
            self.hatch = rng.choice(of_one)
            self.one = deeds(home.ask("today", home.farm, *asked, "--days", 7, "--hatch", self.hatch))
            self.calendar = events(home.run("calendar", home.farm, *asked, "--stamp", STAMP), end=self.end)
            self.cut = events(home.run("calendar", home.farm, *asked, "--to", self.end, "--stamp", STAMP))

    def findings(self):
        of_one = {key: deed for key, deed in self.whole.items() if deed["hatch"] == self.hatch}
        one = {key: deed for key, deed in self.one.items() if deed["deed"] != "fetch"}
        return (compared(one, of_one, f"{self.where}, today --hatch {self.hatch}")
                + compared(self.cut, self.calendar, f"{self.where}, calendar --to"))


def spoiled(case):
    """Spoiled answers that nobody noticed."""
    def heavier(deeds):
        next(deed for deed in deeds.values() if deed.get("amount_kg"))["amount_kg"] += 0.001

    acts = {"a fill": lambda c: heavier({k: d for k, d in c.one.items() if d["deed"] != "fetch"}),
            "a deed": lambda c: c.one.pop(next(key for key, deed in c.one.items() if deed["deed"] == "look")),
            "an event": lambda c: c.cut.pop(next(iter(c.cut))),
            "a word": lambda c: c.cut.update({next(iter(c.cut)): "nothing"})}
    missed = []
    for what, act in acts.items():
        other = copy.deepcopy(case)
        act(other)
        if len(other.findings()) <= len(case.findings()):
            missed.append(what)
    return missed


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("program")
    parser.add_argument("rations")
    parser.add_argument("--windows", type=int, default=8)
    asked = parser.parse_args()
    cases = [Case(asked.program, asked.rations, name, number) for name in FARMS for number in range(asked.windows)]
    found = [line for case in cases for line in case.findings()]
    compared_with = sum(len(case.one) + len(case.cut) for case in cases)
    return barn.ended(found, spoiled(cases[0]), f"{len(cases)} windows, {compared_with} deeds and chores in them")


if __name__ == "__main__":
    sys.exit(main())
