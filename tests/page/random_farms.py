#!/usr/bin/python3
"""Random farms for the page to answer, and questions about each.   random_farms.py COUNT RATIONS FOLDER

Half are those of tests/scipy, of every kind of thing a farm may have; half those of tests/today, short lives on whose days
much is done. Writes FOLDER/<n>.toml, and FOLDER/<n>.json: {now, questions: [[words]], tick}, where tick says that something
is likely to be done at the moment `now`."""
import collections
import datetime as dt
import json
import pathlib
import sys
import tomllib

sys.dont_write_bytecode = True
HERE = pathlib.Path(__file__).resolve().parent
sys.path += [str(HERE.parent / "scipy"), str(HERE.parent / "today")]
import numpy as np  # noqa: E402
from barns import Barn  # noqa: E402
from farm_text import farm_text  # noqa: E402
from flock import Hatch, Rations  # noqa: E402


def moment(at):
    return at.isoformat(timespec="minutes")


def questions(at):
    """Of farm.toml, as the page asks them."""
    until = moment(at + dt.timedelta(days=2, hours=5))
    asked = [["plan", "--from", "start"], ["today"], ["away", "--from", moment(at), "--until", until], ["buy"],
             ["mix", "--from", "start"], ["check"], ["last"]]
    return [[words[0], "farm.toml", *words[1:], "--json", "--now", moment(at)] for words in asked]


def random_farm(number, rng, rations):
    """Its text, and a moment of its life."""
    if number % 2:
        barn = Barn(number)
        return barn.text, barn.moment()
    text = farm_text(rng, number, rations, collections.Counter()) + "\n"
    farm = tomllib.loads(text)
    hatch = Hatch(farm, farm["hatch"][0], rations)
    return text, hatch.date + dt.timedelta(days=int(rng.integers(1, max(2, int(hatch.until) - 1))), hours=int(rng.integers(24)))


def main():
    count, rations, folder = int(sys.argv[1]), Rations(sys.argv[2]), pathlib.Path(sys.argv[3])
    rng = np.random.default_rng(7)
    for number in range(count):
        text, at = random_farm(number, rng, rations)
        (folder / f"{number}.toml").write_text(text)
        (folder / f"{number}.json").write_text(json.dumps({"now": moment(at), "questions": questions(at), "tick": bool(number % 2)}))


if __name__ == "__main__":
    main()
