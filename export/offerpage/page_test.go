package offerpage_test

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"ramnest/export/offerpage"
	"ramnest/export/page/pagetest"
	"ramnest/export/quote"
)

// order is an offer of so many items.
func order(t *testing.T, card quote.RateCard, n int) quote.Offer {
	t.Helper()
	var items []quote.Item
	for i := range n {
		items = append(items, quote.Item{Name: fmt.Sprintf("anvil %d", i+1), Process: "PBF", Material: "PA12", Volume: 20000, Box: [3]float64{80, 60, 20}, Orientation: "z of the file up", Count: 1})
	}
	o, err := card.Offer(items)
	if err != nil {
		t.Fatal(err)
	}
	return o
}

func made(t *testing.T, p offerpage.Page) (file []byte, text string) {
	t.Helper()
	var out bytes.Buffer
	if err := offerpage.Write(&out, p); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(t.ArtifactDir(), "offer.pdf"), out.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	pages := pagetest.Texts(t, out.Bytes())
	if len(pages) != 1 {
		t.Fatalf("%d pages", len(pages))
	}
	pagetest.Validate(t, out.Bytes())
	return out.Bytes(), pages[0]
}

func sample(o quote.Offer) offerpage.Page {
	return offerpage.Page{Job: "FWL-1042", Title: "Rim cap", Revision: "B", Date: "2026-11-25", Author: "Fjell workshop", Tool: "ramnest 0.1.0", Offer: o, Open: "the step is too hard for a hand; more", Facts: []string{"For a press."}}
}

func TestOnePageWhateverTheOrder(t *testing.T) {
	t.Parallel()
	for _, n := range []int{1, 2, 12, 40} {
		for _, letter := range []bool{false, true} {
			p := sample(order(t, quote.InventedRateCard(), n))
			p.Letter, p.Units.Inch = letter, letter
			file, text := made(t, p)
			for _, want := range []string{"Offer", "FWL-1042 B: Rim cap", "anvil 1", fmt.Sprintf("anvil %d", n), fmt.Sprintf("%.2f units", p.Offer.Total), "Not known: the step is too hard for a hand.", "For a press."} {
				if !strings.Contains(text, want) {
					t.Errorf("%d items: %q is not on the page:\n%s", n, want, text)
				}
			}
			if strings.Count(text, "INVENTED") != 3 { // band, below the total, foot
				t.Errorf("%d items: INVENTED stands %d times", n, strings.Count(text, "INVENTED"))
			}
			if again, _ := made(t, p); !bytes.Equal(file, again) {
				t.Error("other bytes the second time")
			}
		}
	}
}

// The shop's own rates stay with the shop.
func TestWhatACustomerDoesNotSee(t *testing.T) {
	t.Parallel()
	card := quote.InventedRateCard()
	card.Invented, card.Name, card.Currency = false, "card of the shop", "kr"
	o := order(t, card, 2)
	p := sample(o)
	p.Payback = &quote.Payback{Pays: true, Text: "paid for after 100 assemblies"}
	_, text := made(t, p)
	if strings.Contains(text, "INVENTED") || !strings.Contains(text, "Paid for after 100 assemblies.") || !strings.Contains(text, " kr") {
		t.Error(text)
	}
	for _, secret := range []float64{o.Margin, o.Items[0].Machine, o.Items[0].Stuff, o.Items[0].Each} {
		if strings.Contains(text, fmt.Sprintf(" %.2f", secret)) {
			t.Errorf("%.2f is on the page:\n%s", secret, text)
		}
	}
}

func TestRefused(t *testing.T) {
	t.Parallel()
	good := sample(order(t, quote.InventedRateCard(), 1))
	for _, c := range []struct {
		want   string
		change func(p *offerpage.Page)
	}{
		{"offer: has no job", func(p *offerpage.Page) { p.Job = " " }},
		{"offer: has no job", func(p *offerpage.Page) { p.Offer = quote.Offer{} }},
		{"date: soon; is no date", func(p *offerpage.Page) { p.Date = "soon" }},
		{"do not stand on one page", func(p *offerpage.Page) { p.Facts = []string{strings.Repeat("long ", 5000)} }},
	} {
		p := good
		c.change(&p)
		var out bytes.Buffer
		if err := offerpage.Write(&out, p); err == nil || !strings.Contains(err.Error(), c.want) || out.Len() > 0 {
			t.Errorf("want %q, got %v and %d bytes", c.want, err, out.Len())
		}
	}
}
