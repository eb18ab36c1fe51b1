#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

/// One target of the fuzzer: it may throw what a user is told of (Fault), and nothing else.
void try_input(std::string_view text);

/// Stops the run with words on what does not hold.
void hold(bool condition, char const* promise);
/// Nothing that a terminal, or a reader of bidirectional text, takes for an order; lines may end.
void hold_harmless(std::string_view printed);
