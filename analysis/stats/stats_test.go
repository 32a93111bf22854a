package stats

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/stat"
)

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s is %.15g, want %.15g within %g", what, got, want, within)
	}
}

// Certified values of the Statistical Reference Datasets of NIST, Univariate Summary Statistics: Lew and Lottery.
func TestCertifiedSeries(t *testing.T) {
	for _, c := range []struct {
		name           string
		x              []float64
		mean, sd, lag1 float64
	}{
		{"Lew", lew, -177.435000000000, 277.332168044316, -0.307304800605679},
		{"Lottery", lottery, 518.958715596330, 291.699727470969, -0.120948622967393},
	} {
		near(t, c.name+": mean", stat.Mean(c.x, nil), c.mean, 1e-12)
		near(t, c.name+": standard deviation", stat.StdDev(c.x, nil), c.sd, 1e-12)
		near(t, c.name+": lag 1", lag1(c.x), c.lag1, 1e-15)
	}
}

// lag1 is a series' autocorrelation at lag 1.
func lag1(x []float64) float64 {
	c := Autocovariances(x, 1)
	return c[1] / c[0]
}

// The length that the test of a library of another house (arch 7, test_block_length.py) expects for 10,000 values of an
// autoregressive series of 0.3, drawn by the generator of NumPy's RandomState(0): 13.635665 and 15.60894.
func TestBlockLengthsOfAKnownSeries(t *testing.T) {
	draw := newTwister(0)
	e := make([]float64, 10100)
	for i := range e {
		e[i] = draw.normal()
	}
	near(t, "the generator's first value", e[0], 1.764052345967664, 1e-15) // NumPy's own documentation prints 1.76405235
	stationary, circular := BlockLengths(autoregressive(e, 0.3)[100:])
	near(t, "stationary", stationary, 13.635665, 1e-4*13.6)
	near(t, "circular", circular, 15.60894, 1e-4*15.6)
}

// For an autoregressive series of φ the best length is (2φ/(1−φ²))^⅔ n^⅓ (Politis & White 2004, section 3.2, with the
// correction of 2009); with 0.5 and 200,000 values it is 70.8. Nothing is longer than ⌈min(3√n, n/3)⌉, and what does
// not vary, or hardly is a series, hangs together nowhere.
func TestBlockLengthsByTheory(t *testing.T) {
	stationary, circular := BlockLengths(autoregressive(noise(200_000, 3), 0.5))
	near(t, "φ 0.5", stationary, 70.8, 7)
	near(t, "circular over stationary", circular/stationary, math.Cbrt(1.5), 1e-12)
	toAndFro := make([]float64, 50)
	for i := range toAndFro {
		toAndFro[i] = []float64{0, 1, 0, -1}[i%4]
	}
	stationary, circular = BlockLengths(toAndFro)
	near(t, "to and fro", stationary, 17, 0)
	near(t, "to and fro", circular, 17, 0)
	for _, x := range [][]float64{nil, {1, 2, 3}, make([]float64, 100)} {
		if s, c := BlockLengths(x); s != 1 || c != 1 {
			t.Errorf("%d values: %g and %g, want 1 and 1", len(x), s, c)
		}
	}
}

// 5 of 50 is 4.3–21.4 % (Wilson's interval, worked by hand: (0.1 + 0.0384 ± 0.0919)/1.0768). The differences are those of
// Newcombe 1998, table II, method 10: 56 of 70 less 48 of 80, and 9 of 10 less 3 of 10.
func TestShares(t *testing.T) {
	low, high := Wilson(5, 50)
	near(t, "low", 100*low, 4.3, 0.05)
	near(t, "high", 100*high, 21.4, 0.05)
	low, high = Wilson(0, 0)
	near(t, "of none, low", low, 0, 0)
	near(t, "of none, high", high, 1, 0)
	for _, c := range []struct{ a, ofA, b, ofB, want, low, high float64 }{
		{56, 70, 48, 80, 0.2, 0.0524, 0.3339},
		{9, 10, 3, 10, 0.6, 0.1705, 0.8090},
	} {
		d, low, high := TwoShares(c.a, c.ofA, c.b, c.ofB)
		near(t, "difference", d, c.want, 1e-12)
		near(t, "low", low, c.low, 5e-5)
		near(t, "high", high, c.high, 5e-5)
	}
}

// Student's t at 97.5 %: 2.093 with 19 degrees of freedom, 12.706 with one (any printed table).
func TestHalfWidth(t *testing.T) {
	near(t, "20 blocks", HalfWidth(1, 200, 10), 2.093, 5e-4)
	near(t, "one block", HalfWidth(1, 10, 10), 12.706, 5e-4)
}

// noise are values of the standard normal distribution.
func noise(n int, seed uint64) []float64 {
	rng := rand.New(rand.NewPCG(seed, 1))
	out := make([]float64, n)
	for i := range out {
		out[i] = rng.NormFloat64()
	}
	return out
}

// autoregressive is what becomes of shocks when each value keeps a share of the one before.
func autoregressive(e []float64, kept float64) []float64 {
	out := make([]float64, len(e))
	for i := range e {
		out[i] = e[i]
		if i > 0 {
			out[i] += kept * out[i-1]
		}
	}
	return out
}

// twister is the generator MT19937 (Matsumoto & Nishimura 1998) with the polar method of Marsaglia & Bray (1964), as
// NumPy's RandomState draws from it.
type twister struct {
	state [624]uint32
	at    int
	spare float64
	has   bool
}

func newTwister(seed uint32) *twister {
	w := &twister{at: 624}
	w.state[0] = seed
	for i := 1; i < len(w.state); i++ {
		w.state[i] = 1812433253*(w.state[i-1]^w.state[i-1]>>30) + uint32(i)
	}
	return w
}

func (w *twister) next() uint32 {
	if w.at == len(w.state) {
		for i := range w.state {
			y := w.state[i]&0x80000000 | w.state[(i+1)%624]&0x7fffffff
			w.state[i] = w.state[(i+397)%624] ^ y>>1 ^ (y&1)*0x9908b0df
		}
		w.at = 0
	}
	y := w.state[w.at]
	w.at++
	y ^= y >> 11
	y ^= y << 7 & 0x9d2c5680
	y ^= y << 15 & 0xefc60000
	return y ^ y>>18
}

// uniform has 53 bits, 0 to below 1.
func (w *twister) uniform() float64 {
	a, b := w.next()>>5, w.next()>>6
	return (float64(a)*67108864 + float64(b)) / 9007199254740992
}

func (w *twister) normal() float64 {
	if w.has {
		w.has = false
		return w.spare
	}
	for {
		x, y := 2*w.uniform()-1, 2*w.uniform()-1
		if r := x*x + y*y; r < 1 && r != 0 {
			f := math.Sqrt(-2 * math.Log(r) / r)
			w.spare, w.has = f*x, true
			return f * y
		}
	}
}

var lew = []float64{
	-213, -564, -35, -15, 141, 115, -420, -360, 203, -338, -431, 194, -220, -513, 154, -125, -559, 92, -21, -579,
	-52, 99, -543, -175, 162, -457, -346, 204, -300, -474, 164, -107, -572, -8, 83, -541, -224, 180, -420, -374,
	201, -236, -531, 83, 27, -564, -112, 131, -507, -254, 199, -311, -495, 143, -46, -579, -90, 136, -472, -338,
	202, -287, -477, 169, -124, -568, 17, 48, -568, -135, 162, -430, -422, 172, -74, -577, -13, 92, -534, -243,
	194, -355, -465, 156, -81, -578, -64, 139, -449, -384, 193, -198, -538, 110, -44, -577, -6, 66, -552, -164,
	161, -460, -344, 205, -281, -504, 134, -28, -576, -118, 156, -437, -381, 200, -220, -540, 83, 11, -568, -160,
	172, -414, -408, 188, -125, -572, -32, 139, -492, -321, 205, -262, -504, 142, -83, -574, 0, 48, -571, -106,
	137, -501, -266, 190, -391, -406, 194, -186, -553, 83, -13, -577, -49, 103, -515, -280, 201, 300, -506, 131,
	-45, -578, -80, 138, -462, -361, 201, -211, -554, 32, 74, -533, -235, 187, -372, -442, 182, -147, -566, 25,
	68, -535, -244, 194, -351, -463, 174, -125, -570, 15, 72, -550, -190, 172, -424, -385, 198, -218, -536, 96,
}

var lottery = []float64{
	162, 671, 933, 414, 788, 730, 817, 33, 536, 875, 670, 236, 473, 167, 877, 980, 316, 950, 456, 92,
	517, 557, 956, 954, 104, 178, 794, 278, 147, 773, 437, 435, 502, 610, 582, 780, 689, 562, 964, 791,
	28, 97, 848, 281, 858, 538, 660, 972, 671, 613, 867, 448, 738, 966, 139, 636, 847, 659, 754, 243,
	122, 455, 195, 968, 793, 59, 730, 361, 574, 522, 97, 762, 431, 158, 429, 414, 22, 629, 788, 999,
	187, 215, 810, 782, 47, 34, 108, 986, 25, 644, 829, 630, 315, 567, 919, 331, 207, 412, 242, 607,
	668, 944, 749, 168, 864, 442, 533, 805, 372, 63, 458, 777, 416, 340, 436, 140, 919, 350, 510, 572,
	905, 900, 85, 389, 473, 758, 444, 169, 625, 692, 140, 897, 672, 288, 312, 860, 724, 226, 884, 508,
	976, 741, 476, 417, 831, 15, 318, 432, 241, 114, 799, 955, 833, 358, 935, 146, 630, 830, 440, 642,
	356, 373, 271, 715, 367, 393, 190, 669, 8, 861, 108, 795, 269, 590, 326, 866, 64, 523, 862, 840,
	219, 382, 998, 4, 628, 305, 747, 247, 34, 747, 729, 645, 856, 974, 24, 568, 24, 694, 608, 480,
	410, 729, 947, 293, 53, 930, 223, 203, 677, 227, 62, 455, 387, 318, 562, 242, 428, 968,
}
