// SPDX-License-Identifier: GPL-3.0-or-later
#include "regime/evaluate.h"

#include "staddle/base/contract.h"

namespace staddle {

RegimeValue evaluate(const CaseKernel& kernel, const Regime& regime) {
  StandPoint point = kernel.start();
  Measured measured;
  Cut cut;
  const int last = regime.final_harvest.whole();
  require(last >= kernel.present_yr() && last <= kernel.last_age_yr(),
          "a final harvest lies between the present and the growth model's last age");
  std::size_t next = 0;
  while (true) {
    if (next < regime.thinnings.size() && regime.thinnings[next].at.whole() == point.age_yr) {
      kernel.measure_tons(point, measured);
      kernel.work_out_cut(point, measured, regime.thinnings[next].removal_fraction, cut);
      kernel.take_cut(point, measured, cut);
      ++next;
      measured.age_yr = -1;
    }
    if (point.age_yr == last) break;
    kernel.advance(point, measured);
  }
  require(next == regime.thinnings.size(), "thinnings lie in order before the final harvest");
  kernel.measure_tons(point, measured);
  const FinishedRegime finished = kernel.harvest(point, measured);
  return {dollars_per_acre(finished.money), finished.land_weight,
          dollars_per_acre(kernel.objective(finished))};
}

RegimeValue evaluate(const StandCase& stand_case, const Regime& regime) {
  return evaluate(CaseKernel(stand_case), regime);
}

}  // namespace staddle
