#!/usr/bin/python3
"""The sums of `away` for a whole farm once more, vectorised with NumPy: beside the program's time and its answers.

    away_numpy.py FARM RATIONS_DIR ANSWER BENCHMARK

ANSWER is `away_benchmark`'s answer as JSON, BENCHMARK its --benchmark_out. The farm is read by tests/scipy/random_farms.py,
before the clock starts; the points, the curves and the sums are NumPy's and SciPy's own.
Fails when an answer differs by more than the bounds below, or when `away` is not fast enough beside NumPy.
"""

import datetime as dt
import json
import math
import pathlib
import sys
import time
import tomllib

import numpy as np
from scipy.special import ndtri
from scipy.stats import qmc

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent.parent / "scipy"))
import random_farms as model

OF_THE_SPAN = 0.01     # a quantile may differ by this share of p95 - p05
POINTS_APART = 0.01    # and a chance by this much
LEAST_TIMES = 1.5      # NumPy's time over that of `away`
POINTS = 14            # 2 ** 14 = 16,384
ROUNDS = 10
SCORE_95 = 1.6448536269514722
SHARED = {"farm": 0.25, "kind": 0.5, "model": 0.85}    # correlation of one trait between two flocks
DENSITY_CV = 0.05
SCORES = np.linspace(-5, 5, 41)   # of deaths


class Band:
    """The standard deviation of the logarithm of a table's column, by age."""

    def __init__(self, rows):
        self.low, self.central, self.high = (model.Curve([r[0] for r in rows], [r[i] for r in rows]) for i in (1, 2, 3))

    def log_sd(self, age):
        low, central, high = self.low(age), self.central(age), self.high(age)
        with np.errstate(divide="ignore", invalid="ignore"):
            return np.where(low > 0, np.log(high / low) / (2 * SCORE_95),
                            np.where(central > 0, np.log(high / central) / SCORE_95, 0.0))


class Flock:
    """One hatch as it stands when nobody is there, and its tables."""

    def __init__(self, farm, table, rations, rations_dir, start, end):
        self.hatch = model.Hatch(farm, table, rations)
        tables = tomllib.loads((rations_dir / "birds" / f"{table['kind']}.toml").read_text())
        self.feed, self.dead = Band(tables["growing"]["rows"]), Band(tables["mortality"]["rows"])
        self.water_sd = math.log(tables["water"]["ratio"][2] / tables["water"]["ratio"][0]) / (2 * SCORE_95)
        self.kind, self.model_only = table["kind"], tables["growing"].get("model_only", False)
        self.start, self.end = ((when - self.hatch.date).total_seconds() / 86400 for when in (start, end))
        assert len(self.hatch.steps) == 1 and all(age < self.start for age, _ in self.hatch.removed), "a farm at rest"
        self.bends = np.array(sorted({0.0, *(r[0] for r in tables["growing"]["rows"]),
                                      *(r[0] for r in tables["mortality"]["rows"]), *(r[0] for r in self.hatch.removed)}))
        self.vessels = ((self.hatch.feed, self.hatch.hopper_kg[0] * self.hatch.hoppers),
                        (self.hatch.water, self.hatch.drinker_l * self.hatch.drinkers))

    def heads(self, ages):
        """Birds at each score of deaths over those at score 0, a row for each age, all after the last removal."""
        def survival(age):
            age = np.atleast_1d(age)
            factor = np.exp(np.outer(self.dead.log_sd(age), SCORES))
            return 1 - np.minimum(1.0, self.dead.central(age)[:, None] / 100 * factor)

        per_survivor = self.hatch.chicks
        for age, birds in self.hatch.removed:
            alive = survival(age)
            per_survivor = np.maximum(0.0, per_survivor * alive - birds) / np.where(alive > 0, alive, np.inf)
        heads = per_survivor * survival(ages)
        return heads / heads[:, len(SCORES) // 2, None]

    def pieces(self, start, end):
        """The ends of the stretches over which each world keeps one factor."""
        ends = [start, *self.bends[(self.bends > start) & (self.bends < end)], end]
        longest = (end - start) / 5
        cuts = [np.linspace(a, b, max(1, math.ceil((b - a) / longest)) + 1)[:-1] for a, b in zip(ends, ends[1:])]
        return [*np.concatenate(cuts), end]

    def horizon(self):
        ends = self.start + 1.5 ** np.arange(19)    # to 4 years
        enough = [np.flatnonzero(use.batch([self.start] * len(ends), ends) >= 1.8 * room)[0] for use, room in self.vessels]
        return max(self.end, *ends[enough])


def draws(flocks):
    """(flocks, 4, worlds): the scores of feed, water, deaths and the weight of a hopper's feed."""
    count = len(flocks)
    points = qmc.Sobol(4 * count, scramble=False).random_base2(POINTS)
    scores = ndtri(np.ascontiguousarray(points.T) + 0.5 / 2**POINTS).reshape(count, 4, -1)
    root = np.linalg.cholesky([[1.0 if a is b else SHARED["farm"] if a.kind != b.kind else
                                SHARED["model" if a.model_only else "kind"] for b in flocks] for a in flocks])
    for trait in (0, 1, 2):
        scores[:, trait] = root @ scores[:, trait]
    return scores


class RunOut:
    """Vessels of one sort: `passes` takes them through the next piece, as the rate of use goes straight over it."""

    def __init__(self, room):
        self.room, self.used, self.empty = room, np.zeros_like(room), np.full_like(room, np.inf)

    def passes(self, start, length, first, second, factors):
        whole = first + second
        left = self.room - self.used
        now = whole * factors
        self.used += now
        worlds = np.flatnonzero((left > 0) & (now >= left))
        if worlds.size:
            share = left[worlds] / now[worlds]
            begin, rise = (3 * first - second) / whole, 4 * (second - first) / whole
            self.empty[worlds] = start + length * 2 * share / (begin + np.sqrt(begin * begin + 2 * rise * share))


def follow(flock, scores, sure):
    """[(chance, leave, p05, p50, p95, when empty)] of its hoppers and of its drinkers."""
    appetite, thirst, deaths, weight = scores
    place = np.clip((deaths + 5) / 0.25, 0, 40 - 1e-9)
    below = place.astype(np.intp)
    part = place - below
    (feed, hoppers), (water, drinkers) = flock.vessels
    sorts = ((feed, RunOut(hoppers * np.exp(DENSITY_CV * weight))),
             (water, RunOut(drinkers / np.exp(flock.water_sd * thirst))))

    away = flock.pieces(flock.start, flock.end)
    ends = np.array(away + flock.pieces(flock.end, flock.horizon())[1:])
    middles = (ends[1:] + ends[:-1]) / 2
    halves = np.sort(np.concatenate((ends, middles)))
    uses = [demand.batch(halves[:-1], halves[1:]).reshape(-1, 2) for demand, _ in sorts]
    heads, sds = flock.heads(middles), flock.feed.log_sd(middles)
    steps = np.diff(heads, axis=1)

    for k in range(len(middles)):
        if k == len(away) - 1:
            shares = [run_out.used / run_out.room for _, run_out in sorts]
        factors = np.exp(sds[k] * appetite)
        factors *= heads[k].take(below) + part * steps[k].take(below)
        for (_, run_out), use in zip(sorts, uses):
            run_out.passes(ends[k], ends[k + 1] - ends[k], *use[k], factors)

    answers = []
    for (_, run_out), share in zip(sorts, shares):
        lasts = run_out.empty - flock.start
        p05, p50, p95, _ = np.quantile(lasts, [0.05, 0.5, 0.95, 1 - sure], method="hazen")
        answers.append((np.mean(share < 1), np.quantile(share, sure, method="hazen"), p05, p50, p95, lasts))
    return answers


def whole(flocks, sure):
    """Every vessel's figures, and the chance that none runs out, from one set of draws."""
    scores = draws(flocks)
    answers = [one for flock, own in zip(flocks, scores) for one in follow(flock, own, sure)]
    soonest = np.min([one[5] for one in answers], axis=0)
    first = np.bincount(np.argmin([one[5] for one in answers], axis=0)[np.isfinite(soonest)])
    come_by = np.quantile(soonest, 1 - sure, method="hazen")
    return answers, np.mean(soonest >= flocks[0].end - flocks[0].start), int(first.argmax()), come_by


def apart(answers, together, answer):
    """(words, how far apart, how far they may be) of the worst of each sort."""
    chance = leave = quantile = 0.0
    assert len(answers) == len(answer["vessels"]), "as many vessels"
    for (held, full, *band, _), vessel in zip(answers, answer["vessels"]):
        span = vessel["p95"] - vessel["p05"]
        quantile = max(quantile, *(abs(here - vessel[key]) / span for here, key in zip(band, ("p05", "p50", "p95"))))
        chance = max(chance, abs(held - vessel["chance"]))
        leave = max(leave, abs(full - vessel["leave_pct"] / 100))
    return (("5, 50 and 95 %, as a share of the span", quantile, OF_THE_SPAN),
            ("chance of one vessel", chance, POINTS_APART), ("how full to leave it", leave, POINTS_APART),
            ("chance of the whole farm", abs(together - answer["chance"]), POINTS_APART))


def main(farm_path, rations_dir, answer_path, benchmark_path):
    answer = json.loads(pathlib.Path(answer_path).read_text())
    counters = json.loads(pathlib.Path(benchmark_path).read_text())["benchmarks"][0]
    farm = tomllib.loads(pathlib.Path(farm_path).read_text())
    start, end = dt.datetime.fromisoformat(answer["from"]), dt.datetime.fromisoformat(answer["until"])
    rations = model.Rations(rations_dir)
    flocks = [Flock(farm, table, rations, pathlib.Path(rations_dir), start, end) for table in farm["hatch"]]

    begun = time.process_time()
    for _ in range(ROUNDS):
        answers, together, first, _ = whole(flocks, answer["sure_pct"] / 100)
    numpy_ms = 1e3 * (time.process_time() - begun) / ROUNDS
    draws_ms, away_ms = counters["draws_ms"], counters["away_ms"]

    print(f"{len(answers)} vessel groups, {2**POINTS} points, processor time")
    print(f"  only drawing the points   {draws_ms:8.1f} ms")
    print(f"  away                      {away_ms:8.1f} ms")
    print(f"  the same with NumPy       {numpy_ms:8.1f} ms")
    print(f"  away over its draws       {away_ms / draws_ms:8.2f}")
    print(f"  NumPy over away           {numpy_ms / away_ms:8.2f}     (at least {LEAST_TIMES})")
    failed = numpy_ms < LEAST_TIMES * away_ms
    for words, off, most in apart(answers, together, answer):
        print(f"  {words}: {100 * off:.2g} % apart (at most {100 * most:g} %)")
        failed |= not off <= most
    named = (answer["first"]["hatch"], answer["first"]["vessel"])
    table = farm["hatch"][first // 2]
    same_first = named == (table["name"], table["drinker" if first % 2 else "hopper"])
    print("FAILED" if failed or not same_first else
          f"the same answers: the whole farm holds {100 * answer['chance']:.2f} and {100 * together:.2f} times in 100")
    return 1 if failed or not same_first else 0


if __name__ == "__main__":
    if len(sys.argv) != 5:
        sys.exit(__doc__)
    sys.exit(main(*sys.argv[1:]))
