// Package page lays out printed pages: text set in lines, tables, drawings made
// of paths, pictures, and the flow of such blocks over pages, written as PDF.
//
// A Book collects pages as lists of marks and knows nothing of what they mean.
// Blocks are measured first and drawn later, so the number of pages is known
// before the first byte is written, and nothing is written that would not fit
// on its page. The same calls give the same bytes: no clock, no map order.
//
// Units: mm from the upper left corner of the paper, y down; type sizes in pt.
//
// A page that holds text and paths only can be had as SVG and as dots, too.
//
// gofpdf is used in one file only, pdf.go. The typeface is Liberation Sans 2,
// regular and bold, by way of the module github.com/go-fonts/liberation: SIL Open
// Font License 1.1 (its Go packaging: BSD 3-clause). The licence allows the font
// to be embedded in a document; only the glyphs used are.
package page
