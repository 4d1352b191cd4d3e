// Shows that the published 3MF reader, built from ../threemf-read, passes a sound
// package and fails broken ones: READ3MF=path/to/read3mf node readertest.mjs
//
// What it does not do (seen with lib3mf 1.8.1): it hands out the text of metadata
// with its entities as they stand, and lets XML pass that lacks an end tag. The
// reader in threemf.mjs is strict there.

import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { test } from "node:test";
import { edit, model, threemf } from "./shapes.mjs";

const reader = process.env.READ3MF;
assert.ok(reader, "READ3MF does not name the reader");

function run(path) {
  const r = spawnSync(reader, [path], { encoding: "utf8" });
  return { code: r.status, lines: r.stdout.trim().split("\n").filter(Boolean).map((l) => JSON.parse(l)) };
}

test("a sound package is read", () => {
  const r = run(threemf("sound"));
  assert.equal(r.code, 0, JSON.stringify(r.lines));
  assert.deepEqual(r.lines, [{ file: "sound.3mf", name: "box <1>", unit: "millimeter", part_number: "", vertices: 8, triangles: 12, manifold: true, metadata: { "urn:j:number": "A &amp; 1" } }]);
});

for (const [name, change, fault] of [
  ["another unit", edit(model, "millimeter", "inch"), /not millimetres/],
  ["an unknown unit", edit(model, "millimeter", "mm"), /unit/i],
  ["no name", edit(model, `name="box &lt;1&gt;"`, ""), /without a name/],
  ["a missing triangle", edit(model, `<triangle v1="0" v2="1" v3="2"/>`, ""), /not manifold/],
  ["a turned triangle", edit(model, `<triangle v1="0" v2="1" v3="2"/>`, `<triangle v1="0" v2="2" v3="1"/>`), /not manifold/],
  ["an index too large", edit(model, `v1="0"`, `v1="8"`), /index/i],
  ["nothing in the build", edit(model, `<item objectid="7"/>`, ""), /nothing to build|build/i],
  ["an unknown tag in the core namespace", edit(model, "<build>", "<built/><build>"), /./],
  ["no start part", edit("_rels/.rels", "2013/01/3dmodel", "2013/01/other"), /./],
]) {
  test(`${name} is refused`, () => {
    const r = run(threemf(name, change));
    assert.equal(r.code, 1, JSON.stringify(r.lines));
    assert.match(r.lines.flatMap((l) => l.faults ?? []).join("; "), fault);
  });
}
