#!/usr/bin/env bash
# The whole job on the invented scenario in data/demo, by the program itself: measure, check, plan, record,
# print. Leaves out/demo/packet.pdf and out/demo/notebook.gpkg. Answers are computed, never stored.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/../.."

program=build/release/cli/swathbook
folder=out/demo
export SWATHBOOK_NOTEBOOK="$folder/notebook.gpkg"
mkdir -p "$folder"
rm -f "$SWATHBOOK_NOTEBOOK" "$folder/packet.pdf" "$folder/backup.gpkg"

say() { printf '\n\n== %s\n\n' "$1"; }

# ask OPERATION REQUEST NAME [--brief]: answers a request of the scenario and keeps it in the notebook
ask() { "$program" "$1" --request "data/demo/$2.json" --keep "$3" "${@:4}" 2>&1; }

echo "Tarn Hollow, an invented place. Ada Quill will put a labelled 2 qt/ac on Heron Flat with a boom rig;"
echo "a boomless UTV and five backpacks stand by. Every figure below is computed now from data/demo."

say "1. A notebook: one file, which is also a map"
"$program" notebook new "$SWATHBOOK_NOTEBOOK" --author "Ada Quill"

say "2. What does the boom rig really put out?"
ask calibrate 01-calibrate-boom-rig "Boom rig, nine tips" --brief

say "3. And the boomless UTV, whose sticker says 30 ft at 4 mph? With the whole working, to check by pencil:"
ask calibrate 02-calibrate-utv-boomless "Boomless UTV"

say "4. Are the tips of the boom worn, or mixed?"
ask tip-check 03-tip-check-boom-rig "Boom rig, nine tips: tip check" --brief

say "5. Five backpacks, five walking speeds: one recipe?"
ask crew 04-crew-five-backpacks "Five backpacks" --brief

say "6. How much ground is Heron Flat?"
ask area 05-area-heron-flat "Heron Flat" --brief
ask area 06-area-kettle-draw "Kettle Draw" >"$folder/kettle-draw.txt"
ask area 07-area-spur-ridge "Spur Ridge" >"$folder/spur-ridge.txt"

say "7. Loads, measured to the marks of the jugs at hand"
ask loads 08-loads-heron-flat "Heron Flat with the boom rig" --brief

say "8. Is the record complete, and when is it due?"
"$program" record-check --request data/demo/09-record-check-heron-flat.json --brief

say "9. The record is closed; a correction is an amendment with its reason"
record=$("$program" notebook add record name="Heron Flat, 14 May 2031" date=2031-05-14 \
    product_name="Demoherb 4 SL" epa_reg_no=99999-1 area_treated="7.4 ac" \
    location_text="Heron Flat, Tarn Hollow, Isle of Specimen" \
    customer_name="Wren Oakhollow, Specimen Habitat Trust" certified_applicator="Ada Quill, SPEC-0042")
"$program" notebook close "$record" >/dev/null
if "$program" notebook add record --to "$record" area_treated="6 ac" 2>&1; then
    echo "./dev demo: a closed record let itself be changed" >&2
    exit 1
fi
"$program" notebook amend "$record" --date 2031-05-16 --reason "end time left out" end_time=11:20 >/dev/null
echo
"$program" notebook show "$record"

say "10. The notebook, checked end to end and backed up"
"$program" notebook list
"$program" notebook backup "$folder/backup.gpkg"
"$program" notebook check

say "11. The packet to print"
"$program" packet data/demo --output "$folder/packet.pdf" --notebook "$SWATHBOOK_NOTEBOOK"

printf '\nLook at %s (print it) and open %s in any GIS.\nThe same notebook in a browser: ./dev serve --notebook %s\n' \
    "$folder/packet.pdf" "$SWATHBOOK_NOTEBOOK" "$SWATHBOOK_NOTEBOOK"
