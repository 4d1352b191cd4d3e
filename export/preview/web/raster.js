// A picture with a depth buffer. Depth is in mm toward the viewer.

function newRaster(width, height) {
  const image = new ImageData(width, height);
  return {
    width, height, image,
    pixels: new Uint32Array(image.data.buffer),
    depth: new Float32Array(width * height),
    inside: new Int16Array(width * height),
  };
}

function clearRaster(r) {
  r.pixels.fill(0xffffffff);
  r.depth.fill(-Infinity);
}

// scan calls row(y, from, to) for every row of pixels whose middles lie in a triangle.
// Triangles that share a side share no pixel and leave none out.
function scan(r, ax, ay, bx, by, cx, cy, row) {
  let t;
  if (by < ay || by === ay && bx < ax) { t = ax; ax = bx; bx = t; t = ay; ay = by; by = t; }
  if (cy < ay || cy === ay && cx < ax) { t = ax; ax = cx; cx = t; t = ay; ay = cy; cy = t; }
  if (cy < by || cy === by && cx < bx) { t = bx; bx = cx; cx = t; t = by; by = cy; cy = t; }
  const last = Math.min(Math.ceil(cy - 0.5), r.height);
  const long = (cx - ax) / (cy - ay), upper = (bx - ax) / (by - ay), lower = (cx - bx) / (cy - by);
  for (let y = Math.max(Math.ceil(ay - 0.5), 0); y < last; y++) {
    const at = y + 0.5;
    const p = ax + (at - ay) * long;
    const q = at < by ? ax + (at - ay) * upper : bx + (at - by) * lower;
    const from = Math.max(Math.ceil((p < q ? p : q) - 0.5), 0), to = Math.min(Math.ceil((p < q ? q : p) - 0.5), r.width);
    if (from < to) row(y, from, to);
  }
}

// fill paints a triangle where it is nearer than what is there.
function fill(r, a, b, c, colour) {
  const det = (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]);
  if (det === 0) return;
  const zx = ((b[2] - a[2]) * (c[1] - a[1]) - (c[2] - a[2]) * (b[1] - a[1])) / det;
  const zy = ((c[2] - a[2]) * (b[0] - a[0]) - (b[2] - a[2]) * (c[0] - a[0])) / det;
  const z0 = a[2] - zx * (a[0] - 0.5) - zy * (a[1] - 0.5);
  const width = r.width, depth = r.depth, pixels = r.pixels;
  scan(r, a[0], a[1], b[0], b[1], c[0], c[1], (y, from, to) => {
    let z = z0 + zy * y + zx * from;
    for (let i = y * width + from, end = y * width + to; i < end; i++, z += zx) {
      if (z > depth[i]) { depth[i] = z; pixels[i] = colour; }
    }
  });
}

// tally counts into and out of a body over each pixel.
function tally(r, a, b, c, step) {
  scan(r, a[0], a[1], b[0], b[1], c[0], c[1], (y, from, to) => {
    for (let i = y * r.width + from, end = y * r.width + to; i < end; i++) r.inside[i] += step;
  });
}

// fillCut paints the plane z0 + zx x + zy y where the tally says that it lies in the
// body, and clears the tally.
function fillCut(r, plane, ground, hatch, falling, pitch) {
  for (let y = 0, i = 0; y < r.height; y++) {
    for (let x = 0; x < r.width; x++, i++) {
      if (r.inside[i] === 0) continue;
      const in_ = r.inside[i] > 0;
      r.inside[i] = 0;
      const z = plane.z0 + plane.zx * x + plane.zy * y;
      if (!in_ || z < r.depth[i]) continue;
      r.depth[i] = z;
      const at = (falling ? x - y : x + y) % pitch.period;
      r.pixels[i] = (at < 0 ? at + pitch.period : at) < pitch.line ? hatch : ground;
    }
  }
}

// stroke draws a line where nothing lies nearer by more than a slack [mm].
function stroke(r, a, b, colour, wide, slack) {
  let dx = b[0] - a[0], dy = b[1] - a[1];
  const steps = Math.max(1, Math.ceil(Math.max(Math.abs(dx), Math.abs(dy))));
  if (steps > 20000) return;
  const flat = Math.abs(dx) >= Math.abs(dy), dz = (b[2] - a[2]) / steps;
  dx /= steps; dy /= steps;
  for (let k = 0; k <= steps; k++) {
    const z = a[2] + k * dz + slack;
    let x = Math.floor(a[0] + k * dx), y = Math.floor(a[1] + k * dy);
    if (flat) y -= wide >> 1; else x -= wide >> 1;
    for (let w = 0; w < wide; w++) {
      if (x >= 0 && y >= 0 && x < r.width && y < r.height) {
        const i = y * r.width + x;
        if (z >= r.depth[i]) r.pixels[i] = colour;
      }
      if (flat) y++; else x++;
    }
  }
}
