"""Invented farms whose calendars are hard to write."""
import json

NAMES = ('Cr\u00e9ek <script>alert(1)</script> & Sons, "best"; C:\\\\new \U0001f426' + "\u9d89\u00e4" * 24,
         'A<script>, B; "C" \\n \\\\ & e \U0001f425' + "\U0001f425\u00df" * 24)

HEAD = """# Invented.
[farm]
name = {farm}
[feed.starter]
title = "Starter; 24 %, crumble"
protein = "24 %"
bag = "50 lb"
keeps = "4 wk"
[feed.grower]
protein = "20 %"
medicated = {{ drug = "monensin", per_short_ton = "73 g", withdrawal = "{withdrawal}" }}
[feed.finisher]
protein = "20 %"
[hopper.tube]
volume = "{hopper}"
[drinker.bell]
volume = "{drinker}"
{change}
[supplement.tonic]
rate = "1 tsp per gal"
keeps = "{keeps}"
days = 6
from = "3 d"
"""
HATCH = """
[[hatch]]
name = {name}
kind = "{kind}"
date = {date}
chicks = 200
feeding = [
    {{ feed = "starter", from = "0 d" }}, {{ feed = "grower", from = "3 wk" }}, {{ feed = "finisher", from = "6 wk" }},
]
until = "9 wk"
hopper = "tube"
hoppers = 3
drinker = "bell"
drinkers = 4
supplement = "tonic"
"""


def quoted(text):
    return json.dumps(text, ensure_ascii=False)


def farm(name="Plain", hatches=(("First", "bobwhite", "2027-04-05"),), withdrawal="0 d", hopper="3 gal",
         drinker="1 gal", change="", keeps="24 h"):
    text = HEAD.format(farm=quoted(name), withdrawal=withdrawal, hopper=hopper, drinker=drinker, keeps=keeps,
                       change=f'change_every = "{change}"' if change else "")
    return text + "".join(HATCH.format(name=quoted(n), kind=k, date=d) for n, k, d in hatches)


FARMS = {
    "names": farm(NAMES[0], ((NAMES[1], "bobwhite", "2027-04-05"), ("=1+1", "coturnix", "2027-04-19")), change="2 d",
                  drinker="9 gal"),
    "withdrawal": farm(withdrawal="5 d"),
    "half_days": farm(change="12 h", drinker="5 gal"),
    "three_halves": farm(change="36 h", drinker="9 gal", hatches=(("Noon", "coturnix", "2027-04-05T12:30:00"),)),
    "odd_hours": farm(change="7 h", drinker="5 gal", keeps="5 h"),
    "tiny": farm(hopper="1 qt", drinker="1 qt"),  # filled several times a day
}
