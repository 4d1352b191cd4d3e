#!/usr/bin/env bash
# The work instruction of example jobs, judged by programs that are not ours: qpdf, and
# poppler's text and pictures of every page.
#
#   bash .ci/sheet.sh [-update]
#
# - every page says the job number and its place, "3 of 10";
# - each caution expected stands on the sheet, and no other (signal word and hazard are
#   read from the printed text; the list is written by hand below);
# - every page looks like the one kept in .ci/sheet-pages, in grey: drawn at 48 dots an
#   inch, made smaller four times. Tolerance, on means of tiles of 17 mm: 2.5 % of full
#   scale on average over a page, 12 % in any tile. Without any anti-aliasing pages differ
#   by 1.0 to 2.0 % and 10 % at most, two pages of one sheet by 3.8 % and 17 % or more
#   (measured): another version of poppler passes, a picture that is gone does not.
#   -update writes the pages anew: look at them.
set -euo pipefail
cd "$(dirname "$0")/.."
update=no
[ "${1:-}" = -update ] && update=yes
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
kept=.ci/sheet-pages
go build -o "$work/ramnest" ./cmd/ramnest

for language in en de; do
  for job in rim-cap sensor-hood; do
    name=$job-$language
    sed "1a language: $language" "testdata/jobs/$job.yaml" >"$work/$name.yaml"
    "$work/ramnest" make "$work/$name.yaml" -o "$work/$name" >/dev/null 2>&1
    pdf=$(echo "$work/$name"/*-work-instruction.pdf)
    qpdf --check "$pdf" >/dev/null
    test "$(stat -c %s "$pdf")" -lt 300000 || { echo "$name: 300 kB or more"; exit 1; }
    pdftoppm -r 48 -gray "$pdf" "$work/$name-page"
    pdftotext -layout "$pdf" "$work/$name.txt"
    pdftotext -raw "$pdf" "$work/$name.raw"
  done
done
python3 .ci/sheet.py "$work" "$kept" $update
