// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/fault_list.h"

#include <algorithm>

namespace staddle {

void FaultList::add(int order, FaultCode code, std::string place, std::string text,
                    std::string hint) {
  placed_.emplace_back(order,
                       Fault{code, file_, std::move(place), std::move(text), std::move(hint)});
}

void FaultList::add_all(int order, const Faults& faults) {
  for (const Fault& fault : faults) placed_.emplace_back(order, fault);
}

Faults FaultList::in_file_order() const {
  auto sorted = placed_;
  std::stable_sort(sorted.begin(), sorted.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  Faults faults;
  faults.reserve(sorted.size());
  for (auto& [order, fault] : sorted) faults.push_back(std::move(fault));
  return faults;
}

}  // namespace staddle
