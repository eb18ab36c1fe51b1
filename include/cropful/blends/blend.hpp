#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cropful/blends/quantities.hpp"
#include "cropful/domain/blend.hpp"
#include "cropful/engine/check.hpp"
#include "cropful/rations/blend_tables.hpp"

namespace cropful::blends {

using domain::Assumption;
using domain::Caution;
using domain::Ingredient;
using domain::Source;
using engine::NeedScale;
using engine::Verdict;
using rations::BlendGuide;
using rations::BlendRule;
using rations::BlendTables;
using rations::Limit;
using rations::Need;
using rations::NeedsTable;
using rations::Phase;

/// One thing a mix is held to: least or most of a nutrient (in its unit) or of an ingredient (share of the mix).
struct BlendLimit {
    using Of = rations::BlendRule::Of;
    Of of = Of::nutrient;
    std::string key;
    bool floor = true;
    double level = 0;
    std::optional<EnergyPerMass>
        for_energy;  // the level is for a feed with so much energy, and goes with the mix's own
    Source source;
    std::string per{};      // a ceiling only: the level is so many times what the mix holds of this nutrient
    bool borrowed = false;  // a floor taken from other kinds, where the kind's own table is silent
};

/// The birds a mix is for. Without a kind nothing but the built-in ceilings counts: those for birds that do not lay,
/// unless the blend itself says that they do.
struct BlendNeeds {
    std::string kind_title;  // empty: of no kind, and `table` and `phase` say nothing
    NeedsTable table;
    Phase phase;
    BlendTables tables;
    [[nodiscard]] bool of_a_kind() const { return !kind_title.empty(); }
};

struct BlendPart {
    std::string key;
    std::string title;
    bool liquid = false;
    double share = 0;  // before rounding
    Mass amount;       // on the scale
    std::optional<MoneyPerMass> price;
    std::optional<MoneyPerMass> enters_below;  // left out: the price below which it would come in
};

/// One nutrient of the mix as weighed.
struct BlendFinding {
    std::string nutrient;
    double level = 0;             // what the ingredients state at least
    double most = 0;              // what they state at most; an ingredient that states only a minimum counts with that
    std::optional<double> floor;  // scaled to the mix's energy where asked
    std::optional<double> ceiling;
    Source floor_source, ceiling_source;
    Verdict verdict = Verdict::meets;  // of what is stated
    bool shown = true;                 // false: what is not stated may well turn the verdict
    double off_by = 0;
    bool floor_borrowed = false;          // the floor is another kind's
    bool by_rounding = false;             // before rounding it was held
    std::vector<std::string> silent;      // titles of ingredients in the mix that do not state it
    double silent_share = 0;              // of the mix as weighed
    std::vector<std::string> only_least;  // titles of ingredients in the mix that state only a minimum
};

/// A limit that the mix nearest to the request does not keep.
struct BlendClash {
    BlendLimit limit;
    double reached = 0;
    bool within_reach = true;         // one of the ingredients alone would keep it
    std::vector<BlendLimit> against;  // limits of which one must give way with it
};

/// What moving one limit would do to the cost.
struct ShadowPrice {
    BlendLimit limit;
    double to = 0;                       // the level tried
    std::optional<MoneyPerMass> change;  // absent: no mix keeps it
    bool fixed = false;                  // its ceiling and its floor are one
    double dual = 0;                     // cost per kg for one more of the limit's unit, at this mix
};

enum class BlendStatus { least_cost, given, impossible };

struct BlendAnswer {
    domain::Blend blend;
    std::string kind_title, phase;  // empty without a kind
    bool laying = false;            // whose ceilings were taken
    NeedScale need_scale = NeedScale::as_printed;
    BlendStatus status = BlendStatus::least_cost;
    Mass batch;
    Mass scale;
    std::vector<BlendPart> parts;      // in the order of the question
    std::optional<MoneyPerMass> cost;  // before rounding; absent where a price is missing
    std::optional<Money> batch_cost;   // as weighed
    bool duals_unique = false, mix_unique = false;
    double shortfall = 0;             // the least total, each limit in shares of itself
    std::vector<BlendClash> clashes;  // what is not kept
    std::vector<BlendFinding> findings;
    std::vector<BlendClash> shares_missed;  // limits on ingredients the mix as weighed does not keep
    std::vector<BlendClash> not_kept;       // built-in ceilings it is above: the owner's own figures allow it
    std::vector<ShadowPrice> prices;
    std::vector<Assumption> assumptions;
    std::vector<Caution> cautions;
};

/// Finds the cheapest mix within all limits, or looks at the one with given amounts. An impossible request is answered
/// with the mix of the least total shortfall. Needs a batch and a scale, and a price for everything it may choose from.
BlendAnswer blend(domain::Blend const& wish, std::vector<Ingredient> const& ingredients,
                  std::optional<BlendNeeds> const& needs, NeedScale scale = NeedScale::as_printed);

}  // namespace cropful::blends
