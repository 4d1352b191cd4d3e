// Reads the bodies of a mesh file by its ending.

import { readFileSync } from "node:fs";
import { readSTL } from "./stl.mjs";
import { read3MF } from "./threemf.mjs";

export function readBodies(path) {
  const bytes = new Uint8Array(readFileSync(path));
  if (/\.3mf$/i.test(path)) return read3MF(bytes);
  if (/\.stl$/i.test(path)) return readSTL(bytes);
  throw new Error("neither .stl nor .3mf");
}
