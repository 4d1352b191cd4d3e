// Package guide is the reference that stands in the program: a page on every warning
// and a page on every topic. It is for cmd, which prints it. What a package can say of
// itself (keys of the job file, units, materials) is put in from there, so that the
// text cannot fall behind; what people must be told stands in text files beside this
// one.
package guide
