#!/usr/bin/python3
"""An independent check of houses that hatches share, on random farms.   shared_seasons.py PROGRAM RATIONS_DIR [FARMS]

Who lives in which house, who joins whom and who finds too few is worked out a second time by the rules of docs/model.md,
with birds by SciPy (tests/scipy) at every quarter of a day, and compared with `cropful season --json`. Of every answer
besides: at no quarter of a day is a house more than full. A self-test spoils the rules one by one."""
import datetime as dt
import math
import pathlib
import random
import sys
import tempfile
from fractions import Fraction

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent))
import random_seasons as seasons  # noqa: E402

KINDS = ["bobwhite", "coturnix", "chukar"]
RULES = {"by kind": True, "rest": True, "closed": True, "every hour": True}


class Flock:
    """A hatch in its house: how many houses its birds fill, by quarter of a day since 2027-01-01."""

    def __init__(self, hatch, house, birds, rules):
        holds = house["holds"]
        if isinstance(holds, dict):
            holds = holds[hatch["kind"]] if rules["by kind"] else holds[max(holds)]
        self.name, self.start = hatch["name"], round(4 * seasons.days_since(hatch["date"] + dt.timedelta(hours=7)))
        self.end = self.start + round(4 * seasons.whole_days(hatch["until"]))
        ages = [i / 4 for i in range(self.end - self.start)]
        self.alive = [float(birds(a)) for a in ages]
        self.holds = [seasons.held({"holds": holds}, a) for a in ages]
        self.filled = [n / h for n, h in zip(self.alive, self.holds)]
        self.needs = max(math.ceil(f - 1e-9) for f in self.filled)

    def share(self, at):
        return self.filled[at - self.start] / self.needs if self.start <= at < self.end else 0.0


def placed(house, flocks, rules):
    """{hatch: (numbers, the numbers it joins, birds left over)}"""
    rest = round(4 * seasons.whole_days(house["rest"])) if "rest" in house else 0
    there = {n: [] for n in range(1, house.get("count", 1) + 1)}  # (flock, whether it closes the house)
    done = {}
    for one in sorted(flocks, key=lambda f: f.start):
        quarters = range(one.start, one.end if rules["every hour"] else one.start + 1)
        taken = {n: [sum(f.share(at) for f, _ in there[n]) for at in quarters] for n in there}
        numbers, joins = [], []
        for n, others in there.items():
            living = [(f, closes) for f, closes in others if f.end > one.start]
            resting = not living and any(f.end + rest > one.start for f, _ in others) and rules["rest"]
            closed = any(closes for _, closes in living) and rules["closed"]
            fits = all(t + one.share(at) <= 1 + 1e-9 for t, at in zip(taken[n], quarters))
            if len(numbers) < one.needs and fits and not resting and not closed:
                numbers.append(n)
                joins += [n] if living else []
        few = len(numbers) < one.needs
        left = max(0.0, *(one.alive[i] - one.holds[i] * sum(1 - taken[n][i] for n in numbers)
                          for i in range(len(quarters)))) if few else 0.0
        for n in numbers:
            there[n].append((one, few))
        done[one.name] = (numbers, joins, left)
    return done


def random_farm(rng):
    farm = {"farm": {"name": "Shared ridge", "units": "metric"},
            "feed": {"starter": {"protein": "28 %", "form": "crumble", "bag": "25 kg"}},
            "hopper": {"tube": {"volume": "60 L"}}, "drinker": {"bell": {"volume": "60 L"}}, "house": {}, "hatch": []}
    for name in ("pen", "run")[:rng.randint(1, 2)]:
        def holds():
            most = rng.randint(60, 250)
            later = {"from": f"{rng.randint(5, 40)} d", "birds": rng.randint(most // 2, most)}
            return most if rng.random() < 0.6 else [{"from": "0 d", "birds": most}, later]
        house = farm["house"][name] = {"holds": {k: holds() for k in KINDS} if rng.random() < 0.5 else holds(),
                                       "count": rng.randint(1, 5), "shared": True}
        if rng.random() < 0.7:
            house["rest"] = f"{rng.randint(0, 10)} d"
    for i in range(rng.randint(3, 12)):
        hatch = {"name": f"H{i}", "kind": rng.choice(KINDS), "chicks": rng.randint(10, 300),
                 "date": dt.date(2027, 1, 1) + dt.timedelta(days=rng.randint(0, 90)), "until": f"{rng.randint(10, 80)} d",
                 "feeding": [{"feed": "starter", "from": "0 d"}], "hopper": "tube", "hoppers": 1,
                 "drinker": "bell", "drinkers": 1, "brooder": rng.choice(sorted(farm["house"]))}
        if rng.random() < 0.5:
            hatch["removed"] = [{"at": f"{rng.randint(3, int(hatch['until'][:-2]))} d",
                                 "birds": rng.randint(1, hatch["chicks"] // 2)}]
        farm["hatch"].append(hatch)
    return farm


def own(farm, rations, rules=RULES):
    answer, flocks = {}, []
    for key, house in sorted(farm["house"].items()):
        here = [Flock(h, house, seasons.model.Hatch(farm, h, rations).birds, rules)
                for h in sorted(farm["hatch"], key=lambda h: h["date"]) if h["brooder"] == key]
        flocks += here
        answer |= placed(house, here, rules)
    return answer, {f.name: f for f in flocks}


def of(got):
    answer = {}
    for stay in got["brooders"]:
        numbers, joins, _ = answer.setdefault(stay["hatch"], ([], [], 0.0))
        numbers.append(stay["number"])
        joins += [stay["number"]] if stay["joins"] else []
    for one in got["unplaced"]:
        numbers, joins, _ = answer.get(one["hatch"], ([], [], 0.0))
        answer[one["hatch"]] = (numbers, joins, one["birds"])
    return answer


def unlike(want, got):
    return [f"{name}: {got.get(name)}, expected {want[name]}" for name in want
            if (want[name][:2] != got.get(name, ())[:2] or abs(want[name][2] - got[name][2]) > 1e-6 * (1 + want[name][2]))]


def too_full(farm, answer, flocks):
    """Where all who got all they need overfill a house."""
    found = []
    for key in farm["house"]:
        whole = [flocks[h["name"]] for h in farm["hatch"] if h["brooder"] == key]
        for n in range(1, farm["house"][key]["count"] + 1):
            here = [f for f in whole if n in answer[f.name][0] and len(answer[f.name][0]) == f.needs]
            for at in {f.start + i for f in here for i in range(f.end - f.start)}:
                if sum(f.share(at) for f in here) > 1 + 1e-9:
                    found.append(f"{key} {n} is too full {Fraction(at, 4)} d after 2027-01-01")
                    break
    return found


def main():
    program, rations_dir, farms = sys.argv[1], sys.argv[2], int(sys.argv[3]) if len(sys.argv) > 3 else 40
    rations, rng, bad = seasons.model.Rations(rations_dir), random.Random(5), []
    met = {"stays": 0, "joined": 0, "too few": 0, "half placed": 0}
    told = {rule: 0 for rule in RULES}
    with tempfile.TemporaryDirectory() as folder:
        for n in range(farms):
            farm = random_farm(rng)
            got = of(seasons.ask(program, "season", farm, folder))
            want, flocks = own(farm, rations)
            found = unlike(want, got) or too_full(farm, got, flocks)
            if found:
                bad.append(f"farm {n}:\n" + "\n".join(found[:8]) + "\n" + seasons.toml(farm))
            for rule in RULES:
                told[rule] += bool(unlike(own(farm, rations, {**RULES, rule: False})[0], got))
            for numbers, joins, left in want.values():
                met["stays"] += len(numbers)
                met["joined"] += len(joins)
                met["too few"] += left > 0
                met["half placed"] += left > 0 and bool(numbers)
    print("\n".join(bad[:3]))
    print(f"{farms} farms, {len(bad)} wrong; met {met}; farms that tell a spoilt rule: {told}")
    never = [k for k, v in {**met, **told}.items() if v == 0] if farms >= 30 else []
    if never:
        print(f"never met: {never}")
    return 1 if bad or never else 0


if __name__ == "__main__":
    sys.exit(main())
