package plugin

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"understitch/rules"
)

func tabs(s string) string { return strings.ReplaceAll(s, ">", "\t") }

func everywhere(string) bool { return true }

func TestAnswer(t *testing.T) {
	rows, err := Answer([]byte(tabs("answer>1>7\n"+
		"dart-intake>warning>shell.front.dart.bust>46>40>mm>too much\\tby \\\\ 6\n"+
		"dart-intake>passed>shell.front.dart.waist>30>40>mm>\n"+
		"grain.v2>not-possible>shell.front>>>>nothing is drawn\n"+
		"grain.v2>error>shell.back>>>>no grain\n"+
		"end\n")), 7, everywhere)
	require.NoError(t, err)
	require.Equal(t, []Row{
		{Key: "dart-intake", Verdict: "warning", Address: "shell.front.dart.bust", Measured: 46, Limit: 40, Unit: rules.Millimetres, Numeric: true, Message: "too much by \\ 6"},
		{Key: "dart-intake", Verdict: "passed", Address: "shell.front.dart.waist", Measured: 30, Limit: 40, Unit: rules.Millimetres, Numeric: true},
		{Key: "grain.v2", Verdict: "not-possible", Address: "shell.front", Message: "nothing is drawn"},
		{Key: "grain.v2", Verdict: "error", Address: "shell.back", Message: "no grain"},
	}, rows)
	rows, err = Answer([]byte("answer\t1\t7\nend\n"), 7, everywhere)
	require.NoError(t, err)
	require.Empty(t, rows)
}

func TestAnswersThatMakeNoSense(t *testing.T) {
	for _, c := range []struct{ name, rows, want string }{
		{"a JSON text", `{"findings": []}`, "line 2: it has 1 columns, not 7"},
		{"too many columns", "a>error>garment>>>>m>", "line 2: it has 8 columns, not 7"},
		{"no rule", ">error>garment>>>>m", `line 2: "" cannot be the name of a rule`},
		{"a rule with a space", "a b>error>garment>>>>m", `line 2: "a b" cannot be the name of a rule`},
		{"no verdict", "a>fatal>garment>>>>m", `line 2: there is no verdict "fatal"; there are error, warning, note, passed and not-possible`},
		{"off is no verdict", "a>off>garment>>>>m", `line 2: there is no verdict "off"`},
		{"no message", "a>error>garment>1>2>mm> ", `line 2: a verdict of error needs a message`},
		{"no reason", "a>not-possible>garment>>>>", `line 2: a verdict of not-possible needs a message`},
		{"a long message", "a>error>garment>>>>" + strings.Repeat("x", 1001), "line 2: the message is longer than 1000 bytes"},
		{"half a figure", "a>error>garment>1>>>m", `line 2: "" is not a figure`},
		{"no unit", "a>error>garment>1>2>>m", `line 2: there is no unit ""; there are mm, degrees, ratio and %`},
		{"a unit of its own", "a>error>garment>1>2>cm>m", `line 2: there is no unit "cm"`},
		{"no number", "a>error>garment>1,5>2>mm>m", `line 2: "1,5" is not a figure`},
		{"not a number", "a>error>garment>NaN>2>mm>m", `line 2: "NaN" is not a figure`},
		{"without end", "a>error>garment>1>Inf>mm>m", `line 2: "Inf" is not a figure`},
		{"nowhere", "a>error>nowhere>>>>m", `line 2: the garment has no "nowhere"`},
		{"twice", "a>error>garment>>>>m\na>note>garment>>>>m", `line 3: a was judged at garment before`},
		{"an end within", "end", `line 2: it has 1 columns, not 7`},
		{"control characters", "a>error>nowhere\x1b[31m>>>>m", `line 2: the garment has no "nowhere\x1b[31m"`},
		{"endless rows", strings.Repeat("a>error>garment>>>>m\n", 10_000) + "a>error>garment>>>>m", "it has more than 10000 lines"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := Answer([]byte("answer\t1\t7\n"+tabs(c.rows)+"\nend\n"), 7, func(a string) bool { return a == "garment" })
			require.ErrorContains(t, err, "its answer makes no sense: "+c.want)
		})
	}
	for _, head := range []string{"", "answer", "answer\t2\t7", "answer\t1\t8", "answer\t1\t7 "} {
		_, err := Answer([]byte(head+"\nend\n"), 7, everywhere)
		require.ErrorContains(t, err, "its first line is", head)
	}
	_, err := Answer([]byte("answer\t1\t7\n"), 7, everywhere)
	require.ErrorContains(t, err, `its last line is not "end"`)
}

func TestGreeting(t *testing.T) {
	require.NoError(t, greeted("plugin\t1\n"))
	require.ErrorContains(t, greeted("plugin\t2\n"), `it speaks version "2" of the protocol, and this program speaks version 1`)
	require.ErrorContains(t, greeted("hello\n"), `its first line is "hello"`)
}

// Whatever bytes come, they are refused or understood; nothing falls over.
func TestAnyAnswer(t *testing.T) {
	word := rapid.SampledFrom([]string{"a", "error", "passed", "garment", "1", "mm", "", "\t", "\n", "end\n", "answer\t1\t7\n", "\xff", "1e400", "\\"})
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOf(word).Draw(t, "words"), rapid.SampledFrom([]string{"", "\t"}).Draw(t, "between"))
		rows, err := Answer([]byte(text), 7, everywhere)
		if err == nil {
			for _, r := range rows {
				require.NotEmpty(t, r.Key)
			}
		}
	})
}

func TestOutcomes(t *testing.T) {
	g := garment(t, "bodice", 3)
	g.Size = "38"
	things := addressesOf(g)
	rule := Rule(named("knits", nil))
	got := outcomesOf(rule, rules.Warning, g, things, []Row{
		{Key: "k", Verdict: "error", Address: "shell.front.dart.waist", Measured: 46, Limit: 40, Unit: rules.Millimetres, Numeric: true, Message: "m"},
		{Key: "k", Verdict: "note", Address: "shell.front", Message: "m"},
		{Key: "k", Verdict: "passed", Address: "shell.front.side", Measured: 30, Limit: 40, Unit: rules.Millimetres, Numeric: true},
		{Key: "k", Verdict: "not-possible", Address: "garment", Message: "why"},
	})
	require.Equal(t, []rules.Outcome{
		{Rule: rule, Subject: "shell.front.dart.waist", Key: "k", Status: rules.Found, Severity: rules.Warning, Numeric: true, Measured: 46, Limit: 40,
			Margin: -6, Off: 6, Unit: rules.Millimetres, Message: "m", Place: g.Darts()[0].Place, Size: "38"},
		{Rule: rule, Subject: "shell.front", Key: "k", Status: rules.Found, Severity: rules.Note, Message: "m", Place: g.Pieces()[0].Place, Size: "38"},
		{Rule: rule, Subject: "shell.front.side", Key: "k", Status: rules.Passed, Numeric: true, Measured: 30, Limit: 40, Margin: 10,
			Unit: rules.Millimetres, Place: g.Edges()[1].Place, Size: "38"},
		{Rule: rule, Subject: "garment", Key: "k", Status: rules.NotPossible, Reason: "why", Place: g.Place, Size: "38"},
	}, got)
	got = outcomesOf(rule, rules.Error, g, things, nil)
	require.Len(t, got, 1)
	require.Equal(t, rules.Passed, got[0].Status, "it looked and has nothing to say")
}
