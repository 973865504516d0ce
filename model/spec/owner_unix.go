//go:build unix

package spec

import (
	"os"
	"syscall"
)

// ownerOf is the number of a file's owner.
func ownerOf(path string) (uid int, known bool) {
	info, err := os.Stat(path)
	if err != nil {
		return 0, false
	}
	stat, ok := info.Sys().(*syscall.Stat_t)
	if !ok {
		return 0, false
	}
	return int(stat.Uid), true
}
