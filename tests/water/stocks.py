#!/usr/bin/python3
"""Stock for a proportioner by published examples and by an own sum.   stocks.py PROGRAM [--courses=N]

Nothing here comes from the program: ounces and gallons are NIST's, the examples their publishers'."""
import json
import math
import pathlib
import random
import subprocess
import sys
import tempfile

GALLON, OUNCE = 3.785411784, 28.349523125  # L and g, exact: NIST Handbook 44, Appendix C
FLUID = GALLON / 128 * 1000  # mL

# rate, stock, ratio, water, g and mL of product, mL of stock
PUBLISHED = [
    # Bacitracin soluble pack of 4.096 oz: in 1 gal of stock, 1 fl oz to the gallon, it treats 128 gal (DailyMed, set id
    # af957e43-416d-4284-82e5-d31d06d8066f)
    (None, "4.096 oz per gal", "1:128", "128 gal", 4.096 * OUNCE, None, GALLON * 1000),
    # 1:100 delivers 100 gal of a gallon of concentrate (UMass, chart of ratios and concentrations)
    ("1 oz per 100 gal", None, "1:100", "100 gal", OUNCE, None, GALLON * 1000),
    # a gallon of concentrate ADDED to each 100 gal (hummert.com, how to mix a concentrate): 101 gal in all
    ("1 oz per 101 gal", None, "1:100 added", "101 gal", OUNCE, None, GALLON * 1000),
    # 0.5 lb in a gallon of stock at 1 fl oz to the gallon: 1/16 oz in each (Alabama Extension; research, W4)
    (None, "0.5 lb per gal", "1:128", "1 gal", OUNCE / 16, None, FLUID),
    # Amprolium 9.6 % to 0.024 %: 16 fl oz in 50 gal (21 CFR 520.100, levels). Chickens and turkeys; arithmetic only.
    ("16 fl oz per 50 gal", None, "1:128", "50 gal", None, 16 * FLUID, 50 * FLUID),
    # Toltrazuril 25 mg/mL: 1.4 mL to a litre, 28 mL in the 20 L that 100 kg of birds drink (its EU summary). Chickens.
    ("1.4 mL per L", None, "1:100", "20 L", None, 28, 200),
]

# rate by weight of birds, their weight, water, mL of product
BY_WEIGHT = [
    # Amprolium 400 mg/mL: 20 mg/kg a day is 0.05 mL/kg (its summary, United Kingdom; the strength follows: 20 / 0.05)
    ("0.05 mL per kg", "100 kg", "20 L", 20 / 400 * 100),
    # Toltrazuril 25 mg/mL: 7 mg/kg is 28 mL to 100 kg, 1.4 mL to each of the 20 L they drink (its EU summary). Chickens.
    ("28 mL per 100 kg", "100 kg", "20 L", 7 / 25 * 100),
    ("28 mL per 100 kg", "60 kg", "12 L", 1.4 * 12),
    ("1 fl oz per 100 lb", "50 lb", "5 gal", FLUID / 2),
]

# A premix of 30 g/lb in 5 lb of carrier, of 50 g/lb in 9 lb: both 5 g/lb, of which 0.8 lb gives 4 g to the short ton, and
# 50 lb 250 g (bacitracin, type A labels). The drug stands in the place of an amino acid.
POUND, TON = 453.59237, 2000  # g and lb
PREMIXES = [(30, 1, 5, 5), (50, 1, 9, 5), (5, 0.8, TON - 0.8, 4 / TON), (5, 50, TON - 50, 250 / TON)]
BLEND = """[ingredient.premix]
lysine = "{share} %"
price = "1 per lb"
[ingredient.carrier]
lysine = "0 %"
price = "1 per lb"
[blend.one]
batch = "{batch} lb"
"""

FARM = """[farm]
name = "Line"
units = "metric"
chores = ["07:00", "18:00"]
[feed.starter]
protein = "26 %"
[drinker.line]
plumbed = true
[supplement.salts]
{rate}
stock = {{ proportioner = "{ratio}", tank = "{tank} L", keeps = "{keeps} d"{strength} }}
[[hatch]]
name = "A"
kind = "bobwhite"
date = 2027-04-05
chicks = {first}
feeding = [{{ feed = "starter", from = "0 d" }}]
until = "8 wk"
drinker = "line"
courses = [{{ supplement = "salts", from = "{start} d", days = {days} }}]
[[hatch]]
name = "B"
kind = "coturnix"
date = 2027-04-05
chicks = {second}
feeding = [{{ feed = "starter", from = "0 d" }}]
until = "8 wk"
drinker = "line"
courses = [{{ supplement = "salts", from = "{other} d", days = {days} }}]
"""


def answer(program, *words):
    run = subprocess.run([program, "mix", *words, "--json"], capture_output=True, text=True, check=True)
    return json.loads(run.stdout)


def near(found, expected, tolerance=1e-9):
    if expected is None or found is None:
        return expected is None and found is None
    return math.isclose(found, expected, rel_tol=tolerance, abs_tol=1e-9)


def published(program):
    for rate, stock, ratio, water, grams, millilitres, of_stock in PUBLISHED:
        flags = ["--rate", rate] if rate else ["--stock", stock]
        mix = answer(program, *flags, "--proportioner", ratio, "--water", water)["mix"]
        found = (mix["product_g"], mix["product_ml"], mix["stock_ml"])
        if not all(map(near, found, (grams, millilitres, of_stock))):
            yield f"{rate or stock} at {ratio} for {water}: {found}, published {(grams, millilitres, of_stock)}"


def by_weight(program):
    for rate, flock, water, expected in BY_WEIGHT:
        answered = answer(program, "--rate", rate, "--flock", flock, "--water", water)
        found, ids = answered["mix"]["product_ml"], [one["id"] for one in answered["cautions"]]
        if not near(found, expected) or "dose-by-weight" not in ids:
            yield f"{rate}, {flock} in {water}: {found} mL, published {expected}; {ids}"
    ids = [one["id"] for one in answer(program, "--rate", "1.4 mL per L", "--water", "20 L")["cautions"]]
    if "dose-by-weight" in ids:
        yield f"a rate by water: {ids}"


def premixes(program, folder):
    file = folder / "premix.toml"
    for strength, some, carrier, expected in PREMIXES:
        file.write_text(BLEND.format(share=repr(100 * strength / POUND), batch=some + carrier))
        run = subprocess.run([program, "blend", str(file), "--amounts", f"premix={some} lb", "--amounts",
                              f"carrier={carrier} lb", "--json"], capture_output=True, text=True, check=True)
        analysis = json.loads(run.stdout)["blends"][0]["analysis"]
        found = [one["level"] / 100 * POUND for one in analysis if one["nutrient"] == "lysine"]
        if len(found) != 1 or not near(found[0], expected):
            yield f"{some} lb of {strength} g/lb in {carrier} lb: {found} g/lb, published {expected}"


def course(program, folder, dice):
    parts, added = dice.choice([64, 100, 128, 200]), dice.random() < 0.5
    share = 1 / (parts + added)
    by_stock, liquid = dice.random() < 0.5, dice.random() < 0.5
    amount = round(dice.uniform(20, 300), 1) if by_stock else round(dice.uniform(0.1, 3), 2)
    unit = "mL" if liquid else "g"
    words = f'"{amount} {unit} per L"'
    drunk = amount * share if by_stock else amount  # g or mL in a litre
    tank, keeps = round(dice.uniform(0.3, 3), 2), dice.choice([1, 2, 3])
    text = FARM.format(rate="" if by_stock else f"rate = {words}", strength=f", strength = {words}" if by_stock else "",
                       ratio=f"1:{parts}" + (" added" if added else dice.choice(["", " in all"])), tank=tank,
                       keeps=keeps, first=dice.randint(50, 400), second=dice.randint(50, 400),
                       start=dice.randint(7, 20), other=dice.randint(7, 20), days=dice.randint(1, 7))
    (folder / "line.toml").write_text(text)
    found = answer(program, str(folder / "line.toml"), "--now", "2027-04-01T12:00")
    line, day = found["stocks"][0], {}
    total = 0
    for hatch in found["hatches"]:
        for batch in hatch["mix"]["batches"]:
            day[batch["at"][:10]] = day.get(batch["at"][:10], 0) + batch["water_l"]
            total += batch["water_l"]
            if not near(batch["product_ml" if liquid else "product_g"], drunk * batch["water_l"]):
                yield f"{batch}: by hand {drunk * batch['water_l']} {unit}\n{text}"
            if not near(batch["stock_ml"], 1000 * share * batch["water_l"]):
                yield f"{batch}: by hand {1000 * share * batch['water_l']} mL of stock\n{text}"
    if [(one["day"], round(one["stock_ml"], 6)) for one in line["days"]] != \
            [(at, round(1000 * share * litres, 6)) for at, litres in sorted(day.items())]:
        yield f"{line['days']}: by hand {day}\n{text}"
    if not near(line["stock_ml_per_l" if liquid else "stock_g_per_l"], drunk / share):
        yield f"a litre of stock: {line}\n{text}"
    # a tank that is never too small is filled for all that runs through
    small = any(one["id"] == "stock-tank-too-small" for one in found["cautions"])
    filled = sum(one["put_in_l"] for one in line["fills"])
    if not small and not near(filled, share * total, 1e-6):
        yield f"the tank is filled with {filled}, by hand {share * total}\n{text}"
    if small and not filled < share * total:
        yield f"too small a tank, but it holds all\n{text}"
    for one in line["fills"]:
        if one["put_in_l"] > tank * (1 + 1e-9) or one["do_at"][11:16] not in ("07:00", "18:00"):
            yield f"{one}\n{text}"


def main():
    program = str(pathlib.Path(sys.argv[1]).resolve())
    count = next((int(word[10:]) for word in sys.argv if word.startswith("--courses=")), 30)
    dice, found = random.Random(15), list(published(program))
    found += by_weight(program)
    with tempfile.TemporaryDirectory() as folder:
        found += premixes(program, pathlib.Path(folder))
        for _ in range(count):
            found += course(program, pathlib.Path(folder), dice)
    print("\n".join([*found[:5], f"{len(PUBLISHED) + len(BY_WEIGHT) + len(PREMIXES)} examples, {count} farms, {len(found)} findings"]))
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
