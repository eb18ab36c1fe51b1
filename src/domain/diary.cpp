#include "cropful/domain/diary.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <optional>

#include "cropful/domain/csv.hpp"
#include "cropful/domain/words.hpp"
#include "cropful/fault.hpp"
#include "cropful/quantities/whole.hpp"

namespace cropful::domain {

using namespace quantities;

namespace {

struct Named {
    Deed deed;
    std::string_view name;
};

constexpr std::array all{
    Named{Deed::topped_up, "topped up"},
    Named{Deed::part_filled, "part filled"},
    Named{Deed::thrown_out, "thrown out"},
    Named{Deed::found_empty, "found empty"},
    Named{Deed::died, "died"},
    Named{Deed::counted, "counted"},
    Named{Deed::moved_out, "moved out"},
    Named{Deed::moved_in, "moved in"},
    Named{Deed::level_left, "level left"},
    Named{Deed::stock_counted, "stock counted"},
    Named{Deed::bought, "bought"},
    Named{Deed::done, "done"},
    Named{Deed::noted, "noted"},
};

template <class T>
std::optional<Amount> fits(T (*parse)(std::string_view, quantities::Measures), std::string_view text,
                           quantities::Measures measures) {
    try {
        return parse(text, measures);
    } catch (BadInput const&) {
        return std::nullopt;
    }
}

/// -1 for anything but two digits.
int whole_of(std::string_view text) {
    int value = -1;
    auto const [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    return error == std::errc() && end == text.data() + text.size() ? value : -1;
}

}  // namespace

std::string name(Deed deed) {
    for (Named const& one : all) {
        if (one.deed == deed) return std::string(one.name);
    }
    return "";
}

Deed parse_deed(std::string_view text) {
    std::vector<std::string> names;
    for (Named const& one : all) {
        if (one.name == text) return one.deed;
        names.emplace_back(one.name);
    }
    throw BadInput(in_quotes(text), "one of: " + join(names));
}

bool counts_birds(Deed deed) {
    return deed == Deed::died || deed == Deed::counted || deed == Deed::moved_out || deed == Deed::moved_in;
}

bool counts_anything(Deed deed) { return deed == Deed::done || deed == Deed::noted; }

bool is_of_store(Deed deed) { return deed == Deed::stock_counted || deed == Deed::bought; }

std::string unit(Amount const& amount) {
    constexpr std::array<std::string_view, 3> units{"kg", "L", "birds"};
    return std::string(units[amount.index()]);
}

double number(Amount const& amount) {
    if (auto const* mass = std::get_if<quantities::Mass>(&amount)) return quantities::in_kilograms(*mass);
    if (auto const* volume = std::get_if<quantities::Volume>(&amount)) return quantities::in_litres(*volume);
    return quantities::in_birds(std::get<quantities::Heads>(amount));
}

Amount amount_in(std::string_view unit, double number) {
    if (unit == "kg") return quantities::kilograms(number);
    if (unit == "L") return quantities::litres(number);
    if (unit == "birds") return quantities::birds(number);
    throw BadInput(in_quotes(unit), "kg, L or birds");
}

Amount parse_feed_or_water(std::string_view text, quantities::Measures measures) {
    if (auto const feed = fits(quantities::parse_mass, text, measures)) return *feed;
    if (auto const water = fits(quantities::parse_volume, text, measures)) return *water;
    bool const uk = measures == quantities::Measures::uk;
    throw BadInput(in_quotes(text), std::string("a weight of feed such as \"2 lb\", or a volume of water such as ") +
                                        (uk ? "\"1 imp gal\" or \"1 US gal\"" : "\"1 gal\""));
}

void check_amount(Entry const& entry) {
    double const amount = number(entry.amount);
    bool const heads = std::holds_alternative<quantities::Heads>(entry.amount);
    std::string const found = csv_number(amount) + " " + unit(entry.amount) + " beside " + in_quotes(name(entry.deed));
    if (!counts_anything(entry.deed) && heads != counts_birds(entry.deed))
        throw BadInput(found, heads ? "kg or L" : "birds");
    bool const water = std::holds_alternative<Volume>(entry.amount);
    if (water && is_of_store(entry.deed)) throw BadInput(found, "kg");
    if (!(amount >= 0 && amount <= most_amount)) throw BadInput(found, "an amount from 0 to 1000000");
    if (heads && amount != std::floor(amount)) throw BadInput(found, "a whole number of birds");
    if (entry.deed == Deed::found_empty && amount != 0) throw BadInput(found, "0");
}

Stamp parse_stamp(std::string_view text) {
    constexpr std::string_view shape = "2027-11-07T01:30-05:00";
    bool const said = text.size() >= shape.size() && text[text.size() - 3] == ':' &&
                      (text[text.size() - 6] == '+' || text[text.size() - 6] == '-');
    if (!said) return {parse_moment(text), std::nullopt};
    std::string_view const offset = text.substr(text.size() - 6);
    int const hours = whole_of(offset.substr(1, 2)), minutes = whole_of(offset.substr(4, 2));
    std::chrono::minutes const ahead{60 * hours + minutes};
    if (hours < 0 || minutes < 0 || minutes > 59 || ahead > furthest_offset) {
        throw BadInput(in_quotes(text), "a moment and its clock's distance from UTC, such as \"" + std::string(shape) +
                                            "\", up to 18 h");
    }
    return {parse_moment(text.substr(0, text.size() - 6)), offset.front() == '-' ? -ahead : ahead};
}

std::int64_t utc_minute(Entry const& entry) {
    static Moment const start(std::chrono::year_month_day(std::chrono::sys_days{}));
    auto const minute =
        quantities::whole_number<std::int64_t>(std::round(quantities::in_days(entry.at - start) * 1440));
    return minute - entry.utc_offset.value_or(std::chrono::minutes(0)).count();
}

void put_in_order(Diary& entries) {
    std::stable_sort(entries.begin(), entries.end(),
                     [](Entry const& a, Entry const& b) { return utc_minute(a) < utc_minute(b); });
}

}  // namespace cropful::domain
