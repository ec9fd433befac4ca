// SPDX-License-Identifier: GPL-3.0-or-later
#include "tract/regime_tree.h"

#include <algorithm>

namespace staddle {
namespace {

constexpr std::size_t storm_width = 3;

std::size_t count(int years) { return static_cast<std::size_t>(std::max(0, years)); }

class TreeWalk {
 public:
  TreeWalk(const CaseKernel& kernel, const LatticeRules& rules, const TreeQuestion& question,
           const StretchVisitor& visit)
      : kernel_(kernel), rules_(rules), question_(question), visit_(visit) {}

  void walk() { follow(kernel_.start(), nullptr, 0.0); }

 private:
  // What is written of one stretch; each level of cuts has its own.
  struct Rows {
    std::vector<double> harvests, storms;
    std::vector<char> open;
  };

  // `cut` and `basal_area`: of the cut that begins the stretch.
  void follow(StandPoint point, const double* cut, double basal_area) {
    Rows rows;
    std::vector<StandPoint> cut_here;
    RegimeStretch stretch;
    stretch.regime = regime_;
    const int present = kernel_.present_yr();
    stretch.from_year = point.age_yr - present;
    stretch.final_from_year = std::max(rules_.next_final_from(point), point.age_yr) - present;
    stretch.to_year = rules_.final_to() - present;
    stretch.cut = cut;
    write_rows(point, basal_area, rows, cut_here);
    stretch.harvests = rows.harvests.data();
    stretch.storms = kernel_.hazard_active() ? rows.storms.data() : nullptr;
    stretch.open = question_.open_below ? rows.open.data() : nullptr;
    visit_(stretch);
    for (const StandPoint& at : cut_here) try_cuts(at);
  }

  void write_rows(StandPoint& point, double basal_area, Rows& rows,
                  std::vector<StandPoint>& cut_here) {
    const int first_yr = point.age_yr;
    const int cut_from = rules_.next_cut_from(point);
    const int final_from = std::max(rules_.next_final_from(point), first_yr);
    const bool may_cut_again = point.entries < rules_.max_thinnings();
    Measured measured;
    StormYear storm;
    while (true) {
      if (point.age_yr >= final_from) {
        kernel_.measure_tons(point, measured);
        write_sale(kernel_.harvest_revenue(point, measured), measured.tons, rows.harvests);
      }
      if (kernel_.hazard_active()) {
        rows.storms.insert(rows.storms.end(),
                           {storm.loss_share, storm.salvage_usd_ac, storm.cleanup_usd_ac});
      }
      if (question_.open_below) {
        const bool just_cut = point.age_yr == first_yr && point.entries > 0;
        if (!just_cut) kernel_.measure(point, measured);
        const double stands = just_cut ? basal_area : measured.basal_area;
        rows.open.push_back(stands < question_.open_below->in(square_feet_per_acre) ? 1 : 0);
      }
      if (may_cut_again && point.age_yr >= cut_from && point.age_yr <= rules_.cut_to()) {
        cut_here.push_back(point);
      }
      if (point.age_yr >= rules_.final_to()) return;
      storm = kernel_.advance(point, measured);
    }
  }

  void write_sale(double revenue, const ProductTons& tons, std::vector<double>& row) const {
    row.push_back(revenue);
    for (const std::vector<std::size_t>& products : question_.tons) {
      double sum = 0.0;
      for (const std::size_t i : products) sum += tons[i];
      row.push_back(sum);
    }
  }

  void try_cuts(const StandPoint& point) {
    Measured measured;
    kernel_.measure_tons(point, measured);
    if (!rules_.stand_may_be_cut(measured)) return;
    const std::size_t allowed = rules_.removals_allowed(point.age_yr);
    const auto entry = static_cast<std::size_t>(regime_.cuts);
    for (std::size_t i = 0; i < allowed; ++i) {
      if (!rules_.leaves_trees(rules_.removals()[i], point.entries)) continue;
      Cut cut;
      kernel_.work_out_cut(point, measured, rules_.removals()[i], cut);
      if (!rules_.cut_may_be_taken(cut)) continue;
      StandPoint child = point;
      kernel_.take_cut(child, measured, cut);
      std::vector<double> sale;
      write_sale(cut.revenue_usd_ac, cut.tons, sale);
      regime_.age_yr[entry] = point.age_yr;
      regime_.removal[entry] = static_cast<int>(i);
      ++regime_.cuts;
      follow(child, sale.data(), cut.basal_area);
      --regime_.cuts;
    }
  }

  const CaseKernel& kernel_;
  const LatticeRules& rules_;
  const TreeQuestion& question_;
  const StretchVisitor& visit_;
  LatticeRegime regime_;
};

template <class Number>
void append(std::vector<Number>& all, const Number* from, std::size_t size) {
  if (from != nullptr) all.insert(all.end(), from, from + size);
}

}  // namespace

void visit_stretches(const CaseKernel& kernel, const LatticeRules& rules,
                     const TreeQuestion& question, const StretchVisitor& visit) {
  TreeWalk(kernel, rules, question, visit).walk();
}

RegimeTree::RegimeTree(const CaseKernel& kernel, const LatticeRules& rules,
                       const TreeQuestion& question) {
  const std::size_t width = 1 + question.tons.size();
  visit_stretches(kernel, rules, question, [&](const RegimeStretch& stretch) {
    places_.push_back({cuts_.size(), harvests_.size(), storms_.size(), open_.size()});
    stretches_.push_back(stretch);
    const std::size_t years = count(stretch.to_year - stretch.from_year + 1);
    append(cuts_, stretch.cut, width);
    append(harvests_, stretch.harvests,
           width * count(stretch.to_year - stretch.final_from_year + 1));
    append(storms_, stretch.storms, storm_width * years);
    append(open_, stretch.open, years);
  });
  for (auto* numbers : {&cuts_, &harvests_, &storms_}) numbers->shrink_to_fit();
  open_.shrink_to_fit();
  stretches_.shrink_to_fit();
  for (std::size_t i = 0; i < stretches_.size(); ++i) {
    RegimeStretch& stretch = stretches_[i];
    const Places& place = places_[i];
    if (stretch.cut != nullptr) stretch.cut = cuts_.data() + place.cut;
    stretch.harvests = harvests_.data() + place.harvests;
    if (stretch.storms != nullptr) stretch.storms = storms_.data() + place.storms;
    if (stretch.open != nullptr) stretch.open = open_.data() + place.open;
  }
  places_ = {};
}

void RegimeTree::visit(const StretchVisitor& visit) const {
  for (const RegimeStretch& stretch : stretches_) visit(stretch);
}

double RegimeTree::bytes() const {
  return static_cast<double>(stretches_.size() * sizeof(RegimeStretch) + open_.size() +
                             sizeof(double) * (cuts_.size() + harvests_.size() + storms_.size()));
}

double RegimeTree::most_bytes(const CaseKernel& kernel, const LatticeRules& rules,
                              const TreeQuestion& question) {
  // With storms or openness a stretch keeps all its years, about twice the harvests.
  const double numbers = 1.0 + static_cast<double>(question.tons.size()) +
                         (kernel.hazard_active() ? 2.0 * storm_width : 0.0) +
                         (question.open_below ? 0.25 : 0.0);
  // A stretch itself weighs as much as a few rows.
  return rules.count_regimes() * (numbers + 2.0) * sizeof(double);
}

}  // namespace staddle
