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
  if(sources AND folder IN_LIST STADDLE_SELDOM_RUN)
    target_compile_options(${library} PRIVATE $<$<CONFIG:Release>:-O$<IF:$<BOOL:${SANITIZE}>,0,1>>)
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
