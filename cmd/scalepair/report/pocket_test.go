package report_test

import (
	"fmt"
	"math"
	"sort"
	"strconv"
	"strings"
)

// pocket is a pocket calculator with a notepad: the numbers by their symbols,
// as printed.
type pocket map[string]float64

// work types a printed formula in, by the usual rules: powers before products,
// products (also of numbers side by side) and quotients from left to right,
// then sums.
func (p pocket) work(formula string) (x float64, err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("%v, in %q", r, formula)
		}
	}()
	k := &keys{notes: p, rest: strings.ReplaceAll(formula, "100 x ", "100 ")}
	for s := range p {
		k.symbols = append(k.symbols, s)
	}
	sort.Slice(k.symbols, func(a, b int) bool { return len(k.symbols[a]) > len(k.symbols[b]) })
	x = k.sum()
	if k.skip(); k.rest != "" {
		panic("left over: " + k.rest)
	}
	return x, nil
}

type keys struct {
	notes   pocket
	symbols []string // longest first
	rest    string
}

func (k *keys) skip() { k.rest = strings.TrimLeft(k.rest, " ") }

func (k *keys) take(s string) bool {
	k.skip()
	if strings.HasPrefix(k.rest, s) {
		k.rest = k.rest[len(s):]
		return true
	}
	return false
}

func (k *keys) sum() float64 {
	x := 0.0
	if k.take("-") {
		x = -k.product()
	} else {
		x = k.product()
	}
	for {
		switch {
		case k.take("+"):
			x += k.product()
		case k.take("-"):
			x -= k.product()
		default:
			return x
		}
	}
}

func (k *keys) product() float64 {
	x := k.power()
	for {
		k.skip()
		switch {
		case k.take("/"):
			x /= k.power()
		case k.rest == "" || strings.ContainsAny(k.rest[:1], "+-)"):
			return x
		default:
			x *= k.power()
		}
	}
}

func (k *keys) power() float64 {
	x := k.one()
	if k.take("^") {
		if k.take("(") {
			x = math.Pow(x, k.sum())
			k.must(")")
			return x
		}
		return math.Pow(x, k.one())
	}
	return x
}

func (k *keys) must(s string) {
	if !k.take(s) {
		panic("no " + s + " before " + k.rest)
	}
}

func (k *keys) one() float64 {
	if k.take("(") {
		x := k.sum()
		k.must(")")
		return x
	}
	for _, s := range k.symbols {
		if s != "" && k.whole(s) {
			return k.notes[s]
		}
	}
	for name, f := range map[string]func(float64) float64{"sqrt(": math.Sqrt, "log2(": math.Log2, "ln(": math.Log} {
		if k.take(name) {
			x := f(k.sum())
			k.must(")")
			return x
		}
	}
	if k.whole("pi") {
		return math.Pi
	}
	k.skip()
	end := 0
	for end < len(k.rest) && strings.ContainsRune("0123456789.", rune(k.rest[end])) {
		end++
	}
	x, err := strconv.ParseFloat(k.rest[:end], 64)
	if err != nil {
		panic("unknown: " + k.rest)
	}
	k.rest = k.rest[end:]
	return x
}

// whole takes a symbol that is not the beginning of a longer one.
func (k *keys) whole(s string) bool {
	k.skip()
	if !strings.HasPrefix(k.rest, s) {
		return false
	}
	after := k.rest[len(s):]
	if after != "" && !strings.ContainsAny(after[:1], " ()^/+-") {
		return false
	}
	if strings.HasPrefix(after, "(") {
		return false // a function, or a symbol such as u(w) that is not noted
	}
	k.rest = after
	return true
}
