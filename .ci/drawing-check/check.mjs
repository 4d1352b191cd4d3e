// Reads DXF drawings with a reader that is not ours.
//
//   node check.mjs FILE.dxf REPORT.json
//
// Entities must lie on layers of the table; the lines of the bodies must span, in the unit
// of the file, what the report says of nest and anvil. Exit 1 if not.

import {readFileSync} from 'node:fs';
import DxfParser from 'dxf-parser';

const [file, reportFile] = process.argv.slice(2);
const unit = file.includes('inch') ? 25.4 : 1;
const dxf = new DxfParser().parseSync(readFileSync(file, 'latin1'));
const report = JSON.parse(readFileSync(reportFile, 'utf8'));
const faults = [];
if (dxf.header.$ACADVER !== 'AC1009') faults.push(`version ${dxf.header.$ACADVER}`);
const layers = Object.keys(dxf.tables.layer.layers);
for (const e of dxf.entities) if (!layers.includes(e.layer)) faults.push(`${e.type} on layer ${e.layer}`);
const texts = dxf.entities.filter((e) => e.type === 'TEXT').map((e) => e.text);
for (const word of [report.job.number, report.job.fingerprint]) if (!texts.some((t) => t.includes(word))) faults.push(`no text says ${word}`);

// Sheets stand side by side; a border frames each.
const spots = (e) => e.vertices || [];
const frames = dxf.entities.filter((e) => e.layer === 'BORDER' && spots(e).length === 4 && e.shape);
const pieces = [...report.tooling.nests, ...report.tooling.anvils];
if (frames.length !== pieces.length) faults.push(`${frames.length} sheets for ${pieces.length} pieces`);
pieces.slice(0, frames.length).forEach((piece, i) => {
  const frame = frames[i];
  const xs = spots(frame).map((p) => p.x), left = Math.min(...xs), right = Math.max(...xs);
  // The dimensions of the sheet name the overall sizes.
  const said = texts.length && dxf.entities.filter((e) => e.type === 'TEXT' && e.startPoint.x >= left && e.startPoint.x <= right).map((e) => Number(e.text));
  for (const v of piece.size_mm) {
    if (!said.some((s) => Math.abs(s * unit - v) < 0.02 * unit / 2 + 0.001)) faults.push(`${piece.name}: no dimension ${(v / unit).toFixed(3)}`);
  }
  // And the geometry has them: some visible lines lie as far apart.
  const seen = dxf.entities.filter((e) => e.layer === 'VISIBLE').flatMap(spots).filter((p) => p.x >= left && p.x <= right);
  const [x, y] = piece.size_mm;
  // To a few thousandths: chance finds few such pairs.
  const near = (a, b) => Math.abs(a * unit - b) < 0.003;
  const columns = [...new Set(seen.map((p) => p.x.toFixed(5)))].map(Number), rows = [...new Set(seen.map((p) => p.y.toFixed(5)))].map(Number);
  if (!columns.some((a) => columns.some((b) => near(b - a, x)))) faults.push(`${piece.name}: no lines ${x} mm apart`);
  if (!rows.some((a) => rows.some((b) => near(b - a, y)))) faults.push(`${piece.name}: no rows ${y} mm apart`);
});
if (faults.length) { console.log(faults.join('\n')); process.exit(1); }
console.log(`${dxf.entities.length} entities on ${layers.length} layers, ${frames.length} sheets`);
