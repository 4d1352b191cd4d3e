// Package stepmesh turns a STEP file (ISO 10303-21) into triangles by gmsh, a free mesher
// with a CAD kernel inside, if it is installed. It works in a folder of its own that goes
// away, within bounds of time, memory and size, and says which version meshed how finely.
package stepmesh
