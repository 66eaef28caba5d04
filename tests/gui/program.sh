#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# program.sh LIGHTOFF CHECK: one check of the program as people start it. A display must be there for all but
# "bad-file" and "no-display".
set -u
program=$1
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
export LIGHTOFF_ATTEMPTS=$folder/attempts XDG_CONFIG_HOME=$folder/config

fail() {
    echo "FAILED: $*" >&2
    exit 1
}

# refused STATUS WORDS ARGUMENT...: ends with that status and one line on standard error that holds the words.
refused() {
    local wanted=$1 words=$2 status
    shift 2
    "$program" "$@" >"$folder/out" 2>"$folder/err"
    status=$?
    [ "$status" -eq "$wanted" ] || fail "status $status, not $wanted: $*"
    [ "$(wc -l <"$folder/err")" -eq 1 ] || fail "not one line: $(cat "$folder/err")"
    grep -qF -- "$words" "$folder/err" || fail "no \"$words\" in: $(cat "$folder/err")"
}

# Ticks of processor time that the process has used.
used() {
    awk '{print $14 + $15}' "/proc/$1/stat"
}

# load PROCESS: those ticks in two seconds.
load() {
    local before
    before=$(used "$1")
    sleep 2
    echo $(($(used "$1") - before))
}

case $2 in
bad-file)
    refused 2 "call-for-heet" call-for-heet
    echo '{"format": "lightoff-scenario-1"' >"$folder/broken.json"
    refused 2 "broken.json" "$folder/broken.json"
    refused 2 "no-such-folder/a.json" "$folder/no-such-folder/a.json"
    refused 2 "--size" --size 12
    refused 2 "--theme" --theme neon
    refused 2 "--text" --text 500
    "$program" --help | grep -q SCENARIO || fail "no help"
    ;;
no-display)
    unset DISPLAY WAYLAND_DISPLAY
    refused 3 "lightoff-cli run call-for-heat" call-for-heat
    ;;
shots)
    for run in one two; do
        "$program" --shots "$folder/$run" --size 1280x720 --theme basement || fail "status $?"
    done
    for name in cold igniter-glowing burners-lighting steady-run; do
        cmp "$folder/one/$name.png" "$folder/two/$name.png" || fail "$name differs from run to run"
        [ "$(wc -c <"$folder/one/$name.png")" -gt 20000 ] || fail "$name is nearly empty"
    done
    if cmp -s "$folder/one/cold.png" "$folder/one/steady-run.png"; then
        fail "two moments look the same"
    fi
    ;;
window)
    "$program" call-for-heat --size 1280x720 2>"$folder/err" &
    process=$!
    window=$(timeout 30 xdotool search --sync --onlyvisible --name Lightoff | head -1) || fail "no window came"
    sleep 2
    xdotool key --window "$window" Return # lifts the tag with the cautions
    sleep 1
    running=$(load $process)
    [ "$running" -gt 20 ] || fail "it hardly draws: $running ticks in 2 s"
    xdotool mousemove --window "$window" 840 30 click 1 # Pause
    sleep 3
    paused=$(load $process)
    [ "$paused" -lt 12 ] || fail "paused by mouse, yet it used $paused ticks in 2 s (running: $running)"
    xdotool key --window "$window" p
    sleep 1
    again=$(load $process)
    [ "$again" -gt 20 ] || fail "p did not let it run on: $again ticks in 2 s"
    xdotool key --window "$window" 4 l u
    sleep 1
    kill -0 $process || fail "it ended by itself"
    xdotool key --window "$window" ctrl+q
    timeout 10 tail --pid=$process -f /dev/null || fail "Ctrl Q did not end it"
    wait $process || fail "status $?"
    [ ! -s "$folder/err" ] || fail "it complained: $(cat "$folder/err")"
    echo "ticks in 2 s: running $running, paused $paused, running again $again"
    ;;
call)
    # A real window, real keys: an act is typed, the program is killed, the attempt goes on with nothing lost.
    attempt=$LIGHTOFF_ATTEMPTS/plugged-hose-1.jsonl
    typed() { # LINE: typed into the window
        xdotool key slash
        sleep 0.5
        xdotool type --delay 30 "$1"
        xdotool key Return
    }
    entries() { # COUNT: waits until the attempt holds so many
        local i
        for i in $(seq 100); do
            [ "$(grep -c '"by"' "$attempt" 2>/dev/null)" = "$1" ] && return
            sleep 0.1
        done
        fail "not $1 entries: $(cat "$attempt")"
    }
    opened() {
        process=$!
        window=$(timeout 30 xdotool search --sync --onlyvisible --name Lightoff | head -1) || fail "no window came"
        xdotool windowfocus --sync "$window" # keys then come from the server itself, as everybody's
        sleep 2
    }
    "$program" --size 1280x720 2>"$folder/err" &
    opened
    xdotool key Return # lifts the tag with the cautions
    sleep 1
    xdotool key Return # the first call of the list
    sleep 2
    attempt=$(ls "$LIGHTOFF_ATTEMPTS"/*.jsonl) || fail "Return at the front desk took no call"
    typed "disconnect off"
    entries 1
    kill -9 $process
    wait $process 2>/dev/null
    sleep 2 # until the display has forgotten its window
    "$program" --attempt "$attempt" --size 1280x720 2>"$folder/err" &
    opened
    typed "disconnect on"
    entries 2
    # In the middle of an act that takes two minutes at the furnace: killed as soon as it has begun. Who goes on has
    # both hands in it; what is typed then waits for its end.
    tick_of() { sed -n "s/^{\"n\":$1,\"tick\":\([0-9]*\),.*/\1/p" "$attempt"; }
    typed "meter-fuses"
    entries 3
    kill -9 $process
    wait $process 2>/dev/null
    ends=$(($(tick_of 3) + 120 * 20))
    reached=$(sed -n 's/.*"tick":\([0-9]*\),.*/\1/p' "$attempt" | tail -1)
    [ "$reached" -lt "$ends" ] || fail "the act was over at tick $ends, and $reached was reached"
    sleep 2
    "$program" --attempt "$attempt" --size 1280x720 2>"$folder/err" &
    opened
    typed "disconnect off"
    entries 4
    [ "$(tick_of 4)" -ge "$ends" ] || fail "tick $(tick_of 4) came before the act's end, $ends"
    [ "$(grep -c meter-fuses "$attempt")" = 1 ] || fail "the act is there more than once: $(cat "$attempt")"
    xdotool key ctrl+q
    timeout 10 tail --pid=$process -f /dev/null || fail "Ctrl Q did not end it"
    wait $process || fail "status $?"
    [ ! -s "$folder/err" ] || fail "it complained: $(cat "$folder/err")"
    replayed=$("$(dirname "$program")/lightoff-cli" replay "$attempt" 2>&1) || fail "it does not replay: $replayed"
    ;;
*)
    fail "no check called $2"
    ;;
esac
