"""Is an answer of `cropful plan --json` right?  Every figure is worked out anew, but for what the program's law of
probability gives: p05, p50 and p95, what is drunk at the 95 % point, and the level of a hopper filled to last at the safe
end.  Those are held to what must follow from them and from one another."""

import collections
import datetime as dt
import math
import re

from flock import INSTANT, Hatch
from quantities import UNITS, split_text, value

TOLERANCE = 1e-9          # relative, for every number compared
SAFE_END = 1e-3           # days; p05 against the time a hopper was filled for
BAND = ("p05", "p50", "p95")
DOSES = ("water_l", "product_g", "product_ml", "stock_ml", "stock_product_g")

Stretch = collections.namedtuple("Stretch", "feed step start end whole")


# ------------------------------------------------------------------- buying


def whole_bags(table, need):
    """Bags of one feed for a need in kg, with what is to spare, less what is on hand; None where a rounding decides it."""
    need += value(table["spare"], "mass") if "spare" in table else 0.0
    x = (need - (value(table["on_hand"], "mass") if "on_hand" in table else 0.0)) / value(table["bag"], "mass")
    if abs(x - round(x)) < 1e-9 * max(1.0, abs(x)) and need > 0 and round(x) >= 0:
        return None
    return max(0, math.ceil(x))


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
    (supplement, sums of its batches).  packs is None without a pack or where the product is not known in its terms, and
    "either" where a rounding decides it."""
    out = {}
    for key, table in farm.get("supplement", {}).items():
        parts = [m for s, m in mixes if s == key]
        if not parts:
            continue
        total = {k: None if any(m[k] is None for m in parts) else math.fsum(m[k] for m in parts)
                 for k in ("product_g", "product_ml")}
        packs, cost = packs_of(table, total["product_g"], total["product_ml"])
        out[key] = (total["product_g"], total["product_ml"], packs, cost)
    return out


def summed(batches):
    """The sums of a course, under the keys of the answer."""
    return {key: None if any(b[key] is None for b in batches) else math.fsum(b[key] for b in batches) for key in DOSES}


# ---------------------------------------------------------------- comparison


class Report:
    def __init__(self):
        self.worst = (0.0, "nothing compared")
        self.numbers = 0
        self.faults = []

    def same(self, where, got, want, floor=0.0):
        self.numbers += 1
        if not is_number(got):
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

    def within(self, where, got, low, high):
        self.numbers += 1
        slack = TOLERANCE * max(abs(low), abs(high))
        if not is_number(got) or not low - slack <= got <= high + slack:
            self.faults.append(f"{where}: program {got!r}, here from {low!r} to {high!r}")

    def band(self, where, got, central):
        """p05 <= p50 <= p95 as printed, with the central figure strictly inside."""
        self.numbers += len(BAND)
        ends = [got.get(key) for key in BAND]
        if not all(is_number(v) for v in (*ends, central)):
            self.faults.append(f"{where}: numbers were expected as {', '.join(BAND)}, found {ends!r}")
        elif not (0 <= ends[0] <= ends[1] <= ends[2] and ends[0] < central < ends[2]):
            self.faults.append(f"{where}: {ends!r} do not rise, or {central!r} is not inside them")

    def moment(self, where, got, want, exact=True):
        """A date text, to its own resolution; `exact`: on the minute where the moment is one."""
        self.numbers += 1
        text = str(got)
        try:
            seen = dt.datetime.fromisoformat(text.strip())
            seen = seen.replace(tzinfo=None)
        except ValueError:
            self.faults.append(f"{where}: {got!r} is not an ISO date and time")
            return
        clock = re.search(r"\d\d:\d\d(:\d\d)?", text)
        on_the_minute = exact and abs((want.second + want.microsecond / 1e6 + 30) % 60 - 30) < 0.01
        grain = 86400 if not clock else 1 if clock.group(1) or on_the_minute else 60
        if abs((seen - want).total_seconds()) > grain:
            self.faults.append(f"{where}: program {got!r}, here {want.isoformat(sep=' ')}")


def is_number(v):
    return isinstance(v, (int, float)) and not isinstance(v, bool) and math.isfinite(v)


def check_every_fill(report, where, hatch, span, fills, demand, count, unit, contents, brims, seen):
    """What holds of each fill of one sort of vessel by itself.  `contents` is what one vessel holds at each, `brims` what
    it holds when full, by which a small use is judged.  Gives back the ages, or None where there are none to go by."""
    first, end = span
    ages = [f["age_d"] for f in fills]
    last_for = [f["empty_after_d"] for f in fills]
    safe_for = [f["p05"] for f in fills]
    for label, numbers in (("age_d", ages), ("empty_after_d", last_for), ("p05", safe_for)):
        if not all(is_number(v) for v in numbers):
            report.faults.append(f"{where}: {label} is not a number throughout")
            return None
    if any(b <= a for a, b in zip(ages, ages[1:])) or min(*last_for, *safe_for) <= 0:
        report.faults.append(f"{where}: ages of the fills do not rise, or a fill lasts no time")
        return None
    if ages[-1] >= end - INSTANT or ages[0] < first - INSTANT:
        report.faults.append(f"{where}: fills from {ages[0]!r} to {ages[-1]!r} d, not within {first!r} to {end!r} d")
        return None

    ends = ages[1:] + [end]
    goes_on = hatch.feed if unit == "kg" else hatch.water        # past the stage as the flock goes on
    to_empty = goes_on.batch(ages, [a + t for a, t in zip(ages, last_for)]) / count
    used = demand.batch(ages, ends) / count
    birds = hatch.birds(ages)
    picks = {0, len(fills) // 3, 2 * len(fills) // 3, len(fills) - 1}
    for k, fill in enumerate(fills):
        at = f"{where} fill {k + 1} of {len(fills)} (day {ages[k]:.3f})"
        report.same(f"{at} birds", fill["birds"], float(birds[k]))
        # a fill cut short just after it began uses next to nothing: judge that by the vessel
        report.same(f"{at} used_{unit}", fill[f"used_{unit}"], float(used[k]), floor=1e-4 * brims[k])
        report.same(f"{at} taken by its empty_after_d against its content", float(to_empty[k]), contents[k])
        report.moment(f"{at} at", fill["at"], moment(hatch, ages[k]))
        report.moment(f"{at} do_at", fill["do_at"], moment(hatch, hatch.clock.last(ages[k])))
        report.moment(f"{at} until", fill["until"], moment(hatch, ends[k]))
        report.moment(f"{at} empty_at", fill["empty_at"], moment(hatch, ages[k] + last_for[k]), exact=False)
        report.band(f"{at} how long it lasts", fill, last_for[k])
        if k in picks:
            report.same(f"{at} empty_after_d against brentq", last_for[k], goes_on.lasts(ages[k], contents[k] * count))
            seen["roots found"] += 1
    total = math.fsum(f[f"used_{unit}"] for f in fills) * count
    report.same(f"{where}: all fills together against the whole need", total, demand.over(ages[0], end))
    seen["fills"] += len(fills)
    return ages


def moment(hatch, age):
    """To the nearest second where an age is that near to one."""
    exact = hatch.date + dt.timedelta(days=age)
    near = (exact + dt.timedelta(microseconds=500_000)).replace(microsecond=0)
    return near if abs(exact - near) < dt.timedelta(milliseconds=1) else exact


def check_would_do(report, at, got, demand, count, now, until, lasts, brim):
    """So many vessels would have lasted until the next visit: what the safe end says of those there are, scaled."""
    report.numbers += 1
    if not isinstance(got, int) or got <= count:
        report.faults.append(f"{at} would_do: program {got!r}, here more than {count}")
        return
    safe = brim * count / demand.over(now, now + lasts)
    needed = safe * demand.over(now, until) / brim
    if not math.ceil(0.95 * needed) <= got <= math.ceil(1.05 * needed):
        report.faults.append(f"{at} would_do: program {got!r}, here about {needed:.3f}")


def stretches(hatch, stage, span):
    """The times of one feed in one stage, up to the end asked for; `whole` where the first fill is not before it."""
    out = []
    for i, s in enumerate(hatch.steps):
        a, b = max(s.start, stage.start), min(s.end, stage.end, span[1])
        if a < b - INSTANT and b > span[0] + INSTANT:
            out.append(Stretch(s.feed, i, a, b, a >= span[0] - INSTANT))
    return out


def check_hoppers(report, where, hatch, stage, span, got, hungry, seen):
    """The fills of a stage's hoppers.  `hungry` gives, by feed, how much more than usual the safe flock eats.  Gives back
    [(feed, kg put in, kg missing at the end, whether fills were left out)]."""
    hopper, count, fills, out = stage.hopper, got["count"], got["fills"], []
    feed = stage.feed
    parts = stretches(hatch, stage, span)
    inside = [[k for k, f in enumerate(fills) if is_number(f["age_d"]) and p.start - INSTANT <= f["age_d"] < p.end - INSTANT]
              for p in parts]
    if sum(map(len, inside)) != len(fills):
        report.faults.append(f"{where}: {len(fills)} fills, {sum(map(len, inside))} of them within the stage")
        return out
    step_of = [p.step for p, ks in zip(parts, inside) for _ in ks]
    if fills:
        contents = [f["content_kg"] for f in fills]
        if not all(is_number(c) and c > 0 for c in contents):
            report.faults.append(f"{where}: content_kg is not a number above 0 throughout")
            return out
        ages = check_every_fill(report, where, hatch, (max(span[0], stage.start), min(span[1], stage.end)), fills, feed,
                                count, "kg", contents, [hopper.usable[i] for i in step_of], seen)
        if ages is None:
            return out

    for p, ks in zip(parts, inside):
        behind = hopper.behind[p.step] * count
        if not ks:
            if p.whole:
                report.faults.append(f"{where}: no fill for {p.feed!r} from day {p.start!r}")
            elif p.end - span[0] > hopper.days_ahead(math.inf) + 1:
                report.faults.append(f"{where}: nothing is put in from day {span[0]!r} to {p.end!r}")
            else:
                seen["the last fill was before the time asked for"] += 1
            out.append((p.feed, 0.0, 0.0, not p.whole))
            continue
        brim, more = hopper.usable[p.step] * count, hungry.get(p.feed, 1.0)
        now = [ages[k] for k in ks]
        aims = [min(hatch.clock.reach(t, t + hopper.days_ahead(t))[0], p.end) for t in now]
        to_aim = more * feed.batch(now, aims)
        to_end = more * feed.batch(now, [p.end] * len(ks))
        until = now[1:] + [p.end]
        eaten = more * feed.batch(now, until)
        if p.whole:
            report.same(f"{where}: first fill of {p.feed!r}", now[0], p.start, floor=1.0)
        else:
            report.same(f"{where}: first fill of {p.feed!r} at a chore", now[0], hatch.clock.last(now[0]), floor=1.0)
            report.within(f"{where}: first fill of {p.feed!r}", now[0], span[0] - INSTANT,
                          span[0] + hopper.days_ahead(math.inf) + 1)
        left = 0.0 if p.whole else None
        for j, k in enumerate(ks):
            fill, t = fills[k], now[j]
            at = f"{where} fill {k + 1} of {len(fills)} (day {t:.3f})"
            level, lasts = fill["content_kg"] * count, fill["p05"]
            ahead = aims[j] - t
            wait = None                 # None: would_do must be null; else whether it must not be
            next_visit = aims[j]
            if aims[j] >= p.end - INSTANT and to_end[j] <= brim * (1 + 1e-12):
                report.same(f"{at} level of the last fill of {p.feed!r}", level, float(to_end[j]))
                seen["hopper filled for the rest"] += 1
            elif level >= brim * (1 - 1e-12):
                report.same(f"{at} level of a full hopper", level, brim)
                report.numbers += 1
                if to_aim[j] < brim * (1 - 1e-9) and lasts > ahead + SAFE_END:
                    report.faults.append(f"{at}: filled to the brim, which lasts {lasts!r} d, for {ahead!r} d")
                visit, none = hatch.clock.reach(t, t + lasts)
                next_visit = min(visit, aims[j])
                if none:
                    wait = next_visit > t + lasts
                seen["hopper filled to the brim"] += 1
            else:
                report.within(f"{at} level", level, float(to_aim[j]), min(brim, float(to_end[j])))
                report.numbers += 1
                if math.isclose(level, to_aim[j], rel_tol=1e-9):
                    ok = lasts >= ahead - SAFE_END
                    seen["hopper filled for hungry birds"] += 1
                elif math.isclose(level, to_end[j], rel_tol=1e-9):
                    ok = lasts <= ahead + SAFE_END
                    seen["hopper filled with all that is left to eat"] += 1
                else:
                    ok = abs(lasts - ahead) <= SAFE_END
                    seen["hopper filled in part for the safe end"] += 1
                if not ok:
                    report.faults.append(f"{at}: {level!r} kg last {lasts!r} d at the safe end, but are for {ahead!r} d")
            report.same(f"{at} age of the next visit", until[j], next_visit, floor=1.0)
            if wait is None:
                report.equal(f"{at} would_do", fill["would_do"], None)
            elif wait or fill["would_do"] is not None:
                check_would_do(report, at, fill["would_do"], feed, count, t, until[j], lasts, hopper.usable[p.step])
                seen["too few hoppers"] += 1
            put_in, first = fill["put_in_kg"], p.whole and j == 0
            # what too few hoppers lack in the end is on the account of the last fill
            lacks = max(0.0, float(eaten[j]) - level) if k == ks[-1] else 0.0
            if left is not None:
                report.same(f"{at} put_in_kg", put_in, level - left + (behind if first else 0.0) + lacks,
                            floor=1e-3 * brim)
            else:
                report.within(f"{at} put_in_kg", put_in, 0.0, math.inf)
            report.same(f"{at} share_of_full", fill["share_of_full"], (level + behind) / (brim + behind))
            left = level - float(eaten[j])
        if left > 1e-9 * brim:
            report.faults.append(f"{where}: {left!r} kg of {p.feed!r} are left over on day {p.end!r}")
        seen["a feed that changes within a stage"] += p.start > stage.start + INSTANT
        seen["hopper too small to the end"] += left < -1e-9 * brim
        out.append((p.feed, math.fsum(fills[k]["put_in_kg"] for k in ks), 0.0, not p.whole))
    return out


def check_batch(report, at, hatch, course, stage, count, now, until, got, seen):
    """One batch against what it serves."""
    sure = got["drunk_p95_l"]
    if not is_number(sure):
        report.faults.append(f"{at} drunk_p95_l: {sure!r}")
        return
    want = hatch.batch(course, stage, count, now, until, sure)
    report.within(f"{at} drunk_p95_l", sure, want["drunk_l"], 3 * want["drunk_l"])
    for key in ("age_d", "lasts_d", "drunk_l", "each_drinker_l", *DOSES):
        report.maybe(f"{at} {key}", got[key], want[key])
    report.same(f"{at} thrown_l", got["thrown_l"], want["thrown_l"], floor=want["water_l"])
    report.moment(f"{at} at", got["at"], moment(hatch, now))
    report.within(f"{at} water_l against what is poured", got["water_l"], got["each_drinker_l"] * count, math.inf)
    if course.product.parts is not None:
        seen["batch through a proportioner"] += 1
    elif course.product.full:
        seen["batch that fills the drinkers"] += 1
    else:
        seen["batch measured out"] += 1
    seen["troughs add to a batch"] += stage.drinker.least_l > 0
    seen["drinkers hold less than their share"] += want["each_drinker_l"] == stage.drinker.brim_l


def check_drinkers(report, where, hatch, stage, span, got, batches, seen):
    """The fills of a stage's drinkers and the batches mixed for them, which are taken out of `batches`, by age."""
    drinker, count, fills = stage.drinker, got["count"], got["fills"]
    first, end = max(span[0], stage.start), min(span[1], stage.end)
    whole = stage.start >= span[0] - INSTANT
    if not fills:
        if whole:
            report.faults.append(f"{where}: no fills")
        return
    courses = [hatch.course_at(f["age_d"]) if is_number(f["age_d"]) else None for f in fills]
    mixed = []
    for f, course in zip(fills, courses):
        age = f["age_d"]
        found = min((b for b in batches if course), key=lambda b: abs(b["age_d"] - age), default=None)
        mixed.append(found if found and abs(found["age_d"] - age) < 1e-6 else None)
    contents = [drinker.brim_l if course is None else b["each_drinker_l"] if b else 0.0 for course, b in zip(courses, mixed)]
    for f, course, b, content in zip(fills, courses, mixed, contents):
        if course and not b:
            report.faults.append(f"{where}: no batch of {course.supplement!r} for the drinkers on day {f['age_d']!r}")
            return
        report.same(f"{where} (day {f['age_d']:.3f}) content_l", f["content_l"], content)
        report.same(f"{where} (day {f['age_d']:.3f}) share_of_full", f["share_of_full"], content / drinker.brim_l)
    ages = check_every_fill(report, where, hatch, (first, end), fills, stage.water, count, "l", contents,
                            [drinker.brim_l] * len(fills), seen)
    if ages is None:
        return
    if whole:
        report.same(f"{where}: age of the first fill", ages[0], stage.start, floor=1.0)
    else:
        report.same(f"{where}: first fill at a chore", ages[0], hatch.clock.last(ages[0]), floor=1.0)

    fresh, changed = (True, stage.start) if whole else (None, None)      # None: filled before the time asked for
    for k, fill in enumerate(fills):
        at = f"{where} fill {k + 1} of {len(fills)} (day {ages[k]:.3f})"
        now, until, course, lasts = ages[k], (ages + [end])[k + 1], courses[k], fill["p05"]
        if course:
            fresh = True
        if fresh:
            changed = now
            report.same(f"{at} put_in_l", fill["put_in_l"], contents[k] * count)
            seen["water changed"] += 1
        elif fresh is False:
            report.within(f"{at} put_in_l", fill["put_in_l"], min(fills[k - 1]["used_l"], drinker.brim_l) * count,
                          drinker.brim_l * count)
            seen["drinkers topped up"] += 1
        if changed is not None:
            due = hatch.water_due(drinker, now, changed)
            # as the first stage had it: the sooner of dry (usual) and due
            report.maybe(f"{at} change_after_d", fill["change_after_d"],
                         min(due - now, fill["empty_after_d"]) if due <= end + INSTANT else None)
        else:
            told = fill["change_after_d"]
            due = now + told if told is not None and told < fill["empty_after_d"] * (1 - 1e-12) else None
        if course:
            check_batch(report, f"{where} batch on day {now:.3f}", hatch, course, stage, count, now, until, mixed[k], seen)
            batches.remove(mixed[k])
            seen["last batch cut short"] += until < now + course.product.batch - 0.1
            seen["batch past its life"] += until > now + course.product.batch + INSTANT

        # the next visit; the safe end of a full drinker is printed where it is filled to the brim
        at_least = lasts
        at_most = lasts if contents[k] == drinker.brim_l else stage.water.lasts(now, drinker.brim_l * count)
        ends = []
        if due is not None:
            change = hatch.clock.reach(now, due)[0] if due < math.inf else math.inf
            for t in (at_least, at_most):
                visit, none = hatch.clock.reach(now, now + t)
                ends.append((min(change, end, visit), none))
            if at_least == at_most:
                report.same(f"{at} age of the next visit", until, ends[0][0], floor=1.0)
            else:
                report.within(f"{at} age of the next visit", until, ends[0][0], ends[1][0])
            if change <= end and change < hatch.clock.reach(now, now + at_least)[0]:
                seen["water changed before dry"] += 1
                seen["solution changed before dry"] += course is not None
            elif change < end:
                seen["dry before the water is changed"] += 1
        else:
            change = None
        if until > now + at_most * (1 + 1e-12):
            if at_least == at_most:
                check_would_do(report, at, fill["would_do"], stage.water, count, now, until, lasts, drinker.brim_l)
            seen["too few drinkers"] += 1
        elif until <= now + at_least and not (ends and ends[0][1]):
            report.equal(f"{at} would_do", fill["would_do"], None)

        if course or (change is not None and abs(until - change) < 1e-6):
            fresh = True
        elif changed is not None:
            fresh = False
        else:
            fresh = None
    if fresh is not None and ages[-1] < end:
        seen["drinkers followed to the end"] += 1


def check_courses(report, where, hatch, span, answer, seen):
    """The courses as they are written, and the sums of their batches.  Gives back [(supplement, sums)] and all batches."""
    got = answer["mixes"]
    report.equal(f"{where} courses", [m["supplement"] for m in got], [c.supplement for c in hatch.courses])
    sums, every = [], []
    pairs = [(m, min(hatch.courses, key=lambda c: abs(c.start - m["from_d"]), default=None)) for m in got]
    for m, c in pairs:
        if c is None:
            continue
        here = f"{where} course of {c.supplement!r} from day {c.start:.3f}"
        report.equal(f"{here} supplement", m["supplement"], c.supplement)
        report.same(f"{here} from_d", m["from_d"], c.start, floor=1.0)
        report.same(f"{here} to_d", m["to_d"], c.end, floor=1.0)
        report.maybe(f"{here} per_l_g", m["per_l_g"], c.product.per_l_g)
        report.maybe(f"{here} sodium_mg_per_l", m["sodium_mg_per_l"], c.product.sodium_mg_per_l)
        total = summed(m["batches"])
        for key in DOSES:
            unknown = key != "water_l" and c.product.dose(1.0)[key] is None
            report.maybe(f"{here} {key}", m[key], None if unknown else total[key])
        for b in m["batches"]:
            report.within(f"{here} age of a batch", b["age_d"], max(c.first, span[0]), min(c.last, span[1]))
        if m["batches"]:
            sums.append((c.supplement, total))
            every += m["batches"]
    if got:
        report.equal(f"{where} mix", answer["mix"], next((m for m in got if m["batches"]), answer["mix"]))
    else:
        report.equal(f"{where} mix", answer["mix"], None)
    seen["course outside the time asked for"] += any(c.last <= span[0] or c.first >= span[1] for c in hatch.courses)
    seen["two courses"] += len(hatch.courses) > 1
    return sums, list(every)


def check_houses(report, where, hatch, stage, got, used_until, seen):
    """How many houses, and that nobody stands in two places."""
    report.equal(f"{where} house", got["house"], stage.house)
    want = hatch.houses_used(stage)
    if want is None or (stage.house and "eggs" in hatch.table and "hatch_rate" not in hatch.table and not stage.fixed):
        seen["houses left to rounding"] += 1
    else:
        report.equal(f"{where} houses", got["houses"], want)
    if stage.house is None:
        report.equal(f"{where} numbers", got["numbers"], [])
        return
    table = hatch.houses[stage.house]
    seen["houses fixed" if stage.fixed else "houses counted"] += 1
    seen["several houses in a stage"] += got["houses"] > 1
    seen["too few houses"] += len(got["numbers"]) < got["houses"]
    if not got["numbers"]:
        return
    report.equal(f"{where} numbers", len(set(got["numbers"])), got["houses"])
    report.numbers += 1
    if not set(got["numbers"]) <= set(range(1, table["count"] + 1)):
        report.faults.append(f"{where} numbers: {got['numbers']!r} of {table['count']}")
    rest = value(table["rest"], "time") if "rest" in table else 0.0
    begins, ends = (hatch.date + dt.timedelta(days=a) for a in (stage.start, stage.end))
    for n in got["numbers"]:
        used_until[stage.house, n].append((begins, ends, rest, where))


def check_purchases(report, farm, needs, got, packs, fed, seen):
    """What to buy of each feed: the whole need, what goes into the hoppers, bags at each point of the band, and their
    sums.  `fed` is {feed: [(kg put in, kg missing, whether fills were left out)]} and, under (feed, "behind"), the kg that
    stay behind."""
    feeds_of = collections.defaultdict(list)
    for (name, i), (feed, amount) in needs.items():
        feeds_of[feed].append((name, i, amount))
    rows = {b["feed"]: b for b in got["buy"]}
    report.equal("feeds to buy", sorted(rows), sorted(feeds_of))
    safe_cost, bags, usual_bags = [p[1] or 0.0 for p in packs.values()], 0, 0
    open_ended = any(p[0] == "either" for p in packs.values())
    for feed in rows.keys() & feeds_of.keys():
        row, table, here = rows[feed], farm["feed"][feed], f"to buy of {feed!r}"
        need = math.fsum(amount for _, _, amount in feeds_of[feed])
        report.same(f"{here} feed_kg", row["feed_kg"], need)
        report.band(f"{here} need", row, row["feed_kg"])
        if not all(is_number(row[key]) for key in (*BAND, "put_in_kg", "stays_behind_kg", "in_hoppers_kg")):
            report.faults.append(f"{here}: numbers are missing")
            continue
        parts_of_answer = [a["feeds"][i] for name, i, _ in feeds_of[feed] for a in got["hatches"] if a["name"] == name]
        if len(parts_of_answer) == 1:     # one part alone is the whole
            for key in BAND:
                report.same(f"{here} {key} against its only part", row[key], parts_of_answer[0][key])
            seen["need of one part alone"] += 1
        report.equal(f"{here} bags against its parts", row["bags"], sum(p["bags"] for p in parts_of_answer))

        # one account with the hoppers
        stays = math.fsum(fed[feed, "behind"])
        report.same(f"{here} stays_behind_kg", row["stays_behind_kg"], stays, floor=1e-3 * row["feed_kg"])
        put_in = math.fsum(kg for kg, _, _ in fed[feed])
        report.same(f"{here} put_in_kg and stays_behind_kg against all fills", row["put_in_kg"] + row["stays_behind_kg"],
                    put_in, floor=1e-3 * row["feed_kg"])
        missing = math.fsum(kg for _, kg, _ in fed[feed])
        report.same(f"{here} put_in_kg and in_hoppers_kg against the hungry need",
                    row["put_in_kg"] + row["in_hoppers_kg"] + missing, row["p95"])
        if any(left_out for _, _, left_out in fed[feed]):
            seen["feed in the hoppers before the time asked for"] += 1
        else:
            report.same(f"{here} in_hoppers_kg", row["in_hoppers_kg"], 0.0, floor=row["feed_kg"])
        for key, words in (("stock_kg", "on_hand"), ("spare_kg", "spare")):
            report.same(f"{here} {key}", row[key], value(table[words], "mass") if words in table else 0.0)
        report.same(f"{here} bought_kg", row["bought_kg"], row["bags_p95"] * value(table["bag"], "mass"))

        there = row["in_hoppers_kg"]
        wanted = {"bags": whole_bags(table, max(0.0, need - there) + stays),
                  "bags_p95": whole_bags(table, row["put_in_kg"] + stays),
                  **{f"bags_{key}": whole_bags(table, max(0.0, row[key] - there) + stays) for key in ("p05", "p50")}}
        for key, n in wanted.items():
            if n is None:
                seen["bag counts left to rounding"] += 1
            else:
                report.equal(f"{here} {key}", row[key], n)
        counts = [row[f"bags_{key}"] for key in BAND]
        if counts != sorted(counts) and not missing:
            report.faults.append(f"{here}: bags {counts!r} do not rise")
        seen["more bags for the safe end"] += counts[2] > row["bags"]
        report.same(f"{here} cost_p95", row["cost_p95"], row["bags_p95"] * table["price"])
        bags += row["bags_p95"]
        usual_bags += row["bags"]
        safe_cost.append(row["cost_p95"])
    report.equal("total bags_p95", got["total"]["bags_p95"], bags)
    report.equal("total bags", got["total"]["bags"], usual_bags)
    if not open_ended:
        report.same("total cost_p95", got["total"]["cost_p95"], math.fsum(safe_cost))


def check_shares(report, farm, got, parts, needs, seen):
    """Each hatch's bags of a feed: what is to be over in the end is set aside; then hatches by date, each taking what the
    one before left in its last bag."""
    rows = {b["feed"]: b for b in got["buy"]}
    for feed, of_feed in parts.items():
        if feed not in rows or rows[feed]["in_hoppers_kg"]:
            continue
        run, before = rows[feed]["stays_behind_kg"], 0
        for h, i, f in sorted(of_feed, key=lambda p: p[0].date):
            run += needs[h.name, i][1]
            after = whole_bags(farm["feed"][feed], run)
            if before is None or after is None:
                seen["bag counts left to rounding"] += 1
            else:
                report.equal(f"hatch {h.name!r} bags of {feed!r}", f["bags"], after - before)
            before = after
        seen["bags shared by hatches"] += len(of_feed) > 1


def check_packs(report, farm, bought, packs, seen):
    """{supplement: (packs, cost)}: what is mixed is bought, whether the flock is usual or not."""
    out = {}
    report.equal("supplements to buy", sorted(bought), sorted(packs))
    for key in bought.keys() & packs.keys():
        product_g, product_ml, number, cost = packs[key]
        row = bought[key]
        out[key] = number, cost
        for end in ("", "_p95"):
            report.maybe(f"supplement {key!r} product_g{end}", row["product_g" + end], product_g)
            report.maybe(f"supplement {key!r} product_ml{end}", row["product_ml" + end], product_ml)
            if number != "either":
                report.equal(f"supplement {key!r} packs{end}", row["packs" + end], number)
                report.maybe(f"supplement {key!r} cost{end}", row["cost" + end], cost)
                seen["packs to buy"] += number is not None
    return out


def compare(farm, rations, got, seen, window=(None, None)):
    """Differences between one farm's answer and this file's own working.  `window` holds two moments or None: fills and
    batches before it are left out, and the birds leave at its end."""
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
    hungry = {b["feed"]: b["p95"] / b["feed_kg"] for b in got["buy"]}
    parts = collections.defaultdict(list)        # of the answer, by feed
    mixes, fed, used_until = [], collections.defaultdict(list), collections.defaultdict(list)

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
            parts[s.feed].append((h, i, f))
            report.same(f"{here} from_d", f["from_d"], s.start, floor=1.0)
            report.same(f"{here} to_d", f["to_d"], s.end, floor=1.0)
            report.same(f"{here} feed_kg", f["feed_kg"], needs[h.name, i][1])
            report.band(f"{here} need", f, f["feed_kg"])
            report.same(f"{here} cost", f["cost"], f["bags"] * farm["feed"][s.feed]["price"])
            seen["no bag to buy" if f["bags"] == 0 else "bags to buy"] += 1

        sums, batches = check_courses(report, w, h, span, a, seen)
        mixes += sums
        stages = [s for s in h.stages if min(s.end, span[1]) > max(s.start, span[0]) + INSTANT]
        report.equal(f"{w} number of stages", len(a["stages"]), len(stages))
        for n, (g, s) in enumerate(zip(a["stages"], stages)):
            here = f"{w} stage {n + 1} of {len(stages)}" if len(stages) > 1 else w
            report.same(f"{here} from_d", g["from_d"], max(s.start, span[0]), floor=1.0)
            report.same(f"{here} to_d", g["to_d"], min(s.end, span[1]), floor=1.0)
            check_houses(report, here, h, s, g, used_until, seen)
            for key, vessel, each in (("hoppers", s.hopper, s.hoppers), ("drinkers", s.drinker, s.drinkers)):
                if vessel is None:
                    report.equal(f"{here} {key}", g[key], None)
                    seen[f"no {key} in a stage"] += 1
                    continue
                report.equal(f"{here} {key[:-1]}", g[key][key[:-1]], vessel.name)
                report.equal(f"{here} count of {key}", g[key]["count"], each * g["houses"])
            if s.hopper and g["hoppers"]:
                for p in stretches(h, s, span):
                    if p.whole:
                        fed[p.feed, "behind"].append(s.hopper.behind[p.step] * g["hoppers"]["count"])
                for feed, *row in check_hoppers(report, f"{here} hopper", h, s, span, g["hoppers"], hungry, seen):
                    fed[feed].append(row)
            elif not s.hopper:
                for p in stretches(h, s, span):
                    fed[p.feed].append((hungry.get(p.feed, 1.0) * s.feed.over(max(p.start, span[0]), p.end), 0.0, False))
            if s.drinker and g["drinkers"]:
                check_drinkers(report, f"{here} drinker", h, s, span, g["drinkers"], batches, seen)
        seen[f"{len(h.stages)} stages"] += 1
        report.equal(f"{w} batches for no drinker", [b["age_d"] for b in batches], [])
        if a["stages"]:
            report.equal(f"{w} hoppers", a["hoppers"], a["stages"][0]["hoppers"])
            report.equal(f"{w} drinkers", a["drinkers"], a["stages"][0]["drinkers"])

    for (house, n), times in used_until.items():
        times.sort(key=lambda t: t[:2])
        for (_, ends, rest, one), (begins, _, _, other) in zip(times, times[1:]):
            report.numbers += 1
            if begins < ends + dt.timedelta(days=rest - 1e-6):
                report.faults.append(f"{house} {n}: {other} moves in at {begins}, {one} leaves at {ends} and it rests {rest} d")

    bought = {b["supplement"]: b for b in got["supplements"]}
    packs = packs_to_buy(farm, mixes)
    check_purchases(report, farm, needs, got, check_packs(report, farm, bought, packs, seen), fed, seen)
    check_shares(report, farm, got, parts, needs, seen)
    if all(p[2] != "either" for p in packs.values()):
        report.same("total cost", got["total"]["cost"],
                    math.fsum([f["cost"] for a in got["hatches"] for f in a["feeds"]] + [p[3] or 0.0 for p in packs.values()]))
    return report
