# Shared by deploy/start and deploy/check: installing what is missing and building. Sourced, never run.

root=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)

say() { printf '%s\n' "$*"; }
stop() { printf '%s\n' "$*" >&2; exit 1; }

# missing_packages PURPOSE…: those listed in deploy/packages that dpkg does not have.
missing_packages() {
  local purpose
  for purpose in "$@"; do
    sed -n "s/^$purpose //p" "$root/deploy/packages"
  done | tr ' ' '\n' | sort -u | while read -r name; do
    [ "$(dpkg-query -W -f '${db:Status-Status}' "$name" 2>/dev/null)" = installed ] || printf '%s\n' "$name"
  done
}

install_missing() {
  command -v dpkg-query >/dev/null && command -v apt-get >/dev/null ||
    stop "Holdfast installs its packages with apt-get, which this system does not have. It is made for Debian 12: use such a machine."
  local list as_root=()
  mapfile -t list < <(missing_packages "$@")
  [ ${#list[@]} -gt 0 ] || return 0
  if [ "$(id -u)" != 0 ]; then
    command -v sudo >/dev/null ||
      stop "These packages are missing: ${list[*]}. Run this again as root, or install sudo."
    as_root=(sudo)
  fi
  say "Installing ${#list[@]} missing packages: ${list[*]}"
  "${as_root[@]}" apt-get update -qq || say "The package lists could not be refreshed; trying with the ones that are here."
  "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "${list[@]}" >/dev/null ||
    stop "apt-get could not install the packages above. Nothing was changed in Holdfast. Check the network and the free space on the disk, then run this again."
}

# build PRESET [TARGET…]: configures once, then only what changed.
build() {
  local preset=$1
  shift
  cd "$root" || stop "The folder $root cannot be entered."
  [ -f "build/$preset/build.ninja" ] || cmake --preset "$preset" >"/dev/null" || {
    cmake --preset "$preset"
    stop "CMake could not prepare the build; its own words stand above."
  }
  cmake --build --preset "$preset" ${1:+--target "$@"} || stop "The build failed; the compiler's words stand above."
}
