#!/usr/bin/env bash
# Nests and anvils for all real parts, judged by an outside library: bodies sound, and
# nothing shared with the parts in 20 poses on the way in. Needs what quick-start.sh
# installs. The part with open edges is closed for the library by welding at 0.02 mm.
set -euo pipefail
cd "$(dirname "$0")/.."
fit=$(mktemp -d)
trap 'rm -rf "$fit"' EXIT
FIT_OUT="$fit" go test ./fixture -run TestRealParts -count=1 >/dev/null
lifts=0,0.3,0.6,1,1.5,2,2.5,3,4,5,6,7,8,9,10,12,14,16,20,25
for name in snapcase button testbed hip-base finger-tip pipe-cap-inch tiny-case-ascii shell-back-open-edges accessbox-lid-3mf button-3mf; do
  weld=0.001
  if [ $name = shell-back-open-edges ]; then weld=0.02; fi
  node .ci/mesh-check/check.mjs "$fit/$name-nest.stl" "$fit/$name-anvil.stl" >/dev/null || { echo "$name: tooling is not sound"; exit 1; }
  node .ci/mesh-check/check.mjs --apart "$fit/$name-nest.stl" "$fit/$name-lower.stl" --lifts $lifts --tolerance 0.05 --weld $weld >"$fit/log" || { echo "$name: the part runs into the nest"; tail -3 "$fit/log"; exit 1; }
  node .ci/mesh-check/check.mjs --apart "$fit/$name-lower.stl" "$fit/$name-anvil.stl" --lifts $lifts --tolerance 0.05 --weld $weld >"$fit/log" || { echo "$name: the anvil runs into the lower part"; tail -3 "$fit/log"; exit 1; }
  node .ci/mesh-check/check.mjs --apart "$fit/$name-nest.stl" "$fit/$name-anvil.stl" --lifts $lifts --tolerance 0.05 --weld $weld >"$fit/log" || { echo "$name: the anvil runs into the nest"; tail -3 "$fit/log"; exit 1; }
  echo "$name: nothing shared in 20 poses"
done
