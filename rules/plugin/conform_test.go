package plugin

import (
	"errors"
	"fmt"
	"testing"

	"github.com/hashicorp/hcl/v2"
	"github.com/stretchr/testify/require"

	"understitch/model/spec"
)

func trials(t *testing.T, module []byte, good, bad []string) Trials {
	t.Helper()
	p := named("darts", module)
	texts := func(list []string) (out []spec.Text) {
		for _, x := range list {
			out = append(out, spec.Text{Text: x, Range: hcl.Range{Filename: "house.hcl"}})
		}
		return out
	}
	return Try(runner(t), BesideIn(files(p, module), "wardrobe/house.hcl"), nil,
		&spec.Plugin{Plugin: p, Good: texts(good), Bad: texts(bad)},
		func(name string) ([]byte, error) {
			if name == "wide.hcl" {
				return fmt.Appendf(nil, text, "bodice", 5.0), nil
			}
			return nil, errors.New(name + ": there is no such file")
		})
}

// The plugin that people begin with is as it must be.
func TestTryTheStarter(t *testing.T) {
	narrow := fmt.Sprintf(text, "bodice", 3.0)
	got := trials(t, guest(t, starterSource), []string{narrow, "wide.hcl"}, []string{"wide.hcl", narrow, "gone.hcl"})
	require.Empty(t, got.Faults)
	require.Len(t, got.Examples, 5)
	require.Empty(t, got.Examples[0].Fault)
	require.Equal(t, "it is to be good, and the rule finds a fault at shell.front.dart.waist: "+
		"this dart takes in 5.0 cm; from 4.0 cm on make two of it", got.Examples[1].Fault)
	require.Empty(t, got.Examples[2].Fault)
	require.Equal(t, "it is to be bad, and the rule finds nothing in it", got.Examples[3].Fault)
	require.Equal(t, "gone.hcl: there is no such file", got.Examples[4].Fault)
}

func TestTryWhatAnswersOtherwise(t *testing.T) {
	module := guest(t, "testdata/hostile")
	for _, c := range []struct{ name, want string }{
		{"plain", "of plain it says something else when told of figures that it cannot know"},
		{"counts-up", "of counts-up it says something else when asked again"},
		{"once", "it does not last from one garment to the next: it was begun anew "},
		{"exit", "of exit: it ended, with status 1, where it should have answered; it said: I will not"},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.Contains(t, fmt.Sprint(trials(t, module, []string{fmt.Sprintf(text, c.name, 3.0)}, nil).Faults), c.want)
		})
	}
	require.Equal(t, []string{`the plugin "darts" cannot be used: it ended, with status 0, where it should have answered`}, trials(t, silent, nil, nil).Faults)
}
