// Package quote prices the tooling of a job, a nest and its anvils, and says after
// how many assemblies it has paid for itself.
//
// The central types are [Card], the shop's rates, and [Line], one line of a quote.
// Money is in the card's own currency and never converted. [InventedCard] holds
// invented round numbers, so that a quote can be shown before the shop has written its
// own; every line made from it says so. Lengths mm, volumes mm3, times s or h as named.
// It does not nest parts in a build, only counts boxes in rows, and knows no tax.
package quote
