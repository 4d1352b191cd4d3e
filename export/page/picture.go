package page

import (
	"bytes"
	"errors"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"io"
	"reflect"
	"slices"
)

// A Picture is an image taken into a book.
type Picture struct {
	id   int // from 1; 0: none
	w, h int // [px]
}

// None tells whether there is no picture.
func (p Picture) None() bool { return p.id == 0 }

// fit is the largest size with the picture's proportions in a room [mm].
func (p Picture) fit(w, h float64) (dw, dh float64) {
	if p.None() {
		return 0, 0
	}
	s := min(w/float64(p.w), h/float64(p.h))
	return s * float64(p.w), s * float64(p.h)
}

// Blank tells whether there is nothing to show: no image, a nil pointer in the
// interface, or no pixel.
func Blank(img image.Image) bool {
	if img == nil {
		return true
	}
	if v := reflect.ValueOf(img); v.Kind() == reflect.Pointer && v.IsNil() {
		return true
	}
	return img.Bounds().Empty()
}

// A held image is one taken into a book; its file is made in the background.
type held struct {
	image image.Image
	Picture
	file []byte
	err  error
}

// An Encoder makes a file of an indexed image.
type Encoder func(w io.Writer, img *image.Paletted) error

// Picture takes an image into the book; the same pointer twice is stored once.
func (b *Book) Picture(img image.Image) Picture {
	if Blank(img) {
		return Picture{}
	}
	pointer := func(v image.Image) bool { return reflect.ValueOf(v).Kind() == reflect.Pointer }
	for _, h := range b.images {
		if pointer(img) && pointer(h.image) && h.image == img {
			return h.Picture
		}
	}
	// The writer orders images by their width alone and leaves equal ones in
	// the order of a map: no two may be equally wide. The columns added are white.
	w := img.Bounds().Dx()
	for b.widths[w] {
		w++
	}
	b.widths[w] = true
	h := &held{image: img, Picture: Picture{len(b.images) + 1, w, img.Bounds().Dy()}}
	b.images = append(b.images, h)
	b.encoding.Go(func() {
		b.slots <- struct{}{}
		defer func() { <-b.slots }()
		h.file, h.err = encode(h.image, h.w, b.paletted)
	})
	return h.Picture
}

// Wait waits until nothing is done in the background any more.
func (b *Book) Wait() { b.encoding.Wait() }

// ErrImage is returned for an indexed image that does not hold what it says.
var ErrImage = errors.New("an indexed image has a pixel without a colour")

func encode(img image.Image, width int, paletted Encoder) ([]byte, error) {
	var out bytes.Buffer
	if p, ok := img.(*image.Paletted); ok {
		if !Sound(p) {
			return nil, ErrImage
		}
		if flat := onWhite(p, width); flat != nil {
			err := paletted(&out, flat)
			return out.Bytes(), err
		}
	}
	r := img.Bounds()
	flat := image.NewRGBA(image.Rect(0, 0, width, r.Dy()))
	draw.Draw(flat, flat.Rect, image.White, image.Point{}, draw.Src)
	draw.Draw(flat, image.Rect(0, 0, r.Dx(), r.Dy()), img, r.Min, draw.Over)
	err := png.Encode(&out, flat)
	return out.Bytes(), err
}

// mostPixels is the longest side of a picture [px].
const mostPixels = 8192

// Sound tells whether an image is not too large and, where it is indexed, every
// pixel is there and has a colour.
func Sound(img image.Image) bool {
	if r := img.Bounds(); r.Dx() > mostPixels || r.Dy() > mostPixels {
		return false
	}
	p, ok := img.(*image.Paletted)
	if !ok {
		return true
	}
	w, h := p.Rect.Dx(), p.Rect.Dy()
	if p.Stride < w || len(p.Pix) < (h-1)*p.Stride+w || slices.Contains(p.Palette, nil) {
		return false
	}
	if len(p.Palette) > 255 {
		return true
	}
	for y := range h {
		if int(slices.Max(p.Pix[y*p.Stride:][:w])) >= len(p.Palette) {
			return false
		}
	}
	return true
}

// onWhite copies an indexed image to a wider one with white to its right and
// under whatever is transparent. It gives nil if there is no white and no room
// in the palette for it.
func onWhite(p *image.Paletted, width int) *image.Paletted {
	white := color.RGBA{255, 255, 255, 255}
	from := p.Palette[:min(len(p.Palette), 256)]
	pal := make(color.Palette, len(from), len(from)+1)
	index := -1
	for i, c := range from {
		r, g, b, a := c.RGBA()
		rest := 0xffff - a
		rgb := color.RGBA{uint8((r + rest) >> 8), uint8((g + rest) >> 8), uint8((b + rest) >> 8), 255}
		if pal[i] = rgb; rgb == white && index < 0 {
			index = i
		}
	}
	w, h := p.Rect.Dx(), p.Rect.Dy()
	if index < 0 && width > w {
		if len(pal) == 256 {
			return nil
		}
		index, pal = len(pal), append(pal, white)
	}
	flat := image.NewPaletted(image.Rect(0, 0, width, h), pal)
	for y := range h {
		to := flat.Pix[y*flat.Stride:][:width]
		copy(to, p.Pix[y*p.Stride:][:w])
		for x := w; x < width; x++ {
			to[x] = uint8(index)
		}
	}
	return flat
}
