#include <algorithm>

#include "cropful/quantities/print.hpp"
#include "cropful/reports/page.hpp"
#include "cropful/reports/table_text.hpp"
#include "cropful/reports/words.hpp"
#include "reports/emphasis.hpp"
#include "reports/needs_text.hpp"
#include "reports/sources.hpp"

namespace cropful::reports {

namespace {

using domain::Source;
using quantities::Measures;
using quantities::number;
using quantities::plain;
using quantities::print;
using rations::Kind;

constexpr double flock = 100;  // birds that growers reckon by
constexpr double metres_per_foot = 12 * quantities::metres_per_inch;

std::string energy(quantities::EnergyPerMass amount) {
    return number(quantities::in_kilocalories_per_kilogram(amount), 0) + " kcal/kg";
}

/// Within 0.4 %: "43", "0.54".
/// The sections of one kind's page; their sources are numbered and stand at the end.
class KindPage {
  public:
    KindPage(Kind const& kind, Measures measures) : kind_(kind), measures_(measures) {}

    std::string text(rations::NeedsTable const& needs) {
        std::string text = head();
        // one after another, so that sources are numbered as they come
        text += growing();
        text += laying();
        text += richer();
        text += deaths();
        text += eggs();
        text += water();
        text += heat("HEAT and water: a gram of feed calls for more", "more", kind_.water_heat);
        text += heat("HEAT and feed: the birds eat less", "less", kind_.feed_heat);
        text += brooding();
        text += room();
        text += section("NEEDS, from the table \"" + kind_.needs_table + "\"", "", kind_.needs_source);
        text += needs_body(needs, sources_);
        return text + sources_text(sources_);
    }

  private:
    std::string section(std::string const& heading, std::string const& body, Source const& source) {
        return "\n" + wrap(with_heading(heading) + " [" + source_words(source, sources_) + "]", "", "  ") + body;
    }

    [[nodiscard]] std::string head() const {
        std::string text = wrap(kind_.title + " (" + kind_.latin + "), written \"" + kind_.key + "\"", "", "  ");
        if (!kind_.also.empty()) text += wrap("also known as " + join(kind_.also), "  ", "  ");
        return text + "\n" +
               wrap(
                   "Of 20 flocks 1 lies below a low figure and 1 above a high one; usual is as often as not. Between "
                   "two ages figures change smoothly, past the last they stay.");
    }

    /// Of grams a bird eats in a day, what 100 birds eat.
    [[nodiscard]] std::string flock_eats(double grams) const {
        return print(quantities::kilograms(flock * grams / 1000), measures_);
    }

    std::string growing() {
        using enum Align;
        Table table({left, right, right, right, right, bar}, 2);
        table.head({"age", "low", "usual", "high", "a bird, in grams"});
        double most = 0;
        for (curves::Row const& row : kind_.growing.curve.rows()) most = std::max(most, row.central);
        for (curves::Row const& row : kind_.growing.curve.rows()) {
            std::string const grams =
                number(row.central, 1) + " (" + number(row.low, 1) + " to " + number(row.high, 1) + ")";
            table.add({"day " + plain(row.age_d), flock_eats(row.low), flock_eats(row.central), flock_eats(row.high),
                       grams, plain(row.central / most)});
        }
        std::string text =
            section("FEED " + number(flock, 0) + " growing birds eat in a day, at " + energy(kind_.growing.energy),
                    table.text(), kind_.growing.source);
        if (!kind_.growing.caution.empty()) text += wrap(kind_.growing.caution, "  ! ", "    ");
        return text;
    }

    std::string laying() {
        if (!kind_.laying) return "";
        auto const& [low, usual, high] = kind_.laying->rate;
        return section("FEED " + number(flock, 0) + " laying birds eat in a day, at " + energy(kind_.laying->energy),
                       wrap("usual " + flock_eats(usual) + ", low " + flock_eats(low) + ", high " + flock_eats(high) +
                                "; a bird " + plain(usual) + " g (" + plain(low) + " to " + plain(high) + ")",
                            "  ", "  "),
                       kind_.laying->source);
    }

    std::string richer() {
        return section(
            "RICHER FEED: the birds eat less of it",
            wrap("by (the energy above / the energy of the feed) to the power " + plain(kind_.feed_energy.elasticity),
                 "  ", "  "),
            kind_.feed_energy.source);
    }

    std::string deaths() {
        using enum Align;
        Table table({left, right, right, right, bar}, 2);
        table.head({"age", "low", "usual", "high"});
        double const most = std::max(kind_.mortality.curve.rows().back().central, 1e-9);
        for (curves::Row const& row : kind_.mortality.curve.rows()) {
            std::string const share = row.central > 0 ? plain(row.central / most) : "";
            table.add({"day " + plain(row.age_d), plain(row.low), plain(row.central), plain(row.high), share});
        }
        return section("DEATHS by that age, per cent of the chicks", table.text(), kind_.mortality.source);
    }

    std::string eggs() {
        auto const& rate = kind_.hatch_rate;
        std::string const note = rate.note.empty() ? "" : wrap(rate.note, "  ", "  ");
        return section("EGGS that hatch, of those set",
                       wrap("usual " + quantities::percent(rate.value) + ", low " + quantities::percent(rate.low) +
                                ", high " + quantities::percent(rate.high),
                            "  ", "  ") +
                           note,
                       rate.source);
    }

    std::string water() {
        auto const& [low, usual, high] = kind_.water.ratio;
        return section("WATER drunk with a gram of feed",
                       wrap("usual " + plain(usual) + " mL, low " + plain(low) + ", high " + plain(high), "  ", "  "),
                       kind_.water.source);
    }

    std::string heat(std::string const& heading, std::string const& which, rations::HeatResponse const& response) {
        bool const fahrenheit = measures_ == Measures::us;
        double const per_kelvin = quantities::ratio(response.per_degree * quantities::kelvins(1));
        double const share = fahrenheit ? per_kelvin / 1.8 : per_kelvin;
        return section(heading,
                       wrap(number(100 * share, 1) + " % " + which + " for each degree " + (fahrenheit ? "F" : "C") +
                                " above " + print(response.above, measures_),
                            "  ", "  "),
                       response.source);
    }

    std::string brooding() {
        Table table({Align::left, Align::left}, 2);
        for (rations::BroodingRow const& row : kind_.brooding.rows) {
            bool const last = &row == &kind_.brooding.rows.back();
            std::string const low = print(row.low, measures_), high = print(row.high, measures_);
            table.add({last ? "from day " + std::to_string(row.first_day) + " of life"
                            : "days " + std::to_string(row.first_day) + " to " + std::to_string(row.last_day),
                       low == high ? low : low + " to " + high});
        }
        return section("WARMTH under the brooder, day 1 being the day of hatch", table.text(), kind_.brooding.source);
    }

    std::string room() {
        bool const feet = measures_ == Measures::us;
        Table table({Align::left, Align::right, Align::right}, 2);
        table.head(
            {"from", feet ? "birds per ft2" : "birds per m2", feet ? "in of feeder a bird" : "cm of feeder a bird"});
        for (rations::SpaceRow const& row : kind_.space.rows) {
            double const birds = row.birds_per_square_foot, inches = row.feeder_inches_per_bird;
            table.add({quantities::print_age(row.from),
                       feet ? plain(birds) : quantities::print_measured(birds / (metres_per_foot * metres_per_foot)),
                       feet ? plain(inches) : quantities::print_measured(100 * inches * quantities::metres_per_inch)});
        }
        std::string const water = wrap("water: " + std::string(feet ? "1 ft" : "30.5 cm") + " of trough for " +
                                           plain(kind_.space.birds_per_foot_of_water_trough) + " birds, or three " +
                                           (feet ? "1 gal" : "3.8 L") + " founts for " +
                                           plain(kind_.space.day_olds_per_three_founts) + " day-olds",
                                       "  ", "  ");
        std::string const note = kind_.space.note.empty() ? "" : wrap(kind_.space.note, "  ", "  ");
        return section("ROOM", table.text() + water + note, kind_.space.source);
    }

    Kind const& kind_;
    Measures measures_;
    std::vector<std::string> sources_;
};

}  // namespace

std::string kinds_text(std::vector<Kind> const& kinds) {
    Table table({Align::left, Align::left, Align::left});
    table.head({"kind", "title", "also known as"});
    for (Kind const& kind : kinds) table.add({kind.key, kind.title, join(kind.also)});
    return table.text() + "\n`cropful table KIND` shows all that is known about one.\n";
}

std::string kind_text(Kind const& kind, rations::NeedsTable const& needs, Measures measures) {
    return KindPage(kind, measures).text(needs);
}

}  // namespace cropful::reports
