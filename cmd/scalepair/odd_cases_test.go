package main

// oddCases has a case for every quantity that is watched. Numbers are worked out
// beside a case where they do not stand in the file.
var oddCases = []oddCase{
	// Twice the mass: 2.60 g/(4 x 320 mm x pi/4 (0.406 mm)^2) = 15.69 g/cm3. The range is 7.85 +- 3 % +-
	// 3 (7.85 x 0.0217 + 0.008), where 0.0217 is mostly 2 x 0.0003 in/sqrt(3)/0.406 mm.
	{quantity: "wire density", from: "320,1.30", to: "320,2.60", want: "unusual wire density of gauge p16 (15.69 g/cm3); 7.08 to 8.62 g/cm3 is usual"},
	// Half the outer diameter: 6.11 g in 4 x 321 mm are 4.759 g/m, the core 7.85 pi/4 0.42^2 = 1.088 g/m of them; the
	// wrap's ring is pi/4 (0.6^2 - 0.42^2) = 0.1442 mm2.
	{quantity: "wrap density", from: "w38,wound,0.965", to: "w38,wound,0.6", want: "unusual wrap density of gauge w38 (25.46 g/cm3)", at: "w38"},
	// 8.86 g in 4 x 320 mm over pi/4 0.889^2 mm2.
	{quantity: "density of a wound string", from: "320,3.86", to: "320,8.86", want: "unusual density of a wound string of gauge f35 (11.15 g/cm3)"},
	{quantity: "diameter of a plain metal string", from: "p16,plain,0.406,,,,weighed,4,320,1.30", to: "p16,plain,0.80,,,,weighed,4,320,5.05", want: "unusual diameter of a plain metal string of gauge p16 (0.8 mm); 0.15 to 0.75 mm is usual"},
	{quantity: "diameter of a plain plastic string", from: "n28,plain,0.711,,,nylon,weighed,4,320,0.55", to: "n28,plain,1.8,,,nylon,weighed,4,320,3.52", want: "unusual diameter of a plain plastic string of gauge n28 (1.8 mm); 0.35 to 1.5 mm is usual"},
	{quantity: "outer diameter of a wound string", from: "f35,silvered,0.889,,,nylon,weighed,4,320,3.86", to: "f35,silvered,5.0,,,nylon,weighed,4,320,130", want: "unusual outer diameter of a wound string of gauge f35 (5 mm); 0.4 to 4.2 mm is usual"},
	// 0.15/0.965; the mass is that of the thicker wrap.
	{quantity: "core diameter against the outside", from: "w38,wound,0.965,0.42,round,,weighed,4,321,6.11", to: "w38,wound,0.965,0.15,round,,weighed,4,321,5.84", want: "unusual core diameter against the outside of gauge w38 (15.54 %); 18 to 80 % is usual"},
	{quantity: "length of a weighed piece", from: "4,321,6.11", to: "20,15,1.43", want: "unusual length of a weighed piece of gauge w38 (15 mm); 20 to 2500 mm is usual"},
	{quantity: "number of pieces weighed together", from: "4,321,6.11", to: "40,321,61.1", want: "unusual number of pieces weighed together of gauge w38 (40); 1 to 20 is usual"},
	{quantity: "wound length", from: "985", to: "200", want: "unusual wound length of gauge w46 (200 mm); 350 to 1500 mm is usual"},
	// The speaking length is chosen so that the linear density stays: l goes with sqrt(M).
	{quantity: "hung mass", from: "6.16,600,250", to: "0.4,153,250", want: "unusual hung mass of gauge h13 (0.4 kg); 0.5 to 25 kg is usual"},
	{quantity: "speaking length of a hung string", from: "6.16,600,250", to: "6.16,2000,75", want: "unusual speaking length of a hung string of gauge h13 (2000 mm); 150 to 1500 mm is usual"},
	{quantity: "pitch of a hung string", from: "6.16,600,250", to: "6.16,200,750", want: "unusual pitch of a hung string of gauge h13 (750 Hz); 20 to 700 Hz is usual"},
	{quantity: "wrap wire", from: `wire = "0.312 mm"`, to: `wire = "1.0 mm"`, want: "unusual wrap wire of gauge c42 (1 mm); 0.04 to 0.9 mm is usual"},
	{quantity: "packing", from: "packing = 0.79", to: "packing = 0.4", want: "unusual packing of gauge c42 (40 %); 60 to 100 % is usual"},
	{quantity: "density of a material", from: "density_g_cm3 = 8.7", to: "density_g_cm3 = 19.3", want: "unusual density of a material of bell metal (19.3 g/cm3); 0.85 to 9 g/cm3 is usual"},
	{quantity: "modulus of a metal", from: "youngs_gpa = 101", to: "youngs_gpa = 10.1", want: "unusual modulus of a metal of bell metal (10.1 GPa); 60 to 250 GPa is usual"},
	{quantity: "modulus of a metal", from: "7800,195", to: "7800,19.5", want: "unusual modulus of a metal of gauge o20 (19.5 GPa); 60 to 250 GPa is usual"},
	{quantity: "modulus of a light material", from: "youngs_gpa = 4.5", to: "youngs_gpa = 45", want: "unusual modulus of a light material of horn (45 GPa); 0.5 to 25 GPa is usual"},
	{quantity: "strength of a metal", from: "strength_mpa = 600", to: "strength_mpa = 60", want: "unusual strength of a metal of bell metal (60 MPa); 250 to 3500 MPa is usual"},
	{quantity: "strength of a light material", from: "5.5,301", to: "5.5,3010", want: "unusual strength of a light material of gauge g30 (3010 MPa); 40 to 1500 MPa is usual"},
	{quantity: "step of the balance", from: "2.02,0.011", to: "2.02,0.2", want: "unusual step of the balance of gauge o20 (0.2 g); 0.0001 to 0.1 g is usual"},
	{quantity: "step of the balance", from: `balance_resolution = "0.01 g"`, to: `balance_resolution = "0.25 g"`, want: "unusual step of the balance (0.25 g); 0.0001 to 0.1 g is usual"},
	{quantity: "accuracy of the balance", from: `"0.005 g"`, to: `"0.5 g"`, want: "unusual accuracy of the balance (0.5 g); 0.00005 to 0.3 g is usual"},
	{quantity: "step of the ruler", from: `"0.51 mm"`, to: `"5.1 mm"`, want: "unusual step of the ruler (5.1 mm); 0.1 to 3.2 mm is usual"},
	{quantity: "accuracy of the ruler", from: `ruler_accuracy = "0.2 mm"`, to: `ruler_accuracy = "0.2 in"`, want: "unusual accuracy of the ruler (5.08 mm); 0.005 to 2 mm is usual"},
	{quantity: "step of the calipers", from: `"0.0101 mm"`, to: `"0.0101 in"`, want: "unusual step of the calipers (0.2565 mm); 0.001 to 0.1 mm is usual"},
	{quantity: "accuracy of the calipers", from: `"0.02 mm"`, to: `"0.4 mm"`, want: "unusual accuracy of the calipers (0.4 mm); 0.001 to 0.1 mm is usual"},
	{quantity: "step of the scales", from: `hung_resolution = "1 g"`, to: `hung_resolution = "0.2 kg"`, want: "unusual step of the scales (200 g); 0.01 to 100 g is usual"},
	{quantity: "uncertainty of a pitch", from: "pitch_uncertainty_cents = 2", to: "pitch_uncertainty_cents = 50", want: "unusual uncertainty of a pitch (50 cents); 0.1 to 20 cents is usual"},

	{quantity: "pitch standard", from: "pitch_standard_hz = 440", to: "pitch_standard_hz = 404", want: "unusual pitch standard (404 Hz); 415 to 446 Hz is usual"},
	// F5 is 440 x 2^(8/12) = 698.46 Hz and usual, F#5 739.99 Hz.
	{quantity: "pitch", from: "tuning = \"E2 A2 D3 G3 B3 E4\"\npitch", to: "tuning = \"E4 A4 D5 E5 F5 F#5\"\npitch", want: "unusual pitch of string 1, F#5 (739.99 Hz); 23 to 700 Hz is usual", at: "F#5", command: "layout"},
	{quantity: "step in pitch", from: "tuning = \"E2 A2 D3 G3 B3 E4\"\npitch", to: "tuning = \"E2 A2 D3 G2 B3 E4\"\npitch", want: "unusual step in pitch from string 4, D3, to string 3, G2 (-7 semitones), and from string 3, G2, to string 2, B3; 0 to 9 semitones is usual", at: "G2", command: "layout"},
	{quantity: "capo fret", from: "capo_fret = 0", to: "capo_fret = 11", want: "unusual capo fret (11); up to 9 is usual"},

	{quantity: "scale length", from: "bass = \"660 mm\"\ntreble = \"640 mm\"", to: `scale = "1100 mm"`, want: "unusual scale length of the bass string (1100 mm), and of the treble string; 300 to 1000 mm is usual", command: "layout"},
	{quantity: "scale length", from: `scale = "648 mm"`, to: `scale = "1020 mm"`, want: "unusual scale length of the bass string of the reference (1020 mm), and of the treble string of the reference; 300 to 1000 mm is usual", command: "layout"},
	// Spans so wide, and neutral fret 10, keep the slants usual.
	{quantity: "difference of the lengths", from: `bass = "660 mm"`, to: `bass = "745 mm"`, want: "unusual difference of the lengths (105 mm); -60 to 100 mm is usual", command: "layout",
		also: []string{`string_spread_at_nut = "36 mm"`, `string_spread_at_nut = "70 mm"`, `string_spread_at_saddle = "52 mm"`, `string_spread_at_saddle = "110 mm"`, "neutral_fret = 7", "neutral_fret = 10"}},
	// Parallel string lines: tan = difference (k(n) - k(N))/span. k(7) = 0.33258: atan(65 x 0.66742/52) = 39.84 at the
	// saddles, and -22.6 at the nut.
	{quantity: "slant of the saddle line", from: `bass = "660 mm"`, to: `bass = "705 mm"`, want: "unusual slant of the saddle line (39.84°); -38° to 38° is usual", command: "layout",
		also: []string{`string_spread_at_nut = "36 mm"`, `string_spread_at_nut = "52 mm"`}},
	// k(24) = 0.75: atan(-60 x 0.75/52) = -40.87 at the nut, 0 at the last fret, 16.1 at the saddles.
	{quantity: "slant", from: `bass = "660 mm"`, to: `bass = "700 mm"`, want: "unusual slant of the nut (-40.87°); -36° to 36° is usual", command: "layout",
		also: []string{`string_spread_at_nut = "36 mm"`, `string_spread_at_nut = "52 mm"`, "neutral_fret = 7", "neutral_fret = 24"}},
	{quantity: "number of frets", from: "frets = 24", to: "frets = 10", want: "unusual number of frets (10); 12 to 30 is usual", command: "layout",
		also: []string{"bend_frets = [12]", "bend_frets = [10]"}},
	// 420 mm x (2^(-29/12) - 2^(-30/12)) = 4.415 mm.
	{quantity: "room between the last two frets", from: `treble = "640 mm"`, to: `treble = "420 mm"`, want: "unusual room between the last two frets (4.415 mm); 4.5 mm or more is usual", at: "frets = 30", command: "layout",
		also: []string{`bass = "660 mm"`, `bass = "430 mm"`, "frets = 24", "frets = 30"}},
	// 24 mm and 115 mm over 5 gaps.
	{quantity: "string spacing at the nut", from: `string_spread_at_nut = "36 mm"`, to: `string_spread_at_nut = "24 mm"`, want: "unusual string spacing at the nut (4.8 mm); 5 to 14 mm is usual", command: "layout"},
	{quantity: "string spacing at the saddles", from: `string_spread_at_saddle = "52 mm"`, to: `string_spread_at_saddle = "115 mm"`, want: "unusual string spacing at the saddles (23 mm); 5 to 22 mm is usual", command: "layout",
		also: []string{`string_spread_at_nut = "36 mm"`, `string_spread_at_nut = "60 mm"`}},
	// 30/36.
	{quantity: "widening from the nut", from: `string_spread_at_saddle = "52 mm"`, to: `string_spread_at_saddle = "30 mm"`, want: "unusual widening from the nut (0.8333 times); 0.95 to 2.4 times is usual"},
	{quantity: "edge margin", from: `bass_margin = "3.5 mm"`, to: `bass_margin = "0.5 mm"`, want: "unusual edge margin on the bass side (0.5 mm); 1.5 to 10 mm is usual"},
	{quantity: "nut shelf", from: `nut_shelf = "5 mm"`, to: `nut_shelf = "25 mm"`, want: "unusual nut shelf (25 mm); up to 15 mm is usual"},
	{quantity: "body end overhang", from: `body_end_overhang = "6 mm"`, to: `body_end_overhang = "60 mm"`, want: "unusual body end overhang (60 mm); up to 40 mm is usual"},
	{quantity: "saw allowance", from: `saw_allowance = "2 mm"`, to: `saw_allowance = "20 mm"`, want: "unusual saw allowance (20 mm); up to 12 mm is usual"},
	{quantity: "crown radius", from: "radius_nut = \"300 mm\"\nradius_last = \"400 mm\"", to: `radius = "900 mm"`, want: "unusual crown radius (900 mm); 150 to 800 mm is usual"},
	{quantity: "radius at the last fret against the nut's", from: `radius_nut = "300 mm"`, to: `radius_nut = "500 mm"`, want: "unusual radius at the last fret against the nut's (0.8 times); 1 to 2.5 times is usual", at: "radius_last"},
	{quantity: "tang depth", from: `"1.51 mm"`, to: `"0.9 mm"`, want: "unusual tang depth (0.9 mm); 1 to 2.6 mm is usual"},
	{quantity: "clearance under the tang", from: `clearance = "0.4 mm"`, to: `clearance = "1.5 mm"`, want: "unusual clearance under the tang (1.5 mm); 0.1 to 1 mm is usual"},
	{quantity: "saw kerf", from: `kerf = "0.6 mm"`, to: `kerf = "2.5 mm"`, want: "unusual saw kerf (2.5 mm); 0.35 to 0.9 mm is usual"},
	{quantity: "tang width", from: `tang_width = "0.5 mm"`, to: `tang_width = "0.25 mm"`, want: "unusual tang width (0.25 mm); 0.35 to 0.8 mm is usual"},
	{quantity: "width over the barbs", from: `barb_width = "0.8 mm"`, to: `barb_width = "1.9 mm"`, want: "unusual width over the barbs (1.9 mm); 0.5 to 1.2 mm is usual"},
	{quantity: "overhang of the fret wire", from: `overhang = "3 mm"`, to: `overhang = "18 mm"`, want: "unusual overhang of the fret wire (18 mm); up to 15 mm is usual"},
	{quantity: "spare fret wire", from: "spare_percent = 10", to: "spare_percent = 100", want: "unusual spare fret wire (100 %); up to 50 % is usual"},
	// At fret 24, k = 0.75, the strings span 36 + 0.75 x 49 = 72.75 mm and the board 88.75 mm: 1.51 + 0.4 + 160 -
	// sqrt(160^2 - 44.4^2) = 8.19 mm square across, some more at a slanted slot's nearer end.
	{quantity: "slot depth", from: `radius_last = "400 mm"`, to: `radius_last = "160 mm"`, want: "unusual slot depth at fret 24 (~ mm); 1.3 to 7 mm is usual", value: 8.2, room: 0.15, at: "tang_depth",
		also: []string{`radius_nut = "300 mm"`, `radius_nut = "160 mm"`, `string_spread_at_saddle = "52 mm"`, `string_spread_at_saddle = "85 mm"`, `"3.5 mm"`, `"8 mm"`, `"3.25 mm"`, `"8 mm"`}},
	{quantity: "blank length", from: `length = "590 mm"`, to: `length = "1590 mm"`, want: "unusual blank length of pear (1590 mm); 250 to 1000 mm is usual"},
	{quantity: "blank width", from: `width = "82 mm"`, to: `width = "182 mm"`, want: "unusual blank width of pear (182 mm); 35 to 160 mm is usual"},
	{quantity: "blank thickness", from: `thickness = "7 mm"`, to: `thickness = "20 mm"`, want: "unusual blank thickness of pear (20 mm); 3 to 14 mm is usual"},
	{quantity: "slant of a further line", from: "slant_deg = 8", to: "slant_deg = 45", want: "unusual slant of a further line of pickup (45°); -38° to 38° is usual"},

	// Strings. w of p17 is 1.47 g/(4 x 320 mm) = 1.1484 g/m; with q = w (2 x 0.640 m x 329.63 Hz)^2 = 204.45 N and
	// EA = 29813 N the tension is q/(1 + T/EA) = 203.06 N.
	{quantity: "tension", from: "\"p10\"]\n[reference]", to: "\"p17\"]\n[reference]", want: "unusual tension of string 1 (203.1 N); 20 to 150 N is usual", at: "p17", command: "tension"},
	// w26 is 2.94 g/(4 x 320 mm) = 2.2969 g/m: (2 x 0.820 m x 73.416 Hz)^2 w = 33.30 N, less a thousandth of stretch.
	{quantity: "tension of a long string", from: "gauges = [\"w46\", \"w36\", \"w26\", \"p17\", \"p13\", \"p10\"]\n[reference]", to: "gauges = [\"w26\", \"w36\", \"w26\", \"p17\", \"p13\", \"p10\"]\n[reference]",
		want: "unusual tension of a long string of string 6 (~ N); 50 to 320 N is usual", value: 33.25, room: 0.05, at: "gauges = [", command: "tension",
		also: []string{"tuning = \"E2 A2 D3 G3 B3 E4\"\npitch", "tuning = \"D2 G2 C3 F3 A3 D4\"\npitch", `bass = "660 mm"`, `bass = "820 mm"`, `treble = "640 mm"`, `treble = "820 mm"`}},
	// p10 at A4: q = 0.51 g/1280 mm (2 x 0.640 m x 440 Hz)^2 = 126.39 N, T = 124.88 N; over pi/4 (0.254 mm)^2 that is
	// 2464.5 MPa of the 387 ksi = 2668.3 MPa of the A228 table.
	{quantity: "breaking share", from: "tuning = \"E2 A2 D3 G3 B3 E4\"\npitch", to: "tuning = \"E2 A2 D3 G3 C4 A4\"\npitch", want: "unusual breaking share of string 1 (92.36 %); up to 85 % is usual", at: "gauges = [", command: "tension"},
	// p10 at G4: 73.48 % open; 235 cents up the tension grows 2^(235/600) = 1.312 times, less 2 x 18 mm x 0.076/320 mm,
	// since the slanted fret takes some 1.4 mm off what sounds.
	{quantity: "breaking share while bent", from: "tuning = \"E2 A2 D3 G3 B3 E4\"\npitch", to: "tuning = \"E2 A2 D3 G3 B3 G4\"\npitch", want: "unusual breaking share while bent of string 1 at fret 12 (~ %); up to 95 % is usual", value: 95.6, room: 0.3, at: "gauges = [", command: "tension",
		also: []string{"bend_cents = 200", "bend_cents = 235"}},
	// A core of 0.90 mm makes 9.84 g of the piece, T = 90.9 N and B = pi^2 E I/(T L^2) = 0.001606 with E = 200 GPa and
	// I = pi/64 d^4 = 3.221e-14 m4: 600 log2(1.1606) = 128.9 cents. The strings lie low, so that the compensation stays small.
	{quantity: "inharmonicity", from: "w46,wound,1.168,0.46,round,,weighed,4,320,8.84", to: "w46,wound,1.168,0.90,round,,weighed,4,320,9.84", want: "unusual inharmonicity of string 6 (~ cents); up to 120 cents is usual", value: 128.9, room: 0.5, at: "gauges = [", command: "tension",
		also: []string{`"1.5 mm"`, `"0.8 mm"`, `"1.9 mm"`, `"0.8 mm"`}},
	// 2 h^2/L over L and tails strains string 6, w46, by 7.1e-5; EA/T = 430 makes that 3.1 % of tension, 26 cents at fret
	// 12, and 0.38 mm of compensation a cent: about 10 mm. String 3, p17, comes to 9 mm, the others stay below 8.
	{quantity: "least compensation", from: `"1.5 mm"`, to: `"4.2 mm"`, want: "unusual least compensation of string 6 (~ mm), and of string 3; -0.5 to 8 mm is usual", value: 10, room: 1, at: "gauges = [", command: "tension",
		also: []string{`"1.9 mm"`, `"4.2 mm"`}},
	// p13 at E4: T = 118.5 N, EA = 17396 N. A bend of 400 cents wants T(y) = 1.603 T, so the run of 640 + 500 mm grows by
	// y^2/320 mm = 1140 x 0.603 T/EA mm: y = 38.7 mm, and the bending force is 2 T(y) y/hypot(320, y) = 44 to 46 N.
	{quantity: "bending force of a bend", from: "\"p10\"]\n[reference]", to: "\"p13\"]\n[reference]", want: "unusual bending force of a bend of string 1 at fret 12 (~ N); 0.5 to 40 N is usual", value: 44.5, room: 2, at: "gauges = [", command: "tension",
		also: []string{"bend_cents = 200", "bend_cents = 400", `"65 mm"`, `"300 mm"`, `"26 mm"`, `"200 mm"`}},
	{quantity: "wanted tension", from: `tension = "72 N"`, to: `tension = "16 N"`, want: "unusual wanted tension (16 N); 20 to 320 N is usual"},
	{quantity: "wanted bending force", from: `bending_force = "9 N"`, to: `bending_force = "90 N"`, want: "unusual wanted bending force (90 N); 0.5 to 40 N is usual"},
	{quantity: "least tension", from: `"31 N"`, to: `"5 N"`, want: "unusual least tension (5 N); 10 to 250 N is usual"},
	// 130 x 4.44822 N.
	{quantity: "most tension", from: `"130 N"`, to: `"130 lbf"`, want: "unusual most tension (578.3 N); 30 to 450 N is usual"},
	{quantity: "most bending force", from: `"40 N"`, to: `"40 lbf"`, want: "unusual most bending force (177.9 N); 2 to 100 N is usual"},
	{quantity: "interval of the bend", from: "bend_cents = 200", to: "bend_cents = 450", want: "unusual interval of the bend (450 cents); 50 to 400 cents is usual"},
	{quantity: "string beyond the nut", from: `"65 mm"`, to: `"400 mm"`, want: "unusual string beyond the nut (400 mm); up to 320 mm is usual"},
	{quantity: "string behind the saddle", from: `"26 mm"`, to: `"300 mm"`, want: "unusual string behind the saddle (300 mm); up to 220 mm is usual"},
	{quantity: "height over fret 12", from: `"1.5 mm"`, to: `"0.5 mm"`, want: "unusual height over fret 12 of the treble string (0.5 mm); 0.7 to 5 mm is usual"},

	{quantity: "tolerance of a mark", from: `tolerance = "0.1 mm"`, to: `tolerance = "5 mm"`, want: "unusual tolerance of a mark (5 mm); 0.02 to 1 mm is usual"},
	{quantity: "tolerance of a mark in pitch", from: `tolerance = "0.1 mm"`, to: "tolerance_cents = 10", want: "unusual tolerance of a mark in pitch (10 cents); 0.2 to 6 cents is usual"},
	{quantity: "tolerance of the nut offset", from: `"0.45 mm"`, to: `"4.5 mm"`, want: "unusual tolerance of the nut offset (4.5 mm); 0.05 to 2 mm is usual"},
	{quantity: "step of the ruler on marks", from: `"0.52 mm"`, to: `"5.2 mm"`, want: "unusual step of the ruler on marks (5.2 mm); 0.1 to 1.6 mm is usual"},
	{quantity: "step of the calipers on marks", from: `"0.05 mm"`, to: `"0.05 in"`, want: "unusual step of the calipers on marks (1.27 mm); 0.005 to 0.5 mm is usual"},
	{quantity: "zero error", from: `"0.11 mm"`, to: `"2 mm"`, want: "unusual zero error (2 mm); up to 1 mm is usual"},
}
