// Shapes and files on which the judges are tried.

import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after } from "node:test";
import { strToU8, zipSync } from "fflate";

export const folder = mkdtempSync(join(tmpdir(), "mesh-check-"));
after(() => rmSync(folder, { recursive: true }));

// Shapes are lists of triangles, each three corners.

export function box([x, y, z], [w, d, h]) {
  const p = (i) => [x + (i & 1 ? w : 0), y + (i & 2 ? d : 0), z + (i & 4 ? h : 0)];
  const quads = [[0, 2, 3, 1], [4, 5, 7, 6], [0, 1, 5, 4], [2, 6, 7, 3], [0, 4, 6, 2], [1, 3, 7, 5]];
  return quads.flatMap(([a, b, c, d]) => [[p(a), p(b), p(c)], [p(a), p(c), p(d)]]);
}

// frame is a square ring, outside 4, opening 2, height 1: genus 1, volume 12.
export function frame() {
  const ring = (r) => [[-r, -r], [r, -r], [r, r], [-r, r]];
  const out = [], outer = ring(2), inner = ring(1);
  const quad = (a, b, c, d) => out.push([a, b, c], [a, c, d]);
  for (let i = 0; i < 4; i++) {
    const k = (i + 1) % 4;
    const at = (r, j, z) => [...r[j], z];
    quad(at(outer, i, 0), at(outer, k, 0), at(outer, k, 1), at(outer, i, 1));
    quad(at(inner, k, 0), at(inner, i, 0), at(inner, i, 1), at(inner, k, 1));
    quad(at(outer, i, 1), at(outer, k, 1), at(inner, k, 1), at(inner, i, 1));
    quad(at(outer, k, 0), at(outer, i, 0), at(inner, i, 0), at(inner, k, 0));
  }
  return out;
}

export const cube = () => box([0, 0, 0], [10, 10, 10]);
export const flip = ([a, b, c]) => [a, c, b];

export function stl(name, shape, bytesOff = 0) {
  const b = new DataView(new ArrayBuffer(84 + 50 * shape.length));
  b.setUint32(80, shape.length, true);
  shape.forEach((t, i) => t.flat().forEach((x, k) => b.setFloat32(84 + 50 * i + 12 + 4 * k, x, true)));
  const path = join(folder, name + ".stl");
  writeFileSync(path, new Uint8Array(b.buffer, 0, b.byteLength - bytesOff));
  return path;
}

// threemf writes a package of one box with shared vertices; change edits its parts.
export function threemf(name, change = (parts) => parts) {
  const corners = [...new Set(cube().flat().map(String))];
  const vertices = corners.map((c) => c.split(",")).map(([x, y, z]) => `<vertex x="${x}" y="${y}" z="${z}"/>`).join("");
  const triangles = cube().map((t) => t.map((c) => corners.indexOf(String(c)))).map(([a, b, c]) => `<triangle v1="${a}" v2="${b}" v3="${c}"/>`).join("");
  const parts = change({
    "[Content_Types].xml": `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>`,
    "_rels/.rels": `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Target="/3D/box.model" Id="r" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>`,
    "3D/box.model": `<model unit="millimeter" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02" xmlns:j="urn:j"><metadata name="j:number">A &amp; 1</metadata><resources><object id="7" name="box &lt;1&gt;"><mesh><vertices>${vertices}</vertices><triangles>${triangles}</triangles></mesh></object></resources><build><item objectid="7"/></build></model>`,
  });
  const path = join(folder, name + ".3mf");
  writeFileSync(path, zipSync(Object.fromEntries(Object.entries(parts).map(([k, v]) => [k, strToU8(v)]))));
  return path;
}

// edit replaces text in one part of a package, which must be there.
export const edit = (part, from, to) => (parts) => {
  if (!parts[part].includes(from)) throw new Error(`no ${from} in ${part}`);
  return { ...parts, [part]: parts[part].replace(from, to) };
};
export const model = "3D/box.model";
