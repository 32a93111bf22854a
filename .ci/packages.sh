#!/usr/bin/env bash
# Sees to the system packages: packages.sh run (to build the window) or packages.sh test (to drive it as well).
# Only what is missing is installed. A line of the tables: package, how it is recognised, what it is for.
set -euo pipefail
cd "$(dirname "$0")/.."
log=build/packages.log

building='
gcc               command:gcc          compiles the window toolkit
libc6-dev         file:/usr/include/stdio.h  C headers
pkg-config        command:pkg-config   finds the headers below
libgl1-mesa-dev   header:gl            OpenGL, what the window draws with
libx11-dev        header:x11           windows on X11
libxcursor-dev    header:xcursor       pointer shapes
libxrandr-dev     header:xrandr        screen sizes
libxinerama-dev   header:xinerama      several screens
libxi-dev         header:xi            mouse and keyboard
libxxf86vm-dev    header:xxf86vm       video modes
libwayland-dev    header:wayland-client  windows on Wayland
libxkbcommon-dev  header:xkbcommon     keyboard layouts'

driving='
xvfb              command:Xvfb         a screen in memory for the window test
openbox           command:openbox      a window manager on it
xdotool           command:xdotool      presses the keys
libgl1-mesa-dri   package              OpenGL without a graphics card
imagemagick       command:import       looks at the picture
tzdata            file:/usr/share/zoneinfo/America/St_Johns  the clock of the second test run'

# found PACKAGE HOW: is it here, whoever installed it?
found() {
  case $2 in
  command:*) command -v "${2#*:}" >/dev/null ;;
  file:*) [ -e "${2#*:}" ] ;;
  header:*) pkg-config --exists "${2#*:}" 2>/dev/null ;;
  package) ! command -v dpkg-query >/dev/null || dpkg-query -W -f '${Status}' "$1" 2>/dev/null | grep -q 'ok installed' ;;
  esac
}

fail() {
  echo "packages: $*" >&2
  exit 1
}

# install PACKAGE...: through apt, as root or by sudo.
install() {
  local -a as=()
  if [ "$(id -u)" -ne 0 ]; then
    command -v sudo >/dev/null || fail "can't install without root or sudo; ask an administrator for: apt-get install $*"
    as=(sudo)
    [ -t 0 ] || as=(sudo -n)
  fi
  mkdir -p build
  "${as[@]}" apt-get update -qq >"$log" || fail "can't refresh the package lists; once that works: apt-get install $*"
  "${as[@]}" env DEBIAN_FRONTEND=noninteractive LC_ALL=C.UTF-8 apt-get install -y -qq --no-install-recommends "$@" >>"$log" 2>&1 ||
    { tail -n 5 "$log" >&2; fail "apt-get could not install: $*"; }
}

# elsewhere: systems without apt get the names, and go on when everything is found.
elsewhere() {
  case $(uname -s) in
  Darwin) command -v cc >/dev/null || fail 'needs the command line developer tools: xcode-select --install' ;;
  Linux)
    [ $# -eq 0 ] || fail "not found: $*. Here these packages have other names; needed are a C compiler, pkg-config and the headers" \
      'of OpenGL, X11 (with Xcursor, Xrandr, Xinerama, Xi, Xxf86vm), wayland-client and xkbcommon; for make test also Xvfb, openbox, xdotool, ImageMagick'
    ;;
  *) command -v gcc >/dev/null || fail 'needs gcc (on Windows: MinGW-w64) on the path' ;;
  esac
}

command -v go >/dev/null || fail 'Go is not on the path; install Go 1.21 or later, it fetches the version this project names'
case ${1-} in
run) table=$building ;;
test) table=$building$driving ;;
*) fail 'usage: packages.sh run|test' ;;
esac

missing=()
while read -r package how why; do
  if [ -z "$package" ] || found "$package" "$how"; then continue; fi
  missing+=("$package")
  echo "missing: $package ($why)"
done <<<"$table"

if ! command -v apt-get >/dev/null; then
  elsewhere "${missing[@]}"
elif [ ${#missing[@]} -gt 0 ]; then
  echo "installing: ${missing[*]}"
  install "${missing[@]}"
fi
