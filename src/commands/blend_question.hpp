#pragma once

#include <vector>

#include "cropful/blends/blend.hpp"
#include "cropful/blends/square.hpp"
#include "cropful/commands/blend.hpp"
#include "cropful/domain/farm.hpp"

/// What a command line asks of `blend`.
namespace cropful::commands {

struct BlendQuestions {
    domain::Farm farm;  // as read, in the measures asked for
    std::vector<blends::BlendAnswer> answers;
};
/// Reads the file, or puts a mix together from the flags, and answers. Throws BadInput or WrongUse.
BlendQuestions answer_blends(BlendOptions const& options);

blends::SquareQuestion square_question(BlendOptions const& options, quantities::Measures measures);

}  // namespace cropful::commands
