// Package pictures composes the views of a press step for the work instruction:
// which bodies stand where, what moves, what is cut. It draws nothing itself; that
// is the work of export/picture.
package pictures
