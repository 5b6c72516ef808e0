package build_test

import (
	"fmt"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/build"
	"scalepair/data/unit"
	"scalepair/fan/mark"
)

// offLine is a switched-off line of the template: its number, its section as
// 'marking', and what its remark begins with.
type offLine struct {
	index             int
	section, key, say string
	header            int // of the section's own line where that is switched off too, else -1
}

var (
	offHeader = regexp.MustCompile(`^(#?)\[+([a-z_]+)\]+`)
	offKey    = regexp.MustCompile(`^#([a-z_]+) = [^#]*(?:# (\w+))?`)
)

func offLines(lines []string) []offLine {
	var out []offLine
	section, header := "", -1
	for i, line := range lines {
		if m := offHeader.FindStringSubmatch(line); m != nil {
			section, header = m[2], -1
			if m[1] == "#" {
				header = i
			}
		} else if m := offKey.FindStringSubmatch(line); m != nil {
			out = append(out, offLine{i, section, m[1], m[2], header})
		}
	}
	return out
}

// switchedOn is the template with one line switched on, and its section's.
func switchedOn(lines []string, o offLine) string {
	on := append([]string{}, lines...)
	on[o.index] = on[o.index][1:]
	if o.header >= 0 {
		on[o.header] = on[o.header][1:]
	}
	return strings.Join(on, "\n")
}

// Every line that the template switches off says whether it shows the default
// or an example, and what it calls the default is what holds without it.
func TestSwitchedOffLinesTellTheDefault(t *testing.T) {
	for _, start := range []build.Start{{}, {Inches: true}, {Strings: 5}, {Strings: 4, Inches: true}} {
		t.Run(fmt.Sprintf("%+v", start), func(t *testing.T) {
			src, without, _ := template(t, start)
			lines := strings.Split(src, "\n")
			defaults := 0
			for _, o := range offLines(lines) {
				require.Contains(t, []string{"default", "example"}, o.say, "%s.%s", o.section, o.key)
				if o.say != "default" {
					continue
				}
				defaults++
				with, err := build.Read([]byte(switchedOn(lines, o)), "build.toml")
				require.NoError(t, err, "%s.%s", o.section, o.key)
				if o.section == "marking" {
					requireMarkDefault(t, o.key, with.Marking)
					continue
				}
				requireAlike(t, o.section+"."+o.key, reflect.ValueOf(*without), reflect.ValueOf(*with))
			}
			assert.Greater(t, defaults, 20)
		})
	}
}

// Every table that the template switches off reads when it is switched on as a
// whole.
func TestSwitchedOffTablesRead(t *testing.T) {
	for _, start := range []build.Start{{}, {Inches: true}, {Strings: 5}} {
		src, _, _ := template(t, start)
		lines := strings.Split(src, "\n")
		tables := 0
		for i, line := range lines {
			if m := offHeader.FindStringSubmatch(line); m == nil || m[1] != "#" {
				continue
			}
			tables++
			on := append([]string{}, lines...)
			for k := i; k < len(on) && on[k] != ""; k++ {
				on[k] = strings.TrimPrefix(on[k], "#")
			}
			_, err := build.Read([]byte(strings.Join(on, "\n")), "build.toml")
			require.NoError(t, err, line)
		}
		assert.Greater(t, tables, 8)
	}
}

// requireMarkDefault holds a key of [marking] against the default of package
// mark: in the build itself 0 stands for it.
func requireMarkDefault(t *testing.T, key string, m build.Marking) {
	switch key {
	case "tolerance_cents":
		require.Equal(t, mark.DefaultTolerance().Cents, m.ToleranceCents)
	case "nut_offset_tolerance":
		require.InDelta(t, mark.DefaultOffsetToleranceMM, m.NutOffsetTolerance.MM(), nearMM)
	default:
		t.Fatalf("no default is known for %s", key)
	}
}

// nearMM is half of 0.001 in, in which a default in millimetres is written.
const nearMM = 0.0005 * 25.4

// requireAlike compares the exported fields of two builds. Whether a value was
// stated or assumed is what must differ.
func requireAlike(t *testing.T, key string, a, b reflect.Value) {
	switch a.Kind() {
	case reflect.Struct:
		for i := range a.NumField() {
			name := a.Type().Field(i).Name
			if a.Type().Field(i).IsExported() && !strings.HasSuffix(name, "Assumed") && !strings.HasSuffix(name, "Given") {
				requireAlike(t, key+": "+name, a.Field(i), b.Field(i))
			}
		}
	case reflect.Pointer:
		require.Equal(t, a.IsNil(), b.IsNil(), key)
		if !a.IsNil() {
			requireAlike(t, key, a.Elem(), b.Elem())
		}
	case reflect.Slice:
		require.Equal(t, a.Len(), b.Len(), key)
		for i := range a.Len() {
			requireAlike(t, key, a.Index(i), b.Index(i))
		}
	case reflect.Float64:
		near := 1e-12
		if a.Type() == reflect.TypeOf(unit.Length(0)) {
			near = nearMM / 1000
		}
		require.InDelta(t, a.Float(), b.Float(), near, key)
	default:
		require.Equal(t, fmt.Sprint(a), fmt.Sprint(b), key)
	}
}
