#!/usr/bin/env bash
# determinism.sh [--target NAME] COMMAND [ARGUMENT...]
#
# Builds the program in several configurations and runs it in each; all must print the same text.
#   COMMAND   is below the build folder's bin/, for example: test_units_hash
#   --target  what to build, if it is not called like COMMAND
# Environment:
#   LIGHTOFF_MATRIX  configurations to build, default "gcc-O2 gcc-O0 clang-O2 clang-O0 clang-sanitized";
#                    gcc-O2 runs once more with FMA and AVX hidden from the C library: a second processor for free
#   LIGHTOFF_BUILDS  folder of the build folders, default build/matrix; builds there are reused
set -euo pipefail
source_dir=$(cd "$(dirname "$0")/../.." && pwd)
builds=${LIGHTOFF_BUILDS:-$source_dir/build/matrix}

target=
if [ "${1:-}" = --target ]; then
    target=$2
    shift 2
fi
[ $# -gt 0 ] || { sed -n '2,12s/^# \{0,1\}//p' "$0"; exit 2; }
target=${target:-$1}

# The compiler and flags of each configuration; -O0 leaves the flags of our own code (-ffp-contract=off) in place.
configure_flags() {
    case $1 in
        gcc-O2) echo "-DCMAKE_CXX_COMPILER=g++ -DCMAKE_BUILD_TYPE=Release" ;;
        gcc-O0) echo "-DCMAKE_CXX_COMPILER=g++ -DCMAKE_BUILD_TYPE=Debug" ;;
        clang-O2) echo "-DCMAKE_CXX_COMPILER=clang++ -DCMAKE_BUILD_TYPE=Release" ;;
        clang-O0) echo "-DCMAKE_CXX_COMPILER=clang++ -DCMAKE_BUILD_TYPE=Debug" ;;
        gcc-sanitized) echo "-DCMAKE_CXX_COMPILER=g++ -DCMAKE_BUILD_TYPE=Debug -DLIGHTOFF_SANITIZE=address,undefined" ;;
        clang-sanitized) echo "-DCMAKE_CXX_COMPILER=clang++ -DCMAKE_BUILD_TYPE=Debug -DLIGHTOFF_SANITIZE=address,undefined" ;;
        *) return 1 ;;
    esac
}

launcher=
command -v ccache >/dev/null && launcher=-DCMAKE_CXX_COMPILER_LAUNCHER=ccache

reference=
reference_name=
differing=0
compare() { # name, output
    printf '%-18s %s\n' "$1" "$2"
    if [ -z "$reference_name" ]; then
        reference=$2
        reference_name=$1
        [ -n "$2" ] || { echo "$1 printed nothing: nothing is proved"; exit 2; }
    elif [ "$2" != "$reference" ]; then
        echo "$1 differs from $reference_name"
        differing=1
    fi
}

for name in ${LIGHTOFF_MATRIX:-gcc-O2 gcc-O0 clang-O2 clang-O0 clang-sanitized}; do
    flags=$(configure_flags "$name") || { echo "determinism.sh: unknown configuration '$name'"; exit 2; }
    build=$builds/$name
    # shellcheck disable=SC2086 # the flags are several words
    if ! log=$(cmake -S "$source_dir" -B "$build" -G Ninja -DLIGHTOFF_GUI=OFF $flags $launcher 2>&1 &&
               cmake --build "$build" --target "$target" 2>&1); then
        echo "$log"
        echo "$name does not build"
        exit 2
    fi
    compare "$name" "$(cd "$source_dir" && "$build/bin/$1" "${@:2}")"
    if [ "$name" = gcc-O2 ]; then
        export GLIBC_TUNABLES=glibc.cpu.hwcaps=-AVX2,-FMA,-AVX
        compare "$name-plain-cpu" "$(cd "$source_dir" && "$build/bin/$1" "${@:2}")"
        unset GLIBC_TUNABLES
    fi
done
[ $differing -eq 0 ] && echo "the same everywhere: $reference"
exit $differing
