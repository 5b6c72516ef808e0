package gauges

// Drawn is one gauge in one draw.
type Drawn struct {
	UnitWeight float64 // kg/m, above 0
	Core       float64 // m, above 0; 0 where the core is unknown
}
