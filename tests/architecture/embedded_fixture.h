// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "io/embedded_files.h"

namespace staddle {

// The files of tests/architecture/embedded.
std::span<const EmbeddedFile> embedded_fixture();

}  // namespace staddle
