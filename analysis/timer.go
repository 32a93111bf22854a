package analysis

// timedWork corrects what a sampled record says of a timer's stage. Samples at an interval i meet a timer of period p
// at phases gcd(i, p) apart and no finer, so the share of time on is seen to ± gcd(i, p)/p: a logger whose interval
// divides the timer's period stays in step with it, and its samples are no evidence of duty unless the timer runs for
// many intervals at a time. Starts are the timer's own. A list of changes shows all. It says whether the record is in
// step.
func (w *Work) timedWork(set Setting, intervalMS int64) (inStep bool) {
	w.Starts, w.MedianRunMin = unknown("timer"), unknown("timer")
	if intervalMS == 0 || set.TimerEveryMS == 0 || !w.Duty.OK {
		return false
	}
	half := float64(gcd(intervalMS, set.TimerEveryMS)) / float64(set.TimerEveryMS)
	hours := float64(w.KnownMS) / 3.6e6
	w.Duty.Low, w.Duty.High = max(0, w.Duty.Mid-half), min(1, w.Duty.Mid+half)
	w.Hours.Low, w.Hours.High = w.Duty.Low*hours, w.Duty.High*hours
	w.Duty.withholdWide()
	w.Hours.withholdWide()
	return set.TimerEveryMS%intervalMS == 0
}

// gcd is the greatest common divisor of two positive numbers (Euclid, Elements VII.2).
func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
