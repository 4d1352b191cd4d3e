#!/usr/bin/env bash
# Judges the files that the tool wrote, with programs that are not ours.
#
#   bash .ci/checks.sh [--no-pdf] OUT [AGAIN]
#
# OUT is a folder that "ramnest make" filled, AGAIN a second one from the same job.
# --no-pdf: do not ask for a work instruction; one that is there is checked.
# Needs what .ci/quick-start.sh installs. Exit 1 at the end if anything failed.
set -uo pipefail

pdf_wanted=yes
if [ "${1:-}" = --no-pdf ]; then pdf_wanted=no; shift; fi
if [ $# -lt 1 ] || [ $# -gt 2 ] || [ ! -d "$1" ]; then
  echo "usage: checks.sh [--no-pdf] OUT [AGAIN]" >&2
  exit 2
fi
ci=$(cd "$(dirname "$0")" && pwd)
out=$(cd "$1" && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
shopt -s nullglob
passed=0 failed=0

# ok TEXT COMMAND...: runs a check; what it printed is shown if it fails.
ok() {
  local text=$1
  shift
  if "$@" >"$work/log" 2>&1; then
    passed=$((passed + 1))
  else
    failed=$((failed + 1))
    echo "FAILED: $text"
    sed 's/^/  /' "$work/log" | tail -n 40
  fi
}

stl=("$out"/*.stl) threemf=("$out"/*.3mf) pdf=("$out"/*.pdf) json=("$out"/*.json)
ok "STL files are there" test ${#stl[@]} -gt 0
ok "3MF files are there" test ${#threemf[@]} -gt 0
ok "JSON files are there" test ${#json[@]} -gt 0
if [ $pdf_wanted = yes ]; then ok "a PDF is there" test ${#pdf[@]} -gt 0; fi

# Report: plain JSON to another parser, and it lists exactly the files there are.
for f in "${json[@]}"; do ok "$(basename "$f") is JSON" python3 -m json.tool "$f" /dev/null; done
listed() {
  python3 - "$out" "$@" <<'PY'
import json, os, sys
out, reports = sys.argv[1], sys.argv[2:]
want = sorted(name for r in reports for name in json.load(open(r, encoding="utf-8"))["files"])
there = sorted(os.listdir(out))
if want != there:
    sys.exit(f"listed {want}\nthere  {there}")
PY
}
reports=("$out"/*-report.json)
ok "the report lists the files" listed "${reports[@]}"

# Meshes: our outside judge, admesh, the published 3MF reader, and the three agree.
judge() { node "$ci/mesh-check/check.mjs" "${stl[@]}" "${threemf[@]}" >"$work/judged.jsonl" || { grep -v '"faults":\[\]' "$work/judged.jsonl"; return 1; }; }
if [ ${#stl[@]} -gt 0 ] && [ ${#threemf[@]} -gt 0 ]; then ok "meshes are closed, one body, outside out" judge; fi
admeshed() {
  admesh "$1" >"$work/admesh" || return 1
  local field
  for field in "Total disconnected facets" "Degenerate facets" "Edges fixed" "Facets removed" "Facets reversed" "Backwards edges" "Normals fixed"; do
    grep -Eq "^ *$field *: +0( |$)" "$work/admesh" || { echo "not 0: $field"; cat "$work/admesh"; return 1; }
  done
  grep -Eq "^ *Number of parts *: +1 " "$work/admesh" || { echo "not one part"; cat "$work/admesh"; return 1; }
}
for f in "${stl[@]}"; do ok "admesh on $(basename "$f")" admeshed "$f"; done
build_reader() { g++ -std=c++17 -I/usr/include/lib3mf "$ci/threemf-read/read3mf.cpp" -o "$work/read3mf" -l3MF; }
read_all() { "$work/read3mf" "${threemf[@]}" >"$work/read.jsonl" || { cat "$work/read.jsonl"; return 1; }; }
ok "lib3mf reader builds" build_reader
ok "lib3mf reads the 3MF files in strict mode, in mm, named, manifold" read_all
ok "the readers agree, STL and 3MF are the same pieces" node "$ci/mesh-check/agree.mjs" "$work/judged.jsonl" "$work/read.jsonl"
ok "anvil and nest keep clear of each other on the way down" node "$ci/mesh-check/tooling.mjs" "$out"

# Work instruction: sound PDF, the job number on every page.
paged() {
  local number pages page
  number=$(python3 -c 'import json, sys; print(json.load(open(sys.argv[1], encoding="utf-8"))["job"]["number"])' "${reports[0]}") || return 1
  pages=$(qpdf --show-npages "$1") || return 1
  test "$pages" -gt 0 || { echo "no pages"; return 1; }
  for page in $(seq "$pages"); do
    pdftotext -f "$page" -l "$page" "$1" - | grep -qF -- "$number" || { echo "page $page of $pages does not say $number"; return 1; }
  done
}
for f in "${pdf[@]}"; do
  ok "qpdf --check $(basename "$f")" qpdf --check "$f"
  ok "job number on each page of $(basename "$f")" paged "$f"
done

if [ $# -eq 2 ]; then ok "the same job gives the same bytes" diff -r "$out" "$2"; fi

echo "${#stl[@]} STL, ${#threemf[@]} 3MF, ${#pdf[@]} PDF, ${#json[@]} JSON; second run: $([ $# -eq 2 ] && echo compared || echo not compared)"
echo "$passed passed, $failed failed"
[ $failed -eq 0 ]
