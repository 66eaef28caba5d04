#!/usr/bin/env bash
# tidy.sh BUILD_FOLDER [PATH_PATTERN]: clang-tidy with the rules of .clang-tidy over the sources that the build compiles
# and whose path below the repository begins with PATH_PATTERN (default sim/).
set -euo pipefail
cd "$(dirname "$0")/../.."
build=$1
pattern=${2:-sim/}
[ -f "$build/compile_commands.json" ] || { echo "tidy.sh: $build has no compile_commands.json"; exit 2; }
files=$(grep -oE '"file": "[^"]+"' "$build/compile_commands.json" | cut -d'"' -f4 | grep -F "$PWD/$pattern" | sort -u)
[ -n "$files" ] || { echo "tidy.sh: no source of $pattern is compiled in $build"; exit 2; }
xargs -P "$(nproc)" -n 1 clang-tidy -p "$build" --quiet <<<"$files"
echo "$(wc -l <<<"$files") files are tidy"
