# SPDX-License-Identifier: GPL-3.0-or-later
# What the program needs from the system. Which folder may use which library
# stands in layers.cmake.

set(THREADS_PREFER_PTHREAD_FLAG ON)
find_package(Threads REQUIRED)
find_package(fmt REQUIRED)
find_package(Boost 1.74 REQUIRED COMPONENTS program_options)
find_package(nlohmann_json 3.11 REQUIRED)

# GLPK ships neither a CMake nor a pkg-config file.
find_library(GLPK_LIBRARY glpk REQUIRED)
find_path(GLPK_INCLUDE_DIR glpk.h REQUIRED)
add_library(GLPK::GLPK UNKNOWN IMPORTED)
set_target_properties(GLPK::GLPK PROPERTIES
  IMPORTED_LOCATION "${GLPK_LIBRARY}"
  INTERFACE_INCLUDE_DIRECTORIES "${GLPK_INCLUDE_DIR}")

# Spreadsheets. No CMake file either, and a pkg-config one that not every system has.
find_library(XLSXWRITER_LIBRARY xlsxwriter REQUIRED)
find_path(XLSXWRITER_INCLUDE_DIR xlsxwriter.h REQUIRED)
add_library(xlsxwriter::xlsxwriter UNKNOWN IMPORTED)
set_target_properties(xlsxwriter::xlsxwriter PROPERTIES
  IMPORTED_LOCATION "${XLSXWRITER_LIBRARY}"
  INTERFACE_INCLUDE_DIRECTORIES "${XLSXWRITER_INCLUDE_DIR}")

# Vector arithmetic. Without it the same sums are done one at a time.
find_package(hwy CONFIG QUIET)
if(TARGET hwy::hwy)
  target_compile_definitions(hwy::hwy INTERFACE STADDLE_HAVE_HIGHWAY=1)
endif()
