package rules_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/model/spec"
	"understitch/rules"
	"understitch/rules/builtin"
	"understitch/rules/draft"
	"understitch/rules/seams"
)

func engineOf(t *testing.T) *rules.Engine {
	t.Helper()
	engine, err := rules.New(builtin.Rules())
	require.NoError(t, err)
	return engine
}

func houseOf(t *testing.T, body string) *model.House {
	t.Helper()
	h, diags := spec.ReadHouse("house.hcl", []byte("house \"h\" { unit = \"cm\" }\n"+body))
	require.Empty(t, diags)
	return h.Model()
}

// What holds for a garment follows from the names of its file and the order of
// the house's blocks, and is known by its line.
func TestStyles(t *testing.T) {
	engine := engineOf(t)
	settings, diags := engine.Settings(houseOf(t, `rule "seam-walk" { warn = 0.2 }
styles "archive/**" {
  rule "seam-walk" {
    severity = "warning"
    error    = 0.5
  }
}
styles "**/{gown,coat}*.garment.hcl" {
  rule "seam-walk" { severity = "off" }
}
`))
	require.Empty(t, diags)
	for _, c := range []struct {
		file     string
		severity rules.Severity
		line     int // that sets the severity
		warn     float64
		error    float64
		lines    []int // that set the limits
	}{
		{"skirt.garment.hcl", rules.Error, 0, 2, 3.2, []int{2, 0}},
		{"archive/skirt.garment.hcl", rules.Warning, 5, 2, 5, []int{2, 6}},
		{"archive/old/skirt.garment.hcl", rules.Warning, 5, 2, 5, []int{2, 6}},
		{"archived/skirt.garment.hcl", rules.Error, 0, 2, 3.2, []int{2, 0}},
		{"archive/gown-3.garment.hcl", rules.Off, 10, 2, 5, []int{2, 6}},
		{"coat.garment.hcl", rules.Off, 10, 2, 3.2, []int{2, 0}},
	} {
		t.Run(c.file, func(t *testing.T) {
			held := settings.For(c.file).InForce("seam-walk")
			require.Equal(t, c.severity, held.Severity)
			require.Equal(t, c.line, held.SeverityAt.Start.Line)
			require.InDeltaSlice(t, []float64{c.warn, c.error}, []float64{held.Limits[0].Value, held.Limits[1].Value}, 1e-12)
			require.Equal(t, c.lines, []int{held.LimitsAt[0].Start.Line, held.LimitsAt[1].Start.Line})
		})
	}
	require.Equal(t, rules.Error, settings.InForce("seam-walk").Severity, "what one garment has leaves the others alone")
}

// Names that are not known are told with the nearest that is, wherever they
// stand.
func TestUnknownNames(t *testing.T) {
	engine := engineOf(t)
	for _, c := range []struct{ name, house, want string }{
		{"rule", "rule \"seam-wlak\" {}\n", `2:1 there is no rule called "seam-wlak"; did you mean "seam-walk"?`},
		{"limit", "rule \"seam-walk\" { wran = 1 }\n", `2:27 there is no limit of seam-walk called "wran"; did you mean "warn"?`},
		{"limit that is like none", "rule \"seam-walk\" { shrinkage = 1 }\n", `2:32 there is no limit of seam-walk called "shrinkage"; known are severity, warn, error, fits`},
		{"rule of some garments", "styles \"a/**\" {\n  rule \"seam-wlak\" {}\n}\n", `3:3 there is no rule called "seam-wlak"; did you mean "seam-walk"?`},
		{"limit of some garments", "styles \"a/**\" {\n  rule \"seam-walk\" { wran = 1 }\n}\n", `3:29 there is no limit of seam-walk called "wran"; did you mean "warn"?`},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, diags := engine.Settings(houseOf(t, c.house))
			require.Len(t, diags, 1)
			d := diags[0]
			require.Equal(t, c.want, fmt.Sprintf("%d:%d %s; %s", d.Place.Start.Line, d.Place.Start.Column, d.Summary, d.Detail))
		})
	}
}

// What cannot be waived cannot be switched off either.
func TestFirmRulesStayOn(t *testing.T) {
	engine, err := rules.New([]*rules.Rule{&draft.OutlineClosed, &seams.Walk})
	require.NoError(t, err)
	settings, diags := engine.Settings(houseOf(t, "rule \"outline-closed\" { severity = \"off\" }\nrule \"seam-walk\" { severity = \"off\" }\n"))
	require.Len(t, diags, 1)
	require.Equal(t, "outline-closed cannot be switched off", diags[0].Summary)
	require.Equal(t, 2, diags[0].Place.Start.Line)
	require.Equal(t, rules.Error, settings.InForce("outline-closed").Severity)
	require.Equal(t, rules.Off, settings.InForce("seam-walk").Severity)
}
