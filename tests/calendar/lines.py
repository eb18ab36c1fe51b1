"""Lines of a calendar's descriptions, and the deeds of ../today/deeds.py that they must say: which words, and amounts
within what printing rounds (0.4 % of what is measured out, half of the last place of what is fetched)."""
import datetime as dt
import re

KG = {"lb": 0.45359237, "oz": 0.45359237 / 16, "kg": 1, "g": 1e-3, "mg": 1e-6}
LITRES = {"gal": 3.785411784, "qt": 3.785411784 / 4, "fl oz": 3.785411784 / 128, "L": 1, "mL": 1e-3}
FIGURE = r"\d[\d,]*(?:\.\d+)?"
MASS, VOLUME = (rf"{FIGURE} (?:{'|'.join(sorted(units, key=len, reverse=True))})" for units in (KG, LITRES))
MEASURED = 0.0042        # relative, of what is weighed or poured
SHORT = {"look": "look in", "top-up": "top up", "change-water": "fresh water", "stir": "stir", "warmth": "warmth",
         "change-feed": "change feed", "move": "move", "ready": "make ready", "clean": "clean", "remove": "birds go",
         "withdrawal-ends": "withdrawal over", "fetch": "fetch"}


def near(words, units, wanted, share=MEASURED):
    figure, unit = words.split(" ", 1)
    last = 10.0 ** -len(figure.partition(".")[2])
    least = 0 if share == MEASURED else last / 2
    return abs(float(figure.replace(",", "")) * units[unit] - wanted) <= max(share * wanted, least * units[unit] * 1.01)


def plural(noun, count):
    return noun if count == 1 else noun + ("es" if noun.endswith(("s", "x", "ch")) else "s")


def houses(deed):
    if not deed.house:
        return ""
    if not deed.numbers:
        return f"{deed.houses} {plural(deed.house, deed.houses)}"
    runs = []
    for number in deed.numbers:
        if runs and number == runs[-1][1] + 1:
            runs[-1][1] = number
        else:
            runs.append([number, number])
    words = ", ".join(str(a) if a == b else f"{a}-{b}" for a, b in runs)
    return f"{plural(deed.house, len(deed.numbers))} {words}"


def level(words, share):
    if words == "the brim":
        return share > 0.99
    return abs(float(words[:-2]) - 100 * share) <= 0.6


def chore(words, at):
    """"Mon 12 Apr 6:30 am", or "18:00": with a year where it is far off."""
    found = re.fullmatch(r"(\w{3}) (\d+) (\w{3})(?: (\d{4}))? (\d+)(?::(\d\d))?(?: ([ap]m))?", words)
    if not found:
        return False
    hour = int(found[5]) % 12 + (12 if found[7] == "pm" else 0) if found[7] else int(found[5])
    return (found[1], int(found[2]), found[3]) == (at.strftime("%a"), at.day, at.strftime("%b")) and \
        (hour, int(found[6] or 0)) == (at.hour, at.minute) and (not found[4] or int(found[4]) == at.year)


def dosed(words, batch):
    """The weight or the measure that a person stirs in, to 1 % (DESIGN 7)."""
    weights, measures = re.findall(rf"{MASS}(?!\w)", words), re.findall(rf"{VOLUME}(?!\w)", words)
    wanted = [(w, KG, batch["product_g"]) for w in weights if batch["product_g"] is not None]
    wanted += [(w, LITRES, batch["product_ml"]) for w in measures if batch["product_ml"] is not None]
    return bool(wanted) and all(near(w, units, amount / 1000, 0.01) for w, units, amount in wanted)


class Words:
    """What may be said of deeds on one farm."""

    def __init__(self, reading):
        self.reading = reading
        esc = re.escape
        self.title = lambda key, table="feed": esc(reading.title(key, table))
        until, to = r", until (?P<until>[^.]+)\.", r", to (?P<level>the brim|\d+(?:\.\d+)? %)"
        each = lambda deed: " each" if deed.vessels > 1 else ""
        some = lambda deed: f"{deed.vessels} x {esc(deed.vessel)}"
        to_what = lambda deed: rf"(?P<mass>{MASS}) {self.title(deed.what)}{each(deed)}{to}{until}"
        water = lambda deed: rf"(?P<each>{VOLUME}){each(deed)}"
        self.forms = {
            "look": lambda d: r"look in, count the dead\.",
            "change-water": lambda d: rf"fresh water in {some(d)}: {water(d)}\.",
            "warmth": lambda d: r"air (?P<low>\d+) [FC](?: to (?P<high>\d+) [FC])? at chick height\.",
            "ready": lambda d: rf"make {esc(houses(d))} ready: [^\n]+\.",
            "clean": lambda d: rf"clean {esc(houses(d))}\.",
            "withdrawal-ends": lambda d: rf"not before now: [^,:]+ withdrawal of {self.title(d.what)} is over\.",
            "top-up": lambda d: f"top up {some(d)}: {to_what(d)}" if d.what else
                      f"top up {some(d)} with water, to {water(d)}{until}",
            "change-feed": lambda d: f"empty {some(d)}, then {to_what(d)}" if d.vessel else
                           rf"change to {self.title(d.what)}\.",
            "stir": self.stir, "move": self.move, "remove": self.remove, "fetch": self.fetch}

    def stir(self, deed):
        title = self.title(deed.what, "supplement")
        if deed.row["stock_ml"] is not None:
            return rf"have (?P<stock>{VOLUME}) of stock holding (?P<dose>.+) of product, {title}, for " \
                   rf"(?P<water>{VOLUME}) through the proportioner\."
        poured = rf", (?P<each>{VOLUME}) into each of {deed.vessels} x {re.escape(deed.vessel)}" if deed.vessel else ""
        return rf"stir (?P<dose>.+) of {title} into (?P<water>{VOLUME})(?: of water)?{poured}\."

    def move(self, deed):
        to = re.escape(houses(deed))
        if "come" in deed.works:
            return r"about (?P<birds>[\d,]+) chicks come" + (f", into {to}" if to else "") + r"\."
        return r"move (?:about (?P<birds>[\d,]+) )?birds" + (f" to {to}" if to else "") + r"\."

    def remove(self, deed):
        last = r"the last birds go(?:, about (?P<last>[\d,]+))?\."
        return last if "last" in deed.works else r"(?P<birds>[\d,]+) birds go\."

    def fetch(self, deed):
        farm, many = self.reading.farm, deed.packs != 1
        if deed.what in farm["feed"]:
            bags = weight = rf"(?P<fetched>{MASS})"
            if deed.packs:
                bags = rf"{deed.packs} bag{'s' if many else ''} \({weight}\)"
            return rf"fetch {bags} of {self.title(deed.what)}\."
        packs = f"{deed.packs} pack{'s' if many else ''} of " if deed.packs else ""
        tables = [t for t in ("supplement", "disinfectant") if deed.what in farm.get(t, {})]
        title = self.title(deed.what, tables[0]) if tables else f"bedding for {re.escape(deed.what)}"
        return rf"fetch {packs}{title}\."

    def places(self, deed):
        named = deed.work in ("move", "ready", "clean")
        place = deed.hatch + (f", {houses(deed)}" if deed.house and not named and deed.hatch else "")
        return place + ": " if place else ""

    def wrong(self, line, deed, work):
        """None where a line says a deed; "" where it says another; else what is wrong with it."""
        place = self.places(deed)
        found = line.startswith(place) and re.fullmatch(self.forms[work](deed), line[len(place):])
        if not found:
            return ""
        said = {key: value for key, value in found.groupdict().items() if value is not None}
        checks = {"mass": lambda w: near(w, KG, deed.amount / max(1, deed.vessels)),
                  "each": lambda w: near(w, LITRES, deed.each), "water": lambda w: near(w, LITRES, deed.amount),
                  "level": lambda w: level(w, deed.share), "until": lambda w: chore(w, deed.until),
                  "dose": lambda w: dosed(w, deed.row), "fetched": lambda w: near(w, KG, deed.amount, 1e-6),
                  "stock": lambda w: near(w, LITRES, deed.row["stock_ml"] / 1000),
                  "birds": lambda w: deed.birds is None or
                  abs(int(w.replace(",", "")) - deed.birds) <= 0.51 + 0.01 * deed.birds,
                  "low": lambda w: self.air(w, deed.row[0]), "high": lambda w: self.air(w, deed.row[1]),
                  "last": lambda w: True}
        bad = [f"{key} {value!r}" for key, value in said.items() if not checks[key](value)]
        if work == "warmth" and "high" not in said and deed.row[0] != deed.row[1]:
            bad.append("the upper end is missing")
        return ", ".join(bad) if bad else None

    def air(self, words, fahrenheit):
        us = (self.reading.units or self.reading.farm["farm"].get("units", "us")) == "us"
        return abs(int(words) - (fahrenheit if us else (fahrenheit - 32) / 1.8)) <= 0.51


def description_findings(words, deeds, description):
    """Each deed is said in one line and each line says one, before the blank line that parts the notes from them."""
    lines = description.split("\n\n")[0].split("\n")
    for deed in deeds:
        faults = []
        for work in (deed.work, *(w for w in deed.works if w in SHORT)):
            for line in lines:
                wrong = words.wrong(line, deed, work)
                faults += [(wrong or "", line)] if wrong != "" else []
        exact = [line for wrong, line in faults if not wrong]
        if exact:
            lines.remove(exact[0])
        elif faults:
            lines.remove(faults[0][1])
            yield f"{deed.at}: {faults[0][0]} is not that of {deed.said()} in {faults[0][1]!r}"
        else:
            yield f"{deed.at}: no line says {deed.said()}"
    yield from (f"{deeds[0].at if deeds else ''}: nothing in the plan asks for {line!r}" for line in lines)


def categories(deeds):
    return {SHORT[deed.work] for deed in deeds}
