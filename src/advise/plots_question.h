// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "advise/scene.h"

namespace staddle {

// Whether the advice holds where the basal area is not that of the plots' mean but any
// other that they allow. `scene`: the stand of the mean, solved.
PlotsAnswer plots_answer(const PlotsQuestion& plots, const Scene& scene,
                         const StandOptions& options);

}  // namespace staddle
