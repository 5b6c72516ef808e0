package gauges

// law is the fitted straight line y = level + slope*x with its covariance.
type law struct{}
