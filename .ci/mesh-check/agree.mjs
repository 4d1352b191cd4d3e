#!/usr/bin/env node
// Whether two readers saw the same: node agree.mjs judged.jsonl read.jsonl, the
// lines of check.mjs over STL and 3MF files and those of read3mf over the same 3MF
// files. Each 3MF body must be the same in both, and each piece the same in STL
// and 3MF. Exit 1 with a line for each difference.

import { readFileSync } from "node:fs";

const lines = (path) => readFileSync(path, "utf8").trim().split("\n").filter(Boolean).map((l) => JSON.parse(l));
const [judged, read] = process.argv.slice(2, 4).map(lines);
let differences = 0, compared = 0;
function same(what, a, b) {
  compared++;
  if (JSON.stringify(a) === JSON.stringify(b)) return;
  differences++;
  console.log(`${what}: ${JSON.stringify(a)} and ${JSON.stringify(b)}`);
}

// The published reader hands out entities as they stand in the file.
const entities = { "&lt;": "<", "&gt;": ">", "&quot;": `"`, "&apos;": "'", "&#34;": `"`, "&#39;": "'", "&#xA;": "\n", "&#x9;": "\t", "&#xD;": "\r", "&amp;": "&" };
const plain = (metadata) => Object.fromEntries(Object.entries(metadata).map(([k, v]) => [k, v.replace(/&#?\w+;/g, (e) => entities[e] ?? e)]));

const packages = judged.filter((l) => l.file.endsWith(".3mf"));
same("bodies in 3MF files", packages.map((l) => [l.file, l.name]), read.map((l) => [l.file, l.name]));
packages.forEach((a, i) => {
  const b = read[i] ?? {};
  const what = `${a.file} "${a.name}"`;
  same(`${what}: unit`, a.unit, b.unit);
  same(`${what}: part number`, a.part_number, b.part_number);
  same(`${what}: triangles`, a.triangles, b.triangles);
  same(`${what}: vertices`, a.vertices_written, b.vertices);
  same(`${what}: metadata`, a.metadata, plain(b.metadata ?? {}));
});

// A piece may be placed elsewhere in the 3MF, which moves what float32 rounds.
for (const a of judged.filter((l) => l.file.endsWith(".stl"))) {
  const stem = a.file.slice(0, -4);
  const [b] = packages.filter((l) => l.file === stem + ".3mf");
  same(`${stem}: is there as 3MF`, true, Boolean(b));
  if (!b) continue;
  same(`${stem}: triangles in STL and 3MF`, a.triangles, b.triangles);
  same(`${stem}: genus in STL and 3MF`, a.library?.genus, b.library?.genus);
  same(`${stem}: volumes of STL and 3MF alike`, true, Math.abs(a.volume - b.volume) <= 1e-6 * a.volume);
  for (let k = 0; k < 3; k++) {
    same(`${stem}: extent along ${"xyz"[k]} alike`, true, Math.abs(a.max[k] - a.min[k] - (b.max[k] - b.min[k])) < 1e-4);
  }
}
console.log(`${compared} comparisons, ${differences} differences`);
process.exitCode = differences || compared < 2 ? 1 : 0;
