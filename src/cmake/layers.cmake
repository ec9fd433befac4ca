# SPDX-License-Identifier: GPL-3.0-or-later
# The rule of dependency, as data. folders.cmake links by it, and the test in
# tests/architecture reads the same rows and compares them with every #include.

# One level per row, lowest first. A folder may use every folder of the rows above
# its own in this list (lower levels), and none of its own row.
set(STADDLE_LEVELS
  "base"
  "dp lp numeric"
  "units"
  "stand"
  "finance growth"
  "products"
  "hazard"
  "regime"
  "signs"
  "optimise"
  "futures"
  "cruise vary"
  "advise bid hold plant tract"
  "scenario"
  "report"
  "io"
  "page"
  "cli")

# What a level would allow and the design does not: "folder not-allowed".
set(STADDLE_FORBIDDEN
  "finance dp"     # money knows rates and dates, nothing else
  "finance lp"
  "finance stand")

# Headers with one home: "beginning of the header's name | folders that may
# include it, * for all above base | target to link". A header of another library
# that stands in no row may be included nowhere.
set(STADDLE_OUTSIDE_HEADERS
  "fmt/|*|fmt::fmt"
  "glpk.h|lp|GLPK::GLPK"
  "boost/math/|numeric|Boost::headers"
  "math.h|numeric|"                    # Boost 1.74's pchip.hpp relies on it
  "hwy/|optimise|hwy::hwy"
  "xlsxwriter.h|report|xlsxwriter::xlsxwriter"
  "nlohmann/|io|nlohmann_json::nlohmann_json"
  "boost/program_options|cli|Boost::program_options"
  # The library neither prints nor opens files.
  "iostream|cli|"
  "fstream|cli|"
  "filesystem|cli|"
  "unistd.h|cli|"
  "fcntl.h|cli|"
  "signal.h|cli|"
  "sys/|cli|")

# The folders that `folder` may use, lowest first.
function(staddle_folders_below folder result)
  set(below "")
  foreach(level IN LISTS STADDLE_LEVELS)
    separate_arguments(level)
    if(folder IN_LIST level)
      break()
    endif()
    list(APPEND below ${level})
  endforeach()
  foreach(row IN LISTS STADDLE_FORBIDDEN)
    separate_arguments(row)
    list(GET row 0 one)
    list(GET row 1 other)
    if(one STREQUAL folder)
      list(REMOVE_ITEM below ${other})
    endif()
  endforeach()
  set(${result} ${below} PARENT_SCOPE)
endfunction()

# The targets of the outside libraries that `folder` may use and that were found.
function(staddle_outside_targets folder result)
  set(targets "")
  foreach(row IN LISTS STADDLE_OUTSIDE_HEADERS)
    string(REPLACE "|" ";" row "${row}")
    list(GET row 1 homes)
    list(GET row 2 target)
    separate_arguments(homes)
    if((folder IN_LIST homes OR (homes STREQUAL "*" AND NOT folder STREQUAL "base"))
       AND target AND TARGET ${target})
      list(APPEND targets ${target})
    endif()
  endforeach()
  set(${result} ${targets} PARENT_SCOPE)
endfunction()
