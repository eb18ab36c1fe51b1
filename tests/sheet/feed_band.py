#!/usr/bin/python3
"""The band about a sheet's feed a day, against a million flocks drawn by NumPy.   feed_band.py PROGRAM RATIONS [--self-test]

Flocks differ in appetite and in deaths: independent normal scores, whose 5 % and 95 % points are the low and high columns
of the kind's tables. Ages are those where both tables have a row and bend little within the day, so that nothing is
interpolated here; an edge may lie off by 1 % of the middle, some three times what the draws leave open. --self-test:
without deaths, or with half the appetite, the edges lie further off than that."""
import json
import pathlib
import subprocess
import sys
import tomllib

import numpy as np

FLOCKS, OFF = 1_000_000, 0.01
SCORE_95 = 1.6448536269514722
HATCHES = {"bobwhite": [7, 14, 42], "coturnix": [7, 14, 42], "chukar": [14, 42]}


def row(table, age):
    found = [r for r in table["rows"] if r[0] == age]
    return found[0][1:] if found else None


def log_sd(low, _, high):
    return np.log(high / low) / (2 * SCORE_95)


def edges(kind, age, appetite=1.0, deaths=1.0):
    """5, 50 and 95 % of the flock's feed over its central feed, or None where a table has no row."""
    feed, dead = row(kind["growing"], age), row(kind["mortality"], age)
    if not feed or not dead:
        return None
    draws = np.random.default_rng(20270405).standard_normal((2, FLOCKS))
    alive = 1 - np.minimum(1, dead[1] / 100 * np.exp(deaths * draws[1] * log_sd(*dead)))
    use = np.exp(appetite * draws[0] * log_sd(*feed)) * alive / (1 - dead[1] / 100)
    return np.quantile(use, [0.05, 0.5, 0.95])


def findings(program, rations, spoil):
    found, looked = [], 0
    for name, ages in HATCHES.items():
        kind = tomllib.loads((rations / f"birds/{name}.toml").read_text())
        words = ["--kind", name, "--chicks", "100", "--date", "2027-04-05", "--until", "8 wk", "--json"]
        answer = subprocess.run([program, "sheet", *words], capture_output=True, text=True, check=True).stdout
        by_age = {round(day["age_d"], 6): day for day in json.loads(answer)["hatches"][0]["days"]}
        for age in ages:
            expected = edges(kind, age, **spoil)
            if expected is None:
                continue
            looked += 1
            day = by_age[age]
            got = np.array([day["p05"], day["p50"], day["p95"]]) / day["feed_kg"]
            if np.max(np.abs(got - expected)) > OFF:
                found.append(f"{name}, day {age}: {got}, not {expected}")
    return found, looked


def main():
    program, rations = sys.argv[1], pathlib.Path(sys.argv[2])
    if "--self-test" in sys.argv:
        unnoticed = [s for s in ({"deaths": 0.0}, {"appetite": 0.5}) if not findings(program, rations, s)[0]]
        print(f"2 wrong laws, not noticed: {unnoticed}")
        return 1 if unnoticed else 0
    found, looked = findings(program, rations, {})
    print("\n".join(found + [f"{looked} days looked at, {len(found)} findings"]))
    return 1 if found or looked < 6 else 0


if __name__ == "__main__":
    sys.exit(main())
