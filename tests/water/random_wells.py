#!/usr/bin/python3
"""Random wells, hatches and courses, graded once more.   random_wells.py PROGRAM RATIONS [--farms=N]

The rules are written anew from what rations/water.toml and docs/model.md say: its rows, read by Python's own TOML, are held
against what birds of each hatch drink at every age that can matter; sodium is added up for each course."""
import json
import pathlib
import random
import subprocess
import sys
import tempfile
import tomllib

WORST = ["fits", "aim", "guide", "caution", "stop"]
KINDS = ["bobwhite", "coturnix", "coturnix-jumbo", "chukar", "pheasant"]
LAYERS = ["bobwhite", "coturnix", "coturnix-jumbo"]
SHARE_OF_SODIUM = 0.4594  # of hardness
NITRATE, SOLIDS, STRONG = 4.4268, 640, 800


def days(words):
    return float(words.split()[0]) if words else None


def is_past(row, value):
    if "below" in row:
        return value < row["below"] * (1 - 1e-9)
    return value >= row["above"] * (1 - 1e-9) if row["grade"] == "stop" else value > row["above"] * (1 + 1e-9)


def grade(rows, value, hatch, age):
    """(grade, level) for a hatch at an age."""
    found = []
    for row in rows:
        laying = hatch["lay"] is not None and age >= hatch["lay"]
        until = days(row.get("until"))
        if row.get("people") or not is_past(row, value) or (until is not None and age >= until):
            continue
        if "layers" in row and row["layers"] != laying:
            continue
        words = row["grade"]
        if "kinds" in row and hatch["kind"] not in row["kinds"] and words != "stop":
            words = min(words, "guide", key=WORST.index)
        further = -row["below"] if "below" in row else row["above"]
        found.append((WORST.index(words), further, row.get("above", row.get("below"))))
    return max(found)[::2] if found else (0, None)


def worst(rows, value, hatch, start, end):
    """The worst from one age to another, and the first age of it."""
    ages = [start] + ([hatch["lay"]] if hatch["lay"] is not None and start < hatch["lay"] < end else [])
    best = None
    for age in ages:
        one = grade(rows, value, hatch, age)
        if best is None or one[0] > best[0] or (best[1] is None and one[1] is not None):
            best = (*one, age)
    return best


class Wells:
    def __init__(self, seed):
        self.dice = random.Random(seed)

    def near(self, levels, top):
        """A figure near a level or anywhere."""
        level = self.dice.choice([*levels, self.dice.uniform(0, top)])
        return round(max(0, level * self.dice.choice([0.5, 0.99, 1, 1.01, 1.3])), 3)

    def hatch(self, number):
        kind = self.dice.choice(KINDS)
        until = self.dice.randint(20, 120)
        lay = self.dice.randint(40, 60) if kind in LAYERS and until > 70 and self.dice.random() < 0.6 else None
        return {"name": f"Hatch {number}", "kind": kind, "until": until, "lay": lay,
                "month": self.dice.randint(1, 9), "courses": []}

    def farm(self):
        dice = self.dice
        hatches = sorted((self.hatch(i) for i in range(dice.randint(1, 3))), key=lambda h: h["month"])
        products = {f"salts{i}": {"rate": round(dice.uniform(0.2, 6), 2),
                                  "sodium": dice.choice([None, round(dice.uniform(0, 39), 1)])}
                    for i in range(dice.randint(0, 3))}
        for hatch in hatches:
            start = 0
            for name in products:
                start += dice.randint(0, 15)
                length = dice.randint(1, 6)
                if start + length < hatch["until"] and dice.random() < 0.8:
                    hatch["courses"].append((name, start, length))
                start += length
        water = {}
        for item, levels, top in (("sodium", (32, 50, 150, 350, 492, 983, 1180, 1967), 4000),
                                  ("chloride", (14, 150, 250), 400), ("sulfate", (40, 50, 250, 1000), 2000),
                                  ("nitrite", (0.4, 4, 200), 300), ("iron", (0.2, 0.3), 5),
                                  ("manganese", (0.01, 0.05), 1), ("hardness", (100, 200), 600),
                                  ("coliforms", (0, 5000), 9000), ("ph", (6, 6.3, 7.5, 8), 9)):
            if dice.random() < 0.6:
                water[item] = self.near(levels, top)
        if dice.random() < 0.6:
            water[dice.choice(["tds", "conductivity"])] = self.near((1000, 2233, 3000, 3200, 5000), 9000)
        if dice.random() < 0.6:
            water[dice.choice(["nitrate", "nitrate_n"])] = self.near((10, 25, 44, 440), 600)
        water = water or {"iron": 0.1}
        water["softened"] = dice.random() < 0.5
        water["sampled_after"] = water["softened"] and dice.random() < 0.4
        return {"hatches": hatches, "products": products, "water": water}


def written(farm):
    lines = ['[farm]', 'name = "Wells"', 'units = "metric"', 'chores = ["05:00"]', '[feed.a]', 'protein = "26 %"', '[water]']
    for item, value in farm["water"].items():
        if item in ("softened", "sampled_after"):
            lines += [f"{item} = true"] if value else []
        elif item in ("ph", "coliforms"):
            lines.append(f"{item} = {value}")
        else:
            key, unit = ("tds", "uS/cm") if item == "conductivity" else (item, "mg/L")
            lines.append(f'{key} = "{value} {unit}"')
    for name, product in farm["products"].items():
        lines += [f"[supplement.{name}]", f'rate = "{product["rate"]} g per L"', 'keeps = "24 h"']
        lines += [f'sodium = "{product["sodium"]} %"'] if product["sodium"] is not None else []
    for hatch in farm["hatches"]:
        lines += ["[[hatch]]", f'name = "{hatch["name"]}"', f'kind = "{hatch["kind"]}"',
                  f'date = 2027-0{hatch["month"]}-10', "chicks = 40", 'feeding = [{ feed = "a", from = "0 d" }]',
                  f'until = "{hatch["until"]} d"']
        lines += [f'laying_from = "{hatch["lay"]} d"'] if hatch["lay"] is not None else []
        courses = ", ".join(f'{{ supplement = "{n}", from = "{a} d", days = {d} }}' for n, a, d in hatch["courses"])
        lines += [f"courses = [{courses}]"] if courses else []
    return "\n".join(lines) + "\n"


def drunk(water):
    """Item -> figure, behind the softener; and the sodium of well and softener, None where it is not known."""
    between = water["softened"] and not water["sampled_after"]
    softener = 0 if not between else SHARE_OF_SODIUM * water["hardness"] if "hardness" in water else None
    figures = {k: v for k, v in water.items() if k not in ("softened", "sampled_after", "conductivity", "nitrate_n")}
    if "conductivity" in water:
        siemens = water["conductivity"] / 1000
        figures["tds"] = siemens * (STRONG if siemens > 5 else SOLIDS)
    if "nitrate_n" in water:
        figures["nitrate"] = water["nitrate_n"] * NITRATE
    if "sodium" in water:
        figures["sodium"] = water["sodium"] + (softener or 0)
    if "hardness" in water and between:
        figures["hardness"] = 0
    return figures, water.get("sodium"), softener


def close(a, b):
    return a is None and b is None or None not in (a, b) and abs(a - b) <= 1e-9 * max(1, abs(b))


def findings(farm, answer, table):
    figures, well, softener = drunk(farm["water"])
    rows = {item: [row for row in table if row["item"] == item] for item in figures}
    said = {row["item"]: row for row in answer["water"]}
    if sorted(said) != sorted(figures):
        yield f"graded are {sorted(said)}, stated {sorted(figures)}"
        return
    for item, value in figures.items():
        every = [(*worst(rows[item], value, hatch, 0, hatch["until"]), hatch["name"]) for hatch in farm["hatches"]]
        bad, level, age, name = max(every, key=lambda one: one[0])
        row = said[item]
        expected = (WORST[bad], level, name)
        if (row["grade"], row["from"], row["hatch"]) != expected or not close(row["value"], value):
            yield f"{item} {value}: {row}, expected {expected} from day {age}"
        if not close(row["age_d"], age):
            yield f"{item} {value}: worst from day {row['age_d']}, expected {age}"
    order = [WORST.index(row["grade"]) for row in answer["water"]]
    if order != sorted(order, reverse=True):
        yield f"not the worst first: {answer['water']}"
    table_of_sodium = [row for row in table if row["item"] == "sodium"]
    sums = []
    for hatch in farm["hatches"]:
        base = (well or 0) + (softener or 0)
        if well is not None or softener:
            sums.append((worst(table_of_sodium, base, hatch, 0, hatch["until"])[0], base))
        for name, start, length in hatch["courses"]:
            product = farm["products"][name]
            added = None if product["sodium"] is None else 10 * product["rate"] * product["sodium"]
            if well is not None or softener or added is not None:
                total = base + (added or 0)
                sums.append((worst(table_of_sodium, total, hatch, start, start + length)[0], total))
    found = answer["sodium"]
    if not sums or found is None:
        if bool(sums) != (found is not None):
            yield f"sodium: {found}, expected {sums}"
        return
    bad, total = max(sums)
    if found["grade"] != WORST[bad] or not close(found["sum_mg_per_l"], total):
        yield f"sodium: {found}, expected {WORST[bad]} of {total}"


def main():
    program, rations = str(pathlib.Path(sys.argv[1]).resolve()), pathlib.Path(sys.argv[2])
    count = next((int(word[8:]) for word in sys.argv if word.startswith("--farms=")), 20)
    table = tomllib.loads((rations / "water.toml").read_text())["water"]
    bad, grades, courses = 0, set(), 0
    with tempfile.TemporaryDirectory() as folder:
        file = pathlib.Path(folder) / "wells.toml"
        for seed in range(count):
            farm = Wells(seed).farm()
            file.write_text(written(farm))
            run = subprocess.run([program, "check", str(file), "--json", "--now", "2026-11-25T12:00"], capture_output=True,
                                 text=True, check=False)
            found = [run.stderr] if run.returncode else list(findings(farm, json.loads(run.stdout), table))
            if not run.returncode:
                grades |= {row["grade"] for row in json.loads(run.stdout)["water"]}
            courses += sum(len(hatch["courses"]) for hatch in farm["hatches"])
            if found:
                bad += 1
                print(f"farm {seed}:", *found, sep="\n    ")
            if not seed:  # a spoiled answer is noticed
                answer = json.loads(run.stdout)
                answer["water"][0]["grade"] = "aim" if answer["water"][0]["grade"] == "fits" else "fits"
                assert list(findings(farm, answer, table)), "a spoiled grade is not noticed"
    print(f"{count} farms with {courses} courses, grades {sorted(grades)}, {bad} with findings")
    return 1 if bad or (count >= 20 and (len(grades) < 5 or not courses)) else 0


if __name__ == "__main__":
    sys.exit(main())
