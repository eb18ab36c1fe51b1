#include "reports/argument_words.hpp"

#include <algorithm>

#include <fmt/args.h>
#include <fmt/format.h>

#include "cropful/domain/nutrient.hpp"
#include "cropful/quantities/print.hpp"
#include "cropful/reports/words.hpp"

namespace cropful::reports::arguments {

using namespace quantities;

/// Puts one argument into words.
class Printer {
  public:
    Printer(std::string_view how, Measures measures) : how_(how), measures_(measures) {}

    std::string operator()(std::string const& words) const { return plainly(words); }
    std::string operator()(std::vector<std::string> const& names) const { return plainly(join(names)); }
    std::string operator()(double x) const {
        if (how_.empty()) return plain(x);
        if (is_digit()) return number(x, decimals());
        std::string const count = plain(x);
        return count + ' ' + std::string(how_) + (count == "1" ? "" : "s");
    }
    std::string operator()(domain::Share share) const {
        return is_digit() ? number(100 * share.of_one, decimals()) + " %" : plainly(percent(share.of_one));
    }
    std::string operator()(Mass mass) const {
        return is("g") ? plain(in_grams(mass)) : plainly(print(mass, measures_));
    }
    std::string operator()(Duration duration) const { return plainly(print(duration)); }
    std::string operator()(domain::Age age) const { return plainly(print_age(age.of)); }
    std::string operator()(domain::Moment moment) const {
        return is("year") ? moment.day_year() : plainly(moment.day());
    }
    std::string operator()(Heads heads) const { return plainly(print(heads)); }
    std::string operator()(Temperature temperature) const { return plainly(print(temperature, measures_)); }
    std::string operator()(PerWarmth response) const {
        if (is("degree")) return us() ? "degree F" : "degree C";
        return plainly(print_measured(100 * ratio(response * kelvins(us() ? 1 / 1.8 : 1))) + " %");
    }
    std::string operator()(MassPerVolume density) const {
        if (is("g/L")) return number(in_grams_per_litre(density), 3);
        if (is("mg/L")) return number(in_milligrams_per_litre(density), 0);
        double const per_litre = in_kilograms_per_litre(density);
        constexpr double litres_per_cubic_foot = litres_per_cubic_inch * 12 * 12 * 12;
        return plainly(us() ? plain(per_litre * litres_per_cubic_foot / kilograms_per_pound) + " lb/ft3"
                            : number(per_litre, 2) + " kg/L");
    }
    std::string operator()(MassPerBirdDay use) const {
        return plainly(print_measured(use * birds(1) * days(1), measures_));
    }
    std::string operator()(VolumePerMass thirst) const {
        constexpr double ounces = kilograms_per_ounce / (litres_per_gallon / 128);
        double const per_kilogram = in_litres_per_kilogram(thirst);
        return plainly(us() ? print_measured(per_kilogram * ounces) + " fl oz per oz"
                            : plain(per_kilogram) + " mL per g");
    }
    std::string operator()(EnergyPerMass energy) const {
        return plainly(number(in_kilocalories_per_kilogram(energy), 0) + " kcal/kg");
    }
    std::string operator()(domain::Content const& content) const {
        domain::Nutrient const& nutrient = *domain::find_nutrient(content.nutrient);
        std::string const amount = print_level(nutrient, content.amount);
        return is("amount") ? amount : plainly(amount + ' ' + std::string(nutrient.title));
    }
    std::string operator()(domain::Portion const& portion) const {
        std::string const where = how_.empty() ? "" : ' ' + std::string(how_);
        return portion.to + " about " + print(portion.amount, measures_) + where;
    }
    std::string operator()(domain::Known const& known) const {
        return plainly(known.what + (known.less_sure.empty() ? "" : " (less sure: " + join(known.less_sure) + ")"));
    }
    std::string operator()(std::vector<domain::Content> const& all) const { return listed(all, ", "); }
    std::string operator()(std::vector<domain::Portion> const& all) const { return listed(all, "; "); }
    std::string operator()(std::vector<domain::Known> const& all) const { return listed(all, ", "); }

  private:
    [[nodiscard]] bool is(std::string_view how) const { return how_ == how; }
    [[nodiscard]] bool is_digit() const { return how_.size() == 1 && how_[0] >= '0' && how_[0] <= '9'; }
    [[nodiscard]] int decimals() const { return how_[0] - '0'; }
    [[nodiscard]] bool us() const { return measures_ == Measures::us; }
    /// What can be printed one way only; a template that asks for another is wrong.
    [[nodiscard]] std::string plainly(std::string words) const {
        if (!how_.empty()) throw fmt::format_error("no way to print \"" + words + "\" as " + std::string(how_));
        return words;
    }
    template <class Item>
    [[nodiscard]] std::string listed(std::vector<Item> const& all, std::string_view between) const {
        std::vector<std::string> words;
        for (Item const& one : all) words.push_back((*this)(one));
        return join(words, between);
    }

    std::string_view how_;
    Measures measures_;
};

/// An argument on its way into a template.
struct Placed {
    domain::Argument argument;
    Measures measures;
};

}  // namespace cropful::reports::arguments

template <>
struct fmt::formatter<cropful::reports::arguments::Placed> {
    constexpr auto parse(fmt::format_parse_context& context) {
        auto const* const end = std::find(context.begin(), context.end(), '}');
        how_ = std::string_view(context.begin(), static_cast<std::size_t>(end - context.begin()));
        return end;
    }
    template <class Context>
    auto format(cropful::reports::arguments::Placed const& placed, Context& context) const {
        auto const words = std::visit(cropful::reports::arguments::Printer(how_, placed.measures), placed.argument);
        return std::copy(words.begin(), words.end(), context.out());
    }

  private:
    std::string_view how_;
};

namespace cropful::reports {

namespace {

bool has_all_fields(std::string_view text, domain::Arguments const& with) {
    for (auto at = text.find('{'); at != std::string_view::npos; at = text.find('{', at + 1)) {
        auto const name = text.substr(at + 1, text.find_first_of(":}", at) - at - 1);
        if (!with.contains(std::string(name))) return false;
    }
    return true;
}

/// The template without the parts in < > that cannot be filled.
std::string with_known_parts(std::string_view text, domain::Arguments const& with) {
    std::string all;
    for (auto at = text.find('<'); at != std::string_view::npos; at = text.find('<')) {
        auto const end = text.find('>', at);
        auto const part = text.substr(at + 1, end - at - 1);
        all += text.substr(0, at);
        if (has_all_fields(part, with)) all += part;
        text.remove_prefix(end + 1);
    }
    return all += text;
}

}  // namespace

std::string worded(std::string_view text, domain::Arguments const& with, quantities::Measures measures) {
    fmt::dynamic_format_arg_store<fmt::format_context> store;
    for (auto const& [name, argument] : with)
        store.push_back(fmt::arg(name.c_str(), arguments::Placed{argument, measures}));
    return fmt::vformat(with_known_parts(text, with), store);
}

}  // namespace cropful::reports
