// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/signs/cautions.h"

namespace staddle {

const std::vector<std::string>& standing_cautions() {
  static const std::vector<std::string> cautions{
      "Herbicides are put out only by a licensed applicator and by the label.",
      "Prescribed fire is set only by certified burners with a permit.",
      "Felling and logging are dangerous work, for trained crews.",
      "The state's rules on wetlands, endangered species and best management practices apply.",
      "These results are projections, not an appraisal, and no tax or legal advice.",
      "Have a registered forester walk the stand before a sale.",
  };
  return cautions;
}

}  // namespace staddle
