"""Possible worlds of a flock, by NumPy, from a farm file's text and the rations' TOML files.

The central course of a flock is that of ../scipy/random_farms.py. A world moves it by standard scores (DESIGN 3.11 and
the headers engine/belief.hpp and engine/away.hpp): feed by exp(z * sigma(age)), deaths by exp(z * sigma(age)) but never
above all, the ratio of water to feed by exp(z * sigma), what a full hopper weighs by exp(0.05 z). sigma is ln(high / low)
over the distance from the 5 to the 95 % point of the normal law. Where eggs are stated and the rate is not, the hatch
rate is moved alike. Scores of feed, of water, of deaths and of hatching correlate by 0.25 between two flocks of two
kinds, by 0.5 between two of one kind, by 0.85 where its table is a model only (DESIGN 7: the shared part is at least
half); all others are independent. Ages and times in days, amounts in kg or L."""
import bisect
import copy
import math
import pathlib
import sys
import tomllib

import numpy as np
from scipy.special import ndtri

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent.parent / "scipy"))
import random_farms  # noqa: E402
from random_farms import Curve, value  # noqa: E402

HIGH = float(ndtri(0.95))    # standard score of the 95 % point; DESIGN 3.1 writes 1.6449
SHARED = {"farm": 0.25, "kind": 0.5, "model": 0.85}      # Belief::shared_by_...
DENSITY_CV = 0.05        # DESIGN 3.11
TOP_UP_SD = 0.08         # DESIGN 3.12
POINTS = (0.5 - math.sqrt(1 / 12), 0.5 + math.sqrt(1 / 12))    # Gauss-Legendre, 2 points of equal weight on 0 to 1


class Spread:
    """How far flocks of one kind lie apart."""

    def __init__(self, path):
        t = tomllib.loads(path.read_text())
        self.feed_low, self.feed_high = self._ends(t["growing"]["rows"])
        self.dead_low, self.dead_high = self._ends(t["mortality"]["rows"])
        self.water = math.log(t["water"]["ratio"][2] / t["water"]["ratio"][0]) / (2 * HIGH)
        rate = t.get("laying", {"rate": [1, 1, 1]})["rate"]
        self.laying = math.log(rate[2] / rate[0]) / (2 * HIGH)
        low, high = (value(t["hatch_rate"][end], "share") for end in ("low", "high"))
        self.hatching = math.log(high / low) / (2 * HIGH)
        self.model_only = t["growing"].get("model_only", False)

    @staticmethod
    def _ends(rows):
        ages = [r[0] for r in rows]
        return Curve(ages, [r[1] for r in rows]), Curve(ages, [r[3] for r in rows])

    def feed(self, age, laying_from=math.inf):
        growing = np.log(self.feed_high(age) / self.feed_low(age)) / (2 * HIGH)
        return np.where(np.asarray(age) >= laying_from, self.laying, growing)

    def deaths(self, age):
        """0 at the hatch, when nothing has died yet."""
        low, high = self.dead_low(age), self.dead_high(age)
        return np.where(low > 0, np.log(np.where(low > 0, high, 1) / np.where(low > 0, low, 1)) / (2 * HIGH), 0.0)


class Rations(random_farms.Rations):
    def __init__(self, root):
        super().__init__(root)
        self.spreads = {p.stem: Spread(p) for p in sorted((pathlib.Path(root) / "birds").glob("*.toml"))}


def alike(kinds, spreads, shared=None):
    """Correlation of one trait between flocks of these kinds before anything is seen of them."""
    shared = shared or SHARED
    of_kind = [shared["model" if spreads[k].model_only else "kind"] for k in kinds]
    return np.array([[1.0 if i == j else of_kind[i] if a == b else shared["farm"] for j, b in enumerate(kinds)]
                     for i, a in enumerate(kinds)])


def scores(rng, kinds, spreads, worlds, shared=None):
    """[{"feed", "water", "deaths", "hatching", "density"}], one for each flock of these kinds, each an array of
    standard scores: a part the farm has in common, one the kind has, and the flock's own."""
    shared = shared or SHARED

    def normal():
        return rng.standard_normal(worlds, dtype=np.float32)

    def together():
        farm, parts = normal(), {}
        for kind in kinds:
            of_kind = shared["model" if spreads[kind].model_only else "kind"]
            parts.setdefault(kind, normal())
            yield (math.sqrt(shared["farm"]) * farm + math.sqrt(of_kind - shared["farm"]) * parts[kind]
                   + math.sqrt(1 - of_kind) * normal())

    columns = zip(together(), together(), together(), together(), (normal() for _ in kinds))
    return [dict(zip(("feed", "water", "deaths", "hatching", "density"), column)) for column in columns]


class Flock(random_farms.Hatch):
    """One hatch in many worlds."""

    def __init__(self, farm, table, rations, world):
        super().__init__(farm, table, rations)
        self.spread, self.world = rations.spreads[table["kind"]], world
        self.size = world["feed"].size
        self.cuts = sorted({*self.feed.breaks.tolist(), *self.spread.feed_low.knots})
        chicks = np.full(self.size, self.chicks, np.float32)
        if "eggs" in table and "hatch_rate" not in table:
            chicks = np.minimum(table["eggs"], self.chicks * np.exp(self.spread.hatching * world["hatching"]))
        self.fresh = [(0.0, chicks)]   # from an age on: birds for each survivor
        for age, birds in self.removed:
            alive = self.survivors(self.kind.mortality(age), self.spread.deaths(age), slice(None))
            left = np.maximum(0, self.fresh[-1][1] * alive - birds)
            self.fresh.append((age, np.divide(left, alive, out=np.zeros_like(left), where=alive > 0)))

    def survivors(self, dead_percent, sigma, pick):
        return 1 - np.minimum(1, float(dead_percent) / 100 * np.exp(float(sigma) * self.world["deaths"][pick]))

    def rows(self, what, ages):
        """At each age the central use of one bird a day, and what moves it: rows for `rate`."""
        ages = np.asarray(ages, float)
        central = (self.feed_kg_per_day if what == "feed" else self.water_l_per_day)(ages) / self.birds(ages)
        return list(zip(ages, central, self.spread.feed(ages, self.laying_from), self.kind.mortality(ages),
                        self.spread.deaths(ages)))

    def rate(self, what, row, pick=slice(None)):
        """What the whole hatch uses a day, kg of feed or L of water, in the worlds picked."""
        age, central, sigma, dead, dead_sigma = row
        score = float(sigma) * self.world["feed"][pick]
        if what == "water":
            score += self.spread.water * self.world["water"][pick]
        birds = [b for since, b in self.fresh if since <= age][-1]
        return float(central) * np.exp(score) * birds[pick] * self.survivors(dead, dead_sigma, pick)

    def used(self, what, start, end, longest=4.0):
        """Between two ages, in every world."""
        edges = [start, *(c for c in self.cuts if start < c < end), end]
        ages, weights = [], []
        for a, b in zip(edges, edges[1:]):
            n = math.ceil((b - a) / longest - 1e-9)
            ages += [a + (b - a) * (i + p) / n for i in range(n) for p in POINTS]
            weights += [(b - a) / n / 2] * (2 * n)
        total = np.zeros(self.size, np.float32)
        for weight, row in zip(weights, self.rows(what, ages)):
            total += weight * self.rate(what, row)
        return total

    def room(self, what, age):
        """What all the hatch's vessels hold together, in every world."""
        if what == "water":
            return np.full(self.size, self.drinkers * self.drinker_l, np.float32)
        step = bisect.bisect_right(self.step_starts, age) - 1
        return self.hoppers * self.hopper_kg[step] * np.exp(DENSITY_CV * self.world["density"])

    def nominal(self, what, age):
        """What they hold when all are full, at the usual weight of feed."""
        if what == "water":
            return self.drinkers * self.drinker_l
        return self.hoppers * self.hopper_kg[bisect.bisect_right(self.step_starts, age) - 1]

    def lasts(self, what, age, room, steps=12):
        """Days from `age` until `room` is used, in every world; infinite for the 1 in 2000 that lasts longest."""
        step = (self.feed if what == "feed" else self.water).lasts(age, float(np.median(room))) / steps
        out, left, pick, a = np.full(self.size, np.inf, np.float32), room.copy(), np.arange(self.size), age
        while pick.size > self.size / 2000 and a < age + 1000:  # where no birds are left, it never is
            edges = [a]
            while len(edges) <= steps:
                edges.append(min(edges[-1] + step, next((c for c in self.cuts if c > edges[-1]), math.inf)))
            nodes = self.rows(what, [a + (b - a) * p for a, b in zip(edges, edges[1:]) for p in POINTS])
            for a, b, low, high in zip(edges, edges[1:], nodes[::2], nodes[1::2]):
                first, second = self.rate(what, low, pick), self.rate(what, high, pick)
                rest = left[pick]
                gone = (b - a) / 2 * (first + second)
                ends = gone >= rest
                # inside a piece the rate is a straight line through the two points
                slope = (second - first)[ends] / (POINTS[1] - POINTS[0])
                start, need = gone[ends] / (b - a) - slope / 2, rest[ends] / (b - a)
                share = 2 * need / (start + np.sqrt(np.maximum(0, start**2 + 2 * slope * need)))
                out[pick[ends]] = a - age + (b - a) * share
                left[pick] = rest - gone
                pick = pick[~ends]
            a = edges[-1]
        return out


def frozen(table, age):
    """A [[hatch]] while nobody is there: feed is not changed after `age` and no bird leaves."""
    out = copy.deepcopy(table)
    eaten = [f for f in table["feeding"] if value(f["from"], "time") <= age][-1]
    out["feeding"] = [{"feed": eaten["feed"], "from": "0 d"}]
    out["removed"] = [r for r in table.get("removed", []) if value(r["at"], "time") <= age]
    return out
