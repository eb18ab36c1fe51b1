#pragma once

#include <memory>
#include <vector>

#include "cropful/engine/learn.hpp"

namespace cropful::engine {

class Draws;
class HatchModel;

/// The hatches of a farm as far as everything asked of them has in common, each part worked out when it is first asked
/// for: what the diary taught, the worlds they are judged in, each hatch's flock and intake. Plans,
/// sheets and the other answers are views of a season.
class Season {
  public:
    /// Reads the diary against the tables. The rations must outlive the season. `worlds` is a power of two; 0: as many
    /// as the number of hatches allows.
    Season(domain::Farm const& farm, Rations const& rations, domain::Diary const& diary = {}, std::size_t worlds = 0);
    Season(Season const&) = delete;
    Season& operator=(Season const&) = delete;
    ~Season();

    [[nodiscard]] Rations const& rations() const { return *rations_; }
    [[nodiscard]] Lessons const& lessons() const { return lessons_; }
    /// With the diary's head records in its hatches.
    [[nodiscard]] domain::Farm const& farm() const { return lessons_.farm; }
    [[nodiscard]] Kind const& kind(std::size_t hatch) const { return rations_->kinds.at(farm().hatches[hatch].kind); }
    /// Throws NoAnswer where the worlds would have too many dimensions.
    [[nodiscard]] Draws const& draws() const;
    [[nodiscard]] HatchModel const& hatch(std::size_t number) const;

  private:
    Rations const* rations_;
    std::size_t worlds_;
    Lessons lessons_;
    mutable std::unique_ptr<Draws> draws_;
    mutable std::vector<std::unique_ptr<HatchModel>> hatches_;
};

}  // namespace cropful::engine
