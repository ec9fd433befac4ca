// SPDX-License-Identifier: GPL-3.0-or-later
#include "advise/plots_question.h"

#include <algorithm>
#include <cmath>

namespace staddle {
namespace {

// The search for the nearest basal area at which the advice changes: first in so many
// steps outward, then by so many halvings of the step in which it changed.
constexpr int steps_outward = 8;
constexpr int halvings = 6;

class PlotsInquiry {
 public:
  PlotsInquiry(const PlotsQuestion& plots, const Scene& scene, const StandOptions& options)
      : plots_(plots), scene_(scene) {
    options_.method = options.method;
    options_.stop = options.stop;
  }

  PlotsAnswer answer() const {
    PlotsAnswer answer;
    answer.low = end_at(plots_.low);
    answer.high = end_at(plots_.high);
    const bool low_holds = holds(answer.low.best);
    const bool high_holds = holds(answer.high.best);
    answer.same_advice = low_holds && high_holds;
    if (answer.same_advice) {
      answer.more_plots = 0;
      return answer;
    }
    double nearest_ft2_ac = half_width();
    if (!low_holds) nearest_ft2_ac = std::min(nearest_ft2_ac, distance_towards(plots_.low));
    if (!high_holds) nearest_ft2_ac = std::min(nearest_ft2_ac, distance_towards(plots_.high));
    answer.more_plots = more_plots(nearest_ft2_ac);
    return answer;
  }

 private:
  double half_width() const { return (plots_.high - plots_.mean).in(square_feet_per_acre); }

  std::optional<Plan> best_at(BasalArea basal_area) const {
    Scene other = scene_;
    other.stand.stand_case.standing = plots_.stand(basal_area / plots_.mean);
    other.solution = solve(other.stand, options_);
    if (!other.solved()) return std::nullopt;
    return plan_of(other, other.best());
  }

  PlotsAnswer::End end_at(BasalArea basal_area) const { return {basal_area, best_at(basal_area)}; }

  bool holds(const std::optional<Plan>& plan) const {
    return plan &&
           same_advice(scene_.best().regime, plan->regime, scene_.stand.stand_case.present());
  }

  // From the mean to the nearest basal area on the way to `end` at which the advice is
  // another, in ft2/ac. REQUIRES: it is another at the end.
  double distance_towards(BasalArea end) const {
    const BasalArea way = end - plots_.mean;
    double same = 0.0;   // share of the way at which the advice still holds
    double other = 1.0;  // and one, farther out, at which it does not
    for (int step = 1; step < steps_outward; ++step) {
      const double share = static_cast<double>(step) / steps_outward;
      if (!holds(best_at(plots_.mean + way * share))) {
        other = share;
        break;
      }
      same = share;
    }
    for (int i = 0; i < halvings; ++i) {
      const double middle = 0.5 * (same + other);
      (holds(best_at(plots_.mean + way * middle)) ? same : other) = middle;
    }
    return std::fabs(way.in(square_feet_per_acre)) * same;
  }

  std::optional<int> more_plots(double distance_ft2_ac) const {
    constexpr double most = 1000.0;  // times the plots there are
    const double ratio = half_width() / distance_ft2_ac;
    const double times = ratio * ratio - 1.0;
    if (!(times <= most)) return std::nullopt;
    return static_cast<int>(std::ceil(static_cast<double>(plots_.plots) * std::max(times, 0.0)));
  }

  const PlotsQuestion& plots_;
  const Scene& scene_;
  StandOptions options_;
};

}  // namespace

PlotsAnswer plots_answer(const PlotsQuestion& plots, const Scene& scene,
                         const StandOptions& options) {
  return PlotsInquiry(plots, scene, options).answer();
}

}  // namespace staddle
