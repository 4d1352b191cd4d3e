// Binary STL: 80 bytes of header, a count, 50 bytes a triangle (normal, three
// corners, two bytes more), little endian, no unit. Written from the format's
// common description.

export function readSTL(bytes) {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.byteLength < 84) throw new Error(`${bytes.byteLength} bytes: too short for a binary STL`);
  const count = view.getUint32(80, true);
  if (bytes.byteLength !== 84 + 50 * count) {
    throw new Error(`${count} triangles need ${84 + 50 * count} bytes, the file has ${bytes.byteLength}: not a binary STL`);
  }
  const header = new TextDecoder("latin1").decode(bytes.subarray(0, 80)).trimEnd();
  const vertices = new Float64Array(9 * count);
  for (let t = 0; t < count; t++) {
    for (let k = 0; k < 9; k++) vertices[9 * t + k] = view.getFloat32(84 + 50 * t + 12 + 4 * k, true);
  }
  const triangles = Uint32Array.from({ length: 3 * count }, (_, i) => i);
  return [{ name: header, unit: "none in the format, taken as mm", vertices, triangles }];
}
