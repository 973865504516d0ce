package builtin

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules"
	"understitch/rules/ruletest"
)

// eachFile parses the production files below a folder of the project.
func eachFile(t *testing.T, folder string, visit func(path string, f *ast.File)) {
	t.Helper()
	require.NoError(t, filepath.WalkDir(folder, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") || strings.Contains(path, "testdata") {
			return err
		}
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
		if err == nil {
			visit(path, f)
		}
		return err
	}))
}

// The model computes and never judges: nothing below model knows the rules, so no
// limit of a rule can be in it; and no rule family imports another one, so no rule
// can read another's limit.
func TestNoRuleHoldsAnothersLimit(t *testing.T) {
	imports := func(path string, f *ast.File) []string {
		var out []string
		for _, i := range f.Imports {
			out = append(out, strings.Trim(i.Path.Value, `"`))
		}
		return out
	}
	eachFile(t, "../../model", func(path string, f *ast.File) {
		for _, i := range imports(path, f) {
			require.False(t, strings.HasPrefix(i, "understitch/rules"), "%s imports %s", path, i)
		}
	})
	for _, family := range []string{"layers", "seams", "notches", "allowances", "closures", "fit", "draft", "waivers"} {
		eachFile(t, "../"+family, func(path string, f *ast.File) {
			for _, i := range imports(path, f) {
				rest, ok := strings.CutPrefix(i, "understitch/rules/")
				require.True(t, !ok || rest == "guess", "%s imports %s", path, i)
			}
		})
	}
}

// A limit is read by the rule that has it: the engine panics where a rule asks for
// one that it does not list, so every name that a family asks for must be one of its
// own.
func TestLimitsAreTheRulesOwn(t *testing.T) {
	own := map[string]map[string]bool{}
	for _, r := range Rules() {
		family := map[string]string{"body": "fit"}[r.Family]
		if family == "" {
			family = r.Family
		}
		if own[family] == nil {
			own[family] = map[string]bool{}
		}
		for _, l := range r.Limits {
			own[family][l.Name] = true
		}
	}
	for family, names := range own {
		eachFile(t, "../"+family, func(path string, f *ast.File) {
			ast.Inspect(f, func(n ast.Node) bool {
				call, ok := n.(*ast.CallExpr)
				if !ok || len(call.Args) != 1 {
					return true
				}
				sel, isSel := call.Fun.(*ast.SelectorExpr)
				name, isText := call.Args[0].(*ast.BasicLit)
				if isSel && isText && sel.Sel.Name == "Limit" {
					require.True(t, names[strings.Trim(name.Value, `"`)], "%s asks for the limit %s", path, name.Value)
				}
				return true
			})
		})
	}
}

func inForce(t *testing.T, house, src string) []string {
	t.Helper()
	engine, err := rules.New(Rules())
	require.NoError(t, err)
	var out []string
	for _, f := range ruletest.Found(t, engine, "house \"h\" { unit = \"cm\" }\n"+house+"\n", src) {
		if f.Severity >= rules.Warning && f.Rule.Name != "edge-unused" {
			out = append(out, f.Rule.Name)
		}
	}
	return out
}

func zipped(one, other string) string {
	return `garment "trial" { unit = "cm" }
layer "shell" {
  side = "outer"
  piece "back" {
    edge "left" {
      length    = 40
      allowance = ` + one + `
    }
    edge "right" {
      length    = 40
      allowance = ` + other + `
    }
  }
}
closure "zip" {
  kind  = "zip"
  edges = [shell.back.left, shell.back.right]
}
`
}

// Two edges of a closure that differ are reported however much each of them has,
// and one that is too narrow once.
func TestClosureEdgesThatDiffer(t *testing.T) {
	for _, c := range []struct {
		one, other string
		want       []string
	}{
		{"1.86", "6", []string{"allowance-match"}},
		{"1.95", "2.2", []string{"allowance-match"}},
		{"2", "2", nil},
		{"1.86", "1.86", nil},
		{"1", "2", []string{"allowance-closure"}},
		{"1", "1", []string{"allowance-closure"}},
		{"0.5", "6", []string{"allowance-closure"}},
	} {
		require.Equal(t, c.want, inForce(t, "", zipped(c.one, c.other)), "%s and %s", c.one, c.other)
	}
	off := `rule "allowance-closure" { severity = "off" }`
	require.Equal(t, []string{"allowance-match"}, inForce(t, off, zipped("1", "2")), "a rule that is off silences nothing")
}

func capped(sleeve string) string {
	return `garment "trial" { unit = "cm" }
layer "shell" {
  side = "outer"
  piece "body" {
    edge "armhole" { length = 44 }
  }
  piece "sleeve" {
    edge "cap" { length = ` + sleeve + ` }
  }
}
seam "sleeve" {
  join = [shell.sleeve.cap, shell.body.armhole]
  ease = [0, 3]
}
`
}

// A cap that is shorter than its armhole is refused however short it is, whatever
// the house says of the walk.
func TestAShortCap(t *testing.T) {
	for _, house := range []string{"", "rule \"seam-walk\" {\n  warn  = mm(20)\n  error = mm(30)\n}", `rule "seam-walk" { severity = "off" }`} {
		for _, cap := range []string{"43.9", "43.85", "43.5", "41", "38"} {
			require.Equal(t, []string{"ease-side"}, inForce(t, house, capped(cap)), "%s %s", cap, house)
		}
	}
	require.Equal(t, []string{"seam-walk"}, inForce(t, `rule "ease-side" { severity = "off" }`, capped("41")))
	require.Empty(t, inForce(t, "", capped("45")))
}
