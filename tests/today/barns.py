"""Random farms of short lives, on whose days much is done: moves, new feeds, courses, removals and withdrawals."""
import datetime as dt
import json
import random

KINDS = ("bobwhite", "coturnix", "coturnix-jumbo", "chukar", "pheasant")
CHORES = (["06:30", "17:30"], ["12:00"], ["05:30", "12:00", "18:30"], ["08:15", "16:45"], ["06:00", "21:45"], None)
NAMES = ("April birds", "A/B, north", "Hatch \u00e9", "3rd")


class Barn:
    """A farm's text, and some moment of its life."""

    def __init__(self, seed):
        self.rng = random.Random(seed)
        rng = self.rng
        chores, metric = rng.choice(CHORES), rng.random() < 0.4
        self.start = dt.date(2027, 1, 1) + dt.timedelta(days=rng.randrange(360))
        lines = ["# Invented.", "[farm]", f'name = "Barn {seed}"', f'units = "{"metric" if metric else "us"}"']
        lines += [f"chores = {json.dumps(chores)}"] if chores else []
        for key in ("starter", "grower"):
            bag = f'bag = "{rng.choice(["50 lb", "20 kg"])}"\nprice = 20.50' if rng.random() < 0.8 else ""
            medicated = 'medicated = { drug = "monensin", per_short_ton = "73 g", withdrawal = "%s" }' % rng.choice(
                ["0 d", "2 d", "36 h"]) if rng.random() < 0.4 else ""
            lines += [f"[feed.{key}]", f'title = "The {key}"', 'protein = "26 %"', bag, medicated]
        big = rng.random() < 0.75
        lines += ["[hopper.tube]", f'volume = "{rng.choice([12, 20, 40] if big else [0.5, 1, 3])} L"',
                  rng.choice(["", "", 'fill_for = "2 d"', 'stays_behind = "5 %"'])]
        lines += ["[drinker.jar]", f'volume = "{rng.choice([4, 8, 15] if big else [0.5, 1])} L"',
                  rng.choice(["", 'change_every = "1 d"', 'change_every = "2 d"', 'change_every = "36 h"'])]
        lines += ["[drinker.line]", "plumbed = true"]
        lines += ["[supplement.tonic]", 'title = "Tonic"', f'rate = "{rng.choice(["3 g per L", "2 mL per L"])}"',
                  f'keeps = "{rng.choice(["24 h", "12 h"])}"']
        lines += ["[house.tank]", "count = 9", "holds = 60", rng.choice(["", 'rest = "2 d"']),
                  "[house.pen]", "count = 20", "holds = 50"]
        self.hatches = [self.hatch(lines, name) for name in rng.sample(NAMES, rng.choice([1, 1, 2]))]
        self.text = "\n".join(line for line in lines if line) + "\n"

    def hatch(self, lines, name):
        rng = self.rng
        long = rng.choice([9, 12, 16, 16, 23])
        date = self.start + dt.timedelta(days=rng.randrange(6))
        lines += ["[[hatch]]", f"name = {json.dumps(name, ensure_ascii=False)}", f'kind = "{rng.choice(KINDS)}"',
                  f"date = {date}{rng.choice(['', '', 'T09:30:00'])}", f"chicks = {rng.randrange(20, 140)}",
                  f'until = "{long} d"']
        turn = rng.randrange(2, long - 1)
        move = rng.choice([f"{rng.randrange(3, long - 1)} d", f"{24 * (long // 2) + 9} h"])
        grower = f', {{ feed = "grower", from = "{turn} d" }}' if rng.random() < 0.7 else ""
        lines.append('feeding = [{ feed = "starter", from = "0 d" }%s]' % grower)
        if rng.random() < 0.5:
            lines.append('removed = [{ at = "%d d", birds = 5 }]' % rng.randrange(2, long))
        if rng.random() < 0.4:
            lines.append('courses = [{ supplement = "tonic", from = "%d d", days = %d }]' %
                         (rng.randrange(0, long - 4), rng.randrange(1, 4)))
        stage = lambda at, house: '{ from = "%s", house = "%s"%s, drinker = "%s"%s }' % (
            at, house, ', hopper = "tube", hoppers = %d' % rng.randrange(1, 3) if rng.random() < 0.9 else "",
            *(("line", "") if rng.random() < 0.1 else ("jar", f", drinkers = {rng.randrange(1, 3)}")))
        second = [stage(move, "pen")] if rng.random() < 0.7 else []
        lines.append("housing = [" + ", ".join([stage("0 d", "tank"), *second]) + "]")
        return name, date, long

    def moment(self):
        """Somewhere between the first house that is made ready and the last birds, to the minute."""
        _, date, long = self.rng.choice(self.hatches)
        day = date + dt.timedelta(days=self.rng.randrange(-2, long))
        return dt.datetime.combine(day, dt.time(self.rng.randrange(24), self.rng.choice([0, 0, 30, 59])))
