// What can be counted on a mesh without any library: vertices equal in float32
// made one, triangles that collapse then, edges, pieces, volume, box.

// weld gives equal vertices one number. Equal means equal as float32, which is
// what STL holds and most readers keep; -0 is 0.
export function weld(body) {
  const { vertices, triangles } = body;
  const numbers = new Map();
  const of = new Uint32Array(vertices.length / 3);
  const points = [];
  for (let i = 0; i < of.length; i++) {
    const p = [0, 1, 2].map((k) => Math.fround(vertices[3 * i + k]) + 0);
    if (!p.every(Number.isFinite)) throw new Error(`vertex ${i} is ${p}, not a place`);
    const key = p.join(" ");
    let n = numbers.get(key);
    if (n === undefined) {
      n = points.length / 3;
      numbers.set(key, n);
      points.push(...p);
    }
    of[i] = n;
  }
  return { vertices: Float64Array.from(points), triangles: triangles.map((i) => of[i]) };
}

// weldNear makes one of all vertices that a chain of steps of at most tolerance
// joins, and drops the triangles that collapse.
export function weldNear(mesh, tolerance) {
  const { vertices: v } = mesh;
  const n = v.length / 3;
  const parent = Uint32Array.from({ length: n }, (_, i) => i);
  const find = (i) => { while (parent[i] !== i) i = parent[i] = parent[parent[i]]; return i; };
  const cells = new Map();
  const cell = (i, k) => Math.floor(v[3 * i + k] / tolerance);
  for (let i = 0; i < n; i++) {
    for (let dx = -1; dx <= 1; dx++) for (let dy = -1; dy <= 1; dy++) for (let dz = -1; dz <= 1; dz++) {
      for (const j of cells.get(`${cell(i, 0) + dx} ${cell(i, 1) + dy} ${cell(i, 2) + dz}`) ?? []) {
        if (Math.hypot(v[3 * i] - v[3 * j], v[3 * i + 1] - v[3 * j + 1], v[3 * i + 2] - v[3 * j + 2]) <= tolerance) {
          const a = find(i), b = find(j);
          parent[Math.max(a, b)] = Math.min(a, b);
        }
      }
    }
    const key = `${cell(i, 0)} ${cell(i, 1)} ${cell(i, 2)}`;
    if (!cells.has(key)) cells.set(key, []);
    cells.get(key).push(i);
  }
  const kept = [];
  for (let t = 0; t < mesh.triangles.length; t += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => find(mesh.triangles[t + k]));
    if (a !== b && b !== c && c !== a) kept.push(a, b, c);
  }
  return { vertices: v, triangles: Uint32Array.from(kept) };
}

// survey counts on a welded mesh.
export function survey({ vertices: v, triangles: f }) {
  const out = { triangles: f.length / 3, vertices: v.length / 3, collapsed: 0, flat: 0 };
  const edges = new Map(); // "a b" with a < b: [how often run upward, downward]
  const parent = Uint32Array.from({ length: f.length / 3 }, (_, i) => i);
  const find = (i) => { while (parent[i] !== i) i = parent[i] = parent[parent[i]]; return i; };
  let volume6 = 0;
  const min = [Infinity, Infinity, Infinity], max = [-Infinity, -Infinity, -Infinity];
  const p = (i, k) => v[3 * i + k];
  const collapsed = new Uint8Array(f.length / 3);
  for (let t = 0; t < f.length / 3; t++) {
    const [a, b, c] = [f[3 * t], f[3 * t + 1], f[3 * t + 2]];
    for (const i of [a, b, c]) for (let k = 0; k < 3; k++) {
      min[k] = Math.min(min[k], p(i, k));
      max[k] = Math.max(max[k], p(i, k));
    }
    if (a === b || b === c || c === a) {
      out.collapsed++;
      collapsed[t] = 1;
      continue;
    }
    const u = [0, 1, 2].map((k) => p(b, k) - p(a, k)), w = [0, 1, 2].map((k) => p(c, k) - p(a, k));
    const n = [u[1] * w[2] - u[2] * w[1], u[2] * w[0] - u[0] * w[2], u[0] * w[1] - u[1] * w[0]];
    if (n[0] === 0 && n[1] === 0 && n[2] === 0) out.flat++;
    // Six times the volume, taken about the first vertex of the mesh.
    volume6 += n.reduce((s, x, k) => s + x * (p(a, k) - p(f[0], k)), 0);
    for (const [i, j] of [[a, b], [b, c], [c, a]]) {
      const key = i < j ? `${i} ${j}` : `${j} ${i}`;
      let e = edges.get(key);
      if (!e) edges.set(key, (e = { up: 0, down: 0, of: t }));
      e[i < j ? "up" : "down"]++;
      const x = find(t), y = find(e.of);
      parent[Math.max(x, y)] = Math.min(x, y);
    }
  }
  let open = 0, crowded = 0, twisted = 0;
  for (const e of edges.values()) {
    if (e.up + e.down < 2) open++;
    else if (e.up + e.down > 2) crowded++;
    else if (e.up !== 1) twisted++;
  }
  const pieces = new Set();
  for (let t = 0; t < parent.length; t++) if (!collapsed[t]) pieces.add(find(t));
  const used = new Set(f).size;
  const closed = f.length > 0 && open + crowded + twisted === 0;
  return {
    ...out, closed, open_edges: open, crowded_edges: crowded, twisted_edges: twisted, pieces: pieces.size,
    euler: used - edges.size + (out.triangles - out.collapsed), volume: volume6 / 6, min, max,
  };
}
