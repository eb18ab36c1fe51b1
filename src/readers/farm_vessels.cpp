#include <numbers>

#include "readers/farm_parts.hpp"
#include "readers/forms.hpp"

namespace cropful::readers {

namespace {

using quantities::box;
using quantities::Length;
using quantities::Volume;

constexpr double quarter_pi = std::numbers::pi / 4;

Volume cylinder(Table& part) {
    Length const diameter = part.need("diameter", more_than_none(a_length));
    Length const height = part.need("height", more_than_none(a_length));
    return quarter_pi * box(diameter, diameter, height);
}

/// Either end may be a point.
Volume frustum(Table& part) {
    Length const top = part.need("top", a_length);
    Length const bottom = part.need("bottom", a_length);
    Length const height = part.need("height", more_than_none(a_length));
    return quarter_pi / 3 * (box(top, top, height) + box(top, bottom, height) + box(bottom, bottom, height));
}

Volume cuboid(Table& part) {
    Length const length = part.need("length", more_than_none(a_length));
    Length const width = part.need("width", more_than_none(a_length));
    return box(length, width, part.need("height", more_than_none(a_length)));
}

Volume read_part(Table& part) {
    std::string const shape = part.need("shape", a_text);
    if (shape == "cylinder") return cylinder(part);
    if (shape == "frustum" || shape == "cone frustum" || shape == "cone") return frustum(part);
    if (shape == "box") return cuboid(part);
    throw part.refuse("shape", one_of(shape, {"cylinder", "frustum", "box"}));
}

Volume sum_of_parts(Value const& value) {
    auto const parts = tables_of(read_part, "{ shape = \"cylinder\", diameter = \"10 in\", height = \"14 in\" }");
    Volume sum;
    for (Volume const& part : parts(value)) sum += part;
    if (!(sum > Volume())) throw value.refuse("parts that hold something");
    return sum;
}

Volume hopper_volume(Table& table) {
    auto const outright = table.maybe("volume", more_than_none(a_volume));
    auto const parts = table.maybe("parts", sum_of_parts);
    if (outright && parts) throw table.refuse("parts", "either volume or parts, not both");
    if (!outright && !parts) throw table.missing("volume", "a volume such as \"3 gal\", or parts = [...]");
    return outright ? *outright : *parts;
}

}  // namespace

domain::Hopper read_hopper(std::string const& key, Table& table) {
    return {.key = key,
            .volume = hopper_volume(table),
            .stays_behind = table.maybe("stays_behind", a_part, 0.0),
            .fill = table.maybe("fill", more_than_none(a_percentage), 1.0),
            .extra_waste = table.maybe("extra_waste", a_part, 0.0),
            .fill_for = table.maybe("fill_for", more_than_none(a_time)),
            .at_most = table.maybe("at_most", more_than_none(a_time))};
}

domain::Drinker read_drinker(std::string const& key, Table& table) {
    bool const plumbed = table.maybe("plumbed", a_yes_or_no, false);
    auto const volume = table.maybe("volume", more_than_none(a_volume));
    if (!volume && !plumbed) throw table.missing("volume", more_than_none(a_volume).expected);
    if (plumbed && table.has("change_every"))
        throw table.refuse("change_every", "no changes of a line that is plumbed");
    domain::Drinker drinker{.key = key,
                            .volume = volume.value_or(Volume()),
                            .displaced = table.maybe("displaced", a_volume, Volume()),
                            .change_every = table.maybe("change_every", more_than_none(a_time)),
                            .spill = table.maybe("spill", a_part, 0.0),
                            .least = table.maybe("least", a_volume, Volume()),
                            .plumbed = plumbed};
    if (plumbed) return drinker;
    if (drinker.displaced >= drinker.volume) throw table.refuse("displaced", "less than the drinker's volume");
    if (drinker.least > drinker.volume - drinker.displaced) {
        throw table.refuse("least", "no more than the drinker holds");
    }
    return drinker;
}

}  // namespace cropful::readers
