#!/usr/bin/python3
"""An independent check of `cropful plan --json` on random farms.

    random_farms.py PROGRAM RATIONS_DIR [--farms 200] [--seed 1] [--keep]
    random_farms.py --self-test [RATIONS_DIR]

Every farm is written as TOML text with its quantities in mixed units, given to
PROGRAM, and worked out a second time here with SciPy from that same text and
the tables in RATIONS_DIR.  Nothing is taken from the C++ sources.

Two ways of integrating are used on purpose.  Feed totals come from
scipy.integrate.quad on each smooth piece.  What a vessel gives between two
fills comes from the 10-point Gauss-Legendre rule on each smooth piece (the
rule of scipy.integrate.fixed_quad with n=10): head count times intake is a
product of two cubics, degree 6, and ten points are exact to degree 19.

A vessel is filled again at the safe end of how long it lasts, p05.  That figure
is taken as printed, here judged only by its place (p05 <= p50 <= p95, the
central figure inside); the chain of fills must follow it.
"""

import argparse
import collections
import copy
import datetime as dt
import json
import math
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile
import time
import tomllib
import warnings

import numpy as np
from scipy.integrate import IntegrationWarning, fixed_quad, quad
from scipy.interpolate import CubicHermiteSpline, PchipInterpolator
from scipy.optimize import brentq
from scipy.special import roots_legendre

TOLERANCE = 1e-9          # relative, for every number compared
INSTANT = 1e-9            # days; ages nearer than this are one moment
WINDOWS = 20              # farms asked a second time, with --from and --to

# A quad that cannot keep its promise is a fault of this check, not a footnote.
warnings.simplefilter("error", IntegrationWarning)

# ---------------------------------------------------------------- quantities

LB_KG = 0.45359237
INCH_M = 0.0254
US_GAL_M3 = 231 * INCH_M**3
IMP_GAL_M3 = 4.54609e-3
KCAL_J = 4184.0

UNITS = {
    "mass": {"kg": 1.0, "g": 1e-3, "mg": 1e-6, "lb": LB_KG, "oz": LB_KG / 16},
    "volume": {
        "m3": 1.0, "L": 1e-3, "mL": 1e-6, "ft3": (12 * INCH_M) ** 3, "in3": INCH_M**3,
        "gal": US_GAL_M3, "US gal": US_GAL_M3, "qt": US_GAL_M3 / 4, "pt": US_GAL_M3 / 8,
        "cup": US_GAL_M3 / 16, "fl oz": US_GAL_M3 / 128, "tbsp": US_GAL_M3 / 256,
        "tsp": US_GAL_M3 / 768, "imp gal": IMP_GAL_M3, "imp-gal": IMP_GAL_M3,
    },
    "time": {"d": 1.0, "wk": 7.0, "h": 1 / 24, "min": 1 / 1440},          # days
    "length": {"m": 1.0, "cm": 1e-2, "mm": 1e-3, "in": INCH_M, "ft": 12 * INCH_M},
    "share": {"%": 1e-2},
    "energy": {"kcal/kg": KCAL_J, "MJ/kg": 1e6, "kcal/lb": KCAL_J / LB_KG},  # J/kg
    "density": {
        "kg/m3": 1.0, "kg/L": 1e3, "g/L": 1.0, "g/mL": 1e3,
        "lb/ft3": LB_KG / (12 * INCH_M) ** 3, "lb/gal": LB_KG / US_GAL_M3,
    },
}

_NUMBER = re.compile(r"\s*(?:(?:(\d+)\s+)?(\d+)\s*/\s*(\d+)|([-+]?\d+(?:\.\d+)?(?:[eE][-+]?\d+)?))\s*(.*?)\s*$")


def split_text(text):
    """'1 1/2 gal' -> (1.5, 'gal')"""
    m = _NUMBER.match(text)
    if not m:
        raise ValueError(f"no number in {text!r}")
    whole, top, bottom, plain, unit = m.groups()
    if plain is not None:
        return float(plain), unit
    return int(whole or 0) + int(top) / int(bottom), unit


def value(text, what):
    number, unit = split_text(text)
    return number * UNITS[what][unit]


def warmth_c(text):
    number, unit = split_text(text)
    return {"degC": number, "degF": (number - 32) * 5 / 9}[unit]


def per(text, top, bottom):
    """'4 oz per 128 gal', '5 g/tsp': SI units of `top` for one SI unit of `bottom`."""
    above, below = text.split(" per ") if " per " in text else text.rsplit("/", 1)
    below = below if below.lstrip()[0].isdigit() else "1 " + below
    return value(above, top) / value(below, bottom)


def label_rate(text):
    """(kg or m3 of product for each m3 of water, by weight?)"""
    if ":" in text:
        return 1 / float(text.split(":")[1]), False
    try:
        return per(text, "mass", "volume"), True
    except KeyError:
        return per(text, "volume", "volume"), False


def degrees_apart_c(text):
    """'per degree' figures: a bare per cent is per degree Celsius."""
    return value(text, "share")


# -------------------------------------------------------------------- curves


class Curve:
    """Cubic Hermite; interior slopes as SciPy's pchip, end slopes the plain
    secants of the end intervals; constant past the last knot."""

    def __init__(self, ages, values):
        x, y = np.asarray(ages, float), np.asarray(values, float)
        slopes = PchipInterpolator(x, y).derivative()(x)
        slopes[0] = (y[1] - y[0]) / (x[1] - x[0])
        slopes[-1] = (y[-1] - y[-2]) / (x[-1] - x[-2])
        self.x, self.end = x, float(y[-1])
        self.spline = CubicHermiteSpline(x, y, slopes)
        self.knots = [float(k) for k in x]

    def __call__(self, age):
        age = np.asarray(age, float)
        return np.where(age >= self.x[-1], self.end, self.spline(np.minimum(age, self.x[-1])))

    def piece(self, age):
        """(x0, c3, c2, c1, c0) of the polynomial holding around `age`."""
        if age >= self.x[-1]:
            return (0.0, 0.0, 0.0, 0.0, self.end)
        i = int(np.searchsorted(self.x, age, side="right")) - 1
        return (float(self.x[i]), *(float(c) for c in self.spline.c[:, i]))


class Kind:
    def __init__(self, path):
        t = tomllib.loads(path.read_text())
        self.name = path.stem
        rows = t["growing"]["rows"]
        self.curve = Curve([r[0] for r in rows], [r[2] for r in rows])
        self.energy = value(t["growing"]["energy"], "energy")
        self.laying = None
        if "laying" in t:
            rate = t["laying"]["rate"][1]
            self.laying = float(rate) if not isinstance(rate, str) else split_text(rate)[0]
            self.laying_energy = value(t["laying"].get("energy", t["growing"]["energy"]), "energy")
        rows = t["mortality"]["rows"]
        self.mortality = Curve([r[0] for r in rows], [r[2] for r in rows])
        self.hatch_rate = value(t["hatch_rate"]["value"], "share") if "hatch_rate" in t else None
        ratio = t["water"]["ratio"][1]
        self.ratio = float(ratio) if not isinstance(ratio, str) else split_text(ratio)[0]   # mL/g
        self.water_heat = self.feed_heat = None
        if "water_heat" in t:
            w = t["water_heat"]
            self.water_heat = (degrees_apart_c(w["per_degree"]), warmth_c(w["above"]))
        if "feed_heat" in t:
            w = t["feed_heat"]
            self.feed_heat = (degrees_apart_c(w["per_degree"]), warmth_c(w["above"]))
        self.elasticity = float(t["feed_energy"]["elasticity"]) if "feed_energy" in t else 0.0
        self.brooding_ends = float(t["brooding"]["rows"][-1][0]) - 1


class Rations:
    def __init__(self, root):
        root = pathlib.Path(root)
        self.kinds = {p.stem: Kind(p) for p in sorted((root / "birds").glob("*.toml"))}
        if not self.kinds:
            raise SystemExit(f"no birds/*.toml below {root}")
        forms = tomllib.loads((root / "feeds" / "forms.toml").read_text())
        self.forms = {}
        for form in ("mash", "crumble", "pellet"):
            d = forms[form]["density"][1]
            self.forms[form] = value(d, "density")


# --------------------------------------------------------------------- model

NODES, WEIGHTS = roots_legendre(10)


class Demand:
    """A positive rate of age in pieces, with the ages at which it is not smooth."""

    def __init__(self, rate, breaks):
        self.rate = rate
        self.breaks = np.array(sorted({float(b) for b in breaks if b > 0}))

    def cut(self, a, b):
        inside = self.breaks[np.searchsorted(self.breaks, a, "right"):np.searchsorted(self.breaks, b, "left")]
        return [a, *inside.tolist(), b]

    def batch(self, starts, ends):
        """Ten-point Gauss-Legendre on every smooth piece of every window."""
        lo, hi, owner = [], [], []
        for i, (a, b) in enumerate(zip(starts, ends)):
            edges = self.cut(a, b)
            lo += edges[:-1]
            hi += edges[1:]
            owner += [i] * (len(edges) - 1)
        lo, hi = np.array(lo), np.array(hi)
        half, mid = (hi - lo) / 2, (hi + lo) / 2
        sums = half * (self.rate(mid[:, None] + half[:, None] * NODES[None, :]) @ WEIGHTS)
        out = np.zeros(len(starts))
        np.add.at(out, np.array(owner), sums)
        return out

    def over(self, a, b):
        return float(self.batch([a], [b])[0])

    def lasts(self, a, amount):
        """Days after age a at which `amount` has gone; bracketed root."""
        step = amount / float(self.rate(np.array([a]))[0])
        hi = step
        while self.over(a, a + hi) < amount:
            hi *= 2
        return brentq(lambda t: (self.over(a, a + t) if t > 0 else 0.0) - amount, 0.0, hi,
                      xtol=1e-14, rtol=1e-14, maxiter=200)


Step = collections.namedtuple("Step", "feed start end")


class Course:
    """A [supplement.*]: when it is given, and what goes into the water.  None where a thing cannot be known."""

    def __init__(self, table):
        self.start = value(table["from"], "time") if "from" in table else 0.0
        self.end = self.start + table["days"]
        self.batch = min(1.0, value(table["keeps"], "time") if "keeps" in table else 1.0)
        self.spoon = per(table["spoon"], "mass", "volume") if "spoon" in table else None       # kg/m3
        rate, by_weight = label_rate(table["rate"]) if "rate" in table else (None, None)
        self.parts = self.per_l_g = self.per_l_ml = None
        if "stock" in table:       # what the birds drink, whatever the label's rate says
            self.parts = float(table["stock"]["proportioner"].split(":")[1])
            self.stock_g_per_l = per(table["stock"]["strength"], "mass", "volume")             # kg/m3 is g/L
            self.per_l_g = self.stock_g_per_l / self.parts
        elif by_weight:
            self.per_l_g = rate
        else:
            self.per_l_ml = 1e3 * rate
            self.per_l_g = rate * self.spoon if self.spoon else None
        if self.per_l_ml is None and self.spoon:
            self.per_l_ml = self.per_l_g / self.spoon * 1e3
        self.sodium_mg_per_l = None
        if "sodium" in table and self.per_l_g is not None:
            self.sodium_mg_per_l = 1e3 * self.per_l_g * value(table["sodium"], "share")

    def dose(self, litres):
        stock = None if self.parts is None else litres / self.parts
        return {"water_l": litres,
                "product_g": None if self.per_l_g is None else self.per_l_g * litres,
                "product_ml": None if self.per_l_ml is None else self.per_l_ml * litres,
                "stock_ml": None if stock is None else 1e3 * stock,
                "stock_product_g": None if stock is None else self.stock_g_per_l * stock}


class Hatch:
    """One [[hatch]] of a farm, as functions of age in days."""

    def __init__(self, farm, table, rations):
        self.name, self.table = table["name"], table
        self.kind = kind = rations.kinds[table["kind"]]
        self.date = as_datetime(table["date"])
        if "chicks" in table:
            self.chicks = float(table["chicks"])
        else:
            rate = value(table["hatch_rate"], "share") if "hatch_rate" in table else kind.hatch_rate
            self.chicks = table["eggs"] * rate
        self.until = value(table["until"], "time")
        self.removed = sorted((value(r["at"], "time"), r["birds"]) for r in table.get("removed", []))
        self.laying_from = value(table["laying_from"], "time") if "laying_from" in table else math.inf

        # head count: scale * S(a) between removals
        self.since, self.scale = [0.0], [self.chicks]
        for age, birds in self.removed:
            s = 1 - float(kind.mortality(age)) / 100
            self.since.append(age)
            self.scale.append((self.scale[-1] * s - birds) / s)
        assert min(self.scale) > 0, "a removal took every bird"

        # feeds by age
        starts = [value(f["from"], "time") for f in table["feeding"]]
        ends = starts[1:] + [self.until]
        self.steps = [Step(f["feed"], max(0.0, a), min(b, self.until))
                      for f, a, b in zip(table["feeding"], starts, ends)]
        self.step_starts = starts
        feeds = [farm["feed"][f["feed"]] for f in table["feeding"]]
        self.feed_energy = [value(f["energy"], "energy") if "energy" in f else None for f in feeds]
        self.densities = [value(f["density"], "density") if "density" in f else rations.forms[f["form"]]
                          for f in feeds]

        # warmth
        self.feed_warm = self.water_warm = 1.0
        if "warmth" in farm["farm"]:
            t = warmth_c(farm["farm"]["warmth"])
            if kind.feed_heat:
                self.feed_warm = 1 - kind.feed_heat[0] * max(0.0, t - kind.feed_heat[1])
            if kind.water_heat:
                self.water_warm = 1 + kind.water_heat[0] * max(0.0, t - kind.water_heat[1])

        # vessels
        hopper, drinker = farm["hopper"][table["hopper"]], farm["drinker"][table["drinker"]]
        self.hoppers, self.drinkers = table["hoppers"], table["drinkers"]
        self.waste = value(hopper["extra_waste"], "share") if "extra_waste" in hopper else 0.0
        self.spill = value(drinker["spill"], "share") if "spill" in drinker else 0.0
        share = (value(hopper["fill"], "share") if "fill" in hopper else 1.0) * \
                (1 - (value(hopper["stays_behind"], "share") if "stays_behind" in hopper else 0.0))
        self.hopper_kg = [vessel_m3(hopper) * d * share for d in self.densities]
        self.drinker_l = 1e3 * (value(drinker["volume"], "volume")
                                - (value(drinker["displaced"], "volume") if "displaced" in drinker else 0.0))
        self.change_every = value(drinker["change_every"], "time") if "change_every" in drinker else math.inf

        self.least_l = 1e3 * value(drinker["least"], "volume") if "least" in drinker else 0.0
        self.course = Course(farm["supplement"][table["supplement"]]) if "supplement" in table else None

        breaks = [*kind.curve.knots, *kind.mortality.knots, *starts, kind.brooding_ends,
                  *(r[0] for r in self.removed)]
        if self.laying_from < math.inf:
            breaks.append(self.laying_from)
        self.feed = Demand(self.feed_kg_per_day, breaks)       # the whole hatch
        self.water = Demand(self.water_l_per_day, breaks)

    def factor(self, step, laying):
        if self.feed_energy[step] is None:
            return 1.0
        ref = self.kind.laying_energy if laying else self.kind.energy
        return (ref / self.feed_energy[step]) ** self.kind.elasticity

    def birds(self, age):
        age = np.asarray(age, float)
        scale = np.array(self.scale)[np.searchsorted(np.array(self.since), age, "right") - 1]
        return scale * (1 - self.kind.mortality(age) / 100)

    def eaten_g(self, age):
        """Per bird and day, ordinary spillage in, extra waste out."""
        age = np.asarray(age, float)
        step = np.searchsorted(np.array(self.step_starts), age, "right") - 1
        growing = np.array([self.factor(i, False) for i in range(len(self.steps))])
        g = self.kind.curve(age) * growing[step]
        if self.laying_from < math.inf:
            laying = np.array([self.factor(i, True) for i in range(len(self.steps))])
            g = np.where(age >= self.laying_from, self.kind.laying * laying[step], g)
        return g * np.where(age >= self.kind.brooding_ends, self.feed_warm, 1.0)

    def feed_kg_per_day(self, age):
        return self.birds(age) * self.eaten_g(age) / 1e3 / (1 - self.waste)

    def water_l_per_day(self, age):
        warm = np.where(np.asarray(age) >= self.kind.brooding_ends, self.water_warm, 1.0)
        return self.birds(age) * self.eaten_g(age) * self.kind.ratio * warm / 1e3 / (1 - self.spill)

    def steps_within(self, a, b):
        clipped = [Step(s.feed, max(s.start, a), min(s.end, b)) for s in self.steps]
        return [s for s in clipped if s.start < s.end]

    def water_due(self, age):
        """Days from `age` until the water in a drinker is due whatever is left."""
        c, due = self.course, self.change_every
        if c is None or age + INSTANT >= c.end:
            return due
        if age + INSTANT < c.start:
            return min(due, c.start - age)
        return min(due, c.batch, c.end - age)

    def mix(self, a, b):
        """The batches between two ages and their sum, under the keys of the answer; None without a supplement."""
        c = self.course
        if c is None:
            return None
        start, end, batches = max(a, c.start), min(b, c.end), []
        while start + len(batches) * c.batch + INSTANT < end:
            age = start + len(batches) * c.batch
            lasts = min(c.batch, end - age)
            drunk = self.water.over(age, age + lasts)
            batches.append({"age_d": age, "lasts_d": lasts, "drunk_l": drunk,
                            **c.dose(max(drunk, self.least_l * self.drinkers))})
        return {"batches": batches, **c.dose(math.fsum(m["water_l"] for m in batches)),
                "per_l_g": c.per_l_g, "sodium_mg_per_l": c.sodium_mg_per_l}

    def feed_kg_by_quad(self, a, b):
        """The same integral by scipy.integrate.quad, from polynomial pieces in
        plain floats: shares nothing with `Demand.batch` but the splines."""
        total = 0.0
        edges = self.feed.cut(a, b)
        for lo, hi in zip(edges, edges[1:]):
            mid = (lo + hi) / 2
            step = max(i for i, s in enumerate(self.step_starts) if s <= mid)
            scale = [k for s, k in zip(self.since, self.scale) if s <= mid][-1]
            laying = mid >= self.laying_from
            m0, m3, m2, m1, mc = self.kind.mortality.piece(mid)
            f0, f3, f2, f1, fc = (0.0, 0.0, 0.0, 0.0, self.kind.laying) if laying else self.kind.curve.piece(mid)
            const = scale * self.factor(step, laying) / 1e3 / (1 - self.waste)
            if mid >= self.kind.brooding_ends:
                const *= self.feed_warm

            def rate(x):
                u, v = x - m0, x - f0
                return ((1 - (((m3 * u + m2) * u + m1) * u + mc) / 100)
                        * (((f3 * v + f2) * v + f1) * v + fc))

            total += const * quad(rate, lo, hi, epsabs=0, epsrel=1e-12)[0]
        return total


def as_datetime(d):
    return d if isinstance(d, dt.datetime) else dt.datetime(d.year, d.month, d.day)


def vessel_m3(vessel):
    if "volume" in vessel:
        return value(vessel["volume"], "volume")
    total = 0.0
    for part in vessel["parts"]:
        size = {k: value(v, "length") for k, v in part.items() if k != "shape"}
        if part["shape"] == "cylinder":
            total += math.pi / 4 * size["diameter"] ** 2 * size["height"]
        elif part["shape"] == "frustum":
            r, s = size["top"] / 2, size["bottom"] / 2
            total += math.pi * size["height"] / 3 * (r * r + r * s + s * s)
        elif part["shape"] == "box":
            total += size["length"] * size["width"] * size["height"]
        else:
            raise ValueError(part["shape"])
    return total


def whole_bags(table, need):
    """Bags of one feed for a need in kg, less what is on hand; None where a rounding decides it."""
    x = (need - (value(table["on_hand"], "mass") if "on_hand" in table else 0.0)) / value(table["bag"], "mass")
    if abs(x - round(x)) < 1e-9 * max(1.0, abs(x)) and need > 0 and round(x) >= 0:
        return None
    return max(0, math.ceil(x))


def pooled_bags(farm, hatches, needs):
    """{(hatch, i): (bags or None where a rounding decides it, cost)}: hatches by
    date, feeds in order, cumulative need less what is on hand.  `needs` holds only
    the feeds of the time asked for."""
    out, run = {}, collections.defaultdict(float)
    for h in sorted(hatches, key=lambda h: h.date):
        for i in range(len(h.steps)):
            if (h.name, i) not in needs:
                continue
            feed, amount = needs[h.name, i]
            before = whole_bags(farm["feed"][feed], run[feed])
            run[feed] += amount
            after = whole_bags(farm["feed"][feed], run[feed])
            n = None if before is None or after is None else after - before
            out[h.name, i] = (n, None if n is None else n * farm["feed"][feed]["price"])
    return out


def packs_of(table, product_g, product_ml):
    """(packs, cost) of so much of a supplement; see packs_to_buy."""
    if "pack" not in table:
        return None, None
    by_weight = split_text(table["pack"])[1] in UNITS["mass"]
    amount = product_g if by_weight else product_ml
    size = value(table["pack"], "mass") * 1e3 if by_weight else value(table["pack"], "volume") * 1e6
    if amount is None:
        return None, None
    x = amount / size
    packs = "either" if abs(x - round(x)) < 1e-8 * max(1.0, x) else math.ceil(x)
    return packs, packs * table["price"] if packs != "either" and "price" in table else None


def packs_to_buy(farm, mixes):
    """{supplement: (product_g, product_ml, packs, cost)} for the supplements mixed at all.  `mixes` is a list of
    (supplement, mix).  packs is None without a pack or where the product is not known in its terms, and "either"
    where a rounding decides it."""
    out = {}
    for key, table in farm.get("supplement", {}).items():
        parts = [m for s, m in mixes if s == key and m["batches"]]
        if not parts:
            continue
        total = {k: None if any(m[k] is None for m in parts) else math.fsum(m[k] for m in parts)
                 for k in ("product_g", "product_ml")}
        packs, cost = packs_of(table, total["product_g"], total["product_ml"])
        out[key] = (total["product_g"], total["product_ml"], packs, cost)
    return out


# ---------------------------------------------------------------- comparison


BAND = ("p05", "p50", "p95")


class Report:
    def __init__(self):
        self.worst = (0.0, "nothing compared")
        self.numbers = 0
        self.faults = []

    def same(self, where, got, want, floor=0.0):
        self.numbers += 1
        if isinstance(got, bool) or not isinstance(got, (int, float)) or not math.isfinite(got):
            self.faults.append(f"{where}: a number was expected ({want!r}), found {got!r}")
            return
        scale = max(abs(got), abs(want), floor)
        off = abs(got - want) / scale if scale else 0.0
        if off > self.worst[0]:
            self.worst = (off, f"{where}: program {got!r}, here {want!r}")
        if not off <= TOLERANCE:
            self.faults.append(f"{where}: program {got!r}, here {want!r} (off by {off:.3g} relative)")

    def maybe(self, where, got, want):
        """A number, or null where it cannot be known."""
        if want is None:
            self.equal(where, got, None)
        else:
            self.same(where, got, want)

    def equal(self, where, got, want):
        self.numbers += 1
        if got != want:
            self.faults.append(f"{where}: program {got!r}, here {want!r}")

    def band(self, where, got, central):
        """p05 <= p50 <= p95 as printed, with the central figure strictly inside."""
        self.numbers += len(BAND)
        ends = [got.get(key) for key in BAND]
        if not all(is_number(v) for v in (*ends, central)):
            self.faults.append(f"{where}: numbers were expected as {', '.join(BAND)}, found {ends!r}")
        elif not (0 <= ends[0] <= ends[1] <= ends[2] and ends[0] < central < ends[2]):
            self.faults.append(f"{where}: {ends!r} do not rise, or {central!r} is not inside them")

    def moment(self, where, got, want):
        """A date text, to its own resolution."""
        self.numbers += 1
        text = str(got)
        try:
            seen = dt.datetime.fromisoformat(text.strip())
            seen = seen.replace(tzinfo=None)
        except ValueError:
            self.faults.append(f"{where}: {got!r} is not an ISO date and time")
            return
        clock = re.search(r"\d\d:\d\d(:\d\d)?", text)
        grain = 86400 if not clock else 1 if clock.group(1) else 60
        if abs((seen - want).total_seconds()) > grain:
            self.faults.append(f"{where}: program {got!r}, here {want.isoformat(sep=' ')}")


def is_number(v):
    return isinstance(v, (int, float)) and not isinstance(v, bool) and math.isfinite(v)


def check_fills(report, where, hatch, span, fills, demand, count, unit, content, seen):
    """Every fill of one kind of vessel between two ages.  `content(age)` is what one vessel holds."""
    first, until = span
    is_hopper = unit == "kg"
    if not fills:
        report.faults.append(f"{where}: no fills")
        return
    ages = [f["age_d"] for f in fills]
    last_for = [f["empty_after_d"] for f in fills]
    safe_for = [f["p05"] for f in fills]
    for label, numbers in (("age_d", ages), ("empty_after_d", last_for), ("p05", safe_for)):
        if not all(is_number(v) for v in numbers):
            report.faults.append(f"{where}: {label} is not a number throughout")
            return
    report.same(f"{where}: age of the first fill", ages[0], first)
    if any(b <= a for a, b in zip(ages, ages[1:])) or min(*last_for, *safe_for) <= 0:
        report.faults.append(f"{where}: ages of the fills do not rise, or a fill lasts no time")
        return
    if ages[-1] >= until - 1e-9:
        report.faults.append(f"{where}: a fill at {ages[-1]!r} d, not before the end at {until!r} d")
        return

    ends = ages[1:] + [until]
    to_empty = demand.batch(ages, [a + t for a, t in zip(ages, last_for)]) / count
    used = demand.batch(ages, ends) / count
    birds = hatch.birds(ages)
    changes = [s.start for s in hatch.steps_within(*span)[1:]] if is_hopper else []
    picks = {0, len(fills) // 3, 2 * len(fills) // 3, len(fills) - 1}

    for k, fill in enumerate(fills):
        at = f"{where} fill {k + 1} of {len(fills)} (day {ages[k]:.3f})"
        holds = content(ages[k])
        report.same(f"{at} content_{unit}", fill[f"content_{unit}"], holds)
        report.same(f"{at} birds", fill["birds"], float(birds[k]))
        # a fill cut short just after it began uses next to nothing: judge that by the vessel
        report.same(f"{at} used_{unit}", fill[f"used_{unit}"], float(used[k]), floor=1e-4 * holds)
        report.same(f"{at} taken by its empty_after_d against its content", float(to_empty[k]), holds)
        report.moment(f"{at} at", fill["at"], hatch.date + dt.timedelta(days=ages[k]))
        report.moment(f"{at} empty_at", fill["empty_at"], hatch.date + dt.timedelta(days=ages[k] + last_for[k]))
        report.band(f"{at} how long it lasts", fill, last_for[k])
        if k in picks:
            root = demand.lasts(ages[k], holds * count)
            report.same(f"{at} empty_after_d against brentq", last_for[k], root)
            seen["roots found"] += 1

        # what ends this fill: the safe end of how long it lasts, or what is due before that
        due = ages[k] + safe_for[k]
        if is_hopper:
            change = min((c for c in changes if c > ages[k]), default=math.inf)
            if change < min(due, until):
                seen["hopper topped by a change of feed"] += 1
            elif due < until:
                seen["hopper filled at the safe end"] += 1
            due = min(due, change)
        else:
            allowed = hatch.water_due(ages[k])
            if allowed < safe_for[k]:
                seen["water changed before dry"] += 1
                seen["solution changed before dry"] += hatch.course is not None and allowed == hatch.course.batch
            elif allowed < math.inf:
                seen["dry before the water is changed"] += 1
            # the sooner of dry (central) and due; null where nothing but running dry is stated
            report.maybe(f"{at} change_after_d", fill.get("change_after_d"),
                         None if allowed == math.inf else min(last_for[k], allowed))
            due = ages[k] + min(safe_for[k], allowed)
        if k + 1 < len(fills):
            if due >= until * (1 + 1e-12):
                report.faults.append(f"{at}: lasts to the end at {until} d, yet another fill follows")
            report.same(f"{at} age of the next fill", ages[k + 1], due)
        elif due < until * (1 - 1e-12):
            report.faults.append(f"{at}: the last one listed, but it is due again at {due!r} d, before {until} d")
    total = math.fsum(f[f"used_{unit}"] for f in fills) * count
    report.same(f"{where}: all fills together against the whole need", total, demand.over(first, until))


def check_mix(report, where, hatch, span, got, seen):
    """The supplement's batches and their sums; gives back this file's own."""
    want = hatch.mix(*span)
    if want is None or not isinstance(got, dict):
        report.equal(f"{where} mix", got, None if want is None else "a table")
        return want
    report.equal(f"{where} supplement", got["supplement"], hatch.table["supplement"])
    report.equal(f"{where} number of batches", len(got["batches"]), len(want["batches"]))
    doses = ("water_l", "product_g", "product_ml", "stock_ml", "stock_product_g")
    for key in (*doses, "per_l_g", "sodium_mg_per_l"):
        report.maybe(f"{where} mix {key}", got[key], want[key])
    for k, (g, w) in enumerate(zip(got["batches"], want["batches"])):
        at = f"{where} batch {k + 1} of {len(want['batches'])} (day {w['age_d']:.3f})"
        for key in ("age_d", "lasts_d", "drunk_l", *doses):
            report.maybe(f"{at} {key}", g[key], w[key])
        report.moment(f"{at} at", g["at"], hatch.date + dt.timedelta(days=w["age_d"]))
        seen["batch of what the troughs need" if w["water_l"] > w["drunk_l"] else "batch of what is drunk"] += 1
        seen["last batch cut short"] += w["lasts_d"] < hatch.course.batch - INSTANT
    seen["course outside the time asked for"] += not want["batches"]
    return want


def check_purchases(report, farm, needs, got, packs, seen):
    """What to buy of each feed: the whole need, its bags at each point of the band, and their sums."""
    feeds_of = collections.defaultdict(list)
    for (name, i), (feed, amount) in needs.items():
        feeds_of[feed].append((name, i, amount))
    rows = {b["feed"]: b for b in got["buy"]}
    report.equal("feeds to buy", sorted(rows), sorted(feeds_of))
    bags, safe_cost, open_ended = 0, [p[1] or 0.0 for p in packs.values()], any(p[0] == "either" for p in packs.values())
    for feed in rows.keys() & feeds_of.keys():
        row, table, here = rows[feed], farm["feed"][feed], f"to buy of {feed!r}"
        need = math.fsum(amount for _, _, amount in feeds_of[feed])
        report.same(f"{here} feed_kg", row["feed_kg"], need)
        report.band(f"{here} need", row, row["feed_kg"])
        if not all(is_number(row[key]) for key in BAND):
            continue
        if len(feeds_of[feed]) == 1:     # one part alone is the whole
            name, i, _ = feeds_of[feed][0]
            for part in [a["feeds"][i] for a in got["hatches"] if a["name"] == name]:
                for key in BAND:
                    report.same(f"{here} {key} against its only part", row[key], part[key])
                seen["need of one part alone"] += 1
        wanted = {"bags": whole_bags(table, need), **{f"bags_{key}": whole_bags(table, row[key]) for key in BAND}}
        for key, n in wanted.items():
            if n is None:
                seen["bag counts left to rounding"] += 1
            else:
                report.equal(f"{here} {key}", row[key], n)
        counts = [row[f"bags_{key}"] for key in BAND]
        if counts != sorted(counts):
            report.faults.append(f"{here}: bags {counts!r} do not rise")
        seen["more bags for the safe end"] += counts[2] > row["bags"]
        report.same(f"{here} cost_p95", row["cost_p95"], row["bags_p95"] * table["price"])
        bags += row["bags_p95"]
        safe_cost.append(row["cost_p95"])
    report.equal("total bags_p95", got["total"]["bags_p95"], bags)
    if not open_ended:
        report.same("total cost_p95", got["total"]["cost_p95"], math.fsum(safe_cost))


def safe_packs(report, farm, bought, seen):
    """{supplement: (packs, cost)} for the safe end of each: more than is usual, and counted the same way."""
    out = {}
    for key, row in bought.items():
        for product in ("product_g", "product_ml"):
            if (row[product] is None) != (row[product + "_p95"] is None):
                report.faults.append(f"supplement {key!r}: {product} is known at one end alone")
            elif row[product] is not None and not row[product] <= row[product + "_p95"] < 4 * row[product]:
                report.faults.append(f"supplement {key!r}: {product}_p95 {row[product + '_p95']!r} for {row[product]!r}")
        out[key] = packs, cost = packs_of(farm["supplement"][key], row["product_g_p95"], row["product_ml_p95"])
        if packs != "either":
            report.equal(f"supplement {key!r} packs_p95", row["packs_p95"], packs)
            report.maybe(f"supplement {key!r} cost_p95", row["cost_p95"], cost)
            seen["more packs for the safe end"] += packs is not None and packs > row["packs"]
    return out


def compare(farm, rations, got, seen, window=(None, None)):
    """Differences between one farm's answer and this file's own working.  `window` holds two moments or None: in
    it every vessel is full and the first batch is mixed when it begins."""
    report = Report()
    hatches, spans = [], {}
    for h in [Hatch(farm, t, rations) for t in farm["hatch"]]:
        a, b = ((w - h.date).total_seconds() / 86400 if w else None for w in window)
        span = (max(0.0, a or 0.0), h.until if b is None else min(h.until, b))
        if span[0] < span[1]:
            hatches.append(h)
            spans[h.name] = span
    needs = {(h.name, i): (s.feed, h.feed_kg_by_quad(s.start, s.end))
             for h in hatches for i, s in enumerate(h.steps_within(*spans[h.name]))}
    bags = pooled_bags(farm, hatches, needs)
    mixes = []

    if isinstance(got["farm"], str):
        report.equal("farm", got["farm"], farm["farm"]["name"])
    answers = {a["name"]: a for a in got["hatches"]}
    report.equal("names of the hatches", sorted(answers), sorted(h.name for h in hatches))
    for h in hatches:
        if h.name not in answers:
            continue
        a, w, span = answers[h.name], f"hatch {h.name!r}", spans[h.name]
        steps = h.steps_within(*span)
        report.equal(f"{w} kind", a["kind"], h.table["kind"])
        report.moment(f"{w} date", a["date"], h.date)
        report.same(f"{w} chicks", a["chicks"], h.chicks)
        report.equal(f"{w} feeds in order", [f["feed"] for f in a["feeds"]], [s.feed for s in steps])
        for i, (f, s) in enumerate(zip(a["feeds"], steps)):
            here = f"{w} feed {s.feed!r}"
            report.same(f"{here} from_d", f["from_d"], s.start)
            report.same(f"{here} to_d", f["to_d"], s.end)
            report.same(f"{here} feed_kg", f["feed_kg"], needs[h.name, i][1])
            report.band(f"{here} need", f, f["feed_kg"])
            n, cost = bags[h.name, i]
            if n is None:
                seen["bag counts left to rounding"] += 1
            else:
                report.equal(f"{here} bags", f["bags"], n)
                report.same(f"{here} cost", f["cost"], cost)
                seen["no bag to buy" if n == 0 else "bags to buy"] += 1
        report.equal(f"{w} hopper", a["hoppers"]["hopper"], h.table["hopper"])
        report.equal(f"{w} count of hoppers", a["hoppers"]["count"], h.hoppers)
        report.equal(f"{w} drinker", a["drinkers"]["drinker"], h.table["drinker"])
        report.equal(f"{w} count of drinkers", a["drinkers"]["count"], h.drinkers)

        def hopper_holds(age, h=h):
            # at a change of feed the age may come back one rounding early
            return h.hopper_kg[max(i for i, s in enumerate(h.step_starts) if s <= age + 1e-9)]

        check_fills(report, f"{w} hopper", h, span, a["hoppers"]["fills"], h.feed, h.hoppers, "kg", hopper_holds, seen)
        check_fills(report, f"{w} drinker", h, span, a["drinkers"]["fills"], h.water, h.drinkers, "l",
                    lambda age, h=h: h.drinker_l, seen)
        mix = check_mix(report, w, h, span, a["mix"], seen)
        if mix:
            mixes.append((h.table["supplement"], mix))
        seen["fills"] += len(a["hoppers"]["fills"]) + len(a["drinkers"]["fills"])

    packs = packs_to_buy(farm, mixes)
    bought = {b["supplement"]: b for b in got["supplements"]}
    report.equal("supplements to buy", sorted(bought), sorted(packs))
    for key in bought.keys() & packs.keys():
        product_g, product_ml, number, cost = packs[key]
        report.maybe(f"supplement {key!r} product_g", bought[key]["product_g"], product_g)
        report.maybe(f"supplement {key!r} product_ml", bought[key]["product_ml"], product_ml)
        if number != "either":
            report.equal(f"supplement {key!r} packs", bought[key]["packs"], number)
            report.maybe(f"supplement {key!r} cost", bought[key]["cost"], cost)
            seen["packs to buy"] += number is not None
    check_purchases(report, farm, needs, got, safe_packs(report, farm, bought, seen), seen)
    if all(n is not None for n, _ in bags.values()):
        report.equal("total bags", got["total"]["bags"], sum(n for n, _ in bags.values()))
        if all(p[2] != "either" for p in packs.values()):
            report.same("total cost", got["total"]["cost"],
                        math.fsum([c for _, c in bags.values()] + [p[3] or 0.0 for p in packs.values()]))
    return report


# --------------------------------------------------------------------- farms


class Pen:
    """Writes quantities as a grower might."""

    def __init__(self, rng, units, seen):
        self.rng, self.units, self.seen = rng, units, seen

    def chance(self, p):
        return bool(self.rng.random() < p)

    def pick(self, items):
        return items[int(self.rng.integers(len(items)))]

    def between(self, low, high):
        return int(self.rng.integers(low, high + 1))

    def text(self, what, amount, units):
        """`amount` in SI written in one of `units`, roughly: the text is the truth."""
        unit = self.pick(units)
        x = amount / UNITS[what][unit]
        style = self.between(0, 3)
        if style <= 1 and 0.25 <= x < 40:
            parts = self.pick([2, 4, 8, 3])
            n = max(1, round(x * parts))
            whole, rest = divmod(n, parts)
            if rest:
                g = math.gcd(rest, parts)
                self.seen["fractions as text"] += 1
                self.seen[f"unit {unit}"] += 1
                frac = f"{rest // g}/{parts // g}"
                return f"{whole} {frac} {unit}" if whole else f"{frac} {unit}"
            x = whole
        elif x >= 20 and style == 2:
            x = round(x)
        else:
            x = float(f"{x:.{self.between(2, 4)}g}")
        self.seen[f"unit {unit}"] += 1
        return f"{plain(x)} {unit}"

    def mass(self, kg):
        small = ["g", "oz"] if kg < 5 else []
        return self.text("mass", kg, ["kg", "lb", *small])

    def volume(self, litres):
        if self.units == "uk":      # there a bare gal, qt or fl oz is ambiguous
            units = ["L", "imp gal", "ft3"] if litres >= 2 else ["L", "mL", "in3"]
        elif litres >= 2:
            units = ["L", "gal", "qt", "ft3"]
        else:
            units = ["L", "mL", "qt", "fl oz", "in3", "cup"]
        return self.text("volume", litres * 1e-3, units)

    def length(self, metres):
        return self.text("length", metres, ["cm", "in"] if metres < 1 else ["cm", "in", "ft", "m"])

    def share(self, low, high):
        return f"{plain(round(float(self.rng.uniform(low, high)), self.between(0, 1)))} %"

    def age(self, days):
        if days % 7 == 0 and self.chance(0.7):
            unit, x = "wk", days // 7
        elif (2 * days) % 7 == 0 and days % 7 and self.chance(0.5):
            self.seen["fractions as text"] += 1
            self.seen["unit wk"] += 1
            return f"{days // 7} 1/2 wk"
        else:
            unit, x = "d", days
        self.seen[f"unit {unit}"] += 1
        return f"{plain(x)} {unit}"


def plain(x):
    s = f"{x:.10f}".rstrip("0").rstrip(".")
    return s or "0"


def toml(x):
    if isinstance(x, (dt.datetime, dt.date)):
        return x.isoformat()
    if isinstance(x, str):
        return json.dumps(x)
    if isinstance(x, dict):
        return "{ " + ", ".join(f"{k} = {toml(v)}" for k, v in x.items()) + " }"
    if isinstance(x, list):
        return "[" + ", ".join(toml(v) for v in x) + "]"
    return repr(x)


def supplement(pen):
    """One random [supplement.*]."""
    s, seen = {}, pen.seen
    water = pen.pick(["imp gal", "50 imp gal", "L", "10 L"] if pen.units == "uk" else ["gal", "50 gal", "128 gal", "L"])
    gallon = "imp gal" if pen.units == "uk" else "gal"
    way = pen.pick(["by weight", "by spoon", "by measure", "stock alone", "stock beside a rate"])
    seen[f"supplement {way}"] += 1
    if way == "by weight" or (way == "stock beside a rate" and pen.chance(0.5)):
        s["rate"] = f"{pen.pick(['5 g', '1 1/2 oz', '450 mg', '12.5 g', '1/4 lb'])} per {water}"
    elif way == "by spoon":
        s["rate"] = f"{pen.pick(['1 tsp', '1/2 tbsp', '2 1/2 tsp'])} per {gallon}"
    elif way != "stock alone":
        s["rate"] = pen.pick([f"3 mL per {water}", f"1 1/2 tsp/{gallon}", "1:400", f"1/2 cup per 5 {gallon}"])
    if way == "by spoon" or (way != "by measure" and pen.chance(0.3)):
        s["spoon"] = pen.pick(["5 g per tsp", "0.4 oz/tbsp", "3.25 g/tsp"])
        seen["spoon"] += 1
    if way.startswith("stock"):
        s["stock"] = {"strength": pen.pick([f"4 oz per {gallon}", "60 g per L", f"1/2 lb/{gallon}"]),
                      "proportioner": pen.pick(["1:128", "1:100", "1:64.5"])}
    keeps = pen.pick([None, "6 h", "8 h", "24 h", "3 d"])
    seen[f"solution keeps {keeps}"] += 1
    if keeps:
        s["keeps"] = keeps
    if pen.chance(0.7):
        s["from"] = pen.pick(["0 d", "36 h", "5 d", "3 wk", "17 1/4 d", "40 d", "12 wk", "24 wk"])
    s["days"] = pen.pick([1, 3, 5, 14, 30, 90])
    if pen.chance(0.5):
        s["sodium"] = pen.share(0.5, 39)
        seen["sodium"] += 1
    if pen.chance(0.6):
        s["pack"] = pen.pick(["8 oz", "1 kg", "500 mL", "100 g"])
        if pen.chance(0.8):
            s["price"] = pen.between(300, 4000) / 100
    return s


def farm_text(rng, number, rations, seen):
    """The TOML text of one random farm."""
    units = ["us", "us", "metric", "uk"][int(rng.integers(4))]
    pen = Pen(rng, units, seen)
    seen[f"units = {units}"] += 1
    lines = []

    def table(head, entries):
        lines.append(head)
        lines.extend(f"{k} = {toml(v)}" for k, v in entries.items())
        lines.append("")

    # the farm
    top = {"name": f"Trial barn {number}", "units": units,
           "currency": {"us": "USD", "metric": "EUR", "uk": "GBP"}[units]}
    hot = None
    if pen.chance(0.7):
        c = float(rng.uniform(4, 40))
        hot = c
        fahrenheit = pen.chance(0.5)
        unit, x = ("degF", c * 9 / 5 + 32) if fahrenheit else ("degC", c)
        seen[f"unit {unit}"] += 1
        top["warmth"] = f"{plain(round(x, pen.between(0, 1)))} {unit}"
        seen["warmth stated"] += 1
        if c > 25:
            seen["a hot barn"] += 1
    else:
        seen["no warmth stated"] += 1
    table("[farm]", top)

    # feeds
    feed_keys = ["starter", "grower", "flight", "layer"][: pen.between(1, 4)]
    for key in feed_keys:
        f = {"title": f"Feed {key}", "protein": pen.share(14, 30)}
        if pen.chance(0.6):
            e = float(rng.uniform(2550, 3200))
            f["energy"] = f"{round(e)} kcal/kg" if pen.chance(0.7) else f"{e * KCAL_J / 1e6:.2f} MJ/kg"
            seen["energy stated"] += 1
            seen["unit " + split_text(f["energy"])[1]] += 1
        else:
            seen["energy left out"] += 1
        stated = pen.chance(0.5)
        if not stated or pen.chance(0.7):
            f["form"] = pen.pick(["mash", "crumble", "pellet"])
        if stated:
            f["density"] = pen.text("density", float(rng.uniform(520, 700)), ["lb/ft3", "kg/m3", "g/L"])
            seen["density stated"] += 1
        else:
            seen[f"density of {f['form']}"] += 1
        f["bag"] = pen.pick(["50 lb", "40 lb", "25 kg", "20 kg", "12 1/2 kg", "25 lb", "15000 g"])
        f["price"] = pen.between(900, 4200) / 100
        if pen.chance(0.5):
            f["on_hand"] = pen.mass(float(rng.uniform(1, 40) if pen.chance(0.8) else rng.uniform(200, 4000)))
            seen["feed on hand"] += 1
        table(f"[feed.{key}]", f)

    # hoppers
    hopper_keys = ["tube", "trough"][: pen.between(1, 2)]
    for key in hopper_keys:
        h = {}
        if pen.chance(0.5):
            h["volume"] = pen.volume(float(rng.uniform(3, 60)))
            seen["hopper by volume"] += 1
        else:
            parts = []
            for _ in range(pen.between(1, 3)):
                shape = pen.pick(["cylinder", "frustum", "box"])
                seen[f"hopper part {shape}"] += 1
                tall = pen.length(float(rng.uniform(0.08, 0.5)))
                wide = float(rng.uniform(0.15, 0.4))
                if shape == "cylinder":
                    parts.append({"shape": shape, "diameter": pen.length(wide), "height": tall})
                elif shape == "frustum":
                    narrow = pen.length(wide * float(rng.uniform(0.3, 0.9)))
                    ends = [pen.length(wide), narrow]
                    if pen.chance(0.2):
                        ends.reverse()
                    parts.append({"shape": shape, "top": ends[0], "bottom": ends[1], "height": tall})
                else:
                    parts.append({"shape": shape, "length": pen.length(float(rng.uniform(0.2, 1.2))),
                                  "width": pen.length(wide * 0.6), "height": tall})
            h["parts"] = parts
        for name, p, low, high in (("stays_behind", 0.5, 0, 15), ("fill", 0.4, 50, 100), ("extra_waste", 0.4, 0, 20)):
            if pen.chance(p):
                h[name] = pen.share(low, high)
                seen[name] += 1
        table(f"[hopper.{key}]", h)

    # drinkers
    drinker_keys = ["bell", "fount"][: pen.between(1, 2)]
    for key in drinker_keys:
        litres = float(rng.uniform(1, 25))
        d = {"volume": pen.volume(litres)}
        if pen.chance(0.4):
            d["displaced"] = pen.volume(litres * float(rng.uniform(0.02, 0.3)))
            seen["displaced"] += 1
        if pen.chance(0.6):
            d["change_every"] = pen.pick(["1 d", "2 d", "3 d", "12 h", "36 h", "1 1/2 d", "1 wk"])
            seen["change_every"] += 1
            seen["unit " + split_text(d["change_every"])[1]] += 1
        if pen.chance(0.4):
            d["spill"] = pen.share(0, 20)
            seen["spill"] += 1
        if pen.chance(0.3):
            d["least"] = pen.volume(litres * float(rng.uniform(0.05, 0.6)))
            seen["least"] += 1
        table(f"[drinker.{key}]", d)

    # supplements
    supplement_keys = ["tonic", "acid"][: pen.between(0, 2)]
    for key in supplement_keys:
        table(f"[supplement.{key}]", supplement(pen))

    # hatches
    count = pen.between(1, 3)
    if count > 1:
        seen["several hatches"] += 1
    days = rng.choice(330, size=count, replace=False)
    used = collections.Counter()
    feeds_of_farm = tomllib.loads("\n".join(lines))
    order = []
    for j in range(count):
        kind = rations.kinds[pen.pick(sorted(rations.kinds))]
        seen[f"kind {kind.name}"] += 1
        h = {"name": f"Hatch {chr(65 + j)}", "kind": kind.name}
        day = dt.date(2027, 1, 10) + dt.timedelta(days=int(days[j]))
        order.append(int(days[j]))
        if pen.chance(0.2):
            h["date"] = dt.datetime(day.year, day.month, day.day, pen.between(1, 22), pen.pick([0, 15, 30]))
            seen["a time of day"] += 1
        else:
            h["date"] = day
        if pen.chance(0.65):
            h["chicks"] = pen.between(25, 900)
            seen["chicks"] += 1
            placed = h["chicks"]
        else:
            h["eggs"] = pen.between(60, 1200)
            seen["eggs"] += 1
            rate = kind.hatch_rate
            if rate is None or pen.chance(0.6):
                h["hatch_rate"] = pen.share(45, 90)
                rate = value(h["hatch_rate"], "share")
                seen["hatch_rate stated"] += 1
            else:
                seen["hatch_rate of the kind"] += 1
            placed = h["eggs"] * rate
        until = pen.between(3, 26) * 7 if pen.chance(0.6) else pen.between(20, 190)
        if kind.laying is not None and pen.chance(0.5):
            laying_from = pen.between(40, 150)
            until = max(until, laying_from + pen.between(10, 90))
            seen["laying"] += 1
        else:
            laying_from = None

        steps = min(pen.between(1, 3), len(feed_keys))
        chosen = sorted(rng.choice(len(feed_keys), size=steps, replace=False).tolist())
        ages = [0, *sorted(rng.choice(np.arange(5, until - 3), size=steps - 1, replace=False).tolist())]
        if len(ages) > 1 and laying_from and pen.chance(0.4) and ages[-2] < laying_from:
            ages[-1] = laying_from
            seen["laying and feed change together"] += 1
        h["feeding"] = [{"feed": feed_keys[c], "from": pen.age(a)} for c, a in zip(chosen, ages)]
        seen[f"{steps} feeds in a hatch"] += 1
        for c in chosen:
            used[c] += 1
        h["until"] = pen.age(until)
        if laying_from:
            h["laying_from"] = pen.age(laying_from)
        if pen.chance(0.5):
            times = sorted(rng.choice(np.arange(3, until - 1), size=pen.between(1, 2), replace=False).tolist())
            if len(times) == 1 and len(ages) > 1 and pen.chance(0.3):
                times = [ages[-1]]
                seen["removal and feed change together"] += 1
            if len(times) == 2:
                seen["two removals"] += 1
            h["removed"] = [{"at": pen.age(t), "birds": max(1, int(placed * rng.uniform(0.02, 0.3)))} for t in times]
            seen["removal"] += 1

        # as many vessels as keep the list of fills of a reasonable length
        h["hopper"], h["drinker"] = pen.pick(hopper_keys), pen.pick(drinker_keys)
        h["hoppers"] = h["drinkers"] = 1
        if supplement_keys and pen.chance(0.8):
            h["supplement"] = pen.pick(supplement_keys)
        trial = dict(feeds_of_farm, hatch=[h])
        model = Hatch(trial, h, rations)
        h["hoppers"] = pen.between(1, 3) + int(model.feed.over(0, model.until) / min(model.hopper_kg) / 200)
        h["drinkers"] = pen.between(1, 4) + int(model.water.over(0, model.until) / model.drinker_l / 250)
        table("[[hatch]]", h)
    if max(used.values()) > 1:
        seen["a feed shared by hatches"] += 1
    if order != sorted(order):
        seen["hatches not in order of date"] += 1
    return "\n".join(lines)


# met only while an answer is read
MET_IN_ANSWERS = ("bags to buy", "no bag to buy", "roots found", "fills", "hopper topped by a change of feed",
                  "water changed before dry", "dry before the water is changed", "solution changed before dry",
                  "batch of what is drunk", "batch of what the troughs need", "last batch cut short",
                  "course outside the time asked for", "packs to buy",
                  "hopper filled at the safe end", "need of one part alone", "more bags for the safe end")


def must_occur(rations):
    return [
        "laying", "removal", "two removals", "removal and feed change together", "laying and feed change together",
        "hopper by volume", "hopper part cylinder", "hopper part frustum", "hopper part box",
        "chicks", "eggs", "hatch_rate stated", "hatch_rate of the kind",
        "1 feeds in a hatch", "2 feeds in a hatch", "3 feeds in a hatch", "a feed shared by hatches",
        "several hatches", "hatches not in order of date", "a time of day",
        "energy stated", "energy left out", "density stated",
        "density of mash", "density of crumble", "density of pellet",
        "stays_behind", "fill", "extra_waste", "displaced", "spill", "change_every", "least",
        *(f"supplement {way}" for way in ("by weight", "by spoon", "by measure", "stock alone", "stock beside a rate")),
        *(f"solution keeps {k}" for k in (None, "6 h", "8 h", "24 h", "3 d")), "spoon", "sodium",
        "warmth stated", "no warmth stated", "a hot barn", "feed on hand", "fractions as text",
        "units = us", "units = metric", "units = uk",
        *(f"unit {u}" for u in ("lb", "kg", "g", "gal", "imp gal", "qt", "L", "ft3", "d", "wk", "h",
                                "degF", "degC", "in", "cm", "kcal/kg", "MJ/kg")),
        *(f"kind {k}" for k in rations.kinds),
        *MET_IN_ANSWERS,
    ]


# ----------------------------------------------------------------------- run


def some_window(rng, farm, rations):
    """Two days, or one and None, between which some hatch has birds."""
    h = Hatch(farm, farm["hatch"][int(rng.integers(len(farm["hatch"])))], rations)
    day = h.date.replace(hour=0, minute=0)
    first = int(rng.integers(1, int(h.until) - 1))
    last = first + int(rng.integers(2, 60))
    return [(day + dt.timedelta(days=first), day + dt.timedelta(days=last)),
            (day + dt.timedelta(days=first), None),
            (None, day + dt.timedelta(days=last))][int(rng.choice(3, p=[0.6, 0.2, 0.2]))]


def run(program, rations_dir, farms, seed, keep):
    rations = Rations(rations_dir)
    if len(rations.kinds) < 5:
        print(f"only {len(rations.kinds)} kinds of bird below {rations_dir}; five are expected")
        return 1
    rng, window_rng = np.random.default_rng(seed), np.random.default_rng([seed, 1])
    folder = pathlib.Path(tempfile.mkdtemp(prefix="random-farms-"))
    seen = collections.Counter()
    passed = failed = numbers = windows = 0
    worst = (0.0, "nothing compared")
    own = in_program = 0.0
    for n in range(1, farms + 1):
        started = time.perf_counter()
        offered, met = collections.Counter(), collections.Counter()
        text = farm_text(rng, n, rations, offered)
        path = folder / f"farm-{n:03d}.toml"
        path.write_text(text + "\n")
        farm = tomllib.loads(text)
        own += time.perf_counter() - started

        faults = []
        asked = [(None, None)] + ([some_window(window_rng, farm, rations)] if n <= WINDOWS else [])
        for window in asked:
            flags = [part for flag, day in zip(("--from", "--to"), window) if day
                     for part in (flag, day.date().isoformat())]
            where = f"({' '.join(flags)}) " if flags else ""
            started = time.perf_counter()
            try:
                done = subprocess.run([program, "plan", str(path), "--json", *flags],
                                      capture_output=True, text=True, timeout=60)
            except subprocess.TimeoutExpired:
                done = None
                faults.append(f"{where}the program ran for more than 60 s")
            except OSError as e:
                print(f"cannot run {program}: {e}")
                print(f"0 passed, {farms} failed")
                shutil.rmtree(folder)
                return 1
            in_program += time.perf_counter() - started

            started = time.perf_counter()
            if done and done.returncode != 0:
                faults.append(f"{where}exit {done.returncode}: {(done.stderr or done.stdout).strip()[:600]}")
            elif done:
                (folder / f"farm-{n:03d}{'-window' if flags else ''}.json").write_text(done.stdout)
                try:
                    report = compare(farm, rations, json.loads(done.stdout), met, window)
                    faults += [where + f for f in report.faults]
                    numbers += report.numbers
                    windows += bool(flags)
                    if report.worst[0] > worst[0]:
                        worst = (report.worst[0], f"farm {n}, {where}{report.worst[1]}")
                except json.JSONDecodeError as e:
                    faults.append(f"{where}the answer is not JSON: {e}")
                except (KeyError, IndexError, TypeError, AttributeError) as e:
                    faults.append(f"{where}the answer lacks or misshapes something: {type(e).__name__} {e}")
            own += time.perf_counter() - started
        seen.update(offered)
        seen.update(met)

        if faults:
            failed += 1
            if failed <= 20:
                print(f"FAIL farm {n}: {path}")
                for line in faults[:6]:
                    print(f"    {line}")
                if len(faults) > 6:
                    print(f"    and {len(faults) - 6} more")
            elif failed == 21:
                print("(further failures are counted, not printed)")
        else:
            passed += 1

    missing = [m for m in must_occur(rations) if not seen[m]]
    if missing:
        print("never met, so not checked: " + ", ".join(missing))
        if farms < 100:
            print(f"({farms} farms may be too few for every kind of thing to turn up; 200 is the usual number)")
            missing.clear()
    if not windows:
        missing.append("windows")
        print("no answer for a window was compared, which is a failure")
    print(f"{numbers} numbers compared in all lives and {windows} windows, over {seen['fills']} fills; {seen['roots found']} empty times found by brentq; "
          f"{seen['bag counts left to rounding']} bag counts left to rounding")
    print(f"worst relative difference {worst[0]:.3g} ({worst[1]})")
    print(f"time: {own:.1f} s here, {in_program:.1f} s in the program")
    if passed + failed == 0 or numbers == 0:
        print("nothing was compared, which is a failure")
        failed = max(failed, 1)
    if failed or keep:
        print(f"farms and answers are kept in {folder}")
    else:
        shutil.rmtree(folder)
    print(f"{passed} passed, {failed} failed")
    return 1 if failed or missing or not passed else 0


# ----------------------------------------------------------------- self-test

FIXTURE = """
[growing]
rows = [[0, 0.9, {a}, 1.4], [5, 2, {b}, 3], [14, 4, {c}, 8], [28, 8, {d}, 16], [28.5, 8, {d}, 16], [90, 9, {e}, 20]]
energy = "2850 kcal/kg"
[mortality]
rows = [[0, 0, 0, 0], [7, 2, 5, 10], [14, 3, 7, 12], [42, 4, 9, 18], [100, 6, 12, 23]]
[hatch_rate]
value = "65 %"
[water]
ratio = [1.6, 2.0, 2.5]
[water_heat]
per_degree = "6 %"
above = "21 degC"
[feed_heat]
per_degree = "1.84 %"
above = "24 degC"
[feed_energy]
elasticity = 0.9
[brooding]
rows = [[1, 7, 90, 95], [8, 35, 75, 85], [36, 999, 70, 70]]
"""


FLAT_KIND = """
growing = { rows = [[0, 8, 10, 12], [7, 8, 10, 12], [30, 8, 10, 12], [60, 8, 10, 12]], energy = "2850 kcal/kg" }
laying = { rate = [18, 20, 24], energy = "1425 kcal/kg" }
mortality = { rows = [[0, 0, 0, 0], [7, 0, 0, 0], [14, 0, 0, 0], [42, 0, 0, 0]] }
hatch_rate = { value = "50 %" }
water = { ratio = [1.6, 2.0, 2.5] }
water_heat = { per_degree = "6 %", above = "21 degC" }
feed_heat = { per_degree = "1.84 %", above = "24 degC" }
feed_energy = { elasticity = 1.0 }
brooding = { rows = [[1, 35, 90, 95], [36, 999, 70, 70]] }
"""
FLAT_FARM = """
farm = { name = "Flat", units = "metric", currency = "EUR", warmth = "34 degC" }
feed.a = { form = "mash", bag = "5 kg", price = 2.5, on_hand = "2 kg", density = "500 g/L" }
feed.b = { form = "mash", bag = "20 kg", price = 10.0, energy = "1425 kcal/kg", density = "500 g/L" }
hopper.h = { volume = "10 L", fill = "80 %", stays_behind = "25 %", extra_waste = "20 %" }
drinker.d = { volume = "5 L", displaced = "1 L", spill = "50 %", change_every = "12 h" }
[[hatch]]
name = "flat"
kind = "flat"
date = 2027-03-01
eggs = 200
feeding = [{ feed = "a", from = "0 d" }, { feed = "b", from = "10 d" }]
until = "40 d"
laying_from = "30 d"
removed = [{ at = "20 d", birds = 50 }]
hopper = "h"
hoppers = 1
drinker = "d"
drinkers = 2
"""


def by_hand(folder, rations, expect):
    """Constant intake and no deaths: every figure can be had with a pencil."""
    path = folder / "flat.toml"
    path.write_text(FLAT_KIND)
    flat = copy.copy(rations)
    flat.kinds = {"flat": Kind(path)}
    farm = tomllib.loads(FLAT_FARM)
    h = Hatch(farm, farm["hatch"][0], flat)
    a = own_answer(farm, flat)["hatches"][0]
    hop, dri = a["hoppers"]["fills"], a["drinkers"]["fills"]
    # grams: 10 from day 0; doubled by thin feed from 10; half the birds from 20;
    # laying from 30 (20 g, its own reference energy); hot barn from 35
    eaten_b = 100 * 20 * 10 + 50 * 20 * 10 + 50 * 20 * 5 + 50 * 20 * 5 * (1 - 0.0184 * 10)
    water = 2 * 2 * ((10_000 + eaten_b) + (50 * 20 * 5 * 0.816) * 0.06 * 13) / 1e3
    for words, got, want in (
        ("chicks", a["chicks"], 100), ("birds at 25 d", float(h.birds(25.0)), 50),
        ("feed a", a["feeds"][0]["feed_kg"], 12.5), ("feed b", a["feeds"][1]["feed_kg"], eaten_b / 0.8 / 1e3),
        ("bags of a", a["feeds"][0]["bags"], 3), ("bags of b", a["feeds"][1]["bags"], 3),
        ("cost of a", a["feeds"][0]["cost"], 7.5), ("water", h.water.over(0, 40), water),
        ("hopper content", hop[0]["content_kg"], 3), ("hopper lasts", hop[0]["empty_after_d"], 2.4),
        ("second fill, at 80 % of 2.4 d", hop[1]["age_d"], 1.92), ("use till then", hop[0]["used_kg"], 2.4),
        # the fifth, at 7.68 d: 2.32 d at 1.25 kg, 0.1 kg at 2.5 kg a day
        ("fill before the change of feed", hop[5]["age_d"], 7.68 + 0.8 * 2.36), ("its use", hop[5]["used_kg"], 0.54),
        ("fill at the change of feed", hop[6]["age_d"], 10), ("its life", hop[6]["empty_after_d"], 1.2),
        ("life of the fill before, feed going on", hop[5]["empty_after_d"], 0.432 + 2.46 / 2.5),
        ("bags of a when 12.5 kg are 15", whole_bags(farm["feed"]["a"], 15.0), 3),
        ("and when they are 17.5", whole_bags(farm["feed"]["a"], 17.5), 4),
        ("drinker content", dri[0]["content_l"], 4), ("drinker lasts", dri[0]["empty_after_d"], 2.0),
        ("drinker changed", dri[1]["age_d"], 0.5), ("drinker use", dri[0]["used_l"], 1.0),
        ("number of drinker fills", len(dri), 80),
    ):
        expect(math.isclose(got, want, rel_tol=1e-12), f"by hand, {words}: {got!r}, expected {want!r}")


# 50 birds that eat 20 g and drink 80 mL each, half of it spilt: 4 L in a day, 1 L in 6 h
FLAT_COURSE = """
spoon = { rate = "1 tsp per L", spoon = "5 g/tsp", keeps = "6 h", from = "24 d", days = 1, sodium = "10 %" }
stock = { rate = "3 mL per L", stock = { strength = "64 g per L", proportioner = "1:64" }, from = "23 1/2 d", days = 30 }
thin = { rate = "1:400", keeps = "3 d", from = "50 d", days = 5 }
"""


def mixes_by_hand(folder, rations, expect):
    path = folder / "flat.toml"
    path.write_text(FLAT_KIND)
    flat = copy.copy(rations)
    flat.kinds = {"flat": Kind(path)}
    farm = tomllib.loads(FLAT_FARM)
    farm["supplement"] = tomllib.loads(FLAT_COURSE)
    farm["drinker"]["d"]["least"] = "600 mL"
    table = farm["hatch"][0]
    mixes = {}
    for key in farm["supplement"]:
        table["supplement"] = key
        mixes[key] = own_answer(farm, flat)["hatches"][0]["mix"], Hatch(farm, table, flat)
    (spoon, h), (stock, late) = mixes["spoon"], mixes["stock"]
    first, last = spoon["batches"][0], stock["batches"][-1]
    for words, got, want in (
        ("batches of 6 h", len(spoon["batches"]), 4), ("drunk in one", first["drunk_l"], 1.0),
        ("the troughs need more", first["water_l"], 1.2), ("by the spoon", first["product_ml"], 1.2 * 4.92892159375),
        ("in grams", first["product_g"], 6.0), ("course", spoon["product_g"], 24.0),
        ("sodium", spoon["sodium_mg_per_l"], 500.0), ("change in a course", h.water_due(24.1), 0.25),
        ("change before a course", h.water_due(23.9), 0.1), ("change after a course", h.water_due(25.0), 0.5),
        ("the last of a course", h.water_due(24.9), 0.1),
        ("batches to the end", len(stock["batches"]), 17), ("stock for a day", stock["batches"][0]["stock_ml"], 62.5),
        ("what is in it", stock["batches"][0]["stock_product_g"], 4.0), ("strength", stock["per_l_g"], 1.0),
        ("product", stock["batches"][0]["product_g"], 4.0), ("last batch", last["age_d"], 39.5),
        ("it is cut", last["lasts_d"], 0.5), ("window", len(late.mix(25.25, 28.0)["batches"]), 3),
        ("no day of life left", len(mixes["thin"][0]["batches"]), 0), ("no water", mixes["thin"][0]["water_l"], 0.0),
        ("1:400", mixes["thin"][1].course.dose(4.0)["product_ml"], 10.0),
    ):
        expect(math.isclose(got, want, rel_tol=1e-12), f"mix by hand, {words}: {got!r}, expected {want!r}")
    expect(stock["product_ml"] is None and spoon["stock_ml"] is None and mixes["thin"][0]["product_g"] is None,
           "what cannot be known is null")
    for text, want in (("4 oz per 128 gal", (4 * LB_KG / 16 / 128 / US_GAL_M3, True)), ("1/2 cup per 5 gal", (1 / 160, False)),
                       ("1 1/2 tsp/gal", (1.5 / 768, False)), ("1:400", (1 / 400, False))):
        got = label_rate(text)
        expect(math.isclose(got[0], want[0], rel_tol=1e-12) and got[1] == want[1], f"{text} is {got}, expected {want}")


def write_fixture(root):
    (root / "birds").mkdir(parents=True)
    (root / "feeds").mkdir()
    for i in range(5):
        k = 1 + i / 2
        text = FIXTURE.format(a=k, b=2.2 * k, c=6 * k, d=11 * k, e=12.5 * k)
        if i < 2:
            text += '[laying]\nrate = [18, 21.5, 24]\nenergy = "2800 kcal/kg"\n'
        (root / "birds" / f"bird{i}.toml").write_text(text)
    (root / "feeds" / "forms.toml").write_text("".join(
        f'[{f}]\ndensity = ["{d - 4} lb/ft3", "{d} lb/ft3", "{d + 4} lb/ft3"]\n'
        for f, d in (("mash", 37), ("crumble", 38), ("pellet", 41))))


# p05, p50 and p95 over the central figure, of how long a fill lasts and of a need: invented, for the self-test only
LASTS, NEED = (0.8, 1.02, 1.3), (0.85, 0.99, 1.2)


def spread(central, factors):
    return dict(zip(BAND, (central * f for f in factors)))


def own_purchases(farm, needs):
    """What to buy of each feed, from this file's model."""
    total = collections.defaultdict(float)
    for feed, amount in needs.values():
        total[feed] += amount
    rows = []
    for feed, need in total.items():
        table, band = farm["feed"][feed], spread(need, NEED)
        bags = {f"bags_{key}": whole_bags(table, band[key]) for key in BAND}
        rows.append({"feed": feed, "feed_kg": need, **band, "bags": whole_bags(table, need), **bags,
                     "cost_p95": bags["bags_p95"] * table["price"]})
    return rows


def own_answer(farm, rations, safe_end=True):
    """A whole answer from this file's model, one fill after another: at the safe end of the last, or at its centre."""
    hatches = [Hatch(farm, t, rations) for t in farm["hatch"]]
    needs = {(h.name, i): (s.feed, h.feed.over(s.start, s.end)) for h in hatches for i, s in enumerate(h.steps)}
    bags = pooled_bags(farm, hatches, needs)
    out = {"farm": farm["farm"]["name"], "hatches": []}
    for h in hatches:
        def fills(demand, count, unit, content, stops, due):
            rows, age = [], 0.0
            while age < h.until - INSTANT:
                holds, every = content(age), due(age)
                lasts = demand.lasts(age, holds * count)
                band = spread(lasts, LASTS)
                nxt = min(age + min(band["p05"] if safe_end else lasts, every), h.until, *(s for s in stops if s > age))
                rows.append({
                    "at": (h.date + dt.timedelta(days=age)).isoformat(), "age_d": age, "birds": float(h.birds(age)),
                    f"content_{unit}": holds, f"used_{unit}": demand.over(age, nxt) / count,
                    **band, "empty_after_d": lasts, "empty_at": (h.date + dt.timedelta(days=age + lasts)).isoformat(),
                    "change_after_d": None if every == math.inf else min(lasts, every)})
                age = nxt
            return rows

        def holds(age):
            return h.hopper_kg[max(i for i, s in enumerate(h.step_starts) if s <= age)]

        out["hatches"].append({
            "name": h.name, "kind": h.kind.name, "date": h.date.date().isoformat() if not h.date.hour else h.date.isoformat(),
            "chicks": h.chicks,
            "feeds": [{"feed": s.feed, "from_d": s.start, "to_d": s.end, "feed_kg": needs[h.name, i][1],
                       **spread(needs[h.name, i][1], NEED), "bags": bags[h.name, i][0], "cost": bags[h.name, i][1]}
                      for i, s in enumerate(h.steps)],
            "hoppers": {"hopper": h.table["hopper"], "count": h.hoppers,
                        "fills": fills(h.feed, h.hoppers, "kg", holds, [*h.step_starts[1:], math.inf],
                                           lambda age: math.inf)},
            "drinkers": {"drinker": h.table["drinker"], "count": h.drinkers,
                         "fills": fills(h.water, h.drinkers, "l", lambda age: h.drinker_l, [math.inf], h.water_due)},
            "mix": h.mix(0.0, h.until)})
        mix = out["hatches"][-1]["mix"]
        if mix:
            mix["supplement"] = h.table["supplement"]
            for m in mix["batches"]:
                m["at"] = (h.date + dt.timedelta(days=m["age_d"])).isoformat()
    packs = packs_to_buy(farm, [(h.table["supplement"], a["mix"]) for h, a in zip(hatches, out["hatches"]) if a["mix"]])
    out["supplements"] = [{"supplement": key, "product_g": g, "product_ml": ml, "packs": n, "cost": cost}
                          for key, (g, ml, n, cost) in packs.items()]
    for row in out["supplements"]:  # any safe end will do
        for product in ("product_g", "product_ml"):
            row[product + "_p95"] = None if row[product] is None else 1.3 * row[product]
        row["packs_p95"], row["cost_p95"] = packs_of(farm["supplement"][row["supplement"]], row["product_g_p95"],
                                                     row["product_ml_p95"])
    out["buy"] = own_purchases(farm, needs)
    packs_cost = [p[3] or 0.0 for p in packs.values()]
    out["total"] = {"bags": sum(b for b, _ in bags.values()), "bags_p95": sum(b["bags_p95"] for b in out["buy"]),
                    "cost": math.fsum([c for _, c in bags.values()] + packs_cost),
                    "cost_p95": math.fsum([b["cost_p95"] for b in out["buy"]] +
                                          [b["cost_p95"] or 0.0 for b in out["supplements"]])}
    return out


def spoiled_bands(good):
    """(words, a copy of the answer with one thing wrong in its bands); answers that offer no place for it are passed over."""
    def spoil(words, change):
        wrong = copy.deepcopy(good)
        change(wrong)
        return words, wrong

    def follows(fills):
        """A fill whose next one comes at its p05."""
        return [k for k in range(len(fills) - 1)
                if math.isclose(fills[k]["age_d"] + fills[k]["p05"], fills[k + 1]["age_d"], rel_tol=1e-12)]

    last = len(good["hatches"]) - 1
    for vessels in ("hoppers", "drinkers"):
        def fill(wrong, k, vessels=vessels):
            return wrong["hatches"][last][vessels]["fills"][k]

        fills = good["hatches"][last][vessels]["fills"]
        for k in follows(fills)[:1]:
            yield spoil(f"{vessels}: next fill not at p05", lambda w: fill(w, k).update(p05=fills[k]["p05"] * (1 + 1e-7)))
        k = len(fills) // 2
        yield spoil(f"{vessels}: p05 missing", lambda w: fill(w, k).update(p05=None))
        yield spoil(f"{vessels}: p50 missing", lambda w: fill(w, k).update(p50=None))
        yield spoil(f"{vessels}: p50 above p95", lambda w: fill(w, k).update(p50=fills[k]["p95"] * (1 + 1e-7)))
        yield spoil(f"{vessels}: p95 at the centre", lambda w: fill(w, k).update(p95=fills[k]["empty_after_d"],
                                                                                 p50=fills[k]["empty_after_d"]))
        yield spoil(f"{vessels}: p05 of the last fill at the centre",
                    lambda w: fill(w, -1).update(p05=fills[-1]["empty_after_d"]))
    feed = good["hatches"][last]["feeds"][0]
    yield spoil("p95 of a need at the centre",
                lambda w: w["hatches"][last]["feeds"][0].update(p50=feed["feed_kg"], p95=feed["feed_kg"]))
    yield spoil("p50 below p05", lambda w: w["buy"][0].update(p50=good["buy"][0]["p05"] * (1 - 1e-7)))
    for key in ("bags", *(f"bags_{key}" for key in BAND)):
        yield spoil(f"one more in {key}", lambda w: w["buy"][-1].update({key: good["buy"][-1][key] + 1}))
    yield spoil("cost_p95", lambda w: w["buy"][0].update(cost_p95=good["buy"][0]["cost_p95"] + 0.01))
    yield spoil("a feed not bought", lambda w: w["buy"].pop())
    for key, more in (("bags_p95", 1), ("cost_p95", 0.01)):
        yield spoil(f"total {key}", lambda w: w["total"].update({key: good["total"][key] + more}))


def self_test(rations_dir):
    bad = 0

    def expect(ok, words):
        nonlocal bad
        if not ok:
            bad += 1
            print(f"FAIL {words}")

    # quantities
    for text, what, want in (("1 1/2 gal", "volume", 1.5 * 3.785411784e-3), ("3/4 lb", "mass", 0.75 * 0.45359237),
                             ("2.5 wk", "time", 17.5), ("1 ft3", "volume", 0.028316846592), ("8 fl oz", "volume", 2.365882365e-4),
                             ("38 lb/ft3", "density", 608.7016082104856), ("12 in", "length", 0.3048)):
        expect(math.isclose(value(text, what), want, rel_tol=1e-9), f"{text} is {value(text, what)!r}, expected {want!r}")
    expect(math.isclose(warmth_c("95 degF"), 35), "95 degF is 35 degC")
    # shapes: a frustum with equal ends is a cylinder; with no lower end, a cone
    drum = {"parts": [{"shape": "cylinder", "diameter": "10 in", "height": "14 in"}]}
    same = {"parts": [{"shape": "frustum", "top": "10 in", "bottom": "10 in", "height": "14 in"}]}
    cone = {"parts": [{"shape": "frustum", "top": "10 in", "bottom": "0 in", "height": "14 in"}]}
    expect(math.isclose(vessel_m3(drum), vessel_m3(same)), "a straight frustum is a cylinder")
    expect(math.isclose(vessel_m3(drum), 3 * vessel_m3(cone)), "a cone is a third of its cylinder")
    # curves: straight data stay straight, ends are secants, constant past the end
    line = Curve([0, 2, 5, 9], [1, 3, 6, 10])
    expect(np.allclose(line(np.linspace(0, 9, 50)), np.linspace(1, 10, 50), rtol=1e-13), "a straight line stays straight")
    bent = Curve([0, 1, 3, 4], [0, 1, 2, 5])
    expect(math.isclose(bent.spline(0, 1), 1) and math.isclose(bent.spline(4, 1), 3), "end slopes are secants")
    expect(math.isclose(bent.spline(1, 1), 9 / (5 / 1 + 4 / 0.5)), "interior slope is the weighted harmonic mean")
    expect(float(bent(40)) == 5.0, "constant past the last knot")

    with tempfile.TemporaryDirectory() as t:
        if rations_dir is None:
            rations_dir = pathlib.Path(t) / "rations"
            write_fixture(rations_dir)
        rations = Rations(rations_dir)
        by_hand(pathlib.Path(t), rations, expect)
        mixes_by_hand(pathlib.Path(t), rations, expect)
        rng = np.random.default_rng(7)
        seen = collections.Counter()
        farms = caught = tried = 0
        for n in range(1, 13):
            farm = tomllib.loads(farm_text(rng, n, rations, seen))
            for table in farm["hatch"]:
                h = Hatch(farm, table, rations)
                # two ways to the same integral, and scipy's own fixed_quad
                a, b = 0.37 * h.until, h.until
                x, y = h.feed.over(a, b), h.feed_kg_by_quad(a, b)
                expect(math.isclose(x, y, rel_tol=1e-12), f"farm {n}: N*f by Gauss {x!r}, by quad {y!r}")
                edges = h.feed.cut(a, b)
                z = math.fsum(fixed_quad(h.feed.rate, p, q, n=10)[0] for p, q in zip(edges, edges[1:]))
                expect(math.isclose(x, z, rel_tol=1e-12), f"farm {n}: N*f by Gauss {x!r}, by fixed_quad {z!r}")
                # a coarse sum, for gross mistakes in both
                grid = (np.arange(200_000) + 0.5) / 200_000 * (b - a) + a
                w = float(h.feed.rate(grid).mean()) * (b - a)
                expect(math.isclose(x, w, rel_tol=1e-4), f"farm {n}: N*f {x!r}, by a coarse sum {w!r}")
                # removals take exactly their birds
                for age, birds in h.removed:
                    if sum(r[0] == age for r in h.removed) == 1:
                        gap = float(h.birds(np.nextafter(age, 0)) - h.birds(age))
                        expect(math.isclose(gap, birds, rel_tol=1e-9), f"farm {n}: {gap!r} birds gone, expected {birds}")
                # empty times
                t0 = 0.2 * h.until
                t1 = h.feed.lasts(t0, 3.0)
                expect(math.isclose(h.feed.over(t0, t0 + t1), 3.0, rel_tol=1e-11), f"farm {n}: 3 kg are not gone when empty")
            good = own_answer(farm, rations)
            good = json.loads(json.dumps(good))
            report = compare(farm, rations, good, seen)
            expect(not report.faults, f"farm {n}: own answer refused: {report.faults[:3]}")
            farms += 1
            spoiled = [*spoiled_bands(good), ("fills chained at their central figure",
                                              json.loads(json.dumps(own_answer(farm, rations, safe_end=False))))]
            for words, wrong in spoiled:
                tried += 1
                seen_here = compare(farm, rations, wrong, collections.Counter()).faults
                caught += bool(seen_here)
                expect(seen_here, f"farm {n}: an answer spoiled by this was not noticed: {words}")
            # a wrong answer must be seen: each of these spoils one number by 1 in 10 million
            for spoil in range(19):
                wrong = copy.deepcopy(good)
                h = wrong["hatches"][-1]
                mixed = [a["mix"] for a in wrong["hatches"] if a["mix"] and a["mix"]["batches"]]
                if spoil > 13 and not mixed:
                    continue
                hop, dri = h["hoppers"]["fills"], h["drinkers"]["fills"]
                k = len(hop) // 2
                if spoil == 0:
                    h["feeds"][0]["feed_kg"] *= 1 + 1e-7
                elif spoil == 1:
                    hop[k]["empty_after_d"] *= 1 + 1e-7
                elif spoil == 2:
                    hop[k]["used_kg"] *= 1 + 1e-7
                elif spoil == 3:
                    dri[0]["content_l"] *= 1 + 1e-7
                elif spoil == 4:
                    dri[-1]["empty_after_d"] *= 1 + 1e-7
                elif spoil == 5:
                    h["feeds"][-1]["bags"] += 1
                elif spoil == 6:
                    wrong["total"]["cost"] += 0.01
                elif spoil == 7:
                    dri.pop()
                elif spoil == 8:
                    hop[k]["age_d"] += 1e-4
                elif spoil == 9:
                    hop[-1]["birds"] *= 1 + 1e-7
                elif spoil == 10:
                    hop[0]["at"] = "2001-01-01 00:00"
                elif spoil == 11:
                    wrong["hatches"].pop()
                elif spoil == 12:
                    h["chicks"] *= 1 + 1e-7
                elif spoil == 13:
                    h["feeds"][-1]["to_d"] += 1e-3
                elif spoil == 14:
                    mixed[0]["water_l"] *= 1 + 1e-7
                elif spoil == 15:
                    mixed[0]["batches"][-1]["drunk_l"] *= 1 + 1e-7
                elif spoil == 16:
                    mixed[0]["batches"].pop()
                elif spoil == 17:
                    known = next(k for k in ("product_g", "product_ml") if mixed[0][k] is not None)
                    mixed[0]["batches"][0][known] = mixed[0]["batches"][0][known] * (1 + 1e-7)
                elif spoil == 18:
                    wrong["supplements"].pop()
                tried += 1
                if compare(farm, rations, wrong, collections.Counter()).faults:
                    caught += 1
                else:
                    expect(False, f"farm {n}: spoiled answer {spoil} was not noticed")
        expect(farms > 0 and tried > 0, "nothing was tried")
        # every kind of thing turns up in the usual 200 farms
        rng = np.random.default_rng(1)
        offered = collections.Counter()
        for n in range(1, 201):
            farm_text(rng, n, rations, offered)
        never = [m for m in must_occur(rations) if not offered[m] and m not in MET_IN_ANSWERS]
        expect(not never, f"200 farms never hold: {never}")
    print(f"self-test: {farms} farms, {caught} of {tried} spoiled answers caught, {bad} faults")
    return 1 if bad else 0


def main():
    p = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    p.add_argument("program", nargs="?")
    p.add_argument("rations_dir", nargs="?")
    p.add_argument("--farms", type=int, default=200)
    p.add_argument("--seed", type=int, default=1)
    p.add_argument("--keep", action="store_true", help="keep the farms and answers even when all pass")
    p.add_argument("--self-test", action="store_true", help="check this file's own model, without the program")
    a = p.parse_args()
    if a.self_test:
        return self_test(a.rations_dir or a.program)
    if not a.program or not a.rations_dir:
        p.error("PROGRAM and RATIONS_DIR are needed (or --self-test)")
    return run(a.program, a.rations_dir, a.farms, a.seed, a.keep)


if __name__ == "__main__":
    sys.exit(main())
