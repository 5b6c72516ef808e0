package build

import (
	"bytes"
	"embed"
	"fmt"
	"strings"
	"text/template"

	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/tuning"
)

// Start says what a first build file is to be about.
type Start struct {
	// Name of the build; "My build" when blank.
	Name string
	// Tuning as notes or by name; when empty the usual tuning of Strings
	// strings is taken.
	Tuning string
	// Strings is the number of strings when Tuning is empty: 6 to 9, or 4 to 6
	// for a bass; 0 is 6. Fewer than 6 make a bass by themselves.
	Strings int
	// Bass asks for a bass where the number of strings leaves it open.
	Bass bool
	// Inches writes inches and pounds-force, else millimetres and newtons.
	Inches bool
}

//go:embed template
var templates embed.FS

// Template gives a commented build file and readings file to begin with. The
// readings are invented and say so; they are there so that every command runs
// at once, and are to be replaced.
func Template(s Start) (buildFile, readingsFile []byte, err error) {
	t, err := s.tuning()
	if err != nil {
		return nil, nil, err
	}
	p := newPage(s, t)
	var out bytes.Buffer
	if err := p.parsed().ExecuteTemplate(&out, "build.toml.tmpl", p); err != nil {
		return nil, nil, fmt.Errorf("writing the build file: %w", err)
	}
	readings, err := templates.ReadFile("template/" + p.readings())
	return alignRemarks(out.Bytes()), readings, err
}

// alignRemarks puts the remarks that the template sets off with a tab into one
// column. No tab comes from elsewhere: texts have theirs escaped.
func alignRemarks(text []byte) []byte {
	const column = 38
	lines := strings.SplitAfter(string(text), "\n")
	for i, line := range lines {
		if before, remark, found := strings.Cut(line, "\t"); found {
			lines[i] = before + strings.Repeat(" ", max(2, column-len(before))) + remark
		}
	}
	return []byte(strings.Join(lines, ""))
}

// usualGuitar names the usual tuning of so many strings, in the embedded list;
// "" where there is none.
func usualGuitar(strings int) string {
	switch strings {
	case 6:
		return "standard"
	case 7:
		return "seven-string standard"
	case 8:
		return "eight-string F#"
	case 9:
		return "nine-string C#"
	}
	return ""
}

// usualBass is usualGuitar for a bass.
func usualBass(strings int) string {
	switch strings {
	case 4:
		return "bass"
	case 5:
		return "five-string bass"
	case 6:
		return "six-string bass"
	}
	return ""
}

func (s Start) tuning() (tuning.Tuning, error) {
	if s.Tuning != "" {
		t, err := tuning.Parse(s.Tuning)
		if err == nil && (t.Strings() < fewestStrings || t.Strings() > mostStrings) {
			err = fault.Fault{What: "this tuning cannot be laid out", Given: s.Tuning,
				Remedy: fmt.Sprintf("give %d to %d notes, low string first", fewestStrings, mostStrings)}
		}
		return t, err
	}
	n, usual, kind := s.Strings, usualGuitar, "6 to 9 strings, or give the tuning"
	if n == 0 {
		n = 6
	}
	if s.Bass || n < 6 {
		usual, kind = usualBass, "4 to 6 strings for a bass, or give the tuning"
	}
	name := usual(n)
	if name == "" {
		return tuning.Tuning{}, fault.Fault{What: fmt.Sprintf("no usual tuning is known for %d strings", n), Remedy: kind}
	}
	return tuning.Parse(name)
}

// page is what the template's text is filled with. Lengths and lists are as
// TOML writes them.
type page struct {
	Name, Tuning, Instrument                         string
	Inches, IsBass, ReEntrant                        bool
	Frets, SaddleSlant                               int
	ReferenceScale, ReferenceTuning, ReferenceGauges string
	BassFrom, BassTo, TrebleFrom, TrebleTo           string
	NutSpread, SaddleSpread, BlankLength, BlankWidth string
	Dots, DoubleDots                                 string
}

func newPage(s Start, t tuning.Tuning) page {
	p := page{Name: strings.TrimSpace(s.Name), Tuning: t.String(), Inches: s.Inches, ReEntrant: t.ReEntrant()}
	if p.Name == "" {
		p.Name = "My build"
	}
	lowest, highest := ends(t)
	p.IsBass = highest <= highestBass
	r := rangeFor(p.IsBass, lowest, highest)
	p.BassFrom, p.BassTo = p.length(r.bass[0]), p.length(r.bass[1])
	p.TrebleFrom, p.TrebleTo = p.length(r.treble[0]), p.length(r.treble[1])
	p.SaddleSlant = 30
	if r.treble == shortTreble {
		p.SaddleSlant = 60 // such a fan is steep or not to be had
	}

	nutStep, saddleStep := 7.2, 10.4 // from string to string, mm
	p.Instrument, p.Frets = "guitar", 24
	p.ReferenceScale, p.ReferenceTuning = p.length(both{648, 25.5}), "E2 A2 D3 G3 B3 E4"
	p.ReferenceGauges = `["w46", "w36", "w26", "p17", "p13", "p10"]`
	if p.IsBass {
		nutStep, saddleStep = 10, 18.5
		p.Instrument, p.Frets = "bass", 22
		p.ReferenceScale, p.ReferenceTuning = p.length(both{864, 34}), "E1 A1 D2 G2"
		p.ReferenceGauges = `["w105", "w85", "w65", "w45"]`
	}
	p.Dots, p.DoubleDots = frets(usualDots(p.Frets)), frets(octaves(p.Frets))
	gaps := float64(t.Strings() - 1)
	p.NutSpread, p.SaddleSpread = p.rounded(nutStep*gaps, 0.5), p.rounded(saddleStep*gaps, 0.5)
	p.BlankLength = p.rounded(0.75*r.bass[1].mm+60, 10)
	p.BlankWidth = p.rounded(saddleStep*gaps+30, 5)
	return p
}

// frets writes a list of frets as TOML does.
func frets(list []int) string { return strings.ReplaceAll(fmt.Sprint(list), " ", ", ") }

// ends gives the lowest and the highest note.
func ends(t tuning.Tuning) (lowest, highest int) {
	lowest, highest = t.Notes[0].Semitone, t.Notes[0].Semitone
	for _, n := range t.Notes {
		lowest, highest = min(lowest, n.Semitone), max(highest, n.Semitone)
	}
	return lowest, highest
}

func (p page) readings() string {
	return map[bool]string{false: "guitar", true: "bass"}[p.IsBass] + "_" + map[bool]string{false: "mm", true: "in"}[p.Inches] + ".csv"
}

// both is one size in both systems, round in each.
type both struct{ mm, in float64 }

func (p page) length(b both) string {
	if p.Inches {
		return quote(plain(b.in) + " in")
	}
	return quote(plain(b.mm) + " mm")
}

// rounded gives the next larger size that is a whole number of steps, or of
// sixteenths of an inch.
func (p page) rounded(mm, step float64) string {
	if p.Inches {
		return quote(unit.InchFractions.Format(unit.Inches(ceil(mm/25.4, 1.0/16)), 0) + " in")
	}
	return quote(plain(ceil(mm, step)) + " mm")
}

func (p page) parsed() *template.Template {
	pick := func(metric, inch string) string {
		if p.Inches {
			return inch
		}
		return metric
	}
	t := template.New("").Funcs(template.FuncMap{
		"pick":  pick,
		"quote": quote,
		"len":   func(mm, in string) string { return quote(pick(mm+" mm", in+" in")) },
		"force": func(n, lbf string) string { return quote(pick(n+" N", lbf+" lbf")) },
	})
	return template.Must(t.ParseFS(templates, "template/build.toml.tmpl"))
}
