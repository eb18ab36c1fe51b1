#pragma once

#include <vector>

#include "cropful/commands/blend.hpp"
#include "cropful/domain/farm.hpp"
#include "cropful/engine/blend.hpp"
#include "cropful/engine/square.hpp"

/// What a command line asks of `blend`.
namespace cropful::commands {

struct BlendQuestions {
    domain::Farm farm;  // as read, in the measures asked for
    std::vector<engine::BlendAnswer> answers;
};
/// Reads the file, or puts a mix together from the flags, and answers. Throws BadInput or WrongUse.
BlendQuestions answer_blends(BlendOptions const& options);

engine::SquareQuestion square_question(BlendOptions const& options, quantities::Measures measures);

}  // namespace cropful::commands
