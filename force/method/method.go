package method

// Method is a way to push the parts together.
type Method string

// The methods, from the least to the most.
const (
	ByHand   Method = "hand"   // thumbs or palms
	ByMallet Method = "mallet" // blows on an anvil, the nest in a bench vise
	ByPress  Method = "press"  // a manual arbor press
	None     Method = "none"   // no manual method is good enough
)

// Title gives the method in words.
func (m Method) Title() string {
	switch m {
	case ByHand:
		return "by hand"
	case ByMallet:
		return "mallet and vise"
	case ByPress:
		return "arbor press"
	}
	return "no manual method"
}

// Verdict is the outcome of an assessment.
type Verdict string

// The verdicts.
const (
	Pass        Verdict = "pass"        // within every limit that is known
	Conditional Verdict = "conditional" // a person with the skill named in the reason must agree first
	Fail        Verdict = "fail"        // not this way
)

// better says whether a beats b.
func (v Verdict) better(b Verdict) bool { return v.rank() < b.rank() }

func (v Verdict) rank() int {
	switch v {
	case Pass:
		return 0
	case Conditional:
		return 1
	}
	return 2
}
