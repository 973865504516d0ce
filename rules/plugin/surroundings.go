package plugin

import (
	"context"
	"errors"
	"fmt"

	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/api"
	"github.com/tetratelabs/wazero/imports/wasi_snapshot_preview1"
)

// forbidden are the calls that reach for what a plugin may not have, with the
// kinds of their parameters (i for 32 bits, I for 64). All others of WASI preview
// 1 answer as in an empty room: no file, no variable, a clock that counts its own
// readings, chance that is always the same.
var forbidden = []struct{ call, what, params string }{
	{"path_open", "open the file", "iiiiiIIii"},
	{"path_create_directory", "make a folder", "iii"},
	{"path_remove_directory", "remove a folder", "iii"},
	{"path_unlink_file", "remove a file", "iii"},
	{"path_rename", "rename a file", "iiiiii"},
	{"path_symlink", "link a file", "iiiii"},
	{"path_readlink", "read a link", "iiiiii"},
	{"sock_accept", "take a connection", "iii"},
	{"sock_recv", "read from a connection", "iiiiii"},
	{"sock_send", "write to a connection", "iiiii"},
}

// surround gives a plugin what its language's own runtime asks of a system. A
// forbidden call ends the plugin, and stands in tried.
func surround(ctx context.Context, box wazero.Runtime) (tried *string, err error) {
	tried = new(string)
	b := box.NewHostModuleBuilder(wasi_snapshot_preview1.ModuleName)
	wasi_snapshot_preview1.NewFunctionExporter().ExportFunctions(b)
	for _, f := range forbidden {
		params := make([]api.ValueType, len(f.params))
		for i, c := range f.params {
			params[i] = api.ValueTypeI32
			if c == 'I' {
				params[i] = api.ValueTypeI64
			}
		}
		refuse := func(_ context.Context, m api.Module, stack []uint64) {
			*tried = f.what
			if f.call == "path_open" {
				if path, ok := m.Memory().Read(uint32(stack[2]), min(uint32(stack[3]), 200)); ok {
					*tried += fmt.Sprintf(" %q", path)
				}
			}
			panic(errors.New(*tried)) // the runtime ends the plugin with it
		}
		b.NewFunctionBuilder().
			WithGoModuleFunction(api.GoModuleFunc(refuse), params, []api.ValueType{api.ValueTypeI32}).
			Export(f.call)
	}
	_, err = b.Instantiate(ctx)
	return tried, err
}
