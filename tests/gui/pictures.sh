#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# pictures.sh BIN_FOLDER check|renew [screens] [debrief]: takes pictures of screens at 1280x720 in paper and basement with
# software OpenGL and holds them, halved, against those in tests/gui/pictures. "renew" keeps them instead: look at them
# before they are committed. Needs xvfb-run.
set -euo pipefail
bin=$(realpath "$1")
act=$2
shift 2
kept=$(dirname "$(realpath "$0")")/pictures
found=$bin/../found-pictures
mkdir -p "$found"
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
export LIBGL_ALWAYS_SOFTWARE=1 LIGHTOFF_DATA="$kept/../../../scenarios"
shoot() { # THEME SCRIPT [CALL]
    mkdir -p "$folder/$1"
    xvfb-run -a -s "-screen 0 1280x720x24" "$bin/lightoff" ${3:+"$3"} --size 1280x720 --theme "$1" \
        --script "$kept/$2.txt" --shots "$folder/$1"
    rm -f "$folder/$1"/*.jsonl
}
declare -A names=([screens]="front-desk-paper furnace-paper diagram-paper trace-basement fire-basement"
    [debrief]="points-basement stairs-basement")
failed=0
for set in "${@:-screens}"; do
    if [ "$set" = debrief ]; then
        shoot basement debrief plugged-hose
    else
        shoot paper desk
        shoot paper call plugged-hose
        shoot basement call plugged-hose
    fi
    for name in ${names[$set]}; do
        shot=$folder/${name##*-}/${name%-*}.png
        if [ "$act" = renew ]; then
            "$bin/lightoff_pictures" keep "$shot" "$kept/$name.png"
        else
            "$bin/lightoff_pictures" check "$shot" "$kept/$name.png" "$found/$name.png" || failed=1
        fi
    done
done
exit $failed
