#!/usr/bin/python3
"""What the program says of 1,000 flocks against what they then do: 50 farms of 20 flocks, four of each kind.

    coverage.py PROGRAM RATIONS [--farms 50]

Every flock has a hidden true appetite, thirst, deaths and weight of its feed, drawn by NumPy from the rations' TOML
files (worlds.py): half of the variance of appetite, thirst and deaths is shared by the flocks of a kind on one farm, a
quarter by all of them. Between 3 and 10 weeks
of age its hoppers and drinkers are topped up six times, 1 to 3 days apart, and its birds counted; what a top-up
measures is the true use times exp(0.08 z). All that goes into a diary by `diary import`. Held to:
- the 90 % bands of `plan` from then on (full hoppers and drinkers empty, feed of 7 days) hold the truth of 87 to 93 %
  of the flocks, without the diary and with it; those of `away` on the first farms are the same to 5 % of their span;
- the band of the feed, over its middle, at least halves on average;
- 3 to 7 % of these intervals of healthy birds are alarms (`diary show`);
- when the birds then eat and drink 30 % less, the hoppers' alarm comes within two top-ups for 90 % of the flocks.
Then each answer is spoiled, and must be refused."""
import argparse
import collections
import concurrent.futures
import datetime as dt
import json
import math
import pathlib
import subprocess
import sys
import tempfile
import time

import numpy as np

from worlds import DENSITY_CV, TOP_UP_SD, Rations, scores

SEED, FLOCKS, HEALTHY, AFTER, MINUTE = 20270630, 20, 5, 2, 1 / 1440
NOW = dt.datetime(2027, 6, 30, 6)
WEEK = (NOW + dt.timedelta(days=7)).isoformat()
ALONE, AWAY_SHARE = 10, 0.05                 # farms asked with `away`; the most it may lie off the bands of `plan`
GRID = np.arange(0, 150 * 48 + 1) / 48       # ages, days
DENSITY = 0.6                                # kg/L
FARM = '[farm]\nname = "Invented"\nunits = "metric"\n[feed.f]\nprotein = "24 %"\ndensity = "600 kg/m3"\n'
HATCH = """[hopper.h{n}]
volume = "{hopper!r} L"
[drinker.d{n}]
volume = "{drinker!r} L"
[[hatch]]
name = "{n}"
kind = "{kind}"
date = {date}
chicks = {chicks}
feeding = [{{ feed = "f", from = "0 d" }}]
until = "20 wk"
hopper = "h{n}"
hoppers = 2
drinker = "d{n}"
drinkers = 3
"""


def running(rate):
    """The integral of a rate from age 0 to every age of GRID, by the trapezoid rule: half hours are short enough."""
    return np.concatenate([[0], np.cumsum((rate[1:] + rate[:-1]) / 2 * (GRID[1] - GRID[0]))])


class Truth:
    """One flock as it really is, and what its keeper writes down."""

    def __init__(self, name, kind, spread, scores, rng):
        self.name, self.kind, self.scores = str(name), kind.name, scores
        self.chicks = int(rng.integers(300, 3000))
        gaps = rng.integers(round(1 / MINUTE), round(3 / MINUTE) + 1, HEALTHY + AFTER) * MINUTE
        age = rng.uniform(21 + gaps[:HEALTHY].sum(), 70)
        self.date = NOW - dt.timedelta(minutes=round(age / MINUTE))
        self.age = (NOW - self.date) / dt.timedelta(days=1)
        self.ages = self.age + np.concatenate([np.cumsum(gaps) - gaps[:HEALTHY].sum(), [-gaps[:HEALTHY].sum()]])
        self.ages = np.sort(self.ages)           # of HEALTHY + 1 and AFTER top-ups
        dead = kind.mortality(GRID) / 100
        table = kind.curve(GRID) / 1e3 * self.chicks * (1 - dead)
        self.heads = self.chicks * (1 - np.minimum(1, dead * np.exp(spread.deaths(GRID) * scores["deaths"])))
        eaten = self.heads * kind.curve(GRID) / 1e3 * np.exp(spread.feed(GRID) * scores["feed"])
        self.use = {"feed": running(eaten),
                    "water": running(eaten) * kind.ratio * math.exp(spread.water * scores["water"])}
        central = running(table)
        lasts = rng.uniform(7, 16, 2)
        self.hopper = self.between(central, self.age, self.age + lasts[0]) / DENSITY / 2
        self.drinker = self.between(central, self.age, self.age + lasts[1]) * kind.ratio / 3
        self.noise = rng.standard_normal((HEALTHY + AFTER, 2))

    @staticmethod
    def between(total, start, end):
        return float(np.interp(end, GRID, total) - np.interp(start, GRID, total))

    def empty(self, what):
        """Days after NOW at which its vessels, full then, are empty."""
        full = 3 * self.drinker if what == "water" else \
            2 * self.hopper * DENSITY * math.exp(DENSITY_CV * self.scores["density"])
        total = self.use[what]
        return float(np.interp(np.interp(self.age, GRID, total) + full, total, GRID)) - self.age

    def toml(self):
        return HATCH.format(n=self.name, hopper=self.hopper, drinker=self.drinker, kind=self.kind,
                            date=self.date.isoformat(), chicks=self.chicks)

    def visits(self, first, last, appetite):
        """Lines of a diary for some of its top-ups."""
        for k in range(first, last):
            at = (self.date + dt.timedelta(days=float(self.ages[k]))).isoformat(timespec="seconds")
            for column, (what, unit) in enumerate((("feed", "kg"), ("water", "L"))):
                used = 1.0 if k == 0 else appetite * math.exp(TOP_UP_SD * self.noise[k - 1, column]) * self.between(
                    self.use[what], self.ages[k - 1], self.ages[k])
                yield f"{at},{self.name},topped up,{used!r},{unit},"
            yield f"{at},{self.name},counted,{round(float(np.interp(self.ages[k], GRID, self.heads)))},birds,"


def farm_of(number, rations):
    rng, all_kinds = np.random.default_rng([SEED, number]), list(rations.kinds)
    kinds = [all_kinds[i % len(all_kinds)] for i in range(FLOCKS)]
    own = scores(rng, kinds, rations.spreads, 1)
    return [Truth(i, rations.kinds[kind], rations.spreads[kind], {trait: float(z[0]) for trait, z in own[i].items()}, rng)
            for i, kind in enumerate(kinds)]


def visit(program, flocks, alone):
    """The program's answers for one farm: bands before and after learning, all intervals, and how far `away` lies from
    the bands after learning (not asked unless `alone`), in spans."""
    with tempfile.TemporaryDirectory() as folder:
        farm, csv = pathlib.Path(folder) / "farm.toml", pathlib.Path(folder) / "visits.csv"
        farm.write_text(FARM + "".join(f.toml() for f in flocks))

        def ask(*words):
            done = subprocess.run([program, *words, "--json"], capture_output=True, text=True)
            if done.returncode:
                raise SystemExit(f"{' '.join(map(str, words))}: {done.stderr}")
            return json.loads(done.stdout)

        def write(first, last, appetite):
            lines = [line for f in flocks for line in f.visits(first, last, appetite)]
            csv.write_text("at,hatch,what,amount,unit,note\n" + "\n".join(lines) + "\n")
            assert ask("diary", "import", farm, csv)["added"] == len(lines)

        def bands():
            out = {}
            filled = {h["name"]: h for h in ask("last", farm, "--on", NOW.isoformat())["hatches"]}
            for h in ask("plan", farm, "--from", NOW.isoformat(), "--to", WEEK)["hatches"]:
                full = filled[h["name"]]
                parts = (full["hoppers"]["fills"][0], full["drinkers"]["fills"][0], h["feeds"][0])
                out[h["name"]] = {thing: [part[p] for p in BAND] for thing, part in zip(THINGS, parts)}
            return out

        before = bands()
        write(0, HEALTHY + 1, 1)
        after = bands()
        off = 0.0
        if alone:
            for v in ask("away", farm, "--from", NOW.isoformat(), "--until", WEEK)["vessels"]:
                low, middle, high = after[v["hatch"]]["hoppers empty" if "hopper" in v else "drinkers empty"]
                off = max([off, *(abs(v[p] - q) / (high - low) for p, q in zip(BAND, (low, middle, high)))])
        write(HEALTHY + 1, HEALTHY + 1 + AFTER, 0.7)
        return before, after, ask("diary", "show", farm)["intervals"], off


BAND = ("p05", "p50", "p95")
THINGS = ("hoppers empty", "drinkers empty", "feed of 7 days")


def truth_of(flock, thing):
    if thing == "feed of 7 days":
        return flock.between(flock.use["feed"], flock.age, flock.age + 7)
    return flock.empty("feed" if thing == "hoppers empty" else "water")


def gather(farms, answers):
    """{"before", "after": {thing: [(truth, p05, p50, p95)]}, "healthy": [(what, sds, alarm)],
    "found": [after so many top-ups], "away": spans off}."""
    out = {"before": collections.defaultdict(list), "after": collections.defaultdict(list), "healthy": [], "found": [],
           "away": max(answer[3] for answer in answers)}
    for flocks, (before, after, intervals, _) in zip(farms, answers):
        for flock in flocks:
            for thing in THINGS:
                out["before"][thing].append([truth_of(flock, thing), *before[flock.name][thing]])
                out["after"][thing].append([truth_of(flock, thing), *after[flock.name][thing]])
            mine = [i for i in intervals if i["hatch"] == flock.name]
            assert len(mine) == 2 * (HEALTHY + AFTER), f"{len(mine)} intervals of flock {flock.name}"
            later = [i for i in mine if i["until"] > NOW.isoformat(timespec="minutes")]
            out["healthy"] += [(i["what"], i["sds"], i["alarm"]) for i in mine if i not in later]
            hoppers = [i["alarm"] and i["sds"] < 0 for i in later if i["what"] == "feed"]
            out["found"].append(1 + hoppers.index(True) if True in hoppers else 9)
    return out


def verdicts(seen, say=lambda words: None):
    """What is outside its bar."""
    bad = []

    def hold(words, share, low, high):
        say(f"{words}: {share:.1%} (bar {low:.0%} to {high:.0%})")
        if not low <= share <= high:
            bad.append(words)

    widths = {}
    for when in ("before", "after"):
        for thing in THINGS:
            truth, low, middle, high = np.array(seen[when][thing], float).T
            widths[when, thing] = (high - low) / middle
            hold(f"90 % bands, {when} learning, {thing}, hold the truth",
                 np.mean((low <= truth) & (truth <= high)), 0.87, 0.93)
            say(f"    below {np.mean(truth < low):.1%}, above {np.mean(truth > high):.1%}; width over middle, mean "
                f"{widths[when, thing].mean():.3f}")
    ratios = widths["after", "feed of 7 days"] / widths["before", "feed of 7 days"]
    hold("mean width of the feed band after learning over before", widths["after", "feed of 7 days"].mean() /
         widths["before", "feed of 7 days"].mean(), 0, 0.5)
    say(f"    of single flocks, mean {ratios.mean():.1%}, widest {ratios.max():.1%}; at least halved for "
        f"{np.mean(ratios <= 0.5):.1%}")
    alarms = np.array([alarm for _, _, alarm in seen["healthy"]])
    hold("alarms among intervals of healthy birds", alarms.mean(), 0.03, 0.07)
    for what in ("feed", "water"):
        mine = np.array([(sds, alarm) for w, sds, alarm in seen["healthy"] if w == what])
        say(f"    {what}: {mine[:, 1].mean():.1%} of {len(mine)}; predictions off by {mine[:, 0].std():.3f} sd, mean "
            f"{mine[:, 0].mean():+.3f}")
    found = np.array(seen["found"])
    hold("a drop by 30 % found within two top-ups", np.mean(found <= 2), 0.9, 1)
    say(f"    at the first {np.mean(found == 1):.1%}")
    hold(f"`away` off the bands of `plan`, {ALONE} farms, in spans", seen["away"], 0, AWAY_SHARE)
    return bad


def spoiled(seen):
    """Spoiled answers that nobody would notice, and how many were tried."""
    def widen(when, by):
        return {**seen, when: {t: [[true, mid + by * (low - mid), mid, mid + by * (high - mid)]
                                   for true, low, mid, high in rows] for t, rows in seen[when].items()}}

    louder = [(what, sds, abs(sds) > 1.7) for what, sds, _ in seen["healthy"]]
    quieter = [(what, sds, abs(sds) > 2.4) for what, sds, _ in seen["healthy"]]
    wrong = {"bands too narrow before": widen("before", 0.8), "too narrow after": widen("after", 0.8),
             "too wide before": widen("before", 1.3), "too wide after": widen("after", 1.3),
             "nothing learned": {**seen, "after": seen["before"]}, "alarms too easily": {**seen, "healthy": louder},
             "alarms too seldom": {**seen, "healthy": quieter},
             "away astray": {**seen, "away": seen["away"] + AWAY_SHARE},
             "deaf to 1 drop in 8": {**seen, "found": [9 if i % 8 == 0 else f for i, f in enumerate(seen["found"])]}}
    return [name for name, answer in wrong.items() if set(verdicts(answer)) <= set(verdicts(seen))], len(wrong)


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("program")
    parser.add_argument("rations")
    parser.add_argument("--farms", type=int, default=50)
    asked, begun = parser.parse_args(), time.time()
    rations = Rations(asked.rations)
    farms = [farm_of(n, rations) for n in range(asked.farms)]
    with concurrent.futures.ThreadPoolExecutor(2) as hands:
        answers = list(hands.map(lambda n: visit(asked.program, farms[n], n < ALONE), range(asked.farms)))
    seen = gather(farms, answers)
    bad = verdicts(seen, print)
    missed, tried = spoiled(seen)
    print(f"{tried - len(missed)} of {tried} spoiled answers noticed; {FLOCKS * len(farms)} flocks; "
          f"{time.time() - begun:.1f} s")
    for words in bad:
        print("FAIL", words)
    for words in missed:
        print("FAIL not noticed:", words)
    return 1 if bad or missed else 0


if __name__ == "__main__":
    sys.exit(main())
