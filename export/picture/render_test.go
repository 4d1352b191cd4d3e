package picture_test

import (
	"bytes"
	"image"
	"math"
	"testing"

	"ramnest/export/picture"
	"ramnest/fixture/mesh"
)

// block is a box from 0 to the size given.
func block(x, y, z float64) picture.Body {
	var b picture.Body
	for i := range 8 {
		b.Vertices = append(b.Vertices, [3]float64{x * float64(i&1), y * float64(i>>1&1), z * float64(i>>2)})
	}
	b.Triangles = [][3]int32{
		{0, 2, 1}, {1, 2, 3}, {4, 5, 6}, {5, 7, 6}, {0, 1, 4}, {1, 5, 4},
		{2, 6, 3}, {3, 6, 7}, {0, 4, 2}, {2, 4, 6}, {1, 3, 5}, {3, 7, 5},
	}
	return b
}

// inked counts the pixels that are not white.
func inked(img *image.Paletted) int {
	n := 0
	for y := img.Rect.Min.Y; y < img.Rect.Max.Y; y++ {
		for x := img.Rect.Min.X; x < img.Rect.Max.X; x++ {
			if r, g, b, _ := img.At(x, y).RGBA(); r+g+b < 3*0xffff {
				n++
			}
		}
	}
	return n
}

// A block of 60 by 20 seen along z at 640 by 480 px with no border but the
// default 4 %: it fills the width less the border at both sides, and its height
// follows from the proportion.
func TestBlockFillsTheFrame(t *testing.T) {
	b := block(60, 20, 30)
	b.Outline = picture.None
	img, err := picture.Render(picture.Scene{Bodies: []picture.Body{b}, View: picture.View{Elevation: math.Pi / 2}, Width: 640, Height: 480})
	if err != nil {
		t.Fatal(err)
	}
	wide := 640 - 2*0.04*480
	if got, want := float64(inked(img)), wide*wide/3; math.Abs(got/want-1) > 0.02 {
		t.Errorf("%.0f pixels drawn; want %.0f", got, want)
	}
}

// A section through the middle takes half of the block away.
func TestSectionTakesTheNearHalf(t *testing.T) {
	s := picture.Scene{Bodies: []picture.Body{block(60, 20, 30)}, View: picture.View{Elevation: math.Pi / 2, Fit: [][3]float64{{0, 0, 0}, {60, 20, 30}}}, Width: 640, Height: 480}
	whole, err := picture.Render(s)
	if err != nil {
		t.Fatal(err)
	}
	s.Section = &picture.Section{Point: [3]float64{30, 0, 0}, Normal: [3]float64{1, 0, 0}}
	cut, err := picture.Render(s)
	if err != nil {
		t.Fatal(err)
	}
	if r := float64(inked(cut)) / float64(inked(whole)); r < 0.48 || r > 0.53 {
		t.Errorf("the section leaves %.2f of the picture; want half", r)
	}
}

func TestSameSceneSameBytes(t *testing.T) {
	var files [2]bytes.Buffer
	for i := range files {
		img, err := picture.Render(gearScene(5000))
		if err != nil {
			t.Fatal(err)
		}
		if err := picture.EncodePNG(&files[i], img); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(files[0].Bytes(), files[1].Bytes()) {
		t.Error("the same scene gives two different files")
	}
}

func TestSceneThatCannotBeDrawnIsRefused(t *testing.T) {
	bad := block(1, 1, 1)
	bad.Triangles = append(bad.Triangles, [3]int32{0, 1, 99})
	for name, s := range map[string]picture.Scene{
		"corner out of range": {Bodies: []picture.Body{bad}, Width: 64, Height: 64},
		"no width":            {Bodies: []picture.Body{block(1, 1, 1)}, Height: 64},
		"not a number":        {Bodies: []picture.Body{{Mesh: mesh.Mesh{Vertices: [][3]float64{{math.NaN(), 0, 0}, {1, 0, 0}, {0, 1, 0}}, Triangles: [][3]int32{{0, 1, 2}}}}}, Width: 64, Height: 64},
	} {
		if img, err := picture.Render(s); err == nil || img != nil {
			t.Errorf("%s: drawn, %v; want a refusal", name, err)
		}
	}
}
