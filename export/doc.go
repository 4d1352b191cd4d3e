// Package export turns finished results into files: meshes into binary STL and
// 3MF, plain structs into report JSON, and a set of files into an output folder
// whole or not at all.
//
// It is for cmd, which holds the results, and it computes none of them: a mesh
// comes in as vertices in mm and triangles counter-clockwise seen from outside,
// and leaves as bytes. The central types are [Package] for a 3MF and [File] for
// an output folder. The same input gives the same bytes: no clock, no map
// order, coordinates rounded once to the precision that readers keep.
//
// It does not read meshes, does not repair them, and does not know parts,
// nests or forces. Pictures are made by the package picture below it.
package export
