// Package fault is what every room says of a mistake that a person made in a file: a value
// with its place, told once, at the edge, where file and line are known.
package fault
