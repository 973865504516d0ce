package tally

import (
	"context"
	"runtime"
	"sync"
	"testing/fstest"
	"time"

	"understitch/cmd/corpus/internal/wardrobe"
	"understitch/rules"
	"understitch/rules/builtin"
	"understitch/rules/inspect"
)

// Today is the day on which all garments are checked.
var Today = time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC)

// Memory checks specs that are written nowhere, below the wardrobe's house.
type Memory struct{ in *inspect.Inspector }

// InMemory has all rules.
func InMemory() (*Memory, error) {
	engine, err := rules.New(builtin.Rules())
	if err != nil {
		return nil, err
	}
	files := fstest.MapFS{"house.hcl": {Data: []byte(wardrobe.House().Text())}}
	return &Memory{&inspect.Inspector{Engine: engine, FS: files}}, nil
}

// Check checks one spec in all its sizes.
func (m *Memory) Check(file, text string) *inspect.Report {
	return m.in.Source(context.Background(), file, []byte(text), inspect.Options{Today: Today, Jobs: 1, Lean: true})
}

// Parallel does so many things side by side.
func Parallel(n int, do func(i int)) {
	var group sync.WaitGroup
	next := make(chan int)
	for range runtime.GOMAXPROCS(0) {
		group.Go(func() {
			for i := range next {
				do(i)
			}
		})
	}
	for i := range n {
		next <- i
	}
	close(next)
	group.Wait()
}
