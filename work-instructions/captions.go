package workinstructions

// captioned is a picture with what the sheet says of one of its kind, unless the job
// has its own words.
func (f figures) captioned(s Step, p Picture, kind string) Picture {
	if p.Caption != "" {
		return p
	}
	switch kind {
	case "cap.load":
		p.Caption = f.say(s.soFar(kind), append(s.lower(), f.nest(s))...)
	case "cap.place":
		p.Caption = f.say(kind, part(s.Upper))
	case "cap.anvil":
		p.Caption = f.say(kind, f.anvil(s))
		if !s.Guided {
			p.Caption = f.say("cap.anvil.plain", f.anvil(s))
		}
	case "cap.section":
		p.Caption = f.say(kind)
		if id := s.Pictures.Cut; id != "" {
			p.Caption = f.say("cap.section.latch", id)
		}
	case "cap.plan":
		p.Caption = f.say(kind, f.nest(s))
	default:
		p.Caption = f.say(kind)
	}
	return p
}
