# SPDX-License-Identifier: GPL-3.0-or-later
# cmake -D EMBED_LIST=FILE -P write_embedded.cmake: see embed.cmake. Every byte is
# written as a hexadecimal escape, so that no content can end or alter a literal.
cmake_minimum_required(VERSION 3.25)
include(${EMBED_LIST})

set(entries "")
set(count 0)
foreach(name IN LISTS EMBED_FILES)
  if(NOT name MATCHES "^[A-Za-z0-9_./-]+$")
    message(FATAL_ERROR "${EMBED_DIRECTORY}/${name}: only letters, digits, '_', '-' and "
                        "'.' may stand in the name of an embedded file")
  endif()
  file(READ "${EMBED_DIRECTORY}/${name}" digits HEX)
  string(LENGTH "${digits}" size)
  math(EXPR size "${size} / 2")
  string(REGEX REPLACE "(..)" "\\\\x\\1" bytes "${digits}")
  string(APPEND entries "    {\"${name}\", std::string_view(\"${bytes}\", ${size})},\n")
  math(EXPR count "${count} + 1")
endforeach()

if(count EQUAL 0)
  set(body "  return {};\n")
else()
  set(body "  static constexpr std::array<EmbeddedFile, ${count}> files = {{\n${entries}  }};\n")
  string(APPEND body "  return files;\n")
endif()

file(WRITE "${EMBED_OUTPUT}"
"// SPDX-License-Identifier: GPL-3.0-or-later
// Generated from ${EMBED_DIRECTORY}.
#include \"${EMBED_HEADER}\"

#include <array>

namespace staddle {

std::span<const EmbeddedFile> ${EMBED_FUNCTION}() {
${body}}

}  // namespace staddle
")
