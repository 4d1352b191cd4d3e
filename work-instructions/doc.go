// Package workinstructions writes the sheet that a person at a bench follows to
// press two parts together: what is needed, what can hurt, how to set up, one
// action after the other with its picture, what to expect and when to stop, what
// is good and what is a reject, and where to write it down.
//
// It is for the operator, and for the engineer who signs. The central type is
// Sheet, the central call Write, which gives a PDF: A4 or Letter, black on
// white and one grey, text that can be searched, an embedded font. The same
// Sheet gives the same bytes.
//
// It computes no forces and no geometry: every number printed is one that was
// given. What it derives is text: cautions from Facts, protective equipment,
// the wording of actions and of the limits of acceptance. Values come in mm, N,
// mJ and kg; figures are printed in Sheet.Units.
//
// There is no sheet for method.None, nor for a method that fails without a
// stated reason to use it all the same.
//
// Texts are in English. Scripts that run from right to left, and characters that
// the font has not got, are printed as an empty box, and the sheet says so.
// Pictograms are own drawings in the meaning of ISO 7010, not the standard's.
// The font is Liberation Sans 2, SIL Open Font License 1.1, see export/page.
package workinstructions
