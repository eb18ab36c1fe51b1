#!/usr/bin/python3
"""Each caution about courses in the water: a farm on which it is said, and the nearest one on which it is not.
   twins.py PROGRAM [--self-test]

Withdrawals and days are sums of this file; what is approved in water is 21 CFR 520.100 (amprolium: chickens, turkeys,
pheasants) and 520.154a (bacitracin methylenedisalicylate: quail among others)."""
import json
import pathlib
import subprocess
import sys
import tempfile

FARM = """# Invented.
[farm]
name = "Line"
units = "metric"
chores = ["07:00", "18:00"]
[feed.starter]
protein = "26 %"
{feed}
[drinker.line]
{drinker}
[supplement.given]
{given}
[[hatch]]
name = "A"
kind = "bobwhite"
date = 2027-04-05
chicks = 300
feeding = [{{ feed = "starter", from = "0 d" }}]
drinker = "line"
{hatch}
"""
PLUMBED, JUG = "plumbed = true", 'volume = "2 L"\nchange_every = "1 d"'
PLAIN = 'rate = "5 g per L"\nkeeps = "24 h"\n'
TANK = 'rate = "1 g per L"\nkeeps = "1 d"\nstock = {{ proportioner = "1:100", tank = "{} L", keeps = "{}" }}\n'
DRUG = PLAIN + 'drug = "amprolium"\n'


def hatch(until="8 wk", start=10, days=5, more=""):
    return f'until = "{until}"\ncourses = [{{ supplement = "given", from = "{start} d", days = {days} }}]\n{more}'


def case(given=PLAIN, birds=None, drinker=JUG, feed="", kind="bobwhite"):
    text = FARM.format(given=given, hatch=birds or hatch(), drinker=drinker, feed=feed)
    return text.replace('kind = "bobwhite"', f'kind = "{kind}"')


def medicated(drug):
    return f'medicated = {{ drug = "{drug}", per_short_ton = "73 g", withdrawal = "0 d" }}'


LAY = 'laying_from = "16 wk"'
# id, what its words hold, the farm that shows it, its twin
TWINS = [
    # given on days 10 to 15, so birds may go from day 18 on; 18 d is no earlier than that
    ("drug-withdrawal", "", case(DRUG + 'withdrawal = "3 d"', hatch(until="17 d")),
     case(DRUG + 'withdrawal = "3 d"', hatch(until="18 d"))),
    ("drug-withdrawal", "", case(DRUG + 'withdrawal = "3 d"', hatch(more='removed = [{ at = "17 d", birds = 5 }]')),
     case(DRUG + 'withdrawal = "3 d"', hatch(more='removed = [{ at = "18 d", birds = 5 }]'))),
    ("eggs-withdrawal", "", case(DRUG + 'eggs_withdrawal = "4 d"', hatch("20 wk", 110, 5, LAY)),
     case(DRUG + 'eggs_withdrawal = "0 d"', hatch("20 wk", 110, 5, LAY))),
    ("eggs-withdrawal", "", case(DRUG + 'eggs_withdrawal = "4 d"', hatch("20 wk", 110, 5, LAY)),
     case(DRUG + 'eggs_withdrawal = "4 d"', hatch("20 wk", 10, 5, LAY))),
    ("water-drug-eggs", "in lay", case(DRUG, hatch("20 wk", 115, 5, LAY)), case(DRUG, hatch("15 wk", 99, 5))),
    ("water-drug-eggs", "", case(DRUG, hatch("20 wk", 105, 5, LAY)), case(DRUG, hatch("20 wk", 80, 5, LAY))),
    ("water-drug-approval", "veterinarian must order it", case(DRUG),
     case(PLAIN + 'drug = "bacitracin methylenedisalicylate"')),
    ("water-drug-conditions", "", case(PLAIN + 'drug = "bacitracin methylenedisalicylate"'), case(DRUG)),
    ("drug-in-feed-and-water", "double", case(DRUG, feed=medicated("amprolium")), case(DRUG)),
    ("drug-in-feed-and-water", "two medicines", case(DRUG, feed=medicated("monensin")),
     case(PLAIN, feed=medicated("monensin"))),
    ("drug-unknown", "", case(PLAIN + 'drug = "snake oil"'), case(DRUG)),
    ("thiamine", "", case(PLAIN + 'title = "Vitamin tonic"', feed=medicated("amprolium")),
     case(PLAIN + 'title = "Vitamin tonic"', feed=medicated("monensin"))),
    ("vitamins-for-weeks", "8 d", case(PLAIN + 'title = "Vitamins"', hatch(days=8)),
     case(PLAIN + 'title = "Vitamins"', hatch(days=7))),
    ("acid-in-metal", "zinc", case(PLAIN + 'title = "Cider vinegar"'), case(PLAIN + 'title = "Cider"')),
    ("bare-ounces", "28.35 g", case('rate = "1 oz per 10 gal"\nkeeps = "1 d"'),
     case('rate = "1 fl oz per 10 gal"\nkeeps = "1 d"')),
    ("solution-life-unstated", "", case('rate = "5 g per L"'), case()),
    # somebody is there at 07:00 and 18:00: 13 hours apart at most
    ("solution-life", "", case('rate = "5 g per L"\nkeeps = "12 h"'), case('rate = "5 g per L"\nkeeps = "13 h"')),
    ("stock-life", "", case(TANK.format(2, "12 h"), drinker=PLUMBED), case(TANK.format(2, "13 h"), drinker=PLUMBED)),
    # 300 chicks of two weeks drink some litres a day: a hundredth of them is more than 1 mL, less than 1 L in half a day
    ("stock-tank-too-small", "", case(TANK.format(0.001, "2 d"), drinker=PLUMBED),
     case(TANK.format(1, "2 d"), drinker=PLUMBED)),
    ("stock-off-label", "", case('rate = "1 g per L"\nkeeps = "1 d"\nstock = { strength = "103 g per L", '
                                 'proportioner = "1:100" }', drinker=PLUMBED),
     case('rate = "1 g per L"\nkeeps = "1 d"\nstock = { strength = "101 g per L", proportioner = "1:100" }',
          drinker=PLUMBED)),
    # 1 mg of sodium chloride is 0.3934 mg of sodium; 983 mg/L kills young Japanese quail, 492 holds back their growth
    ("sodium-lethal", "984", case('rate = "2.5 g per L"\nsodium = "39.34 %"\nkeeps = "1 d"', kind="coturnix"),
     case('rate = "2.4 g per L"\nsodium = "39.34 %"\nkeeps = "1 d"', kind="coturnix")),
    ("dose-too-small", "", case('rate = "0.001 g per L"\nkeeps = "1 d"'), case()),
]


def said(program, folder, text):
    file = pathlib.Path(folder) / "line.toml"
    file.write_text(text)
    run = subprocess.run([program, "plan", str(file), "--now", "2027-04-01T12:00", "--json"], capture_output=True,
                         text=True)
    if run.returncode:
        return None, run.stderr
    return {}, json.loads(run.stdout)["cautions"]


def findings(program, folder, twins):
    for name, words, shown, silent in twins:
        for text, due in ((shown, True), (silent, False)):
            answered, cautions = said(program, folder, text)
            if answered is None:
                yield f"{name}: {cautions}"
                continue
            found = [one["text"] for one in cautions if one["id"] == name and words in one["text"]]
            if bool(found) != due:
                yield f"{name} {words!r} is {'missing' if due else 'said'}:\n{text}"


def main():
    program = str(pathlib.Path(sys.argv[1]).resolve())
    with tempfile.TemporaryDirectory() as folder:
        if "--self-test" in sys.argv:  # twins exchanged: each is found twice
            wrong = [(name, words, silent, shown) for name, words, shown, silent in TWINS]
            count = len(list(findings(program, folder, wrong)))
            print(f"{count} of {2 * len(TWINS)} exchanged farms are found")
            return 0 if count == 2 * len(TWINS) else 1
        found = list(findings(program, folder, TWINS))
    print("\n".join([*found, f"{len(TWINS)} pairs, {len(found)} findings"]))
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
