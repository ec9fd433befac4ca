// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/scenario/planting.h"

namespace staddle {
namespace {

Establishment::Stated stated_by(const Scenario& scenario) {
  if (scenario.establishment && scenario.establishment->stated) {
    return *scenario.establishment->stated;
  }
  return {scenario.stand.planted, scenario.costs.establishment, scenario.costs.practices};
}

}  // namespace

const EstablishmentAlternative* used_alternative(const Scenario& scenario) {
  if (!scenario.establishment || !scenario.establishment->use) return nullptr;
  return &scenario.establishment->alternatives.at(*scenario.establishment->use);
}

void take_alternative_in_use(Scenario& scenario) {
  const EstablishmentAlternative* used = used_alternative(scenario);
  if (!used || scenario.establishment->stated) return;
  scenario.establishment->stated = stated_by(scenario);
  const Planting planting = planting_of(scenario);
  scenario.stand.planted = planting.planted;
  scenario.costs.establishment = planting.establishment;
  if (!scenario.is_standing()) scenario.costs.practices = planting.practices;
}

Planting planting_by(const Scenario& scenario, const EstablishmentAlternative* alternative) {
  const Establishment::Stated stated = stated_by(scenario);
  if (!alternative) {
    return {stated.planted, feet(0), {}, stated.establishment, stated.practices};
  }
  return {alternative->planted ? alternative->planted : stated.planted,
          alternative->site_index_shift, alternative->response, alternative->establishment(),
          alternative->later_practices()};
}

Planting planting_of(const Scenario& scenario) {
  return planting_by(scenario, used_alternative(scenario));
}

}  // namespace staddle
