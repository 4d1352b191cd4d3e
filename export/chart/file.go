package chart

import (
	"fmt"
	"image/png"
	"io"

	"ramnest/export/page"
)

// size of a drawing in a file of its own [mm], and its dots.
const (
	fileWidth, fileHeight = 160.0, 100.0
	titleHeight           = 9.0
	dotsToTheMM           = 8.0
)

// Formats are those of a file.
func Formats() []string { return []string{"svg", "png"} }

// Write writes a drawing with a title as "svg" or "png".
func Write(w io.Writer, title string, f Force, format string) error {
	p, _, err := Page(title, f)
	if err != nil {
		return err
	}
	switch format {
	case "svg":
		_, err = io.WriteString(w, p.SVG(page.SVG{Title: title, Text: f.Words.Push + "; " + f.Words.Travel}))
		return err
	case "png":
		img, err := p.Image(dotsToTheMM)
		if err != nil {
			return err
		}
		return png.Encode(w, img)
	}
	return fmt.Errorf("%q is no format of a chart (svg or png)", format)
}

// Page draws on a page of its own, with a title; without one if that is empty.
func Page(title string, f Force) (*page.Page, Plot, error) {
	size := page.Size{Width: fileWidth, Height: fileHeight}
	book := page.New(size, nil)
	defer book.Wait()
	p := book.Sheet(size, "")
	head := 1.0
	if title != "" {
		p.TextAt(left, 5.5, page.Font{Face: page.Bold, Size: 9}, page.Start, title)
		head = titleHeight
	}
	at, err := f.Draw(p, 1, head, fileWidth-2, fileHeight-head-1)
	return p, at, err
}
