"""Writes random farms as a grower might, and counts what kinds of thing came up."""

import collections
import datetime as dt
import json
import math
import tomllib

import numpy as np

from flock import Hatch
from quantities import KCAL_J, UNITS, split_text, value


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
        weights = ["5 g", "1 1/2 oz", "450 mg", "12.5 g"] if water in (gallon, "L") else ["60 g", "1 1/2 oz", "1/4 lb"]
        s["rate"] = f"{pen.pick(weights)} per {water}"
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
    if pen.chance(0.2):
        s["mix"] = "full"
        seen["drinkers filled with the solution"] += 1
    return s


def house(pen, until):
    """One random [house.*]."""
    h = {"count": pen.between(1, 4) if pen.chance(0.1) else pen.between(30, 60)}
    if pen.chance(0.4):
        first = pen.between(60, 160)
        ages = sorted(pen.rng.choice(np.arange(4, until), size=pen.between(1, 2), replace=False).tolist())
        h["holds"] = [{"from": pen.age(a), "birds": max(10, first - 25 * i)} for i, a in enumerate([0, *ages])]
        pen.seen["holds by age"] += 1
    else:
        h["holds"] = pen.between(25, 300)
        pen.seen["holds at any age"] += 1
    if pen.chance(0.5):
        h["rest"] = pen.pick(["3 d", "1 wk", "36 h"])
    return h


def courses(pen, date, until, keys):
    """Up to three courses of a hatch, one after another, by age or by day."""
    hour = isinstance(date, dt.datetime)
    rows, age = [], pen.between(0, min(12, until // 2))
    for _ in range(pen.between(1, 3)):
        if age + 3 >= until:
            break
        row = {"supplement": pen.pick(keys), "days": pen.pick([1, 2, 3, 5, 10, 21])}
        if pen.chance(0.35):        # its first chore is at this age, or up to two days later
            row["on"] = date.date() + dt.timedelta(days=age + 1) if hour else date + dt.timedelta(days=age)
            pen.seen["course on a day"] += 1
            age += 2 if hour else 0
        elif pen.chance(0.8):
            row["from"] = pen.age(age)
            pen.seen["course from an age"] += 1
        else:
            row["from"] = f"{24 * age + pen.between(1, 23)} h"
            age += 1
        rows.append(row)
        age += row["days"] + pen.pick([0, 0, 2, 20])
    pen.seen[f"{len(rows)} courses in a hatch"] += 1
    return rows


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
    if pen.chance(0.7):
        top["chores"] = pen.pick([["06:30", "17:30"], ["12:00"], ["05:30", "12:00", "18:30"], ["08:15", "16:45"], ["06:00", "21:30"]])
        seen[f"{len(top['chores'])} chores a day"] += 1
    else:
        seen["chores left out"] += 1
    if pen.chance(0.2):
        top["scale"] = pen.pick(["0.1 g", "2 g", "1/4 oz"])
        seen["scale stated"] += 1
    if pen.chance(0.7):
        c = float(rng.uniform(4, 40))
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
        if pen.chance(0.3):
            f["spare"] = pen.mass(float(rng.uniform(1, 20)))
            seen["feed to spare"] += 1
        table(f"[feed.{key}]", f)

    small = pen.chance(0.1)        # vessels that run dry between two chores
    seen["vessels far too small"] += small

    # hoppers
    hopper_keys = ["tube", "trough"][: pen.between(1, 2)]
    for key in hopper_keys:
        h = {}
        if small or pen.chance(0.5):
            h["volume"] = pen.volume(float(rng.uniform(0.4, 1.5) if small else rng.uniform(3, 60)))
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
        ahead = pen.pick([None, None, "fill_for", "at_most"])
        if ahead:
            h[ahead] = pen.pick(["2 d", "5 d", "36 h", "10 d", "3 wk"])
            seen[ahead] += 1
        table(f"[hopper.{key}]", h)

    # drinkers
    drinker_keys = ["bell", "fount"][: pen.between(1, 2)]
    for key in drinker_keys:
        litres = float(rng.uniform(0.4, 1) if small else rng.uniform(1, 25))
        d = {"volume": pen.volume(litres)}
        if pen.chance(0.4):
            d["displaced"] = pen.volume(litres * float(rng.uniform(0.02, 0.3)))
            seen["displaced"] += 1
        if pen.chance(0.6):
            d["change_every"] = pen.pick(["1 d", "2 d", "3 d", "4 d", "12 h", "36 h", "2 1/2 d", "1 wk"])
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

    # houses
    house_keys = ["tank", "pen", "field"][: pen.between(1, 3)]
    for key in house_keys:
        table(f"[house.{key}]", house(pen, 60))

    # hatches
    count = pen.pick([1, 1, 1, 1, 2, 3])
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
        longest = 40 if small else pen.pick([45, 60, 60, 90, 190])
        until = pen.between(3, longest // 7) * 7 if pen.chance(0.6) else pen.between(20, longest)
        if kind.laying is not None and pen.chance(0.5):
            laying_from = pen.between(30, longest + 10)
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

        # vessels: enough for some time, or not
        in_houses = pen.chance(0.6)
        if in_houses:
            n = pen.between(1, 3)
            moves = [0, *sorted(rng.choice(np.arange(4, until - 3), size=n - 1, replace=False).tolist())]
            if n > 1 and len(ages) > 1 and pen.chance(0.3) and ages[-1] not in moves and ages[-1] > moves[-2]:
                moves[-1] = ages[-1]
                seen["move and feed change together"] += 1
            h["housing"] = [{"from": pen.age(a) if pen.chance(0.85) or a == 0 else f"{24 * a + pen.pick([6, 9])} h",
                             "house": pen.pick(house_keys)} for a in moves]
        for stage in h.get("housing", [h]):
            if not pen.chance(0.06):
                stage["hopper"] = pen.pick(hopper_keys)
            if not pen.chance(0.06):
                stage["drinker"] = pen.pick(drinker_keys)
        watered = all("drinker" in stage for stage in h.get("housing", [h]))
        if supplement_keys and watered and pen.chance(0.8):
            if pen.chance(0.6):
                h["courses"] = courses(pen, h["date"], until, supplement_keys)
            else:
                h["supplement"] = pen.pick(supplement_keys)
                seen["supplement the old way"] += 1
        trial = dict(feeds_of_farm, hatch=[h])
        model = Hatch(trial, h, rations)
        for stage, table_of in zip(model.stages, h.get("housing", [h])):
            if in_houses and ("eggs" in h and "hatch_rate" not in h or pen.chance(0.3)):
                table_of["houses"] = stage.fixed = pen.between(1, feeds_of_farm["house"][stage.house]["count"])
            houses = model.houses_used(stage) or 1
            span = min(stage.start + 0.7 * (stage.end - stage.start), stage.end - 1)
            for key, vessel, demand in (("hoppers", stage.hopper, stage.feed), ("drinkers", stage.drinker, stage.water)):
                if vessel is None:
                    continue
                holds = min(vessel.usable) if key == "hoppers" else vessel.brim_l
                for_days = pen.pick([3, 6, 20]) if key == "hoppers" else pen.pick([0.8, 1.5, 4])
                enough = demand.over(span, span + for_days) / holds / houses
                table_of[key] = 1 if small and pen.chance(0.7) else max(1, round(enough))
        if in_houses:
            seen[f"{len(h['housing'])} stages in a hatch"] += 1
        else:
            seen["vessels the old way"] += 1
        table("[[hatch]]", h)
    if max(used.values()) > 1:
        seen["a feed shared by hatches"] += 1
    if order != sorted(order):
        seen["hatches not in order of date"] += 1
    return "\n".join(lines)


# met only while an answer is read
MET_IN_ANSWERS = (
    "bags to buy", "no bag to buy", "roots found", "fills", "hopper filled for the rest", "hopper filled to the brim",
    "hopper filled for hungry birds", "hopper filled in part for the safe end", "too few hoppers", "too few drinkers",
    "a feed that changes within a stage", "hopper too small to the end", "the last fill was before the time asked for",
    "feed in the hoppers before the time asked for", "drinkers followed to the end", "water changed", "drinkers topped up",
    "water changed before dry", "dry before the water is changed", "solution changed before dry", "batch measured out",
    "batch through a proportioner", "batch that fills the drinkers", "troughs add to a batch",
    "drinkers hold less than their share", "last batch cut short", "batch past its life",
    "course outside the time asked for", "two courses", "packs to buy", "houses fixed", "houses counted",
    "several houses in a stage", "too few houses", "1 stages", "2 stages", "3 stages", "no hoppers in a stage",
    "no drinkers in a stage", "need of one part alone", "more bags for the safe end")


def must_occur(rations):
    return [
        "laying", "removal", "two removals", "removal and feed change together", "laying and feed change together",
        "hopper by volume", "hopper part cylinder", "hopper part frustum", "hopper part box",
        "chicks", "eggs", "hatch_rate stated", "hatch_rate of the kind",
        "1 feeds in a hatch", "2 feeds in a hatch", "3 feeds in a hatch", "a feed shared by hatches",
        "several hatches", "hatches not in order of date", "a time of day",
        "energy stated", "energy left out", "density stated",
        "density of mash", "density of crumble", "density of pellet",
        "stays_behind", "fill", "extra_waste", "displaced", "spill", "change_every", "least", "fill_for", "at_most",
        "1 chores a day", "2 chores a day", "3 chores a day", "chores left out", "scale stated",
        "holds by age", "holds at any age", "vessels the old way", "vessels far too small", "move and feed change together",
        *(f"{n} stages in a hatch" for n in (1, 2, 3)), *(f"{n} courses in a hatch" for n in (1, 2, 3)),
        "course on a day", "course from an age", "supplement the old way", "drinkers filled with the solution",
        *(f"supplement {way}" for way in ("by weight", "by spoon", "by measure", "stock alone", "stock beside a rate")),
        *(f"solution keeps {k}" for k in (None, "6 h", "8 h", "24 h", "3 d")), "spoon", "sodium",
        "warmth stated", "no warmth stated", "a hot barn", "feed on hand", "feed to spare", "fractions as text",
        "units = us", "units = metric", "units = uk",
        *(f"unit {u}" for u in ("lb", "kg", "g", "gal", "imp gal", "qt", "L", "ft3", "d", "wk", "h",
                                "degF", "degC", "in", "cm", "kcal/kg", "MJ/kg")),
        *(f"kind {k}" for k in rations.kinds),
        *MET_IN_ANSWERS,
    ]
