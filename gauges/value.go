package gauges

import "math"

// value is a linear density with its uncertainty in parts, kg/m.
type value struct {
	w       float64
	indep   float64
	bounded float64 // the parts of indep that have bounds, see fourthSum
	common  parts
}

// u is the whole standard uncertainty.
func (v value) u() float64 { return RootSum(v.indep, v.common.size()) }

// Input is one input of a reading and what it does to the linear density.
type Input struct {
	Name   string  // in plain words: "mass, step of the balance"
	RelU   float64 // sensitivity times relative standard uncertainty; the sign matters only where Source is shared
	Source string  // the error that other readings share; "" where it is this reading's own

	Bounded bool // anywhere within +-sqrt(3) RelU, as a rounding is; else normal
}

// Input names where no other reading shares the error.
const (
	inputMassStep       = "mass, step of the balance"
	inputRepeat         = "mass, repeatability of the balance"
	inputLengthStep     = "length, step of the ruler"
	inputHungResolution = "hung mass, step of the scales"
	inputPitch          = "pitch"
	inputStretch        = "stretch, core unknown"
	inputNoClamps       = "clamps, core unknown"
)

// Work gives the linear density (kg/m) that one weighed or hung reading stands
// for and what each of its inputs adds to the uncertainty. ea (N) and ei (N m2)
// are the core's stiffness against stretching and bending, ea 0 where unknown;
// only a hung reading uses them. A listed reading gives 0 and nothing.
func (t Instruments) Work(r Reading, ea, ei float64) (linearDensity float64, inputs []Input) {
	switch r.Kind {
	case Weighed:
		w, in := t.weighWork(&r)
		return w, in[:]
	case Hung:
		w, in := t.hangWork(&r, ea, ei)
		return w, in[:]
	}
	return 0, nil
}

// weighWork is the linear density of one weighing.
//
//	w = m/(l n)
//	(u/w)^2 = (d_m^2/12 + s^2)/m^2 + (d_l^2/12)/l^2
//	common: +(a_m/sqrt 3)/m from the balance, -(a_l/sqrt 3)/l from the ruler
//
// m: mass of all pieces, kg; l: length of each, m; n: pieces; d: steps; s: the
// balance's repeatability; a: accuracies. The row's steps stand before the
// file's. Source: the product rule of the Guide, 5.1.6.
func (t Instruments) weighWork(r *Reading) (float64, [5]Input) {
	m, l := r.MassKg, r.LengthM
	return m / (l * float64(r.pieces())), [5]Input{
		{inputMassStep, StepU(t.massStep(r)) / m, "", true},
		{inputRepeat, float64(t.BalanceRepeatability) / m, "", false},
		{inputLengthStep, StepU(t.lengthStep(r)) / l, "", true},
		{"mass, accuracy of the balance", BoundU(float64(t.BalanceAccuracy)) / m, sourceBalance, true},
		{"length, accuracy of the ruler", -BoundU(float64(t.RulerAccuracy)) / l, sourceRuler, true},
	}
}

// unknownStretch is the standard uncertainty taken for the stretch factor of a
// hung string whose stiffness is unknown: strings at pitch stretch by 0.3 to
// 0.9 %, and the factor is left at 1. Judgement.
const unknownStretch = 0.006

// hangWork is the linear density of one hung-weight pitch test. The hung string
// has grown longer and so lighter per length than a slack one, by Mg/EA, and
// its clamped ends make it sound sharp.
//
//	w = M g/(2 l f)^2 (1 + M g/EA) K(eps),  eps = sqrt(EI/M g)/l
//
// M: everything that hangs, kg; g: gravity, m/s2; l: clamp to clamp, m; f:
// sounded pitch, Hz; EA, EI: stiffness of the core, N and N m2; K: clampFactor.
// EA 0 is unknown: both factors are 1, with unknownStretch and unknownClamps.
// Combine refuses eps above 0.05. Length and pitch count twice; the load counts
// once, and again in the stretch; gravity, the clamps and the accuracies are
// common. What eps adds to the parts of load, length and core is less than a
// hundredth of them for strings at pitch and is left out. Source: the
// stretched-string law (University Physics Volume 1, 16.3 and 16.6); the factor
// of stretch is ours, from the mass of the string staying the same.
func (t Instruments) hangWork(r *Reading, ea, ei float64) (float64, [8]Input) {
	gravity, uGravity := t.gravity()
	load := r.HungKg * gravity
	stretch, uStretch := 0.0, unknownStretch
	ends, clamps := 1.0, Input{inputNoClamps, unknownClamps, sourceClamps, false}
	if ea > 0 {
		stretch, uStretch = load/ea, 0
		factor, u := clampFactor(slimness(ei, load, r.SpeakingM))
		ends, clamps = factor, Input{inputClamps, u, sourceClamps, true}
	}
	byLoad := 1 + stretch/(1+stretch)
	w := load / math.Pow(2*r.SpeakingM*r.FreqHz, 2) * (1 + stretch) * ends
	return w, [8]Input{
		{inputHungResolution, byLoad * StepU(first(r.HungResolutionKg, float64(t.HungResolution))) / r.HungKg, "", true},
		{inputLengthStep, 2 * StepU(t.lengthStep(r)) / r.SpeakingM, "", true},
		{inputPitch, 2 * first(r.PitchCents, float64(t.Pitch)) * math.Ln2 / 1200, "", false},
		{inputStretch, uStretch, "", false},
		clamps,
		{"gravity", byLoad * uGravity / gravity, sourceGravity, false},
		{"hung mass, accuracy of the scales", byLoad * BoundU(float64(t.HungAccuracy)) / r.HungKg, sourceScales, true},
		{"length, accuracy of the ruler", -2 * BoundU(float64(t.RulerAccuracy)) / r.SpeakingM, sourceRuler, true},
	}
}

// value makes a value of a linear density and its inputs. times rows share every
// input but the repeatability, which is averaged.
func (t Instruments) value(r *Reading, ea, ei float64, times int) value {
	switch r.Kind {
	case Weighed:
		w, in := t.weighWork(r)
		return valueOf(w, in[:], times)
	case Hung:
		w, in := t.hangWork(r, ea, ei)
		return valueOf(w, in[:], times)
	}
	return value{}
}

func valueOf(w float64, inputs []Input, times int) value {
	shared := 0
	for i := range inputs {
		if inputs[i].Source != "" {
			shared++
		}
	}
	v := value{w: w, common: make(parts, 0, shared)}
	for i := range inputs {
		in := &inputs[i]
		u := w * in.RelU
		if in.Name == inputRepeat {
			u /= math.Sqrt(float64(times))
		}
		switch {
		case in.Source != "":
			v.common.add(CommonPart{in.Source, u, in.Bounded})
		case in.Bounded:
			v.indep, v.bounded = RootSum(v.indep, u), fourthSum(v.bounded, u)
		default:
			v.indep = RootSum(v.indep, u)
		}
	}
	return v
}

func (t Instruments) massStep(r *Reading) float64 {
	return first(r.MassStepKg, float64(t.BalanceResolution))
}
func (t Instruments) lengthStep(r *Reading) float64 {
	return first(r.LengthStepM, float64(t.RulerResolution))
}

func (r *Reading) pieces() int { return max(r.Pieces, 1) }

// perMetre is mass over length of a weighed reading.
func (r *Reading) perMetre() float64 { return r.MassKg / (r.LengthM * float64(r.pieces())) }

// first is the first value that was given.
func first[T ~float64](x, otherwise T) T {
	if x != 0 {
		return x
	}
	return otherwise
}
