package demo

import (
	"io/fs"
	"path"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"understitch/rules"
	"understitch/rules/builtin"
	"understitch/rules/inspect"
	"understitch/rules/planted"
	"understitch/rules/ruletest"
)

const ending = ".garment.hcl"

// wardrobeFiles lists the garments of a folder by the names they share with
// their twins.
func wardrobeFiles(t *testing.T, pattern, cut string) []string {
	t.Helper()
	files, err := fs.Glob(Files(), pattern)
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for i, f := range files {
		files[i] = strings.TrimSuffix(path.Base(f), cut)
	}
	return files
}

func inspectFile(t *testing.T, file string) (*inspect.Report, string) {
	t.Helper()
	engine, err := rules.New(builtin.Rules())
	require.NoError(t, err)
	src, err := fs.ReadFile(Files(), file)
	require.NoError(t, err)
	in := &inspect.Inspector{Engine: engine, FS: Files()}
	return in.File(t.Context(), file, inspect.Options{Today: time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC)}), string(src)
}

func TestEveryGarmentHasATwin(t *testing.T) {
	clean := wardrobeFiles(t, "*"+ending, ending)
	require.GreaterOrEqual(t, len(clean), 5)
	require.Equal(t, clean, wardrobeFiles(t, "faulty/*"+ending, ".faulty"+ending))
}

func TestCleanGarmentsHaveNoFindings(t *testing.T) {
	for _, name := range wardrobeFiles(t, "*"+ending, ending) {
		t.Run(name, func(t *testing.T) {
			report, src := inspectFile(t, name+ending)
			require.Empty(t, planted.Faults(src), "a garment in order states a fault")
			ruletest.Compare(t, report, src)
			require.Equal(t, name, report.Garment)
			require.Greater(t, report.Result.Passed, 50, "hardly anything was checked")
			for _, missing := range report.Result.NotPossible {
				require.Contains(t, missing.Reason, "no drawing", "%s: %s", missing.Rule.Name, missing.Subject)
				require.Equal(t, "paper-skirt", name, "%s: %s: %s", missing.Rule.Name, missing.Subject, missing.Reason)
			}
		})
	}
}

func TestTwinsHaveTheirFaultsAndNoOthers(t *testing.T) {
	for _, name := range wardrobeFiles(t, "*"+ending, ending) {
		t.Run(name, func(t *testing.T) {
			report, src := inspectFile(t, "faulty/"+name+".faulty"+ending)
			require.NotEmpty(t, planted.Faults(src), "a twin states no fault")
			ruletest.Compare(t, report, src)
			require.Equal(t, name+"-faulty", report.Garment)
		})
	}
}

// One house file holds for the whole wardrobe, the twins' folder included.
func TestTheHouseHoldsForTheTwins(t *testing.T) {
	engine, err := rules.New(builtin.Rules())
	require.NoError(t, err)
	in := &inspect.Inspector{Engine: engine, FS: Files()}
	house, _, diagnostics := in.House("faulty")
	require.Empty(t, diagnostics)
	require.NotNil(t, house)
	require.Equal(t, "harbour-lane", house.Name)
}
