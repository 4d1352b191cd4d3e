// Package quote prices what is printed, nest, anvils and coupons, and says after how
// many assemblies it has paid for itself.
//
// The central type is [RateCard], the shop's rates by process: [RateCard.Offer] prices
// an order and its multiples, [RateCard.Payback] weighs it against assembly by hand,
// [RateCard.LadderCost] one coupon against five. Money is in the card's own currency
// and never converted. [InventedRateCard] holds invented round numbers, so that a quote
// can be shown before the shop has written its own; every line made from it says so.
// Lengths mm, volumes mm3, times s or h as named. It does not nest parts in a build,
// only stands boxes in rows, and knows no tax.
package quote
