// Package chart draws the force over the stroke as SVG and PNG: the nominal curve, the
// band that tolerances make of it, and the design force. It computes nothing: it draws
// the points it is given. The library gonum/plot is used here only.
package chart
