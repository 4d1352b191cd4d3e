// Draws a scene: bodies with their lifts, seen from a direction, whole or cut.

// Lightness of a face in full shade and in full light, of 127; as on the sheet.
const tones = {light: [84, 125], medium: [64, 104], dark: [42, 80], accent: [66, 110]};
const ochre = [184, 116, 32];
const ink = pixelOf(26, 26, 26);

function pixelOf(r, g, b) { return (255 << 24 | b << 16 | g << 8 | r) >>> 0; }

// paint is the pixel of a lightness from 0 to 127 in a tone. The accent has the luma
// (ITU-R BT.601, from memory) of the grey beside it.
function paint(tone, light) {
  const f = Math.min(1, Math.max(0, light / 127));
  if (tone !== 'accent') { const g = Math.round(255 * f); return pixelOf(g, g, g); }
  const luma = (0.299 * ochre[0] + 0.587 * ochre[1] + 0.114 * ochre[2]) / 255;
  const c = ochre.map((o) => Math.round(f <= luma ? o * f / luma : o + (255 - o) * (f - luma) / (1 - luma)));
  return pixelOf(c[0], c[1], c[2]);
}

function unit(v) { const l = Math.hypot(v[0], v[1], v[2]); return v.map((x) => x / l); }
const mainLight = unit([-0.42, 0.66, 0.62]), sideLight = unit([0.86, 0.18, 0.48]);

// axesOf are the axes of the picture: to the right, up, to the viewer.
function axesOf(azimuth, elevation) {
  const sa = Math.sin(azimuth), ca = Math.cos(azimuth), se = Math.sin(elevation), ce = Math.cos(elevation);
  return {right: [ca, sa, 0], up: [-sa * se, ca * se, ce], toward: [sa * ce, -ca * ce, se]};
}

// drawScene paints the bodies. things: {body, tone, offset}; view: {azimuth,
// elevation, middle, scale}; cutAt: the y of the cut [mm], or null.
function drawScene(r, things, view, cutAt, wide) {
  clearRaster(r);
  const axes = axesOf(view.azimuth, view.elevation), t = axes.toward;
  const side = t[1] > 0 ? 1 : -1; // the half that is taken away lies to the viewer
  const eye = {axes, scale: view.scale, middle: view.middle, cx: r.width / 2, cy: r.height / 2};
  const facing = Math.abs(t[1]);
  const plane = cutAt === null || facing < 0.02 ? null : planeOf(eye, side, cutAt);
  const drawn = things.map((thing, index) => ({thing, index, traces: []}));
  for (const d of drawn) {
    project(d.thing, eye);
    const above = cutAt === null ? null : (v) => side * (d.thing.body.points[3 * v + 1] + d.thing.offset[1] - cutAt);
    fillBody(r, d, eye, above, plane, wide);
  }
  for (const d of drawn) strokeBody(r, d, eye, cutAt === null ? null : (v) => side * (d.thing.body.points[3 * v + 1] + d.thing.offset[1] - cutAt), plane, wide);
}

// planeOf is the depth of the cut over the picture.
function planeOf(eye, side, cutAt) {
  const {right, up, toward} = eye.axes, nt = side * toward[1];
  const zx = -side * right[1] / nt / eye.scale, zy = side * up[1] / nt / eye.scale;
  const m = eye.middle, u0 = dot(right, m), v0 = dot(up, m);
  const z = (side * cutAt - side * right[1] * u0 - side * up[1] * v0) / nt;
  return {zx, zy, z0: z - zx * (eye.cx - 0.5) - zy * (eye.cy - 0.5)};
}

function dot(a, b) { return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]; }

// project fills body.screen with x, y in pixels and the depth in mm.
function project(thing, eye) {
  const {right, up, toward} = eye.axes, p = thing.body.points, s = thing.body.screen, o = thing.offset, m = eye.middle;
  for (let i = 0; i < p.length; i += 3) {
    const x = p[i] + o[0], y = p[i + 1] + o[1], z = p[i + 2] + o[2];
    s[i] = eye.cx + eye.scale * (right[0] * (x - m[0]) + right[1] * (y - m[1]));
    s[i + 1] = eye.cy - eye.scale * (up[0] * (x - m[0]) + up[1] * (y - m[1]) + up[2] * (z - m[2]));
    s[i + 2] = toward[0] * x + toward[1] * y + toward[2] * z;
  }
}

function spot(screen, v) { return [screen[3 * v], screen[3 * v + 1], screen[3 * v + 2]]; }

// between is where the cut passes an edge, the same from either end.
function between(screen, above, u, v) {
  if (u > v) { const w = u; u = v; v = w; }
  const a = spot(screen, u), b = spot(screen, v), t = above(u) / (above(u) - above(v));
  return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]), a[2] + t * (b[2] - a[2])];
}

function fillBody(r, d, eye, above, plane, wide) {
  const {body, tone} = d.thing, n = body.normals, c = body.corners, s = body.screen, {right, up, toward} = eye.axes;
  const [shade, lit] = tones[tone];
  const cache = new Map();
  const capped = plane !== null && body.closed;
  for (let i = 0; i < c.length; i += 3) {
    let x = n[i] * right[0] + n[i + 1] * right[1], y = n[i] * up[0] + n[i + 1] * up[1] + n[i + 2] * up[2];
    let z = n[i] * toward[0] + n[i + 1] * toward[1] + n[i + 2] * toward[2];
    const back = z < 0;
    if (back) { if (body.closed && above === null) continue; x = -x; y = -y; z = -z; }
    const light = Math.min(1, 0.84 * Math.max(0, x * mainLight[0] + y * mainLight[1] + z * mainLight[2]) + 0.28 * Math.max(0, x * sideLight[0] + y * sideLight[1] + z * sideLight[2]));
    const level = Math.round((shade + (lit - shade) * light) * (back && !body.closed ? 0.8 : 1));
    let colour = cache.get(level);
    if (colour === undefined) { colour = paint(tone, level); cache.set(level, colour); }
    const kept = above === null ? [spot(s, c[i]), spot(s, c[i + 1]), spot(s, c[i + 2])] : keep(d, above, c[i], c[i + 1], c[i + 2]);
    for (let k = 2; k < kept.length; k++) {
      if (capped) tally(r, kept[0], kept[k - 1], kept[k], back ? 1 : -1);
      if (!(back && body.closed)) fill(r, kept[0], kept[k - 1], kept[k], colour);
    }
  }
  if (capped) {
    fillCut(r, plane, paint(tone, lit), paint(tone, shade * 0.45), d.index % 2 === 1, {period: [9, 9, 7, 7, 12, 12][d.index % 6] * wide, line: wide});
  }
}

// keep is what the cut leaves of a triangle; its trace in the cut is noted.
function keep(d, above, a, b, c) {
  const s = d.thing.body.screen, v = [a, b, c], out = [], trace = [];
  for (let k = 0; k < 3; k++) {
    const p = v[k], q = v[(k + 1) % 3], up = above(p) > 0;
    if (!up) out.push(spot(s, p));
    if (up !== above(q) > 0) { const x = between(s, above, p, q); out.push(x); trace.push(x); }
  }
  if (trace.length === 2) d.traces.push(trace);
  return out;
}

function strokeBody(r, d, eye, above, plane, wide) {
  const {body} = d.thing, {ends, sides, sharp} = body.edges, n = body.normals, s = body.screen, t = eye.axes.toward;
  const slack = 1.6 / eye.scale + 0.12;
  for (let e = 0; e < sharp.length; e++) {
    const f = sides[2 * e], g = sides[2 * e + 1];
    const away = f < 0 || n[f] * t[0] + n[f + 1] * t[1] + n[f + 2] * t[2] <= 0;
    const gone = g < 0 || n[g] * t[0] + n[g + 1] * t[1] + n[g + 2] * t[2] <= 0;
    if (body.closed && away && gone && above === null) continue;
    if (!sharp[e] && away === gone) continue;
    const u = ends[2 * e], v = ends[2 * e + 1];
    let a = spot(s, u), b = spot(s, v);
    if (above !== null) {
      const p = above(u) > 0, q = above(v) > 0;
      if (p && q) continue;
      if (p) a = between(s, above, u, v);
      if (q) b = between(s, above, u, v);
    }
    stroke(r, a, b, ink, wide, slack);
  }
  if (plane !== null) for (const [a, b] of d.traces) stroke(r, a, b, ink, wide, slack);
}
