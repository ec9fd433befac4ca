// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <limits>
#include <optional>
#include <vector>

#include "staddle/base/tolerance.h"

namespace staddle {

// The best of all that is offered: of the choices whose value ties with the highest, the
// one that comes first. Ties are no chain: what is within the tolerance of a value that is
// itself beaten does not tie with the highest. So the answer does not depend on the order
// of the offers; kept are those that a higher value to come could still let win.
template <class Choice, auto comes_first>
class BestOfTies {
 public:
  struct Held {
    double value = 0;
    Choice choice;
  };

  void offer(double value, const Choice& choice) {
    if (!(value >= floor_)) return;
    if (value > highest_) rise_to(value);
    const auto in_the_way = [&](const Held& held) {
      return held.value >= value && !comes_first(choice, held.choice);
    };
    if (std::any_of(held_.begin(), held_.end(), in_the_way)) return;
    std::erase_if(held_, [&](const Held& held) {
      return held.value <= value && !comes_first(held.choice, choice);
    });
    held_.push_back({value, choice});
  }

  // The highest value offered; -infinity before the first.
  double highest() const { return highest_; }

  std::optional<Held> best() const {
    const auto first =
        std::min_element(held_.begin(), held_.end(), [](const Held& a, const Held& b) {
          return comes_first(a.choice, b.choice);
        });
    return first == held_.end() ? std::nullopt : std::optional(*first);
  }

 private:
  void rise_to(double value) {
    highest_ = value;
    floor_ = value - tolerance::tie_width(value);
    std::erase_if(held_, [this](const Held& held) { return held.value < floor_; });
  }

  double highest_ = -std::numeric_limits<double>::infinity();
  double floor_ = highest_;  // nothing below it ties with the highest
  std::vector<Held> held_;
};

}  // namespace staddle
