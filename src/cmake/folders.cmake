# SPDX-License-Identifier: GPL-3.0-or-later

# Makes the library staddle_<folder> from what stands in src/<folder> and
# include/staddle/<folder>; further arguments are generated sources. A folder with
# headers alone becomes an INTERFACE library, one with nothing yet no library.
function(staddle_add_folder folder)
  file(GLOB_RECURSE headers CONFIGURE_DEPENDS
       ${PROJECT_SOURCE_DIR}/include/staddle/${folder}/*.h
       ${PROJECT_SOURCE_DIR}/src/${folder}/*.h)
  file(GLOB_RECURSE sources CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/src/${folder}/*.cpp)
  list(FILTER sources EXCLUDE REGEX "/src/cli/main\\.cpp$")
  list(APPEND sources ${ARGN})
  set(library staddle_${folder})
  if(sources)
    add_library(${library} STATIC ${sources} ${headers})
    set(reach PUBLIC)
    target_include_directories(${library} PRIVATE ${PROJECT_SOURCE_DIR}/src)
  elseif(headers)
    add_library(${library} INTERFACE)
    set(reach INTERFACE)
  else()
    return()
  endif()
  target_include_directories(${library} ${reach} ${PROJECT_SOURCE_DIR}/include)

  staddle_folders_below(${folder} below)
  foreach(lower IN LISTS below)
    if(TARGET staddle_${lower})
      target_link_libraries(${library} ${reach} staddle_${lower})
    endif()
  endforeach()
  staddle_outside_targets(${folder} outside)
  if(sources AND outside)
    target_link_libraries(${library} PRIVATE ${outside})
  endif()
  if(sources AND PRECOMPILE)
    staddle_precompile(${folder})
  endif()
  if(sources AND folder IN_LIST STADDLE_SELDOM_RUN)
    target_compile_options(${library} PRIVATE $<$<CONFIG:Release>:-O1>)
  endif()
  if(sources AND folder IN_LIST STADDLE_FILE_BY_FILE)
    set_target_properties(${library} PROPERTIES UNITY_BUILD OFF)
  endif()
  set_property(GLOBAL APPEND PROPERTY STADDLE_LIBRARIES ${library})
endfunction()

# What runs once for an answer need not be fast, but quick to build.
set(STADDLE_SELDOM_RUN signs cruise hold plant scenario report io cli)

# In a unity build (CMAKE_UNITY_BUILD) the files of these folders are still compiled one by
# one. optimise: Highway reads its *_kernels.cpp again for every set of instructions, which
# only works where the file is a compilation of its own; and the speed of the hot loops
# beside them should not depend on how a build was put together.
set(STADDLE_FILE_BY_FILE optimise)

# The headers that nearly every file reads, compiled once for all folders: a third off the
# time of a build from nothing. Every file still includes what it uses; a build without
# PRECOMPILE shows it. base knows no library of others, and numeric has one that wants
# <math.h> before <cmath>.
set(STADDLE_COMMON_HEADERS
    <algorithm> <array> <cmath> <functional> <map> <memory> <optional> <set> <span>
    <sstream> <stop_token> <string> <string_view> <utility> <variant> <vector>
    <fmt/format.h>)

function(staddle_precompile folder)
  if(folder MATCHES "^(base|numeric)$")
    return()
  endif()
  get_property(first GLOBAL PROPERTY STADDLE_PRECOMPILED)
  if(first)
    target_precompile_headers(staddle_${folder} REUSE_FROM ${first})
  else()
    target_precompile_headers(staddle_${folder} PRIVATE ${STADDLE_COMMON_HEADERS})
    set_property(GLOBAL PROPERTY STADDLE_PRECOMPILED staddle_${folder})
  endif()
endfunction()
