#include "cropful/reports/water_part.hpp"

#include <algorithm>

#include "cropful/domain/ranges.hpp"
#include "cropful/quantities/print.hpp"
#include "cropful/reports/words.hpp"

namespace cropful::reports {

namespace {

using engine::SodiumSum;
using engine::WaterFinding;
using engine::WaterGrade;
using quantities::in_milligrams_per_litre;

Styled grade_words(WaterGrade grade) {
    if (grade == WaterGrade::stop) return alarm("STOP");
    return grade == WaterGrade::caution ? alarm("CAUTION") : Styled(name(grade));
}

/// "above 50 mg/L (poultry)", and for which hatch where it is not for all.
std::string past_words(WaterFinding const& finding) {
    if (!finding.row) return "";
    engine::WaterRow const& row = *finding.row;
    bool const from_level = row.grade == WaterGrade::stop && !row.below;
    std::string const side = row.below ? "below " : (from_level ? "from " : "above ");
    bool const for_some = !row.kinds.empty() || row.until || row.layers;
    std::string const whom = for_some ? "; " + finding.hatch + ", " + quantities::print_age(finding.age) : "";
    return side + found_words(row.level, row.unit) + " (" + row.applies + whom + ")";
}

std::string milligrams(quantities::MassPerVolume content) {
    return quantities::number(in_milligrams_per_litre(content), 0);
}

std::string part_words(std::string const& what, std::optional<quantities::MassPerVolume> const& content) {
    return what + (content ? ' ' + milligrams(*content) : " not known");
}

std::vector<std::string> unstated(engine::Plan const& plan) {
    std::vector<std::string> titles;
    for (domain::WaterItem const& item : domain::water_items()) {
        bool const stated =
            ranges::any_of(plan.water, [&](WaterFinding const& finding) { return finding.figure.item == item.key; });
        if (!stated) titles.emplace_back(item.title);
    }
    return titles;
}

/// The worst course, where something is known of it.
Page worst_course(engine::Plan const& plan) {
    if (plan.sodium.empty()) return {};
    SodiumSum const& sum = plan.sodium.front();
    std::string const when =
        sum.supplement.empty() ? "plain water" : plan.farm.supplements.at(sum.supplement).title + ", " + sum.hatch;
    return wrap("most sodium drunk (" + when + "): " + sodium_words(sum) + "; " + name(sum.grade), "  ", "    ");
}

std::string sample_words(domain::WaterReport const& report) {
    std::string const when = report.sampled ? ", sampled " + report.sampled->day_year() : ", sampled nobody says when";
    return when + (report.softened ? "; as drunk, behind the softener" : "");
}

}  // namespace

std::string found_words(double value, std::string const& unit) {
    std::string const figure = quantities::number(value, std::min(quantities::measured_decimals(value), 3));
    return unit == "pH" ? figure : figure + ' ' + unit;
}

std::string sodium_words(SodiumSum const& sum) {
    std::vector<std::string> parts{part_words("well", sum.well), part_words("softener", sum.softener)};
    if (!sum.supplement.empty()) parts.push_back(part_words("product", sum.product));
    return milligrams(sum.sum) + " mg/L (" + join(parts) + ")";
}

Page water_part(engine::Plan const& plan) {
    if (!plan.farm.water || plan.water.empty()) return {};
    Table table({Align::left, Align::right, Align::left, Align::left}, 2);
    table.head({"in the water", "found", "grade", "past"});
    for (WaterFinding const& finding : plan.water) {
        domain::WaterItem const& item = *domain::find_water_item(finding.figure.item);
        table.add({std::string(item.title), found_words(finding.figure.value, std::string(item.unit)),
                   grade_words(finding.grade), past_words(finding)});
    }
    Page page = heading("WATER", sample_words(*plan.farm.water)) + table;
    for (WaterFinding const& finding : plan.water) {
        if (!finding.row) continue;
        std::string const title(domain::find_water_item(finding.figure.item)->title);
        page += wrap(title + ": " + finding.row->meaning, "  ", "    ");
    }
    auto const silent = unstated(plan);
    if (!silent.empty()) page += wrap("not in the report, so not judged: " + join(silent), "  ", "    ");
    return page + worst_course(plan);
}

Page chlorine_page(engine::ChlorineDose const& dose, std::vector<engine::Caution> const& cautions,
                   quantities::Measures measures, Sources sources) {
    std::string const line =
        dose.proportioner ? " through a proportioner (" + quantities::print(*dose.proportioner) + ")" : "";
    return wrap("For " + milligrams(dose.wanted) + " mg/L of chlorine" + line + " pour " +
                quantities::print_dose(dose.product(), measures) + " of bleach of " + quantities::percent(dose.bleach) +
                " into " + quantities::print_measured(dose.water, measures) +
                (line.empty() ? " of water" : " of stock")) +
           cautions_part(cautions, measures, sources);
}

}  // namespace cropful::reports
