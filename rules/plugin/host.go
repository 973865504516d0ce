package plugin

import (
	"errors"
	"fmt"
	"sync"

	"understitch/model"
	"understitch/model/reckoned"
	"understitch/rules"
)

// host keeps one plugin: its module, and the children that run it. There are as
// many as ask at one time; each is used again.
type host struct {
	decl   *model.Plugin
	rule   *rules.Rule
	runner *Runner
	open   Open

	once   sync.Once // guards module, broken and the first start
	module []byte
	broken *model.Diagnostic // it can be used for no garment, and why

	mu     sync.Mutex
	idle   []*child
	closed bool
	anew   int // how often a child was given up for a new one
}

// ready loads the module and starts it a first time, so that what fails for
// every garment is told once, and compiles it once.
func (h *host) ready() *model.Diagnostic {
	h.once.Do(func() {
		if h.module, h.broken = load(h.open, h.decl); h.broken != nil {
			return
		}
		c, err := h.runner.start(h.decl, h.module)
		if err != nil {
			h.broken = told(fmt.Sprintf("the plugin %q cannot be used: %s", h.decl.Name, err), err, h.decl.Place)
			return
		}
		h.keep(c)
	})
	return h.broken
}

// take gives a child that is idle, or a new one.
func (h *host) take() (*child, error) {
	h.mu.Lock()
	if n := len(h.idle); n > 0 {
		c := h.idle[n-1]
		h.idle = h.idle[:n-1]
		h.mu.Unlock()
		return c, nil
	}
	h.mu.Unlock()
	return h.runner.start(h.decl, h.module)
}

func (h *host) keep(c *child) {
	h.mu.Lock()
	if !h.closed {
		h.idle = append(h.idle, c)
		c = nil
	}
	h.mu.Unlock()
	if c != nil {
		c.kill()
	}
}

func (h *host) close() {
	h.mu.Lock()
	h.closed = true
	h.mu.Unlock()
	h.rest()
}

// rest ends the children that are idle.
func (h *host) rest() {
	h.mu.Lock()
	idle := h.idle
	h.idle = nil
	h.mu.Unlock()
	for _, c := range idle {
		c.kill()
	}
}

// look asks the plugin about a garment in the size at hand.
func (h *host) look(g *model.Garment, ceiling rules.Severity) ([]rules.Outcome, error) {
	things := addressesOf(g)
	rows, err := h.rows(func(number int) []byte { return Table(number, g) }, func(address string) bool { return things[address] != nil })
	if err != nil {
		return nil, err
	}
	return outcomesOf(h.rule, ceiling, g, things, rows), nil
}

// addressesOf are the things of a garment by their addresses.
func addressesOf(g *model.Garment) map[string]model.Thing {
	things := map[string]model.Thing{}
	for _, t := range reckoned.Things(g) {
		things[t.Address()] = t
	}
	return things
}

// rows asks the plugin once. A child that has answered before and fails now is
// given up for a new one, so that a garment's answer does not hang on what was
// asked before it; one that took too long is not, for it would again.
func (h *host) rows(table func(number int) []byte, known func(string) bool) ([]Row, error) {
	for {
		c, err := h.take()
		if err != nil {
			return nil, err
		}
		c.asked++
		text, err := c.ask(table(c.asked))
		if err == nil {
			var rows []Row
			if rows, err = Answer(text, c.asked, known); err == nil {
				h.keep(c)
				return rows, nil
			}
		}
		late := c.late.Load()
		c.kill()
		if c.asked == 1 || late {
			return nil, err
		}
		h.mu.Lock()
		h.anew++
		h.mu.Unlock()
	}
}

// told makes a diagnostic of how a plugin failed.
func told(summary string, err error, at model.Place) *model.Diagnostic {
	d := &model.Diagnostic{Severity: "error", Summary: summary, Place: at}
	var f failure
	if errors.As(err, &f) {
		d.Detail = f.beside
	}
	return d
}
