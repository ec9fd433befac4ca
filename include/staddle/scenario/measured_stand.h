// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "staddle/scenario/scenario.h"

namespace staddle {

// How the stand of this block grows: equations on its site, or its own table. A
// standing stand whose successor's planting is unknown counts as planted with the
// trees it has, which nothing then reads.
// REQUIRES: equations with a site index, or one yield table.
GrowthModel growth_model_of(const StandBlock& block);

// Decay of the competition index by the year, as the source of the growth has it.
double recovery_per_yr(const GrowthSource& source);

// The stand `time` later, unthinned: trees survive, the first deviation from an
// unthinned stand, 1 - B/Bu, decays at the source's rate, a measured crown ratio keeps
// its distance from the crown equation, other timber grows at its own rate.
// REQUIRES: whole years, not negative; both ages within the model's.
MeasuredStand grown_unthinned(const MeasuredStand& stand, const GrowthModel& growth,
                              double recovery_per_yr, Years time);

}  // namespace staddle
