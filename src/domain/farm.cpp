#include "cropful/domain/farm.hpp"

namespace cropful::domain {

std::string name(Form form) {
    switch (form) {
        case Form::mash:
            return "mash";
        case Form::crumble:
            return "crumble";
        case Form::pellet:
            return "pellet";
    }
    return "";
}

}  // namespace cropful::domain
