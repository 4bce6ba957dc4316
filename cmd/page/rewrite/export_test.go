package rewrite

import "slices"

// Improvements names what Jumps does beside making jumps direct.
func Improvements() (names []string) {
	for _, i := range improvements {
		names = append(names, i.name)
	}
	return names
}

// JumpsWithout is Jumps with these improvements left out.
func JumpsWithout(module []byte, left ...string) ([]byte, error) {
	all := improvements
	defer func() { improvements = all }()
	improvements = slices.DeleteFunc(slices.Clone(all), func(i improvement) bool { return slices.Contains(left, i.name) })
	return Jumps(module)
}
