package picture_test

import (
	"bytes"
	"fmt"
	"math"
	"testing"

	"ramnest/export/picture"
	"ramnest/fixture/mesh"
)

// gear is a ring with a toothed rim: flat faces, creases, curved walls and a
// bore, with about the given number of triangles.
func gear(triangles int) (vertices [][3]float64, faces [][3]int32) {
	const rings = 24
	around := max(triangles/(2*2*rings), 8)
	profile := func(r int) (radius, z float64) {
		turn := 2 * math.Pi * float64(r) / rings
		return 40 + 14*math.Cos(turn), 9 * math.Sin(turn)
	}
	for i := range 2 * around {
		a := math.Pi * float64(i) / float64(around)
		for r := range rings {
			radius, z := profile(r)
			if i/8%2 == 1 {
				radius += max(radius-48, 0)
			}
			vertices = append(vertices, [3]float64{radius * math.Cos(a), radius * math.Sin(a), z})
		}
	}
	at := func(i, r int) int32 { return int32(i%(2*around)*rings + r%rings) }
	for i := range 2 * around {
		for r := range rings {
			a, b, c, d := at(i, r), at(i+1, r), at(i+1, r+1), at(i, r+1)
			faces = append(faces, [3]int32{a, b, c}, [3]int32{a, c, d})
		}
	}
	return vertices, faces
}

func gearScene(triangles int) picture.Scene {
	v, t := gear(triangles)
	return picture.Scene{
		Bodies: []picture.Body{{Mesh: mesh.Mesh{Vertices: v, Triangles: t}}},
		View:   picture.View{Azimuth: -0.6, Elevation: 0.6},
		Width:  900, Height: 700,
	}
}

func BenchmarkRender(b *testing.B) {
	for _, n := range []int{5_000, 50_000, 150_000} {
		s := gearScene(n)
		b.Run(fmt.Sprintf("triangles=%d", len(s.Bodies[0].Triangles)), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := picture.Render(s); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkEncodePNG(b *testing.B) {
	img, err := picture.Render(gearScene(50_000))
	if err != nil {
		b.Fatal(err)
	}
	var out bytes.Buffer
	for b.Loop() {
		out.Reset()
		if err := picture.EncodePNG(&out, img); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(out.Len()), "bytes")
}
