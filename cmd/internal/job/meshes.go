package job

import "slices"

// Meshes lists the mesh files that a job names, each once, in the order of the file.
func (f *File) Meshes() []string {
	var out []string
	for _, s := range f.Steps() {
		for _, p := range []*Part{s.Lower, s.Upper} {
			if p == nil || p.Envelope.Mesh == nil {
				continue
			}
			if name := p.Envelope.Mesh.File; !slices.Contains(out, name) {
				out = append(out, name)
			}
		}
	}
	return out
}
