#!/usr/bin/env node
// An outside judge of the meshes in our files. It shares no code with the tool
// that wrote them. One JSON line a body; exit 1 if one fails, 2 for wrong use.
//
//   node check.mjs file.stl|file.3mf ...
//   node check.mjs --apart a b [--move x,y,z] [--lifts 0,0.5,1] [--tolerance mm3]
//                              [--weld mm] [--least-gap mm]

import { basename } from "node:path";
import { parseArgs } from "node:util";
import { readBodies } from "./bodies.mjs";
import { survey, weld } from "./survey.mjs";
import { opinion } from "./judge.mjs";
import { apart } from "./apart.mjs";

function usage(problem) {
  console.error(`${problem}\nusage: node check.mjs FILE.stl|FILE.3mf ...\n       node check.mjs --apart A B [--move x,y,z] [--lifts l,l,...] [--tolerance mm3] [--weld mm] [--least-gap mm]`);
  process.exit(2);
}

// verdicts of one body: what is wrong with it, nothing if it is sound.
function faults(own, library) {
  const out = [];
  const say = (bad, text) => { if (bad) out.push(text); };
  say(own.triangles === 0, "no triangles");
  say(own.open_edges, `${own.open_edges} edges of one triangle`);
  say(own.crowded_edges, `${own.crowded_edges} edges of more than two triangles`);
  say(own.twisted_edges, `${own.twisted_edges} edges run twice the same way`);
  say(own.collapsed, `${own.collapsed} triangles collapse when equal vertices are welded`);
  say(own.flat, `${own.flat} triangles without area`);
  say(own.pieces !== 1, `${own.pieces} pieces`);
  say(!(own.volume > 0), `volume ${own.volume} mm3`);
  say(library.status !== "NoError", `library: ${library.status}`);
  if (library.status === "NoError") {
    say(library.bodies !== 1, `library: ${library.bodies} bodies`);
    say(Math.abs(library.volume - own.volume) > 1e-5 * Math.abs(own.volume), `library: volume ${library.volume} mm3, counted ${own.volume}`);
    say(own.closed && own.pieces === 1 && library.genus[0] !== 1 - own.euler / 2, `library: genus ${library.genus}, by Euler's formula ${1 - own.euler / 2}`);
  }
  return out;
}

function checkFile(path) {
  let bodies;
  try {
    bodies = readBodies(path);
  } catch (e) {
    console.log(JSON.stringify({ file: basename(path), faults: [e.message] }));
    return false;
  }
  let sound = true;
  for (const body of bodies) {
    let line = { file: basename(path), name: body.name, unit: body.unit };
    if (body.metadata) line = { ...line, part_number: body.partNumber, metadata: body.metadata, vertices_written: body.vertices.length / 3 };
    try {
      const mesh = weld(body);
      const own = survey(mesh), library = opinion(mesh);
      line = { ...line, ...own, library, faults: faults(own, library) };
    } catch (e) {
      line = { ...line, faults: [e.message] };
    }
    console.log(JSON.stringify(line));
    sound &&= line.faults.length === 0;
  }
  return sound;
}

function numbers(text, count) {
  const out = text.split(",").map((s) => (s.trim() === "" ? NaN : Number(s)));
  if (out.some((x) => !Number.isFinite(x)) || (count && out.length !== count)) usage(`"${text}" is not ${count ? count + " numbers" : "a list of numbers"}`);
  return out;
}

let options;
try {
  options = parseArgs({
    allowPositionals: true,
    options: {
      apart: { type: "boolean" }, move: { type: "string" }, lifts: { type: "string" },
      tolerance: { type: "string" }, weld: { type: "string" }, "least-gap": { type: "string" },
    },
  });
} catch (e) {
  usage(e.message);
}
const { values, positionals } = options;
if (values.apart) {
  if (positionals.length !== 2) usage("--apart needs two files");
  const ok = apart(positionals, {
    move: numbers(values.move ?? "0,0,0", 3), lifts: numbers(values.lifts ?? "0"),
    tolerance: numbers(values.tolerance ?? "1e-3", 1)[0], weld: numbers(values.weld ?? "1e-3", 1)[0],
    leastGap: values["least-gap"] === undefined ? null : numbers(values["least-gap"], 1)[0],
  });
  process.exitCode = ok ? 0 : 1;
} else {
  if (positionals.length === 0) usage("no file");
  const sound = positionals.map(checkFile);
  process.exitCode = sound.every(Boolean) ? 0 : 1;
}
