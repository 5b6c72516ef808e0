package draw

// Stroke is what a line stands for; how it looks follows from that. On paper
// strokes differ by weight and dashes first and by grey only besides, so that a
// grey print, a poor copy and a colour-blind eye lose nothing.
type Stroke int

// The strokes, by meaning. Those up to SideStroke are explained in a drawing's
// key, in this order.
const (
	SlotStroke   Stroke = iota // a slot's centre between its end points: where the saw goes
	KerfStroke                 // the edges of the saw's cut
	EndStroke                  // rings about the slots' end points
	LeaderStroke               // a slot's centre carried on over the blank's edge, to its number
	NutStroke                  // the nut line
	BoardStroke                // the board's outline
	BlankStroke                // the blank's outline
	BaseStroke                 // the two base lines
	CentreStroke               // the centreline
	SquareStroke               // the square line at the neutral fret
	StringStroke               // string lines
	SaddleStroke               // the theoretical saddle line
	PointStroke                // saddle points
	RangeStroke                // the range of a compensation
	DotStroke                  // face dots
	SideStroke                 // side dots
	BarStroke                  // check bars
	JoinStroke                 // where sheets of paper are cut and joined
	CrossStroke                // registration and crop marks, and where strips are cut apart
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

// looks are judgement: what the saw follows is as thin as a printer draws
// without breaks, since half its width is the error of the eye; nut and edge come
// next, and what is for orientation only is broken or grey.
var looks = [...]look{
	SlotStroke:   {"slot: middle of the cut", 0.10, nil, 0},
	KerfStroke:   {"slot: edges of the cut", 0.10, nil, 0.6},
	EndStroke:    {"slot: end point", 0.13, nil, 0},
	LeaderStroke: {"slot or nut carried on", 0.13, []float64{1.2, 0.8}, 0.35},
	NutStroke:    {"nut line", 0.35, nil, 0},
	BoardStroke:  {"edge of the board", 0.45, nil, 0},
	BlankStroke:  {"smallest blank", 0.25, []float64{7, 2}, 0.5},
	BaseStroke:   {"base line", 0.30, []float64{6, 1, 1, 1}, 0},
	CentreStroke: {"centreline", 0.18, []float64{9, 1.5, 1.5, 1.5}, 0},
	SquareStroke: {"square to the centreline", 0.25, []float64{4, 1.5, 0.6, 1.5, 0.6, 1.5}, 0},
	StringStroke: {"string line", 0.18, nil, 0.6},
	SaddleStroke: {"saddle line, theoretical", 0.20, nil, 0},
	PointStroke:  {"saddle point", 0.15, nil, 0},
	RangeStroke:  {"range of compensation", 0.16, nil, 0},
	DotStroke:    {"face dot", 0.22, nil, 0},
	SideStroke:   {"side dot, beside the edge", 0.30, nil, 0},
	BarStroke:    {"check bar", 0.20, nil, 0},
	JoinStroke:   {"join", 0.15, []float64{0.6, 1.2}, 0},
	CrossStroke:  {"join mark", 0.15, nil, 0},
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

// Grey runs from 0, black, to 1, white. No stroke is lighter than 0.6, which
// an ordinary printer still draws as a line.
func (s Stroke) Grey() float64 { return looks[s].grey }

// Colour is what a machine's program knows an operation by: one of the first
// numbered colours of DXF, and red, green and blue.
type Colour struct {
	Number int
	RGB    string
}

// colours give every operation its own: a layer that is cut, and what is for the
// eye alone.
var colours = map[LayerName]Colour{
	LayerSlots: {1, "ff0000"}, LayerKerf: {6, "ff00ff"}, LayerNut: {3, "008f00"}, LayerBoard: {5, "0000ff"},
	LayerBlank: {8, "808080"}, LayerStrings: {9, "909090"}, LayerNumbers: {7, "000000"}, LayerKey: {7, "000000"},
	LayerTitle: {7, "000000"}, LayerBars: {7, "000000"}, LayerFrame: {7, "000000"},
}

// Colour is that of the layer's operation; marks share one.
func (n LayerName) Colour() Colour {
	if c, ok := colours[n]; ok {
		return c
	}
	return Colour{30, "c25700"}
}
