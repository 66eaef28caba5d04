# SPDX-License-Identifier: MIT
# What has to be installed, in one list. Sourced by gui/run, tests/run and .ci/run (bash). Names are Debian 12's.

build_packages=(
    git g++ cmake ninja-build pkg-config
    nlohmann-json3-dev libvalijson-dev libsodium-dev libcli11-dev libedit-dev libfmt-dev libhpdf-dev # data, command line, reports
    libsfml-dev libimgui-dev libstb-dev libfreetype-dev libgl-dev libx11-dev libgl1-mesa-dri # the window
    fonts-inter fonts-dejavu-core fonts-jetbrains-mono
)
test_packages=(
    catch2 poppler-utils ngspice libngspice0-dev libsundials-dev
    xvfb xauth x11-xkb-utils xkb-data xdotool libxtst-dev
    clang-format
)
ci_packages=(clang libclang-rt-14-dev clang-tidy)

# install_missing PACKAGE...: installs what is not there yet, and touches nothing otherwise.
install_missing() {
    local missing=() package
    if ! command -v dpkg-query >/dev/null || ! command -v apt-get >/dev/null; then
        echo "Not a Debian system: install what these packages hold, if something is missing: $*"
        return 0
    fi
    for package in "$@"; do
        dpkg-query -W -f='${Status}\n' "$package" 2>/dev/null | grep -q '^install ok installed' || missing+=("$package")
    done
    [ ${#missing[@]} -gt 0 ] || return 0
    local as_root=()
    if [ "$(id -u)" -ne 0 ]; then
        if ! command -v sudo >/dev/null; then
            echo "Install these as root first: apt-get install --no-install-recommends ${missing[*]}"
            return 1
        fi
        as_root=(sudo)
    fi
    echo "Installing ${missing[*]}"
    "${as_root[@]}" apt-get -qq update </dev/null
    "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive \
        apt-get -qq install -y --no-install-recommends "${missing[@]}" </dev/null >/dev/null
}

# configure FOLDER OPTION...: a Ninja build, with ccache where it is installed.
configure() {
    local folder=$1 launcher=()
    shift
    command -v ccache >/dev/null && launcher=(-DCMAKE_CXX_COMPILER_LAUNCHER=ccache)
    local log
    if ! log=$(cmake -S . -B "$folder" -G Ninja "${launcher[@]}" "$@" 2>&1); then
        echo "$log"
        return 1
    fi
}
