package house

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestTry(t *testing.T) {
	const rule = "of = edge\nonly = { finish = \"hem\" }\nfigure = edge.allowance\nleast = 3\n"
	text := func(finish, allowance string) string {
		return "<<-SPEC\ngarment \"apron\" { unit = \"cm\" }\nlayer \"shell\" {\n side = \"outer\"\n piece \"front\" {\n  edge \"hem\" {\n   length = 60\n   finish = \"" +
			finish + "\"\n   allowance = " + allowance + "\n  }\n }\n}\nSPEC"
	}
	read := func(name string) ([]byte, error) {
		if name == "deep.hcl" {
			return []byte("garment \"g\" { unit = \"cm\" }\nlayer \"l\" {\n side = \"outer\"\n piece \"p\" {\n  edge \"hem\" {\n   length = 5\n   finish = \"hem\"\n   allowance = 4\n  }\n }\n}\n"), nil
		}
		return nil, errors.New("there is no such file")
	}
	for _, c := range []struct {
		name, examples string
		want           []string // what is wrong with each
	}{
		{"as they must be", "good = " + text("hem", "3") + "\nbad = " + text("hem", "2") + "\n", []string{"", ""}},
		{"by path, and several", "good = [\"deep.hcl\", " + text("hem", "3") + "\n]\nbad = \"none.hcl\"\n", []string{"", "", "there is no such file"}},
		{"changed about", "good = " + text("hem", "2") + "\nbad = " + text("hem", "3") + "\n", []string{
			"it is to be good, and the rule finds a fault at shell.front.hem: the allowance of shell.front.hem is 2 cm; at least 3 cm is asked for",
			"it is to be bad, and the rule finds nothing in it",
		}},
		{"not chosen", "good = " + text("faced", "3") + "\nbad = " + text("faced", "2") + "\n", []string{
			"it is to be good, and the rule looks at nothing in it", "it is to be bad, and the rule finds nothing in it"}},
		{"no allowance", "good = " + text("hem", "1 / 0") + "\n", []string{"it cannot be read: line 8: division by zero"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			h := houseOf(t, rule+c.examples)
			own, diags := Compile(h, nil)
			require.Empty(t, diags)
			var got []string
			for _, trial := range Try(h, h.Requires()[0], own[0], read) {
				got = append(got, trial.Fault)
			}
			require.Equal(t, c.want, got)
		})
	}
}

func TestUntried(t *testing.T) {
	for _, c := range []struct{ examples, want string }{
		{"", "the rule trial has no examples"},
		{"good = \"a\"", "the rule trial has no bad example"},
		{"bad = \"a\"", "the rule trial has no good example"},
		{"good = \"a\"\nbad = \"a\"", ""},
	} {
		said := ""
		for _, d := range Untried(houseOf(t, "of = edge\nhas = edge.role\n"+c.examples)) {
			require.Equal(t, "warning", d.Severity)
			said = d.Summary
		}
		require.Equal(t, c.want, said)
	}
}
