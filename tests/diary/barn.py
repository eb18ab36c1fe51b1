"""An invented farm in a folder of its own, and the program run on its diary."""
import json
import os
import pathlib
import subprocess

FARM = """# Invented.
[farm]
name = "Crash meadow"
[feed.starter]
protein = "24 %"
[hopper.tube]
volume = "3 gal"
[drinker.bell]
volume = "3 gal"
"""
HATCH = """[[hatch]]
name = {name}
kind = "bobwhite"
date = 2027-04-05
chicks = 240
feeding = [{{ feed = "starter", from = "0 d" }}]
until = "100 wk"
hopper = "tube"
drinker = "bell"
"""


class Barn:
    def __init__(self, program, folder, hatches=("April",), measures="us"):
        self.program, self.folder = str(pathlib.Path(program).resolve()), pathlib.Path(folder)
        self.folder.mkdir(exist_ok=True)
        text = FARM.replace("[feed", f'units = "{measures}"\n[feed', 1)
        text += "".join(HATCH.format(name=json.dumps(name)) for name in hatches)
        (self.folder / "farm.toml").write_text(text)

    def command(self, deed, *words):
        return [self.program, "diary", deed, "farm.toml", *words]

    def run(self, deed, *words, **more):
        return subprocess.run(self.command(deed, *words), cwd=self.folder, capture_output=True, timeout=60, **more)

    def done(self, deed, *words, **more):
        """What a command that must succeed prints."""
        ran = self.run(deed, *words, **more)
        if ran.returncode != 0:
            raise SystemExit(f"diary {deed} {words} ended with {ran.returncode}: {ran.stderr.decode()}")
        return ran.stdout

    def entries(self):
        return json.loads(self.done("show", "--json"))["entries"]

    def files(self):
        return sorted(os.listdir(self.folder))
