// Whether two solids keep clear of each other: the volume that they share, with
// the second moved and lifted, and the least distance between them.

import { basename } from "node:path";
import { readBodies } from "./bodies.mjs";
import { solid } from "./judge.mjs";
import { survey, weld, weldNear } from "./survey.mjs";

// How far the least distance is looked for [mm].
const reach = 10;

// load makes one solid of a file. A mesh that is not closed once equal vertices
// are one is welded at the tolerance, and a line says so.
function load(path, tolerance) {
  const solids = readBodies(path).map((body) => {
    let mesh = weld(body);
    const before = survey(mesh);
    if (!before.closed || before.collapsed) {
      mesh = weldNear(mesh, tolerance);
      const after = survey(mesh);
      console.log(JSON.stringify({
        file: basename(path), name: body.name, note: `not closed as written: welded at ${tolerance} mm`,
        before: { open_edges: before.open_edges, crowded_edges: before.crowded_edges, twisted_edges: before.twisted_edges, collapsed: before.collapsed },
        after: { open_edges: after.open_edges, crowded_edges: after.crowded_edges, twisted_edges: after.twisted_edges, triangles: after.triangles },
      }));
    }
    const own = survey(mesh);
    if (!own.closed) throw new Error(`${basename(path)}: "${body.name}" is not closed: ${own.open_edges} open, ${own.crowded_edges} crowded, ${own.twisted_edges} twisted edges`);
    if (!(own.volume > 0)) throw new Error(`${basename(path)}: "${body.name}" has volume ${own.volume} mm3`);
    const { status, made } = solid(mesh);
    if (!made) throw new Error(`${basename(path)}: "${body.name}": library: ${status}`);
    return made;
  });
  return solids.reduce((all, s) => all.add(s));
}

// apart prints one line a lift and returns whether all hold.
export function apart(paths, { move, lifts, tolerance, weld: welding, leastGap }) {
  let a, b;
  try {
    [a, b] = paths.map((p) => load(p, welding));
  } catch (e) {
    console.log(JSON.stringify({ apart: paths.map((p) => basename(p)), faults: [e.message] }));
    return false;
  }
  let clear = true;
  for (const lift of lifts) {
    const placed = b.translate(move[0], move[1], move[2] + lift);
    const shared = a.intersect(placed);
    const line = { apart: paths.map((p) => basename(p)), move, lift, volume: shared.volume(), tolerance, faults: [] };
    if (shared.status() !== "NoError") line.faults.push(`library: ${shared.status()}`);
    // Not "volume > tolerance", which a volume that is no number would pass.
    if (!(line.volume <= tolerance)) line.faults.push(`they share ${line.volume} mm3`);
    if (leastGap !== null) {
      line.gap = a.minGap(placed, reach);
      if (line.gap >= reach) line.gap = `above ${reach}`;
      else if (!(line.gap >= leastGap)) line.faults.push(`the least gap is ${line.gap} mm, below ${leastGap}`);
    }
    console.log(JSON.stringify(line));
    clear &&= line.faults.length === 0;
  }
  return clear;
}
