// Package drawing draws workshop drawings of bodies, for the tool crib and for whoever
// machines them instead of printing: for each body one sheet with a plan view and two
// sections to scale, dimensions, a table of round and level features, and a title block.
//
// Its central type is [Set]; [Set.Write] gives PDF, SVG or DXF (R12). Lines come from the
// mesh itself: sharp edges and outlines, what lies behind something taken out exactly,
// segment against triangle. Dimensions are given as pairs of points on the body, and are
// the distance between them. Kinds of line and hatching are those of ISO 128, scales
// those of ISO 5455, the projection is stated by its symbol (ISO 5456-2); all from memory.
//
// Lengths mm; inches are made here for the eye. The package knows no nests and no anvils.
// The same set gives the same bytes.
package drawing
