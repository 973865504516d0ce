package known

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"understitch/model"
	"understitch/rules"
)

var (
	walk   = &rules.Rule{Name: "seam-walk"}
	depth  = &rules.Rule{Name: "hem-depth"}
	closed = &rules.Rule{Name: "outline-closed", Firm: "all rests on it"}
)

func finding(r *rules.Rule, at, key string, off float64) rules.Finding {
	return rules.Finding{Outcome: rules.Outcome{
		Rule: r, Subject: at, Key: key, Status: rules.Found, Severity: rules.Error, Numeric: true, Unit: rules.Millimetres, Off: off,
	}}
}

func bare(r *rules.Rule, at string) rules.Finding {
	return rules.Finding{Outcome: rules.Outcome{Rule: r, Subject: at, Status: rules.Found}}
}

func never(string) bool  { return false }
func always(string) bool { return true }

// accepted is a file that knows what is found now.
func accepted(t *testing.T, findings ...rules.Finding) *File {
	t.Helper()
	k, _ := Empty("known.jsonl").Update([]Checked{{"a", true, rules.ResultOf(findings...)}}, true, never)
	src, err := k.Bytes()
	require.NoError(t, err)
	k, err = Read("known.jsonl", src)
	require.NoError(t, err)
	return k
}

func TestApply(t *testing.T) {
	k := accepted(t, finding(walk, "seam.side", "", 4.0004), finding(walk, "seam.side", "waist", 1), bare(depth, "shell.front.hem"), finding(closed, "shell.front", "", 1))
	for _, c := range []struct {
		name string
		f    rules.Finding
		file string
		want bool // accepted
		note string
	}{
		{"as it was", finding(walk, "seam.side", "", 4.0004), "a", true, ""},
		{"less", finding(walk, "seam.side", "", 1), "a", true, ""},
		{"more by less than is written", finding(walk, "seam.side", "", 4.0009), "a", true, ""},
		{"worse", finding(walk, "seam.side", "", 4.0011), "a", false, "known as 4 mm off, and worse now"},
		{"another figure of it", finding(walk, "seam.side", "waist", 4), "a", false, "known as 1 mm off, and worse now"},
		{"another seam", finding(walk, "seam.back", "", 1), "a", false, ""},
		{"another garment", finding(walk, "seam.side", "", 1), "b", false, ""},
		{"without a figure", bare(depth, "shell.front.hem"), "a", true, ""},
		{"now with a figure", finding(depth, "shell.front.hem", "", 1), "a", false, "known without a figure"},
		{"that cannot be accepted", finding(closed, "shell.front", "", 1), "a", false, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := *rules.ResultOf(c.f)
			k.Apply(c.file, &r, model.Millimetre)
			require.Equal(t, c.want, len(r.Waived) == 1)
			require.Equal(t, !c.want, len(r.Findings) == 1)
			if c.want {
				require.Equal(t, rules.Waived, r.Waived[0].Status)
				require.Equal(t, "known.jsonl", r.Waived[0].Waiver.Place.File)
				return
			}
			note := ""
			for _, rel := range r.Findings[0].Related {
				note += rel.Message
				require.Positive(t, rel.Place.Start.Line)
			}
			require.Equal(t, c.note, note)
		})
	}
}

func TestUpdate(t *testing.T) {
	k := accepted(t, finding(walk, "seam.side", "", 4), finding(walk, "seam.back", "", 2), bare(depth, "shell.front.hem"))
	for _, c := range []struct {
		name    string
		checked []Checked
		add     bool
		exists  func(string) bool
		change  Change
		want    string // rule@address=off of each
	}{
		{"nothing has changed", []Checked{{"a", true, rules.ResultOf(finding(walk, "seam.side", "", 4), finding(walk, "seam.back", "", 2), bare(depth, "shell.front.hem"))}}, false, always,
			Change{}, "hem-depth@shell.front.hem seam-walk@seam.back=2 seam-walk@seam.side=4"},
		{"mended and bettered", []Checked{{"a", true, rules.ResultOf(finding(walk, "seam.side", "", 3))}}, false, always,
			Change{Gone: 2, Lowered: 1}, "seam-walk@seam.side=3"},
		{"new and worse, not asked for", []Checked{{"a", true, rules.ResultOf(finding(walk, "seam.side", "", 5), finding(walk, "seam.new", "", 1), finding(walk, "seam.back", "", 2), bare(depth, "shell.front.hem"))}}, false, always,
			Change{New: 2}, "hem-depth@shell.front.hem seam-walk@seam.back=2 seam-walk@seam.side=4"},
		{"new and worse, asked for", []Checked{{"a", true, rules.ResultOf(finding(walk, "seam.side", "", 5), finding(walk, "seam.new", "", 1), finding(walk, "seam.back", "", 2), bare(depth, "shell.front.hem"))}}, true, always,
			Change{Added: 2}, "hem-depth@shell.front.hem seam-walk@seam.back=2 seam-walk@seam.new=1 seam-walk@seam.side=5"},
		{"not checked in full", []Checked{{"a", false, rules.ResultOf()}}, false, always,
			Change{}, "hem-depth@shell.front.hem seam-walk@seam.back=2 seam-walk@seam.side=4"},
		{"another garment only", []Checked{{"b", true, rules.ResultOf()}}, false, always,
			Change{}, "hem-depth@shell.front.hem seam-walk@seam.back=2 seam-walk@seam.side=4"},
		{"the garment's file is gone", []Checked{{"b", true, rules.ResultOf()}}, false, never, Change{Gone: 3}, ""},
		{"what cannot be accepted is never added", []Checked{{"a", true, rules.ResultOf(finding(closed, "shell.front", "", 1))}}, true, always, Change{Gone: 3}, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			after, change := k.Update(c.checked, c.add, c.exists)
			require.Equal(t, c.change, change)
			var got []string
			for _, e := range after.Entries() {
				text := e.Rule + "@" + e.At
				if e.Off != nil {
					text += "=" + model.Decimal(*e.Off, 3)
				}
				got = append(got, text)
			}
			require.Equal(t, c.want, strings.Join(got, " "))
		})
	}
}

func TestText(t *testing.T) {
	k := accepted(t, finding(walk, "seam.side", "waist", 4.00042), bare(depth, "shell.front.hem"))
	src, err := k.Bytes()
	require.NoError(t, err)
	require.Equal(t, `{"known":"findings that understitch check accepts until they get worse","version":1}
{"file":"a","rule":"hem-depth","at":"shell.front.hem"}
{"file":"a","rule":"seam-walk","at":"seam.side","key":"waist","off":4.001,"unit":"mm"}
`, string(src))
}

func TestReadFaults(t *testing.T) {
	const head = `{"known":"x","version":1}` + "\n"
	for _, c := range []struct{ name, src, want string }{
		{"empty", "", "k: the file is empty"},
		{"another file", "garment \"g\" {}\n", "k:1: this is no file of known findings"},
		{"a newer one", `{"known":"x","version":2}`, "k:1: version 2 of known findings cannot be read; this is for version 1"},
		{"a broken line", head + "{\"file\":\n", "k:2: this line cannot be read: unexpected EOF"},
		{"an unknown word", head + `{"file":"a","rule":"r","at":"s","line":3}`, `k:2: this line cannot be read: unknown field "line"`},
		{"no address", head + `{"file":"a","rule":"r"}`, "k:2: a known finding has a file, a rule, an address and no negative value"},
		{"negative", head + `{"file":"a","rule":"r","at":"s","off":-1}`, "k:2: a known finding has a file, a rule, an address and no negative value"},
		{"twice", head + "\n" + `{"file":"a","rule":"r","at":"s"}` + "\n" + `{"file":"a","rule":"r","at":"s","off":3}`, "k:4: this finding stands on line 3 already"},
		{"two on a line", head + `{"file":"a","rule":"r","at":"s"} {}`, "k:2: something is left over at the end of this line"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := Read("k", []byte(c.src))
			require.EqualError(t, err, c.want)
		})
	}
}

// Whatever is accepted is known when it is read again, written alike whatever
// the order it came in, and writing it without being asked never adds.
func TestWrittenAndRead(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.SampledFrom([]string{"a", "b", "c/d"})
		list := rapid.SliceOfNDistinct(rapid.Custom(func(t *rapid.T) rules.Finding {
			return finding(walk, name.Draw(t, "at"), name.Draw(t, "key"), rapid.Float64Range(0, 50).Draw(t, "off"))
		}), 0, 6, func(f rules.Finding) string { return f.Subject + "\x00" + f.Key }).Draw(t, "findings")
		k, _ := Empty("k").Update([]Checked{{"f", true, rules.ResultOf(list...)}}, true, never)
		src, err := k.Bytes()
		require.NoError(t, err)
		again, err := Read("k", src)
		require.NoError(t, err)
		r := rules.Result{Findings: list}
		again.Apply("f", &r, model.Millimetre)
		require.Empty(t, r.Findings)

		other := rapid.Permutation(list).Draw(t, "order")
		k, _ = Empty("k").Update([]Checked{{"f", true, rules.ResultOf(other...)}}, true, never)
		same, err := k.Bytes()
		require.NoError(t, err)
		require.Equal(t, string(src), string(same))

		worse := rapid.SliceOfNDistinct(rapid.Custom(func(t *rapid.T) rules.Finding {
			return finding(walk, name.Draw(t, "at"), name.Draw(t, "key"), rapid.Float64Range(0, 50).Draw(t, "off"))
		}), 0, 6, func(f rules.Finding) string { return f.Subject + "\x00" + f.Key }).Draw(t, "later")
		after, _ := again.Update([]Checked{{"f", true, rules.ResultOf(worse...)}}, false, always)
		for at, e := range after.entries {
			old, was := again.entries[at]
			require.True(t, was, "an entry was added")
			require.LessOrEqual(t, *e.Off, *old.Off, "an entry was raised")
		}
	})
}

// What follows from a known finding is known by itself, and what comes of it later
// is in force.
func TestWhatFollowsIsKnownByItself(t *testing.T) {
	root := func(follow ...rules.Finding) rules.Finding {
		f := bare(depth, "alter.fitting")
		f.Severity = rules.Note
		for _, o := range follow {
			f.Follow = append(f.Follow, o)
		}
		return f
	}
	left := func(k *File, f rules.Finding) (found []string, waived int) {
		r := *rules.ResultOf(f)
		k.Apply("a", &r, model.Millimetre)
		for _, f := range r.Findings {
			found = append(found, f.Rule.Name+" "+f.Subject)
		}
		return found, len(r.Waived)
	}
	k := accepted(t, root(finding(walk, "seam.side", "", 4)))
	require.Equal(t, 2, k.Len())
	for _, c := range []struct {
		name   string
		f      rules.Finding
		found  []string
		waived int
	}{
		{"as it was", root(finding(walk, "seam.side", "", 4)), nil, 2},
		{"what follows is worse", root(finding(walk, "seam.side", "", 5)), []string{"seam-walk seam.side"}, 1},
		{"more follows", root(finding(walk, "seam.side", "", 4), finding(walk, "seam.back", "", 4)), []string{"seam-walk seam.back"}, 2},
		{"nothing follows any more", root(), nil, 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			found, waived := left(k, c.f)
			require.Equal(t, c.found, found)
			require.Equal(t, c.waived, waived)
		})
	}
	t.Run("what was known is no part of a new finding that it follows from", func(t *testing.T) {
		grave := func(at string) rules.Finding {
			f := finding(walk, at, "", 4)
			f.Severity = rules.Error
			return f
		}
		k := accepted(t, grave("seam.side"))
		r := *rules.ResultOf(root(grave("seam.side")))
		k.Apply("a", &r, model.Millimetre)
		require.Len(t, r.Waived, 1)
		require.Len(t, r.Findings, 1)
		require.Equal(t, rules.Note, r.Findings[0].Severity)
		require.Empty(t, r.Findings[0].Related)
		require.Empty(t, r.Findings[0].Follow)

		r = *rules.ResultOf(root(grave("seam.side"), grave("seam.back")))
		k.Apply("a", &r, model.Millimetre)
		require.Len(t, r.Waived, 1)
		require.Equal(t, rules.Error, r.Findings[0].Severity, "by what is not known")
		require.Len(t, r.Findings[0].Related, 1)
	})
	t.Run("what follows for now from what cannot be accepted stays known, and nothing is added", func(t *testing.T) {
		gap := finding(closed, "shell.front", "", 4)
		gap.Follow = append(gap.Follow, finding(walk, "seam.side", "", 9))
		gap.Follow = append(gap.Follow, finding(walk, "seam.back", "", 9))
		after, _ := k.Update([]Checked{{"a", true, rules.ResultOf(root(), gap)}}, true, always)
		require.Equal(t, 2, after.Len())
		require.InDelta(t, 4, *after.Entries()[1].Off, 1e-9)
	})
}
