#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cropful/domain/farm.hpp"
#include "cropful/engine/blend.hpp"
#include "cropful/engine/kind.hpp"
#include "cropful/engine/sheet.hpp"

namespace cropful::readers {

/// Reads what is built in, or the files of a directory put in front of it (`--rations DIR`).
class RationsReader {
  public:
    explicit RationsReader(std::optional<std::string> directory = {});
    [[nodiscard]] std::vector<std::string> kinds() const;  // keys, sorted
    [[nodiscard]] std::vector<std::string> needs_tables() const;
    /// The key of the kind a user means: case, spaces, hyphens and underscores do not matter, other names are known.
    /// Throws BadInput naming the nearest.
    [[nodiscard]] std::string kind_key(std::string const& words) const;
    [[nodiscard]] engine::Kind kind(std::string const& key) const;
    [[nodiscard]] engine::NeedsTable needs(std::string const& key) const;
    [[nodiscard]] std::vector<domain::Ingredient> ingredients() const;
    [[nodiscard]] engine::BlendTables blend_tables() const;
    [[nodiscard]] std::vector<engine::Powder> powders() const;
    [[nodiscard]] engine::BrooderAdvice brooder_advice() const;
    /// Everything the farm's hatches need.
    [[nodiscard]] engine::Rations load(domain::Farm const& farm) const;
    /// A file's text and the name to show for it; `name` such as "birds/bobwhite.toml".
    struct File {
        std::string name;
        std::string text;
    };
    [[nodiscard]] File file(std::string const& name) const;

  private:
    std::optional<std::string> directory_;
};

}  // namespace cropful::readers
