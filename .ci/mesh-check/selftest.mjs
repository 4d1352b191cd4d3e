// Shows that the judge lets sound meshes pass and fails broken ones: each shape is
// written to a file here, and check.mjs runs on it as a command.

import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { fileURLToPath } from "node:url";
import { box, cube, edit, flip, folder, frame, model, stl, threemf } from "./shapes.mjs";

const judge = fileURLToPath(new URL("check.mjs", import.meta.url));

function run(...args) {
  const r = spawnSync(process.execPath, [judge, ...args], { encoding: "utf8" });
  return { code: r.status, lines: r.stdout.trim().split("\n").filter(Boolean).map((l) => JSON.parse(l)), stderr: r.stderr };
}

function near(got, want, share = 1e-6) {
  assert.ok(Math.abs(got - want) <= share * Math.abs(want) + 1e-9, `${got}, want ${want}`);
}

test("sound shapes pass", () => {
  const r = run(stl("cube", cube()), stl("frame", frame()), threemf("cube"));
  assert.equal(r.code, 0, JSON.stringify(r.lines));
  const [a, b, c] = r.lines;
  assert.deepEqual([a.triangles, a.vertices, a.closed, a.pieces, a.volume, a.library.genus, a.library.bodies, a.min, a.max], [12, 8, true, 1, 1000, [0], 1, [0, 0, 0], [10, 10, 10]]);
  assert.deepEqual([b.library.genus, b.euler, b.pieces], [[1], 0, 1]);
  near(b.volume, 12);
  assert.deepEqual([c.name, c.unit, c.metadata, c.volume], ["box <1>", "millimeter", { "urn:j:number": "A & 1" }, 1000]);
});

test("unit and place of a 3MF", () => {
  const inch = run(threemf("inch", edit(model, "millimeter", "inch")));
  assert.equal(inch.code, 0, JSON.stringify(inch.lines));
  near(inch.lines[0].volume, 1000 * 25.4 ** 3);
  const turned = run(threemf("turned", edit(model, `objectid="7"`, `objectid="7" transform="0 1 0 -1 0 0 0 0 1 20 30 40"`)));
  assert.deepEqual([turned.code, turned.lines[0].min, turned.lines[0].max], [0, [10, 30, 40], [20, 40, 50]]);
  const mirrored = run(threemf("mirrored", edit(model, `objectid="7"`, `objectid="7" transform="-1 0 0 0 1 0 0 0 1 0 0 0"`)));
  assert.deepEqual([mirrored.code, mirrored.lines[0].volume], [1, -1000]);
});

const broken = {
  "a missing triangle": [cube().slice(1), /3 edges of one triangle/],
  "inside out": [cube().map(flip), /volume -1000/],
  "one triangle turned": [cube().map((t, i) => (i ? t : flip(t))), /edges run twice the same way/],
  "a triangle twice": [[...cube(), cube()[0]], /edges of more than two triangles/],
  "two cubes that share an edge": [[...cube(), ...box([10, 10, 0], [10, 10, 10])], /1 edges of more than two triangles/],
  "two cubes that share a corner": [[...cube(), ...box([10, 10, 10], [10, 10, 10])], /2 pieces/],
  "two cubes that share a face": [[...cube(), ...box([10, 0, 0], [10, 10, 10])], /edges of more than two triangles/],
  "two cubes apart": [[...cube(), ...box([20, 0, 0], [10, 10, 10])], /2 pieces/],
  "a cube within a cube": [[...cube(), ...box([2, 2, 2], [3, 3, 3])], /2 pieces/],
  "a hidden void": [[...cube(), ...box([2, 2, 2], [3, 3, 3]).map(flip)], /2 pieces/],
  // 1e-9 is less than the float32 step at 10: both corners become one.
  "a triangle that float32 collapses": [[...cube(), [[10, 0, 0], [10 + 1e-9, 0, 0], [10, 10, 0]]], /1 triangles collapse/],
  "a corner that is no number": [cube().map((t, i) => (i ? t : [[NaN, 0, 0], t[1], t[2]])), /not a place/],
  "nothing": [[], /no triangles/],
};
for (const [name, [shape, fault]] of Object.entries(broken)) {
  test(`${name} fails`, () => {
    const r = run(stl("sound beside it", cube()), stl(name, shape));
    assert.equal(r.code, 1);
    assert.deepEqual(r.lines[0].faults, []);
    assert.match(r.lines[1].faults.join("; "), fault);
  });
}

test("a triangle without area fails", () => {
  // The side of the first triangle has a point in its middle: a flat triangle
  // joins it to the neighbour, so that the mesh is closed all the same.
  const [first, ...rest] = cube();
  const [a, b, c] = first;
  const middle = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2];
  const r = run(stl("flat", [[a, middle, c], [middle, b, c], [a, b, middle], ...rest]));
  assert.equal(r.code, 1);
  assert.equal(r.lines[0].closed, true);
  assert.match(r.lines[0].faults.join("; "), /1 triangles without area/);
});

test("files that are not what they say fail", () => {
  const ascii = join(folder, "ascii.stl");
  writeFileSync(ascii, "solid a\nendsolid a\n" + " ".repeat(100));
  const cases = [
    [stl("cut short", cube(), 7), /not a binary STL/],
    [ascii, /not a binary STL/],
    [join(folder, "absent.stl"), /ENOENT/],
    [join(folder, "box.obj"), /ENOENT|neither/],
    [threemf("index", edit(model, `v1="0"`, `v1="8"`)), /vertex 8 of 8/],
    [threemf("negative index", edit(model, `v1="0"`, `v1="-1"`)), /not an index/],
    [threemf("number", edit(model, `x="0"`, `x="0,5"`)), /not a number/],
    [threemf("unit", edit(model, "millimeter", "mm")), /unit "mm"/],
    [threemf("not built", edit(model, `<item objectid="7"/>`, "")), /not in the build/],
    [threemf("built wrongly", edit(model, `objectid="7"`, `objectid="8"`)), /object 8, which is not there/],
    [threemf("prefix", edit(model, "<build>", "<k:build>")), /unbound namespace prefix/],
    [threemf("prefix of a name", edit(model, "j:number", "k:number")), /prefix of metadata "k:number"/],
    [threemf("torn", edit(model, "</build>", "")), /unexpected close|unclosed/],
    [threemf("namespace", edit(model, "core/2015/02", "core/2013/01")), /not model of the core specification/],
    [threemf("extension", edit(model, "<model ", `<model requiredextensions="j" `)), /requires extensions/],
    [threemf("no start", edit("_rels/.rels", "2013/01/3dmodel", "2013/01/other")), /no 3D model/],
    [threemf("type", edit("[Content_Types].xml", "3dmodel+xml", "other+xml")), /content type of 3D/],
    [threemf("type of rels", edit("[Content_Types].xml", `Extension="rels"`, `Extension="rel"`)), /content type of _rels/],
    [threemf("lost part", edit("_rels/.rels", "box.model", "lid.model")), /no part 3D\/lid.model|content type/],
  ];
  const r = run(...cases.map(([path]) => path));
  assert.equal(r.code, 1);
  assert.equal(r.lines.length, cases.length);
  cases.forEach(([path, fault], i) => assert.match(r.lines[i].faults.join("; "), fault, path));
  assert.equal(run(cases[0][0]).code, 1);
});

test("shared volumes are right", () => {
  const a = stl("a", cube()), b = stl("b", cube());
  const r = run("--apart", a, b, "--move", "5,6,7", "--lifts", "0,1,2.5,3,4");
  assert.equal(r.code, 1);
  [5 * 4 * 3, 5 * 4 * 2, 5 * 4 * 0.5, 0, 0].forEach((want, i) => near(r.lines[i].volume, want));
  assert.deepEqual(r.lines.map((l) => l.faults.length), [1, 1, 1, 0, 0]);
  assert.equal(run("--apart", a, b, "--move", "5,6,7", "--lifts", "3,4").code, 0);
  assert.equal(run("--apart", a, b, "--move", "5,6,7", "--lifts", "2.5", "--tolerance", "10.1").code, 0);
  assert.equal(run("--apart", a, b, "--move", "5,6,7", "--lifts", "2.5", "--tolerance", "9.9").code, 1);
  const hole = run("--apart", stl("frame", frame()), stl("peg", box([-0.7, -0.7, -3], [1.4, 1.4, 6])), "--least-gap", "0.29");
  assert.equal(hole.code, 0, JSON.stringify(hole.lines));
  near(hole.lines[0].gap, 0.3, 1e-5);
  assert.equal(run("--apart", stl("frame", frame()), stl("peg", box([-0.7, -0.7, -3], [1.4, 1.4, 6])), "--least-gap", "0.31").code, 1);
  assert.equal(run("--apart", threemf("c"), a, "--move=-10,0,0").code, 0);
});

test("open meshes are welded and said so, or refused", () => {
  const sound = stl("a", cube());
  const torn = cube().map((t, i) => (i % 2 ? t : t.map((p) => p.map((x) => x + 2e-4))));
  const r = run("--apart", stl("torn", torn), sound, "--move", "0,0,9");
  assert.equal(r.code, 1);
  assert.match(r.lines[0].note, /welded at 0.001 mm/);
  near(r.lines[1].volume, 100, 1e-3);
  assert.match(run("--apart", stl("torn", torn), sound, "--weld", "1e-5").lines.at(-1).faults[0], /not closed/);
  const open = run("--apart", stl("open", cube().slice(1)), sound, "--move", "50,0,0");
  assert.equal(open.code, 1);
  assert.match(open.lines.at(-1).faults[0], /not closed: 3 open/);
  const inside = run("--apart", stl("inside", cube().map(flip)), sound, "--move", "50,0,0");
  assert.equal(inside.code, 1);
  assert.match(inside.lines.at(-1).faults[0], /volume -1000/);
});

test("wrong use is told from a wrong mesh", () => {
  const a = stl("a", cube());
  for (const args of [[], ["--apart", a], ["--apart", a, a, "--move", "1,2"], ["--apart", a, a, "--lifts", "0,,1"], ["--apart", a, a, "--tolerance", "x"], ["--unknown", a]]) {
    const r = run(...args);
    assert.equal(r.code, 2, args.join(" "));
    assert.match(r.stderr, /usage/);
  }
});
