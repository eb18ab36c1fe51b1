#pragma once

#include <string>
#include <vector>

#include "blends.hpp"
#include "cautions.hpp"
#include "cropful/domain/standing.hpp"
#include "cropful/engine/away.hpp"
#include "cropful/engine/buying.hpp"
#include "cropful/engine/mix.hpp"
#include "cropful/engine/overview.hpp"
#include "cropful/engine/sheet.hpp"
#include "cropful/readers/rations.hpp"
#include "sample_farms.hpp"

/// Cautions and assumptions of many farms, made so that each sort of them is among them.
namespace cropful::sample {

class Notes {
  public:
    std::vector<domain::Caution> cautions;
    std::vector<domain::Assumption> assumptions;

    template <class Answer>
    void add(Answer const& answer) {
        cautions.insert(cautions.end(), answer.cautions.begin(), answer.cautions.end());
        assumptions.insert(assumptions.end(), answer.assumptions.begin(), answer.assumptions.end());
    }
    void plan(domain::Farm const& farm, domain::Diary const& diary = {},
              engine::NeedScale scale = engine::NeedScale::as_printed, engine::Window const& window = {}) {
        auto const rations = reader_.load(farm);
        add(engine::make_plan({farm, rations, diary, worlds}, window, scale));
    }
    void season(domain::Farm const& farm) {
        auto const rations = reader_.load(farm);
        engine::Overview const overview = engine::make_overview({farm, rations, {}, worlds});
        add(overview.plan);
        assumptions.insert(assumptions.end(), overview.assumptions.begin(), overview.assumptions.end());
    }
    void sheet(domain::Farm const& farm) {
        auto const rations = reader_.load(farm);
        add(engine::make_sheet({farm, rations, {}, worlds}, reader_.brooder_advice()));
    }
    void trips(domain::Farm const& farm) {
        auto const rations = reader_.load(farm);
        add(engine::plan_trips(engine::make_plan({farm, rations, {}, worlds})).plan);
    }
    void away(domain::Farm const& farm, double from, double length) {
        auto const rations = reader_.load(farm);
        auto const start = farm.hatches.front().date + quantities::days(from);
        add(engine::away({farm, rations, {}, worlds}, {start, start + quantities::days(length)}));
    }
    void mix(domain::Supplement const& supplement) {
        for (auto& caution : engine::mix_cautions(supplement, quantities::days(supplement.days_long)))
            cautions.push_back(std::move(caution));
    }
    void chlorine() {
        engine::ChlorineDose const strong{quantities::kilograms_per_litre(50e-6), 0.05, quantities::litres(100)};
        for (auto& caution : engine::chlorine_cautions(strong, reader_.load({}).water)) {
            cautions.push_back(std::move(caution));
        }
    }
    void blend(std::vector<domain::Ingredient> const& use, std::optional<std::string> const& kind, double protein,
               engine::NeedScale scale = engine::NeedScale::as_printed) {
        blends::BlendNeeds needs{.kind_title = "", .table = {}, .phase = {}, .tables = reader_.blend_tables()};
        auto wish = sample::wish({});
        if (kind) {
            auto const bird = reader_.kind(*kind);
            needs.kind_title = bird.title;
            needs.table = reader_.needs(bird.needs_table);
            needs.phase = needs.table.phases.front();
        }
        wish.need["protein"] = {protein, {}};
        for (auto const& one : use) wish.amounts.push_back({one.key, quantities::kilograms(1)});
        wish.amounts.back().amount = quantities::kilograms(0.01);  // less than the scale's step
        add(blends::blend(wish, use, needs, scale));
    }
    [[nodiscard]] readers::RationsReader const& reader() const { return reader_; }

  private:
    static constexpr std::size_t worlds = 32;
    readers::RationsReader reader_;
};

}  // namespace cropful::sample
