// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <array>

#include "staddle/io/option.h"

namespace staddle {

// The keys with which every file of models begins, then those of its own kind.
template <std::size_t count>
constexpr std::array<Option, 4 + count> with_model_head(std::string_view format,
                                                        const Option (&own)[count]) {
  std::array<Option, 4 + count> all{
      {{.pointer = "/license",
        .meaning = "license of the file",
        .allowed = kinds::text,
        .required = true},
       {.pointer = "/format",
        .meaning = "format of the file",
        .allowed = kinds::text,
        .choices = format,
        .required = true},
       {.pointer = "/notes",
        .meaning = "what a user has to know",
        .allowed = kinds::list,
        .required = true},
       {.pointer = "/notes/#", .meaning = "a sentence", .allowed = kinds::text}}};
  std::copy(own, own + count, all.begin() + 4);
  return all;
}

}  // namespace staddle
