// Package chart draws the force over the stroke: one drawing for the sheet, the preview
// and the files of ramnest force, on the marks of a page. It knows no language and no unit
// but those that it is given.
package chart
