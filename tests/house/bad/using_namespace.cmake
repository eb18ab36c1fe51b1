bad("include/cropful/engine/x.hpp" "namespace cropful::engine {\nusing namespace quantities\;\n}\n" "using namespace quantities")
good("include/cropful/engine/x.hpp" "namespace cropful::engine {\nusing quantities::Mass\;\n}\n")
