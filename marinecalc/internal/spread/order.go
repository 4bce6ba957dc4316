// Order statistics by selection.

package spread

import "math"

// orderStatistic gives the value that sorting would put at v[k]. It rearranges v.
func orderStatistic(v []float64, k int) float64 {
	arrange(v, 0, len(v)-1, k)
	return v[k]
}

// arrange rearranges v[left:right+1] so that v[k] is the value that
// sorting would put there, with nothing greater before it and nothing less
// after it (Floyd and Rivest, algorithm 489, Communications of the ACM 18
// (1975) 173). v holds no NaN; left ≤ k ≤ right. The answer does not depend on
// the pivots, so rounding in choosing them is of no consequence.
func arrange(v []float64, left, right, k int) {
	for right > left {
		if right-left > 600 {
			n := float64(right - left + 1)
			i := float64(k - left + 1)
			z := math.Log(n)
			s := 0.5 * math.Exp(2*z/3)
			sd := 0.5 * math.Sqrt(z*s*(n-s)/n)
			if i < n/2 {
				sd = -sd
			}
			arrange(v, max(left, int(float64(k)-i*s/n+sd)), min(right, int(float64(k)+(n-i)*s/n+sd)), k)
		}
		pivot := v[k]
		i, j := left, right
		v[left], v[k] = v[k], v[left]
		if v[right] > pivot {
			v[left], v[right] = v[right], v[left]
		}
		for i < j {
			v[i], v[j] = v[j], v[i]
			i++
			j--
			for v[i] < pivot {
				i++
			}
			for v[j] > pivot {
				j--
			}
		}
		if v[left] == pivot {
			v[left], v[j] = v[j], v[left]
		} else {
			j++
			v[j], v[right] = v[right], v[j]
		}
		if j <= k {
			left = j + 1
		}
		if k <= j {
			right = j - 1
		}
	}
}
