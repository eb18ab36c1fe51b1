#include "cropful/rations/water.hpp"

#include <algorithm>

#include "cropful/domain/ranges.hpp"
#include "cropful/quantities/print.hpp"

namespace cropful::rations {

using quantities::Conductivity;

namespace {

/// What arithmetic may take from a figure, or add to it; relative.
constexpr double rounding_of_figures = 1e-9;

/// A stop holds from its level on, other rows beyond it.
bool is_passed(WaterRow const& row, double value) {
    if (row.below) return value < row.level * (1 - rounding_of_figures);
    bool const from_level = row.grade == WaterGrade::stop;
    return from_level ? value >= row.level * (1 - rounding_of_figures) : value > row.level * (1 + rounding_of_figures);
}

bool is_about(WaterRow const& row, Drinking const& drinking) {
    if (row.people) return false;
    if (drinking.kind.empty()) return true;
    bool const of_age = drinking.age >= row.from && (!row.until || drinking.age < *row.until);
    return of_age && (!row.layers || *row.layers == drinking.laying);
}

WaterGrade grade_of(WaterRow const& row, Drinking const& drinking) {
    bool const of_others = !row.kinds.empty() && !drinking.kind.empty() && !ranges::contains(row.kinds, drinking.kind);
    if (!of_others || row.grade == WaterGrade::stop) return row.grade;
    return std::min(row.grade, WaterGrade::guide);
}

bool is_further(WaterRow const& row, WaterRow const& than) {
    return row.below ? row.level < than.level : row.level > than.level;
}

}  // namespace

std::string name(WaterGrade grade) {
    switch (grade) {
        case WaterGrade::aim:
            return "aim";
        case WaterGrade::guide:
            return "guide";
        case WaterGrade::caution:
            return "caution";
        case WaterGrade::stop:
            return "stop";
        case WaterGrade::fits:
            break;
    }
    return "fits";
}

std::string words_of(WaterRow const& row) {
    return quantities::plain(row.level) + (row.unit == "pH" ? "" : ' ' + row.unit) + " (" + row.applies +
           "): " + row.meaning;
}

WaterFactor const& tds_factor(Conductivity conductivity, WaterTable const& table) {
    return conductivity > strong_water ? table.strong_tds : table.tds;
}

MassPerVolume solids_of(Conductivity conductivity, WaterTable const& table) {
    double const siemens = conductivity.in_microsiemens_per_centimetre() / 1000;  // dS/m
    return quantities::kilograms_per_litre(siemens * tds_factor(conductivity, table).factor * 1e-6);
}

Graded graded(WaterTable const& table, std::string_view item, double value, Drinking const& drinking) {
    Graded worst;
    for (WaterRow const& row : table.rows) {
        if (row.item != item || !is_about(row, drinking) || !is_passed(row, value)) continue;
        WaterGrade const grade = grade_of(row, drinking);
        bool const further = worst.row != nullptr && grade == worst.grade && is_further(row, *worst.row);
        if (grade > worst.grade || further) worst = {grade, &row};
    }
    return worst;
}

WaterRow const* row_for_people(WaterTable const& table, std::string_view item, double value) {
    auto const holds = [&](WaterRow const& row) { return row.item == item && row.people && is_passed(row, value); };
    auto const found = ranges::find_if(table.rows, holds);
    return found == table.rows.end() ? nullptr : &*found;
}

}  // namespace cropful::rations
