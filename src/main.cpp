#include <csignal>
#include <exception>
#include <iostream>

#include "cropful/commands/command_line.hpp"
#include "cropful/fault/characters.hpp"

namespace {

int status(cropful::Exit exit) { return static_cast<int>(exit); }

int complain(char const* what, cropful::Exit exit) {
    std::cerr << "cropful: " << what << '\n';
    return status(exit);
}

int answer(std::vector<std::string> const& words) {
    auto const reply = cropful::commands::answer(words);
    bool const wrote = !reply.done.empty();
    if (wrote) std::signal(SIGPIPE, SIG_IGN);  // a reader that is gone must not hide that it is done
    std::cerr << reply.err;
    std::cout << reply.out << std::flush;
    if (std::cout) return status(reply.status);
    if (!wrote) throw cropful::WrongUse("the answer cannot be written to standard output");
    std::string const said = reply.done + "; only the answer could not be printed, so do not do it again";
    return complain(cropful::escaped(said).c_str(), reply.status);
}

}  // namespace

int main(int count, char** words) {
    try {
        return answer({words + (count > 0 ? 1 : 0), words + count});
    } catch (cropful::Fault const& fault) {
        return complain(fault.what(), fault.status());
    } catch (std::exception const& fault) {
        return complain(cropful::own_fault(fault).c_str(), cropful::Exit::no_answer);
    }
}
