package engine

import (
	"github.com/spf13/pflag"

	"scalepair/cmd/scalepair/answer"
	"scalepair/data/fault"
)

// fileOf is a file to be kept: what a command writes, or a text as it is.
type fileOf struct {
	Name  string `json:"name"`
	Type  string `json:"type"`
	Bytes []byte `json:"bytes"` // base64 in JSON
	What  string `json:"what"`  // in words, of a drawing
}

func file(r *Request) (any, error) {
	var kind string
	if texts := r.Flags["kind"]; len(texts) == 1 {
		kind = texts[0]
	}
	own := func(f *pflag.FlagSet) { f.StringVar(&kind, "kind", kind, "") }
	switch kind {
	case "build":
		return fileOf{buildFile, "application/toml", []byte(r.Build), ""}, nil
	case "readings":
		return fileOf{readingsFile, "text/csv", []byte(r.Readings), ""}, nil
	case "marks":
		return fileOf{marksFile, "text/csv", []byte(r.Marks), ""}, nil
	case "sheet":
		var o answer.Bench
		q, err := r.question(own, o.Flags)
		if err != nil {
			return nil, err
		}
		page, err := q.Sheet(o)
		return fileOf{"sheet.html", "text/html", page, ""}, err
	}
	var drawing answer.DrawKind
	if err := drawing.UnmarshalText([]byte(kind)); err != nil {
		return nil, fault.About("kind", err)
	}
	var o answer.Drawing
	q, err := r.question(own, o.Flags)
	if err != nil {
		return nil, err
	}
	kinds := []answer.DrawKind{drawing}
	if err := o.Settle(kinds); err != nil {
		return nil, err
	}
	drawn, err := q.Draw(o, kinds)
	if err != nil {
		return nil, err
	}
	types := map[answer.DrawKind]string{answer.PDF: "application/pdf", answer.SVG: "image/svg+xml", answer.DXF: "image/vnd.dxf"}
	return fileOf{"fan." + kind, types[drawing], drawn[0].Text, drawn[0].What}, nil
}
