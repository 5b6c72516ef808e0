// What the engine answers with, as far as the page reads it: the JSON of the commands.

/**
 * @typedef {{input: string, line: number, column: number, key: string, what: string, given: string, remedy: string, text: string}} Fault
 * @typedef {[number, number]} Point in mm
 * @typedef {[Point, Point]} Line
 *
 * @typedef {object} Pair
 * @property {number} bass_mm
 * @property {number} treble_mm
 * @property {number} difference_mm
 * @property {number} feel_error_percent
 * @property {number} inharmonicity_cents
 * @property {number} nut_slant_deg
 * @property {number} last_fret_slant_deg
 * @property {number} saddle_slant_deg
 * @property {number} blank_length_mm
 * @property {number} blank_width_mm
 * @property {string[]} gauges low string first
 *
 * @typedef {Pair & {pick: string}} Pick
 * @typedef {{fret: number, bending_force_n: number, wanted_bending_force_n: number | null, not_computed: string | null}} Bend
 *
 * @typedef {object} StringOf
 * @property {number} string
 * @property {string} note
 * @property {string} gauge
 * @property {string[]} gauge_flags
 * @property {number} tension_n
 * @property {number} tension_standard_uncertainty_n
 * @property {number | null} wanted_tension_n
 * @property {number | null} tension_deviation_percent
 * @property {number | null} breaking_strength_percent
 * @property {number | null} breaking_strength_bent_percent
 * @property {number | null} inharmonicity_cents
 * @property {boolean} inharmonicity_is_lower_bound
 * @property {Bend[]} bends
 *
 * @typedef {object} Tuned
 * @property {string} tuning
 * @property {string} tuning_name
 * @property {number} total_tension_n
 * @property {number} total_tension_standard_uncertainty_n
 * @property {number} [change_per_string_percent] where the reference has another number of strings
 * @property {StringOf[]} strings low string first
 *
 * @typedef {object} Tension
 * @property {string} build
 * @property {string[]} warnings
 * @property {Pair} pair
 * @property {number} neutral_fret
 * @property {boolean} neutral_at_bridge
 * @property {number} reference_total_tension_n
 * @property {Tuned[]} tunings
 * @property {string[]} limits_broken
 * @property {string[]} cautions
 *
 * @typedef {object} Fan
 * @property {Point[]} board_mm
 * @property {Line} nut_mm
 * @property {{fret: number, slot_mm: Line, marks_mm: Line, slant_deg: number}[]} frets marks: bass line, treble line
 * @property {{string: number, nut_mm: Point, saddle_mm: Point}[]} strings low string first
 * @property {Line} saddle_mm
 * @property {{fret: number, at_mm: Point, diameter_mm: number}[]} dots
 * @property {Line[]} reference_marks_mm on the reference's outer string lines
 *
 * @typedef {{fret: number, bass_from_nut_mm: number, treble_from_nut_mm: number, slant_deg: number}} Mark
 * @typedef {{name: string, fits: boolean, length_mm: number, width_mm: number, spare_length_mm: number, spare_width_mm: number,
 *   nut_line_from_its_nut_end_mm: number | null, centreline_from_its_bass_edge_mm: number | null}} Blank
 *
 * @typedef {object} Layout
 * @property {Mark[]} marks
 * @property {number} blank_length_mm
 * @property {number} blank_width_mm
 * @property {Blank[]} blanks
 * @property {string[]} limits_broken
 * @property {string[]} cautions
 *
 * @typedef {{tension: Tension, fan: Fan, layout: Layout | null}} PairAnswer layout: while Make is shown
 *
 * @typedef {object} Searched every pair that was tried, by bass length and then treble length
 * @property {number[]} bass_mm
 * @property {number[]} treble_mm
 * @property {(number | null)[][]} feel_error_percent
 * @property {(number | null)[][]} inharmonicity_cents
 * @property {boolean[][]} as_good
 * @property {string[][]} limit the key of what drops it, "" where it is kept
 * @property {Record<string, string>} limits words by key
 * @property {boolean} none_near no pair comes near: none is as good
 *
 * @typedef {{pick: string, stays_good_percent: number | null, feel_error_low_percent: number, feel_error_high_percent: number, uncertain: boolean}} Sure
 *
 * @typedef {object} Advice
 * @property {string} pick
 * @property {Pair} pair
 * @property {Pick[]} picks
 * @property {Searched} map
 * @property {{why: string} | null} stops_smallest_fan
 * @property {{why: string} | null} stops_longest_bass
 * @property {{trials: number, picks: Sure[]} | null} confidence
 * @property {string[]} reasons
 * @property {string[]} asked
 * @property {string[]} suspect_gauges
 * @property {{limit: string, pairs: number, nearest_miss: string}[]} dropped
 * @property {number} pairs_kept
 * @property {number} pairs_tried
 * @property {number} pairs_as_good
 * @property {number} least_feel_error_percent
 * @property {number} allowed_feel_error_percent
 * @property {boolean} none_near
 *
 * @typedef {object} Key
 * @property {string} path
 * @property {string} name
 * @property {string} type
 * @property {boolean} list
 * @property {string} range least and most, "" where there is none
 * @property {string[]} words that may be chosen
 * @property {string} sample a value as in the build file
 * @property {boolean} sample_is_default
 * @property {string} help
 * @property {boolean} given
 * @property {string} text as given in this build, "" where it is not
 * @property {string[]} texts the entries of a list
 *
 * @typedef {{path: string, name: string, list: boolean, given: boolean, help: string, keys: Key[]}} Section
 * @typedef {{sections: Section[]}} Keys
 *
 * @typedef {{line: number, kind: string, pieces: number | null, length_mm: number | null, mass_g: number | null, linear_density_g_per_m: number,
 *   linear_density_standard_uncertainty_g_per_m: number, deviation_from_the_gauge_percent: number | null, date: string, remark: string}} Reading
 *
 * @typedef {object} GaugeOf
 * @property {string} gauge
 * @property {string} construction
 * @property {number} outer_mm
 * @property {number | null} core_mm
 * @property {number} linear_density_g_per_m
 * @property {number} linear_density_standard_uncertainty_g_per_m
 * @property {number} linear_density_95_percent_interval_half_width_percent
 * @property {number} readings
 * @property {string[]} flags
 * @property {number | null} deviation_percent from what its family says
 * @property {number | null} deviation_standard_uncertainty_percent
 * @property {number | null} length_for_1_percent_standard_uncertainty_mm
 * @property {string[]} notes
 * @property {Reading[]} readings_in_full
 *
 * @typedef {{gauge: string, place: string, why: string, would_fit: string, likely_slips: string[], likely_values: {of: string, value: string}[]}} Suspect
 * @typedef {{fret: number, verdict: string, readings: number, measured_mm?: number, error_mm?: number, error_cents?: number, sure: boolean, in_doubt: boolean}} CheckedMark
 *
 * @typedef {object} Check
 * @property {string[]} says what it found, in sentences
 * @property {string[]} advice what to do, in sentences
 * @property {{line: string, marks: CheckedMark[]}[]} lines
 * @property {{line: string, fret: number, words: string}[]} slips
 *
 * @typedef {{column: string, pair: Pair, tunings: Tuned[], limits_broken: string[]}} Column
 * @typedef {{columns: Column[]}} Compared
 * @typedef {{a_weighing_is_worth_it: boolean, next: {gauge: string, strings: number[], length_to_weigh_mm: number}[]}} Next
 *
 * @typedef {{gauges: GaugeOf[], suspects: Suspect[], cautions: string[]}} GaugeList
 * @typedef {{readings: string, columns: string[], known_columns: string[], words: Record<string, string[]>, rows: {line: number, cells: Record<string, string>}[]}} Readings
 * @typedef {{marks: string, columns: string[], rows: {line: number, cells: Record<string, string>}[]}} Marks
 */

export {};
