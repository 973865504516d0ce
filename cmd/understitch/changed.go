package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"

	"understitch/model/spec"
)

// changed leaves only the garments that git finds changed since the revision:
// their own file, the house above them, or anything beside them that a spec may
// draw on. Files that git does not track yet count as changed.
func (s *selection) changed(ctx context.Context, list []found) ([]found, error) {
	if s.changedSince == "" {
		return list, nil
	}
	if strings.HasPrefix(s.changedSince, "-") {
		return nil, fmt.Errorf("--changed-since %q is not a revision", s.changedSince)
	}
	touched := map[string][]string{} // by folder that was asked, absolute paths
	var out []found
	for _, f := range list {
		if f.reason != "" {
			out = append(out, f)
			continue
		}
		file, err := filepath.Abs(f.file)
		if err != nil {
			return nil, err
		}
		dir := filepath.Dir(file)
		paths, ok := touched[dir]
		if !ok {
			if paths, err = changedFiles(ctx, dir, s.changedSince); err != nil {
				return nil, err
			}
			touched[dir] = paths
		}
		if concerns(file, paths) {
			out = append(out, f)
		}
	}
	return out, nil
}

// concerns reports whether any changed file can have to do with a garment.
func concerns(garment string, changed []string) bool {
	dir := filepath.Dir(garment)
	for _, c := range changed {
		switch {
		case c == garment:
			return true
		case strings.HasSuffix(c, suffix):
			continue // another garment
		case filepath.Base(c) == spec.HouseFile && holds(filepath.Dir(c), dir):
			return true
		case holds(dir, filepath.Dir(c)) && filepath.Base(c) != spec.HouseFile:
			return true // beside the spec or below it: it may be traced from it
		}
	}
	return false
}

// holds reports whether a folder is another one or holds it.
func holds(folder, other string) bool {
	rel, err := filepath.Rel(folder, other)
	return err == nil && filepath.IsLocal(rel)
}

// changedFiles asks git for all files of the repository of a folder that differ
// from a revision, tracked or not.
func changedFiles(ctx context.Context, dir, revision string) ([]string, error) {
	top, err := git(ctx, dir, "rev-parse", "--show-toplevel")
	if err != nil {
		return nil, fmt.Errorf("--changed-since needs a git repository: %w", err)
	}
	root := strings.TrimRight(string(top), "\n")
	// Names as git has them may pass through links; the folder as it is named here
	// is put in front of what git tells relative to it.
	prefix, err := git(ctx, dir, "rev-parse", "--show-prefix")
	if err != nil {
		return nil, err
	}
	up := dir
	if p := strings.Trim(string(prefix), "/\n"); p != "" {
		for range strings.Split(p, "/") {
			up = filepath.Dir(up)
		}
	}
	commit, err := git(ctx, root, "rev-parse", "--verify", "--end-of-options", revision+"^{commit}")
	if err != nil {
		return nil, fmt.Errorf("--changed-since %s: %w%s", revision, err, shallow(ctx, root))
	}
	unfiltered, err := withoutFilters(ctx, root)
	if err != nil {
		return nil, err
	}
	diff, err := git(ctx, root, append(unfiltered, "diff-index", "--name-only", "--no-renames", "--ignore-submodules=all", "-z", strings.TrimSpace(string(commit)), "--")...)
	if err != nil {
		return nil, fmt.Errorf("--changed-since %s: %w", revision, err)
	}
	fresh, err := git(ctx, root, "ls-files", "--others", "--exclude-standard", "-z")
	if err != nil {
		return nil, err
	}
	var out []string
	for name := range bytes.SplitSeq(append(diff, fresh...), []byte{0}) {
		if len(name) > 0 {
			out = append(out, filepath.Join(up, filepath.FromSlash(string(name))))
		}
	}
	return out, nil
}

// shallow says what to do where a revision is missing because only the newest
// part of the history was fetched.
func shallow(ctx context.Context, root string) string {
	if out, err := git(ctx, root, "rev-parse", "--is-shallow-repository"); err == nil && strings.TrimSpace(string(out)) == "true" {
		return "; this clone is shallow: fetch the revision first, or clone with the whole history"
	}
	return ""
}

// plainGit keeps git from running what the configuration of somebody else's
// repository names: monitors, hooks, pagers, helpers and filters of differences.
var plainGit = []string{
	"--no-pager",
	"-c", "core.fsmonitor=false",
	"-c", "core.hooksPath=" + os.DevNull,
	"-c", "core.untrackedCache=false",
	"-c", "core.sshCommand=false",
	"-c", "protocol.allow=never",
}

// withoutFilters are flags that switch off every filter which the repository's own
// configuration names: git would run them over files that it compares.
func withoutFilters(ctx context.Context, root string) ([]string, error) {
	list, err := git(ctx, root, "config", "--list", "--name-only", "--show-scope", "-z")
	if err != nil {
		return nil, err
	}
	var flags []string
	words := strings.Split(string(list), "\x00")
	for i := 0; i+1 < len(words); i += 2 {
		scope, key := words[i], words[i+1]
		name, ok := strings.CutPrefix(key, "filter.")
		if end := strings.LastIndexByte(name, '.'); ok && end > 0 && (scope == "local" || scope == "worktree") {
			filter := "filter." + name[:end]
			flags = append(flags, "-c", filter+".clean=", "-c", filter+".process=", "-c", filter+".required=false")
		}
	}
	return flags, nil
}

// git asks git in a folder.
func git(ctx context.Context, dir string, args ...string) ([]byte, error) {
	cmd := exec.CommandContext(ctx, "git", append(slices.Clone(plainGit), args...)...)
	cmd.Dir = dir
	cmd.Env = append(os.Environ(), "GIT_OPTIONAL_LOCKS=0", "GIT_TERMINAL_PROMPT=0", "GIT_NO_LAZY_FETCH=1")
	out, err := cmd.Output()
	var failed *exec.ExitError
	if errors.As(err, &failed) {
		first, _, _ := strings.Cut(strings.TrimSpace(string(failed.Stderr)), "\n")
		return nil, errors.New(strings.TrimPrefix(first, "fatal: "))
	}
	return out, err
}
