package main

import (
	"bytes"
	"errors"

	"scalepair/cmd/scalepair/document"
	"scalepair/cmd/scalepair/report"
	"scalepair/data/fault"
)

// sheet writes the bench sheet: what the commands print of the choice, then the
// setting-out list, as one page.
func (a *app) sheet(in *report.Input, list *report.Bench, o *benchOptions) error {
	var advice *report.Advice
	found, err := a.find(in, &adviseOptions{})
	var nothing fault.List // no pair keeps every limit, and one was chosen by hand
	switch {
	case err == nil:
		advice = report.NewAdvice(in, found, false)
	case !errors.As(err, &nothing):
		return err
	}
	page, err := report.NewSheet(in, advice, list, o.date)
	if err != nil {
		return err
	}
	var b bytes.Buffer
	if err := page.Write(&b, document.Options{Format: document.HTML}); err != nil {
		return err
	}
	if err := a.writeFiles([]newFile{{Path: o.out, Text: b.Bytes()}}, o.force); err != nil {
		return err
	}
	a.hint("%s: wrote the bench sheet; open it in a browser, and print it from there", o.out)
	return nil
}
