// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/report/svg.h"

#include "report/svg_charts.h"

namespace staddle {

std::string to_svg(const Figure& figure, const std::string& id) {
  Canvas canvas(id);
  const double high =
      std::visit([&](const auto& drawing) { return draw(canvas, drawing); }, figure.drawing);
  return canvas.finish(high, figure.title, figure.description);
}

}  // namespace staddle
