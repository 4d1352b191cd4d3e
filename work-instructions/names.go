package workinstructions

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// part is the name of a part as it stands in a sentence, without an article of its own.
func part(name string) string {
	if len(name) > 4 && strings.EqualFold(name[:4], "the ") {
		return name[4:]
	}
	return name
}

// which tells one nest or anvil from the others, behind the word for it: nothing
// where it is called by that word alone, else its number or its name.
func (f figures) which(kind, name string) string {
	rest, numbered := strings.CutPrefix(name, kind)
	switch {
	case name == "" || numbered && rest == "":
		return ""
	case numbered && strings.HasPrefix(rest, " "):
		return nbsp + strings.TrimSpace(rest)
	}
	return " " + f.say("quote", name)
}

func (f figures) nest(s Step) string  { return f.which("nest", s.Nest) }
func (f figures) anvil(s Step) string { return f.which("anvil", s.Anvil) }

// tool is the name of a nest or anvil by itself.
func (f figures) tool(name string) string {
	for _, kind := range []string{"nest", "anvil"} {
		if rest, ok := strings.CutPrefix(name, kind); ok && (rest == "" || rest[0] == ' ') {
			return f.say(kind) + rest
		}
	}
	return name
}

// soFar adds to a key that the lower part is the assembly so far.
func (s Step) soFar(key string) string {
	if s.SoFar {
		return key + ".so far"
	}
	return key
}

// lower is what has to be filled in for the lower part: nothing for the assembly so
// far, which stands in the words.
func (s Step) lower() []string {
	if s.SoFar {
		return nil
	}
	return []string{part(s.Lower)}
}

// capital begins a sentence with a large letter, whatever it begins with.
func capital(s string) string {
	r, size := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[size:]
}
