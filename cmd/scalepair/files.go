package main

import (
	"bytes"
	"os"

	"scalepair/cmd/scalepair/answer"
	"scalepair/cmd/scalepair/atomicfile"
	"scalepair/cmd/scalepair/build"
	"scalepair/data/fault"
)

// open reads a build file with its readings, and makes the question of it. It says so
// when the demo stands in for a build file.
func (a *app) open(path string, over *build.Flags, u answer.Units) (*answer.Question, error) {
	run, err := build.Load(path, over)
	if run != nil && (err == nil || run.Bare) {
		a.inputs = run.Inputs()
		if run.Demo() {
			a.hint("no build file given and no %s here: showing the embedded demo, which is invented", build.DefaultFile)
		}
	}
	return answer.New(a.ctx, run, err, u, a.hint)
}

// newFile is a file that a command is to write.
type newFile struct {
	Path string
	Text []byte
}

// writeFiles writes the files one after another, each whole. Without force none
// may exist yet; every one that cannot be written is named before the first is.
// With force too, nothing is written over what this run has read.
func (a *app) writeFiles(files []newFile, force bool) error {
	var faults fault.List
	for _, f := range files {
		err := atomicfile.Check(f.Path, force)
		if err == nil && a.hasRead(f.Path) {
			err = fault.Fault{What: "this run reads that file, and does not write over it", Remedy: "name another file"}
		}
		faults.Include(fault.Place{Input: f.Path}, err)
	}
	if err := faults.Err(); err != nil {
		return err
	}
	if err := a.ctx.Err(); err != nil {
		return err
	}
	for _, f := range files {
		if err := atomicfile.Write(f.Path, f.Text, force); err != nil {
			return err
		}
	}
	return nil
}

func (a *app) hasRead(path string) bool {
	info, err := os.Stat(path)
	for _, in := range a.inputs {
		if other, inErr := os.Stat(in); err == nil && inErr == nil && os.SameFile(info, other) {
			return true
		}
	}
	return false
}

// rewriteFile changes a file that this run has read, unless it was changed
// meanwhile.
func (a *app) rewriteFile(path string, was, text []byte) error {
	if now, err := os.ReadFile(path); err != nil || !bytes.Equal(now, was) {
		return fault.Fault{Place: fault.Place{Input: path}, What: "the file has changed since this run read it", Remedy: "run the command again"}
	}
	if err := a.ctx.Err(); err != nil {
		return err
	}
	return atomicfile.Write(path, text, true)
}

// plot writes a picture that was asked for.
func (a *app) plot(path, svg string, force bool) error {
	if err := a.writeFiles([]newFile{{Path: path, Text: []byte(svg)}}, force); err != nil {
		return err
	}
	a.hint("%s: wrote the picture", path)
	return nil
}
