package build

import (
	"fmt"
	"os"
	"testing"
)

func TestTry(t *testing.T) {
	for _, f := range []string{"data/demo", "testdata/builds/bass_five", "testdata/builds/eight_inch", "testdata/builds/seven"} {
		src, err := os.ReadFile("../../../" + f + "/build.toml")
		if err != nil {
			t.Fatal(err)
		}
		b, err := Read(src, f, nil)
		fmt.Println(f, err)
		if b != nil {
			b.places = nil
			fmt.Printf("%+v\n", b.Neck)
			fmt.Printf("%+v\n", b.Feel)
			fmt.Printf("%+v\n", b.Limits)
			fmt.Printf("%+v\n", b.Scales)
			fmt.Printf("%+v\n", b.Tails)
		}
	}
	out, _, err := Template(Start{})
	fmt.Println(err, string(out[:3200]))
	_, err = Read(out, "t", nil)
	fmt.Println(err)
}

func TestBad(t *testing.T) {
	for _, s := range []string{
		"name = \"x\"\n[strings]\ntuning = \"E2 A2 D3 G3 B3 E4\"\n[neck]\nfrits = 24\nstring_spread_at_nut = 36\nstring_spread_at_saddle = \"52\"\nframe = 3\n[nek]\na=1\n",
		"[strings]\ntuning = \"E2 A2 D3 G3 B3 E5x\"\n[limits]\ndifference = \"700 mm\"\nfret_slant_deg = 75\nblank = \"yes\"\n[neck]\nfrets = \"24\"\nstring_spread_at_nut=\"3,6 mm\"\n",
		"[strings]\ntuning = \"E2 A2 D3 G3 B3 E4\"\n[neck]\nfrets = 24\nfrets = 22\n",
		"[strings]\ntuning = E2 A2\n",
		"[strings]\ntuning = \"E4 B3 G3 D3 A2 E2\"\n[scales]\nbass = \"2700 mm to 2800 mm\"\n[neck]\nneutral_fret = \"brige\"\n nut_spacing = \"equal gap\"",
	} {
		_, err := Read([]byte(s), "b.toml", nil)
		fmt.Println(err)
		fmt.Println("--")
	}
}
