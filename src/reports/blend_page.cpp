#include "cropful/reports/blend_page.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/domain/nutrient.hpp"
#include "cropful/quantities/print.hpp"
#include "cropful/reports/words.hpp"
#include "reports/blend_words.hpp"
#include "reports/mixing_sheet.hpp"

namespace cropful::reports {

namespace {

using namespace quantities;
using blends::BlendAnswer;
using blends::BlendFinding;
using blends::BlendStatus;
using engine::Verdict;

char const* ceilings_for(BlendAnswer const& answer) { return answer.laying ? "birds in lay" : "birds that do not lay"; }

Page blend_heading(BlendAnswer const& answer, domain::Farm const& farm) {
    std::string what = "cheapest mix";
    if (answer.status == BlendStatus::given) what = "the mix as given";
    if (answer.status == BlendStatus::impossible) what = "the nearest mix";
    std::string const left =
        answer.blend.name + ": " + what + ", " + on_scale(answer.batch, answer.scale, farm.measures);
    std::string right;
    if (answer.batch_cost) {
        bool const us = farm.measures == Measures::us;
        Money const one = *answer.batch_cost * ratio(kilograms(us ? kilograms_per_pound : 1) / answer.batch);
        right =
            print(*answer.batch_cost, farm.currency) + "; " + number(in_money(one), 3) + " per " + (us ? "lb" : "kg");
    }
    Page page = Title{left, right};
    if (!answer.kind_title.empty()) return page + wrap("for " + answer.kind_title + ", " + answer.phase);
    return page + wrap("for no kind of bird: no needs are kept to, only your own figures and the ceilings for " +
                       std::string(ceilings_for(answer)));
}

/// Built-in ceilings the mix is above, said before all else.
Page not_kept_part(BlendAnswer const& answer) {
    if (answer.not_kept.empty()) return {};
    Page page = spaced(Heading{alarm("NOT KEPT TO")});
    for (auto const& one : answer.not_kept) {
        page += warning(limit_words(one.limit, answer) + " for " + ceilings_for(answer) + "; this mix has " +
                        limit_level(one.limit, one.reached));
    }
    return page;
}

/// "; 80.8 % of it does not state that"; empty where little is unknown.
std::string unknown_words(BlendAnswer const& answer, blends::BlendLimit const& limit) {
    for (BlendFinding const& one : answer.findings) {
        bool const same = limit.of == blends::BlendLimit::Of::nutrient && one.nutrient == limit.key;
        if (!same || !limit.floor || one.shown) continue;
        return "; " + number(100 * one.silent_share, 1) + " % of it does not state any: ask the maker";
    }
    return "";
}

std::string why(blends::BlendClash const& clash, BlendAnswer const& answer) {
    if (!clash.within_reach) {
        return clash.limit.floor ? "none of the ingredients states as much"
                                 : "none of the ingredients states as little";
    }
    if (clash.against.empty()) return "it could be kept, but then the others would be missed by more in all";
    std::vector<std::string> others;
    for (auto const& limit : clash.against) others.push_back(limit_words(limit, answer));
    return "this clashes with: " + join(others, "; ");
}

Page impossible_part(BlendAnswer const& answer) {
    Page page = Heading{alarm("NO MIX OF THESE KEEPS EVERY LIMIT")};
    for (auto const& clash : answer.clashes) {
        page += warning(limit_words(clash.limit, answer) + "; the nearest mix has " +
                        limit_level(clash.limit, clash.reached) + unknown_words(answer, clash.limit));
        page += wrap(why(clash, answer), "    ", "    ");
    }
    return page +
           wrap("Below is the mix with the least total shortfall, each limit counted in shares of itself.", "  ", "  ");
}

/// Which ingredients are silent on what is wanted: nutrients with the same ones together.
class Silences {
  public:
    void add(BlendFinding const& finding) {
        if (!finding.floor && !finding.ceiling) return;
        if (!finding.silent.empty()) {
            note(finding, "not stated by " + join(finding.silent) + " (" + number(100 * finding.silent_share, 1) +
                              " % of the mix)");
        }
        if (finding.ceiling && !finding.only_least.empty()) {
            note(finding, "only a least is stated by " + join(finding.only_least));
        }
        hidden_ = hidden_ || !finding.shown;
    }
    [[nodiscard]] Page part() const {
        Page page;
        for (auto const& [nutrients, words] : groups_) {
            page += wrap(join(nutrients) + ": " + words, "  ? ", "    ");
        }
        if (page.empty()) return page;
        std::string const may = hidden_ ? ", and it may decide what is NOT SHOWN:" : ":";
        return wrap("Nothing is counted for what an ingredient does not state" + may, "  ", "  ") + page;
    }

  private:
    void note(BlendFinding const& finding, std::string const& words) {
        auto const same = [&](auto const& group) { return group.second == words; };
        auto group = std::find_if(groups_.begin(), groups_.end(), same);
        if (group == groups_.end()) group = groups_.insert(group, {{}, words});
        group->first.push_back(nutrient_title(finding.nutrient));
    }

    std::vector<std::pair<std::vector<std::string>, std::string>> groups_;
    bool hidden_ = false;
};

/// "0.22 to 4.7 %" where a most is asked for and the least is not all that may be in it.
std::string held(BlendFinding const& one) {
    std::string const least = level_words(one.nutrient, one.level);
    bool const range = one.ceiling && one.most > one.level * (1 + 1e-9);
    return range ? plain(one.level) + " to " + level_words(one.nutrient, one.most) : least;
}

/// "0.65 to 1.5 %"; * marks the owner's own least, + one borrowed from other kinds.
std::string wanted(BlendFinding const& one) {
    bool const yours = one.floor && one.floor_source.standing == domain::Standing::yours;
    std::string const own = yours ? "*" : one.floor_borrowed ? "+" : "";
    if (!one.ceiling) return one.floor ? own + level_words(one.nutrient, *one.floor) : "";
    std::string const ceiling = level_words(one.nutrient, *one.ceiling);
    return one.floor ? own + plain(*one.floor) + " to " + ceiling : "at most " + ceiling;
}

constexpr char not_shown[] = "NOT SHOWN";

/// The unit stands in the same row: only the number, to three figures.
std::string gap(BlendFinding const& one) {
    double const unit = std::pow(10.0, std::floor(std::log10(one.off_by)) - 2);
    return plain(std::round(one.off_by / unit) * unit);
}

Styled verdict(BlendFinding const& one) {
    std::string const rounding = one.by_rounding ? ", by rounding" : "";
    switch (one.verdict) {
        case Verdict::short_of:
            return one.shown ? alarm("SHORT") + " by " + gap(one) + rounding : not_shown;
        case Verdict::over:
            return alarm("OVER") + " by " + gap(one) + rounding;
        default:
            break;
    }
    if (!one.floor && !one.ceiling) return {};
    return one.shown ? "meets" : not_shown;
}

Page findings_part(BlendAnswer const& answer) {
    Table table({Align::left, Align::left, Align::left, Align::left}, 2);
    table.head({"nutrient", "in the mix", "wanted", ""});
    Silences silences;
    std::vector<std::string> unstated;
    bool any_own = false, any_borrowed = false;
    for (BlendFinding const& one : answer.findings) {
        if (one.verdict == Verdict::unstated) {
            unstated.push_back(nutrient_title(one.nutrient) + " " + wanted(one));
            continue;
        }
        table.add({nutrient_title(one.nutrient), held(one), wanted(one), verdict(one)});
        silences.add(one);
        any_own = any_own || wanted(one).starts_with('*');
        any_borrowed = any_borrowed || one.floor_borrowed;
    }
    Page page = heading("WHAT IT HOLDS, AS WEIGHED") + table;
    if (any_own) page += wrap("* what you ask for", "  ", "    ");
    if (any_borrowed) page += wrap("+ borrowed from other kinds: the table of these birds gives none", "  ", "    ");
    page += silences.part();
    if (!unstated.empty()) page += wrap("stated by nothing in the mix, wanted: " + join(unstated), "  ", "    ");
    for (auto const& missed : answer.shares_missed) {
        bool const first = std::any_of(answer.not_kept.begin(), answer.not_kept.end(), [&](auto const& one) {
            return one.limit.of == missed.limit.of && one.limit.key == missed.limit.key && !missed.limit.floor;
        });
        if (first) continue;
        page += warning(limit_words(missed.limit, answer) + "; as weighed it is " + percent(missed.reached));
    }
    return page;
}

Page prices_part(BlendAnswer const& answer, domain::Farm const& farm) {
    auto const [weight, per] = per_weight(answer, farm.measures);
    auto const cost = [&, w = weight](MoneyPerMass price) { return print(price * w, farm.currency); };
    Page page;
    for (auto const& price : answer.prices) {
        bool const cents = !price.change || std::abs(in_money(*price.change * weight)) >= 0.005;
        if (price.fixed || !cents) continue;
        std::string const step = limit_step(price, answer);
        if (!price.change) {
            page += wrap(step + ": no mix of these can", "  - ", "    ");
        } else if (*price.change >= money_per_kilogram(0)) {
            page += wrap(step + " costs " + cost(*price.change) + " more per " + per, "  - ", "    ");
        } else {
            page += wrap(step + " saves " + cost(-*price.change) + " per " + per, "  - ", "    ");
        }
    }
    std::string const about = answer.duals_unique ? "" : "about ";
    for (auto const& part : answer.parts) {
        if (!part.enters_below) continue;
        page += wrap(part.title + " would come in below " + about + cost(*part.enters_below) + " per " + per +
                         " (now " + cost(*part.price) + ")",
                     "  - ", "    ");
    }
    if (page.empty()) return page;
    if (!answer.mix_unique) page += wrap("Other mixes cost as little as this one.", "  ", "  ");
    return heading("WHAT A CHANGE WOULD COST") + page;
}

}  // namespace

Page blend_page(BlendAnswer const& answer, domain::Farm const& farm, Sources sources) {
    Page page = blend_heading(answer, farm) + not_kept_part(answer);
    if (answer.status == BlendStatus::impossible) page += Blank() + impossible_part(answer);
    page += Blank() + mixing_sheet(answer, farm) + Blank() + findings_part(answer);
    return page + spaced(prices_part(answer, farm)) +
           notes_part(answer.cautions, answer.assumptions, farm.measures, sources);
}

std::string impossible_words(BlendAnswer const& answer) {
    std::vector<std::string> missed;
    for (auto const& clash : answer.clashes) {
        missed.push_back(limit_words(clash.limit, answer) + " (nearest " + limit_level(clash.limit, clash.reached) +
                         ")");
    }
    return answer.blend.name + ": no mix of these ingredients keeps every limit: " + join(missed, "; ");
}

}  // namespace cropful::reports
