#!/usr/bin/env bash
# libm_gate.sh LIBRARY...: fails if a static library needs anything whose bits differ between machines or runs:
# any function of libm but sqrt (which IEEE 754 rounds in one way only), a clock, a random device, a hash order.
set -euo pipefail
export LC_ALL=C
[ $# -gt 0 ] || { echo "libm_gate.sh: no library given"; exit 2; }

libm=$("${CXX:-g++}" -print-file-name=libm.so.6)
libm_names=$(nm -D --defined-only "$libm" | awk '$2 ~ /[TWi]/ {sub(/@.*/, "", $3); print $3}' | grep -vx 'sqrt[fl]\?' | sort -u)
[ "$(wc -l <<<"$libm_names")" -gt 100 ] || { echo "libm_gate.sh: cannot read the names in $libm"; exit 2; }

other_names='(time|clock|clock_gettime|gettimeofday|timespec_get|localtime|gmtime|rand|srand|random|drand48|getrandom|getenv)'
other_patterns='_ZNSt6chrono|_ZNSt13random_device|Prime_rehash_policy|_ZSt11_Hash_bytes'

bad=0
for library in "$@"; do
    [ -f "$library" ] || { echo "libm_gate.sh: no such library: $library"; exit 2; }
    needed=$(nm -u "$library" 2>/dev/null | awk '$1 == "U" {print $2}' | sort -u)
    found=$( { comm -12 <(echo "$needed") <(echo "$libm_names")
               grep -xE "$other_names" <<<"$needed" || true
               grep -E "$other_patterns" <<<"$needed" || true; } | sort -u)
    for name in $found; do
        echo "$(basename "$library") uses $name"
        bad=1
    done
done
[ $bad -eq 0 ] && echo "$# libraries use nothing whose bits differ"
exit $bad
