#!/usr/bin/python3
"""What the program says is left in hoppers and drinkers now, against simulated barns whose truth is known.

    level_now.py PROGRAM RATIONS [--farms 35] [--self-test]

Every flock has a hidden true appetite, thirst, deaths and weight of its feed, drawn by NumPy from the rations' TOML
files by the law of docs/model.md, section 12 (../learning/coverage.py draws them). Its keeper writes the last known
level into the diary: full; full, and some put in later; full, and some thrown out later; or found empty, and a
weighed amount put in. Two days later the program is asked, and the moment at which the true birds empty the vessels
is compared with what `last` says: 90 % lie within its band, 5 % below and 5 % above, give or take 3 points (1 for an
end) or what chance allows (99.9 %, both sides) where that is more: with 600 flocks 4.0 points, 2.9 for an end. Six
farms of seven are of flocks drawn apart from one another, of which the diary has taught nothing, so that their
counts are binomial. The rest are flocks drawn together whose keeper also wrote six top-ups: there chance is taken
from the spread between farms where that is more. On one farm in twenty `plan` must send somebody at the last chore
not later than the safe end of `last` (DESIGN 7, chore times), and for some flocks `away` must start from the same
level (DESIGN 7, the level now): its points are those of `last` to 5 % of their span (one draws worlds, the other
integrates). Then answers are spoiled, and must be refused. --self-test spoils answers made here and needs no
program."""
import argparse
import collections
import concurrent.futures
import datetime as dt
import math
import sys
import tempfile
import time

import numpy as np

import barn
from barn import days, moment

# of ../learning, whose path barn adds
from coverage import DENSITY, DENSITY_CV, FARM, FLOCKS, GRID, HEALTHY, NOW, Truth
from worlds import Rations, scores

SEED, ASKED = 20270702, NOW + dt.timedelta(days=2, hours=6)
WAYS = ("full", "more put in", "thrown out", "found empty")
VESSELS = (("feed", "hoppers"), ("water", "drinkers"))
MINUTE = dt.timedelta(minutes=1)
ENOUGH = 24            # farms, for a spoiled band to be told from chance
CHANCE = 3.29          # standard deviations: 99.9 %, both sides
CHORES = (7, 18)       # of a farm that says none, hours (DESIGN 7)


class Kept(Truth):
    """A flock, what was last written of its vessels, and when they are truly empty."""

    def __init__(self, *words):
        super().__init__(*words)
        rng = words[-1]
        self.way = {what: WAYS[rng.integers(len(WAYS))] for what in ("feed", "water")}
        self.later = round(float(rng.uniform(1, 2)) * 1440) / 1440
        self.part = {what: float(rng.uniform(0.1, 0.9)) for what in self.way}

    def toml(self):
        return super().toml().replace(' L"\n[drinker', ' L"\nat_most = "60 d"\n[drinker')

    def usual_full(self, what):
        return 3 * self.drinker if what == "water" else 2 * self.hopper * DENSITY

    def amount(self, what):
        """Put in or thrown out after NOW; what is put in finds room."""
        gone = self.between(self.use[what], self.age, self.age + self.later)
        return {"full": 0.0, "more put in": 0.8 * self.part[what] * gone,
                "thrown out": -0.2 * self.part[what] * self.usual_full(what),
                "found empty": (0.5 + 0.4 * self.part[what]) * self.usual_full(what)}[self.way[what]]

    def empties(self, what):
        """The moment at which all its vessels are empty."""
        held = self.amount(what)
        if self.way[what] != "found empty":
            held += self.usual_full(what) * (math.exp(DENSITY_CV * self.scores["density"]) if what == "feed" else 1)
        total = self.use[what]
        age = float(np.interp(np.interp(self.age, GRID, total) + held, total, GRID))
        return NOW + dt.timedelta(days=age - self.age)

    def lines(self, taught):
        rows = [row for row in self.visits(0 if taught else HEALTHY, HEALTHY + 1, 1) if taught or "counted" not in row]
        then = NOW.isoformat(timespec="seconds")
        for what, unit in (("feed", "kg"), ("water", "L")):
            at, by = (NOW + dt.timedelta(days=self.later)).isoformat(timespec="seconds"), self.amount(what)
            if self.way[what] == "found empty":
                rows = [r for r in rows if not (r.startswith(f"{then},") and "topped up" in r and f",{unit}," in r)]
                rows += [f"{then},{self.name},found empty,0,{unit},", f"{then},{self.name},part filled,{by!r},{unit},"]
            elif by:
                rows.append(f"{at},{self.name},{'part filled' if by > 0 else 'thrown out'},{abs(by)!r},{unit},")
        return rows


def farm_of(number, rations, taught):
    """20 flocks, drawn together where they are to teach about one another."""
    rng, kinds = np.random.default_rng([SEED, number]), list(rations.kinds)
    kinds = [kinds[i % len(kinds)] for i in range(FLOCKS)]
    own = scores(rng, kinds, rations.spreads, 1) if taught else \
        [scores(rng, [kind], rations.spreads, 1)[0] for kind in kinds]
    own = [{trait: float(z[0]) for trait, z in one.items()} for one in own]
    return [Kept(i, rations.kinds[kind], rations.spreads[kind], own[i], rng)
            for i, kind in enumerate(kinds)]


Seen = collections.namedtuple("Seen", "farm taught way what truth last away visit")
BAND, SPAN_SHARE, DEEP = ("p05", "p50", "p95"), 0.05, 20


def visit(program, number, flocks, taught):
    """[Seen]: the bands as moments, and the first visit of `plan`; None where it was not asked."""
    plan, away = {}, {}
    with tempfile.TemporaryDirectory() as folder:
        home = barn.Barn(program, folder, FARM + "".join(f.toml() for f in flocks))
        home.write([line for f in flocks for line in f.lines(taught)])
        last = {h["name"]: h for h in home.ask("last", home.farm, "--now", ASKED)["hatches"]}
        if number % DEEP == 3:
            plan = home.ask("plan", home.farm, "--now", ASKED, "--to", ASKED + dt.timedelta(days=12))["hatches"]
        if number == 3:
            some = [word for flock in flocks[:6] for word in ("--hatch", flock.name)]
            back = ASKED + dt.timedelta(days=3)
            away = home.ask("away", home.farm, "--now", ASKED, "--until", back, *some)["vessels"]
    fills = {(h["name"], what): h[vessels]["fills"] for h in plan for what, vessels in VESSELS}
    away = {(v["hatch"], "feed" if "hopper" in v else "water"): v for v in away}

    def band(vessel):
        return vessel and tuple(moment(vessel["at"]) + dt.timedelta(days=vessel[p]) for p in BAND)

    out = []
    for flock in flocks:
        for what, vessels in VESSELS:
            first = fills.get((flock.name, what))
            out.append(Seen(number, taught, flock.way[what], what, flock.empties(what),
                            band(last[flock.name][vessels]["fills"][0]), band(away.get((flock.name, what))),
                            moment(first[0]["do_at"]) if first else None))
    return out


def chore_by(end):
    """The last chore not later."""
    day = dt.datetime(end.year, end.month, end.day)
    return max(c for c in (day + dt.timedelta(hours=h) for h in (CHORES[1] - 24, *CHORES)) if c <= end)


def share(rows, true):
    """The share that is true; for flocks drawn together its standard deviation by the spread between farms, else 0."""
    hits, farms = np.array([true(r) for r in rows], float), np.array([r.farm for r in rows])
    mean = hits.mean()
    apart = np.array([(hits[farms == f] - mean).sum() for f in np.unique(farms)])
    together = math.sqrt((apart**2).sum()) / len(rows) if rows[0].taught else 0.0
    return mean, together


def verdicts(seen, say=lambda words: None):
    bad = []

    def hold(words, rows, true, want, bar):
        got, together = share(rows, true)
        bar = max(bar, CHANCE * max(together, math.sqrt(want * (1 - want) / len(rows))))
        ok = abs(got - want) <= bar
        say(f"{'    ' if ok else 'off '}{words}: {got:.1%} of {len(rows)} (bar {want:.0%} and {bar:.1%})")
        bad.extend([] if ok else [f"{words}: {got:.1%} of {len(rows)}, bar {want:.0%} and {bar:.1%}"])

    def within(s):
        return s.last[0] <= s.truth <= s.last[2]

    for taught in (False, True):
        for what, _ in VESSELS:
            rows = [s for s in seen if s.taught == taught and s.what == what]
            group = f"{what}, {'taught' if taught else 'nothing learned'}"
            if rows:
                hold(f"within the band, {group}", rows, within, 0.9, 0.03)
                hold(f"empty before p05, {group}", rows, lambda s: s.truth < s.last[0], 0.05, 0.01)
                hold(f"empty after p95, {group}", rows, lambda s: s.truth > s.last[2], 0.05, 0.01)
            for way in WAYS:
                some = [s for s in rows if s.way == way]
                if some:
                    hold(f"within the band, {way}, {group}", some, within, 0.9, 0.03)
    visits = [s for s in seen if s.visit]
    late = [s for s in visits if s.visit not in (chore_by(s.last[0] - MINUTE), chore_by(s.last[0] + MINUTE))]
    words = f"`plan` comes at another chore than the last before p05: {len(late)} of {len(visits)}"
    say(f"{'off ' if late else '    '}{words}")
    if late:
        s = late[0]
        bad.append(f"{words}; farm {s.farm}, {s.what}, {s.way}: at {s.visit}, p05 {s.last[0]}")
    left = [s for s in seen if s.away]
    off = [max(abs(days(a, b)) for a, b in zip(s.away, s.last)) / days(s.last[2], s.last[0]) for s in left]
    astray = [(o, s) for o, s in zip(off, left) if o > SPAN_SHARE]
    words = f"`away` starts from another level than `last`: {len(astray)} of {len(left)}"
    say(f"{'off ' if astray else '    '}{words}")
    if astray:
        o, s = astray[0]
        bad.append(f"{words}; farm {s.farm}, {s.what}, {s.way}: p50 {s.away[1]}, that of `last` {s.last[1]}")
    return bad


def spoiled(seen):
    """Spoiled answers that nobody would notice, and how many were tried."""
    def band(by):
        return lambda s: s._replace(last=tuple(s.last[1] + (t - s.last[1]) * by for t in s.last))

    def later(key, by):
        return lambda s: s if not getattr(s, key) else s._replace(
            **{key: getattr(s, key) + by if key == "visit" else tuple(t + by for t in getattr(s, key))})

    day, gone = dt.timedelta(days=1), ASKED - NOW
    wrong = {"bands a quarter too narrow": band(0.75), "bands two fifths too wide": band(1.4),
             "full when asked": later("last", gone), "away as if full": later("away", gone),
             "visits a day late": later("visit", day), "visits a day early": later("visit", -day),
             "what is put in is forgotten": lambda s: s._replace(last=(NOW, NOW, ASKED))
             if s.way == "found empty" else s}
    fine = [s._replace(away=s.away and s.last, visit=s.visit and chore_by(s.last[0])) for s in seen]
    before = {line.split(":")[0] for line in verdicts(fine)}
    return [name for name, change in wrong.items()
            if {line.split(":")[0] for line in verdicts([change(s) for s in fine])} <= before], len(wrong)


def invented(farms):
    """Answers of a program that knows the law, about vessels of which the logarithm of how long they last is normal."""
    rng, seen = np.random.default_rng(SEED), []
    for number in range(farms):
        for what, _ in VESSELS:
            for _ in range(FLOCKS):
                lasts, way = rng.uniform(7, 14), WAYS[rng.integers(len(WAYS))]
                *at, truth = [NOW + dt.timedelta(days=lasts * math.exp(0.2 * z))
                              for z in (-1.6449, 0, 1.6449, rng.standard_normal())]
                deep = number % DEEP == 3
                seen.append(Seen(number, number % 7 == 6, way, what, truth, tuple(at), tuple(at) if deep else None,
                                 chore_by(at[0]) if deep else None))
    return seen


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("program", nargs="?")
    parser.add_argument("rations", nargs="?")
    parser.add_argument("--farms", type=int, default=35)
    parser.add_argument("--self-test", action="store_true")
    asked, begun = parser.parse_args(), time.time()
    if asked.self_test:
        seen = invented(35)
        bad = verdicts(seen)
        missed, tried = spoiled(seen)
        return barn.ended(bad, missed, f"{tried - len(missed)} of {tried} spoiled answers noticed")
    rations = Rations(asked.rations)
    taught = [n % 7 == 6 for n in range(asked.farms)]
    with concurrent.futures.ThreadPoolExecutor(2) as hands:
        farms = list(hands.map(lambda n: visit(asked.program, n, farm_of(n, rations, taught[n]), taught[n]),
                               range(asked.farms)))
    seen = [s for farm in farms for s in farm]
    bad = verdicts(seen, print)
    missed, tried = spoiled(seen) if asked.farms >= ENOUGH else ([], 0)
    return barn.ended(bad, missed, f"{tried - len(missed)} of {tried} spoiled answers noticed; {asked.farms} farms, "
                      f"{len(seen) // 2} flocks; {time.time() - begun:.1f} s")


if __name__ == "__main__":
    sys.exit(main())
