// Meshes out of the data of the page.

function bytesOf(text) {
  const raw = atob(text), out = new Uint8Array(raw.length);
  for (let i = 0; i < raw.length; i++) out[i] = raw.charCodeAt(i);
  return out;
}

// openBody gives a body as flat arrays: points x, y, z [mm], corners a, b, c and the
// unit normal of every triangle.
function openBody(packed) {
  const q = bytesOf(packed.vertices), t = bytesOf(packed.triangles), width = packed.wide ? 3 : 2;
  const points = new Float64Array(q.length / 2), corners = new Int32Array(t.length / width);
  for (let i = 0; i < points.length; i++) points[i] = packed.origin[i % 3] + packed.step * (q[2 * i] | q[2 * i + 1] << 8);
  for (let i = 0; i < corners.length; i++) {
    const at = width * i;
    corners[i] = t[at] | t[at + 1] << 8 | (packed.wide ? t[at + 2] << 16 : 0);
  }
  const body = {points, corners, normals: normalsOf(points, corners), closed: packed.closed};
  body.edges = edgesOf(body);
  body.box = boxOf(points);
  body.screen = new Float64Array(points.length);
  return body;
}

function normalsOf(points, corners) {
  const out = new Float32Array(corners.length);
  for (let i = 0; i < corners.length; i += 3) {
    const a = 3 * corners[i], b = 3 * corners[i + 1], c = 3 * corners[i + 2];
    const ux = points[b] - points[a], uy = points[b + 1] - points[a + 1], uz = points[b + 2] - points[a + 2];
    const vx = points[c] - points[a], vy = points[c + 1] - points[a + 1], vz = points[c + 2] - points[a + 2];
    const x = uy * vz - uz * vy, y = uz * vx - ux * vz, z = ux * vy - uy * vx;
    const long = Math.hypot(x, y, z) || 1;
    out[i] = x / long; out[i + 1] = y / long; out[i + 2] = z / long;
  }
  return out;
}

function boxOf(points) {
  const low = [Infinity, Infinity, Infinity], high = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < points.length; i++) {
    const k = i % 3;
    if (points[i] < low[k]) low[k] = points[i];
    if (points[i] > high[k]) high[k] = points[i];
  }
  return {low, high};
}
