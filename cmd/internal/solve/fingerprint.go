package solve

import (
	"crypto/sha256"
	"encoding/base32"
	"encoding/binary"
	"encoding/json"
	"fmt"
	"hash"
	"math"

	"ramnest/cmd/internal/jobfile"
	"ramnest/fixture/envelope"
)

// fingerprintLetters are 32 that are not taken for one another when engraved.
const fingerprintLetters = "ABCDEFGHJKLMNPQRSTUVWXYZ23456789"

// fingerprint is a short name for everything that goes into the tooling: the job
// as understood and the triangles of its parts. Sheet and tooling that carry the
// same one belong together. What only describes (title, author, date, paper, the
// units it is written in) or prices does not count. Five letters: two jobs of a shop share
// one by chance once in 33 million pairs.
func fingerprint(s *Solution) (string, error) {
	h := sha256.New()
	j := *s.Job
	j.Title, j.Author, j.Date, j.Paper, j.Language, j.Units, j.Rates = "", "", "", "", "", jobfile.Units{}, nil
	if err := json.NewEncoder(h).Encode(j); err != nil {
		return "", fmt.Errorf("fingerprint: %w", err)
	}
	for i := range s.Steps {
		addTriangles(h, s.Steps[i].LowerEnvelope)
		addTriangles(h, s.Steps[i].UpperEnvelope)
	}
	return base32.NewEncoding(fingerprintLetters).EncodeToString(h.Sum(nil))[:5], nil
}

// addTriangles takes the triangles of a part in, corner by corner.
func addTriangles(h hash.Hash, p *envelope.Envelope) {
	b := binary.LittleEndian.AppendUint64(nil, uint64(len(p.Triangles)))
	for _, t := range p.Triangles {
		for _, v := range t {
			for _, c := range p.Vertices[v] {
				b = binary.LittleEndian.AppendUint64(b, math.Float64bits(c))
			}
		}
	}
	h.Write(b) // never fails
}
