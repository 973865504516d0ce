package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os/exec"
	"path/filepath"
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
	diff, err := git(ctx, root, "diff", "--name-only", "--no-renames", "-z", revision, "--")
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

func git(ctx context.Context, dir string, args ...string) ([]byte, error) {
	cmd := exec.CommandContext(ctx, "git", args...)
	cmd.Dir = dir
	out, err := cmd.Output()
	var failed *exec.ExitError
	if errors.As(err, &failed) {
		first, _, _ := strings.Cut(strings.TrimSpace(string(failed.Stderr)), "\n")
		return nil, errors.New(strings.TrimPrefix(first, "fatal: "))
	}
	return out, err
}
