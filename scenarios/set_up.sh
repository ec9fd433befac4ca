# SPDX-License-Identifier: GPL-3.0-or-later
# Sourced by scenarios/demo and tests/run, which stand at the top of the source tree.

# What the program needs to be built, what the tests need to be built, and the
# programs of others against which tests check its numbers.
build_packages=(g++ cmake make ninja-build libboost-dev libboost-program-options-dev
                libglpk-dev nlohmann-json3-dev libfmt-dev libhwy-dev libxlsxwriter-dev)
test_packages=(catch2)
# chromium-headless-shell opens the pages of reports, poppler-utils reads what it prints.
oracle_packages=(python3-scipy coinor-clp gnumeric python3-icalendar
                 chromium-headless-shell poppler-utils)
# npm fetches the checks of accessibility; a node of another origin brings its own.
command -v npm >/dev/null || oracle_packages+=(npm)

say() { printf '\n== %s\n' "$*"; }

# Those of the given packages that are not installed, one a line.
missing_packages() {
  local package
  for package in "$@"; do
    if [[ "$(dpkg-query -W -f='${db:Status-Status}' "$package" 2>/dev/null)" != installed ]]; then
      printf '%s\n' "$package"
    fi
  done
}

# Says why, and the one line that helps; ends the script.
stop_with_install_line() {
  local reason=$1
  shift
  {
    printf '\n%s\nRun this as root, then start again:\n\n' "$reason"
    printf '  apt-get update && apt-get install -y --no-install-recommends %s\n\n' "$*"
  } >&2
  exit 1
}

require_debian() {
  if ! command -v apt-get >/dev/null || ! command -v dpkg-query >/dev/null; then
    {
      printf '\nThis system has no apt-get. Debian 12 calls the packages needed:\n\n  %s\n\n' "$*"
      printf 'With their like in place: cmake -S . -B build && cmake --build build\n\n'
    } >&2
    exit 1
  fi
}

# Installs those of the given packages that are missing.
install_packages() {
  require_debian "$@"
  local missing as_root=()
  mapfile -t missing < <(missing_packages "$@")
  if ((${#missing[@]} == 0)); then
    say "The $# packages needed are installed"
    return
  fi
  if (($(id -u) != 0)); then
    if ! command -v sudo >/dev/null; then
      stop_with_install_line "Packages are missing, and this is neither root nor is there sudo." \
                             "${missing[@]}"
    fi
    as_root=(sudo)
  fi
  say "Installing ${missing[*]}"
  # Old package lists may do as well: only the installation decides.
  "${as_root[@]}" apt-get update -qq || true
  "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive \
      apt-get install -y -qq -o Dpkg::Use-Pty=0 --no-install-recommends "${missing[@]}" \
      >/dev/null ||
    stop_with_install_line "The packages could not be installed." "${missing[@]}"
}

# configure_and_build DIRECTORY [OPTION...]: with all cores, and ninja where the
# directory is new. Sixteen files share a compilation, which reads the headers once: half
# the time from nothing, and a change costs a little more.
configure_and_build() {
  local directory=$1 generator=()
  shift
  if [[ ! -e $directory/CMakeCache.txt ]] && command -v ninja >/dev/null; then
    generator=(-G Ninja)
  fi
  cmake -S . -B "$directory" "${generator[@]}" -DCMAKE_BUILD_TYPE=Release \
        -DCMAKE_UNITY_BUILD=ON -DCMAKE_UNITY_BUILD_BATCH_SIZE=16 --log-level=NOTICE "$@"
  cmake --build "$directory" --parallel "$(nproc)"
}
