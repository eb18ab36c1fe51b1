"""A buying season solved by trying everything, and a plan for one followed day by day. Days count from 0.

A season is a dict: needs {feed: [kg by day]}, bags {feed: [(kg, price, from)]}, keeps {feed: days or None}, on_hand
{feed: kg}, days [days with a trip], trip, keeping (a kg and day), lead, holds (kg or None). In the morning what is too
old is thrown away, then there may be a trip, then the day's need is fed, the oldest first; the rest costs keeping."""
import functools
import itertools

SLACK = 1e-7  # kg
MOST_WAYS = 8_000  # stocks looked at for one season


class TooMuch(Exception):
    """More than MOST_WAYS; another season is to be taken."""


def price_of(offers, size, count):
    return min((f, p) for s, p, f in offers if s == size and f <= count and not
               any(f2 > f and f2 <= count for s2, _, f2 in offers if s2 == size))[1] if count else 0.0


def may_feed(season, feed, bought, day):
    """What was bought on a day may be fed on another; what is on hand counts as bought on day 0."""
    keeps = season["keeps"][feed]
    ready = bought == 0 or day >= bought + season["lead"]
    return ready and (keeps is None or day <= bought + keeps - 1)


class Feed:
    """One feed of a season. A stock is a tuple of (day bought, kg), the oldest first."""

    def __init__(self, season, name):
        self.season, self.name = season, name
        self.needs, self.offers = season["needs"][name], season["bags"][name]
        self.keeps = season["keeps"][name]
        self.sizes = sorted({size for size, _, _ in self.offers})
        self.start = ((0, season["on_hand"][name]),) if season["on_hand"][name] > 0 else ()
        self.advance = functools.lru_cache(None)(self.advance)
        self.purchases = functools.lru_cache(None)(self.purchases)
        self.moves = functools.lru_cache(None)(self.moves)
        self.allowed = functools.lru_cache(None)(self.allowed)

    def old(self, bought, day):
        return self.keeps is not None and day > bought + self.keeps - 1

    def advance(self, stock, start, end):
        """(stock, keeping cost, waste) in the morning of day `end`, or None where birds go without."""
        lots, cost, waste = [list(lot) for lot in stock], 0.0, []
        for day in range(start, end + 1):
            waste += [(day, kg) for bought, kg in lots if self.old(bought, day) and kg > SLACK]
            lots = [lot for lot in lots if not self.old(lot[0], day)]
            if day == end:
                break
            need = self.needs[day]
            for lot in lots:
                if may_feed(self.season, self.name, lot[0], day):
                    taken = min(need, lot[1])
                    lot[1] -= taken
                    need -= taken
            if need > SLACK:
                return None
            lots = [lot for lot in lots if lot[1] > 0]
            cost += self.season["keeping"] * sum(kg for _, kg in lots)
        return tuple((b, round(kg, 9)) for b, kg in lots), cost, tuple(waste)

    def purchases(self, day):
        """[(kg, cost, counts)]: every number of bags of each size, up to all that could be fed before it is old, and
        where that is fewer up to the next price."""
        last = len(self.needs) if self.keeps is None else min(len(self.needs), day + self.keeps)
        usable, found = sum(self.needs[day:last]), []
        ranges = []
        for size in self.sizes:
            most = int(usable / size) + 1
            ranges.append(range(max([most] + [f for s, _, f in self.offers if s == size]) + 1))
        for counts in itertools.product(*ranges):
            kg = sum(n * s for n, s in zip(counts, self.sizes))
            at_break = any(n == f for n, s in zip(counts, self.sizes) for z, _, f in self.offers if z == s and f > 1)
            if kg - max([s for n, s in zip(counts, self.sizes) if n], default=0) >= usable + SLACK and not at_break:
                continue
            found.append((kg, sum(n * price_of(self.offers, s, n) for n, s in zip(counts, self.sizes)), counts))
        return found

    def lasts(self, stock, start, end):
        return self.advance(stock, start, end) is not None

    def grows_old(self, stock, day, kg):
        """Whether some of what is bought on a day is thrown away in the end although nothing else is bought."""
        if not kg or self.keeps is None or day + self.keeps >= len(self.needs):
            return False
        lots = [[b, k] for b, k in stock] + [[day, kg]]
        for now in range(day, day + self.keeps):
            need = self.needs[now]
            for lot in lots:
                if may_feed(self.season, self.name, lot[0], now):
                    taken = min(need, lot[1])
                    lot[1] -= taken
                    need -= taken
        return lots[-1][1] > SLACK

    def allowed(self, stock, day, next_day):
        end = len(self.needs)
        if self.season["keeping"] == 0 and self.season["holds"] is None:
            return self.purchases(day)
        until = end if next_day == end else min(end, next_day + self.season["lead"])
        chosen, cheapest, lightest = [], None, None
        for kg, cost, counts in sorted(self.purchases(day), key=lambda p: (round(p[0], 6), p[1])):
            if not self.lasts(after_purchase(stock, day, kg), day, until):
                continue
            lightest = kg if lightest is None else lightest
            if kg <= lightest + SLACK or cost < cheapest - 1e-9 or not self.grows_old(stock, day, kg):
                chosen.append((kg, cost, counts))
            cheapest = cost if cheapest is None else min(cheapest, cost)
        return chosen

    def moves(self, stock, day, next_day):
        """{stock on the next trip's day: (cost of bags and keeping, counts)} of every purchase that lasts till then."""
        found = {}
        for kg, price, counts in self.allowed(stock, day, next_day):
            moved = self.advance(after_purchase(stock, day, kg), day, next_day)
            if moved and (moved[0] not in found or price + moved[1] < found[moved[0]][0]):
                found[moved[0]] = (price + moved[1], counts)
        return found


def after_purchase(stock, day, kg):
    return stock + ((day, kg),) if kg else stock


def cheapest(options):
    return min(options, key=lambda o: o[0], default=None)


def extend(feed, states, day, next_day):
    """From stocks on a trip's day, {stock: (cost, plan)}, to those on the next trip's, whatever is bought."""
    found = {}
    for stock, (cost, plan) in states.items():
        for after, (more, counts) in feed.moves(stock, day, next_day).items():
            if after not in found or cost + more < found[after][0]:
                found[after] = (cost + more, plan + ((day, feed.name, counts),))
    return found


def solve_apart(season):
    """Least cost and plan without `holds`: for each set of trip days each feed by itself."""
    feeds = [Feed(season, name) for name in season["needs"]]
    end, best, ways = len(next(iter(season["needs"].values()))), [None], [0]

    def visit(states, last, trips):
        ways[0] += sum(len(mine) for mine in states if mine)
        if ways[0] > MOST_WAYS:
            raise TooMuch
        finals = []
        for feed, mine in zip(feeds, states):
            ends = extend(feed, mine, last, end) if last is not None else start(feed, end)
            finals.append(cheapest(ends.values()))
        if all(finals):
            total = sum(f[0] for f in finals) + trips * season["trip"]
            if best[0] is None or total < best[0][0]:
                best[0] = (total, tuple(p for f in finals for p in f[1]))
        for day in season["days"]:
            if last is not None and day <= last:
                continue
            further = [extend(f, mine, last, day) if last is not None else start(f, day)
                       for f, mine in zip(feeds, states)]
            if not all(further):
                break  # a later trip is no help
            visit(further, day, trips + 1)

    def start(feed, day):
        moved = feed.advance(feed.start, 0, day)
        return {moved[0]: (moved[1], ())} if moved else {}

    visit([None] * len(feeds), None, 0)
    return best[0]


def solve_together(season):
    """Least cost and plan with `holds`: every set of trip days, all feeds at once."""
    feeds = [Feed(season, name) for name in season["needs"]]
    end, best, ways = len(next(iter(season["needs"].values()))), [None], [0]

    def move(states, last, day):
        found = {}
        for stocks, (cost, plan) in states.items():
            menus = [[(0, 0.0, ())] if last is None else f.allowed(s, last, day) for f, s in zip(feeds, stocks)]
            for picks in itertools.product(*menus):
                full = [after_purchase(s, last, p[0]) for s, p in zip(stocks, picks)]
                if last is not None and sum(kg for s in full for _, kg in s) > season["holds"] + SLACK:
                    continue
                moved = [f.advance(s, last or 0, day) for f, s in zip(feeds, full)]
                if any(m is None for m in moved):
                    continue
                key = tuple(m[0] for m in moved)
                total = cost + sum(p[1] for p in picks) + sum(m[1] for m in moved)
                if key not in found or total < found[key][0]:
                    bought = () if last is None else tuple((last, f.name, p[2]) for f, p in zip(feeds, picks))
                    found[key] = (total, plan + bought)
        return found

    def visit(states, last, trips):
        ways[0] += len(states)
        if ways[0] > MOST_WAYS / 20:
            raise TooMuch
        final = cheapest(move(states, last, end).values())
        if final and (best[0] is None or final[0] + trips * season["trip"] < best[0][0]):
            best[0] = (final[0] + trips * season["trip"], final[1])
        for day in season["days"]:
            if last is not None and day <= last:
                continue
            further = move(states, last, day)
            if not further:
                break
            visit(further, day, trips + 1)

    visit({tuple(f.start for f in feeds): (0.0, ())}, None, 0)
    return best[0]


def solve(season):
    return solve_apart(season) if season["holds"] is None else solve_together(season)


def follow(season, trips):
    """What a plan {day: {feed: [(kg a bag, count)]}} comes to: (findings, cost, waste [(feed, day, kg)])."""
    found, waste = [], []
    end = len(next(iter(season["needs"].values())))
    stock = {f: [[0, kg]] if kg > 0 else [] for f, kg in season["on_hand"].items()}
    cost = len(trips) * season["trip"]
    found += [f"no trip on day {day}" for day in trips if day not in season["days"]]
    for day in range(end):
        for feed, lots in stock.items():
            keeps = season["keeps"][feed]
            old = [lot for lot in lots if keeps is not None and day > lot[0] + keeps - 1]
            waste += [(feed, day, kg) for _, kg in old if kg > SLACK]
            stock[feed] = [lot for lot in lots if lot not in old]
        for feed, bags in trips.get(day, {}).items():
            for size, count in bags:
                cost += count * price_of(season["bags"][feed], size, count)
            stock[feed].append([day, sum(size * count for size, count in bags)])
        store = sum(kg for lots in stock.values() for _, kg in lots)
        if day in trips and season["holds"] is not None and store > season["holds"] + 1e-6:
            found.append(f"day {day}: {store} kg in the store")
        for feed, lots in stock.items():
            need = season["needs"][feed][day]
            for lot in lots:
                if may_feed(season, feed, lot[0], day):
                    taken = min(need, lot[1])
                    lot[1] -= taken
                    need -= taken
            if need > 2 * SLACK:
                found.append(f"day {day}: {need} kg of {feed} missing")
            stock[feed] = [lot for lot in lots if lot[1] > 0]
        cost += season["keeping"] * sum(kg for lots in stock.values() for _, kg in lots)
    return found, cost, waste
