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
	c := newComposer(book, s, replaced)
	if err := book.Flow(c.frame, c.items()); err != nil {
		return fmt.Errorf("lay out the work instruction: %w", err)
	}
	for i, p := range book.Pages {
		c.frameOf(p, i+1, len(book.Pages))
	}
	var out bytes.Buffer
	err := book.Write(&out, page.Info{
		Title:    c.fig.say("doc.title", s.Job, s.Title),
		Author:   s.Author,
		Subject:  c.fig.say("doc.subject", s.Revision),
		Keywords: s.Job + ", " + s.Revision + ", " + s.Fingerprint,
		Creator:  s.Tool, Language: s.Language.Code(), Date: s.Date.UTC().Truncate(time.Second),
	})
	if err != nil {
		return fmt.Errorf("write the work instruction: %w", err)
	}
	_, err = w.Write(out.Bytes())
	return err
}
