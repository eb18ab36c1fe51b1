#pragma once

/// The program as a page in a browser asks it: a question and its answer as JSON (reports/door_json.hpp), UTF-8 with a
/// zero byte behind. Never throws. The answer stands until the next question.
extern "C" char const* cropful_ask(char const* question);
