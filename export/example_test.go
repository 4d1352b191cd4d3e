package export_test

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"ramnest/export"
	"ramnest/fixture/mesh"
)

// A tetrahedron of 10 mm, as a binary STL.
func ExampleWriteSTL() {
	vertices := [][3]float64{{0, 0, 0}, {10, 0, 0}, {0, 10, 0}, {0, 0, 10}}
	triangles := [][3]int32{{0, 2, 1}, {0, 1, 3}, {1, 2, 3}, {2, 0, 3}}
	var b bytes.Buffer
	if err := export.WriteSTL(&b, "tetrahedron", &mesh.Mesh{Vertices: vertices, Triangles: triangles}); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(b.Len(), "bytes")
	// Output: 284 bytes
}

// Two files, whole or not at all.
func ExampleWriteFiles() {
	dir, err := os.MkdirTemp("", "out")
	if err != nil {
		fmt.Println(err)
		return
	}
	defer os.RemoveAll(dir)
	file := func(name, text string) export.File {
		return export.File{Name: name, Write: func(w io.Writer) error {
			_, err := io.WriteString(w, text)
			return err
		}}
	}
	fmt.Println(export.WriteFiles(filepath.Join(dir, "a"), []export.File{file("nest.stl", "..."), file("anvil.stl", "...")}))
	fmt.Println(export.WriteFiles(filepath.Join(dir, "b"), []export.File{file("nest.stl", "..."), file("../anvil.stl", "...")}))
	_, err = os.Stat(filepath.Join(dir, "b"))
	fmt.Println(os.IsNotExist(err))
	// Output:
	// <nil>
	// output file "../anvil.stl": must be a plain file name, without / or \
	// true
}
