package job

import "slices"

// Meshes lists the mesh files that a job names, each once, in the order of the file. The
// file may be one that is not valid.
func (f *File) Meshes() []string {
	parts := []*Part{f.Lower, f.Upper}
	for _, s := range f.PressSteps {
		parts = append(parts, s.Lower, s.Upper)
	}
	var out []string
	for _, p := range parts {
		if p == nil || p.Envelope.Mesh == nil {
			continue
		}
		if name := p.Envelope.Mesh.File; name != "" && !slices.Contains(out, name) {
			out = append(out, name)
		}
	}
	return out
}
