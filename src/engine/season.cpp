#include "cropful/engine/season.hpp"

#include "engine/draws.hpp"
#include "engine/hatch_model.hpp"

namespace cropful::engine {

using namespace quantities;

Season::Season(domain::Farm const& farm, Rations const& rations, domain::Diary const& diary, std::size_t worlds)
    : rations_(&rations),
      worlds_(worlds > 0 ? worlds : worlds_for(farm.hatches.size())),
      lessons_(learn(farm, rations, diary)),
      hatches_(lessons_.farm.hatches.size()) {}

Season::~Season() = default;

Draws const& Season::draws() const {
    if (!draws_) draws_ = std::make_unique<Draws>(lessons_.belief, worlds_);
    return *draws_;
}

HatchModel const& Season::hatch(std::size_t number) const {
    auto& one = hatches_.at(number);
    if (!one) one = std::make_unique<HatchModel>(*this, number);
    return *one;
}

}  // namespace cropful::engine
