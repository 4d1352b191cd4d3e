// The page: controls, keys, and the words that go with the picture.

const given = JSON.parse(document.getElementById('data').textContent);
const at = (id) => document.getElementById(id);
const usual = {azimuth: 0.5, elevation: 0.52, zoom: 1};
const state = {step: 0, travel: 0, cut: false, apart: false, hidden: new Set(), azimuth: 0.5, elevation: 0.52, zoom: 1};
const bodies = new Map(); // opened when first shown
const canvas = at('picture'), pen = canvas.getContext('2d');
const sheet = document.createElement('canvas');
const rasters = new Map();
const degrees = (v) => Math.round(v * 180 / Math.PI);
let waiting = 0, later = 0, saying = 0;

function bodyOf(i) {
  if (!bodies.has(i)) bodies.set(i, openBody(given.bodies[i]));
  return bodies.get(i);
}

function step() { return given.steps[state.step]; }
function lift() { return step().stroke * (1 - state.travel / 200); }

function things() {
  return step().scene.map((p, i) => ({
    body: bodyOf(p.body), tone: p.tone, shown: !state.hidden.has(state.step + '/' + i), name: p.name,
    offset: [p.offset[0], p.offset[1], p.offset[2] + (p.moves ? lift() : 0) + (state.apart ? p.apart : 0)],
    least: p.offset[2] + (state.apart ? p.apart : 0),
    most: p.offset[2] + (state.apart ? p.apart : 0) + (p.moves ? step().stroke : 0),
  }));
}

// frame is the room of all bodies at any lift, so that moving changes no scale.
function frame(all) {
  const low = [Infinity, Infinity, Infinity], high = [-Infinity, -Infinity, -Infinity];
  for (const t of all) {
    for (let k = 0; k < 3; k++) {
      low[k] = Math.min(low[k], t.body.box.low[k] + (k === 2 ? t.least : t.offset[k]));
      high[k] = Math.max(high[k], t.body.box.high[k] + (k === 2 ? t.most : t.offset[k]));
    }
  }
  const size = [0, 1, 2].map((k) => high[k] - low[k]);
  return {middle: [0, 1, 2].map((k) => (low[k] + high[k]) / 2), wide: Math.hypot(size[0], size[1]), tall: size[2]};
}

// draw paints the picture; fine: at twice the size, for smooth edges.
function draw(fine) {
  const all = things(), f = frame(all), k = fine ? 2 : 1, w = canvas.width * k, h = canvas.height * k;
  const key = w + 'x' + h;
  if (!rasters.has(key)) { if (rasters.size > 3) rasters.clear(); rasters.set(key, newRaster(w, h)); }
  const r = rasters.get(key);
  const high = f.tall * Math.cos(state.elevation) + f.wide * Math.abs(Math.sin(state.elevation));
  const scale = 0.94 * Math.min(w / f.wide, h / high) * state.zoom;
  const view = {azimuth: state.azimuth, elevation: state.elevation, middle: f.middle, scale};
  drawScene(r, all.filter((t) => t.shown), view, state.cut ? step().thrust[1] : null, Math.max(1, Math.round(w / 960)));
  sheet.width = w; sheet.height = h;
  sheet.getContext('2d').putImageData(r.image, 0, 0);
  pen.imageSmoothingQuality = 'high';
  pen.clearRect(0, 0, canvas.width, canvas.height);
  pen.drawImage(sheet, 0, 0, canvas.width, canvas.height);
}

// show redraws at the next frame, and finely once nothing changes any more.
function show() {
  canvas.setAttribute('aria-busy', 'true');
  write();
  if (!waiting) waiting = requestAnimationFrame(() => { waiting = 0; draw(false); });
  clearTimeout(later);
  later = setTimeout(() => {
    if (waiting) { cancelAnimationFrame(waiting); waiting = 0; } // else a late rough picture would cover the fine one
    draw(true);
  }, 160);
}

// write puts the reading beside the slider and moves the mark in the chart.
function write() {
  const u = given.units, s = step(), l = lift(), band = bandAt(s.band || [], l);
  const say = (v) => figure(v / u.force) + ' ' + u.forceName, long = (v) => figure(v / u.length) + ' ' + u.lengthName;
  const where = 'Travel ' + long(s.stroke - l) + ', lift ' + long(l) + ' above the seat';
  const push = 'nominal force ' + say(curveAt(s.curve, l));
  const spread = band ? '; 90 of 100 assemblies ' + figure(band[0] / u.force) + ' to ' + say(band[1]) : '';
  at('reading').textContent = where + ': ' + push + spread;
  at('travel').setAttribute('aria-valuetext', where + ', ' + push);
  const [left, top, right, bottom] = s.plot;
  at('marker-' + state.step).setAttribute('d', 'M' + (left + (right - left) * state.travel / 200).toFixed(2) + ' ' + top + 'V' + bottom);
  clearTimeout(saying);
  saying = setTimeout(() => { describe(); canvas.setAttribute('aria-busy', 'false'); }, 500); // after the fine picture
}

// describe says in words what the picture shows.
function describe() {
  const turn = ((degrees(state.azimuth) + 180) % 360 + 360) % 360 - 180, tip = degrees(state.elevation);
  const from = turn === 0 ? 'the front' : Math.abs(turn) === 180 ? 'the back' : Math.abs(turn) + '° to the ' + (turn > 0 ? 'right' : 'left') + ' of the front';
  const hidden = step().scene.filter((p, i) => state.hidden.has(state.step + '/' + i)).map((p) => p.name);
  at('picture-text').textContent = 'Seen from ' + from + ', ' + Math.abs(tip) + '° ' + (tip < 0 ? 'below' : 'above') +
    (state.cut ? ', cut through the thrust line' : '') + (state.apart ? ', taken apart' : '') + (hidden.length ? ', without ' + hidden.join(' and ') : '') + '.';
}

function turn(way) {
  const by = Math.PI / 36;
  if (way === 'left') state.azimuth -= by;
  if (way === 'right') state.azimuth += by;
  if (way === 'up') state.elevation = Math.min(Math.PI / 2, state.elevation + by);
  if (way === 'down') state.elevation = Math.max(-Math.PI / 2, state.elevation - by);
  if (way === 'closer') state.zoom = Math.min(8, state.zoom * 1.15);
  if (way === 'farther') state.zoom = Math.max(0.4, state.zoom / 1.15);
  if (way === 'usual') Object.assign(state, usual);
  if (way === 'plan') Object.assign(state, {azimuth: 0, elevation: Math.PI / 2, zoom: 1});
  show();
}

// list names the bodies of the step, each with a box to hide it.
function list() {
  const to = at('bodies');
  to.replaceChildren();
  step().scene.forEach((p, i) => {
    const label = document.createElement('label'), box = document.createElement('input'), swatch = document.createElement('span');
    const key = state.step + '/' + i;
    box.type = 'checkbox';
    box.checked = !state.hidden.has(key);
    box.addEventListener('change', () => { if (box.checked) state.hidden.delete(key); else state.hidden.add(key); show(); });
    swatch.className = 'swatch ' + p.tone;
    label.append(box, swatch, p.name);
    to.append(label);
  });
}

const keys = {ArrowLeft: 'left', ArrowRight: 'right', ArrowUp: 'up', ArrowDown: 'down', '+': 'closer', '=': 'closer', '-': 'farther', Home: 'usual'};
canvas.addEventListener('keydown', (e) => {
  if (e.ctrlKey || e.altKey || e.metaKey || !keys[e.key]) return;
  e.preventDefault();
  turn(keys[e.key]);
});
let held = null;
canvas.addEventListener('pointerdown', (e) => { held = [e.clientX, e.clientY]; canvas.setPointerCapture(e.pointerId); });
canvas.addEventListener('pointermove', (e) => {
  if (!held) return;
  state.azimuth -= (e.clientX - held[0]) * 0.008;
  state.elevation = Math.min(Math.PI / 2, Math.max(-Math.PI / 2, state.elevation + (e.clientY - held[1]) * 0.008));
  held = [e.clientX, e.clientY];
  show();
});
for (const name of ['pointerup', 'pointercancel']) canvas.addEventListener(name, () => { held = null; });
canvas.addEventListener('wheel', (e) => {
  if (document.activeElement !== canvas) return; // the page scrolls
  e.preventDefault();
  turn(e.deltaY < 0 ? 'closer' : 'farther');
}, {passive: false});
for (const b of document.querySelectorAll('[data-turn]')) b.addEventListener('click', () => turn(b.dataset.turn));
at('travel').addEventListener('input', () => { state.travel = Number(at('travel').value); show(); });
for (const name of ['cut', 'apart']) at(name).addEventListener('change', () => { state[name] = at(name).checked; show(); });
if (at('step')) at('step').addEventListener('change', () => { state.step = Number(at('step').value); list(); show(); });

// A browser may bring back what was set before the page was read again.
state.travel = Number(at('travel').value);
state.cut = at('cut').checked;
state.apart = at('apart').checked;
if (at('step')) state.step = Number(at('step').value);
at('view').hidden = false;
list();
describe();
show();
