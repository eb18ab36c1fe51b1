#include "cropful/readers/diary_csv.hpp"

#include <algorithm>
#include <charconv>
#include <cstdlib>
#include <map>

#include "cropful/domain/csv.hpp"
#include "cropful/domain/nearest.hpp"
#include "cropful/domain/words.hpp"
#include "cropful/fault.hpp"
#include "cropful/fault/characters.hpp"
#include "cropful/readers/csv.hpp"
#include "readers/document.hpp"

namespace cropful::readers {

namespace {

using domain::Amount;
using domain::Deed;
using domain::Farm;

constexpr char offset_heading[] = "utc_offset_min";  // may be absent: spreadsheets of one's own have none

std::vector<std::string> const& headings() {
    static std::vector<std::string> const all{"at", "hatch", "what", "amount", "unit", "note", offset_heading};
    return all;
}

/// "one of this farm: ...", with the nearest word when there is one.
std::string one_of_known(std::string const& what, std::string const& word, std::vector<std::string> const& known) {
    std::string const near = domain::nearest(word, known);
    return what + ": " + domain::join(known) + (near.empty() ? "" : "; nearest: " + near);
}

/// Where each column stands in a row.
std::map<std::string, std::size_t> columns_of(CsvRow const& heading, std::string const& file) {
    std::map<std::string, std::size_t> columns;
    for (std::size_t i = 0; i < heading.cells.size(); ++i) {
        std::string const& name = heading.cells[i];
        if (std::find(headings().begin(), headings().end(), name) == headings().end()) {
            throw BadInput("the column " + in_quotes(name), one_of_known("the columns", name, headings()),
                           {file, heading.line, ""});
        }
        if (!columns.emplace(name, i).second) {
            throw BadInput("two columns " + in_quotes(name), "each column once", {file, heading.line, ""});
        }
    }
    for (std::string const& name : headings()) {
        if (columns.contains(name) || name == offset_heading) continue;
        throw BadInput("no column " + in_quotes(name), one_of_known("the columns", "", headings()),
                       {file, heading.line, ""});
    }
    return columns;
}

/// One row as an entry; its faults name the column.
class DiaryRow {
  public:
    DiaryRow(CsvRow const& row, std::map<std::string, std::size_t> const& columns, std::string const& file,
             Farm const& farm)
        : row_(row), columns_(columns), file_(file), farm_(farm) {}

    [[nodiscard]] domain::Entry entry() const;

  private:
    [[nodiscard]] std::string const& cell(std::string const& column) const { return row_.cells[columns_.at(column)]; }

    template <class Parse>
    auto read(std::string const& column, Parse parse) const {
        try {
            need_writable(cell(column));
            return parse(std::string_view(cell(column)));
        } catch (BadInput const& fault) {
            throw fault.at({file_, row_.line, column});
        }
    }

    [[noreturn]] void refuse(std::string const& column, std::string const& expected) const {
        throw BadInput(in_quotes(cell(column)), expected, {file_, row_.line, column});
    }

    [[nodiscard]] std::optional<std::chrono::minutes> utc_offset() const {
        if (!columns_.contains(offset_heading) || cell(offset_heading).empty()) return std::nullopt;
        std::string const& text = cell(offset_heading);
        int minutes = 0;
        auto const [end, error] = std::from_chars(text.data(), text.data() + text.size(), minutes);
        bool const whole = error == std::errc() && end == text.data() + text.size();
        if (!whole || std::abs(minutes) > domain::furthest_offset.count()) {
            refuse(offset_heading, "minutes from -1080 to 1080 that the clock is ahead of UTC, or nothing");
        }
        return std::chrono::minutes(minutes);
    }

    [[nodiscard]] std::string hatch(std::string const& name, Deed deed) const {
        std::vector<std::string> known;
        bool const fetched = farm_.feeds.contains(name) || farm_.supplements.contains(name) ||
                             farm_.brooders.contains(name) || farm_.disinfectants.contains(name);
        if (deed == Deed::done && fetched) return name;
        if (domain::is_of_store(deed)) {
            for (auto const& [key, feed] : farm_.feeds) known.push_back(key);
            if (farm_.feeds.contains(name)) return name;
            throw BadInput(in_quotes(name), one_of_known("a feed of this farm", name, known));
        }
        for (domain::Hatch const& hatch : farm_.hatches) known.push_back(hatch.name);
        if (std::find(known.begin(), known.end(), name) != known.end()) return name;
        throw BadInput(in_quotes(name), one_of_known("a hatch of this farm", name, known));
    }

    [[nodiscard]] Amount birds(Deed deed) const {
        if (cell("unit") != "birds") refuse("unit", "birds beside \"" + name(deed) + "\"");
        std::string const& text = cell("amount");
        int count = -1;
        auto const [end, error] = std::from_chars(text.data(), text.data() + text.size(), count);
        int const least = deed == Deed::counted || domain::counts_anything(deed) ? 0 : 1;
        if (error != std::errc() || end != text.data() + text.size() || count < least || count > domain::most_birds) {
            refuse("amount", "a whole number of birds from " + std::to_string(least) + " to " +
                                 std::to_string(domain::most_birds));
        }
        return quantities::birds(count);
    }

    [[nodiscard]] Amount of_vessels(Deed deed) const {
        Amount const one = read("unit", [this](std::string_view unit) { return one_of_unit(unit); });
        std::string const words = cell("amount") + " " + cell("unit");
        Amount const amount = read("amount", [&](std::string_view) -> Amount {
            if (std::holds_alternative<quantities::Mass>(one)) return quantities::parse_mass(words, farm_.measures);
            return quantities::parse_volume(words, farm_.measures);
        });
        bool const some = domain::number(amount) > 0;
        if (domain::is_of_store(deed) && std::holds_alternative<quantities::Volume>(amount)) {
            refuse("unit", "a unit of weight beside \"" + name(deed) + "\"");
        }
        if (deed == Deed::stock_counted) return amount;
        if (deed == Deed::found_empty && some) refuse("amount", "0 beside \"found empty\"");
        if (deed != Deed::found_empty && !some) refuse("amount", "more than none");
        return amount;
    }

    [[nodiscard]] Amount one_of_unit(std::string_view unit) const {
        try {
            return domain::parse_feed_or_water("1 " + std::string(unit), farm_.measures);
        } catch (BadInput const&) {
            bool const uk = farm_.measures == quantities::Measures::uk;
            throw BadInput(in_quotes(unit), std::string("a unit of weight for feed or of volume for water, such as ") +
                                                (uk ? "kg, lb, L, imp gal or US gal" : "kg, lb, L or gal"));
        }
    }

    CsvRow const& row_;
    std::map<std::string, std::size_t> const& columns_;
    std::string const& file_;
    Farm const& farm_;
};

domain::Entry DiaryRow::entry() const {
    auto const at = read("at", domain::parse_moment);
    auto const deed = read("what", domain::parse_deed);
    return {.at = domain::parse_moment(at.iso()),  // to the minute
            .hatch = read("hatch", [&](std::string_view text) { return hatch(std::string(text), deed); }),
            .deed = deed,
            .amount = domain::counts_birds(deed) || (domain::counts_anything(deed) && cell("unit") == "birds")
                          ? birds(deed)
                          : of_vessels(deed),
            .note = read("note", [](std::string_view text) { return std::string(text); }),
            .utc_offset = utc_offset()};
}

/// Spreadsheets write semicolons where a comma stands in decimals.
void refuse_semicolons(std::string_view text, std::string const& file) {
    std::string_view const first = text.substr(0, text.find_first_of("\r\n"));
    if (first.find(';') == std::string_view::npos || first.find(',') != std::string_view::npos) return;
    throw BadInput("semicolons between the columns, " + in_quotes(first),
                   "commas, and a point in decimals: save it once more as CSV, with the comma as separator",
                   {file, 1, ""});
}

bool is_blank(CsvRow const& row) {
    return std::all_of(row.cells.begin(), row.cells.end(), [](std::string const& cell) { return cell.empty(); });
}

}  // namespace

std::string diary_csv(domain::Diary const& diary) {
    std::string text = domain::csv_line(headings());
    for (domain::Entry const& entry : diary) {
        text += domain::csv_line({entry.at.iso(), entry.hatch, name(entry.deed),
                                  domain::csv_number(domain::number(entry.amount)), domain::unit(entry.amount),
                                  entry.note, entry.utc_offset ? std::to_string(entry.utc_offset->count()) : ""});
    }
    return text;
}

std::vector<domain::Entry> parse_diary_csv(std::string_view text, std::string const& file, Farm const& farm) {
    refuse_semicolons(text, file);
    auto const rows = parse_csv(text, file);
    if (rows.empty()) throw BadInput("nothing", one_of_known("the columns", "", headings()), {file, 1, ""});
    auto const columns = columns_of(rows.front(), file);
    std::vector<domain::Entry> entries;
    for (std::size_t i = 1; i < rows.size(); ++i) {
        if (!is_blank(rows[i])) entries.push_back(DiaryRow(rows[i], columns, file, farm).entry());
    }
    return entries;
}

}  // namespace cropful::readers
