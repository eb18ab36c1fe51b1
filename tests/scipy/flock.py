"""One hatch worked out with SciPy from a farm's text and the tables of the rations: birds, feed and water by age, the
stages of its housing, its courses, and what its vessels hold.  Nothing is taken from the C++ sources.

Two ways of integrating are used on purpose.  Feed totals come from scipy.integrate.quad on each smooth piece.  What a
vessel gives between two fills comes from the 10-point Gauss-Legendre rule on each smooth piece (the rule of
scipy.integrate.fixed_quad with n=10): head count times intake is a product of two cubics, degree 6, and ten points are
exact to degree 19.
"""

import collections
import datetime as dt
import math
import pathlib
import tomllib
import warnings

import numpy as np
from scipy.integrate import IntegrationWarning, quad
from scipy.interpolate import CubicHermiteSpline, PchipInterpolator
from scipy.optimize import brentq
from scipy.special import ndtri, roots_legendre

from quantities import US_GAL_M3, UNITS, degrees_apart_c, label_rate, per, split_text, value, warmth_c

HIGH = float(ndtri(0.95))     # standard score of the 95 % point

# A quad that cannot keep its promise is a fault of this check, not a footnote.
warnings.simplefilter("error", IntegrationWarning)


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
        self.dead_low, self.dead_high = (Curve([r[0] for r in rows], [r[i] for r in rows]) for i in (1, 3))
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


# ------------------------------------------------------------------- the day

INSTANT = 1e-9            # days; ages nearer than this are one moment
SLACK = 1e-3              # minutes; instants nearer than this are one


def as_datetime(d):
    return d if isinstance(d, dt.datetime) else dt.datetime(d.year, d.month, d.day)


class Chores:
    """The hours of the day at which somebody is in the barn, in minutes of the day."""

    def __init__(self, farm):
        hours = farm["farm"].get("chores", ["07:00", "18:00"])
        self.times = sorted(int(h.split(":")[0]) * 60 + int(h.split(":")[1]) for h in hours)

    def moment(self, date):
        """A date without an hour is the first chore of that day."""
        if isinstance(date, dt.datetime):
            return date
        return as_datetime(date) + dt.timedelta(minutes=self.times[0])

    def not_after(self, minutes):
        day, rest = divmod(minutes + SLACK, 1440)
        done = [t for t in self.times if t <= rest]
        return 1440 * day + done[-1] if done else 1440 * (day - 1) + self.times[-1]

    def after(self, minutes):
        day, rest = divmod(minutes + SLACK, 1440)
        to_come = [t for t in self.times if t > rest]
        return 1440 * day + to_come[0] if to_come else 1440 * (day + 1) + self.times[0]


class Clock:
    """The chores by age of one hatch."""

    def __init__(self, chores, date):
        self.chores, self.zero = chores, date.hour * 60 + date.minute

    def last(self, age):
        """Age of the last chore not later than `age`."""
        return (self.chores.not_after(self.zero + 1440 * age) - self.zero) / 1440

    def next(self, age):
        """Age of the first chore after `age`."""
        return (self.chores.after(self.zero + 1440 * age) - self.zero) / 1440

    def reach(self, now, until):
        """The last chore not later than `until`, or the first after `now` where that is none; and whether it was none."""
        found = self.last(until)
        return (found, False) if found > now + INSTANT else (self.next(now), True)


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


class Product:
    """A [supplement.*]: what goes into the water.  None where a thing cannot be known."""

    def __init__(self, table):
        self.batch = min(1.0, value(table["keeps"], "time") if "keeps" in table else 1.0)
        self.spoon = per(table["spoon"], "mass", "volume") if "spoon" in table else None       # kg/m3
        self.full = table.get("mix") == "full"
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


class Course:
    """A product given for some days: from `start` to `end` as written, from `first` to `last` as somebody is there."""

    def __init__(self, supplement, product, start, days, clock):
        self.supplement, self.product, self.start, self.end = supplement, product, start, start + days
        self.first, self.last = max(0.0, clock.last(start)), clock.last(self.end)


class Hopper:
    def __init__(self, name, table, densities):
        self.name = name
        self.waste = value(table["extra_waste"], "share") if "extra_waste" in table else 0.0
        stays = value(table["stays_behind"], "share") if "stays_behind" in table else 0.0
        full = vessel_m3(table) * (value(table["fill"], "share") if "fill" in table else 1.0)
        self.usable = [full * d * (1 - stays) for d in densities]     # kg in one, by step of feeding
        self.behind = [full * d * stays for d in densities]
        self.ahead = next((value(table[key], "time") for key in ("fill_for", "at_most") if key in table), None)

    def days_ahead(self, age):
        if self.ahead is not None:
            return self.ahead
        return 7.0 if age < 21 - INSTANT else 14.0


class Drinker:
    def __init__(self, name, table):
        self.name = name
        self.spill = value(table["spill"], "share") if "spill" in table else 0.0
        self.brim_l = 1e3 * (value(table["volume"], "volume")
                             - (value(table["displaced"], "volume") if "displaced" in table else 0.0))
        self.change_every = value(table["change_every"], "time") if "change_every" in table else math.inf
        self.least_l = 1e3 * value(table["least"], "volume") if "least" in table else 0.0


class Stage:
    """A time in one sort of house.  `hoppers` and `drinkers` are counts for each house."""

    def __init__(self, table, start, end, farm, densities):
        self.start, self.end = start, end
        self.house, self.fixed = table.get("house"), table.get("houses")
        self.hopper = Hopper(table["hopper"], farm["hopper"][table["hopper"]], densities) if "hopper" in table else None
        self.drinker = Drinker(table["drinker"], farm["drinker"][table["drinker"]]) if "drinker" in table else None
        self.hoppers, self.drinkers = table.get("hoppers", 1), table.get("drinkers", 1)
        self.feed = self.water = None


def held(holds, age):
    """Birds one house holds at an age."""
    if not isinstance(holds, list):
        return holds
    return [row["birds"] for row in holds if value(row["from"], "time") <= age + INSTANT][-1]


class Hatch:
    """One [[hatch]] of a farm, as functions of age in days."""

    def __init__(self, farm, table, rations):
        self.name, self.table = table["name"], table
        self.kind = kind = rations.kinds[table["kind"]]
        chores = Chores(farm)
        self.date = chores.moment(table["date"])
        self.clock = Clock(chores, self.date)
        self.us = farm["farm"].get("units", "us") == "us"
        self.scale_g = 1e3 * value(farm["farm"]["scale"], "mass") if "scale" in farm["farm"] else 1.0
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

        # stages of housing; the old keys are one for life
        rows = table.get("housing", [table])
        froms = [value(row["from"], "time") for row in rows] if "housing" in table else [0.0]
        self.stages = [Stage(row, a, b, farm, self.densities)
                       for row, a, b in zip(rows, froms, [*froms[1:], self.until])]
        self.wastes = np.array([s.hopper.waste if s.hopper else 0.0 for s in self.stages])
        self.spills = np.array([s.drinker.spill if s.drinker else 0.0 for s in self.stages])
        self.stage_starts = np.array(froms)
        self.houses = farm.get("house", {})

        self.courses = []
        if "courses" in table:
            for row in table["courses"]:
                if "on" in row:
                    start = (chores.moment(row["on"]) - self.date).total_seconds() / 86400
                else:
                    start = value(row["from"], "time")
                self.courses.append(Course(row["supplement"], Product(farm["supplement"][row["supplement"]]), start,
                                           row["days"], self.clock))
        elif "supplement" in table:
            t = farm["supplement"][table["supplement"]]
            start = value(t["from"], "time") if "from" in t else 0.0
            self.courses.append(Course(table["supplement"], Product(t), start, t["days"], self.clock))

        breaks = [*kind.curve.knots, *kind.mortality.knots, *starts, kind.brooding_ends,
                  *(r[0] for r in self.removed)]
        if self.laying_from < math.inf:
            breaks.append(self.laying_from)
        self.feed = Demand(self.feed_kg_per_day, [*breaks, *froms])       # the whole hatch
        self.water = Demand(self.water_l_per_day, [*breaks, *froms])
        for stage, waste, spill in zip(self.stages, self.wastes, self.spills):    # as if the stage went on for ever
            stage.feed = Demand(lambda age, w=waste: self.eaten_kg_per_day(age) / (1 - w), breaks)
            stage.water = Demand(lambda age, s=spill: self.drunk_l_per_day(age) / (1 - s), breaks)

    # the one set of vessels of a hatch without housing
    @property
    def hopper_kg(self):
        return self.stages[0].hopper.usable

    @property
    def hoppers(self):
        return self.stages[0].hoppers

    @property
    def drinker_l(self):
        return self.stages[0].drinker.brim_l

    @property
    def drinkers(self):
        return self.stages[0].drinkers

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

    def stage_at(self, age):
        return np.searchsorted(self.stage_starts, np.asarray(age, float), "right") - 1

    def eaten_kg_per_day(self, age):
        return self.birds(age) * self.eaten_g(age) / 1e3

    def drunk_l_per_day(self, age):
        warm = np.where(np.asarray(age) >= self.kind.brooding_ends, self.water_warm, 1.0)
        return self.birds(age) * self.eaten_g(age) * self.kind.ratio * warm / 1e3

    def feed_kg_per_day(self, age):
        return self.eaten_kg_per_day(age) / (1 - self.wastes[self.stage_at(age)])

    def water_l_per_day(self, age):
        return self.drunk_l_per_day(age) / (1 - self.spills[self.stage_at(age)])

    def steps_within(self, a, b):
        clipped = [Step(s.feed, max(s.start, a), min(s.end, b)) for s in self.steps]
        return [s for s in clipped if s.start < s.end]

    # ------------------------------------------------------------- housing

    def sure_birds(self, age):
        """Birds alive where fewer die than usual, at the 5 % point of the deaths."""
        def surviving(at):
            low, high = float(self.kind.dead_low(at)), float(self.kind.dead_high(at))
            spread = math.log(high / low) / (2 * HIGH) if low > 0 else 0.0
            return 1 - float(self.kind.mortality(at)) / 100 * math.exp(-HIGH * spread)

        each = self.chicks          # birds for each survivor
        for at, birds in self.removed:
            if at <= age + INSTANT:
                each -= birds / surviving(at)
        return each * surviving(age)

    def houses_used(self, stage):
        """Houses of a stage; None where the count hangs by a hair or the birds themselves are in doubt."""
        if stage.house is None:
            return 1
        if stage.fixed is not None:
            return stage.fixed
        holds = self.houses[stage.house]["holds"]
        steps = [stage.start]
        if isinstance(holds, list):
            steps += [a for a in (value(row["from"], "time") for row in holds) if stage.start < a < stage.end - INSTANT]
        start = self.sure_birds(stage.start)
        usual = float(self.birds(stage.start))
        needed = [start * float(self.birds(a)) / usual / held(holds, a) for a in steps]
        if any(abs(x - round(x)) < 1e-6 for x in needed):
            return None
        return max(1, *(math.ceil(x) for x in needed))

    # --------------------------------------------------------------- water

    def course_at(self, age):
        return next((c for c in self.courses if c.first - INSTANT <= age < c.last - INSTANT), None)

    def water_due(self, drinker, now, changed):
        """Age at which the water in a drinker is due, having been changed at `changed`."""
        due, course = changed + drinker.change_every, self.course_at(now)
        if course:
            return min(due, changed + course.product.batch, course.last)
        return min([due, *(c.first for c in self.courses if c.first > now + INSTANT)])

    def batch_litres(self, product, needed):
        """The least volume a person can measure, for a dose a person can measure."""
        if product.parts is not None:
            return needed
        litres = 1e3 * US_GAL_M3 if self.us else 1.0
        spoon_ml = 1e6 * UNITS["volume"]["tsp"] / 8 if self.us else 0.5
        least = max(1, math.ceil(needed / litres - 1e-9))
        for volume in [*((1 / 8, 1 / 4, 1 / 2) if self.us else (1 / 2,)), *range(1, max(10, 10 * least) + 1)]:
            water = volume * litres
            if water < needed * (1 - 1e-12):
                continue
            dose = product.dose(water)
            ml, g = dose["product_ml"], dose["product_g"]
            if ml is not None:
                times = max(1, round(ml / spoon_ml))
                if abs(times * spoon_ml - ml) <= 0.01 * ml * (1 + 1e-9):
                    return water
            if g is not None and g >= 50 * self.scale_g * (1 - 1e-9):
                return water
        return least * litres  # none within ten times the need: too little to be measured

    def poured_litres(self, needed, count, water, brim):
        """What goes into each drinker."""
        share = needed / count
        if self.us:
            ounce = 1e3 * US_GAL_M3 / 128
            step = ounce if share <= 32 * ounce * (1 + 1e-12) else 8 * ounce
        else:
            step = 0.05 if share <= 2.0 * (1 + 1e-12) else 0.25
        return min(step * math.ceil(share / step - 1e-9), water / count, brim)

    def batch(self, course, stage, count, now, until, sure_l):
        """One batch, under the keys of the answer, for `sure_l` drunk at the 95 % point between two ages."""
        product = course.product
        needed = stage.drinker.brim_l * count if product.full else sure_l + stage.drinker.least_l * count
        water = self.batch_litres(product, needed)
        each = self.poured_litres(needed, count, water, stage.drinker.brim_l)
        return {"age_d": now, "lasts_d": until - now, "drunk_l": stage.water.over(now, until), "drunk_p95_l": sure_l,
                "each_drinker_l": each, "thrown_l": water - each * count, **product.dose(water)}

    def feed_kg_by_quad(self, a, b):
        """The same integral by scipy.integrate.quad, from polynomial pieces in
        plain floats: shares nothing with `Demand.batch` but the splines."""
        total = 0.0
        edges = self.feed.cut(a, b)
        for lo, hi in zip(edges, edges[1:]):
            mid = (lo + hi) / 2
            step = max(i for i, s in enumerate(self.step_starts) if s <= mid)
            stage = [s for s in self.stages if s.start <= mid][-1]
            scale = [k for s, k in zip(self.since, self.scale) if s <= mid][-1]
            laying = mid >= self.laying_from
            m0, m3, m2, m1, mc = self.kind.mortality.piece(mid)
            f0, f3, f2, f1, fc = (0.0, 0.0, 0.0, 0.0, self.kind.laying) if laying else self.kind.curve.piece(mid)
            const = scale * self.factor(step, laying) / 1e3 / (1 - (stage.hopper.waste if stage.hopper else 0.0))
            if mid >= self.kind.brooding_ends:
                const *= self.feed_warm

            def rate(x):
                u, v = x - m0, x - f0
                return ((1 - (((m3 * u + m2) * u + m1) * u + mc) / 100)
                        * (((f3 * v + f2) * v + f1) * v + fc))

            total += const * quad(rate, lo, hi, epsabs=0, epsrel=1e-12)[0]
        return total


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
