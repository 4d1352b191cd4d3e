package force

// hole is how holes of a process come out against what was drawn, mean change of the
// diameter [mm].
type holeRow struct {
	process string
	change  float64
	upTo    float64 // diameter up to which it counts in full, fading to none at twice that [mm]; 0: any
	mark    Mark
}

// holeTable: powder bed, small holes and gaps take an offset of 0.15 mm (a bureau's
// guide, 0.006 in, read), a width and so a diameter; what is small it does not say, 20
// mm is own. Extruded 0.1 to 0.3 mm on the diameter (a bureau's guide, excerpt). For
// resin no figure was found.
var holeTable = [...]holeRow{
	{"PBF", -0.15, 20, MarkRead},
	{"MEX", -0.20, 0, MarkExcerpt},
}

// holeBias gives the table's figure for a process.
func holeBias(process string) (change Figure, upTo float64) {
	for _, h := range holeTable {
		if h.process == process {
			return Figure{h.change, h.mark}, h.upTo
		}
	}
	return Figure{0, MarkPractice}, 0
}

// TighterHole gives by how much a hole of the part is narrower than drawn [mm],
// diametral; below 0 it is wider. known says that a shop or the job measured it. A
// figure of the table makes a joint tighter for the press but not for the hold, since
// a printer may well make up for it.
//
//	b = -hole_bias (2 - d/D),  2 - d/D cut at 0 and 1
//
// d: diameter of the hole [mm]; D: the size up to which it counts in full. A stated
// figure counts in full at any size. Source: see holeTable.
func (m Material) TighterHole(d float64) (b float64, known bool) {
	if m.HoleBias.Mark == MarkJob || m.HoleBias.Mark == MarkShop {
		return -m.HoleBias.Value, true
	}
	fade := 1.0
	if _, upTo := holeBias(m.Process); upTo > 0 {
		fade = min(1, max(0, 2-d/upTo))
	}
	return -m.HoleBias.Value * fade, false
}
