// The boolean library: an opinion on each mesh that is not ours, and volumes of
// intersections.

import Module from "manifold-3d";

const library = await Module();
library.setup();
const { Manifold, Mesh } = library;

// solid makes a Manifold of a welded mesh. The library may refuse: then there is
// only a status.
export function solid({ vertices, triangles }) {
  try {
    const made = Manifold.ofMesh(new Mesh({ numProp: 3, vertProperties: Float32Array.from(vertices), triVerts: Uint32Array.from(triangles) }));
    const status = made.status();
    return status === "NoError" ? { status, made } : { status };
  } catch (e) {
    return { status: e.code ?? e.message ?? String(e) };
  }
}

// opinion asks the library for what the survey counted in its own way.
export function opinion(mesh) {
  const { status, made } = solid(mesh);
  if (!made) return { status };
  const parts = made.decompose();
  const box = made.boundingBox();
  return { status, bodies: parts.length, genus: parts.map((p) => p.genus()), volume: made.volume(), min: [...box.min], max: [...box.max], triangles: made.numTri() };
}
