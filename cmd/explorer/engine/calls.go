package engine

import (
	"bytes"
	"runtime"

	"github.com/spf13/pflag"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/job"
	"scalepair/cmd/scalepair/report"
	"scalepair/data/unit"
	"scalepair/fan/mark"
)

// calls are the calls by name: those of commands have their names and flags.
var calls map[string]func(*Request) (any, error)

func init() {
	calls = map[string]func(*Request) (any, error){
		"version": version, "demo": demo, "init": start,
		"gauges": gauges, "next": next,
		"advise": advise, "map": pairs, "pair": pair, "tension": tension, "compare": compare, "blank": blank,
		"layout": layout, "fan": lines, "neutral": neutral, "bench": bench, "check": check, "form": form,
		"file": file, "save": save, "readings": readings, "marks": marks, "keys": keys, "set": set,
	}
}

func version(*Request) (any, error) { return map[string]string{"go": runtime.Version()}, nil }

func gauges(r *Request) (any, error) {
	var labels []string
	j, err := r.jobOver(nil, func(f *pflag.FlagSet) { f.StringArrayVar(&labels, "gauge", nil, "") })
	if err != nil {
		return nil, err
	}
	return j.Gauges(labels)
}

func next(r *Request) (any, error) {
	var longest unit.Length
	j, err := r.job(func(f *pflag.FlagSet) { job.LongestVar(f, &longest) })
	if err != nil {
		return nil, err
	}
	return j.Next(longest)
}

func advise(r *Request) (any, error) {
	var full bool
	j, err := r.job(func(f *pflag.FlagSet) { f.BoolVar(&full, "full", false, "") })
	if err != nil {
		return nil, err
	}
	found, err := j.Find("")
	if err != nil {
		return nil, err
	}
	return struct {
		*report.Advice
		Map *report.Pairs `json:"map"`
	}{report.NewAdvice(j.Input, found, full), report.NewPairs(j.Input, found.Result)}, nil
}

func pairs(r *Request) (any, error) {
	j, err := r.job()
	if err != nil {
		return nil, err
	}
	return j.Pairs()
}

func pair(r *Request) (any, error) {
	j, err := r.job()
	if err != nil {
		return nil, err
	}
	return j.Strung()
}

func tension(r *Request) (any, error) {
	var o job.Explain
	j, err := r.job(o.Flags)
	if err != nil {
		return nil, err
	}
	return j.Tension(o)
}

func compare(r *Request) (any, error) {
	var over build.Flags
	var asked build.Comparison
	j, err := r.jobOver(&over, func(f *pflag.FlagSet) {
		job.CompareFlags(f, &asked)
		over.Add(f, "pitch", "neutral")
	})
	if err != nil {
		return nil, err
	}
	asked.Listed = r.Columns
	return j.Compare(asked)
}

func blank(r *Request) (any, error) {
	var over build.Flags
	var of job.Blank
	var units job.Units
	if err := r.flags(func(f *pflag.FlagSet) {
		over.Add(f)
		units.Flags(f)
		job.TextVar(f, &of, "blank", "")
	}); err != nil {
		return nil, err
	}
	text := r.Build
	if text == "" {
		text = job.BareBuild
	}
	b, err := build.Read([]byte(text), buildFile, &over)
	if err != nil {
		return nil, err
	}
	return job.FromBlank(&build.Run{Build: b}, units, of)
}

func layout(r *Request) (any, error) {
	j, err := r.job()
	if err != nil {
		return nil, err
	}
	return j.Layout()
}

func lines(r *Request) (any, error) {
	j, err := r.job()
	if err != nil {
		return nil, err
	}
	return j.Lines()
}

func neutral(r *Request) (any, error) {
	var o job.Neutral
	j, err := r.job(o.Flags)
	if err != nil {
		return nil, err
	}
	return j.Neutral(o)
}

func bench(r *Request) (any, error) {
	var o job.Bench
	j, err := r.job(o.Flags)
	if err != nil {
		return nil, err
	}
	return j.Bench(o)
}

func check(r *Request) (any, error) {
	measured, err := mark.ReadReadings(bytes.NewReader([]byte(r.Marks)), marksFile)
	if err != nil {
		return nil, err
	}
	var o job.Check
	j, err := r.job(o.Flags)
	if err != nil {
		return nil, err
	}
	found, _, err := j.Check(o, measured)
	return found, err
}
