#pragma once

#include <chrono>
#include <filesystem>
#include <optional>
#include <vector>

#include "cropful/domain/diary.hpp"

namespace cropful::store {

/// Where the diary of a farm lies: farm.toml -> farm.diary.
std::filesystem::path diary_beside(std::filesystem::path const& farm_file);

/// A diary in a file of SQLite's. What a function wrote is on the disk when it returns; where it throws, or is cut
/// short, the file holds what it held before. Any number of programs may use one file at once. Throws WrongUse, and
/// BadInput for entries that cropful never wrote: a file made or changed by another hand is believed in nothing.
/// Entries without an offset from UTC get that of this machine's time zone.
class DiaryStore {
  public:
    /// Waits for other programs up to `patience`.
    explicit DiaryStore(std::filesystem::path file, std::chrono::milliseconds patience = std::chrono::seconds(10));
    /// A missing file is an empty diary, and is not made.
    [[nodiscard]] domain::Diary read() const;
    /// Writes the entries of one visit.
    void add(std::vector<domain::Entry> const& visit);
    /// Removes the visit written last and returns its entries; none when there is no visit.
    std::vector<domain::Entry> undo();
    /// Puts an entry in the place of one that is equal to `was`, in the same visit, or takes that out; false where
    /// there is none.
    bool replace(domain::Entry const& was, std::optional<domain::Entry> const& by);
    /// Writes as one visit those that are not there yet, and returns how many. An entry that stands n times in
    /// `entries` stands at least n times in the diary afterwards.
    int import(std::vector<domain::Entry> const& entries);
    /// Where the diary was of an earlier form, the last write has taken it over; as it was, it is kept in this file.
    [[nodiscard]] std::optional<std::filesystem::path> const& copy_kept() const { return copy_kept_; }

  private:
    std::filesystem::path file_;
    std::chrono::milliseconds patience_;
    std::optional<std::filesystem::path> copy_kept_;
};

}  // namespace cropful::store
