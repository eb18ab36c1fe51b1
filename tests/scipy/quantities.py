"""Quantities as a grower writes them, in SI units and days."""

import re

LB_KG = 0.45359237
INCH_M = 0.0254
US_GAL_M3 = 231 * INCH_M**3
IMP_GAL_M3 = 4.54609e-3
KCAL_J = 4184.0

UNITS = {
    "mass": {"kg": 1.0, "g": 1e-3, "mg": 1e-6, "lb": LB_KG, "oz": LB_KG / 16},
    "volume": {
        "m3": 1.0, "L": 1e-3, "mL": 1e-6, "ft3": (12 * INCH_M) ** 3, "in3": INCH_M**3,
        "gal": US_GAL_M3, "US gal": US_GAL_M3, "qt": US_GAL_M3 / 4, "pt": US_GAL_M3 / 8,
        "cup": US_GAL_M3 / 16, "fl oz": US_GAL_M3 / 128, "tbsp": US_GAL_M3 / 256,
        "tsp": US_GAL_M3 / 768, "imp gal": IMP_GAL_M3, "imp-gal": IMP_GAL_M3,
    },
    "time": {"d": 1.0, "wk": 7.0, "h": 1 / 24, "min": 1 / 1440},          # days
    "length": {"m": 1.0, "cm": 1e-2, "mm": 1e-3, "in": INCH_M, "ft": 12 * INCH_M},
    "share": {"%": 1e-2},
    "energy": {"kcal/kg": KCAL_J, "MJ/kg": 1e6, "kcal/lb": KCAL_J / LB_KG},  # J/kg
    "density": {
        "kg/m3": 1.0, "kg/L": 1e3, "g/L": 1.0, "g/mL": 1e3,
        "lb/ft3": LB_KG / (12 * INCH_M) ** 3, "lb/gal": LB_KG / US_GAL_M3,
    },
}

_NUMBER = re.compile(r"\s*(?:(?:(\d+)\s+)?(\d+)\s*/\s*(\d+)|([-+]?\d+(?:\.\d+)?(?:[eE][-+]?\d+)?))\s*(.*?)\s*$")


def split_text(text):
    """'1 1/2 gal' -> (1.5, 'gal')"""
    m = _NUMBER.match(text)
    if not m:
        raise ValueError(f"no number in {text!r}")
    whole, top, bottom, plain, unit = m.groups()
    if plain is not None:
        return float(plain), unit
    return int(whole or 0) + int(top) / int(bottom), unit


def value(text, what):
    number, unit = split_text(text)
    return number * UNITS[what][unit]


def warmth_c(text):
    number, unit = split_text(text)
    return {"degC": number, "degF": (number - 32) * 5 / 9}[unit]


def per(text, top, bottom):
    """'4 oz per 128 gal', '5 g/tsp': SI units of `top` for one SI unit of `bottom`."""
    above, below = text.split(" per ") if " per " in text else text.rsplit("/", 1)
    below = below if below.lstrip()[0].isdigit() else "1 " + below
    return value(above, top) / value(below, bottom)


def label_rate(text):
    """(kg or m3 of product for each m3 of water, by weight?)"""
    if ":" in text:
        return 1 / float(text.split(":")[1]), False
    try:
        return per(text, "mass", "volume"), True
    except KeyError:
        return per(text, "volume", "volume"), False


def degrees_apart_c(text):
    """'per degree' figures: a bare per cent is per degree Celsius."""
    return value(text, "share")
