#pragma once

#include <chrono>
#include <filesystem>
#include <vector>

#include "cropful/domain/diary.hpp"

namespace cropful::readers {

/// Where the diary of a farm lies: farm.toml -> farm.diary.
std::filesystem::path diary_beside(std::filesystem::path const& farm_file);

/// A diary in a file of SQLite's. What a function wrote is on the disk when it returns; where it throws, or is cut
/// short, the file holds what it held before. Any number of programs may use one file at once. Throws WrongUse.
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
    /// Writes as one visit those that are not there yet, and returns how many. An entry that stands n times in
    /// `entries` stands at least n times in the diary afterwards.
    int import(std::vector<domain::Entry> const& entries);

  private:
    std::filesystem::path file_;
    std::chrono::milliseconds patience_;
};

}  // namespace cropful::readers
