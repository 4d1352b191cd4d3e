#!/usr/bin/env node
// Whether anvil and nest of a job keep clear of each other on the way down:
// node tooling.mjs OUTDIR. Each STL is put where the 3MF beside it says that it
// stands in the assembly (metadata shift-to-assembly-mm, the way from the file's
// frame to that of the seated assembly), then check.mjs --apart runs over lifts
// from the seat upward. Exit 1 if they share volume, or if a job has no pair.

import { readdirSync } from "node:fs";
import { join } from "node:path";
import { apart } from "./apart.mjs";
import { readBodies } from "./bodies.mjs";

const folder = process.argv[2];
const key = "urn:ramnest:job:shift-to-assembly-mm";
const lifts = [0, 0.05, 0.1, 0.2, 0.5, 1, 2, 3, 5, 7, 10, 15, 20, 30, 50];

function shift(stl) {
  const value = readBodies(stl.replace(/\.stl$/, ".3mf"))[0].metadata[key];
  const out = (value ?? "").trim().split(/\s+/).map(Number);
  if (out.length !== 3 || !out.every(Number.isFinite)) throw new Error(`${stl}: metadata ${key} is "${value}"`);
  return out;
}

const files = readdirSync(folder).filter((f) => f.endsWith(".stl")).sort();
let pairs = 0, clear = true;
for (const anvil of files.filter((f) => f.includes("-anvil"))) {
  for (const nest of files.filter((f) => f.includes("-nest") && f.split("-nest")[0] === anvil.split("-anvil")[0])) {
    pairs++;
    const [a, n] = [join(folder, anvil), join(folder, nest)];
    const from = shift(n);
    const move = shift(a).map((x, k) => x - from[k]);
    clear = apart([n, a], { move, lifts, tolerance: 1e-3, weld: 1e-3, leastGap: 0 }) && clear;
  }
}
console.log(JSON.stringify({ folder: folder.split("/").pop(), pairs }));
process.exitCode = clear && pairs > 0 ? 0 : 1;
