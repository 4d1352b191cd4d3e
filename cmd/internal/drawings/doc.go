// Package drawings says what stands on the workshop drawing of each nest and anvil:
// where the sections run, what is dimensioned, which features are listed. Every figure is
// read off the features that the body was made from; [SetOf] is the central call.
package drawings
