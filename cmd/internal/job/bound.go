package job

// Bound sets how many places of the latches of a step, and how many outlines of the layers
// of a part, are taken; 0: as many as by default.
func (f *File) Bound(places, outlines int) {
	f.MostPlaces = places
	parts := []*Part{f.Lower, f.Upper}
	for _, s := range f.PressSteps {
		parts = append(parts, s.Lower, s.Upper)
	}
	for _, p := range parts {
		if p != nil {
			p.Envelope.MostOutlines = outlines
		}
	}
}
