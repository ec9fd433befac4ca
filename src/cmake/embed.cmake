# SPDX-License-Identifier: GPL-3.0-or-later

# Generates a source that holds the files of a directory as bytes, and puts its
# path into `result`. It is made anew when a file changes, comes or goes.
#   DIRECTORY   names are relative to it, sorted
#   EXTENSIONS  the kinds of files taken
#   FUNCTION    the function in namespace staddle that returns them
#   HEADER      where that function is declared
function(staddle_embed result)
  cmake_parse_arguments(PARSE_ARGV 1 EMBED "" "DIRECTORY;FUNCTION;HEADER" "EXTENSIONS")
  set(patterns "")
  foreach(extension IN LISTS EMBED_EXTENSIONS)
    list(APPEND patterns "${EMBED_DIRECTORY}/*.${extension}")
  endforeach()
  file(GLOB_RECURSE files RELATIVE ${EMBED_DIRECTORY} CONFIGURE_DEPENDS ${patterns})
  list(SORT files COMPARE STRING)
  set(paths ${files})
  list(TRANSFORM paths PREPEND "${EMBED_DIRECTORY}/")

  # The list itself is a file, so that a file that goes is noticed too.
  set(stem ${PROJECT_BINARY_DIR}/generated/${EMBED_FUNCTION})
  set(EMBED_FILES "${files}")
  file(CONFIGURE OUTPUT ${stem}.cmake @ONLY CONTENT
"set(EMBED_DIRECTORY \"@EMBED_DIRECTORY@\")
set(EMBED_FILES \"@EMBED_FILES@\")
set(EMBED_FUNCTION \"@EMBED_FUNCTION@\")
set(EMBED_HEADER \"@EMBED_HEADER@\")
set(EMBED_OUTPUT \"@stem@.cpp\")
")
  set(writer ${PROJECT_SOURCE_DIR}/src/cmake/write_embedded.cmake)
  add_custom_command(
    OUTPUT ${stem}.cpp
    COMMAND ${CMAKE_COMMAND} -D EMBED_LIST=${stem}.cmake -P ${writer}
    DEPENDS ${stem}.cmake ${writer} ${paths}
    COMMENT "Embedding ${EMBED_DIRECTORY}"
    VERBATIM)
  # Large enough to be a compilation of its own where small files share one.
  set_source_files_properties(${stem}.cpp PROPERTIES SKIP_UNITY_BUILD_INCLUSION ON)
  set(${result} ${stem}.cpp PARENT_SCOPE)
endfunction()
