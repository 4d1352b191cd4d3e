#!/usr/bin/env bash
# The quick start of the README on a clean Debian 12 machine with Go: installs the
# programs that judge, runs the tool twice, judges what it wrote.
set -euo pipefail
cd "$(dirname "$0")/.."

# A program and the package that has it; only what is missing is installed.
missing=()
while read -r program package; do
  command -v "$program" >/dev/null || missing+=("$package")
done <<'LIST'
node nodejs
npm npm
admesh admesh
qpdf qpdf
pdftotext poppler-utils
g++ g++
python3 python3
LIST
[ -e /usr/include/lib3mf/Model/COM/NMR_DLLInterfaces.h ] || missing+=(lib3mf-dev)
if [ ${#missing[@]} -gt 0 ]; then
  apt-get update -qq
  DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "${missing[@]}" >/dev/null
fi
(cd .ci/mesh-check && npm ci --ignore-scripts --no-audit --no-fund --silent)

# First the judges themselves: they must fail what is broken.
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
g++ -std=c++17 -I/usr/include/lib3mf .ci/threemf-read/read3mf.cpp -o "$work/read3mf" -l3MF
(cd .ci/mesh-check && READ3MF="$work/read3mf" node --test selftest.mjs readertest.mjs >"$work/log") || { cat "$work/log"; exit 1; }

rm -rf out
go run ./cmd/ramnest make testdata/jobs/rim-cap.yaml -o out/
go run ./cmd/ramnest make testdata/jobs/rim-cap.yaml -o "$work/again/" >/dev/null
bash .ci/checks.sh out "$work/again"
bash .ci/sheet.sh
bash .ci/fit.sh
bash .ci/ladders.sh
bash .ci/drawing.sh
bash .ci/preview.sh
