#pragma once

#include <catch2/catch.hpp>
#include <string>

#include "cropful/fault.hpp"

namespace cropful::sample {

/// The message of the fault `act` ends with.
template <class Act>
std::string fault_of(Act const& act) {
    try {
        act();
    } catch (Fault const& fault) {
        CHECK(fault.status() == Exit::wrong_use);
        return fault.what();
    }
    return "no fault";
}

}  // namespace cropful::sample
