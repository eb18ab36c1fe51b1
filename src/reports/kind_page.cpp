#include <algorithm>

#include "cropful/quantities/print.hpp"
#include "cropful/reports/plan_parts.hpp"
#include "cropful/reports/table_page.hpp"
#include "cropful/reports/words.hpp"
#include "reports/needs_part.hpp"
#include "reports/sources.hpp"

namespace cropful::reports {

namespace {

using domain::Source;
using quantities::Measures;
using quantities::metres_per_foot;
using quantities::number;
using quantities::plain;
using quantities::print;
using rations::Kind;

constexpr double flock = 100;  // birds that growers reckon by

std::string energy(quantities::EnergyPerMass amount) {
    return number(quantities::in_kilocalories_per_kilogram(amount), 0) + " kcal/kg";
}

/// Within 0.4 %: "43", "0.54".
/// The sections of one kind's page; their sources are numbered and stand at the end.
class KindPage {
  public:
    KindPage(Kind const& kind, Measures measures) : kind_(kind), measures_(measures) {}

    Page all(rations::NeedsTable const& needs) {
        Page page = head();
        // one after another, so that sources are numbered as they come
        page += growing();
        page += laying();
        page += richer();
        page += deaths();
        page += eggs();
        page += water();
        page += heat(strong("HEAT") + " and water: a gram of feed calls for more", "more", kind_.water_heat);
        page += heat(strong("HEAT") + " and feed: the birds eat less", "less", kind_.feed_heat);
        page += brooding();
        page += room();
        page += section(strong("NEEDS") + (", from the table \"" + kind_.needs_table + "\""), {}, kind_.needs_source);
        page += needs_body(needs, sources_);
        return page + sources_part(sources_);
    }

  private:
    Page section(Styled const& title, Page const& body, Source const& source) {
        return Blank() + wrap(title + (" [" + source_words(source, sources_) + "]"), "", "  ") + body;
    }

    [[nodiscard]] Page head() const {
        Page page = wrap(kind_.title + " (" + kind_.latin + "), written \"" + kind_.key + "\"", "", "  ");
        if (!kind_.also.empty()) page += wrap("also known as " + join(kind_.also), "  ", "  ");
        return page +
               spaced(wrap(
                   "Of 20 flocks 1 lies below a low figure and 1 above a high one; usual is as often as not. Between "
                   "two ages figures change smoothly, past the last they stay."));
    }

    /// Of grams a bird eats in a day, what 100 birds eat.
    [[nodiscard]] std::string flock_eats(double grams) const {
        return print(quantities::kilograms(flock * grams / 1000), measures_);
    }

    Page growing() {
        using enum Align;
        Table table({left, right, right, right, right}, 2);
        table.head({"age", "low", "usual", "high", "a bird, in grams"});
        double most = 0;
        for (curves::Row const& row : kind_.growing.curve.rows()) most = std::max(most, row.central);
        for (curves::Row const& row : kind_.growing.curve.rows()) {
            std::string const grams =
                number(row.central, 1) + " (" + number(row.low, 1) + " to " + number(row.high, 1) + ")";
            table.add(
                {"day " + plain(row.age_d), flock_eats(row.low), flock_eats(row.central), flock_eats(row.high), grams},
                row.central / most);
        }
        Page page = section(strong("FEED") + (" " + number(flock, 0) + " growing birds eat in a day, at " +
                                              energy(kind_.growing.energy)),
                            table, kind_.growing.source);
        if (!kind_.growing.caution.empty()) page += warning(kind_.growing.caution);
        return page;
    }

    Page laying() {
        if (!kind_.laying) return {};
        auto const& [low, usual, high] = kind_.laying->rate;
        return section(strong("FEED") +
                           (" " + number(flock, 0) + " laying birds eat in a day, at " + energy(kind_.laying->energy)),
                       wrap("usual " + flock_eats(usual) + ", low " + flock_eats(low) + ", high " + flock_eats(high) +
                                "; a bird " + plain(usual) + " g (" + plain(low) + " to " + plain(high) + ")",
                            "  ", "  "),
                       kind_.laying->source);
    }

    Page richer() {
        return section(
            strong("RICHER FEED") + ": the birds eat less of it",
            wrap("by (the energy above / the energy of the feed) to the power " + plain(kind_.feed_energy.elasticity),
                 "  ", "  "),
            kind_.feed_energy.source);
    }

    Page deaths() {
        using enum Align;
        Table table({left, right, right, right}, 2);
        table.head({"age", "low", "usual", "high"});
        double const most = std::max(kind_.mortality.curve.rows().back().central, 1e-9);
        for (curves::Row const& row : kind_.mortality.curve.rows()) {
            auto const share = row.central > 0 ? std::optional(row.central / most) : std::nullopt;
            table.add({"day " + plain(row.age_d), plain(row.low), plain(row.central), plain(row.high)}, share);
        }
        return section(strong("DEATHS") + " by that age, per cent of the chicks", table, kind_.mortality.source);
    }

    Page eggs() {
        auto const& rate = kind_.hatch_rate;
        Page const note = rate.note.empty() ? Page() : wrap(rate.note, "  ", "  ");
        return section(strong("EGGS") + " that hatch, of those set",
                       wrap("usual " + quantities::percent(rate.value) + ", low " + quantities::percent(rate.low) +
                                ", high " + quantities::percent(rate.high),
                            "  ", "  ") +
                           note,
                       rate.source);
    }

    Page water() {
        auto const& [low, usual, high] = kind_.water.ratio;
        return section(strong("WATER") + " drunk with a gram of feed",
                       wrap("usual " + plain(usual) + " mL, low " + plain(low) + ", high " + plain(high), "  ", "  "),
                       kind_.water.source);
    }

    Page heat(Styled const& title, std::string const& which, rations::HeatResponse const& response) {
        bool const fahrenheit = measures_ == Measures::us;
        double const per_kelvin = quantities::ratio(response.per_degree * quantities::kelvins(1));
        double const share = fahrenheit ? per_kelvin / 1.8 : per_kelvin;
        return section(title,
                       wrap(number(100 * share, 1) + " % " + which + " for each degree " + (fahrenheit ? "F" : "C") +
                                " above " + print(response.above, measures_),
                            "  ", "  "),
                       response.source);
    }

    Page brooding() {
        Table table({Align::left, Align::left}, 2);
        for (rations::BroodingRow const& row : kind_.brooding.rows) {
            bool const last = &row == &kind_.brooding.rows.back();
            std::string const low = print(row.low, measures_), high = print(row.high, measures_);
            table.add({last ? "from day " + std::to_string(row.first_day) + " of life"
                            : "days " + std::to_string(row.first_day) + " to " + std::to_string(row.last_day),
                       low == high ? low : low + " to " + high});
        }
        return section(strong("WARMTH") + " under the brooder, day 1 being the day of hatch", table,
                       kind_.brooding.source);
    }

    Page room() {
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
        Page const water = wrap("water: " + std::string(feet ? "1 ft" : "30.5 cm") + " of trough for " +
                                    plain(kind_.space.birds_per_foot_of_water_trough) + " birds, or three " +
                                    (feet ? "1 gal" : "3.8 L") + " founts for " +
                                    plain(kind_.space.day_olds_per_three_founts) + " day-olds",
                                "  ", "  ");
        Page const note = kind_.space.note.empty() ? Page() : wrap(kind_.space.note, "  ", "  ");
        return section(strong("ROOM"), table + water + note, kind_.space.source);
    }

    Kind const& kind_;
    Measures measures_;
    std::vector<std::string> sources_;
};

}  // namespace

Page kinds_page(std::vector<Kind> const& kinds) {
    Table table({Align::left, Align::left, Align::left});
    table.head({"kind", "title", "also known as"});
    for (Kind const& kind : kinds) table.add({kind.key, kind.title, join(kind.also)});
    return table + spaced(wrap("`cropful table KIND` shows all that is known about one."));
}

Page kind_page(Kind const& kind, rations::NeedsTable const& needs, Measures measures) {
    return KindPage(kind, measures).all(needs);
}

}  // namespace cropful::reports
