#!/usr/bin/python3
"""500 random blends, each solved by `PROGRAM blend FILE --json`, by SciPy's HiGHS and by glpsol.

random_blends.py PROGRAM RATIONS [COUNT]     random_blends.py --self-test RATIONS

The blends are written as a user writes them, 50 to a file. Compared: the verdict; the least cost, to 1e-7; on requests
that nothing can keep, the least total shortfall; the cost of each change; the duals where the corner is no crossing of
more limits than it needs; and that the amounts on the scale add up to the batch and hold what the analysis says. A third
of the blends are for birds: their needs, the floors that other kinds lend and the built-in limits are read here from
RATIONS, and half of those are scaled to the mix's own energy. The others are of no kind, half of them of birds in lay:
they are held to the built-in ceilings too, wherever their own figures do not say otherwise."""
import json
import pathlib
import random
import subprocess
import sys
import tempfile
import tomllib

import numpy as np
from scipy.optimize import linprog

SEED, PER_FILE, TOLERANCE, DUAL_TOLERANCE = 20270405, 50, 1e-7, 1e-6
ACTIVE = 1e-9
UNITS = {"protein": "%", "lysine": "%", "met_cys": "%", "threonine": "%", "calcium": "%", "npp": "%", "sodium": "%",
         "fibre": "%", "fat": "%", "linoleic": "%", "tryptophan": "%", "arginine": "%", "valine": "%",
         "energy": "kcal/kg", "zinc": "mg/kg", "choline": "mg/kg", "niacin": "mg/kg", "iron": "mg/kg",
         "vit_a": "IU/kg", "riboflavin": "mg/kg"}
TOPS = {"%": 60, "kcal/kg": 4000, "mg/kg": 2000, "IU/kg": 20000}
KINDS = [("bobwhite", "bobwhite", "0 to 6 wk"), ("bobwhite", "bobwhite", "over 6 wk"),
         ("coturnix", "japanese-quail", None), ("pheasant", "pheasant", "0 to 4 wk")]


def said(x):
    """As a file says a number: without an exponent."""
    return np.format_float_positional(x, trim="-")


def number(text):
    return float(text.split()[0])


def rounded(x):
    return float(f"{x:.5g}")


# Random blends. Every figure is rounded to what the file will say.

def random_ingredients(rng, count, nutrients):
    made = []
    for _ in range(count):
        holds = {}
        for key in nutrients:
            if rng.random() < 0.2:
                continue  # unknown
            low, high = (600, 4000) if key == "energy" else (0.01 * TOPS[UNITS[key]], TOPS[UNITS[key]])
            least = rounded(rng.uniform(low, high) * (1 if key == "energy" else rng.random()))
            least = max(least, 600) if key == "energy" else least
            most = rounded(least * rng.uniform(1, 1.2)) if rng.random() < 0.2 and key != "energy" else least
            holds[key] = (least, max(least, most))
        made.append({"price": rounded(rng.uniform(50, 2500)), "holds": holds, "like": None,
                     "at_least": rounded(rng.uniform(0, 10)) if rng.random() < 0.1 else 0,
                     "at_most": rounded(rng.uniform(15, 80)) if rng.random() < 0.3 else None})
    return made


def free_blend(rng):
    nutrients = rng.sample(sorted(UNITS), rng.randint(1, len(UNITS)))
    ingredients = random_ingredients(rng, rng.randint(2, 20), nutrients)
    weights = np.array([rng.random() ** 3 for _ in ingredients])
    weights /= weights.sum()
    need = {}
    for key in nutrients:
        held = sum(w * i["holds"].get(key, (0, 0))[0] for w, i in zip(weights, ingredients))
        if held < 1e-3:
            continue
        floor = rounded(held * rng.uniform(0.3, 1.04))
        if key == "energy":
            floor = max(floor, 500)
        ceiling = rounded(max(floor, held * rng.uniform(1.05, 2))) if rng.random() < 0.4 else None
        need[key] = (floor, ceiling)
    return {"ingredients": ingredients, "need": need, "kind": None, "laying": rng.random() < 0.5}


def bird_blend(rng, rations):
    built_in = rations.built_in
    grain = ["corn_yellow", "sbm_485", "limestone", "dicalcium_phosphate", "salt", "dl_methionine"]
    others = [key for key in built_in if key not in grain]
    ingredients = []
    for key in [k for k in grain if rng.random() < 0.93] + rng.sample(others, rng.randint(2, 12)):
        ingredients.append({"price": rounded(rng.uniform(50, 2500)), "like": key, "holds": built_in[key], "at_least": 0,
                            "mineral": key in rations.minerals,
                            "at_most": rounded(rng.uniform(5, 60)) if rng.random() < 0.1 else None})
    kind, table, phase = rng.choice(KINDS)
    need = {"protein": (rounded(rng.uniform(14, 24)), None)} if rng.random() < 0.5 else {}
    return {"ingredients": ingredients, "need": need, "kind": kind, "table": table, "phase": phase}


def as_toml(blends):
    lines = []
    for b, blend in enumerate(blends):
        for i, one in enumerate(blend["ingredients"]):
            lines += [f"[ingredient.b{b}i{i}]", f'price = "{said(one["price"])} per tonne"']
            lines += [f'like = "{one["like"]}"'] if one["like"] else []
            lines += [f'at_least = "{said(one["at_least"])} %"'] if one["at_least"] else []
            lines += [f'at_most = "{said(one["at_most"])} %"'] if one["at_most"] else []
            if one["like"]:
                continue
            for key, (least, most) in one["holds"].items():
                unit = UNITS[key]
                lines.append(f'{key} = "{said(least)} {unit}"' if least == most
                             else f'{key} = ["{said(least)} {unit}", "{said(most)} {unit}"]')
        names = ", ".join(f'"b{b}i{i}"' for i in range(len(blend["ingredients"])))
        lines += [f"[blend.b{b}]", 'batch = "100 kg"', 'scale = "50 g"', f"use = [{names}]"]
        if blend["kind"]:
            lines.append(f'kind = "{blend["kind"]}"')
            lines.append(f'phase = "{blend["phase"]}"' if blend["phase"] else "laying = true")
        elif blend["laying"]:
            lines.append("laying = true")
        lines.append(f"[blend.b{b}.need]")
        for key, (floor, ceiling) in blend["need"].items():
            unit = UNITS[key]
            lines.append(f'{key} = "{said(floor)} {unit}"' if ceiling is None
                         else f'{key} = ["{said(floor)} {unit}", "{said(ceiling)} {unit}"]')
    return "\n".join(lines) + "\n"


# The same blends as linear programs, from the tables themselves.

class Rations:
    def __init__(self, folder):
        load = lambda name: tomllib.loads((folder / name).read_text())
        self.rules = load("blend_limits.toml")["rule"]
        self.guides = load("blend_limits.toml")["guide"]
        self.needs = {n: load(f"needs/{n}.toml")["phase"] for n in ("bobwhite", "japanese-quail", "pheasant")}
        known = set(UNITS) | {k for phases in self.needs.values() for p in phases for k in p} | {"methionine", "chlorine", "phosphorus"}
        known -= {"name", "from", "to", "laying", "found", "source", "standing"}
        rows = load("ingredients.toml")["ingredient"]
        self.built_in = {one["key"]: {k: (number(v), number(v)) for k, v in one.items() if k in known} for one in rows}
        self.minerals = {one["key"] for one in rows if one.get("mineral")}

    def phase(self, blend):
        return next(p for p in self.needs[blend["table"]]
                    if (p.get("laying", False) if blend["phase"] is None else p["name"] == blend["phase"]))


def energies(ingredients, usual):
    """What each holds; a mineral none, and anything else that states none as much as the feed the needs are for."""
    return np.array([one["holds"].get("energy", [0 if one.get("mineral") else usual])[0] for one in ingredients])


def weeks(text):
    """An age, in weeks."""
    amount, unit = text.split()
    return float(amount) / {"d": 7, "wk": 1}[unit]


def borrowed(rations, phase):
    """Floors of the guides that fit a phase and of which its table says nothing."""
    start, laying = weeks(phase.get("from", "0 d")), phase.get("laying", False)
    for guide in rations.guides:
        in_time = laying or weeks(guide.get("from", "0 d")) <= start < weeks(guide.get("to", "999 wk"))
        if guide["laying"] == laying and in_time and guide["nutrient"] not in phase:
            yield guide["nutrient"], number(guide["at_least"])


def ceilings(blend, rations, laying, energy):
    """Built-in ceilings on nutrients, as (nutrient, nutrient it goes with or None, level). The owner's own ceiling, and
    an own floor above the built-in one, come first; a floor above that of growing birds is held to that of layers."""
    of_nutrients = [r for r in rations.rules if "nutrient" in r]
    plain = {(r["nutrient"], r["laying"]): number(r["at_most"]) for r in of_nutrients
             if "per" not in r and not r.get("of_table")}
    for rule in of_nutrients:
        key = rule["nutrient"]
        floor, ceiling = blend["need"].get(key, (0, None))
        if rule["laying"] != laying:
            continue
        if "per" in rule:
            if floor <= plain[key, laying]:
                yield key, rule["per"], rule["at_most"]
        elif rule.get("of_table"):
            if energy and ceiling is None and floor <= rule["at_most"] * energy:
                yield key, None, rule["at_most"] * energy
        elif ceiling is None and floor <= plain[key, laying]:
            yield key, None, plain[key, laying]
        elif ceiling is None and floor <= plain[key, True]:
            yield key, None, plain[key, True]


def limits_of(blend, rations, by_energy):
    """Limits as (subject, floor?, row, side, level); ingredients' own limits have a number as subject, the ratio of two
    nutrients has both."""
    ingredients = blend["ingredients"]
    stated = {key for one in ingredients for key in one["holds"]}
    column = lambda key, end: np.array([one["holds"].get(key, (0, 0))[end] for one in ingredients])
    limits = []

    def nutrient(key, floor, level, energy=None):
        if key not in stated:
            return
        row = column(key, 0 if floor else 1)
        side = level
        if energy:
            row, side = row - level * energies(ingredients, energy) / energy, 0
        limits.append((key, floor, row, side, level))

    for key, (floor, ceiling) in blend["need"].items():
        nutrient(key, True, floor)
        if ceiling is not None:
            nutrient(key, False, ceiling)
    laying, energy = blend.get("laying", False), None
    if blend["kind"]:
        phase = rations.phase(blend)
        energy, laying = number(phase["energy"]), phase.get("laying", False)
        if not by_energy:
            nutrient("energy", True, energy)
        floors = [(key, number(level)) for key, level in phase.items()
                  if key not in ("name", "from", "to", "laying", "found", "energy", "source", "standing")]
        for key, level in floors + list(borrowed(rations, phase)):
            if key not in blend["need"]:
                nutrient(key, True, level, energy if by_energy else None)
    for key, per, level in ceilings(blend, rations, laying, None if by_energy else energy):
        if per is None:
            nutrient(key, False, level)
        elif {key, per} <= stated:
            limits.append(((key, per), False, column(key, 1) - level * column(per, 0), 0, level))
    rules = [r for r in rations.rules if "like" in r and r["laying"] == laying]
    for i, one in enumerate(ingredients):
        unit = np.eye(len(ingredients))[i]
        if one["at_least"]:
            limits.append((i, True, unit, one["at_least"] / 100, one["at_least"] / 100))
        most = [one["at_most"]] if one["at_most"] else [number(r["at_most"]) for r in rules if r["like"] == one["like"]]
        if most:
            limits.append((i, False, unit, most[0] / 100, most[0] / 100))
    return limits


def solve(blend, limits):
    """HiGHS's verdict, least cost, shares and a dual for each limit."""
    cost = np.array([one["price"] / 1000 for one in blend["ingredients"]])
    sign = np.array([-1 if floor else 1 for _, floor, *_ in limits])
    scale = np.array([np.abs(row).max() or 1 for _, _, row, _, _ in limits])
    rows = np.array([s * row for s, (_, _, row, _, _) in zip(sign / scale, limits)]).reshape(len(limits), len(cost))
    sides = np.array([s * side for s, (_, _, _, side, _) in zip(sign / scale, limits)])
    options = {"primal_feasibility_tolerance": 1e-10, "dual_feasibility_tolerance": 1e-10}
    done = linprog(cost, A_ub=rows if limits else None, b_ub=sides if limits else None, A_eq=np.ones((1, len(cost))),
                   b_eq=[1], bounds=(0, None), method="highs", options=options)
    if done.status not in (0, 2):
        raise SystemExit(f"HiGHS ended with {done.message}")
    if done.status == 2:
        return {"possible": False, "shortfall": shortfall(limits, len(cost))}
    duals = done.ineqlin.marginals * sign / scale if limits else np.array([])
    slack = np.abs(rows @ done.x - sides) / np.maximum(1, np.abs(sides)) if limits else np.array([])
    crossing = int((slack < ACTIVE).sum() + (done.x < ACTIVE).sum() + 1)
    return {"possible": True, "cost": done.fun, "x": done.x, "duals": duals, "clear": crossing == len(cost)}


def shortfall(limits, columns):
    """The least total shortfall with each limit on a nutrient counted in shares of itself."""
    soft = [l for l in limits if not isinstance(l[0], int)]
    hard = [l for l in limits if isinstance(l[0], int)]
    rows, sides = [], []
    for k, (_, floor, row, side, level) in enumerate(soft):
        s = -1 if floor else 1
        rows.append(np.concatenate([s * row / level, -np.eye(len(soft))[k]]))
        sides.append(s * side / level)
    for _, floor, row, side, _ in hard:
        s = -1 if floor else 1
        rows.append(np.concatenate([s * row, np.zeros(len(soft))]))
        sides.append(s * side)
    done = linprog(np.concatenate([np.zeros(columns), np.ones(len(soft))]), A_ub=np.array(rows), b_ub=sides,
                   A_eq=[[1] * columns + [0] * len(soft)], b_eq=[1], bounds=(0, None), method="highs")
    return done.fun if done.status == 0 else None


def ask_glpsol(blend, limits, folder):
    """glpsol's verdict and least cost of the same program, from a file in the CPLEX format."""
    term = lambda row: " ".join(f"{'+' if a >= 0 else '-'} {abs(float(a))!r} x{j}" for j, a in enumerate(row) if a != 0)
    lines = ["Minimize", " cost: " + term([one["price"] / 1000 for one in blend["ingredients"]]), "Subject To",
             " whole: " + term(np.ones(len(blend["ingredients"]))) + " = 1"]
    for k, (_, floor, row, side, _) in enumerate(limits):
        if np.any(row != 0):
            lines.append(f" r{k}: {term(row)} {'>=' if floor else '<='} {side!r}")
    model, answer = folder / "model.lp", folder / "answer.txt"
    model.write_text("\n".join(lines + ["End", ""]))
    done = subprocess.run(["glpsol", "--lp", model, "--nopresol", "-w", answer], capture_output=True, text=True)
    if done.returncode != 0:
        raise SystemExit(done.stdout + done.stderr)
    words = next(line for line in answer.read_text().splitlines() if line.startswith("s bas")).split()
    return {"possible": words[4] == "f" and words[5] == "f", "cost": float(words[6])}


# The comparison.

def apart(a, b, tolerance):
    return abs(a - b) > tolerance * max(1e-3, abs(a), abs(b))


def subject_of(price, blend_index):
    """What a limit is on, as in `limits_of`, and what its figures are counted in."""
    if "nutrient" in price:
        return (price["nutrient"], price["per"]) if price["per"] else price["nutrient"], 1
    return int(price["ingredient"].removeprefix(f"b{blend_index}i")), 100


def found_duals(answer, blend_index):
    duals = {}
    for one in answer["shadow_prices"]:
        subject, share = subject_of(one, blend_index)
        duals[subject, one["limit"] == "floor"] = one["dual_per_kg"] * share
    return duals


def findings(index, blend, limits, answer, highs, glpk):
    """What disagrees in one blend."""
    possible = answer["status"] == "least cost"
    for name, other in (("HiGHS", highs), ("glpsol", glpk)):
        if possible != other["possible"]:
            yield f"{answer['status']}, by {name} {'possible' if other['possible'] else 'impossible'}"
            return
    if not possible:
        if highs["shortfall"] is not None and apart(answer["shortfall"], highs["shortfall"], DUAL_TOLERANCE):
            yield f"shortfall {answer['shortfall']!r}, by HiGHS {highs['shortfall']!r}"
        if not answer["clashes"]:
            yield "impossible, but no limit is missed"
    else:
        for name, other in (("HiGHS", highs), ("glpsol", glpk)):
            if apart(answer["optimum_per_kg"], other["cost"], TOLERANCE):
                yield f"costs {answer['optimum_per_kg']!r}, by {name} {other['cost']!r}"
        if highs["clear"]:
            ours = found_duals(answer, index)
            if not answer["duals_unique"]:
                yield "the corner is clear, but the duals are said not to be"
            for (subject, floor, _, _, level), dual in zip(limits, highs["duals"]):
                if apart(ours.get((subject, floor), 0.0) * level, dual_in_unit(dual, blend, limits, subject, floor, highs) * level,
                         DUAL_TOLERANCE):
                    yield f"dual of {subject}: {ours.get((subject, floor), 0.0)!r}, by HiGHS {dual!r}"
            yield from changes_wrong(index, blend, limits, answer, highs)
    yield from weighed_wrong(blend, answer)


def changes_wrong(index, blend, limits, answer, highs):
    """The cost of moving one limit, solved once more with that limit moved; limits that go with the energy are left out."""
    for price in answer["shadow_prices"]:
        subject, share = subject_of(price, index)
        floor, to = price["limit"] == "floor", price["to"] / share
        moved = [move(blend, limit, to) if limit[:2] == (subject, floor) else limit for limit in limits]
        if all(m[4] == l[4] for m, l in zip(moved, limits)):
            continue
        again = solve(blend, moved)
        if again["possible"] != (price["change_per_kg"] is not None):
            yield f"{subject} to {to!r}: {price['change_per_kg']!r}, by HiGHS possible: {again['possible']}"
        elif again["possible"] and abs(price["change_per_kg"] - (again["cost"] - highs["cost"])) > 1e-7 * highs["cost"]:
            yield f"{subject} to {to!r} costs {price['change_per_kg']!r}, by HiGHS {again['cost'] - highs['cost']!r}"


def move(blend, limit, to):
    """The limit at another level; one that goes with the energy as it was."""
    subject, floor, row, side, level = limit
    if isinstance(subject, tuple):
        per = np.array([one["holds"].get(subject[1], (0, 0))[0] for one in blend["ingredients"]])
        return subject, floor, row - (to - level) * per, 0, to
    return (subject, floor, row, to, to) if side != 0 else limit


def dual_in_unit(dual, blend, limits, subject, floor, highs):
    """Of a limit that goes with the energy: for one more of the printed level, (row + level e/E) x / level times as much.
    Of a ratio: for one more of the other nutrient, what the mix holds of that times as much."""
    if isinstance(subject, tuple):
        return dual * sum(x * one["holds"].get(subject[1], (0, 0))[0] for x, one in zip(highs["x"], blend["ingredients"]))
    for key, is_floor, row, side, level in limits:
        if (key, is_floor) == (subject, floor) and side == 0 and level > 0:
            return dual * highs["energy_ratio"]
    return dual


def weighed_wrong(blend, answer):
    amounts = np.array([one["amount_kg"] for one in answer["ingredients"]])
    if abs(amounts.sum() - 100) > 1e-9:
        yield f"the amounts add up to {amounts.sum()!r} kg"
    if np.any(np.abs(amounts / 0.05 - np.round(amounts / 0.05)) > 1e-6):
        yield "an amount is no whole step of the scale"
    for one in answer["analysis"]:
        level = sum(a * i["holds"].get(one["nutrient"], (0, 0))[0] for a, i in zip(amounts, blend["ingredients"])) / 100
        if one["level"] is not None and apart(one["level"], level, 1e-9):
            yield f"{one['nutrient']} as weighed {one['level']!r}, by hand {level!r}"


def run(program, rations, count):
    rng = random.Random(SEED)
    seen, impossible, clear, bad, status_wrong = 0, 0, 0, [], []
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        for start in range(0, count, PER_FILE):
            part = start // PER_FILE
            birds, by_energy = part % 3 == 2, part % 6 == 5
            blends = [bird_blend(rng, rations) if birds else free_blend(rng)
                      for _ in range(min(PER_FILE, count - start))]
            (folder / "blends.toml").write_text(as_toml(blends))
            done = subprocess.run([program, "blend", folder / "blends.toml", "--json"] +
                                  (["--by-energy"] if by_energy else []), capture_output=True, text=True)
            if not done.stdout:
                raise SystemExit(done.stderr)
            answers = json.loads(done.stdout)["blends"]
            any_impossible = any(a["status"] == "impossible" for a in answers)
            if done.returncode != (1 if any_impossible else 0):
                bad.append(f"file {part}: ended with {done.returncode}")
            for i, (blend, answer) in enumerate(zip(blends, answers, strict=True)):
                limits = limits_of(blend, rations, by_energy)
                highs = solve(blend, limits)
                if by_energy and highs["possible"]:
                    energy = number(rations.phase(blend)["energy"])
                    highs["energy_ratio"] = float(highs["x"] @ energies(blend["ingredients"], energy)) / energy
                seen += 1
                impossible += not highs["possible"]
                clear += highs.get("clear", False)
                bad += [f"blend {start + i}: {words}"
                        for words in findings(i, blend, limits, answer, highs, ask_glpsol(blend, limits, folder))]
    print("\n".join(bad[:40] + [f"{seen} blends, {impossible} impossible, duals compared on {clear}, "
                                f"{len(bad)} disagreements"]))
    return 1 if bad or seen < count or impossible < seen / 20 or clear < seen / 4 else 0


def ratio_bites(limits, highs):
    return any(d != 0 for (s, *_), d in zip(limits, highs["duals"]) if isinstance(s, tuple))


def named(subject):
    """A limit's subject as the program names it."""
    return {"nutrient": subject, "per": None} if isinstance(subject, str) else {"ingredient": f"b0i{subject}"}


def self_test(rations):
    """Wrong answers are noticed: a sound one is made by HiGHS and bent."""
    rng = random.Random(1)
    blend = free_blend(rng)
    while True:
        limits = limits_of(blend, rations, False)
        highs = solve(blend, limits)
        if highs["possible"] and highs["clear"] and any(highs["duals"] != 0) and not ratio_bites(limits, highs):
            break
        blend = free_blend(rng)
    amounts = np.round(highs["x"] / 0.0005) * 0.05
    amounts[amounts.argmax()] += 100 - amounts.sum()
    prices = [{**named(s), "limit": "floor" if floor else "ceiling", "dual_per_kg": d / (100 if isinstance(s, int) else 1),
               "to": level * (100 if isinstance(s, int) else 1), "change_per_kg": 0.0}
              for (s, floor, _, _, level), d in zip(limits, highs["duals"]) if d != 0]
    sound = {"status": "least cost", "optimum_per_kg": highs["cost"], "duals_unique": True, "shadow_prices": prices,
             "ingredients": [{"amount_kg": a} for a in amounts], "analysis": [], "shortfall": 0, "clashes": []}
    glpk = {"possible": True, "cost": highs["cost"]}
    look = lambda answer, other=glpk: list(findings(0, blend, limits, answer, highs, other))
    assert look(sound) == [], look(sound)
    assert look({**sound, "status": "impossible"}), "a flipped verdict"
    assert look({**sound, "optimum_per_kg": highs["cost"] * (1 + 1e-6)}), "a cost a millionth off"
    assert look({**sound, "shadow_prices": [{**p, "dual_per_kg": p["dual_per_kg"] * 1.001} for p in prices]}), "a dual"
    assert look({**sound, "shadow_prices": []}), "no duals"
    dearer = [{**p, "to": p["to"] * (1.001 if p["limit"] == "floor" else 0.999)} for p in prices]
    assert look({**sound, "shadow_prices": dearer}), "a change that costs something, said to cost nothing"
    assert look({**sound, "ingredients": [{"amount_kg": a * 1.001} for a in amounts]}), "a batch that does not add up"
    assert look({**sound, "analysis": [{"nutrient": "protein", "level": 1e6}]}), "an analysis"
    assert look(sound, {"possible": False, "cost": 0}), "glpsol's verdict"
    with tempfile.TemporaryDirectory() as name:
        assert not apart(ask_glpsol(blend, limits, pathlib.Path(name))["cost"], highs["cost"], TOLERANCE)
    print("9 wrong answers noticed")
    return 0


def main():
    rations = Rations(pathlib.Path(sys.argv[2]))
    if sys.argv[1] == "--self-test":
        return self_test(rations)
    return run(sys.argv[1], rations, int(sys.argv[3]) if len(sys.argv) > 3 else 500)


if __name__ == "__main__":
    sys.exit(main())
