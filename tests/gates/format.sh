#!/usr/bin/env bash
# format.sh [FILE...]: fails if a source file (by default every one that git tracks) is not as clang-format leaves it.
set -euo pipefail
cd "$(dirname "$0")/../.."
if [ $# -gt 0 ]; then
    for file in "$@"; do clang-format --dry-run -Werror --assume-filename=sim/x.cpp <"$file"; done
    exit
fi
files=$(git -c safe.directory='*' ls-files '*.hpp' '*.cpp')
[ -n "$files" ] || { echo "format.sh: git tracks no source here"; exit 2; }
present=$(for file in $files; do [ ! -f "$file" ] || echo "$file"; done)
# shellcheck disable=SC2086 # one word for each file; our file names have no spaces
clang-format --dry-run -Werror $present
echo "$(wc -l <<<"$present") files are formatted"
