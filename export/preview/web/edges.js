// Edges of a mesh: each with its two triangles, sharp ones marked.

// Two triangles that turn by more than this make a sharp edge.
const sharpTurn = Math.cos(30 * Math.PI / 180);

function edgesOf(body) {
  const corners = body.corners, n = body.points.length / 3;
  const known = new Map(), ends = [], sides = [], sharp = [];
  for (let i = 0; i < corners.length; i++) {
    const a = corners[i], b = corners[i % 3 === 2 ? i - 2 : i + 1], face = i - i % 3;
    const forward = a < b, key = forward ? a * n + b : b * n + a;
    const e = known.get(key);
    if (e === undefined) {
      known.set(key, sharp.length);
      ends.push(a, b);
      sides.push(face, -1);
      sharp.push(1); // a rim, until the other triangle comes
    } else if (sides[2 * e + 1] < 0) {
      sides[2 * e + 1] = face;
      // Run through the same way twice, the triangles face opposite ways.
      const same = ends[2 * e] === a ? -1 : 1;
      sharp[e] = same * dotNormals(body.normals, sides[2 * e], face) < sharpTurn ? 1 : 0;
    } else {
      sharp[e] = 1; // more than two triangles meet
    }
  }
  return {ends: Int32Array.from(ends), sides: Int32Array.from(sides), sharp: Uint8Array.from(sharp)};
}

function dotNormals(n, f, g) {
  return n[f] * n[g] + n[f + 1] * n[g + 1] + n[f + 2] * n[g + 2];
}
