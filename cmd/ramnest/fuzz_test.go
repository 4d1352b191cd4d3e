package main

import (
	"encoding/json"
	"os"
	"testing"

	"ramnest/cmd/internal/job"
	"ramnest/cmd/internal/jobfile"
	"ramnest/cmd/internal/solve"
	"ramnest/export/quote"
	"ramnest/force/calibrate"
	"ramnest/force/fault"
)

// faulted decodes and validates as the commands do, and holds the faults to what a
// person needs: a field or a whole-file problem, and always a text.
func faulted(t *testing.T, data []byte, into any, validate func() []fault.Fault) jobfile.Problems {
	doc, problems := jobfile.Decode("x.yaml", data, into, jobfile.Options{})
	faults := validate()
	for _, f := range faults {
		if f.Problem == "" {
			t.Fatalf("%q: a fault that does not help: %+v", data, f)
		}
	}
	return problems.And(doc.Problems(faults))
}

// encodes fails on what JSON cannot say: a NaN or an Inf.
func encodes(t *testing.T, data []byte, v any) {
	if _, err := json.Marshal(v); err != nil {
		t.Fatalf("%q: %v", data, err)
	}
}

// FuzzBenchFile holds a bench file to this: faults, or a bench of finite figures.
func FuzzBenchFile(f *testing.F) {
	f.Add([]byte("units: mm\npresses:\n  - {name: a, rated_force: 8900, ratio: 20, ram_square: 25, daylight_max: 200, throat: 100, lever: 400}\n"))
	f.Add([]byte("units: in\nmallets: [{name: m, mass: 1 lb}]\nvises: [{name: v, jaw_width: 4, opening: 5, depth: 2}]\n"))
	f.Add([]byte("\ufeffpresses: &a [*a]\r\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		var b benchFile
		if problems := faulted(t, data, &b, func() []fault.Fault { return b.Bench.Validate() }); len(problems) == 0 {
			encodes(t, data, b)
		}
	})
}

// FuzzRateCard holds a rate card to this: faults, or a finite price, or a fault of the
// price.
func FuzzRateCard(f *testing.F) {
	seed, err := os.ReadFile("../../testdata/jobs/shop/rates.yaml")
	if err != nil {
		f.Fatal(err)
	}
	f.Add(seed)
	f.Add([]byte("currency: EUR\nlabour_rate: 1e308\n"))
	items := []quote.Item{{Name: "nest", Process: "PBF", Material: "PA12", Volume: 186000, Box: [3]float64{120, 80, 35}, Count: 1}}
	f.Fuzz(func(t *testing.T, data []byte) {
		var card quote.RateCard
		if problems := faulted(t, data, &card, func() []fault.Fault { return card.Validate() }); len(problems) > 0 {
			return
		}
		encodes(t, data, card)
		if offer, err := card.Offer(items); err == nil {
			encodes(t, data, offer)
		}
	})
}

// FuzzCalibrationFile holds a calibration file to this: faults, or a job whose forces
// with it are finite, or a fault of the job.
func FuzzCalibrationFile(f *testing.F) {
	const good = `source: coupons of week 12
lower: {material: PA12, process: PBF}
upper: {material: PA12, process: PBF}
friction: 0.31
friction_spread: 12
stiffness: 0.93
stiffness_spread: 8
latches: [{latch: rim, kind: annular, offset: 0.031, tol: 0.02}]
measured: 5
`
	f.Add([]byte(good))
	f.Add([]byte("source: x\nfriction: .inf\nlatches: [{latch: rim, kind: ball, offset: -9, tol: 0}]\n"))
	text, err := os.ReadFile("../../testdata/jobs/rim-cap.yaml")
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		var sheet calibrate.Sheet
		if problems := faulted(t, data, &sheet, func() []fault.Fault { return sheet.Validate() }); len(problems) > 0 {
			return
		}
		encodes(t, data, sheet)
		var j job.File
		if _, problems := jobfile.Decode("x.yaml", text, &j, jobfile.Options{Set: []string{"draws=200"}}); len(problems) > 0 {
			t.Fatal(problems)
		}
		j.Calibration = &sheet
		if steps, err := solve.Forces(t.Context(), &j); err == nil {
			encodes(t, data, steps[0].Result)
		}
	})
}
