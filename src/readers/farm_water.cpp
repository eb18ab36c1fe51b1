#include <variant>

#include "readers/farm_parts.hpp"
#include "readers/forms.hpp"

namespace cropful::readers {

namespace {

using domain::WaterReport;
using quantities::Conductivity;
using quantities::MassPerVolume;

constexpr Quoted<MassPerVolume> a_content{quantities::parse_dissolved,
                                          "an amount in water in quotes, such as \"120 mg/L\""};
constexpr Quoted<MassPerVolume> a_hardness{quantities::parse_hardness,
                                           "a hardness in quotes, such as \"250 mg/L\" or \"15 grain/gal\""};
constexpr Quoted<std::variant<MassPerVolume, Conductivity>> some_solids{
    quantities::parse_solids, "dissolved solids in quotes, such as \"960 mg/L\" or \"1500 uS/cm\""};

void read_solids(Table& table, WaterReport& water) {
    auto const solids = table.maybe("tds", some_solids);
    if (!solids) return;
    if (auto const* weight = std::get_if<MassPerVolume>(&*solids)) water.found["tds"] = *weight;
    if (auto const* conducted = std::get_if<Conductivity>(&*solids)) water.conductivity = *conducted;
}

}  // namespace

domain::WaterReport read_water_report(Table table) {
    WaterReport water;
    auto const keep = [&](char const* item, std::optional<MassPerVolume> const& content) {
        if (content) water.found[item] = *content;
    };
    read_solids(table, water);
    keep("sodium", table.maybe("sodium", a_content));
    keep("chloride", table.maybe("chloride", a_content));
    keep("sulfate", table.maybe("sulfate", a_content));
    keep("nitrate", table.maybe("nitrate", a_content));
    water.nitrate_n = table.maybe("nitrate_n", a_content);
    if (water.nitrate_n && water.found.contains("nitrate")) {
        throw table.refuse("nitrate_n", "either nitrate or nitrate_n, whichever the report states");
    }
    keep("nitrite", table.maybe("nitrite", a_content));
    keep("iron", table.maybe("iron", a_content));
    keep("manganese", table.maybe("manganese", a_content));
    keep("hardness", table.maybe("hardness", a_hardness));
    water.ph = table.maybe("ph", Number{0, 14, "a number from 0 to 14, such as 7.2"});
    water.coliforms = table.maybe("coliforms", Number{0, 1e9, "how many in 100 mL, a number such as 0"});
    water.sampled = table.maybe("sampled", a_date);
    water.softened = table.maybe("softened", a_yes_or_no, false);
    water.sampled_after = table.maybe("sampled_after", a_yes_or_no, false);
    if (water.sampled_after && !water.softened) {
        throw table.refuse("sampled_after", "softened = true beside it: behind which softener?");
    }
    table.done();
    bool const stated = !water.found.empty() || water.conductivity || water.nitrate_n || water.ph || water.coliforms;
    if (!stated) throw table.missing("tds", "at least one figure of the laboratory's report");
    return water;
}

}  // namespace cropful::readers
