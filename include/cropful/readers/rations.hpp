#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "cropful/domain/farm.hpp"
#include "cropful/rations/blend_tables.hpp"
#include "cropful/rations/brooder_advice.hpp"
#include "cropful/rations/kind.hpp"

namespace cropful::readers {

/// A file of rations and the name to show for it.
struct RationsFile {
    std::string name;
    std::string text;
};

/// Files put in front of those built in (`--rations DIR`), wherever they are kept.
struct RationsFiles {
    /// Names of those in a folder such as "birds", without ".toml".
    std::function<std::vector<std::string>(std::string const& folder)> keys;
    /// The one called so, such as "birds/bobwhite.toml", where there is one.
    std::function<std::optional<RationsFile>(std::string const& name)> file;
};

/// Reads what is built in, or what is put in front of it.
class RationsReader {
  public:
    explicit RationsReader(RationsFiles in_front = {});
    [[nodiscard]] std::vector<std::string> kinds() const;  // keys, sorted
    [[nodiscard]] std::vector<std::string> needs_tables() const;
    /// The key of the kind a user means: case, spaces, hyphens and underscores do not matter, other names are known.
    /// Throws BadInput naming the nearest.
    [[nodiscard]] std::string kind_key(std::string const& words) const;
    [[nodiscard]] rations::Kind kind(std::string const& key) const;
    [[nodiscard]] rations::NeedsTable needs(std::string const& key) const;
    [[nodiscard]] std::vector<domain::Ingredient> ingredients() const;
    [[nodiscard]] rations::BlendTables blend_tables() const;
    [[nodiscard]] std::vector<rations::Powder> powders() const;
    [[nodiscard]] rations::BrooderAdvice brooder_advice() const;
    /// Everything the farm's hatches need.
    [[nodiscard]] rations::Rations load(domain::Farm const& farm) const;
    [[nodiscard]] RationsFile file(std::string const& name) const;

  private:
    RationsFiles in_front_;
};

}  // namespace cropful::readers
