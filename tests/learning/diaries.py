"""Random farms of one to four hatches with random diaries, and what they say, by SciPy.

The central course of a hatch is that of ../scipy/random_farms.py; a diary's head records go on from it as
domain/farm.hpp and engine/heads.hpp define them. What a top-up measures is defined in engine/learn.hpp and DESIGN 3.12.
Ages in days, amounts in kg or L."""
import datetime as dt
import math

import numpy as np
from scipy.linalg import cholesky, lstsq

from worlds import TOP_UP_SD, Flock, alike, random_farms

Demand = random_farms.Demand

MINUTE = 1 / 1440
WEEK = 7.0
LITTLE_LEFT = 0.2     # of a planned removal: it was made


class Recorded(Flock):
    """A hatch with its head records: [(age, "counted", "died", "moved out" or "moved in", birds)]."""

    def __init__(self, farm, table, rations, records=()):
        random_farms.Hatch.__init__(self, farm, table, rations)
        self.spread = rations.spreads[table["kind"]]
        planned = [[age, "removed", birds] for age, birds in self.removed]
        for moved, what, birds in records:      # birds moved out are taken off the planned removal nearest in time
            near = min(planned, key=lambda one: abs(one[0] - moved), default=None)
            if what == "moved out" and near and abs(near[0] - moved) <= WEEK:
                whole, near[2] = near[2], near[2] - birds
                if near[2] <= LITTLE_LEFT * whole:
                    planned.remove(near)
        self.since, self.scale, known = [0.0], [self.chicks], self.chicks
        for age, what, birds in sorted([*planned, *records], key=lambda r: r[0]):
            alive = self.scale[-1] * self.survival(age)
            # who is found dead has died since the last entry about birds, whatever the table says of that time, and
            # a removal in the farm file is no entry
            known = {"counted": birds, "died": known - birds, "removed": known - birds,
                     "moved in": alive + birds}.get(what, alive - birds)
            left = alive - birds if what == "removed" else known
            assert left > 0, "no birds left"
            self.since.append(age)
            self.scale.append(left / self.survival(age))
        breaks = [*self.feed.breaks, *self.since, *self.spread.feed_low.knots]
        self.feed, self.water = Demand(self.feed_kg_per_day, breaks), Demand(self.water_l_per_day, breaks)
        self.weighted = {"feed": Demand(lambda age: self.feed_kg_per_day(age) * self.sigma(age), breaks),
                         "water": Demand(lambda age: self.water_l_per_day(age) * self.sigma(age), breaks)}

    def survival(self, age):
        return 1 - float(self.kind.mortality(age)) / 100

    def sigma(self, age):
        return self.spread.feed(age, self.laying_from)

    def sight(self, what, start, end):
        """(what the table foretells, weight of the feed score, weight of the water score) between two ages."""
        table = (self.feed if what == "feed" else self.water).over(start, end)
        mean = self.weighted[what].over(start, end) / table
        return table, mean, self.spread.water if what == "water" else 0.0


def farm_text(rng, rations):
    kinds = list(rations.kinds)
    out = ['[farm]\nname = "Invented"\nunits = "metric"']
    if rng.random() < 0.5:
        out.append(f'warmth = "{rng.integers(15, 33)} degC"')
    out.append(f'[feed.a]\nprotein = "26 %"\nform = "crumble"\nenergy = "{rng.integers(2500, 3200)} kcal/kg"')
    out.append('[feed.b]\nprotein = "18 %"\nform = "pellet"')
    for n in range(rng.integers(1, 5)):
        kind = kinds[rng.integers(len(kinds))]
        out.append(f'[hopper.h{n}]\nvolume = "500 L"\nextra_waste = "{rng.integers(0, 12)} %"\n'
                   f'[drinker.d{n}]\nvolume = "900 L"\nspill = "{rng.integers(0, 20)} %"')
        out.append(f'[[hatch]]\nname = "{n}"\nkind = "{kind}"\ndate = 2027-0{rng.integers(3, 6)}-{rng.integers(1, 28):02}'
                   f'T{rng.integers(0, 24):02}:{rng.integers(0, 60):02}:00\nchicks = {rng.integers(250, 900)}\n'
                   f'feeding = [{{ feed = "a", from = "0 d" }}, {{ feed = "b", from = "{rng.integers(20, 50)} d" }}]\n'
                   f'until = "20 wk"\nhopper = "h{n}"\nhoppers = 2\ndrinker = "d{n}"\ndrinkers = 3')
        if rng.random() < 0.5:
            out.append(f'removed = [{{ at = "{rng.integers(20, 80)} d", birds = {rng.integers(5, 60)} }}]')
        if rations.kinds[kind].laying is not None and rng.random() < 0.5:
            out.append(f'laying_from = "{rng.integers(30, 60)} d"')
    return "\n".join(out) + "\n"


def visits(rng):
    """Ages, whole minutes, at which a hatch is looked after."""
    first = rng.integers(3 * 1440, 50 * 1440)
    return (first + np.cumsum(rng.integers(600, 5 * 1440, rng.integers(3, 11)))) * MINUTE


def head_records(rng, farm, table, rations, ages):
    out = []
    for age in ages:
        if rng.random() < 0.4:
            what = ["counted", "died", "moved out", "moved in"][rng.choice(4, p=[0.4, 0.3, 0.2, 0.1])]
            alive = float(Recorded(farm, table, rations, out).birds(age))
            most = {"counted": alive, "died": 0.02 * alive, "moved out": 0.1 * alive, "moved in": 30}[what]
            out.append((float(age), what, int(max(1, round(most * rng.uniform(0.96, 1))))))
    return out


class Lessons:
    """What one diary says: rows for the program, and the stacked system."""

    def __init__(self, rng, farm, rations, appetite=0.7, noise=0.6):
        self.rows, self.seen, self.hatches, self.last, self.spreads = [], [], [], [], rations.spreads
        self.open = 0       # hoppers or drinkers found empty and not full since
        for n, table in enumerate(farm["hatch"]):
            ages = visits(rng)
            records = head_records(rng, farm, table, rations, ages)
            hatch = Recorded(farm, table, rations, records)
            for age, what, birds in records:
                self.write(hatch, age, what, birds, "birds")
            true, ends = appetite * rng.standard_normal(2), [r[0] for r in records]
            for what, unit, late in (("feed", "kg", 3), ("water", "L", 11)):
                ends += self.fill(rng, n, hatch, [a + (late + n) * MINUTE for a in ages], what, unit, true, noise)
            self.hatches.append(hatch)
            self.last.append((max(ends), records))
        self.seen.sort(key=lambda s: s["to"])
        self.rows.sort(key=lambda r: r[0])

    def write(self, hatch, age, what, amount, unit):
        at = hatch.date + dt.timedelta(minutes=round(age / MINUTE))
        self.rows.append((at, f"{at.isoformat()},{hatch.name},{what},{amount!r},{unit},"))

    def fill(self, rng, n, hatch, ages, what, unit, true, noise):
        """Top-ups, part fills, what is thrown out and found empty, of one hatch's hoppers or drinkers."""
        full, put, thrown, empty = None, 0.0, 0.0, False
        for before, age in zip([ages[0] - 0.5, *ages], ages):
            part = full is not None and rng.random() < 0.3
            usual = hatch.sight(what, max(0.0, before), age)[0]
            if rng.random() < 0.2:
                amount = float(0.3 * usual * rng.random())
                self.write(hatch, age, "thrown out", amount, unit)
                thrown += amount
            if rng.random() < 0.08:
                self.write(hatch, age, "found empty", 0, unit)
                empty = True
            if part:
                amount = float(0.4 * usual * rng.random())
                self.write(hatch, age, "part filled", amount, unit)
                put += amount
                continue
            if full is None:
                self.write(hatch, age, "topped up", float(usual), unit)
            else:
                table, feed, water = hatch.sight(what, full, age)
                off = noise * TOP_UP_SD * rng.standard_normal()
                used = float(table * math.exp(feed * true[0] + water * true[1] + off))
                self.write(hatch, age, "topped up", used - put + thrown, unit)
                self.seen.append({"flock": n, "hatch": hatch.name, "what": what, "used": used, "table": table,
                                  "feed": feed, "water": water, "empty": empty,
                                  "to": hatch.date + dt.timedelta(minutes=round(age / MINUTE))})
            full, put, thrown, empty = age, 0.0, 0.0, False
        self.open += empty
        return ages

    def posterior(self, seen, shared=None, sd=TOP_UP_SD):
        """Means and covariance of the scores, feed and water of each flock in turn, by least squares on the prior made
        white and the measurements."""
        n = len(self.hatches)
        prior = np.kron(alike([h.kind.name for h in self.hatches], self.spreads, shared), np.eye(2))
        white = np.linalg.inv(cholesky(prior, lower=True))
        rows, right = [*white], [0.0] * (2 * n)
        for s in seen:
            if not s["empty"]:
                row = np.zeros(2 * n)
                row[2 * s["flock"]:2 * s["flock"] + 2] = s["feed"], s["water"]
                rows.append(row / sd)
                right.append(math.log(s["used"] / s["table"]) / sd)
        rows = np.array(rows)
        return lstsq(rows, np.array(right))[0], np.linalg.inv(rows.T @ rows)

    def factors(self, means):
        """Use of feed and of water over the table's, at the age of each hatch's last entry."""
        for n, (hatch, (age, _)) in enumerate(zip(self.hatches, self.last)):
            feed = means[2 * n] * float(hatch.sigma(age))
            yield math.exp(feed), math.exp(feed + means[2 * n + 1] * hatch.spread.water)
