"""The check of the check: by hand on a flat farm, by two integrators, and by spoiled answers that must be refused."""

import collections
import copy
import datetime as dt
import json
import math
import pathlib
import tempfile
import tomllib

import numpy as np
from scipy.integrate import fixed_quad

from farm_text import MET_IN_ANSWERS, farm_text, must_occur
from flock import INSTANT, Curve, Hatch, Kind, Rations, held, vessel_m3
from quantities import LB_KG, US_GAL_M3, label_rate, value, warmth_c
from verdict import BAND, DOSES, compare, moment, packs_to_buy, stretches, summed, whole_bags

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


# An invented law, for the self-test only.  Of a need p05, p50 and p95 over the usual; of feed and of water what the safe
# flock uses over the usual: in some hatches less than the hungry flock of the whole farm, in others more.
NEED = (0.85, 0.99, 1.2)
SAFE_FEED, SAFE_WATER = (1.25, 1.15), 1.3


def spread(central, factors):
    return dict(zip(BAND, (central * f for f in factors)))


class Answer:
    """A whole answer from this file's model, visit after visit.  `habits` are ways to get it wrong."""

    def __init__(self, farm, rations, window=(None, None), habits=()):
        self.farm, self.rations, self.habits = farm, rations, habits
        self.hatches, self.spans = [], {}
        for h in [Hatch(farm, t, rations) for t in farm["hatch"]]:
            a, b = ((w - h.date).total_seconds() / 86400 if w else None for w in window)
            span = (max(0.0, a or 0.0), h.until if b is None else min(h.until, b))
            if span[0] < span[1]:
                self.hatches.append(h)
                self.spans[h.name] = span
        self.fed = collections.defaultdict(lambda: [0.0, 0.0, 0.0])      # kg put in, left behind, in before
        self.taken = collections.Counter()
        out = {"farm": farm["farm"]["name"], "hatches": [self.hatch(n, h) for n, h in enumerate(self.hatches)]}
        packs = packs_to_buy(farm, [(m["supplement"], m) for a in out["hatches"] for m in a["mixes"] if m["batches"]])
        out["supplements"] = []
        for key, (g, ml, n, cost) in packs.items():
            row = {"supplement": key}
            for end in ("", "_p95"):
                row.update({"product_g" + end: g, "product_ml" + end: ml, "packs" + end: n, "cost" + end: cost})
            out["supplements"].append(row)
        out["buy"] = self.purchases(out)
        packs_cost = [p[3] or 0.0 for p in packs.values()]
        out["total"] = {"bags": sum(b["bags"] for b in out["buy"]), "bags_p95": sum(b["bags_p95"] for b in out["buy"]),
                        "cost": math.fsum([f["cost"] for a in out["hatches"] for f in a["feeds"]] + packs_cost),
                        "cost_p95": math.fsum([b["cost_p95"] for b in out["buy"]] + packs_cost)}
        self.json = json.loads(json.dumps(out))

    def hatch(self, n, h):
        span, batches = self.spans[h.name], []
        stages = []
        for s in h.stages:
            a, b = max(s.start, span[0]), min(s.end, span[1])
            if b <= a + INSTANT:
                continue
            houses = h.houses_used(s) or 1
            numbers = []
            if s.house is not None:
                numbers = [self.taken[s.house] + i + 1 for i in range(houses)]
                self.taken[s.house] += houses
                if numbers[-1] > self.farm["house"][s.house]["count"]:
                    numbers = []
            stage = {"from_d": a, "to_d": b, "house": s.house, "houses": houses, "numbers": numbers,
                     "hoppers": None, "drinkers": None}
            if s.hopper:
                stage["hoppers"] = {"hopper": s.hopper.name, "count": s.hoppers * houses,
                                    "fills": self.hopper_fills(h, s, span, s.hoppers * houses, SAFE_FEED[n % 2])}
            else:
                for p in stretches(h, s, span):
                    self.fed[p.feed][0] += NEED[2] * s.feed.over(max(p.start, span[0]), p.end)
            if s.drinker:
                stage["drinkers"] = {"drinker": s.drinker.name, "count": s.drinkers * houses,
                                     "fills": self.drinker_fills(h, s, span, s.drinkers * houses, batches)}
            stages.append(stage)
        mixes = []
        for c in h.courses:
            of_course = [b for course, b in batches if course is c]
            sums = summed(of_course)
            for key in DOSES:
                if key != "water_l" and c.product.dose(1.0)[key] is None:
                    sums[key] = None
            mixes.append({"supplement": c.supplement, "from_d": c.start, "to_d": c.end, "per_l_g": c.product.per_l_g,
                          "sodium_mg_per_l": c.product.sodium_mg_per_l, "batches": of_course, **sums})
        feeds = [{"feed": s.feed, "from_d": s.start, "to_d": s.end, "feed_kg": kg, **spread(kg, NEED)}
                 for s in h.steps_within(*span) for kg in [h.feed.over(s.start, s.end)]]
        return {"name": h.name, "kind": h.kind.name, "date": h.date.isoformat(), "chicks": h.chicks, "feeds": feeds,
                "hoppers": stages[0]["hoppers"], "drinkers": stages[0]["drinkers"], "stages": stages, "mixes": mixes,
                "mix": next((m for m in mixes if m["batches"]), mixes[0] if mixes else None)}

    def fill(self, h, whole, unit, now, until, holds, count, safe, full):
        """What every fill says; `whole` is the use of the hatch."""
        lasts = whole.lasts(now, holds * count)
        return {"at": moment(h, now).isoformat(), "age_d": now, "birds": float(h.birds(now)),
                "do_at": moment(h, h.clock.last(now)).isoformat(), f"content_{unit}": holds, "share_of_full": full,
                "until": moment(h, until).isoformat(), "would_do": None,
                f"used_{unit}": whole.over(now, until) / count, "empty_after_d": lasts,
                "empty_at": moment(h, now + lasts).isoformat(), "p05": whole.lasts(now, holds * count / safe),
                "p50": lasts * 1.01, "p95": lasts * 1.3}

    def hopper_fills(self, h, s, span, count, safe):
        rows, wrong = [], self.habits
        for p in stretches(h, s, span):
            brim, behind = s.hopper.usable[p.step] * count, s.hopper.behind[p.step] * count
            now, left, first = p.start, 0.0, True
            hungry = 1.0 if "usual birds" in wrong else NEED[2]
            while now < p.end - INSTANT:
                aim = min(h.clock.reach(now, now + s.hopper.days_ahead(now))[0], p.end)
                to_aim, to_end = s.feed.over(now, aim), hungry * s.feed.over(now, p.end)
                until, would_do = aim, None
                level = min(max(safe, hungry) * to_aim, to_end)
                if aim >= p.end - INSTANT and to_end <= brim:
                    level = to_end
                elif level >= brim or "to the brim" in wrong:
                    level = brim
                    lasts = h.feed.lasts(now, level if "centre" in wrong else level / safe)
                    visit, none = h.clock.reach(now, now + lasts)
                    until = min(aim, visit) if "between chores" not in wrong else min(aim, now + lasts)
                    if none and until > now + lasts:
                        would_do = math.ceil(safe * s.feed.over(now, until) / s.hopper.usable[p.step])
                row = self.fill(h, h.feed, "kg", now, until, level / count, count, safe, (level + behind) / (brim + behind))
                row.update(put_in_kg=level - left + (behind if first else 0.0), would_do=would_do)
                eaten = hungry * s.feed.over(now, until)
                if now >= span[0] - INSTANT:
                    rows.append(row)
                    self.fed[p.feed][0] += row["put_in_kg"] - (behind if first else 0.0)
                    self.fed[p.feed][1] += behind if first else 0.0
                elif until > span[0] + INSTANT:
                    self.fed[p.feed][2] += level - hungry * s.feed.over(now, span[0])
                left, now, first = level - eaten, until, False
        return rows

    def drinker_fills(self, h, s, span, count, batches):
        rows, wrong = [], self.habits
        now, end, changed, drunk = s.start, min(s.end, span[1]), s.start, 0.0
        while now < end - INSTANT:
            course, brim = h.course_at(now), s.drinker.brim_l
            if course:
                changed = now
            due = h.water_due(s.drinker, now, changed)
            change = h.clock.reach(now, due)[0] if due < math.inf else math.inf
            lasts = h.water.lasts(now, brim * count / SAFE_WATER)
            visit, none = h.clock.reach(now, now + lasts)
            until = min(change, end, visit)
            holds = brim
            if course:
                sure = SAFE_WATER * s.water.over(now, until)
                mixed = h.batch(course, s, count, now, until, sure)
                if "what is drunk" in wrong:
                    mixed.update(course.product.dose(sure))
                holds = mixed["each_drinker_l"]
                if now >= span[0] - INSTANT:
                    batches.append((course, {"at": moment(h, now).isoformat(), **mixed}))
            row = self.fill(h, h.water, "l", now, until, holds, count, SAFE_WATER, holds / brim)
            row["put_in_l"] = holds * count if changed == now else min(SAFE_WATER * drunk, brim * count)
            row["change_after_d"] = min(due - now, row["empty_after_d"]) if due <= end + INSTANT else None
            if none and until > now + lasts:
                row["would_do"] = math.ceil(SAFE_WATER * s.water.over(now, until) / brim)
            if now >= span[0] - INSTANT:
                rows.append(row)
            drunk = s.water.over(now, until)
            if course or until == change:
                changed = until
            now = until
        return rows

    def purchases(self, out):
        total, parts = collections.defaultdict(float), collections.defaultdict(list)
        for h, a in sorted(zip(self.hatches, out["hatches"]), key=lambda x: x[0].date):
            for f in a["feeds"]:
                total[f["feed"]] += f["feed_kg"]
                parts[f["feed"]].append(f)
        rows = []
        for feed, need in total.items():
            table, band = self.farm["feed"][feed], spread(need, NEED)
            put_in, stays, there = self.fed[feed]
            bags = {"bags": whole_bags(table, max(0.0, need - there) + stays), "bags_p95": whole_bags(table, put_in + stays)}
            for key in ("p05", "p50"):
                bags["bags_" + key] = whole_bags(table, max(0.0, band[key] - there) + stays)
            run, before = stays, 0
            for f in parts[feed]:
                run += f["feed_kg"]
                after = bags["bags"] if f is parts[feed][-1] else whole_bags(table, run)
                f["bags"], before = after - before, after
                f["cost"] = f["bags"] * table["price"]
            size = value(table["bag"], "mass")
            rows.append({"feed": feed, "feed_kg": need, **band, **bags, "put_in_kg": put_in, "stays_behind_kg": stays,
                         "in_hoppers_kg": there, "bought_kg": bags["bags_p95"] * size,
                         "stock_kg": value(table["on_hand"], "mass") if "on_hand" in table else 0.0,
                         "spare_kg": value(table["spare"], "mass") if "spare" in table else 0.0,
                         "cost_p95": bags["bags_p95"] * table["price"]})
        return rows


def own_answer(farm, rations, window=(None, None), habits=()):
    return Answer(farm, rations, window, habits).json


def by_hand(folder, rations, expect):
    """Constant intake and no deaths: every figure can be had with a pencil."""
    path = folder / "flat.toml"
    path.write_text(FLAT_KIND)
    flat = copy.copy(rations)
    flat.kinds = {"flat": Kind(path)}
    farm = tomllib.loads(FLAT_FARM)
    h = Hatch(farm, farm["hatch"][0], flat)
    answer = own_answer(farm, flat)
    a, buy = answer["hatches"][0], answer["buy"]
    hop, dri = a["hoppers"]["fills"], a["drinkers"]["fills"]
    # grams: 10 from day 0; doubled by thin feed from 10; half the birds from 20;
    # laying from 30 (20 g, its own reference energy); hot barn from 35
    eaten_b = 100 * 20 * 10 + 50 * 20 * 10 + 50 * 20 * 5 + 50 * 20 * 5 * (1 - 0.0184 * 10)
    water = 2 * 2 * ((10_000 + eaten_b) + (50 * 20 * 5 * 0.816) * 0.06 * 13) / 1e3
    eleven = 11 / 24       # from 07:00 to 18:00, the hours where none are stated
    for words, got, want in (
        ("chicks", a["chicks"], 100), ("birds at 25 d", float(h.birds(25.0)), 50),
        ("feed a", a["feeds"][0]["feed_kg"], 12.5), ("feed b", a["feeds"][1]["feed_kg"], eaten_b / 0.8 / 1e3),
        # 12.5 kg and 1 kg that stays, 2 kg are there; at the safe end 15 kg
        ("bags of a", a["feeds"][0]["bags"], 3), ("bags of a at the safe end", buy[0]["bags_p95"], 3),
        ("bags of b", a["feeds"][1]["bags"], 3), ("cost of a", a["feeds"][0]["cost"], 7.5),
        ("water", h.water.over(0, 40), water), ("put in of a", buy[0]["put_in_kg"], 15.0),
        ("left behind of a", buy[0]["stays_behind_kg"], 1.0), ("left behind of b", buy[1]["stays_behind_kg"], 1.0),
        ("hopper content", hop[0]["content_kg"], 3), ("hopper lasts", hop[0]["empty_after_d"], 2.4),
        ("first put in", hop[0]["put_in_kg"], 4), ("share of full", hop[0]["share_of_full"], 1),
        # the safe end is after 1.92 d, before 07:00: the evening before that
        ("second fill", hop[1]["age_d"], 1 + eleven), ("use till then", hop[0]["used_kg"], 1.25 * (1 + eleven)),
        ("second put in", hop[1]["put_in_kg"], 1.5 * (1 + eleven)), ("third fill", hop[2]["age_d"], 3),
        ("fourth fill", hop[3]["age_d"], 4 + eleven), ("fifth fill", hop[4]["age_d"], 6),
        ("sixth fill", hop[5]["age_d"], 7 + eleven), ("last fill of a", hop[6]["age_d"], 9),
        # 1.5 kg for hungry birds; 3 kg less 1 d 13 h are still there
        ("its level", hop[6]["content_kg"], 1.5), ("its put in", hop[6]["put_in_kg"], 1.5 - (3 - 1.5 * (2 - eleven))),
        ("its share of full", hop[6]["share_of_full"], 2.5 / 4),
        ("fill at the change of feed", hop[7]["age_d"], 10), ("its life", hop[7]["empty_after_d"], 1.2),
        ("and what it takes", hop[7]["put_in_kg"], 4), ("life of the fill before, feed going on", hop[6]["empty_after_d"], 1.1),
        ("bags of a when 12.5 kg are 15", whole_bags(farm["feed"]["a"], 15.0), 3),
        ("and when they are 17.5", whole_bags(farm["feed"]["a"], 17.5), 4),
        ("drinker content", dri[0]["content_l"], 4), ("drinker lasts", dri[0]["empty_after_d"], 2.0),
        # due after 12 h, when nobody is there: done at 11 h
        ("drinker changed", dri[1]["age_d"], eleven), ("drinker use", dri[0]["used_l"], 2 * eleven),
        ("and next in the morning", dri[2]["age_d"], 1), ("number of drinker fills", len(dri), 80),
    ):
        expect(math.isclose(got, want, rel_tol=1e-12), f"by hand, {words}: {got!r}, expected {want!r}")
    expect(hop[0]["until"] == "2027-03-02T18:00:00" and dri[1]["do_at"] == "2027-03-01T18:00:00", "dates by hand")

    # houses: 100 birds, all of them sure, 50 after 20 d
    for holds, start, want in ((40, 0, 3), (100, 0, 1), ([("0 d", 60), ("25 d", 20)], 10, 3), ([("0 d", 99), ("20 d", 20)], 10, 3),
                               (1000, 0, 1)):
        table = holds if isinstance(holds, int) else [{"from": f, "birds": b} for f, b in holds]
        farm["house"] = {"tank": {"count": 9, "holds": table}}
        housed = {**farm["hatch"][0], "housing": [{"from": "0 d", "house": "tank"}]}
        h = Hatch(farm, housed, flat)
        h.stages[0].start = start
        got = h.houses_used(h.stages[0])
        exact = any(100 % b == 0 or 50 % b == 0 for b in [held(table, a) for a in (start, 25)])
        expect(got == want or (got is None and exact), f"houses by hand: {got!r}, expected {want} at {holds!r}")


# 50 birds that eat 20 g and drink 80 mL each, half of it spilt: 4 L in a day
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
    first, second, last = spoon["batches"][0], spoon["batches"][1], stock["batches"][-1]
    eleven = 11 / 24
    need = 1.3 * 4 * (1 - eleven) + 1.2        # of the stock's first batch, from 18:00 to 07:00
    drinker = h.stages[0].drinker
    for words, got, want in (
        # of 4 L 39 half millilitres are 1.1 % too little, of 5 L 49 are 0.6 %
        ("batches from chore to chore", len(spoon["batches"]), 2), ("drunk in one", first["drunk_l"], 4 * eleven),
        ("mixed", first["water_l"], 5.0), ("poured, 3.583 L in two", first["each_drinker_l"], 1.8),
        ("thrown", first["thrown_l"], 1.4), ("by the spoon", first["product_ml"], 5 * 4.92892159375),
        ("in grams", first["product_g"], 25.0), ("the second starts in the evening", second["age_d"], 24 + eleven),
        ("poured, above 2 L by quarters", second["each_drinker_l"], 2.25), ("course", spoon["product_g"], 50.0),
        ("sodium", spoon["sodium_mg_per_l"], 500.0), ("due in a course", h.water_due(drinker, 24.0, 24.0), 24.25),
        ("due before a course", h.water_due(drinker, 23.9, 23.9), 24.0), ("due after a course", h.water_due(drinker, 25.0, 25.0), 25.5),
        ("the last of a course", h.water_due(drinker, 24.9, 24.9), 25.0),
        ("a course starts when somebody is there", stock["batches"][0]["age_d"], 23 + eleven),
        ("batches to the end", len(stock["batches"]), 33), ("what is needed", stock["batches"][0]["water_l"], need),
        ("stock", stock["batches"][0]["stock_ml"], 1e3 * need / 64), ("what is in it", stock["batches"][0]["stock_product_g"], need),
        ("strength", stock["per_l_g"], 1.0), ("poured, no more than there is", stock["batches"][0]["each_drinker_l"], need / 2),
        ("last batch", last["age_d"], 39 + eleven), ("it is cut", last["lasts_d"], 1 - eleven),
        ("no day of life left", len(mixes["thin"][0]["batches"]), 0), ("no water", mixes["thin"][0]["water_l"], 0.0),
        ("1:400", mixes["thin"][1].courses[0].product.dose(4.0)["product_ml"], 10.0),
        ("four litres have 10 mL", h.batch_litres(mixes["thin"][1].courses[0].product, 3.1), 4.0),
    ):
        expect(math.isclose(got, want, rel_tol=1e-12), f"mix by hand, {words}: {got!r}, expected {want!r}")
    gallon, ounce = 1e3 * US_GAL_M3, 1e3 * US_GAL_M3 / 128
    h.us, teaspoons = True, late.courses[0].product
    teaspoons.parts, teaspoons.per_l_ml, teaspoons.per_l_g = None, 4.92892159375 / gallon, None      # 1 tsp per gal
    for needed, water, count, each in ((0.4, gallon / 8, 2, 7 * ounce), (0.5, gallon / 4, 2, 9 * ounce), (1.0, gallon / 2, 1, 40 * ounce),
                                       (5 * gallon, 5 * gallon, 4, 160 * ounce), (5.1 * gallon, 6 * gallon, 1, 656 * ounce)):
        expect(math.isclose(h.batch_litres(teaspoons, needed), water), f"{needed} L are mixed as {h.batch_litres(teaspoons, needed)}")
        got = h.poured_litres(needed, count, water, 1e3)
        expect(math.isclose(got, each), f"of {needed} L for {count}: {got / ounce!r} fl oz each, expected {each / ounce!r}")
    teaspoons.per_l_ml, teaspoons.per_l_g, h.scale_g = None, 1.0, 0.5      # 25 g can be weighed, 24 g not
    expect(math.isclose(h.batch_litres(teaspoons, 1.0), 7 * gallon), "26.5 g are the first that can be weighed")
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


def shifted(text, minutes):
    return (dt.datetime.fromisoformat(text) + dt.timedelta(minutes=minutes)).isoformat()


def spoiled(good):
    """(words, a copy of the answer with one thing wrong); answers that offer no place for it are passed over."""
    def spoil(words, change):
        wrong = copy.deepcopy(good)
        change(wrong)
        for a in wrong["hatches"]:         # both places tell the same
            a["hoppers"], a["drinkers"] = a["stages"][0]["hoppers"], a["stages"][0]["drinkers"]
            a["mix"] = next((m for m in a["mixes"] if m["batches"]), a["mix"])
        return words, wrong

    more = 1 + 1e-7
    last = len(good["hatches"]) - 1
    for n, a in enumerate(good["hatches"]):
        for m, s in enumerate(a["stages"]):
            for vessels, unit in (("hoppers", "kg"), ("drinkers", "l")):
                if not s[vessels] or not s[vessels]["fills"] or (n, m) not in ((0, 0), (last, len(a["stages"]) - 1)):
                    continue
                fills = s[vessels]["fills"]

                def fill(w, k, n=n, m=m, vessels=vessels):
                    return w["hatches"][n]["stages"][m][vessels]["fills"][k]

                k = len(fills) // 2
                for key in ("empty_after_d", f"used_{unit}", f"content_{unit}", "birds", "share_of_full"):
                    yield spoil(f"{vessels}: {key}", lambda w: fill(w, k).update({key: fills[k][key] * more}))
                yield spoil(f"{vessels}: put_in", lambda w: fill(w, k).update({f"put_in_{unit}": fills[k][f"content_{unit}"] * 1e3}))
                if unit == "kg":
                    yield spoil(f"{vessels}: put_in_kg", lambda w: fill(w, k).update(put_in_kg=fills[k]["put_in_kg"] * more))
                yield spoil(f"{vessels}: at", lambda w: fill(w, 0).update(at="2001-01-01 00:00"))
                for key in ("do_at", "until"):
                    yield spoil(f"{vessels}: {key} a minute late", lambda w: fill(w, k).update({key: shifted(fills[k][key], 1)}))
                    yield spoil(f"{vessels}: {key} a day early", lambda w: fill(w, -1).update({key: shifted(fills[-1][key], -1440)}))
                yield spoil(f"{vessels}: age_d", lambda w: fill(w, k).update(age_d=fills[k]["age_d"] + 1e-4))
                yield spoil(f"{vessels}: a fill left out", lambda w: w["hatches"][n]["stages"][m][vessels]["fills"].pop(k))
                yield spoil(f"{vessels}: count", lambda w: w["hatches"][n]["stages"][m][vessels].update(count=s[vessels]["count"] + 1))
                yield spoil(f"{vessels}: would_do", lambda w: fill(w, k).update(would_do=1 if fills[k]["would_do"] else 99))
                yield spoil(f"{vessels}: p05 missing", lambda w: fill(w, k).update(p05=None))
                yield spoil(f"{vessels}: p50 above p95", lambda w: fill(w, k).update(p50=fills[k]["p95"] * more))
                yield spoil(f"{vessels}: p95 at the centre", lambda w: fill(w, k).update(p95=fills[k]["empty_after_d"],
                                                                                         p50=fills[k]["empty_after_d"]))
                yield spoil(f"{vessels}: p05 at the centre", lambda w: fill(w, -1).update(p05=fills[-1]["empty_after_d"]))
                if unit == "l" and any(f["change_after_d"] for f in fills):
                    c = next(k for k, f in enumerate(fills) if f["change_after_d"])
                    yield spoil("change_after_d", lambda w: fill(w, c).update(change_after_d=fills[c]["change_after_d"] * more))
            if s["house"] and (n, m) == (0, 0):
                yield spoil("one house more", lambda w: w["hatches"][n]["stages"][m].update(houses=s["houses"] + 1))
                if s["numbers"]:
                    yield spoil("a house twice", lambda w: w["hatches"][n]["stages"][m].update(numbers=[1] * (s["houses"] + 1)))
        for m, mix in enumerate(a["mixes"]):
            if not mix["batches"]:
                continue

            def mixed(w, n=n, m=m):
                return w["hatches"][n]["mixes"][m]

            known = next(k for k in ("product_g", "product_ml") if mix[k] is not None)
            batch = mix["batches"][-1]
            yield spoil("a batch left out", lambda w: mixed(w)["batches"].pop())
            yield spoil("a batch twice", lambda w: mixed(w)["batches"].append(copy.deepcopy(batch)))
            yield spoil("water of a course", lambda w: mixed(w).update(water_l=mix["water_l"] * more))
            for key in ("water_l", "drunk_l", "each_drinker_l", known, "lasts_d"):
                yield spoil(f"batch: {key}", lambda w: mixed(w)["batches"][-1].update({key: batch[key] * more}))
            yield spoil("batch: thrown_l", lambda w: mixed(w)["batches"][-1].update(thrown_l=batch["thrown_l"] + 1e-6 * batch["water_l"]))
            yield spoil("batch: drunk_p95_l below what is drunk", lambda w: mixed(w)["batches"][-1].update(
                drunk_p95_l=batch["drunk_l"] * 0.999))
            yield spoil("batch: at", lambda w: mixed(w)["batches"][-1].update(at=shifted(batch["at"], 60)))
            yield spoil("a course left out", lambda w: w["hatches"][n]["mixes"].pop(m))
            yield spoil("a course a day late", lambda w: mixed(w).update(from_d=mix["from_d"] + 1))
            yield spoil("supplements", lambda w: w["supplements"].pop())
            yield spoil("supplements at the safe end", lambda w: [s.update({known + "_p95": (s[known + "_p95"] or 1.0) * 1.01})
                                                                  for s in w["supplements"]])
            break
    a = good["hatches"][last]
    feed, buy = a["feeds"][0], good["buy"]
    yield spoil("feed_kg", lambda w: w["hatches"][last]["feeds"][0].update(feed_kg=feed["feed_kg"] * more))
    yield spoil("to_d of a feed", lambda w: w["hatches"][last]["feeds"][-1].update(to_d=a["feeds"][-1]["to_d"] + 1e-3))
    yield spoil("bags of a hatch", lambda w: w["hatches"][last]["feeds"][-1].update(bags=a["feeds"][-1]["bags"] + 1))
    yield spoil("chicks", lambda w: w["hatches"][last].update(chicks=a["chicks"] * more))
    yield spoil("a hatch left out", lambda w: w["hatches"].pop())
    yield spoil("a stage left out", lambda w: w["hatches"][0]["stages"].append(copy.deepcopy(w["hatches"][0]["stages"][-1])))
    yield spoil("p95 of a need at the centre",
                lambda w: w["hatches"][last]["feeds"][0].update(p50=feed["feed_kg"], p95=feed["feed_kg"]))
    yield spoil("p50 below p05", lambda w: w["buy"][0].update(p50=buy[0]["p05"] * (1 - 1e-7)))
    for key in ("bags", *(f"bags_{key}" for key in BAND)):
        yield spoil(f"one more in {key}", lambda w: w["buy"][-1].update({key: buy[-1][key] + 1}))
    for key in ("put_in_kg", "p95", "bought_kg"):
        if buy[0][key]:
            yield spoil(f"buy: {key}", lambda w: w["buy"][0].update({key: buy[0][key] * more}))
    for key in ("stays_behind_kg", "in_hoppers_kg", "stock_kg", "spare_kg"):
        yield spoil(f"buy: {key}", lambda w: w["buy"][0].update({key: buy[0][key] + 1e-3 * buy[0]["feed_kg"]}))
    yield spoil("cost_p95", lambda w: w["buy"][0].update(cost_p95=buy[0]["cost_p95"] + 0.01))
    yield spoil("a feed not bought", lambda w: w["buy"].pop())
    for key, more_of_it in (("bags", 1), ("bags_p95", 1), ("cost", 0.01), ("cost_p95", 0.01)):
        yield spoil(f"total {key}", lambda w: w["total"].update({key: good["total"][key] + more_of_it}))


# ways of filling, each of which some farm must show up
HABITS = ("centre", "to the brim", "usual birds", "between chores", "what is drunk")


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
        habits, met = collections.Counter(), collections.Counter()
        farms = caught = tried = 0
        for n in range(1, 1000):
            farm = tomllib.loads(farm_text(rng, n, rations, seen))
            if farms == 9:
                break
            if sum(Hatch(farm, table, rations).until for table in farm["hatch"]) > 50:
                continue                # short lives: the answers are read again and again
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
            begins = Hatch(farm, farm["hatch"][0], rations)
            noon = begins.date.replace(hour=12, minute=20) + dt.timedelta(days=int(begins.until // 3))
            later = noon + dt.timedelta(days=9, hours=4)
            for window in ((None, None), [(noon, None), (noon, later), (None, noon)][farms % 3]):
                good = own_answer(farm, rations, window)
                report = compare(farm, rations, good, seen, window)
                expect(not report.faults, f"farm {n}, {window}: own answer refused: {report.faults[:3]}")
                if window == (None, None):
                    whole = good
            for habit in [h for h in HABITS if habits[h] < 3]:
                wrong = own_answer(farm, rations, (None, None), (habit,))
                if wrong != whole:
                    habits[habit] += 1
                    expect(compare(farm, rations, wrong, collections.Counter()).faults, f"farm {n}: not noticed: {habit}")
            for k, (words, wrong) in enumerate(spoiled(whole)):
                if (k + n) % 3:         # every kind of spoiling comes up on some farm
                    continue
                tried += 1
                faults = compare(farm, rations, wrong, collections.Counter()).faults
                caught += bool(faults)
                met[words] += 1
                expect(faults, f"farm {n}: an answer spoiled by this was not noticed: {words}")
            farms += 1
        never = [h for h in HABITS if not habits[h]]
        expect(not never, f"no farm shows these habits: {never}")
        expect(len(met) > 60, f"only {len(met)} ways of spoiling were tried")
        expect(farms > 0 and tried > 0, "nothing was tried")
        # every kind of thing turns up in the usual 200 farms
        rng = np.random.default_rng(1)
        offered = collections.Counter()
        for n in range(1, 201):
            farm_text(rng, n, rations, offered)
        never = [m for m in must_occur(rations) if not offered[m] and m not in MET_IN_ANSWERS]
        expect(not never, f"200 farms never hold: {never}")
    print(f"self-test: {farms} farms, {caught} of {tried} spoiled answers caught, {sum(habits.values())} answers by wrong habits, {bad} faults")
    return 1 if bad else 0
