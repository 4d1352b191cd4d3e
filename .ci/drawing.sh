#!/usr/bin/env bash
# Drawings read by programs that are not ours: qpdf and pdftotext the PDF, an XML parser the
# SVG, a published reader the DXF. Needs what quick-start.sh installs.
set -euo pipefail
cd "$(dirname "$0")/.."
(cd .ci/drawing-check && npm ci --ignore-scripts --no-audit --no-fund --silent)
out=$(mktemp -d)
trap 'rm -rf "$out"' EXIT
go build -o "$out/ramnest" ./cmd/ramnest
for job in rim-cap-inch shell-pair; do
  for format in pdf svg dxf; do "$out/ramnest" drawing "testdata/jobs/$job.yaml" --format $format -o "$out/$job.$format" >/dev/null; done
  "$out/ramnest" check "testdata/jobs/$job.yaml" --json >"$out/$job.json"
  qpdf --check "$out/$job.pdf" >"$out/log" || { cat "$out/log"; exit 1; }
  number=$(python3 -c 'import json, sys; print(json.load(open(sys.argv[1], encoding="utf-8"))["job"]["number"])' "$out/$job.json")
  pages=$(qpdf --show-npages "$out/$job.pdf")
  for page in $(seq "$pages"); do
    pdftotext -f "$page" -l "$page" "$out/$job.pdf" - | grep -qF -- "$number" || { echo "$job: page $page does not say $number"; exit 1; }
  done
  python3 -c 'import sys, xml.dom.minidom as m; m.parse(sys.argv[1])' "$out/$job.svg"
  node .ci/drawing-check/check.mjs "$out/$job.dxf" "$out/$job.json"
done
# The reader itself: it must fail a drawing of a nest that is a millimetre longer.
python3 - "$out/shell-pair.json" >"$out/longer.json" <<'PY'
import json, sys
report = json.load(open(sys.argv[1], encoding="utf-8"))
report["tooling"]["nests"][0]["size_mm"][0] += 1
json.dump(report, sys.stdout)
PY
if node .ci/drawing-check/check.mjs "$out/shell-pair.dxf" "$out/longer.json" >"$out/log" || ! grep -q 'no dimension' "$out/log"; then
  echo "the reader does not see that a nest is longer"; cat "$out/log"; exit 1
fi
