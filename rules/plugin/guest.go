package plugin

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"runtime"
	"runtime/debug"
	"strings"

	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/sys"
)

// settings is what the parent tells the child.
type settings struct {
	Name   string `json:"name"`
	Memory int64  `json:"memory"` // bytes
	Cache  string `json:"cache"`  // folder for this module when compiled; "" for none
}

// ending is how a plugin came to its end.
type ending struct {
	Refused string `json:"refused,omitempty"` // it could not be begun, and why
	Reached string `json:"reached,omitempty"` // it reached for what it may not have
	Trap    string `json:"trap,omitempty"`    // it fell over
	Memory  bool   `json:"memory,omitempty"`  // it took more memory than it may
	Code    uint32 `json:"code,omitempty"`    // its exit status
}

// What a child may take: to compile a module; and once that is done, beside the
// plugin's own memory, for the plugin's calls and for the runtime. Past the
// lesser figures it collects what is no longer used.
const (
	compileMost = 3 << 30
	compileTidy = 256 << 20
	besideMost  = 192 << 20
	tidyPast    = 32 << 20
)

// Serve is the child's side: it takes a module from its standard input, runs it
// with the input that follows, and writes what comes of it to its standard
// output. It ends the process where the parent has gone or the plugin took too
// much memory. The error is of the pipes alone; how the plugin ended is told to
// the parent.
func Serve(stdin io.Reader, stdout io.Writer) error {
	debug.SetGCPercent(-1) // a module that was compiled before is loaded before there is much to collect
	debug.SetMemoryLimit(compileTidy)
	if runtime.GOMAXPROCS(0) < 2 {
		runtime.GOMAXPROCS(2) // a plugin that spins must not starve what watches it
	}
	var s settings
	kind, body, err := readFrame(stdin, nil)
	if err != nil || kind != frameSettings {
		return errors.New("this command is for understitch itself, which runs plugins through it")
	}
	if err := json.Unmarshal(body, &s); err != nil {
		return fmt.Errorf("the settings of a plugin: %w", err)
	}
	kind, module, err := readFrame(stdin, nil)
	if err != nil || kind != frameModule {
		return fmt.Errorf("the module of plugin %s did not come", s.Name)
	}
	out := &framer{out: stdout}
	return out.end(run(s, module, stdin, out))
}

func (f *framer) end(e ending) error {
	text, err := json.Marshal(e)
	if err != nil {
		return err
	}
	return f.write(frameEnd, text)
}

// run compiles a module and runs it to its end.
func run(s settings, module []byte, stdin io.Reader, out *framer) ending {
	tooMuch := func() {
		_ = out.end(ending{Memory: true})
		os.Exit(1)
	}
	watch(compileMost, tooMuch)
	ctx := context.Background()
	box, compiled, err := compile(ctx, s, module)
	if err != nil {
		return ending{Refused: firstLine(err)}
	}
	tried, err := surround(ctx, box)
	if err != nil {
		return ending{Refused: firstLine(err)}
	}
	// A collection waits for the plugin's code to pause, which it need not ever,
	// and all else here, the watch too, would wait with it. So from now on there
	// is one only where the plugin itself waits for input.
	debug.SetMemoryLimit(math.MaxInt64)
	bound := taken() + uint64(s.Memory)
	watch(bound+besideMost, tooMuch)
	in := newInput(stdin, func() {
		if taken() > bound+tidyPast {
			runtime.GC()
		}
	})
	if err := out.write(frameReady, nil); err != nil {
		return ending{}
	}
	config := wazero.NewModuleConfig().WithName("").
		WithArgs(s.Name).
		WithStdin(in).
		WithStdout(stream{out, frameOutput}).
		WithStderr(stream{out, frameNotes})
	_, err = box.InstantiateModule(ctx, compiled, config)
	var exit *sys.ExitError
	switch {
	case *tried != "":
		return ending{Reached: *tried}
	case errors.As(err, &exit):
		return ending{Code: exit.ExitCode()}
	case err != nil:
		return ending{Trap: firstLine(err)}
	}
	return ending{}
}

// compile makes a runtime with the plugin's limits and compiles the module in
// it, from the cache where that can be read.
func compile(ctx context.Context, s settings, module []byte) (wazero.Runtime, wazero.CompiledModule, error) {
	config := wazero.NewRuntimeConfig().
		WithMemoryLimitPages(uint32(max(s.Memory>>16, 1))).
		WithMemoryCapacityFromMax(true) // set aside at once, taken up page by page
	if dir := trusted(s.Cache); dir != "" {
		if cache, err := wazero.NewCompilationCacheWithDir(dir); err == nil {
			box := wazero.NewRuntimeWithConfig(ctx, config.WithCompilationCache(cache))
			if compiled, err := box.CompileModule(ctx, module); err == nil {
				seal(dir)
				return box, compiled, nil
			}
		}
	}
	box := wazero.NewRuntimeWithConfig(ctx, config)
	compiled, err := box.CompileModule(ctx, module)
	return box, compiled, err
}

// firstLine is what an error says without the calls that led to it.
func firstLine(err error) string {
	line, _, _ := strings.Cut(err.Error(), "\n")
	return line
}
