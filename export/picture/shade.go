package picture

import (
	"image/color"
	"math"

	"ramnest/fixture/mesh"
)

// A shade is what the canvas stores of a colour: the lower seven bits are
// darkness from white to black, so that a fresh canvas is blank paper, the top
// bit says that it is of the accent colour. Both rows print equally dark, so
// mixing shades means mixing darkness.
type shade uint8

const (
	white    = 127
	inAccent = shade(0x80)
	darkness = shade(0x7f)
)

// ink is the lightness of lines: not quite black, as printed line work is.
const ink = 10

// shadeOf makes the shade of a lightness from 0 to 127.
func shadeOf(light float64, tone Tone) shade {
	s := white - shade(math.Round(light))
	if tone == Accent {
		s |= inAccent
	}
	return s
}

// ochre is the accent at half lightness.
var ochre = [3]float64{184, 116, 32}

// palette gives the 256 colours by lightness, greys first. The accent runs from black over
// ochre to white so that each entry has the luma (ITU-R BT.601, from memory) of
// the grey beside it.
func palette() color.Palette {
	p := make(color.Palette, 256)
	luma := (0.299*ochre[0] + 0.587*ochre[1] + 0.114*ochre[2]) / 255
	for i := range 128 {
		f := float64(i) / white
		grey := uint8(math.Round(255 * f))
		p[i] = color.RGBA{grey, grey, grey, 255}
		var c [3]uint8
		for k, o := range ochre {
			v := o * f / luma
			if f > luma {
				v = o + (255-o)*(f-luma)/(1-luma)
			}
			c[k] = uint8(math.Round(v))
		}
		p[128+i] = color.RGBA{c[0], c[1], c[2], 255}
	}
	return p
}

// ranges gives for each tone the lightness of a face in full shade and in full
// light.
var ranges = [tones][2]float64{
	Light:  {84, 125},
	Medium: {64, 104},
	Dark:   {42, 80},
	Accent: {66, 110},
}

// The two lights, in the axes of the picture: the main one over the viewer's
// left shoulder, a weak one from the right that keeps shaded faces apart.
var (
	mainLight = unitVector([3]float64{-0.42, 0.66, 0.62})
	sideLight = unitVector([3]float64{0.86, 0.18, 0.48})
)

// lit gives the shade of a face whose unit normal, in the axes of the picture,
// points to the viewer's side.
func lit(tone Tone, normal [3]float64) shade {
	light := min(0.84*max(mesh.Dot(normal, mainLight), 0)+0.28*max(mesh.Dot(normal, sideLight), 0), 1)
	r := ranges[tone]
	return shadeOf(r[0]+float64((r[1]-r[0])*light), tone)
}

func unitVector(v [3]float64) [3]float64 { return mesh.Scale(v, 1/mesh.Length(v)) }
