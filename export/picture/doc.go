// Package picture draws bodies as a technical illustrator would: black on
// white, few greys, one accent, crisp edges, hidden lines left out, cuts
// hatched, movement shown by arrows. It serves the work instruction and the
// README.
//
// The central type is [Scene]: triangle bodies in mm, arrows, lines, an
// optional cutting plane and a direction of view. [Render] gives an indexed
// image of at most 256 colours, [EncodePNG] a small file, and [Camera] the
// place of a point in the picture, so that the caller can set text there; text
// itself is not drawn here.
//
// The projection is orthographic. One goroutine, integer coverage and depth:
// the same scene gives the same pixels. It does not light by shadows and does
// not find the lines where bodies run through each other.
package picture
