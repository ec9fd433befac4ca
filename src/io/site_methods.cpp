// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/site_methods.h"

#include <array>
#include <utility>

#include "staddle/base/contract.h"

namespace staddle {
namespace {

constexpr std::array<std::pair<SiteMethod, const char*>, 7> names = {
    {{SiteMethod::chemical, "chemical"},
     {SiteMethod::burn, "burn"},
     {SiteMethod::one_pass, "one_pass"},
     {SiteMethod::two_pass, "two_pass"},
     {SiteMethod::bed, "bed"},
     {SiteMethod::herbaceous, "herbaceous"},
     {SiteMethod::release, "release"}}};

}  // namespace

SiteMethod site_method(const std::string& name) {
  for (const auto& [method, known] : names) {
    if (name == known) return method;
  }
  throw ContractViolation("site_method is asked for a method that files may name");
}

std::string site_method_name(SiteMethod method) {
  for (const auto& [known, name] : names) {
    if (method == known) return name;
  }
  throw ContractViolation("site_method_name knows every method");
}

}  // namespace staddle
