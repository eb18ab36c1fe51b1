#include "cropful/domain/farm.hpp"

namespace cropful::domain {

using namespace quantities;

std::string name(Form form) {
    switch (form) {
        case Form::mash:
            return "mash";
        case Form::crumble:
            return "crumble";
        case Form::pellet:
            return "pellet";
    }
    return "";
}

std::vector<Bag> bags_of(Feed const& feed) {
    if (feed.bags.empty() && feed.bag) return {{*feed.bag, feed.price, 1}};
    return feed.bags;
}

Moment last_moment(Hatch const& hatch) { return hatch.date + hatch.until + days(1); }

Guarantee guarantee_of(Nutrient const& nutrient, double stated) {
    if (nutrient.label_maximum) return {.minimum = {}, .maximum = stated};
    return {.minimum = stated, .maximum = {}};
}

bool is_kept(Hatch const& hatch, Moment at) { return hatch.date <= at && at <= last_moment(hatch); }

}  // namespace cropful::domain
