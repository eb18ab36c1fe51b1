#pragma once

#include <map>
#include <utility>

#include "engine/bag_table.hpp"
#include "engine/trip_bounds.hpp"

namespace cropful::engine {

using namespace quantities;

/// What a trip brings: an entry of each feed's table of bags.
struct Load {
    int day;
    std::vector<std::size_t> entries;
};

/// A shortest path over trips. A label is a way to stand in the morning of a trip: what it cost till then and what is
/// in the store.
class TripSearch {
  public:
    /// All must outlive the search.
    TripSearch(Buying const& buying, std::vector<Eating> const& eating, std::vector<BagTable> const& tables,
               TripBounds const& bounds);

    struct Found {
        double cost = no_way;     // with what settles between equals
        std::vector<Load> loads;  // none where there is no way
        bool proven = true;
    };
    /// Keeps at most `labels` ways to stand on a day and none that must cost more than `most` in the end. With 0 labels
    /// only the trips that would be best if bags held any weight are tried; else a search that takes more than
    /// `most_work` finds nothing and proves nothing. Work is counted in ways to go on that are looked at.
    Found run(std::size_t labels, double most, double most_work);
    /// What the last search took.
    [[nodiscard]] double work() const { return work_; }
    /// Where the ways ended that came furthest.
    [[nodiscard]] std::optional<Obstacle> const& obstacle() const { return obstacle_; }

  private:
    struct Label {
        int day;  // -1: nothing bought yet
        double cost;
        double bags_to_come;  // the least
        std::vector<Shelf> shelves;
        std::size_t parent;
        std::vector<std::size_t> entries;  // bought on the parent's day
    };
    /// What to buy of one feed on a trip, and how it stands on the next.
    struct Option {
        std::size_t entry;
        Shelf left;
        double weight;  // in the store after the trip
        double cost;    // of bags and keeping
        double bags_to_come;
        [[nodiscard]] double comes_to() const { return cost + bags_to_come; }
    };
    using Key = std::vector<std::pair<int, long long>>;
    using Morning = std::map<Key, Label>;

    void expand(std::size_t number, int next);
    [[nodiscard]] std::vector<std::size_t> choices(Label const& label, std::size_t feed, int next) const;
    /// What may be bought of a feed, what promises to cost least first; none where there is no way to the next trip.
    [[nodiscard]] std::vector<Option> options(Label const& label, std::size_t feed, int next) const;
    [[nodiscard]] static std::size_t bulkiest(std::vector<std::vector<Option>> const& options);
    bool join(std::size_t number, int next, std::vector<std::vector<Option>> const& options);
    void place(Label&& label);
    void thin_out(int day);
    void settle(int day, std::size_t labels);
    [[nodiscard]] bool is_no_better(Label const& label, Label const& than) const;
    [[nodiscard]] double bound(Label const& label) const;

    Buying const& buying_;
    std::vector<Eating> const& eating_;
    std::vector<BagTable> const& tables_;
    TripBounds const& bounds_;
    double keeping_;  // a kg and day
    bool may_waste_;  // more and fresher feed is never worse
    double most_ = no_way;
    double cut_ = no_way;  // the least that what was cut off could have come to
    double work_ = 0;      // ways to go on that were looked at
    std::vector<Label> labels_;
    std::size_t many_ = 0;  // ways to stand on a day that are looked at closely
    std::vector<Morning> mornings_;
    std::vector<double> crowded_;  // of each day: what comes to more is cut off
    std::optional<Obstacle> obstacle_;
};

}  // namespace cropful::engine
