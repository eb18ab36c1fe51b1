#!/usr/bin/python3
"""An answer needs only what it uses: a farm file with a fault in a part that a command does not use is answered all the
same, and as a file without that fault is.   run_needs_only.py PROGRAM [--self-test]

Each fault must stop the commands that do use the part (exit 1 or 2), or it would be none."""
import pathlib
import subprocess
import sys
import tempfile

FARM = """# Invented.
[farm]
name = "Parts"
units = "metric"
[feed.starter]
protein = "26 %"
bag = "20 kg"
price = 20.00
[hopper.tube]
volume = "12 L"
[drinker.bell]
volume = "4 L"
[supplement.tonic]
rate = "2 g per L"
days = 5
keeps = "24 h"
pack = "500 g"
[ingredient.corn]
like = "corn_yellow"
price = "300 per tonne"
[ingredient.soy]
like = "sbm_485"
price = "600 per tonne"
[blend.a]
use = ["corn", "soy"]
need = { protein = "20 %" }
[blend.b]
use = ["corn", "soy"]
need = { protein = "22 %" }
[[hatch]]
name = "Chukars"
kind = "chukar"
date = 2027-04-05
chicks = 200
feeding = [{ feed = "starter", from = "0 d" }]
until = "40 wk"
hopper = "tube"
hoppers = 3
drinker = "bell"
drinkers = 4
supplement = "tonic"
"""

EARLY = ["--from", "2027-04-05", "--to", "2027-05-05"]
CHECK, MIX, SEASON, BUY, LAST = ["check", "F"], ["mix", "F"], ["season", "F"], ["buy", "F"], \
    ["last", "F", "--on", "2027-04-20T05:00"]
TRIPS, CSV, PLAN = ["buy", "F", "--plan"], ["buy", "F", "--csv"], ["plan", "F"]
AWAY = ["away", "F", "--from", "2027-04-20", "--until", "2027-04-22"]

# name, what is changed to what, commands that are to answer as ever, commands that are to refuse
FAULTS = [
    ("a hopper of 1 mL", 'volume = "12 L"', 'volume = "1 mL"', [CHECK, MIX, SEASON], [PLAN, BUY]),
    ("a drinker of 1 mL", 'volume = "4 L"', 'volume = "1 mL"', [CHECK, SEASON], [PLAN, MIX]),
    ("a rate of laying that is not known", 'until = "40 wk"', 'until = "40 wk"\nlaying_from = "30 wk"',
     [BUY + EARLY, PLAN + EARLY, CSV + EARLY, LAST, MIX, AWAY], [PLAN, BUY, SEASON]),
    ("a pack of a microgram", 'pack = "500 g"', 'pack = "0.001 mg"', [CHECK, MIX, SEASON, LAST, AWAY], [PLAN, BUY]),
    ("a bag of a microgram", 'bag = "20 kg"', 'bag = "0.001 mg"', [CHECK, MIX, LAST, AWAY], [PLAN, BUY]),
    ("more birds sold than there are", 'until = "40 wk"', 'until = "40 wk"\nremoved = [{ at = "8 wk", birds = 300 }]',
     [CHECK], [PLAN]),
    ("another blend of what is not there", 'use = ["corn", "soy"]\nneed = { protein = "22 %" }',
     'use = ["corn", "gold"]\nneed = { protein = "22 %" }', [["blend", "F", "--name", "a"]],
     [["blend", "F"], ["blend", "F", "--name", "b"]]),
    ("a blend of what is not there", 'use = ["corn", "soy"]\nneed = { protein = "20 %" }',
     'use = ["corn", "gold"]\nneed = { protein = "20 %" }', [PLAN, BUY, CHECK, MIX, LAST], [["blend", "F"]]),
    ("another blend that says nothing known", 'need = { protein = "22 %" }', 'needs = { protein = "22 %" }',
     [["blend", "F", "--name", "a"]], [["blend", "F"]]),
]
# Birds in lay of which the rate is not known are judged by their labels all the same, as the needs of layers ask.
ANSWERED = [("a rate of laying that is not known", CHECK), ("a rate of laying that is not known", ["check", "F", "--json"])]


def ask(program, words, text, folder):
    path = folder / "farm.toml"
    path.write_text(text)
    done = subprocess.run([program, *(str(path) if word == "F" else word for word in words)], capture_output=True,
                          text=True, timeout=120)
    return done.returncode, done.stdout, done.stderr


def findings(run, faults):
    for name, old, new, answered, refused in faults:
        if FARM.count(old) != 1:
            yield f"{name}: {old!r} stands {FARM.count(old)} times"
            continue
        spoilt = FARM.replace(old, new)
        for words in answered:
            sound, here = run(words, FARM), run(words, spoilt)
            if sound[0] != 0:
                yield f"{' '.join(words)} on the sound farm: {sound}"
            elif here[:2] != sound[:2]:
                yield f"{name}: {' '.join(words)} does not answer as without it: {here[0]} {here[2] or here[1]}"
        for words in refused:
            if run(words, spoilt)[0] not in (1, 2):
                yield f"{name}: {' '.join(words)} uses it, but answers"
        for fault, words in ANSWERED:
            if fault == name and run(words, spoilt)[0] != 0:
                yield f"{name}: {' '.join(words)} does not answer: {run(words, spoilt)[2]}"


def main():
    program = sys.argv[1]
    with tempfile.TemporaryDirectory() as place:
        def run(words, text):
            return ask(program, words, text, pathlib.Path(place))

        if "--self-test" in sys.argv:  # a command that does use the part is noticed, and a fault that is none
            for name, old, new, answered, refused in FAULTS:
                swapped = list(findings(run, [(name, old, new, refused[:1], answered[:1])]))
                if len(swapped) < 2:
                    sys.exit(f"not noticed: {name}: {swapped}")
            return
        found = list(findings(run, FAULTS))
    print(*found, sep="\n")
    sys.exit(bool(found))


if __name__ == "__main__":
    main()
