package draw

// Stroke is what a line stands for; how it looks follows from that. Strokes
// differ by weight and dashes first and by grey only besides, so that a grey
// print, a poor copy and a colour-blind eye lose nothing. No stroke uses a hue.
type Stroke int

// The strokes, by meaning.
const (
	SlotStroke   Stroke = iota // a slot's centre between its end points: where the saw goes
	LeaderStroke               // a slot's centre carried on over the blank's edge, to its number
	EndStroke                  // rings about the slots' end points
	BoardStroke                // the board's outline
	BlankStroke                // the blank's outline
	CentreStroke               // the centreline
	StringStroke               // string lines
	NutStroke                  // the nut line
	SaddleStroke               // the saddle line and the saddle points
	SquareStroke               // the square line at the neutral fret
	DotStroke                  // face and side dots
	WordStroke                 // text, and samples' frames in the key
	BarStroke                  // check bars
	JoinStroke                 // where sheets of paper are cut and joined
	CrossStroke                // registration crosses and crop marks
	MapStroke                  // the key map's pieces
	HereStroke                 // the key map's piece that is on this sheet
)

// look is how a stroke is drawn: width of the line and lengths of dashes and
// gaps in turn, in mm, and grey from 0 (black) to 1 (white).
type look struct {
	name  string
	width float64
	dash  []float64
	grey  float64
}

// looks are judgement: a line to be cut along is as thin as a printer draws
// without breaks, since half its width is the error of the eye; lines for
// orientation are heavier or broken.
var looks = [...]look{
	SlotStroke:   {"slot centre", 0.20, nil, 0},
	LeaderStroke: {"slot carried on", 0.13, []float64{1.2, 0.8}, 0.35},
	EndStroke:    {"slot end point", 0.13, nil, 0},
	BoardStroke:  {"board edge", 0.45, nil, 0},
	BlankStroke:  {"blank", 0.30, []float64{7, 2}, 0.25},
	CentreStroke: {"centreline", 0.18, []float64{9, 1.5, 1.5, 1.5}, 0},
	StringStroke: {"string line", 0.25, nil, 0.55},
	NutStroke:    {"nut line", 0.35, nil, 0},
	SaddleStroke: {"saddle", 0.25, nil, 0},
	SquareStroke: {"square line", 0.30, []float64{4, 1.5, 0.6, 1.5, 0.6, 1.5}, 0},
	DotStroke:    {"dot", 0.25, nil, 0},
	WordStroke:   {"words", 0.18, nil, 0},
	BarStroke:    {"check bar", 0.20, nil, 0},
	JoinStroke:   {"join", 0.15, []float64{0.6, 1.2}, 0},
	CrossStroke:  {"cross", 0.15, nil, 0},
	MapStroke:    {"map", 0.15, nil, 0.35},
	HereStroke:   {"this sheet", 0.60, nil, 0},
}

// String is the stroke's meaning in words, as the drawing's key prints it.
func (s Stroke) String() string { return looks[s].name }

// Width is the line's width in millimetres.
func (s Stroke) Width() float64 { return looks[s].width }

// Dash gives lengths of dash and gap in turn, in millimetres; nil for an
// unbroken line. The caller must not change it.
func (s Stroke) Dash() []float64 { return looks[s].dash }

// Grey runs from 0, black, to 1, white. No stroke is lighter than 0.55, which
// an ordinary printer still draws as a line.
func (s Stroke) Grey() float64 { return looks[s].grey }
