#!/usr/bin/python3
"""Random small seasons, each shopped for by `PROGRAM buy FARM --plan --json` and by trying everything (brute.py).

random_trips.py PROGRAM [COUNT]     random_trips.py --self-test

Compared: whether there is a plan at all; its least cost, to 1e-6; the plan itself, followed day by day: nothing missing,
nothing fed too old or too soon, the store never too full, costs and waste as stated. What birds eat by days is read
from the answer, one figure for each day of the season, which may begin and end at any minute; its sum over the days must
be what `plan --json` puts in and buys, for the farm, in every fifth season."""
import json
import math
import pathlib
import random
import subprocess
import sys
import tempfile
from datetime import date, datetime, time, timedelta

import brute

SEED, TOLERANCE = 20270405, 1e-6
START = date(2027, 4, 5)  # a Monday
WEEKDAYS = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"]


def rounded(x, digits):
    return round(x, digits)


def random_farm(rng):
    """A farm as its file says it. With `holds` the search is over all feeds at once, so there is less to search."""
    joint = rng.random() < 0.25
    feeds = rng.choice([1, 2] if joint else [1, 1, 2, 2, 3])
    weekly = rng.choice([None, 1, 2])
    length = rng.randint(4, 5 if joint else 8) if weekly is None else rng.randint(12, 20 if weekly == 2 else 40)
    if joint and weekly:
        length = min(length, 7 * (3 if weekly == 2 else 5) - 2)
    chicks = rng.randint(20, 200)
    age = rng.randint(7, 40)
    steps = sorted(rng.sample(range(age + 1, age + length), feeds - 1))
    farm = {"chicks": chicks, "age": age, "length": length, "steps": [0, *steps], "feeds": {}, "joint": joint,
            "trip": rng.choice([0, rounded(rng.uniform(1, 40), 2)]),
            "keeping": rng.choice([None, rounded(rng.uniform(0.05, 5), 2)]),
            "lead": rng.choice([0, 0, 1, 2]),
            "trips": sorted(rng.sample(WEEKDAYS, weekly), key=WEEKDAYS.index) if weekly else None,
            "second": rng.choice([None, rng.randint(1, length - 1)]) if feeds == 1 else None}
    day_kg = chicks * 0.012
    for i in range(feeds):
        eaten = day_kg * (([*steps, age + length][i]) - ([age, *steps][i]))
        size = rounded(max(0.5, eaten / rng.uniform(1.2, 2.5 if joint else 3 if feeds > 1 else 4.5)), 3)
        price = rounded(size * rng.uniform(0.4, 1.5), 2)
        bags = [(size, price, 1)]
        if rng.random() < 0.4:
            bags.append((size, rounded(price * rng.uniform(0.5, 0.97), 2), rng.randint(2, 3)))
        if rng.random() < (0.35 if feeds == 1 else 0.2):
            small = rounded(size * rng.choice([0.5, 0.6, 0.7]), 3)
            bags.append((small, rounded(price * small / size * rng.uniform(0.95, 1.4), 2), 1))
        farm["feeds"][f"f{i}"] = {
            "bags": bags, "keeps": rng.choice([None, rng.randint(2, max(3, length))]),
            "on_hand": rng.choice([0, 0, rounded(eaten * rng.uniform(0.05, 0.6), 3)]),
            "spare": rng.choice([0, 0, 0, rounded(day_kg, 3)])}
    biggest = max(b[0] for f in farm["feeds"].values() for b in f["bags"])
    farm["holds"] = rounded(rng.uniform(0.5, 1.5) * (feeds * biggest + 3 * day_kg), 3) if joint else None
    # Minutes: the hatch's time of day, how late on the first day the season begins and how early on its last it ends.
    farm["hour"], farm["late"], farm["early"] = (rng.choice([0, 0, 2, 960, rng.randrange(1, 1440)]) for _ in range(3))
    farm["until"] = rng.random() < 0.5  # ends the season itself, to the minute
    return farm


def window(farm):
    """The first and the last moment of a season that eats on all its days."""
    midnight = datetime.combine(START, time())
    return (midnight + timedelta(minutes=farm["late"]),
            midnight + timedelta(days=farm["length"]) - timedelta(minutes=farm["early"]))


def as_toml(farm):
    lines = ["[farm]", 'name = "random"', 'units = "metric"', "[store]", f"trip = {farm['trip']}",
             f'lead = "{farm["lead"]} d"']
    lines += [f'keeping = "{farm["keeping"]} per kg"'] if farm["keeping"] else []
    lines += [f'holds = "{farm["holds"]} kg"'] if farm["holds"] else []
    lines += [f"trips = {json.dumps(farm['trips'])}"] if farm["trips"] else []
    for name, feed in farm["feeds"].items():
        bags = ", ".join(f'{{ size = "{s} kg", price = {p}' + (f", from = {n} }}" if n > 1 else " }")
                         for s, p, n in feed["bags"])
        lines += [f"[feed.{name}]", 'protein = "24 %"', f"bags = [{bags}]"]
        lines += [f'keeps = "{feed["keeps"]} d"'] if feed["keeps"] else []
        lines += [f'{key} = "{feed[key]} kg"' for key in ("on_hand", "spare") if feed[key]]
    feeding = ", ".join(f'{{ feed = "{name}", from = "{step} d" }}' for name, step in zip(farm["feeds"], farm["steps"]))
    hatched = datetime.combine(START, time()) - timedelta(days=farm["age"]) + timedelta(minutes=farm["hour"])
    minutes = int((window(farm)[1] - hatched) / timedelta(minutes=1))
    until = f"{minutes} min" if farm["until"] and farm["second"] is None else "20 wk"
    for number, later in enumerate([0] if farm["second"] is None else [0, farm["second"]]):
        lines += ["[[hatch]]", f'name = "h{number}"', 'kind = "coturnix"', f"date = {(hatched + timedelta(days=later)).isoformat()}",
                  f"chicks = {farm['chicks']}", f"feeding = [{feeding}]", f'until = "{until}"']
    return "\n".join(lines) + "\n"


def season_of(farm, needs):
    """The season to solve, from the farm as written and what is eaten by days."""
    needs = {name: list(days) for name, days in needs.items()}
    for name, days in needs.items():
        first = next((i for i, kg in enumerate(days) if kg > 0), None)
        if first is not None:
            days[first] += farm["feeds"][name]["spare"]
    feeds = {name: farm["feeds"][name] for name in needs}
    season = {"needs": needs, "bags": {n: f["bags"] for n, f in feeds.items()},
              "keeps": {n: f["keeps"] for n, f in feeds.items()}, "on_hand": {n: f["on_hand"] for n, f in feeds.items()},
              "trip": farm["trip"], "keeping": (farm["keeping"] or 0) / 7, "lead": farm["lead"], "holds": farm["holds"]}
    length = len(next(iter(needs.values())))
    season["days"] = [d for d in range(length)
                      if not farm["trips"] or WEEKDAYS[(START + timedelta(days=d)).weekday()] in farm["trips"]]
    if season["days"][:1] != [0]:  # one may go on the first day where feed would be missing without it
        first = season["days"][0] if season["days"] else length
        until = min(length, first + farm["lead"]) if season["days"] else length
        for name in needs:
            feed = brute.Feed(season, name)
            if feed.advance(feed.start, 0, until) is None:
                season["days"] = [0, *season["days"]]
                break
    return season


def trips_of(answer):
    day = lambda text: (date.fromisoformat(text) - START).days
    return {day(t["date"]): {f["feed"]: [(b["bag_kg"], b["bags"]) for b in f["bags"]] for f in t["feeds"]}
            for t in answer["trips"]}


def exact_sizes(season, trips):
    """Bag sizes as the file has them."""
    near = lambda feed, kg: min((s for s, _, _ in season["bags"][feed]), key=lambda s: abs(s - kg))
    return {day: {f: [(near(f, kg), n) for kg, n in bags] for f, bags in feeds.items()} for day, feeds in trips.items()}


def findings(season, best, answer):
    """What is wrong with an answer (None: there is no plan) to a season whose best is (cost, plan) or None."""
    if answer is None or best is None:
        return [] if answer is None and best is None else [f"a plan: {answer is not None}, there is one: {best is not None}"]
    found, cost, waste = brute.follow(season, exact_sizes(season, trips_of(answer)))
    near = lambda a, b: math.isclose(a, b, rel_tol=1e-9, abs_tol=TOLERANCE)
    if not near(cost, answer["cost"]):
        found.append(f"says {answer['cost']}, comes to {cost}")
    parts = answer["trip_cost"] + answer["bag_cost"] + answer["keeping_cost"]
    if not near(parts, answer["cost"]):
        found.append(f"the parts come to {parts}, not {answer['cost']}")
    if not near(sum(t["cost"] for t in answer["trips"]), answer["trip_cost"] + answer["bag_cost"]):
        found.append("the trips do not add up")
    said = sorted((w["feed"], (date.fromisoformat(w["date"]) - START).days, w["feed_kg"]) for w in answer["waste"])
    if len(said) != len(waste) or not all(a[:2] == b[:2] and abs(a[2] - b[2]) < 1e-6 for a, b in zip(said, sorted(waste))):
        found.append(f"waste {waste}, said {said}")
    if not near(answer["cost"], best[0]):
        found.append(f"costs {answer['cost']}, but {best[0]} is possible: {best[1]}" if answer["cost"] > best[0]
                     else f"costs {answer['cost']}, less than the least {best[0]}")
    if not answer["proven"]:
        found.append("not proven")
    return found


def run(program, words, folder):
    return subprocess.run([program, *words], cwd=folder, capture_output=True, text=True, timeout=600)


def needs_of(answer):
    return {n["feed"]: [d["feed_kg"] for d in n["days"]] for n in answer["needs"]}


def try_farm(program, number):
    """(findings, the farm, the answer) of a season that is small enough to try everything."""
    rng = random.Random(SEED * 1000 + number)
    while True:
        farm = random_farm(rng)
        with tempfile.TemporaryDirectory() as folder:
            try:
                return ask(program, farm, folder, number % 5 == 0)
            except brute.TooMuch:
                continue


def ask(program, farm, folder, look_at_plan):
    first, last = window(farm)
    asked = ["--from", first.isoformat(timespec="minutes"), "--to", last.isoformat(timespec="minutes")]
    (pathlib.Path(folder) / "farm.toml").write_text(as_toml(farm))
    done = run(program, ["buy", "farm.toml", "--plan", "--json", *asked], folder)
    if done.returncode not in (0, 1) or "Sanitizer" in done.stderr:
        return [f"exit {done.returncode}: {done.stderr.strip()[:500]}"], farm, None
    answer = json.loads(done.stdout) if done.returncode == 0 else None
    if answer is not None:
        needs = needs_of(answer)
    else:  # a plan with nothing to hinder it tells the needs
        free = {**farm, "holds": None, "lead": 0, "trips": None,
                "feeds": {n: {**f, "keeps": None} for n, f in farm["feeds"].items()}}
        (pathlib.Path(folder) / "free.toml").write_text(as_toml(free))
        needs = needs_of(json.loads(run(program, ["buy", "free.toml", "--plan", "--json", *asked], folder).stdout))
    season, found = season_of(farm, needs), []
    found += [f"{name}: {len(kg)} days, not {farm['length']}" for name, kg in needs.items() if len(kg) != farm["length"]]
    found += findings(season, brute.solve(season), answer)
    if look_at_plan:
        planned = json.loads(run(program, ["plan", "farm.toml", "--json", *asked], folder).stdout)
        for name, days in needs.items():
            sure = sum(b["put_in_kg"] + b["stays_behind_kg"] for b in planned["buy"] if b["feed"] == name)
            if not math.isclose(sum(days), sure, rel_tol=1e-9):
                found.append(f"{name}: {sum(days)} kg by days, {sure} kg bought")
    return found, farm, answer


# A season of round figures whose best plan is worked by hand: 3 kg a day for 6 days; bags of 5 kg at 10, from 2 at 9; a
# trip costs 4. Bought in two goes 2 + 2 bags (36 + 8) or 4 at once (36 + 4), which would be best, but the feed keeps 4
# days and the last bags must be there on day 4: 12 kg before it are 3 bags (27), the other 6 kg 2 bags (18): 53 in two
# trips. 2 + 2 bags would hold 10 kg till the second trip on day 3, and 10 kg for days 3 to 5, one kg of it left over
# from the first: 36 + 8 = 44.
HAND = {"needs": {"f": [3.0] * 6}, "bags": {"f": [(5.0, 10.0, 1), (5.0, 9.0, 2)]}, "keeps": {"f": 4},
        "on_hand": {"f": 0}, "trip": 4.0, "keeping": 0.0, "lead": 0, "holds": None, "days": [0, 1, 2, 3, 4, 5]}


def hand_answer():
    date_of = lambda day: str(START + timedelta(days=day))
    trip = lambda day: {"date": date_of(day), "cost": 22.0,
                        "feeds": [{"feed": "f", "bags": [{"bag_kg": 5.0, "bags": 2, "cost": 18.0}], "feed_kg": 10.0}]}
    return {"trips": [trip(0), trip(3)], "waste": [], "cost": 44.0, "trip_cost": 8.0, "bag_cost": 36.0,
            "keeping_cost": 0.0, "proven": True}


def self_test():
    best = brute.solve(HAND)
    assert math.isclose(best[0], 44.0), best
    assert math.isclose(brute.solve({**HAND, "holds": 12.0})[0], 44.0)
    assert math.isclose(brute.solve({**HAND, "holds": 12.0, "keeping": 0.1})[0], brute.solve({**HAND, "keeping": 0.1})[0])
    assert brute.solve({**HAND, "keeps": {"f": 2}, "days": [0, 3]}) is None
    assert findings(HAND, best, hand_answer()) == [], findings(HAND, best, hand_answer())
    assert findings(HAND, None, None) == [] and findings(HAND, best, None) and findings(HAND, None, hand_answer())

    def spoilt(change, season=HAND):
        answer = hand_answer()
        change(answer)
        assert findings(season, brute.solve(season), answer), f"not noticed: {answer}"

    same = lambda a: None
    spoilt(lambda a: a.update(cost=43.0))
    spoilt(lambda a: a.update(cost=43.0, bag_cost=35.0))
    spoilt(lambda a: a.update(trip_cost=7.0))
    spoilt(lambda a: a.update(proven=False))
    spoilt(lambda a: a.update(waste=[{"feed": "f", "date": str(START), "feed_kg": 1.0}]))
    spoilt(lambda a: a["trips"].pop())
    spoilt(lambda a: a["trips"][1].update(date=str(START + timedelta(days=4))))
    spoilt(lambda a: a["trips"][1]["feeds"][0]["bags"][0].update(bags=1))
    dearer = lambda a: (a["trips"][1]["feeds"][0]["bags"][0].update(bags=3), a["trips"][1].update(cost=31.0),
                        a.update(cost=53.0, bag_cost=45.0))
    spoilt(dearer)                                    # sound, but not the cheapest
    spoilt(same, {**HAND, "days": [0, 2, 4]})         # no trip on day 3
    spoilt(same, {**HAND, "holds": 10.0})             # 11 kg on day 3
    spoilt(same, {**HAND, "keeps": {"f": 2}})         # fed too old
    spoilt(same, {**HAND, "lead": 1})                 # fed too soon
    spoilt(same, {**HAND, "keeping": 0.01})           # keeping left out
    print("every spoilt answer is noticed")


def main():
    if sys.argv[1] == "--self-test":
        return self_test()
    program, count = str(pathlib.Path(sys.argv[1]).resolve()), int((sys.argv[2:] or [300])[0])
    bad = plans = multi = 0
    for number in range(count):
        found, farm, answer = try_farm(program, number)
        plans += answer is not None
        multi += answer is not None and len(answer["trips"]) > 1
        if found:
            bad += 1
            print(f"season {number}: " + "; ".join(found[:3]))
            print(as_toml(farm) if bad <= 3 else "")
    print(f"{count} seasons, {plans} with a plan, {multi} of several trips, {bad} findings")
    return 1 if bad or (count >= 100 and (multi < count // 3 or plans == count)) else 0


if __name__ == "__main__":
    sys.exit(main())
