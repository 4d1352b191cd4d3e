#!/usr/bin/env bash
# Coupon ladders of every latch kind, judged by programs that are not ours: each body
# closed, one piece, outside out, nothing that collapses, in STL and 3MF; admesh has
# nothing to repair; lib3mf reads the builds; qpdf and pdftotext read the test sheets.
# Needs what .ci/quick-start.sh installs.
set -euo pipefail
cd "$(dirname "$0")/.."
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
go build -o "$work/ramnest" ./cmd/ramnest
g++ -std=c++17 -I/usr/include/lib3mf .ci/threemf-read/read3mf.cpp -o "$work/read3mf" -l3MF
bodies=0
while read -r kind job latch; do
  out=$work/$job-$latch
  source=testdata/jobs/$job.yaml
  if [ "$job" = starter ]; then
    source=$work/$kind.yaml
    "$work/ramnest" init "$source" --number L-1 --title Ladder --date 2026-11-25 --latch "$kind" </dev/null
  fi
  "$work/ramnest" ladder "$source" --latch "$latch" --json -o "$out" >"$work/ladder.json"
  grep -q "\"kind\": \"$kind\"" "$work/ladder.json" || { echo "FAILED: $latch of $job is no $kind"; exit 1; }
  node .ci/mesh-check/check.mjs "$out"/*.stl "$out"/*.3mf >"$work/judged.jsonl" || { echo "FAILED: ladder of $latch, $kind"; grep -v '"faults":\[\]' "$work/judged.jsonl"; exit 1; }
  "$work/read3mf" "$out"/*.3mf >"$work/read.jsonl" || { echo "FAILED: lib3mf on $latch"; cat "$work/read.jsonl"; exit 1; }
  for f in "$out"/*.stl; do
    admesh "$f" >"$work/admesh"
    for field in "Total disconnected facets" "Degenerate facets" "Edges fixed" "Facets removed" "Facets reversed" "Backwards edges" "Normals fixed"; do
      grep -Eq "^ *$field *: +0( |$)" "$work/admesh" || { echo "FAILED: admesh on $(basename "$f"): $field"; exit 1; }
    done
  done
  for f in "$out"/*.pdf; do
    qpdf --check "$f" >"$work/qpdf" 2>&1 || { cat "$work/qpdf"; exit 1; }
    pdftotext "$f" "$work/text"
    grep -q "How to press" "$work/text" || { echo "FAILED: $(basename "$f") does not say how to press"; exit 1; }
  done
  n=$(wc -l <"$work/judged.jsonl")
  bodies=$((bodies + n))
  echo "$kind: $n bodies of the ladder of $latch in $job, STL and 3MF, closed"
done <<'LIST'
annular rim-cap rim
ball sensor-hood ball
cantilever shell-pair arm
press_fit battery-tray pin
crush_rib shell-pair rib
torsional starter lever
LIST
echo "$bodies bodies judged, none with a fault"
