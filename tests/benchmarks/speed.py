#!/usr/bin/python3
"""Whole commands from the shell beside other ways to an answer, as the table of docs/speed.md.   speed.py PROGRAM

One run on one machine: ratios say more than seconds. hyperfine takes the times, each command in turn."""
import json
import pathlib
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).resolve().parent.parent.parent
FARMS = ROOT / "rations" / "farms"
HATCH = """[[hatch]]
name = "Hatch {number}"
kind = "bobwhite"
date = 2027-{month:02}-{day:02}
chicks = 240
feeding = [{{ feed = "starter", from = "0 d" }}]
until = "16 wk"
hopper = "tube"
drinker = "bell"
"""
FARM = """[farm]
name = "Growing"
[feed.starter]
protein = "26 %"
bag = "50 lb"
[hopper.tube]
volume = "3 gal"
[drinker.bell]
volume = "3 gal"
change_every = "1 d"
"""
CELL = '<table:table-cell table:formula="of:={}" office:value-type="float"/>'
SHEET = """<?xml version="1.0" encoding="UTF-8"?>
<office:document xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0"
 xmlns:of="urn:oasis:names:tc:opendocument:xmlns:of:1.2"
 xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0" office:version="1.2"
 office:mimetype="application/vnd.oasis.opendocument.spreadsheet"><office:body><office:spreadsheet>
<table:table table:name="flock">{}</table:table></office:spreadsheet></office:body></office:document>"""


def growing(folder, count):
    """So many hatches, one a week."""
    file = folder / f"{count}.toml"
    file.write_text(FARM + "".join(HATCH.format(number=i + 1, month=1 + i // 4 % 12, day=1 + 7 * (i % 4)) for i in range(count)))
    return file


def spreadsheet(folder):
    """What growers keep: for each of 112 days birds alive, feed a bird, feed in all, its sum, bags."""
    rows = []
    for day in range(1, 113):
        before = f"[.A{day - 1}]*0.999" if day > 1 else "240"
        total = f"[.C{day}]+[.D{day - 1}]" if day > 1 else f"[.C{day}]"
        cells = [before, f"2+{day}*0.13", f"[.A{day}]*[.B{day}]/1000", total, f"ROUNDUP([.D{day}]/22.68;0)"]
        rows.append("<table:table-row>" + "".join(CELL.format(one) for one in cells) + "</table:table-row>")
    file = folder / "flock.fods"
    file.write_text(SHEET.format("".join(rows)))
    return file


def milliseconds(commands, folder):
    """The median of each."""
    times = folder / "times.json"
    subprocess.run(["hyperfine", "--shell=none", "--warmup", "2", "--min-runs", "5", "--max-runs", "20", "--export-json",
                    str(times), *commands], check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    return [1000 * one["median"] for one in json.loads(times.read_text())["results"]]


def main():
    program = str(pathlib.Path(sys.argv[1]).resolve())
    farm, away = FARMS / "saltgrass.toml", ROOT / "tests/benchmarks/forty_vessels.toml"
    now = "--now 2027-05-28T06:00"
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        sheet = spreadsheet(folder)
        subprocess.run(["/usr/bin/python3", "-B", str(ROOT / "tests/benchmarks/same_model.py"), str(ROOT / "tests/blend"),
                        str(ROOT / "rations"), str(folder)], check=True, stdout=subprocess.DEVNULL)
        rows = [("`python3 -c pass`", "/usr/bin/python3 -c pass"),
                ("`python3 -c 'import numpy'`", "/usr/bin/python3 -c 'import numpy'"),
                ("LibreOffice recalculates 112 days of one flock",
                 f"soffice --headless --convert-to csv --outdir {folder} {sheet}"),
                ("glpsol on a mix of 20 ingredients and 20 nutrients", f"glpsol --lp {folder}/model.lp -w {folder}/answer"),
                ("`cropful --version`", f"{program} --version"),
                ("`today` of saltgrass, 4 hatches", f"{program} today {farm} {now}"),
                ("`plan` of saltgrass", f"{program} plan {farm} {now}"),
                ("`buy --plan` of trips", f"{program} buy {FARMS / 'trips.toml'} --plan"),
                ("`away` of forty vessels", f"{program} away {away} --from 2027-05-10 --until 2027-05-12"),
                ("`sheet` of saltgrass", f"{program} sheet {farm} {now}"),
                ("`blend` on the same mix", f"{program} blend {folder}/model.toml")]
        for count in (1, 4, 13, 52):
            rows.append((f"`plan` of {count} weekly hatches", f"{program} plan {growing(folder, count)} --from start"))
        times = milliseconds([command for _, command in rows], folder)
    print("| command | ms | of `python3 -c pass` |\n|---|---:|---:|")
    for (words, _), time in zip(rows, times):
        print(f"| {words} | {time:.0f} | {time / times[0]:.1f} |")


if __name__ == "__main__":
    main()
