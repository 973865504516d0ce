package allowances_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules"
	"understitch/rules/allowances"
	"understitch/rules/ruletest"
)

func TestExamples(t *testing.T) {
	for _, r := range []*rules.Rule{&allowances.Match, &allowances.Standard, &allowances.Closure, &allowances.Fold, &allowances.Drawn, &allowances.Room} {
		ruletest.Rule(t, r)
	}
}

func TestStandard(t *testing.T) {
	for _, c := range []struct {
		name, pieces, rest string
		passed             int
	}{
		{"the house's own", piece("front", paper("side", "40", "")), "", 1},
		{"within a pencil line", piece("front", paper("side", "40", "allowance = 1.04")), "", 1},
		{"by its role", piece("front", paper("hem", "40", "role = \"hem\"\n    allowance = 4")), "", 1},
		{"a role the house has nothing for", piece("front", paper("hem", "40", "role = \"scallop\"\n    allowance = 9")), "", 0},
		{"on the fold", piece("front", "fold = cf\n"+paper("cf", "40", "allowance = 9")), "", 0},
		{"a piece's figure is reported once", piece("front", "allowance = 1.2 # fault allowance-standard warning 2mm\n"+paper("side", "40", "")+paper("top", "20", "")+paper("neck", "9", "allowance = 1")), "", 1},
		{"wider than a closure's",
			piece("back", paper("cb", "40", "allowance = 4 # fault allowance-standard warning 15mm")), "closure \"zip\" {\n  kind  = \"zip\"\n  edges = [shell.back.cb, shell.back.cb]\n}", 0},
		{"wider because the closure asks for it",
			piece("back", paper("cb", "40", "allowance = 4")), "closure \"zip\" {\n  kind      = \"zip\"\n  edges     = [shell.back.cb, shell.back.cb]\n  allowance = 4\n}", 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := ruletest.Spec(t, &allowances.Standard, shell(c.pieces, c.rest))
			require.Empty(t, r.Result.NotPossible)
			require.Equal(t, c.passed, r.Result.Passed)
		})
	}
	t.Run("says how many edges take it from the piece", func(t *testing.T) {
		r := ruletest.Spec(t, &allowances.Standard, shell(piece("front", "allowance = 1.2 # fault allowance-standard warning 2mm\n"+paper("side", "40", "")+paper("top", "20", "")), ""))
		require.Contains(t, r.Result.Findings[0].Message, "; one more edge takes the same figure from its piece.")
		require.Equal(t, "1", r.Result.Findings[0].Mend.Edits[0].Text)
	})
	t.Run("without a house", func(t *testing.T) {
		rule := allowances.Standard
		rule.Doc.House = `house "bare" { unit = "cm" }`
		r := ruletest.Spec(t, &rule, shell(piece("front", paper("side", "40", "")), ""))
		require.Zero(t, r.Result.Passed)
		require.Empty(t, r.Result.NotPossible)
	})
}

func TestClosure(t *testing.T) {
	zip := func(rest string) string {
		return "closure \"zip\" {\n  kind  = \"zip\"\n  edges = [shell.front.cf, shell.back.cb]\n  " + rest + "\n}"
	}
	for _, c := range []struct{ name, front, back, rest string }{
		{"room enough", "2", "2.5", ""},
		{"one side short of the least", "2", "1.5 # fault allowance-closure error 15mm", ""},
		{"both short", "1 # fault allowance-closure error 10mm", "1.5 # fault allowance-closure error 15mm", ""},
		{"both short alike, for which the closure's one figure is enough", "2 # fault allowance-closure error 20mm", "2", "allowance = 3"},
		{"the closure states that less will do", "1", "1", "allowance = 1"},
		{"the closure states that it needs more", "2 # fault allowance-closure error 20mm", "3", "allowance = 3"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := ruletest.Spec(t, &allowances.Closure, shell(piece("front", paper("cf", "40", "allowance = "+c.front))+piece("back", paper("cb", "40", "allowance = "+c.back)), zip(c.rest)))
			require.Empty(t, r.Result.NotPossible)
		})
	}
	t.Run("an allowance that nobody states", func(t *testing.T) {
		r := ruletest.Spec(t, &allowances.Closure, shell(piece("front", paper("cf", "40", ""))+piece("back", paper("cb", "40", "allowance = 3")), zip("")))
		require.Len(t, r.Result.NotPossible, 1)
		require.Equal(t, 1, r.Result.Passed)
	})
}

// One wrong figure makes one finding over the whole family.
func TestOneFaultOneFinding(t *testing.T) {
	engine, err := rules.New([]*rules.Rule{&allowances.Match, &allowances.Standard, &allowances.Closure, &allowances.Fold, &allowances.Drawn, &allowances.Room})
	require.NoError(t, err)
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "house.hcl"), []byte(allowances.Standard.Doc.House), 0o600))
	const closure = "closure \"zip\" {\n  kind  = \"zip\"\n  edges = [shell.front.side, shell.back.side]\n}"
	for _, c := range []struct{ name, front, back, rest string }{
		{"one side of a seam is off the house's", "", "allowance = 1.2 # fault allowance-match error 2mm", sideSeam},
		{"one side of a closure is too narrow", "", "allowance = 1 # fault allowance-closure error 10mm", closure},
		{"one side of a closure is too wide", "", "allowance = 4 # fault allowance-match error 15mm", closure},
	} {
		t.Run(c.name, func(t *testing.T) {
			ruletest.CheckIn(t, engine, dir, "trial.garment.hcl",
				shell(piece("front", paper("side", "40", c.front))+piece("back", paper("side", "40", c.back)), c.rest))
		})
	}
}

func TestFold(t *testing.T) {
	for _, c := range []struct{ name, own string }{
		{"none stated", ""},
		{"stated as none", "allowance = 0"},
		{"some stated", "allowance = mm(3) # fault allowance-fold error 3mm"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := ruletest.Spec(t, &allowances.Fold, shell(piece("front", "fold = cf\n allowance = 1\n"+paper("cf", "40", c.own)), ""))
			for _, f := range r.Result.Findings {
				require.True(t, f.Mend.Safe)
				require.Equal(t, "0", f.Mend.Edits[0].Text)
			}
		})
	}
}
