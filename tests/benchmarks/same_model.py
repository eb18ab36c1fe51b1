#!/usr/bin/python3
"""Writes one possible blend of 20 ingredients and 20 nutrients as model.toml and model.lp.

same_model.py BLEND_TESTS RATIONS FOLDER"""
import pathlib
import random
import sys

sys.path.insert(0, sys.argv[1])
import random_blends as blends  # noqa: E402

rations = blends.Rations(pathlib.Path(sys.argv[2]))
folder = pathlib.Path(sys.argv[3])
rng = random.Random(1)
nutrients = sorted(blends.UNITS)[:20]
while True:
    blend = {"ingredients": blends.random_ingredients(rng, 20, nutrients), "kind": None, "laying": False, "need": {}}
    for one in blend["ingredients"]:
        one["at_least"], one["at_most"] = 0, None
    for key in nutrients:
        mean = sum(i["holds"].get(key, (0, 0))[0] for i in blend["ingredients"]) / 20
        blend["need"][key] = (blends.rounded(max(mean * rng.uniform(0.6, 0.95), 500 if key == "energy" else 0)), None)
    limits = blends.limits_of(blend, rations, False)
    if blends.solve(blend, limits)["possible"]:
        break
(folder / "model.toml").write_text(blends.as_toml([blend]))
blends.ask_glpsol(blend, limits, folder)
