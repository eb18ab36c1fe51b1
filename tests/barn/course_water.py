#!/usr/bin/python3
"""What is stirred for drinkers during a course, against 200,000 worlds of NumPy and the rules of DESIGN 7, stirring.

    course_water.py PROGRAM RATIONS [--farms 36] [--worlds 200000] [--self-test]

Random hatches of every kind, from chicks, from eggs of which nobody says how many hatch, with birds removed;
drinkers of every count, with spill and with a `least` in the trough, in houses and without; products by the spoon,
by weight, by measure; courses from day 0 to lay. What a flock drinks between two changes is drawn from the rations'
tables (deaths, appetite, thirst; ../learning/worlds.py). Held to, for each batch of `plan --json --from start`:
- what is mixed, and what is poured into the drinkers, lasts to the change in at least 95 % of worlds, with `least`
  left in each trough (a full drinker is as much as it can be);
- the change is at the last chore the solution, or the drinker's own water, lasts to, or at the end of the course;
- the water is on the ladder (1 pt, 1 qt, 1/2 gal, whole gallons; 0.5, 1, 2 L, whole litres), the dose is one that
  can be measured (1/8 tsp within 1 %, or 50 steps of the scale) and is rate x water within 1 %;
- no smaller water on the ladder with such a dose serves 95 % of worlds; where the dose cannot be measured, no water
  within ten times the need would make it so (docs/model.md, section 7).
A quantile of N worlds has an error of its own: what lies within 4 standard deviations of it decides nothing. Then
answers are spoiled, and must be refused. --self-test runs the worlds against closed forms, without the program."""
import argparse
import collections
import copy
import math
import sys
import tempfile
import time
import tomllib

import numpy as np

import barn
from barn import days, moment

from flock import Clock, Chores  # noqa: E402  (of ../scipy, whose path barn adds)
from quantities import US_GAL_M3
from worlds import Flock, Rations, scores

SEED, SURE, SIGMAS = 20270704, 0.95, 4
ENOUGH = 24            # farms, for every sort of batch and every spoiled answer to come up
PRODUCTS = {     # rate as text, what a litre takes (mL, g), and the weight of a mL
    "us": [("1 tsp per gal", "tsp", 1.0), ("1/2 tsp per gal", "tsp", 0.5), ("2 tsp per gal", "tsp", 2.0),
           ("1/4 tsp per gal", "tsp", 0.25), ("8 g per gal", "g", 8.0), ("60 g per gal", "g", 60.0)],
    "metric": [("2 g per L", "g", 2.0), ("0.5 g per L", "g", 0.5), ("6 g per L", "g", 6.0), ("25 g per L", "g", 25.0)]}
TSP_ML = US_GAL_M3 * 1e6 / 768


class Rate:
    """A label's rate, and which doses can be measured."""

    def __init__(self, us, text, unit, amount):
        self.text, self.unit, self.us = text, unit, us
        self.gal = 1e3 * US_GAL_M3
        self.per_l = amount * (TSP_ML if unit == "tsp" else 1.0) / (self.gal if us else 1.0)   # mL or g

    def ladder(self, most):
        """Volumes a person can measure, in L, up to a little above `most`."""
        step = self.gal if self.us else 1.0
        return [p * step for p in ([1 / 8, 1 / 4, 1 / 2] if self.us else [0.5])] + [
            n * step for n in range(1, int(most / step) + 3)]

    def measurable(self, litres, scale_g=1.0):
        dose = self.per_l * litres
        if self.unit == "g":
            return dose >= 50 * scale_g * (1 - 1e-9)
        eighth = TSP_ML / 8
        times = max(1, round(dose / eighth))
        return abs(times * eighth - dose) <= 0.01 * dose * (1 + 1e-9)


def farm_text(rng, kinds, number):
    us = bool(rng.random() < 0.6)
    words = PRODUCTS["us" if us else "metric"]
    text, unit, amount = words[rng.integers(len(words))]
    kind = kinds[number % len(kinds)]
    first = int(rng.choice([0, 0, 3, 9, 20, 40, 70]))
    birds = int(rng.integers(30, 500))
    each = rng.uniform(1, 6) * birds * 0.012 * (1 + first / 15) / rng.integers(2, 9)      # L, some too small
    count = int(rng.integers(2, 9))
    out = [f'[farm]\nname = "Invented"\nunits = "{"us" if us else "metric"}"']
    if rng.random() < 0.4:
        out.append(f'warmth = "{rng.integers(18, 31)} degC"')
    out.append('[feed.f]\nprotein = "24 %"\nform = "mash"')
    least = f'least = "{rng.integers(30, 160)} mL"\n' if rng.random() < 0.5 else ""
    spill = f'spill = "{rng.integers(1, 20)} %"\n' if rng.random() < 0.4 else ""
    change = f'change_every = "{rng.choice([12, 24, 48])} h"\n' if rng.random() < 0.5 else ""
    out.append(f'[drinker.d]\nvolume = "{max(0.6, each):.2f} L"\n{least}{spill}{change}')
    keeps = f'keeps = "{rng.choice([12, 24, 36])} h"\n' if rng.random() < 0.6 else ""
    out.append(f'[supplement.s]\nrate = "{text}"\n{keeps}')
    housed = rng.random() < 0.3
    if housed:
        out.append('[house.pen]\ncount = 9\nholds = 500')
    start = f'eggs = {int(birds / 0.6)}' if rng.random() < 0.25 else f"chicks = {birds}"
    out.append(f'[[hatch]]\nname = "H"\nkind = "{kind}"\ndate = 2027-04-05T{rng.integers(5, 21):02}:30:00\n{start}\n'
               f'feeding = [{{ feed = "f", from = "0 d" }}]\nuntil = "{first + 20} d"\n'
               f'courses = [{{ supplement = "s", from = "{first} d", days = {rng.integers(1, 5)} }}]')
    if rng.random() < 0.3:
        out.append(f'removed = [{{ at = "{max(1, first - 2)} d", birds = {birds // 5} }}]')
    vessels = f'drinker = "d", drinkers = {count}'
    out.append(f'housing = [{{ from = "0 d", house = "pen", houses = 3, {vessels} }}]' if housed
               else vessels.replace(", ", "\n"))
    return "\n".join(out) + "\n", Rate(us, text, unit, amount), count * (3 if housed else 1)


class Question:
    """One farm, its worlds, and what the program mixes."""

    def __init__(self, number, rations, count):
        rng = np.random.default_rng([SEED, number])
        self.text, self.rate, self.count = farm_text(rng, list(rations.kinds), number)
        farm = tomllib.loads(self.text)
        table = farm["hatch"][0]
        self.flock = Flock(farm, table, rations, scores(rng, [table["kind"]], rations.spreads, count)[0])
        self.drinker, self.where = self.flock.stages[0].drinker, f"farm {number}"
        self.course, self.used = self.flock.courses[0], {}
        self.clock = Clock(Chores(farm), self.flock.date)

    def ask(self, program):
        with tempfile.TemporaryDirectory() as folder:
            home = barn.Barn(program, folder, self.text)
            return home.ask("plan", home.farm, "--from", "start")["hatches"][0]

    def drunk(self, start, end):
        """In every world, sorted."""
        key = round(start, 6), round(end, 6)
        if key not in self.used:
            self.used[key] = np.sort(self.flock.used("water", start, end))
        return self.used[key]


def serves(drunk, litres):
    """Whether so much water is enough in 95 % of worlds: True, False, or None where chance decides."""
    share, sd = np.searchsorted(drunk, litres, "right") / drunk.size, math.sqrt(SURE * (1 - SURE) / drunk.size)
    return None if abs(share - SURE) <= SIGMAS * sd else bool(share > SURE)


def findings(q, hatch, seen):
    """[(what, words)]"""
    out, batches = [], hatch["mixes"][0]["batches"]
    fills = {f["at"]: f for s in hatch["stages"] for f in s["drinkers"]["fills"]}
    ends = [b["at"] for b in batches[1:]]
    for k, b in enumerate(batches):
        at, age, lasts = f"{q.where}, batch at {b['at']}", b["age_d"], b["lasts_d"]
        fill, least = fills.get(b["at"]), q.drinker.least_l * q.count
        say = lambda what, words: out.append((what, f"{at}: {words}"))    # noqa: E731
        if not fill:
            say("change", "no drinker is filled then")
            continue
        # when it is changed
        due = age + min(q.course.product.batch, q.drinker.change_every)
        end = min(q.clock.reach(age, due)[0], q.course.last, q.flock.until)
        if age + lasts > end + 1e-6:
            say("change", f"lasts {lasts!r} d, {end - age!r} d by the chores, the solution and the course")
        if age + lasts < end - 1e-6:
            brim = q.drinker.brim_l * q.count
            seen["too small to last"] += 1
            if serves(q.drunk(age, end), brim - least) and fill["would_do"] is None:
                say("change", f"lasts {lasts!r} d, {end - age!r} d by the chores, and full drinkers would do")
        if k < len(ends) and abs(days(moment(ends[k]), moment(b["at"])) - lasts) > 1e-6:
            say("change", f"lasts {lasts!r} d, the next is mixed at {ends[k]}")
        drunk, water, poured = q.drunk(age, age + lasts), b["water_l"], b["each_drinker_l"] * q.count
        # enough
        if serves(drunk, water - least) is False:
            say("serves", f"{water:.3f} L mixed, 95 % of worlds want {np.quantile(drunk, SURE) + least:.3f} L")
        full = b["each_drinker_l"] >= q.drinker.brim_l * (1 - 1e-9)
        if not full and serves(drunk, poured - least) is False:
            say("serves", f"{poured:.3f} L poured, 95 % of worlds want {np.quantile(drunk, SURE) + least:.3f} L")
        if full and serves(drunk, poured - least) is False and fill["would_do"] is None:
            say("serves", f"full drinkers, {poured:.3f} L, do not last in 95 % of worlds, and no number is said")
        # measured
        rate, ladder = q.rate, q.rate.ladder(max(water, 12 * (np.quantile(drunk, SURE) + least)))
        on = [v for v in ladder if abs(v - water) < 1e-6 * water]
        if not on:
            say("ladder", f"{water!r} L is no volume of the ladder")
        elif not rate.measurable(water):
            seen["too little to be measured"] += 1
            need = np.quantile(drunk, SURE) + least
            better = [v for v in ladder if need * 1.01 < v < 9.9 * need and rate.measurable(v)]
            if better:
                say("measured", f"{rate.text!r} cannot be measured for {water:.3f} L, but for {better[0]:.3f} L, "
                    f"within ten times the need of {need:.3f} L")
        dose = b["product_ml"] if rate.unit == "tsp" else b["product_g"]
        if dose is None or abs(dose / (rate.per_l * water) - 1) > 0.01:
            say("dose", f"{dose!r} of {rate.unit}, {rate.text!r} for {water:.3f} L is {rate.per_l * water!r}")
        # the least
        smaller = [v for v in ladder if v < water * (1 - 1e-6) and rate.measurable(v) and serves(drunk, v - least)]
        if smaller:
            say("least", f"{water:.3f} L mixed, {smaller[0]:.3f} L would do: 95 % of worlds want "
                f"{np.quantile(drunk, SURE) + least:.3f} L, and {rate.text!r} can be measured for it")
        seen["batches"] += 1
        seen["with least"] += least > 0
        seen["full drinkers"] += full
        seen[q.rate.unit] += 1
    if not batches and q.course.start < q.flock.until:
        out.append(("serves", f"{q.where}: nothing is mixed"))
    return out


def spoiled(answers):
    """Spoiled answers that nobody would notice."""
    step = {True: 1e3 * US_GAL_M3, False: 1.0}

    def change(key, how):
        def act(q, hatch):
            for b in hatch["mixes"][0]["batches"]:
                b[key] = how(q, b[key]) if b[key] is not None else None
        return act

    wrong = {"serves": change("water_l", lambda q, w: w / 4),
             "least": change("water_l", lambda q, w: 8 * w + 8 * step[q.rate.us]),
             "ladder": change("water_l", lambda q, w: w + 0.07), "dose": change("product_ml", lambda q, g: 1.02 * g),
             "measured": change("water_l", lambda q, w: step[q.rate.us] / (8 if q.rate.us else 2)),
             "change": change("lasts_d", lambda q, d: d + 0.5)}
    missed = []
    for what, act in wrong.items():
        before = sum(w == what for q, hatch in answers for w, _ in findings(q, hatch, collections.Counter()))
        after = 0
        for q, hatch in answers:
            other = copy.deepcopy(hatch)
            act(q, other)
            after += sum(w == what for w, _ in findings(q, other, collections.Counter()))
        missed += [] if after > before else [what]
    return missed, len(wrong)


def self_test(rations):
    """The worlds against a closed form, and `serves` about the quantile."""
    bad = []
    for number in range(5):
        q = Question(number, rations, 40_000)
        farm, usual = tomllib.loads(q.text), {key: 0 * z for key, z in q.flock.world.items()}
        q.flock = Flock(farm, farm["hatch"][0], rations, usual)
        still = q.drunk(1.0, 2.0)
        if not math.isclose(still[0], q.flock.water.over(1.0, 2.0), rel_tol=1e-4):
            bad.append(f"{q.where}: the usual flock drinks {still[0]!r}, by Gauss {q.flock.water.over(1.0, 2.0)!r}")
    q = Question(7, rations, 40_000)
    drunk = q.drunk(10.0, 11.0)
    for share, want in ((0.93, False), (0.97, True), (0.95, None)):
        if serves(drunk, float(np.quantile(drunk, share))) is not want:
            bad.append(f"a volume for {share:.0%} of worlds is taken for {serves(drunk, np.quantile(drunk, share))}")
    rate = Rate(True, "1 tsp per gal", "tsp", 1.0)
    if [rate.measurable(rate.gal * g) for g in (1 / 8, 1, 0.3)] != [True, True, False]:
        bad.append("spoons of 1 tsp per gal")
    return barn.ended(bad, [], "closed forms tried")


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("program", nargs="?")
    parser.add_argument("rations", nargs="?")
    parser.add_argument("--farms", type=int, default=36)
    parser.add_argument("--worlds", type=int, default=200_000)
    parser.add_argument("--self-test", action="store_true")
    asked, begun, seen = parser.parse_args(), time.time(), collections.Counter()
    if asked.self_test:
        return self_test(Rations(asked.rations or asked.program))
    rations, found, answers = Rations(asked.rations), [], []
    for number in range(asked.farms):
        q = Question(number, rations, asked.worlds)
        answers.append((q, q.ask(asked.program)))
        found += findings(*answers[-1], seen)
    missed, tried = spoiled(answers[:12])
    missed += [f"{what} never came up" for what in ("with least", "full drinkers", "tsp", "g") if not seen[what]]
    missed = missed if asked.farms >= ENOUGH else []
    print(dict(seen))
    return barn.ended([words for _, words in found], missed,
                      f"{tried} spoiled answers tried; {len(answers)} farms, {len(found)} off; {asked.worlds} worlds; "
                      f"{time.time() - begun:.1f} s")


if __name__ == "__main__":
    sys.exit(main())
