package preview

import (
	"crypto/sha256"
	_ "embed" // the page and what is in it
	"encoding/base64"
	"fmt"
	"html/template"
	"io"
	"strings"
)

//go:embed web/page.html
var pageText string

//go:embed web/page.css
var styleText string

// The program of the page, in the order in which its parts build on each other.
var (
	//go:embed web/model.js
	modelText string
	//go:embed web/edges.js
	edgesText string
	//go:embed web/raster.js
	rasterText string
	//go:embed web/scene.js
	sceneText string
	//go:embed web/curve.js
	curveText string
	//go:embed web/page.js
	programText string
)

// data is what the program of the page is given.
type data struct {
	Units  units      `json:"units"`
	Bodies []packed   `json:"bodies"`
	Steps  []dataStep `json:"steps"`
}

type dataStep struct {
	Name   string       `json:"name"`
	Stroke float64      `json:"stroke"`
	Thrust [2]float64   `json:"thrust"`
	Curve  [][2]float64 `json:"curve"`
	Band   [][4]float64 `json:"band"`
	Scene  []dataPlaced `json:"scene"`
	Plot   [4]float64   `json:"plot"` // where the chart has its axes: left, top, right, bottom
}

type dataPlaced struct {
	Body   int        `json:"body"`
	Name   string     `json:"name"`
	Tone   Tone       `json:"tone"`
	Offset [3]float64 `json:"offset"`
	Moves  bool       `json:"moves"`
	Apart  float64    `json:"apart"`
}

// A view is what the template is filled with.
type view struct {
	Document
	Policy  string
	Style   template.CSS
	Script  template.JS
	Data    data
	Charts  []figure
	Coarse  []Fact // bodies that are shown with fewer triangles
	Several bool
}

// Write writes the file. What cannot be shown is a force.Fault, and nothing is written.
func Write(w io.Writer, d Document) error {
	if err := d.check(); err != nil {
		return err
	}
	page, err := template.New("page").Parse(pageText)
	if err != nil {
		return fmt.Errorf("read the page: %w", err)
	}
	script := "'use strict';\n(function () {\n" + strings.Join([]string{modelText, edgesText, rasterText, sceneText, curveText, programText},
		"\n") + "}());\n"
	u := unitsOf(d.Units)
	v := view{
		Document: d, Style: template.CSS(styleText), Script: template.JS(script), Several: len(d.Steps) > 1,
		Policy: "default-src 'none'; script-src '" + digest(script) + "'; style-src '" + digest(styleText) +
			"'; base-uri 'none'; form-action 'none'",
		Data: data{Units: u},
	}
	for _, b := range d.Bodies {
		p := pack(b)
		v.Data.Bodies = append(v.Data.Bodies, p)
		if p.Of > 0 {
			v.Coarse = append(v.Coarse, Fact{b.Name, fmt.Sprintf("%d of %d triangles", p.shown, p.Of)})
		}
	}
	for i, s := range d.Steps {
		drawn, err := figureOf(i, s, d.Units)
		if err != nil {
			return fmt.Errorf("draw the force of %q: %w", s.Name, err)
		}
		v.Charts = append(v.Charts, drawn)
		to := dataStep{Plot: [4]float64{drawn.plot.Left, drawn.plot.Top, drawn.plot.Right, drawn.plot.Bottom}, Name: s.Name, Stroke: s.Stroke(),
			Thrust: s.Thrust, Curve: s.Curve, Band: s.Band}
		for _, p := range s.Scene {
			to.Scene = append(to.Scene, dataPlaced(p))
		}
		v.Data.Steps = append(v.Data.Steps, to)
	}
	var out strings.Builder
	if err := page.Execute(&out, v); err != nil {
		return fmt.Errorf("fill the page: %w", err)
	}
	_, err = io.WriteString(w, out.String())
	return err
}

// digest names a text in a content security policy.
func digest(text string) string {
	sum := sha256.Sum256([]byte(text))
	return "sha256-" + base64.StdEncoding.EncodeToString(sum[:])
}
