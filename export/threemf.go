package export

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"ramnest/fixture/mesh"
)

// A Package is what one 3MF file holds.
type Package struct {
	Objects   []Object
	Metadata  []Entry // in the order written; Title, Designer, Description ... or names of our own
	Thumbnail []byte  // PNG shown by file managers; none if empty
}

// An Object is one body to print, one build item in the file.
type Object struct {
	Name       string // shown by slicers
	PartNumber string // optional
	mesh.Mesh
	Metadata []Entry
	Place    [3]float64 // where the object's origin is put in the build [mm]
}

// An Entry is one line of metadata. A name that the core specification does
// not define is put into the tool's own namespace, as the specification asks;
// such a name must start with a letter and hold only letters, digits, and the
// signs - _ and full stop.
type Entry struct {
	Name, Value string
}

// Names of model metadata without a namespace: 3MF Core Specification 1.3,
// table 3-1 (read).
var wellKnown = []string{
	"Title", "Designer", "Description", "Copyright", "LicenseTerms",
	"Rating", "CreationDate", "ModificationDate", "Application",
}

const (
	coreNamespace = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02"
	jobNamespace  = "urn:ramnest:job"
)

// Write3MF writes a package by the 3MF core specification, in millimetres and
// without extensions. Coordinates are written as the shortest decimals that
// give the same float32 back, so that the 3MF and the STL of one mesh are the
// same solid.
//
// The same package gives the same bytes: parts in a fixed order and with a
// fixed time. A mesh that cannot be written is a [*MeshError], and nothing has
// been written then.
func Write3MF(w io.Writer, p Package) error {
	model, err := modelXML(p)
	if err != nil {
		return err
	}
	parts := []part{{"[Content_Types].xml", contentTypes(p)}, {"_rels/.rels", relationships(p)}, {"3D/3dmodel.model", model}}
	if len(p.Thumbnail) > 0 {
		parts = append(parts, part{"Metadata/thumbnail.png", p.Thumbnail})
	}
	return writeZip(w, parts)
}

func contentTypes(p Package) []byte {
	var b bytes.Buffer
	b.WriteString(xml.Header + `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">` +
		`<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>` +
		`<Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/>`)
	if len(p.Thumbnail) > 0 {
		b.WriteString(`<Default Extension="png" ContentType="image/png"/>`)
	}
	b.WriteString("</Types>\n")
	return b.Bytes()
}

func relationships(p Package) []byte {
	var b bytes.Buffer
	b.WriteString(xml.Header + `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">` +
		`<Relationship Target="/3D/3dmodel.model" Id="rel0" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/>`)
	if len(p.Thumbnail) > 0 {
		b.WriteString(`<Relationship Target="/Metadata/thumbnail.png" Id="rel1" Type="http://schemas.openxmlformats.org/package/2006/relationships/metadata/thumbnail"/>`)
	}
	b.WriteString("</Relationships>\n")
	return b.Bytes()
}

func modelXML(p Package) ([]byte, error) {
	if len(p.Objects) == 0 {
		return nil, &MeshError{Object: "3MF package", Triangle: -1, Problem: "has no objects"}
	}
	size := 0
	for _, o := range p.Objects {
		size += 40*len(o.Vertices) + 40*len(o.Triangles)
	}
	b := make([]byte, 0, size+4096)
	b = append(b, xml.Header...)
	b = append(b, `<model unit="millimeter" xml:lang="en-US" xmlns="`+coreNamespace+`" xmlns:job="`+jobNamespace+`">`+"\n"...)
	b, err := appendMetadata(b, " ", p.Metadata)
	if err != nil {
		return nil, err
	}
	b = append(b, " <resources>\n"...)
	for i, o := range p.Objects {
		b = append(b, `  <object id="`+strconv.Itoa(i+1)+`" type="model"`...)
		if b, err = appendText(b, "partnumber", o.PartNumber); err != nil {
			return nil, err
		}
		if b, err = appendText(b, "name", o.Name); err != nil {
			return nil, err
		}
		b = append(b, ">\n"...)
		if len(o.Metadata) > 0 {
			b = append(b, "   <metadatagroup>\n"...)
			if b, err = appendMetadata(b, "    ", o.Metadata); err != nil {
				return nil, err
			}
			b = append(b, "   </metadatagroup>\n"...)
		}
		if b, err = appendMesh(b, o); err != nil {
			return nil, err
		}
		b = append(b, "  </object>\n"...)
	}
	b = append(b, " </resources>\n <build>\n"...)
	for i, o := range p.Objects {
		b = append(b, `  <item objectid="`+strconv.Itoa(i+1)+`"`...)
		place, bad := roundPoint(o.Place)
		if bad != 0 {
			return nil, &MeshError{Object: o.Name, Triangle: -1,
				Problem: fmt.Sprintf("is placed at %c = %g mm, not a length that can be stored", bad, o.Place[bad-'x'])}
		}
		if place != [3]float32{} {
			b = append(b, ` transform="1 0 0 0 1 0 0 0 1`...)
			for _, c := range place {
				b = append(b, ' ')
				b = strconv.AppendFloat(b, float64(c), 'f', -1, 32)
			}
			b = append(b, '"')
		}
		b = append(b, "/>\n"...)
	}
	return append(b, " </build>\n</model>\n"...), nil
}

func appendMesh(b []byte, o Object) ([]byte, error) {
	rounded, err := singlePrecision(o.Name, &o.Mesh)
	if err != nil {
		return nil, err
	}
	b = append(b, "   <mesh>\n    <vertices>\n"...)
	for _, v := range rounded {
		b = append(b, `     <vertex x="`...)
		b = strconv.AppendFloat(b, float64(v[0]), 'f', -1, 32)
		b = append(b, `" y="`...)
		b = strconv.AppendFloat(b, float64(v[1]), 'f', -1, 32)
		b = append(b, `" z="`...)
		b = strconv.AppendFloat(b, float64(v[2]), 'f', -1, 32)
		b = append(b, "\"/>\n"...)
	}
	b = append(b, "    </vertices>\n    <triangles>\n"...)
	for _, t := range o.Triangles {
		b = append(b, `     <triangle v1="`...)
		b = strconv.AppendInt(b, int64(t[0]), 10)
		b = append(b, `" v2="`...)
		b = strconv.AppendInt(b, int64(t[1]), 10)
		b = append(b, `" v3="`...)
		b = strconv.AppendInt(b, int64(t[2]), 10)
		b = append(b, "\"/>\n"...)
	}
	return append(b, "    </triangles>\n   </mesh>\n"...), nil
}

func appendMetadata(b []byte, indent string, entries []Entry) ([]byte, error) {
	for i, e := range entries {
		name := e.Name
		if !slices.Contains(wellKnown, name) {
			if !plainName(name) {
				return nil, fmt.Errorf("3MF metadata %q: a name starts with a letter and holds letters, digits, - _ and full stop", name)
			}
			name = "job:" + name
		}
		if slices.ContainsFunc(entries[:i], func(other Entry) bool { return other.Name == e.Name }) {
			return nil, fmt.Errorf("3MF metadata %q: given twice", e.Name)
		}
		text, err := escape(e.Value)
		if err != nil {
			return nil, err
		}
		b = append(b, indent+`<metadata name="`+name+`">`+text+"</metadata>\n"...)
	}
	return b, nil
}

// appendText adds an attribute, none for an empty value.
func appendText(b []byte, name, value string) ([]byte, error) {
	if value == "" {
		return b, nil
	}
	text, err := escape(value)
	if err != nil {
		return nil, err
	}
	return append(b, " "+name+`="`+text+`"`...), nil
}

// escape makes text safe between tags and between quotes; runes that XML
// cannot hold at all become the replacement character.
func escape(s string) (string, error) {
	var b strings.Builder
	if err := xml.EscapeText(&b, []byte(s)); err != nil {
		return "", err
	}
	return b.String(), nil
}

func plainName(s string) bool {
	for i, r := range s {
		letter := r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z'
		other := r >= '0' && r <= '9' || r == '-' || r == '_' || r == '.'
		if !letter && (i == 0 || !other) {
			return false
		}
	}
	return s != ""
}
