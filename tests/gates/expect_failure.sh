#!/usr/bin/env bash
# expect_failure.sh TEXT COMMAND...: passes only if COMMAND fails and says TEXT.
# (ctest's WILL_FAIL would also be content with a command that cannot start.)
set -u
text=$1
shift
if output=$("$@" 2>&1); then
    echo "expected a failure, but this succeeded: $*"
    exit 1
fi
echo "$output"
if ! grep -qF -- "$text" <<<"$output"; then
    echo "it failed, but without saying: $text"
    exit 1
fi
