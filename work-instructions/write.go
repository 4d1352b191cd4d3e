package workinstructions

import (
	"bytes"
	"fmt"
	"io"
	"time"

	"ramnest/export/page"
	"ramnest/export/picture"
)

// Write writes the sheet as a PDF. Whatever is wrong with the sheet comes back
// as force.Fault values joined, and nothing is written then. The same sheet
// gives the same bytes with one version of Go.
func Write(w io.Writer, s Sheet) error {
	if err := join(s.Validate()); err != nil {
		return err
	}
	s, replaced := cleaned(s)
	size := page.A4
	if s.Paper == Letter {
		size = page.Letter
	}
	book := page.New(size, picture.EncodePNG)
	defer book.Wait()
	c := newComposer(book, s)
	if replaced {
		c.sheet.Warnings = append(c.sheet.Warnings, fmt.Sprintf("Characters that the font of this sheet has not got, or that run from right to left, are printed as %c. Read them in the job file.", page.Missing))
	}
	if err := book.Flow(c.frame, c.items()); err != nil {
		return fmt.Errorf("lay out the work instruction: %w", err)
	}
	for i, p := range book.Pages {
		c.frameOf(p, i+1, len(book.Pages))
	}
	var out bytes.Buffer
	err := book.Write(&out, page.Info{
		Title:    "Work instruction " + s.Job + ": " + s.Title,
		Author:   s.Author,
		Subject:  "Pressing printed parts together, revision " + s.Revision,
		Keywords: s.Job + ", " + s.Revision + ", " + s.Fingerprint,
		Creator:  s.Tool, Language: "en", Date: s.Date.UTC().Truncate(time.Second),
	})
	if err != nil {
		return fmt.Errorf("write the work instruction: %w", err)
	}
	_, err = w.Write(out.Bytes())
	return err
}
