// The door of the phone page without a browser: a question a line on standard input, an answer a line on standard
// output.
#include <iostream>
#include <string>

#include "cropful/page/door.hpp"

int main() {
    for (std::string question; std::getline(std::cin, question);)
        std::cout << cropful_ask(question.c_str()) << std::endl;
}
