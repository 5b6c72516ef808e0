package main

import (
	"scalepair/cmd/scalepair/document"
)

// print writes a result to stdout, whole or not at all.
func (a *app) print(o *outputFlags, r document.Result) error {
	old, err := o.options(a)
	if err != nil {
		return err
	}
	return document.Write(a.out, r, document.Options{
		Format: document.Format(old.Format), Width: old.Width, Only: old.Only, ASCII: old.ASCII, Colour: old.Color,
	})
}
