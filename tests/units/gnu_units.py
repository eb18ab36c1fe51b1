#!/usr/bin/python3
"""gnu_units.py PROGRAM: compares each factor of `PROGRAM table units --json` with GNU units and the printed tables.

Fails when a factor differs by more than 1e-12 relative, when a unit is unknown here or missing there, when a definition
in words disagrees with its number, or when fewer than 25 units were compared. Needs /usr/bin/units.
"""
import json
import os
import re
import subprocess
import sys
from fractions import Fraction

TOLERANCE = 1e-12
FEWEST = 25

# The engine's unit of each dimension, as GNU units writes it.
ENGINE = {"mass": "kg", "volume": "L", "time": "day", "length": "m", "energy": "kilo calorie_th",
          "temperature": "K", "percent": "1"}

# Typed from the printed tables, not from the program:
# NIST Handbook 44 (2023), Appendix C: 1 in = 2.54 cm and 1 lb = 453.592 37 g exactly; 1 gal = 231 in3 = 4 qt = 8 pt =
# 128 fl oz; 1 cup = 8 fl oz; 1 tablespoon = 1/2 fl oz; 1 teaspoon = 1/3 tablespoon; 1 short ton = 2000 lb.
# NIST SP 811 (2008), Appendix B.8: 1 thermochemical calorie = 4.184 J; 1 degF step = 1/1.8 K;
# imperial gallon = 4.546 09 L.
IN = Fraction("0.0254")
LB = Fraction("0.45359237")
IN3 = Fraction("0.016387064")
GAL = 231 * IN3
FLOZ = GAL / 128
IMP = Fraction("4.54609")

# symbol: (dimension, GNU units expression, factor from the tables above)
KNOWN = {
    "kg": ("mass", "kilogram", Fraction(1)),
    "g": ("mass", "gram", Fraction(1, 1000)),
    "mg": ("mass", "milligram", Fraction(1, 10**6)),
    "tonne": ("mass", "tonne", Fraction(1000)),
    "lb": ("mass", "pound", LB),
    "oz": ("mass", "ounce", LB / 16),
    "grain": ("mass", "grain", LB / 7000),
    "short ton": ("mass", "shortton", 2000 * LB),
    "cwt": ("mass", "ushundredweight", 100 * LB),
    "US cwt": ("mass", "ushundredweight", 100 * LB),
    "imp cwt": ("mass", "brhundredweight", 112 * LB),
    "L": ("volume", "liter", Fraction(1)),
    "mL": ("volume", "milliliter", Fraction(1, 1000)),
    "m3": ("volume", "m^3", Fraction(1000)),
    "in3": ("volume", "in^3", IN3),
    "ft3": ("volume", "ft^3", 1728 * IN3),
    "gal": ("volume", "usgallon", GAL),
    "US gal": ("volume", "usgallon", GAL),
    "qt": ("volume", "usquart", GAL / 4),
    "US qt": ("volume", "usquart", GAL / 4),
    "pt": ("volume", "uspint", GAL / 8),
    "US pt": ("volume", "uspint", GAL / 8),
    "fl oz": ("volume", "usfluidounce", FLOZ),
    "US fl oz": ("volume", "usfluidounce", FLOZ),
    "cup": ("volume", "uscup", 8 * FLOZ),
    "tbsp": ("volume", "ustablespoon", FLOZ / 2),
    "tsp": ("volume", "usteaspoon", FLOZ / 6),
    "imp gal": ("volume", "brgallon", IMP),
    "imp qt": ("volume", "brquart", IMP / 4),
    "imp pt": ("volume", "brpint", IMP / 8),
    "imp fl oz": ("volume", "brfluidounce", IMP / 160),
    "d": ("time", "day", Fraction(1)),
    "wk": ("time", "week", Fraction(7)),
    "h": ("time", "hour", Fraction(1, 24)),
    "min": ("time", "minute", Fraction(1, 1440)),
    "m": ("length", "meter", Fraction(1)),
    "cm": ("length", "centimeter", Fraction(1, 100)),
    "mm": ("length", "millimeter", Fraction(1, 1000)),
    "in": ("length", "inch", IN),
    "ft": ("length", "foot", 12 * IN),
    "kcal": ("energy", "kilo calorie_th", Fraction(1)),
    "MJ": ("energy", "megajoule", 1 / Fraction("0.004184")),
    "degC": ("temperature", "degC", Fraction(1)),
    "degF": ("temperature", "degF", 1 / Fraction("1.8")),
    "%": ("percent", "percent", Fraction(1, 100)),
}

# What a definition in words may be stated in, in the engine's unit of the dimension.
DEFINED_IN = {"kg": Fraction(1), "lb": LB, "dm3": Fraction(1), "cm3": Fraction(1, 1000), "L": Fraction(1), "in3": IN3,
              "fl oz": FLOZ, "imp gal": IMP, "s": Fraction(1, 86400), "d": Fraction(1), "m": Fraction(1), "in": IN,
              "J": Fraction(1, 4184), "kcal": Fraction(1), "": Fraction(1)}


def gnu(have, want):
    """The factor, or for temperatures the point, GNU units gives."""
    environment = {"LC_ALL": "C", "PATH": os.environ["PATH"]}
    run = subprocess.run(["/usr/bin/units", "--terse", "--output-format", "%.15g", have, want],
                         capture_output=True, text=True, env=environment, check=False)
    if run.returncode != 0:
        raise SystemExit(f"GNU units cannot turn {have} into {want}: {run.stdout}{run.stderr}")
    return float(run.stdout.split()[0])


def differs(found, expected):
    return not abs(found - expected) <= TOLERANCE * abs(expected)


def in_words(exact):
    """The factor a definition such as "231/128 in3" states."""
    parts = re.fullmatch(r"([0-9.]+)(?:/([0-9.]+))?(?: (.+))?", exact)
    if parts is None or (parts[3] or "") not in DEFINED_IN:
        return None
    return Fraction(parts[1]) / Fraction(parts[2] or 1) * DEFINED_IN[parts[3] or ""]


def check_scale(symbol, exact):
    """Temperatures: the stated formula gives GNU's point at 0, at 32, where the scales meet, and on a hot day."""
    faults = []
    formula = {"degC": ("degC", lambda t: t), "degF": ("(degF - 32) / 1.8", lambda t: (t - 32) / 1.8)}[symbol]
    if exact != formula[0]:
        return [f"{symbol}: defined as {exact!r}, here {formula[0]!r}"]
    for point in (-40, 0, 32, 95, 104.5):
        expected = gnu(f"temp{symbol[-1]}({point})", "tempC")
        if abs(formula[1](point) - expected) > 1e-11:
            faults.append(f"{symbol}: {point} is {formula[1](point)} degC, by GNU units {expected}")
    return faults


def check(unit):
    symbol = unit["symbol"]
    if symbol not in KNOWN:
        return [f"{symbol}: not known here; add it with its source"]
    dimension, have, printed = KNOWN[symbol]
    if unit["dimension"] != dimension:
        return [f"{symbol}: is a {unit['dimension']}, here a {dimension}"]
    faults = []
    for name, expected in (("GNU units", gnu(have, ENGINE[dimension])), ("the printed tables", float(printed))):
        if differs(unit["factor"], expected):
            faults.append(f"{symbol}: {unit['factor']!r}, by {name} {expected!r}")
    if dimension == "temperature":
        faults += check_scale(symbol, unit["exact"])
    else:
        worded = in_words(unit["exact"])
        if worded is None or differs(float(worded), float(printed)):
            faults.append(f"{symbol}: {unit['exact']!r} does not define {float(printed)!r}")
    if not unit["source"]:
        faults.append(f"{symbol}: no source")
    return faults


def main(program):
    run = subprocess.run([program, "table", "units", "--json"], capture_output=True, text=True, check=True)
    units = json.loads(run.stdout)["units"]
    symbols = [unit["symbol"] for unit in units]
    faults = [fault for unit in units for fault in check(unit)]
    faults += [f"{symbol}: known here, not listed by the program" for symbol in KNOWN if symbol not in symbols]
    faults += [f"{symbol}: listed twice" for symbol in set(symbols) if symbols.count(symbol) > 1]
    if len(units) < FEWEST:
        faults.append(f"only {len(units)} units were compared, at least {FEWEST} are wanted")
    print("\n".join(faults) if faults else f"{len(units)} units agree with GNU units and the printed tables")
    return 1 if faults else 0


if __name__ == "__main__":
    if len(sys.argv) != 2:
        raise SystemExit(__doc__)
    sys.exit(main(sys.argv[1]))
