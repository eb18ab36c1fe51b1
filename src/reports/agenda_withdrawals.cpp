#include "cropful/engine/withdrawals.hpp"
#include "cropful/quantities/print.hpp"
#include "cropful/reports/plan_parts.hpp"
#include "reports/agenda.hpp"

namespace cropful::reports {

namespace {

using engine::HatchPlan;
using engine::Moment;
using engine::Withdrawal;
using quantities::days;
using quantities::Duration;
using quantities::print;

/// The first whole minute that is no earlier.
Moment minute_from(Moment at) {
    constexpr Duration hair = days(1e-9);  // what arithmetic may add to an exact minute
    Moment const minute = domain::parse_moment(at.iso());
    return at - minute > hair ? minute + days(1.0 / 1440) : minute;
}

std::string withdrawal_words(Withdrawal const& one, Moment end, std::string const& waiting) {
    std::string const fed = one.in_water ? "given" : "fed";
    std::string const left = one.in_water ? "" : "any of it was left in hoppers or ";
    return one.title + (one.drug.empty() ? "" : " (" + one.drug + ")") + " is planned to be " + fed + " until " +
           end.day_year() + "; the farm file states a withdrawal of " + waiting +
           ". Not before this moment, and later if " + (one.in_water ? "it was " : left) + fed +
           " longer. This says nothing of whether birds or eggs are fit to be eaten: the label, your veterinarian "
           "and local law decide.";
}

}  // namespace

void add_withdrawals(std::vector<Event>& events, HatchPlan const& hatch, domain::Farm const& farm) {
    std::string const& name = hatch.hatch.name;
    for (Withdrawal const& one : engine::withdrawals_of(hatch.hatch, farm)) {
        if (one.from >= last_age(hatch)) continue;
        Moment const end = hatch.hatch.date + one.to;
        auto const add = [&](Duration waiting, std::string const& which, std::string const& of,
                             std::string const& what) {
            if (one.to + waiting <= first_age(hatch)) return;
            events.push_back({"", "Withdrawal", name, which, minute_from(end + waiting),
                              "Not before now: " + print(waiting) + of + one.title + ", " + name,
                              withdrawal_words(one, end, print(waiting) + what)});
            events.back().not_before = true;
        };
        if (one.birds) add(*one.birds, one.key, " withdrawal of ", "");
        if (one.eggs) add(*one.eggs, one.key + ", eggs", " withdrawal of eggs after ", " for eggs");
    }
}

}  // namespace cropful::reports
