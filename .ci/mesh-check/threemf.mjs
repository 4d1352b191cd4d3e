// 3MF by the core specification: a zip whose relationships name the model, an XML
// part with objects, each a mesh, and the build that places them. What this
// reader does not do (components, extensions that the file requires) it refuses.

import { posix } from "node:path";
import { unzipSync, strFromU8 } from "fflate";
import { SaxesParser } from "saxes";

const core = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02";
const modelType = "http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel";
const relationships = "http://schemas.openxmlformats.org/package/2006/relationships";
const contentTypes = "http://schemas.openxmlformats.org/package/2006/content-types";
const modelContent = "application/vnd.ms-package.3dmanufacturing-3dmodel+xml";
const relationshipContent = "application/vnd.openxmlformats-package.relationships+xml";
const millimetres = { micron: 0.001, millimeter: 1, centimeter: 10, inch: 25.4, foot: 304.8, meter: 1000 };

export function read3MF(bytes) {
  const parts = unzipSync(bytes);
  const part = (name) => {
    if (!parts[name]) throw new Error(`no part ${name} in the package`);
    return strFromU8(parts[name]);
  };
  let target = "";
  walk(part("_rels/.rels"), {
    open(tag) {
      if (tag.uri === relationships && tag.local === "Relationship" && attribute(tag, "Type") === modelType) {
        if (target) throw new Error("two start parts in the package");
        target = posix.normalize(attribute(tag, "Target")).replace(/^\//, "");
      }
    },
  });
  if (!target) throw new Error("the package names no 3D model as its start part");
  const types = part("[Content_Types].xml");
  checkContentType(types, "_rels/.rels", relationshipContent);
  checkContentType(types, target, modelContent);
  return readModel(part(target));
}

function checkContentType(xml, target, want) {
  const ending = target.split(".").pop().toLowerCase();
  let found = "";
  walk(xml, {
    open(tag) {
      if (tag.uri !== contentTypes) return;
      const fits = tag.local === "Default" ? (attribute(tag, "Extension") ?? "").toLowerCase() === ending : attribute(tag, "PartName") === "/" + target;
      if ((tag.local === "Default" || tag.local === "Override") && fits) found = attribute(tag, "ContentType");
    },
  });
  if (found !== want) throw new Error(`the content type of ${target} is "${found}"`);
}

function readModel(xml) {
  const objects = new Map();
  const metadata = {};
  const built = [];
  let unit = "millimeter", object = null, key = "", text = "";
  walk(xml, {
    open(tag, depth, parser) {
      if (depth === 1 && (tag.uri !== core || tag.local !== "model")) throw new Error(`the root is ${tag.name}, not model of the core specification`);
      if (tag.uri !== core) return;
      switch (tag.local) {
        case "model":
          unit = attribute(tag, "unit") ?? unit;
          if (!(unit in millimetres)) throw new Error(`unit "${unit}" is not in the specification`);
          if ((attribute(tag, "requiredextensions") ?? "").trim()) throw new Error(`requires extensions: ${attribute(tag, "requiredextensions")}`);
          break;
        case "metadata":
          key = expanded(attribute(tag, "name"), parser);
          text = "";
          break;
        case "object":
          object = { id: attribute(tag, "id"), name: attribute(tag, "name") ?? "", partNumber: attribute(tag, "partnumber") ?? "", type: attribute(tag, "type") ?? "model", vertices: [], triangles: [], metadata: {} };
          if (objects.has(object.id)) throw new Error(`object id ${object.id} is used twice`);
          objects.set(object.id, object);
          break;
        case "component":
          throw new Error("components are not read here");
        case "vertex":
          for (const axis of "xyz") object.vertices.push(number(tag, axis) * millimetres[unit]);
          break;
        case "triangle":
          for (const corner of ["v1", "v2", "v3"]) object.triangles.push(index(tag, corner));
          break;
        case "item":
          built.push({ id: attribute(tag, "objectid"), transform: transform(attribute(tag, "transform")) });
          break;
      }
    },
    text(t) { if (key) text += t; },
    close(tag) {
      if (tag.uri !== core) return;
      if (tag.local === "metadata") {
        (object ? object.metadata : metadata)[key] = text;
        key = "";
      }
      if (tag.local === "object") object = null;
    },
  });
  const bodies = [];
  for (const { id, transform: m } of built) {
    const o = objects.get(id);
    if (!o) throw new Error(`the build names object ${id}, which is not there`);
    const n = o.vertices.length / 3;
    for (const i of o.triangles) if (i >= n) throw new Error(`object ${id}: a triangle names vertex ${i} of ${n}`);
    bodies.push({
      name: o.name, partNumber: o.partNumber, type: o.type, unit, metadata: { ...metadata, ...o.metadata },
      vertices: place(o.vertices, m, millimetres[unit]), triangles: Uint32Array.from(o.triangles),
    });
    o.built = true;
  }
  for (const o of objects.values()) if (!o.built) throw new Error(`object ${o.id} "${o.name}" is not in the build`);
  if (bodies.length === 0) throw new Error("the build is empty");
  return bodies;
}

// expanded puts the namespace in place of the prefix of a metadata name; a prefix
// that is not declared is against the specification.
function expanded(name, parser) {
  const [prefix, local] = name.includes(":") ? name.split(":", 2) : ["", name];
  if (!prefix) return local;
  const uri = parser.resolve(prefix);
  if (!uri) throw new Error(`the prefix of metadata "${name}" is not declared`);
  return `${uri}:${local}`;
}

// place applies a transform of the specification: 4 rows of 3, row vectors.
function place(v, m, scale) {
  const out = Float64Array.from(v);
  if (!m) return out;
  for (let i = 0; i < v.length; i += 3) {
    for (let k = 0; k < 3; k++) {
      out[i + k] = v[i] * m[k] + v[i + 1] * m[3 + k] + v[i + 2] * m[6 + k] + m[9 + k] * scale;
    }
  }
  return out;
}

function transform(value) {
  if (value === undefined) return null;
  const m = value.trim().split(/\s+/).map(Number);
  if (m.length !== 12 || m.some((x) => !Number.isFinite(x))) throw new Error(`transform "${value}" is not twelve numbers`);
  return m;
}

function number(tag, name) {
  const s = attribute(tag, name);
  if (s === undefined || !/^\s*[-+]?(\d+\.?\d*|\.\d+)([eE][-+]?\d+)?\s*$/.test(s)) throw new Error(`${tag.local} has ${name}="${s}", not a number`);
  return Number(s);
}

function index(tag, name) {
  const s = attribute(tag, name);
  if (s === undefined || !/^\d+$/.test(s)) throw new Error(`${tag.local} has ${name}="${s}", not an index`);
  return Number(s);
}

const attribute = (tag, name) => tag.attributes[name]?.value;

// walk parses XML strictly: what is not well formed, or uses a prefix that is not
// declared, is an error.
function walk(xml, { open, text, close }) {
  let depth = 0;
  const parser = new SaxesParser({ xmlns: true });
  parser.on("error", (e) => { throw e; });
  parser.on("opentag", (tag) => open(tag, ++depth, parser));
  if (text) parser.on("text", text);
  parser.on("closetag", (tag) => { depth--; close?.(tag); });
  parser.write(xml).close();
}
