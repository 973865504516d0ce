package inspect

import (
	"context"
	"fmt"
	"io/fs"
	"testing"
	"testing/fstest"
	"time"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/model/body"
	"understitch/rules"
	"understitch/rules/seams"
)

func inspector(t *testing.T, files fs.FS, list ...*rules.Rule) *Inspector {
	t.Helper()
	if len(list) == 0 {
		list = []*rules.Rule{&seams.Walk}
	}
	engine, err := rules.New(list)
	require.NoError(t, err)
	return &Inspector{Engine: engine, FS: files}
}

// spec is a garment of two paper pieces whose seam differs by so many cm in
// each size.
func skirt(front string) string {
	return `garment "skirt" { 
  unit  = "cm"
  sizes = ["38", "40"]
}
size "38" { waist_girth = 70 }
size "40" { waist_girth = 74 }
layer "shell" {
  side = "outer"
  piece "front" {
    edge "side" { length = ` + front + ` }
  }
  piece "back" {
    edge "side" { length = 60 }
  }
}
seam "side" { join = [shell.front.side, shell.back.side] }
`
}

func file(text string) *fstest.MapFile { return &fstest.MapFile{Data: []byte(text)} }

func TestFromAFileSystem(t *testing.T) {
	in := inspector(t, fstest.MapFS{
		"house.hcl":                 file("house \"h\" { unit = \"cm\" }\nrule \"seam-walk\" { severity = \"note\" }\n"),
		"shop/skirt.garment.hcl":    file(skirt("61")),
		"own/house.hcl":             file("house \"o\" { unit = \"cm\" }\n"),
		"own/deep/gown.garment.hcl": file(skirt("graded(60, 0.2)")),
	})
	var done int
	reports, err := in.Files(t.Context(), []string{"shop/skirt.garment.hcl", "own/deep/gown.garment.hcl", "gone.garment.hcl"},
		Options{Done: func() { done++ }})
	require.NoError(t, err)
	require.Equal(t, 3, done)

	require.Len(t, reports[0].Result.Findings, 1)
	require.Equal(t, rules.Note, reports[0].Result.Findings[0].Severity, "the house above says so")
	require.Equal(t, []string{"38", "40"}, reports[0].Result.Findings[0].Sizes)
	require.Len(t, reports[0].Models, 2)

	require.Len(t, reports[1].Result.Findings, 1)
	require.Equal(t, rules.Warning, reports[1].Result.Findings[0].Severity, "the nearer house holds")
	require.Equal(t, []string{"40"}, reports[1].Result.Findings[0].Sizes)

	require.False(t, reports[2].Complete())
	require.Equal(t, "gone.garment.hcl", reports[2].File)
}

// shut is a file system whose files may not be read.
type shut struct{}

func (shut) Open(name string) (fs.File, error) {
	return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrPermission}
}

func TestAFileThatMayNotBeRead(t *testing.T) {
	r := inspector(t, shut{}).File(t.Context(), "shut.garment.hcl", Options{})
	require.Len(t, r.Diagnostics, 1)
	require.Contains(t, r.Diagnostics[0].Error(), "shut.garment.hcl:1:1: the file cannot be read")
	require.Contains(t, r.Diagnostics[0].Error(), "permission")
}

func TestSizes(t *testing.T) {
	in := inspector(t, fstest.MapFS{"a.garment.hcl": file(skirt("graded(60, 1)"))})
	r := in.File(t.Context(), "a.garment.hcl", Options{Sizes: []string{"40"}})
	require.Equal(t, []string{"40"}, r.Sizes)
	require.Len(t, r.Models, 1)
	require.True(t, r.Complete())

	r = in.File(t.Context(), "a.garment.hcl", Options{Sizes: []string{"44"}})
	require.False(t, r.Complete())
	require.Contains(t, r.Diagnostics[0].Error(), `there is no size "44" of this garment; it is made in 38, 40`)
}

func TestWearers(t *testing.T) {
	in := inspector(t, fstest.MapFS{"a.garment.hcl": file(`garment "a" { unit = "cm" }
body { waist_girth = 70 }
layer "shell" {
  side = "outer"
  piece "front" {
    edge "side" { length = body.waist_girth }
  }
  piece "back" {
    edge "side" { length = 70 }
  }
}
seam "side" { join = [shell.front.side, shell.back.side] }
`)})
	wearers := []body.Wearer{{Name: "anna", Body: map[string]float64{"waist_girth": 700}}, {Name: "rosa", Body: map[string]float64{"waist_girth": 720}}}
	r := in.File(t.Context(), "a.garment.hcl", Options{Wearers: &body.Table{Wearers: wearers}, Lean: true})
	require.Empty(t, r.Diagnostics)
	require.Equal(t, []string{"anna", "rosa"}, r.Sizes)
	require.Empty(t, r.Models, "no model is kept")
	require.Equal(t, model.Centimetre, r.Unit)
	require.Len(t, r.Result.Findings, 1)
	require.Equal(t, []string{"rosa"}, r.Result.Findings[0].Sizes)
	require.InDelta(t, 20, r.Result.Findings[0].Measured, 1e-9)
}

// A wearer who lacks a measure is told, and the others are looked at all the
// same; the report is the same whatever the number of workers.
func TestWearersSideBySide(t *testing.T) {
	in := inspector(t, fstest.MapFS{"a.garment.hcl": file(`garment "a" { unit = "cm" }
body { waist_girth = 70 }
layer "shell" {
  side = "outer"
  piece "front" {
    edge "side" { length = body.waist_girth }
  }
  piece "back" {
    edge "side" { length = 70 }
  }
}
seam "side" { join = [shell.front.side, shell.back.side] }
`)})
	wearers := []body.Wearer{{Name: "none", Body: map[string]float64{"hip_girth": 900}}}
	for i := range 200 {
		wearers = append(wearers, body.Wearer{Name: fmt.Sprint("w", i), Body: map[string]float64{"waist_girth": 700 + float64(i%5)}})
	}
	done := make(chan bool, len(wearers))
	one := in.File(t.Context(), "a.garment.hcl", Options{Wearers: &body.Table{Wearers: wearers}, Lean: true})
	eight := in.File(t.Context(), "a.garment.hcl", Options{Wearers: &body.Table{Wearers: wearers}, Lean: true, Jobs: 8, Done: func() { done <- true }})
	require.Len(t, done, len(wearers))
	require.False(t, one.Complete())
	require.Len(t, one.Diagnostics, 1)
	require.Len(t, one.Result.Findings, 1)
	require.Len(t, one.Result.Findings[0].Sizes, 3*40)
	require.InDelta(t, 4, one.Result.Findings[0].Measured, 1e-9)
	require.Equal(t, one.Result.Findings, eight.Result.Findings)
	require.Equal(t, one.Diagnostics, eight.Diagnostics)
	require.Equal(t, one.Result.Passed, eight.Result.Passed)
}

// A rule that fails costs its own garment and no other.
func TestAFaultOfOurs(t *testing.T) {
	broken := seams.Walk
	broken.Each = rules.Seams(func(p *rules.Pass, s *model.Seam) {
		if p.Garment.Name == "falls" {
			panic("out of thread")
		}
		p.Good(rules.Say{})
	})
	in := inspector(t, fstest.MapFS{
		"a.garment.hcl": file(skirt("60")),
		"b.garment.hcl": file("garment \"falls\" { unit = \"cm\" }\n" + skirt("60")[len("garment \"skirt\" { \n  unit  = \"cm\"\n  sizes = [\"38\", \"40\"]\n}\n"):]),
		"c.garment.hcl": file(skirt("60")),
	}, &broken)
	many := in.File(t.Context(), "b.garment.hcl", Options{Jobs: 4, Wearers: &body.Table{Wearers: make([]body.Wearer, 3)}})
	require.Contains(t, many.Diagnostics[0].Summary, "out of thread")
	require.Contains(t, string(many.Stack), "TestAFaultOfOurs.", "where the rule fell, though another worker told of it")
	require.NotContains(t, many.Diagnostics[0].Detail, "goroutine", "what users read is plain")

	reports, err := in.Files(t.Context(), []string{"a.garment.hcl", "b.garment.hcl", "c.garment.hcl"}, Options{Jobs: 2})
	require.NoError(t, err)
	require.True(t, reports[0].Complete())
	require.False(t, reports[1].Complete())
	require.Contains(t, reports[1].Diagnostics[0].Summary, "out of thread")
	require.True(t, reports[2].Complete())
}

func TestStopped(t *testing.T) {
	in := inspector(t, fstest.MapFS{"a.garment.hcl": file(skirt("60"))})
	ctx, stop := context.WithCancel(t.Context())
	stop()
	reports, err := in.Files(ctx, []string{"a.garment.hcl"}, Options{})
	require.ErrorIs(t, err, context.Canceled)
	require.False(t, reports[0].Complete())
	require.Equal(t, "it was not looked at", reports[0].Stopped)
}

// The order is that of the files, whatever the number of workers.
func TestOrder(t *testing.T) {
	files := fstest.MapFS{}
	var names []string
	for i := range 40 {
		name := fmt.Sprintf("g%02d.garment.hcl", i)
		files[name] = file(skirt(fmt.Sprintf("%d", 60+i%3)))
		names = append(names, name)
	}
	in := inspector(t, files)
	one, err := in.Files(t.Context(), names, Options{Jobs: 1, Today: time.Unix(0, 0)})
	require.NoError(t, err)
	eight, err := in.Files(t.Context(), names, Options{Jobs: 8, Today: time.Unix(0, 0)})
	require.NoError(t, err)
	for i := range one {
		require.Equal(t, names[i], eight[i].File)
		require.Equal(t, one[i].Result.Findings, eight[i].Result.Findings)
	}
}
