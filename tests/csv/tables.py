#!/usr/bin/python3
"""The tables of `plan`, `buy` and `last --csv`, read by Python's csv module and by LibreOffice.
tables.py PROGRAM RATIONS [--self-test]

Python must read the numbers of --json (lb and US gal by NIST HB 44, App. C); LibreOffice must show the same cells as
Python's reader and find no formula in them. --self-test spoils sound tables and wants each spoiling noticed."""
import csv
import datetime
import io
import json
import math
import pathlib
import re
import subprocess
import sys
import tempfile
import zipfile
from xml.etree import ElementTree

KILOGRAMS, LITRES = {"lb": 0.45359237, "kg": 1}, {"gal": 3.785411784, "L": 1, "ft3": 28.316846592}
SHEET = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"
HATCHES = ["=1+1", "+1", "-1", "@SUM(A1)", 'Commas, "quotes"; \U0001f426', " blank ", "Wachteln \u00e4\u9d89",
           "=cmd|' /C calc'!A0", "1-2", "007"]
FARM = """# Invented.
[farm]
name = "Tables"
units = "{units}"
[feed."=starter"]
title = "-Starter, \\"best\\""
protein = "24 %"
bag = "50 lb"
price = 27.50
[hopper."+tube"]
volume = "12 L"
[drinker.bell]
volume = "4 L"
change_every = "2 d"
[disinfectant."-bleach"]
strength = "8 %"
use_at = "1 %"
pack = "1 L"
price = 3
[brooder."+tank"]
holds = 40
until = "3 wk"
floor = {{ length = "2 ft", width = "3 ft" }}
count = 4
bedding = {{ depth = "2 in", bag = "8 ft3", price = 7.5 }}
disinfectant = "-bleach"
solution = "5 L"
[supplement."@tonic"]
rate = "5 mL per L"
days = 3
pack = "500 mL"
price = 4
"""
HATCH = """[[hatch]]
name = {name}
kind = "coturnix"
date = 2027-04-05
chicks = 90
feeding = [{{ feed = "=starter", from = "0 d" }}]
until = "5 wk"
hopper = "+tube"
drinker = "bell"
supplement = "@tonic"
brooder = "+tank"
"""


def farm(units):
    named = (HATCH.format(name=json.dumps(name, ensure_ascii=False)) for name in HATCHES)
    return FARM.format(units=units) + "".join(named)


def guarded(name):
    """As the program must write a name, so that it is no formula."""
    return "'" + name if name[:1] in tuple("=+-@\t\r\n") else name


def read(data):
    return list(csv.DictReader(io.StringIO(data.decode(), newline=""), strict=True))


def text_moment(moment):
    return moment.replace("T", " ") if moment else ""


def plan_rows(answer):
    for hatch in answer["hatches"]:
        for week in hatch["weeks"]:
            at = datetime.datetime.fromisoformat(hatch["date"]) + datetime.timedelta(days=week["from_d"], seconds=1)
            (feed,) = [f["feed"] for f in hatch["feeds"] if f["from_d"] <= week["from_d"] < f["to_d"]]
            yield {"hatch": guarded(hatch["name"]), "kind": hatch["kind"], "date": at.strftime("%Y-%m-%d"),
                   "week": week["week"], "age (d)": week["from_d"], "birds": week["birds"], "feed": guarded(feed),
                   ("feed", "/d"): week["feed_kg_per_d"], ("water", "/d"): week["water_l_per_d"]}


def buy_rows(answer):
    cost = f"cost ({answer['total']['currency']})"
    for feed in answer["buy"]:
        yield {"sort": "feed", "key": guarded(feed["feed"]), "title": guarded(feed["title"]),
               "bags or packs": feed["bags_p95"], ("bag", ""): feed["bag_kg"], cost: feed["cost_p95"],
               ("usually eaten", ""): feed["feed_kg"], ("sure to do", ""): feed["p95"],
               ("on hand", ""): feed["on_hand_kg"], ("spare", ""): feed["spare_kg"],
               "needed from": feed["first_needed"][:10], "needed to": feed["last_needed"][:10]}
    for bought in answer["supplements"]:
        yield {"sort": "supplement", "key": guarded(bought["supplement"]), "title": guarded(bought["title"]),
               "bags or packs": bought["packs_p95"], cost: bought["cost_p95"], "product (g)": bought["product_g"],
               "product (mL)": bought["product_ml"], "sure product (g)": bought["product_g_p95"],
               "sure product (mL)": bought["product_ml_p95"], "needed from": bought["first_needed"][:10]}
    for one in answer["bedding"]:
        yield {"sort": "bedding", "key": guarded(one["brooder"]), "bags or packs": one["bags"], cost: one["cost"],
               "needed from": one["first_needed"][:10], ("bedding bag", ""): one["bag_l"],
               ("bedding", ""): one["bedding_l"]}
    for one in answer["disinfectant"]:
        yield {"sort": "disinfectant", "key": guarded(one["disinfectant"]), "title": guarded(one["title"]),
               "bags or packs": one["packs"], cost: one["cost"], "needed from": one["first_needed"][:10],
               "product (mL)": one["product_ml"]}


def last_rows(answer):
    for hatch in answer["hatches"]:
        for vessels, key, holds, content in (("hoppers", "hopper", "feed", "content_kg"),
                                             ("drinkers", "drinker", "water", "content_l")):
            if not hatch[vessels]:
                continue
            fill = hatch[vessels]["fills"][0]
            yield {"hatch": guarded(hatch["name"]), "holds": holds, "key": guarded(hatch[vessels][key]),
                   "count": hatch[vessels]["count"], "filled": text_moment(fill["at"]), "age (d)": fill["age_d"],
                   "birds": fill["birds"], "sure (d)": fill["p05"], "usually (d)": fill["p50"],
                   (f"{holds} each", ""): fill[content]}


def same(expected, text):
    if expected is None:
        return text == ""
    if isinstance(expected, str):
        return text == expected
    return text != "" and math.isclose(float(text), expected, rel_tol=1e-12, abs_tol=1e-15)


def row_findings(expected, row):
    for name, value in expected.items():
        if isinstance(name, str):
            sound = name in row and same(value, row[name])
        else:  # an amount in the farm's unit
            (key,) = [k for k in row if re.fullmatch(re.escape(name[0]) + r" \(\w+" + name[1] + r"\)", k)] or [None]
            unit = re.search(r"\((\w+)", key)[1] if key else ""
            factor = {**KILOGRAMS, **LITRES}.get(unit, math.nan)
            sound = key and (row[key] == "" if value is None else same(value, str(float(row[key]) * factor)))
        if not sound:
            yield f"{name}: wanted {value!r} in {row}"


ROWS = {"plan": plan_rows, "buy": buy_rows, "last": last_rows}


def findings(command, data, answer):
    """RFC 4180 by Python's strict reader, then every cell that --json knows too."""
    rows, wanted = read(data), list(ROWS[command](answer))
    if not data.endswith(b"\r\n") or len(rows) != len(wanted):
        return [f"{len(rows)} rows, wanted {len(wanted)}"]
    return [one for expected, row in zip(wanted, rows) for one in row_findings(expected, row)]


def by_office(folder, names):
    """The cells LibreOffice reads from each CSV file: (rows of text or numbers, formulas)."""
    profile = pathlib.Path(folder) / "profile"
    done = subprocess.run(["soffice", f"-env:UserInstallation=file://{profile}", "--headless", "--infilter=CSV:44,34,76,1",
                           "--convert-to", "xlsx:Calc MS Excel 2007 XML", *names], cwd=folder, capture_output=True, timeout=600)
    if done.returncode != 0:
        raise SystemExit(f"LibreOffice ended with {done.returncode}: {done.stderr.decode()}")
    return [workbook(pathlib.Path(folder) / name.replace(".csv", ".xlsx")) for name in names]


def workbook(file):
    with zipfile.ZipFile(file) as book:
        shared = [] if "xl/sharedStrings.xml" not in book.namelist() else [
            "".join(t.text or "" for t in item.iter(SHEET + "t"))
            for item in ElementTree.fromstring(book.read("xl/sharedStrings.xml")).iter(SHEET + "si")]
        sheet = ElementTree.fromstring(book.read("xl/worksheets/sheet1.xml"))
    cells = {}
    for cell in sheet.iter(SHEET + "c"):
        value = cell.find(SHEET + "v")
        if value is not None:
            cells[cell.get("r")] = shared[int(value.text)] if cell.get("t") == "s" else float(value.text)
    return cells, [cell.get("r") for cell in sheet.iter(SHEET + "c") if cell.find(SHEET + "f") is not None]


def place(row, at):
    return "ABCDEFGHIJKLMNOPQRSTUVWXYZ"[at] + str(row + 1)


def serial(text):
    """A day and a time as a spreadsheet counts them, in days since 30 December 1899."""
    return (datetime.datetime.fromisoformat(text) - datetime.datetime(1899, 12, 30)) / datetime.timedelta(days=1)


def shown(text, cell):
    """Whether a spreadsheet's cell is what stands in the CSV file."""
    if cell is None or isinstance(cell, str):
        return (cell or "") == text
    try:
        number = serial(text) if re.fullmatch(r"\d{4}-\d\d-\d\d( \d\d:\d\d)?", text) else float(text)
    except ValueError:
        return False
    return math.isclose(cell, number, rel_tol=1e-13)  # xlsx holds 15 digits


def office_findings(data, cells, formulas):
    yield from (f"a formula in {one}" for one in formulas)
    numbers = 0
    for row, line in enumerate(csv.reader(io.StringIO(data.decode(), newline=""), strict=True)):
        for at, text in enumerate(line):
            cell = cells.get(place(row, at))
            numbers += isinstance(cell, float)
            if not shown(text, cell):
                yield f"{place(row, at)} is {cell!r}, not {text!r}"
    if not numbers:
        yield "no number at all"


def answers(program, rations, folder):
    """(name, command, CSV, JSON) of every question."""
    farms = {"us": farm("us"), "metric": farm("metric")}
    for units, text in farms.items():
        (pathlib.Path(folder) / f"{units}.toml").write_text(text, newline="")
    sources = [*(f"{units}.toml" for units in farms), str(rations / "farms/saltgrass.toml")]
    for number, source in enumerate(sources):
        for command in ROWS:
            words = [program, command, source, *(["--on", "2027-04-08T05:00"] if command == "last" else [])]
            csv_text, json_text = (subprocess.run([*words, form], cwd=folder, capture_output=True, check=True,
                                                  timeout=120).stdout for form in ("--csv", "--json"))
            yield f"{command}{number}.csv", command, csv_text, json.loads(json_text)


def self_test(all_answers, folder):
    """What is not noticed."""
    name, command, data, answer = all_answers[0]
    for what, spoil in {
            "a line left out": lambda d: re.sub(rb"\r\n[^\r]*\r\n$", b"\r\n", d),
            "a digit": lambda d: re.sub(rb"\.(\d)", lambda m: b".%d" % ((int(m[1]) + 1) % 10), d),
            "another unit": lambda d: d.replace(b"(lb", b"(kg"),
            "a guard left out": lambda d: d.replace(b"'=", b"="),
            "a quote left out": lambda d: d.replace(b'"Commas', b"Commas"),
            "line feeds alone": lambda d: d.replace(b"\r\n", b"\n")}.items():
        try:
            noticed = spoil(data) != data and findings(command, spoil(data), answer)
        except (csv.Error, TypeError, ValueError):
            noticed = True
        if not noticed:
            yield what
    (pathlib.Path(folder) / "bare.csv").write_bytes(b"a,b\r\n=1+1,2\r\n")
    (cells, formulas), = by_office(folder, ["bare.csv"])
    if not list(office_findings(b"a,b\r\n=1+1,2\r\n", cells, formulas)):
        yield "a formula in LibreOffice"
    if not list(office_findings(b"a,b\r\nx,3\r\n", {"A1": "a", "B1": "b", "A2": "x", "B2": 2.0}, [])):
        yield "another number in LibreOffice"


def main():
    program, rations = (pathlib.Path(word).resolve() for word in sys.argv[1:3])
    with tempfile.TemporaryDirectory() as folder:
        all_answers = list(answers(program, rations, folder))
        if "--self-test" in sys.argv:
            bad = list(self_test(all_answers, folder))
            print("\n".join([f"not noticed: {one}" for one in bad] + [f"{len(bad)} not noticed"]))
            return 1 if bad else 0
        bad, cells = [], 0
        for name, command, data, answer in all_answers:
            (pathlib.Path(folder) / name).write_bytes(data)
            bad += [f"{name}: {one}" for one in findings(command, data, answer)]
        for (name, _, data, _), (read_cells, formulas) in zip(all_answers, by_office(folder, [a[0] for a in all_answers])):
            cells += len(read_cells)
            bad += [f"{name}: LibreOffice: {one}" for one in office_findings(data, read_cells, formulas)]
    print("\n".join(bad[:40] + [f"{len(all_answers)} tables, {cells} cells, {len(bad)} findings"]))
    return 1 if bad or not cells else 0


if __name__ == "__main__":
    sys.exit(main())
