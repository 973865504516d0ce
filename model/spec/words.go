package spec

import (
	"fmt"
	"slices"
	"strings"

	"github.com/agext/levenshtein"
)

// labelKind tells what may stand in quotes behind a block's word.
type labelKind uint8

const (
	noLabel    labelKind = iota
	nameLabel            // a name that addresses can use
	textLabel            // any text, as in size "38"
	maybeLabel           // a name, or none
	ruleLabel            // a rule's name, which several blocks may carry
)

// shape is what a block may and must hold.
type shape struct {
	label  labelKind
	needs  []string          // attributes that must be there
	may    []string          // attributes that may be there
	blocks map[string]*shape // blocks inside
	free   bool              // attributes are names of the user's own
	once   bool              // the block stands once
	later  bool              // part of the language that this version does not read yet
}

// names are all attributes that the block knows.
func (s *shape) names() []string { return append(slices.Clone(s.needs), s.may...) }

// kinds are the words of the blocks inside, in alphabetical order.
func (s *shape) kinds() []string {
	list := make([]string, 0, len(s.blocks))
	for k := range s.blocks {
		list = append(list, k)
	}
	slices.Sort(list)
	return list
}

// The blocks of the language. They are tables and are never written to.
var (
	levelShape  = &shape{label: nameLabel, may: []string{"y", "body"}}
	sizeShape   = &shape{label: textLabel, free: true}
	fabricShape = &shape{label: nameLabel, may: []string{"thickness", "stretch", "shrink", "washed", "allowance"}}
	tapeShape   = &shape{
		label: nameLabel, needs: []string{"kind", "pitch", "head", "clear"}, may: []string{"width_closed"},
	}
	pieceShape = &shape{
		label: nameLabel,
		may: []string{"cut", "mirrored", "fold", "drawn", "allowance", "grain", "cut_on", "levels", "width",
			"trace", "without", "mirror"},
		blocks: map[string]*shape{
			"points": {free: true, once: true},
			"edge": {label: nameLabel, may: []string{
				"line", "smooth", "curve", "path", "length", "cut_line", "allowance", "finish", "role",
				"trace", "state", "from", "to", "inward", "mirror", "at", "through", "notches",
			}},
			"ends":   {label: nameLabel, needs: []string{"level"}, may: []string{"allowance", "finish", "role"}},
			"dart":   {label: nameLabel, needs: []string{"intake"}, may: []string{"on", "at", "tip", "centre", "up", "down"}},
			"pleat":  {label: nameLabel, needs: []string{"on", "at", "depth"}, may: []string{"kind", "towards", "to"}},
			"notch":  {label: nameLabel, needs: []string{"on"}, may: []string{"at", "level", "point", "kind", "depth"}},
			"traced": {may: []string{"file", "piece"}, once: true, later: true},
		},
	}
	garmentShape = &shape{blocks: map[string]*shape{
		"garment": {label: nameLabel, once: true, needs: []string{"unit"}, may: []string{"title", "sizes", "base_size"}},
		"body":    {free: true, once: true},
		"size":    sizeShape,
		"draft":   {free: true},
		"fabric":  fabricShape,
		"level":   levelShape,
		"layer": {
			label: nameLabel, needs: []string{"side"}, may: []string{"order", "fabric", "ease", "allowance"},
			blocks: map[string]*shape{"piece": pieceShape},
		},
		"seam":   {label: nameLabel, needs: []string{"join"}, may: []string{"ease", "flip"}},
		"share":  {label: nameLabel, needs: []string{"outer", "inner"}, may: []string{"match", "ease", "over", "flip"}},
		"inside": {label: nameLabel, needs: []string{"outer", "inner"}, may: []string{"align", "align_end", "clearance", "clearance_from"}},
		"alter":  {label: nameLabel, needs: []string{"edges"}, may: []string{"inward", "outward", "down", "up"}},
		"tape":   tapeShape,
		"closure": {label: nameLabel, needs: []string{"kind", "edges"}, may: []string{
			"tape", "other_tape", "from", "to", "row", "stock", "lap", "allowance",
			"buttons", "diameter", "thickness", "extension", "also", "half", "gap", "first",
		}},
		"elastic": {label: nameLabel, needs: []string{"length"}, may: []string{"edges", "ratio"}, blocks: map[string]*shape{
			"section": {label: maybeLabel, needs: []string{"along", "ratio"}},
		}},
		"bone":    {label: nameLabel, needs: []string{"along", "length"}},
		"measure": {label: nameLabel, needs: []string{"along", "against"}, may: []string{"from", "to", "ease"}},
		"waive":   {label: ruleLabel, needs: []string{"at", "reason"}, may: []string{"figure", "level", "end", "size", "up_to", "until"}},
	}}
	houseShape = &shape{blocks: map[string]*shape{
		"house":     {label: nameLabel, once: true, needs: []string{"unit"}, may: []string{"root", "sizes"}},
		"allowance": {label: nameLabel, needs: []string{"width"}},
		"size":      sizeShape,
		"tape":      tapeShape,
		"fabric":    fabricShape,
		"level":     levelShape,
		"rule":      {label: nameLabel, free: true},
		"styles":    {label: textLabel, blocks: map[string]*shape{"rule": {label: nameLabel, free: true}}},
		"require": {label: nameLabel, needs: []string{"of"}, may: []string{
			"where", "only", "that", "figure", "least", "greatest", "equals", "within", "has", "named",
			"severity", "title", "why", "fix", "message", "good", "bad",
		}},
		"plugin": {label: nameLabel, needs: []string{"file", "sha256"}, may: []string{"memory", "time", "output", "good", "bad"}},
	}}
)

// parentsOf lists the blocks in which a block of this kind may stand, for a
// spec or a house.
func parentsOf(root *shape, kind string) []string {
	var found []string
	var look func(s *shape, name string)
	look = func(s *shape, name string) {
		for _, k := range s.kinds() {
			if k == kind {
				found = append(found, name)
			}
			look(s.blocks[k], k)
		}
	}
	look(root, "")
	return found
}

// firstWords begin the addresses of things that are not layers, so that no
// layer may be called by one of them.
var firstWords = []string{
	"alter", "body", "bone", "closure", "dart", "draft", "edge", "elastic", "fabric", "garment", "house", "layer",
	"level", "measure", "inside", "notch", "part", "piece", "pleat", "point", "rule", "seam", "share", "size", "tape", "waive",
}

// bodyMeasures are measures whose names a spec is likely to use, in the names
// of ISO 8559-1:2017 where it has one. They serve as nearest known words only;
// any other name may be stated.
var bodyMeasures = []string{
	"bust_girth", "underbust_girth", "upper_chest_girth", "chest_girth", "waist_girth", "high_hip_girth", "hip_girth",
	"thigh_girth", "knee_girth", "calf_girth", "ankle_girth", "upper_arm_girth", "elbow_girth", "wrist_girth",
	"neck_girth", "neck_base_girth", "head_girth", "trunk_girth", "armscye_girth",
	"total_crotch_length", "front_crotch_length", "back_crotch_length", "crotch_depth", "body_rise",
	"back_waist_length", "front_waist_length", "side_waist_length", "shoulder_length", "shoulder_slope",
	"across_shoulder", "across_back", "across_front", "bust_point_width", "bust_height", "waist_to_hip",
	"waist_to_knee", "waist_to_floor", "arm_length", "upper_arm_length", "inside_leg_length", "outside_leg_length",
	"height",
}

// maxCandidates is how many words are tried. Who has more names than that is
// not helped by a near one, and would wait for it.
const maxCandidates = 1000

// nearest is the candidate closest to a word in spelling, or "" when none is
// close enough to be what was meant. The first of equals wins.
func nearest(word string, candidates []string) string {
	candidates = candidates[:min(len(candidates), maxCandidates)]
	best, least := "", 1+max(1, (len(word)+1)/3)
	small := strings.ToLower(word)
	for _, c := range candidates {
		if c == word {
			continue
		}
		d := levenshtein.Distance(small, c, nil)
		if d == 2 && swapped(small, c) {
			d = 1
		}
		if d < least {
			best, least = c, d
		}
	}
	return best
}

// swapped reports whether two words differ by two neighbouring letters that
// changed places.
func swapped(a, b string) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range len(a) - 1 {
		if a[i] != b[i] {
			return a[i] == b[i+1] && a[i+1] == b[i] && a[i+2:] == b[i+2:]
		}
	}
	return false
}

// hint is the sentence that names the nearest known word, or all of them when
// none is near and there are few.
func hint(word string, candidates []string) string {
	if near := nearest(word, candidates); near != "" {
		return "The nearest known word is " + near + "."
	}
	switch n := len(candidates); {
	case n == 0:
		return ""
	case n == 1:
		return "The only known word here is " + candidates[0] + "."
	case n <= 16:
		return "Known here: " + strings.Join(candidates, ", ") + "."
	}
	return ""
}

// asName is the name that comes nearest to a text that cannot be one.
func asName(text string) string {
	spelt := strings.NewReplacer("ä", "ae", "ö", "oe", "ü", "ue", "ß", "ss", "é", "e", "è", "e", "ê", "e", "à", "a", "â", "a", "ç", "c", "ñ", "n")
	var b strings.Builder
	for _, r := range spelt.Replace(strings.ToLower(text)) {
		switch {
		case 'a' <= r && r <= 'z', b.Len() > 0 && ('0' <= r && r <= '9' || r == '_'):
			b.WriteRune(r)
		case '0' <= r && r <= '9':
			b.WriteString("n" + string(r))
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
	}
	if name := strings.Trim(b.String(), "-"); name != "" {
		return name
	}
	return "front"
}

// lettersOf says what a name consists of, with one that could be meant.
func lettersOf(name string) string {
	return fmt.Sprintf("Names are small letters, digits, - and _, and begin with a letter: %q.", name)
}

// isName reports whether a label can be used in addresses: a small letter, then
// small letters, digits, hyphens and underscores.
func isName(s string) bool {
	for i := 0; i < len(s); i++ {
		c := s[i]
		switch {
		case 'a' <= c && c <= 'z':
		case i > 0 && ('0' <= c && c <= '9' || c == '-' || c == '_'):
		default:
			return false
		}
	}
	return s != ""
}
