#!/usr/bin/python3
"""What the store holds now, against sums of a random diary made here.

    stock_now.py PROGRAM RATIONS [--farms 24] [--self-test]

Random farms of one to three hatches on one to three feeds. Every fill is written, full or in part, with its amount,
in kg; the store is counted and filled up in between, in kg, lb or bags. Held to (DESIGN 7: store now = last count +
bought - put into hoppers since, unwritten as planned):
- `stock_kg` and `on_hand_kg` of `plan --json` and `buy --json` against the sum of the amounts drawn, to 1 g: a count
  in the diary, on_hand with its date, on_hand of now; what was thrown out of hoppers never comes back;
- bags_p95 is the fewest with put_in + stays_behind + spare <= stock + bags; what all fills put in is put_in +
  stays_behind of all feeds; put_in + in_hoppers is the p95 of the need (DESIGN 7: BUY and FILL are one account);
- where nobody writes, on_hand less what `plan` from that day on would put in till now: to 5 % of it, since what a
  hungry flock eats is reckoned anew from each day;
- where the last fill is overdue by the feed's age, what is still in the hoppers is in that account; a change of feed
  that was due and is not written is still to be done, and its feed still in the store (guide.md, diary).
Then wrong rules are tried in place of the sum, and must be noticed."""
import argparse
import copy
import datetime as dt
import math
import sys
import tempfile
import time
import tomllib

import numpy as np

import barn
from barn import days, moment

from flock import Hatch, Rations  # noqa: E402  (of ../scipy, whose path barn adds)

SEED, GRAM, LB = 20270703, 1e-3, 0.45359237
START, PLANNED = dt.datetime(2027, 4, 5, 7), 0.05


def farm_text(rng, counted):
    """`counted`: {feed: lines about the store}."""
    out, feeds = ['[farm]\nname = "Invented"\nunits = "metric"'], [f"f{n}" for n in range(rng.integers(1, 4))]
    for feed in feeds:
        out.append(f'[feed.{feed}]\nprotein = "24 %"\ndensity = "600 kg/m3"\nbag = "{rng.integers(10, 26)} kg"\n'
                   f'{counted(feed)}' + ('spare = "7 kg"\n' if rng.random() < 0.3 else ""))
    stays = f'stays_behind = "{rng.integers(1, 9)} %"\n' if rng.random() < 0.5 else ""
    out.append(f'[hopper.h]\nvolume = "{rng.integers(60, 200)} L"\n{stays}at_most = "40 d"')
    for n in range(rng.integers(1, 4)):
        kind = rng.choice(["coturnix", "bobwhite", "chukar", "pheasant", "coturnix-jumbo"])
        eaten = sorted(rng.choice(np.arange(5, 60, 6), len(feeds) - 1, replace=False).tolist())
        order = [feeds[i] for i in rng.permutation(len(feeds))]
        feeding = ", ".join(f'{{ feed = "{f}", from = "{a} d" }}' for f, a in zip(order, [0, *eaten]))
        born = START + dt.timedelta(days=int(rng.integers(0, 15)))
        out.append(f'[[hatch]]\nname = "H{n}"\nkind = "{kind}"\ndate = {born.isoformat()}\n'
                   f'chicks = {rng.integers(80, 400)}\n'
                   f'feeding = [{feeding}]\nuntil = "15 wk"\nhopper = "h"\nhoppers = {rng.integers(1, 4)}')
    return "\n".join(out) + "\n"


class Account:
    """One farm, the diary drawn for it, and the sums of its amounts."""

    def __init__(self, rng, rations):
        how = {}

        def store(feed):
            how[feed] = rng.choice(["diary", "dated", "now"], p=[0.5, 0.3, 0.2])
            lines = {"diary": "", "now": 'on_hand = "41 kg"\n', "dated": 'on_hand = "3000 kg"\ncounted = 2027-04-24\n'}
            return lines[how[feed]]

        self.text = farm_text(rng, store)
        self.tables = tomllib.loads(self.text)
        self.bags = {feed: float(t["bag"].split()[0]) for feed, t in self.tables["feed"].items()}
        self.spare = {feed: 7.0 if "spare" in t else 0.0 for feed, t in self.tables["feed"].items()}
        self.now = START + dt.timedelta(days=int(rng.integers(30, 75)), minutes=int(rng.integers(0, 1440)))
        self.rows, self.visits, self.puts, self.counts, self.bought = [], [], [], {}, []
        for table in self.tables["hatch"]:
            self.fills(rng, Hatch(self.tables, table, rations))
        self.store(rng, how)

    def fills(self, rng, hatch):
        """From the day of hatch till a little before now, at odd minutes, and after the last change of feed."""
        at, full = hatch.date, None
        change = hatch.date + dt.timedelta(days=max([s.start for s in hatch.steps
                                                     if hatch.date + dt.timedelta(days=s.start) < self.now]))
        while at < self.now:
            age, part = days(at, hatch.date), full is not None and rng.random() < 0.3
            used = hatch.feed.over(full, age) if full is not None else 1.0
            feed = [s.feed for s in hatch.steps if s.start <= age][-1]
            put = float(used * rng.uniform(0.9, 1.1) * (0.4 if part else 1))
            self.rows.append(f"{at.isoformat()},{hatch.name},{'part filled' if part else 'topped up'},{put!r},kg,")
            self.puts.append((at, feed, put))
            if not part:
                full = age
            elif rng.random() < 0.3:
                self.rows.append(f"{at.isoformat()},{hatch.name},thrown out,{0.1 * put!r},kg,")
            then, at = at, at + dt.timedelta(minutes=int(rng.integers(2000, 4500)))
            if then < change < self.now <= at:      # the new feed is put in before somebody asks
                at = change + (self.now - change) / 2
                at = at.replace(second=0, microsecond=0)

    def store(self, rng, how):
        """Counts and what was brought in; no two visits at one minute."""
        for feed, way in how.items():
            since = {"dated": dt.datetime(2027, 4, 24, 7), "diary": dt.datetime.min, "now": self.now}[way]
            self.counts[feed] = (since, {"dated": 3000.0, "diary": 0.0, "now": 41.0}[way])
            for _ in range(rng.integers(0, 4) if way != "now" else 0):
                at = START + dt.timedelta(minutes=int(rng.integers(0, 1440 * 29)), seconds=0)
                unit, size = (("kg", 1.0), ("lb", LB), ("bags", self.bags[feed]))[rng.integers(3)]
                n = int(rng.integers(1500, 3000) / size)
                if rng.random() < 0.5 and unit != "bags":
                    self.visits.append((at, "--stock", f"{feed}={n} {unit}"))
                    self.counts[feed] = max(self.counts[feed], (at, n * size))
                else:
                    self.visits.append((at, "--bought", f"{feed}={n} {unit}"))
                    self.bought.append((at, feed, n * size))
            if way == "diary" and not any(w.startswith(feed + "=") and f == "--stock" for _, f, w in self.visits):
                at = START + dt.timedelta(minutes=int(rng.integers(0, 1440 * 29)))
                self.visits.append((at, "--stock", f"{feed}=2345 kg"))
                self.counts[feed] = (at, 2345.0)

    def stock(self, feed, count=True, bought=True, put=True):
        """kg in the store now; a rule left out for the tests of this test."""
        since, amount = self.counts[feed] if count else (dt.datetime.min, self.counts[feed][1])
        amount += bought * math.fsum(kg for at, f, kg in self.bought if f == feed and at > since)
        return amount - put * math.fsum(kg for at, f, kg in self.puts if f == feed and at > since)

    def ask(self, program, folder, and_buy):
        home = barn.Barn(program, folder, self.text)
        for at, flag, words in self.visits:
            home.run("diary", "add", home.farm, "--at", at, "--now", self.now, flag, words)
        home.write(self.rows)
        return home.ask("plan", home.farm, "--now", self.now), \
            home.ask("buy", home.farm, "--now", self.now) if and_buy else None


def findings(account, where, plan, buy, **rule):
    """[(what, words)]"""
    out = []
    for answer, name in ((plan, "plan"), (buy, "buy")):
        for row in answer["buy"] if answer else []:
            at, want = f"{where}, `{name}`, {row['feed']}", account.stock(row["feed"], **rule)
            for key in ("stock_kg", "on_hand_kg"):
                if abs(row[key] - max(0.0, want)) > GRAM:
                    out.append(("stock", f"{at}: {key} {row[key]!r}, by the sum of the diary {want!r}"))
            bag, spare = account.bags[row["feed"]], account.spare[row["feed"]]
            short = row["put_in_kg"] + row["stays_behind_kg"] + spare - row["stock_kg"]
            if row["bags_p95"] != max(0, math.ceil(short / bag - 1e-9)):
                out.append(("bags", f"{at}: {row['bags_p95']} bags of {bag} kg, {short:.3f} kg are wanted: put in "
                            f"{row['put_in_kg']:.3f}, stays {row['stays_behind_kg']:.3f}, stock {row['stock_kg']:.3f}"))
            off = row["put_in_kg"] + row["in_hoppers_kg"] - row["p95"]
            if abs(off) > 1e-6 * row["p95"]:
                out.append(("account", f"{at}: put in {row['put_in_kg']:.3f} + in hoppers "
                            f"{row['in_hoppers_kg']:.3f} kg is not the need {row['p95']:.3f} kg, off by {off:.3f}"))
    fills = math.fsum(f["put_in_kg"] for h in plan["hatches"] for s in h["stages"] for f in s["hoppers"]["fills"])
    bought = math.fsum(row["put_in_kg"] + row["stays_behind_kg"] for row in plan["buy"])
    if abs(fills - bought) > 1e-6 * max(1.0, bought):
        out.append(("fills", f"{where}: all fills put in {fills:.3f} kg, `buy` {bought:.3f} kg"))
    return out


def unwritten(program, number):
    """Nobody writes: what `plan` would have put in since the count is off."""
    rng = np.random.default_rng([SEED, 1000 + number])
    text = farm_text(rng, lambda feed: 'on_hand = "2000 kg"\ncounted = 2027-04-24\n')
    counted, now = dt.datetime(2027, 4, 24, 7), START + dt.timedelta(days=int(rng.integers(22, 60)), minutes=77)
    with tempfile.TemporaryDirectory() as folder:
        home = barn.Barn(program, folder, text)
        then = home.ask("plan", home.farm, "--now", counted + dt.timedelta(minutes=1))
        after = {row["feed"]: row["stock_kg"] for row in home.ask("plan", home.farm, "--now", now)["buy"]}
    gone, hatches = dict.fromkeys(after, 0.0), {h["name"]: h for h in then["hatches"]}
    for table in tomllib.loads(text)["hatch"]:
        for fill in (f for s in hatches[table["name"]]["stages"] for f in s["hoppers"]["fills"]):
            feed = [f["feed"] for f in table["feeding"] if float(f["from"].split()[0]) <= fill["age_d"] + 1e-6][-1]
            if counted < moment(fill["do_at"]) <= now and feed in gone:
                gone[feed] += fill["put_in_kg"]
    off = [feed for feed in after if abs(2000 - gone[feed] - after[feed]) > PLANNED * gone[feed] + GRAM]
    return [("unwritten", f"unwritten farm {number}, {feed}: stock {after[feed]!r}, by the plan since the count "
             f"{2000 - gone[feed]!r}") for feed in off]


ONE = """[farm]
name = "Invented"
units = "metric"
[feed.f]
protein = "24 %"
density = "600 kg/m3"
bag = "20 kg"
on_hand = "50 kg"
counted = 2027-04-20
[feed.g]
protein = "24 %"
density = "600 kg/m3"
bag = "20 kg"
on_hand = "500 kg"
counted = 2027-04-20
[hopper.h]
volume = "40 L"
[[hatch]]
name = "A"
kind = "coturnix"
date = 2027-04-05
chicks = 200
feeding = [{ feed = "f", from = "0 d" }, { feed = "g", from = "5 wk" }]
until = "12 wk"
hopper = "h"
hoppers = 2
"""


def overdue(program):
    """One hatch whose only written fill, on 25 April or 8 May, is followed by nothing."""
    out = []
    for filled, now in (("2027-04-25T07:30", "2027-05-03T12:00"), ("2027-05-08T07:30", "2027-05-10T12:00")):
        with tempfile.TemporaryDirectory() as folder:
            home = barn.Barn(program, folder, ONE)
            home.write([f"{filled},A,topped up,20.0,kg,"])
            plan = home.ask("plan", home.farm, "--now", now)
        rows, fills = {r["feed"]: r for r in plan["buy"]}, plan["hatches"][0]["hoppers"]["fills"]

        def say(words):
            out.append(("overdue", f"asked at {now}, filled once, at {filled}: {words}"))    # noqa: B023

        if now < "2027-05-10":
            row = rows["f"]
            if fills[0]["do_at"] > now:
                say(f"the fill due 7 d after the last is not overdue, but {fills[0]['do_at']}")
            off = row["put_in_kg"] + row["in_hoppers_kg"] - row["p95"]
            if abs(off) > 1e-6 * row["p95"]:
                say(f"put in {row['put_in_kg']:.3f} + in hoppers {row['in_hoppers_kg']:.3f} kg is not the need "
                    f"{row['p95']:.3f} kg, off by {off:.3f}")
            if row["bags_p95"] != max(0, math.ceil((row["put_in_kg"] - row["stock_kg"]) / 20)):
                say(f"{row['bags_p95']} bags of 20 kg for {row['put_in_kg'] - row['stock_kg']:.3f} kg")
        else:
            if fills[0]["do_at"] != "2027-05-10T07:00":
                say(f"the change of feed at 2027-05-10T07:00 is not written, the first fill is {fills[0]['do_at']}")
            if abs(rows["g"]["stock_kg"] - 500) > GRAM:
                say(f"nobody wrote that g was put in, and of 500 kg {rows['g']['stock_kg']:.3f} are in the store")
    return out


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("program")
    parser.add_argument("rations")
    parser.add_argument("--farms", type=int, default=24)
    asked, begun, found, answers = parser.parse_args(), time.time(), [], []
    rations = Rations(asked.rations)
    for number in range(asked.farms):
        account = Account(np.random.default_rng([SEED, number]), rations)
        with tempfile.TemporaryDirectory() as folder:
            answers.append((account, f"farm {number}", *account.ask(asked.program, folder, number % 4 == 0)))
        found += findings(*answers[-1])
    for number in range(max(1, asked.farms // 6)):
        found += unwritten(asked.program, number)
    found += overdue(asked.program)
    sorts = ("stock", "bags", "account", "fills", "unwritten", "overdue")
    kinds = {what: sum(w == what for w, _ in found) for what in sorts}
    missed = []
    for name, rule in {"counts": {"count": False}, "bought": {"bought": False}, "put in": {"put": False}}.items():
        wrong = sum(w == "stock" for answer in answers for w, _ in findings(*answer, **rule))
        missed += [] if wrong > kinds["stock"] else [f"{name} left out"]
    tried = [("bags", "bags_p95", 1), ("account", "in_hoppers_kg", 0.1), ("fills", "stays_behind_kg", 0.1),
             ("stock", "on_hand_kg", 0.01)]
    for sort, key, by in tried:
        account, where, plan, _ = copy.deepcopy(answers[-1])
        plan["buy"][0][key] += by
        noticed = any(what == sort for what, _ in findings(account, where, plan, None))
        missed += [] if noticed else [f"{key} off by {by}"]
    rows = sum(len(a[0].rows) + len(a[0].visits) for a in answers)
    return barn.ended([words for _, words in found], missed, "3 wrong rules and 4 spoiled answers tried; "
                      f"{len(answers)} farms, {rows} entries; off: {kinds}; {time.time() - begun:.1f} s")


if __name__ == "__main__":
    sys.exit(main())
