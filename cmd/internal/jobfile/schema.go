package jobfile

import (
	"bytes"
	"encoding/json"
	"slices"
	"strings"
)

// Schema gives the JSON Schema (draft 2020-12) of a file that is read into the
// struct that into points to, for editors that complete and check YAML. It
// refuses nothing that [Decode] takes, apart from numbers in unusual dress, and
// cannot know what only a Validate method knows. about says what the keys are for.
// It panics as Decode does.
func Schema(into any, about About) []byte {
	root := shapeOf(into).schema(about)
	root.Schema = "https://json-schema.org/draft/2020-12/schema"
	var b bytes.Buffer
	encoder := json.NewEncoder(&b)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", "  ")
	if err := encoder.Encode(root); err != nil {
		panic("jobfile: schema: " + err.Error()) // strings, numbers and lists always encode
	}
	return b.Bytes()
}

// A schema is the part of JSON Schema that a shape needs.
type schema struct {
	Schema      string     `json:"$schema,omitempty"`
	Description string     `json:"description,omitempty"`
	Type        any        `json:"type,omitempty"` // a name or several
	AnyOf       []*schema  `json:"anyOf,omitempty"`
	Enum        []string   `json:"enum,omitempty"`
	Format      string     `json:"format,omitempty"`
	Pattern     string     `json:"pattern,omitempty"`
	MinLength   int        `json:"minLength,omitempty"`
	Properties  properties `json:"properties,omitempty"`
	Required    []string   `json:"required,omitempty"`
	Others      any        `json:"additionalProperties,omitempty"` // false, or what all other keys hold
	Items       *schema    `json:"items,omitempty"`
	MinItems    int        `json:"minItems,omitempty"`
	MaxItems    int        `json:"maxItems,omitempty"`
	MinKeys     int        `json:"minProperties,omitempty"`
}

// properties are keys in the order of the struct, which is the order in which an
// editor offers them.
type properties []property

type property struct {
	key    string
	schema *schema
}

// MarshalJSON writes the keys as one object.
func (p properties) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, q := range p {
		if i > 0 {
			b.WriteByte(',')
		}
		key, err := json.Marshal(q.key)
		if err != nil {
			return nil, err
		}
		var value bytes.Buffer
		encoder := json.NewEncoder(&value)
		encoder.SetEscapeHTML(false)
		if err := encoder.Encode(q.schema); err != nil {
			return nil, err
		}
		b.Write(key)
		b.WriteByte(':')
		b.Write(value.Bytes())
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// figurePattern is the decimal number that cutNumber and figureFault admit.
const figurePattern = `[-+]?((0|[1-9][0-9]*)(\.[0-9]*)?|\.[0-9]+)([eE][-+]?[0-9]+)?`

// schema gives the schema of a shape.
func (s *shape) schema(about About) *schema {
	switch s.kind {
	case section:
		out := &schema{Type: "object", Others: false}
		for _, f := range s.fields {
			p := f.shape.schema(about)
			p.describe(about[f.owner])
			if f.required && f.shape.kind == list {
				p.MinItems = 1
			}
			if f.required && f.shape.kind == table {
				p.MinKeys = 1
			}
			out.Properties = append(out.Properties, property{f.name, p})
			if f.required {
				out.Required = append(out.Required, f.name)
			}
		}
		return out
	case table:
		return &schema{Type: "object", Others: s.elem.schema(about)}
	case list:
		if s.elem.kind == whole {
			return &schema{Type: []string{"array", "integer"}, Items: s.elem.schema(about)}
		}
		return &schema{Type: "array", Items: s.elem.schema(about)}
	case tuple:
		n := s.goType.Len()
		return &schema{Type: "array", Items: s.elem.schema(about), MinItems: n, MaxItems: n}
	case point:
		return &schema{Description: "[x, y]", Type: "array", Items: s.dimension.schema(), MinItems: 2, MaxItems: 2}
	case number:
		return s.dimension.schema()
	case whole:
		return &schema{Type: "integer"}
	case truth:
		return &schema{Type: "boolean"}
	}
	switch {
	case len(s.oneOf) > 0:
		words := s.oneOf
		for _, w := range s.oneOf {
			if bare, signed := strings.CutPrefix(w, "+"); signed {
				words = append(slices.Clip(words), bare) // as Word takes it
			}
		}
		return &schema{Enum: words}
	case s.date:
		return &schema{Type: "string", Format: "date"}
	}
	return &schema{Type: []string{"string", "number", "boolean"}, MinLength: 1}
}

// describe puts what a key is for before what its values look like.
func (s *schema) describe(text string) {
	switch {
	case text == "":
	case s.Description == "":
		s.Description = text
	default:
		s.Description = strings.TrimSuffix(text, ".") + ". " + strings.ToUpper(s.Description[:1]) + s.Description[1:]
	}
}

// schema gives the schema of a value with a dimension: a number, or a text with
// a unit.
func (d dimension) schema() *schema {
	if len(d.units) == 0 {
		return &schema{Type: "number"}
	}
	return &schema{
		Description: d.noun + ", " + d.wanted(),
		AnyOf: []*schema{
			{Type: "number"},
			{Type: "string", Pattern: "^\\s*" + figurePattern + "\\s*(" + strings.Join(d.spellings(), "|") + ")\\s*$"},
		},
	}
}
