#include "quantities/units.hpp"

#include <array>

namespace cropful::quantities {

namespace {

constexpr std::string_view hb44 = "NIST HB 44 App. C";
constexpr std::string_view sp811 = "NIST SP 811 App. B";
constexpr std::string_view si = "SI Brochure";
constexpr std::string_view uk = "UK Weights and Measures Act 1985";

constexpr double cubic_foot = 1728 * litres_per_cubic_inch;
constexpr double gallon = litres_per_gallon;
constexpr double imperial = litres_per_imperial_gallon;

constexpr std::array table = {
    Unit{"kg", "Kg,KG,kilo,kilos,kilogram,kilograms", "mass", 1, "1 kg", si},
    Unit{"g", "gm,gram,grams", "mass", 1e-3, "0.001 kg", si},
    Unit{"mg", "milligram,milligrams", "mass", 1e-6, "0.000001 kg", si},
    Unit{"tonne", "tonnes,metric ton,metric tons", "mass", 1000, "1000 kg", si},
    Unit{"lb", "Lb,LB,lbs,pound,pounds", "mass", kilograms_per_pound, "0.45359237 kg", hb44},
    Unit{"oz", "Oz,OZ,ounce,ounces", "mass", kilograms_per_ounce, "1/16 lb", hb44},
    Unit{"grain", "grains", "mass", kilograms_per_pound / 7000, "1/7000 lb", hb44},
    Unit{"short ton", "short tons,US ton,US tons", "mass", 2000 * kilograms_per_pound, "2000 lb", hb44},
    Unit{"cwt", "hundredweight,hundredweights", "mass", 100 * kilograms_per_pound, "100 lb", hb44},
    Unit{"US cwt", "US hundredweight,US hundredweights", "mass", 100 * kilograms_per_pound, "100 lb", hb44},
    Unit{"imp cwt", "UK cwt,imperial hundredweight,imperial hundredweights", "mass", 112 * kilograms_per_pound,
         "112 lb", uk},

    Unit{"L", "l,litre,litres,liter,liters", "volume", 1, "1 dm3", si},
    Unit{"mL", "ml,cc,millilitre,millilitres,milliliter,milliliters", "volume", 1e-3, "0.001 L", si},
    Unit{"m3", "m^3,m³,cubic metre,cubic metres,cubic meter,cubic meters", "volume", 1000, "1000 L", si},
    Unit{"in3", "in^3,in³,cu in,cubic inch,cubic inches", "volume", litres_per_cubic_inch, "16.387064 cm3", hb44},
    Unit{"ft3", "ft^3,ft³,cu ft,cubic foot,cubic feet", "volume", cubic_foot, "1728 in3", hb44},
    Unit{"gal", "gals,gallon,gallons", "volume", gallon, "231 in3", hb44},
    Unit{"qt", "qts,quart,quarts", "volume", gallon / 4, "57.75 in3", hb44},
    Unit{"pt", "pts,pint,pints", "volume", gallon / 8, "28.875 in3", hb44},
    Unit{"fl oz", "floz,fluid ounce,fluid ounces", "volume", gallon / 128, "231/128 in3", hb44},
    Unit{"US gal", "US gallon,US gallons", "volume", gallon, "231 in3", hb44},
    Unit{"US qt", "US quart,US quarts", "volume", gallon / 4, "57.75 in3", hb44},
    Unit{"US pt", "US pint,US pints", "volume", gallon / 8, "28.875 in3", hb44},
    Unit{"US fl oz", "US fluid ounce,US fluid ounces", "volume", gallon / 128, "231/128 in3", hb44},
    Unit{"cup", "cups", "volume", gallon / 16, "8 fl oz", hb44},
    Unit{"tbsp", "tbs,tablespoon,tablespoons", "volume", gallon / 256, "1/2 fl oz", hb44},
    Unit{"tsp", "teaspoon,teaspoons", "volume", gallon / 768, "1/6 fl oz", hb44},
    Unit{"imp gal", "UK gal,imperial gallon,imperial gallons", "volume", imperial, "4.54609 L", uk},
    Unit{"imp qt", "UK qt,imperial quart,imperial quarts", "volume", imperial / 4, "1/4 imp gal", uk},
    Unit{"imp pt", "UK pt,imperial pint,imperial pints", "volume", imperial / 8, "1/8 imp gal", uk},
    Unit{"imp fl oz", "UK fl oz,imperial fluid ounce,imperial fluid ounces", "volume", imperial / 160, "1/160 imp gal",
         uk},

    Unit{"d", "day,days", "time", 1, "86400 s", si},
    Unit{"wk", "wks,week,weeks", "time", 7, "7 d", "ISO 8601"},
    Unit{"h", "hr,hrs,hour,hours", "time", 1.0 / 24, "1/24 d", si},
    Unit{"min", "mins,minute,minutes", "time", 1.0 / 1440, "1/1440 d", si},

    Unit{"m", "metre,metres,meter,meters", "length", 1, "1 m", si},
    Unit{"cm", "centimetre,centimetres,centimeter,centimeters", "length", 1e-2, "0.01 m", si},
    Unit{"mm", "millimetre,millimetres,millimeter,millimeters", "length", 1e-3, "0.001 m", si},
    Unit{"in", "inch,inches", "length", metres_per_inch, "0.0254 m", hb44},
    Unit{"ft", "foot,feet", "length", metres_per_foot, "12 in", hb44},

    Unit{"kcal", "kilocalorie,kilocalories", "energy", 1, "4184 J", sp811},
    Unit{"MJ", "megajoule,megajoules", "energy", kilocalories_per_megajoule, "1000/4.184 kcal", sp811},

    Unit{"degC", "°C,C,deg C,celsius", "temperature", 1, "degC", si},
    Unit{"degF", "°F,F,deg F,fahrenheit", "temperature", 1 / 1.8, "(degF - 32) / 1.8", sp811},

    Unit{"%", "percent,per cent,pct", "percent", 0.01, "1/100", si},
};

char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

/// Points dropped, hyphens as blanks, one blank at a time.
std::string tidy(std::string_view word) {
    std::string tidied;
    for (char const c : word) {
        bool const blank = c == ' ' || c == '\t' || c == '-';
        if (c == '.' || (blank && (tidied.empty() || tidied.back() == ' '))) continue;
        tidied += blank ? ' ' : c;
    }
    while (!tidied.empty() && tidied.back() == ' ') tidied.pop_back();
    return tidied;
}

/// Short symbols as they stand: Mg is no mg, mJ no MJ.
bool same(std::string_view word, std::string_view spelling) {
    if (word == spelling) return true;
    if (word.size() != spelling.size() || word.size() <= 2) return false;
    for (std::size_t i = 0; i < word.size(); ++i) {
        if (lower(word[i]) != lower(spelling[i])) return false;
    }
    return true;
}

bool spelled(Unit const& unit, std::string_view word) {
    if (same(word, unit.symbol)) return true;
    std::string_view also = unit.also;
    while (!also.empty()) {
        std::size_t const comma = also.find(',');
        if (same(word, also.substr(0, comma))) return true;
        also = comma == std::string_view::npos ? std::string_view{} : also.substr(comma + 1);
    }
    return false;
}

}  // namespace

std::span<Unit const> units() { return table; }

Unit const* find_unit(std::string_view word) {
    std::string const tidied = tidy(word);
    for (Unit const& unit : table) {
        if (spelled(unit, tidied)) return &unit;
    }
    return nullptr;
}

bool is_bare_ton(std::string_view word) { return same(tidy(word), "ton") || same(tidy(word), "tons"); }

bool differs_by_country(Unit const& unit) {
    return unit.symbol == "cwt" || unit.symbol == "gal" || unit.symbol == "qt" || unit.symbol == "pt" ||
           unit.symbol == "fl oz";
}

}  // namespace cropful::quantities
