// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "staddle/signs/readiness.h"
#include "staddle/signs/risk_notes.h"

namespace staddle {

inline const char* level_in_words(RiskLevel level) {
  switch (level) {
    case RiskLevel::low:
      return "low";
    case RiskLevel::elevated:
      return "elevated";
    case RiskLevel::high:
      break;
  }
  return "high";
}

inline const char* verdict_in_words(SignVerdict verdict) {
  switch (verdict) {
    case SignVerdict::not_yet:
      return "not yet";
    case SignVerdict::due:
      return "due";
    case SignVerdict::late:
      break;
  }
  return "late";
}

}  // namespace staddle
