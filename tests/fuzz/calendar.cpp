// A calendar that lies where a new one is written: of its events those that are no more are cancelled.
#include "cropful/reports/calendar.hpp"
#include "cropful/engine/agenda.hpp"
#include "cropful/readers/farm.hpp"
#include "fuzz.hpp"

using namespace cropful;

void try_input(std::string_view text) {
    static readers::RationsReader const reader;
    static auto const farm = readers::parse_farm(readers::starter_farm(), "farm.toml", reader);
    static auto const rations = reader.load(farm);
    static engine::Season const season(farm, rations, {}, 32);
    static auto const agenda = [] {
        auto const start = farm.hatches.front().date;
        return engine::make_agenda(season, {.from = start, .until = start + quantities::days(2)});
    }();
    auto const written = reports::calendar(agenda, agenda.from, quantities::days(1.0 / 24), text);
    hold(written.starts_with("BEGIN:VCALENDAR\r\n") && written.ends_with("END:VCALENDAR\r\n"), "a calendar is whole");
    for (std::size_t at = written.find('\n'); at != std::string::npos; at = written.find('\n', at + 1)) {
        hold(at > 0 && written[at - 1] == '\r', "its lines end as the standard says");
    }
}
