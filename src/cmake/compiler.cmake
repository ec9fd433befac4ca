# SPDX-License-Identifier: GPL-3.0-or-later
# Language, arithmetic, warnings, sanitizers: the same for every target.

set(CMAKE_CXX_STANDARD 20)
set(CMAKE_CXX_STANDARD_REQUIRED ON)
set(CMAKE_CXX_EXTENSIONS OFF)

# A folder's objects need the headers of the folders below, never their archives:
# without this, make would finish one folder before it begins the next.
set(CMAKE_OPTIMIZE_DEPENDENCIES ON)

# Without contraction a product and a sum are rounded the same on every processor,
# so that two machines print the same answer. For the same reason there is no
# -march here: vector code chooses its instructions when it runs.
add_compile_options(-ffp-contract=off)

if(STRICT)
  add_compile_options(
    # Shadowing counts among locals only: a parameter may well be called tons, although
    # the unit of that name stands outside.
    -Werror -Wall -Wextra -Wpedantic -Wshadow=local -Wconversion -Wsign-conversion
    -Wold-style-cast -Wnon-virtual-dtor -Woverloaded-virtual -Wcast-align
    -Wcast-qual -Wdouble-promotion -Wextra-semi -Wformat=2 -Wimplicit-fallthrough
    -Wunused
    # A designated initializer names what differs from the defaults and no more.
    -Wno-missing-field-initializers)
  if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU")
    # GCC 12 sees overlapping copies in std::string concatenations that have none
    # (GCC bug 105651).
    add_compile_options(-Wduplicated-cond -Wlogical-op -Wno-restrict)
  endif()
endif()

if(SANITIZE)
  # -O1 keeps the instrumented tests within minutes; placed after the flags of the
  # build type, it overrides theirs.
  set(sanitizers -fsanitize=address,undefined,float-cast-overflow)
  add_compile_options(${sanitizers} -fno-sanitize-recover=all -fno-omit-frame-pointer
                      -O1 -g1 -D_GLIBCXX_ASSERTIONS)
  add_link_options(${sanitizers})
endif()
