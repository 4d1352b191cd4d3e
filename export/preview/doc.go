// Package preview writes one HTML file that shows a job on any computer: what it is,
// the force over the stroke, the methods weighed, and a view of nest, parts and anvil
// in three dimensions that can be turned, cut, taken apart and moved along the stroke.
//
// Its central call is [Write]. The file needs no network and no server, and its own
// policy forbids both. Bodies are stored with positions of 16 bits and drawn by a small
// renderer with a depth buffer on a plain 2D canvas, so that no graphics hardware is
// asked for. Everything works by keyboard, and what the picture shows is also said in
// words. Names come from strangers: they pass html/template and JSON, never a string
// that is put together.
//
// Lengths mm, forces N in; inches and pounds-force are made here for the eye. The
// package computes no force and chooses nothing. The same document gives the same bytes.
package preview
