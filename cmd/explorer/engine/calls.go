package engine

import (
	"bytes"
	"runtime"

	"github.com/spf13/pflag"

	"scalepair/cmd/scalepair/answer"
	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/report"
	"scalepair/data/unit"
	"scalepair/fan/mark"
)

// calls are the calls by name: those of commands have their names and flags.
var calls = map[string]func(*Request) (any, error){
	"version": version, "demo": demo, "init": start,
	"gauges": gauges, "next": next,
	"advise": advise, "map": pairs, "pair": pair, "tension": tension, "compare": compare, "blank": blank,
	"layout": layout, "neutral": neutral, "bench": bench, "check": check, "form": form,
	"file": file, "save": save, "set": set, "keys": keys, "readings": readings, "marks": marks,
}

func version(*Request) (any, error) { return map[string]string{"go": runtime.Version()}, nil }

func gauges(r *Request) (any, error) {
	var labels []string
	q, err := r.questionOver(nil, func(f *pflag.FlagSet) { f.StringArrayVar(&labels, "gauge", nil, "") })
	if err != nil {
		return nil, err
	}
	return q.Gauges(labels)
}

func next(r *Request) (any, error) {
	var longest unit.Length
	q, err := r.question(func(f *pflag.FlagSet) { answer.LongestVar(f, &longest) })
	if err != nil {
		return nil, err
	}
	return q.Next(longest)
}

func advise(r *Request) (any, error) {
	var full bool
	q, err := r.question(func(f *pflag.FlagSet) { f.BoolVar(&full, "full", false, "") })
	if err != nil {
		return nil, err
	}
	found, err := q.Find("")
	if err != nil {
		return nil, err
	}
	return struct {
		*report.Advice
		Map *report.Pairs `json:"map"`
	}{report.NewAdvice(q.Input, found, full), report.NewPairs(q.Input, found.Result)}, nil
}

func pairs(r *Request) (any, error) {
	q, err := r.question()
	if err != nil {
		return nil, err
	}
	return q.Pairs()
}

func pair(r *Request) (any, error) {
	var marks bool
	q, err := r.question(func(f *pflag.FlagSet) { f.BoolVar(&marks, "marks", false, "") })
	if err != nil {
		return nil, err
	}
	return q.Strung(marks)
}

func tension(r *Request) (any, error) {
	var o answer.Explain
	q, err := r.question(o.Flags)
	if err != nil {
		return nil, err
	}
	return q.Tension(o)
}

func compare(r *Request) (any, error) {
	var over build.Flags
	var asked build.Comparison
	q, err := r.questionOver(&over, func(f *pflag.FlagSet) {
		answer.CompareFlags(f, &asked)
		over.Add(f, "pitch", "neutral")
	})
	if err != nil {
		return nil, err
	}
	asked.Listed = r.Columns
	return q.Compare(asked)
}

func blank(r *Request) (any, error) {
	var over build.Flags
	var of answer.Blank
	var units answer.Units
	if err := r.flags(func(f *pflag.FlagSet) {
		over.Add(f)
		units.Flags(f)
		answer.TextVar(f, &of, "blank", "")
	}); err != nil {
		return nil, err
	}
	text := r.Build
	if text == "" {
		text = answer.BareBuild
	}
	b, err := build.Read([]byte(text), buildFile, &over)
	if err != nil {
		return nil, err
	}
	return answer.FromBlank(&build.Run{Build: b}, units, of)
}

func layout(r *Request) (any, error) {
	q, err := r.question()
	if err != nil {
		return nil, err
	}
	return q.Layout()
}

func neutral(r *Request) (any, error) {
	var o answer.Neutral
	q, err := r.question(o.Flags)
	if err != nil {
		return nil, err
	}
	return q.Neutral(o)
}

func bench(r *Request) (any, error) {
	var o answer.Bench
	q, err := r.question(o.Flags)
	if err != nil {
		return nil, err
	}
	return q.Bench(o)
}

func check(r *Request) (any, error) {
	measured, err := mark.ReadReadings(bytes.NewReader([]byte(r.Marks)), marksFile)
	if err != nil {
		return nil, err
	}
	var o answer.Check
	q, err := r.question(o.Flags)
	if err != nil {
		return nil, err
	}
	found, _, err := q.Check(o, measured)
	return found, err
}
