// Package offerpage sets an offer on one page that can go to the customer: what is
// made, what it costs, prices by quantity, and when it has paid for itself.
//
// The central type is [Page]. What the shop keeps to itself, machine rates, material
// cost and margin, is not on it: the lines hold everything. It computes no price; see
// package quote. Lengths come in mm.
package offerpage
