package stats

import "gonum.org/v1/gonum/stat/distuv"

// LeastEffective is how many effective steps an interval needs at the least; below FewEffective it tends to be too
// narrow (our own trial: see TestCoverage) and is given with a remark.
const LeastEffective, FewEffective = 20, 80

// HalfWidth is the half-width of the 95 % interval round a figure with a standard error from so many steps put together
// anew in blocks of a length: Student's t with as many degrees of freedom as there are blocks, less one, and one at the
// least.
func HalfWidth(standardError, steps, blockLength float64) float64 {
	t := distuv.StudentsT{Sigma: 1, Nu: max(1, steps/blockLength-1)}
	return t.Quantile(0.975) * standardError
}
