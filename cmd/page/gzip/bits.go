package gzip

// bitWriter gathers bits into bytes, lowest bit first.
type bitWriter struct {
	bytes []byte
	held  uint64
	count int
}

func (w *bitWriter) write(value uint32, count int) {
	w.held |= uint64(value) << w.count
	for w.count += count; w.count >= 8; w.count -= 8 {
		w.bytes = append(w.bytes, byte(w.held))
		w.held >>= 8
	}
}

// flush fills the last byte up with zeros.
func (w *bitWriter) flush() {
	if w.count > 0 {
		w.write(0, 8-w.count)
	}
}

// writeBlock writes tokens as a block with codes of its own (RFC 1951, 3.2.7).
func writeBlock(w *bitWriter, tokens []token, last bool) {
	literals, distances := count(tokens)
	if *distances == ([distanceSymbols]int{}) {
		distances[0] = 1 // a block without matches still has to tell a code for them
	}
	litLengths, distLengths := codeLengths(literals[:], 15), codeLengths(distances[:], 15)
	final := uint32(0)
	if last {
		final = 1
	}
	w.write(final, 1)
	w.write(2, 2)
	writeCodes(w, litLengths, distLengths)

	lit, dist := codesOf(litLengths), codesOf(distLengths)
	for _, t := range tokens {
		if t.length == 0 {
			w.write(lit[t.literal], litLengths[t.literal])
			continue
		}
		s := lengthSymbol(int(t.length))
		w.write(lit[s], litLengths[s])
		n, v := lengthExtra(int(t.length))
		w.write(v, n)
		d := distanceSymbol(int(t.distance))
		w.write(dist[d], distLengths[d])
		n, v = distanceExtra(int(t.distance))
		w.write(v, n)
	}
	w.write(lit[endOfBlock], litLengths[endOfBlock])
}

// lengthOrder is the order in which the lengths of the code for code lengths
// are told (RFC 1951, 3.2.7).
var lengthOrder = [19]int{16, 17, 18, 0, 8, 7, 9, 6, 10, 5, 11, 4, 12, 3, 13, 2, 14, 1, 15}

// writeCodes tells the two codes of a block by their lengths.
func writeCodes(w *bitWriter, lit, dist []int) {
	lit, dist = withoutEnd(lit, 257), withoutEnd(dist, 1)
	var runs [][3]int // symbol, extra value, extra bits
	all := append(append([]int{}, lit...), dist...)
	for i := 0; i < len(all); {
		n := 1
		for i+n < len(all) && all[i+n] == all[i] {
			n++
		}
		switch {
		case all[i] == 0 && n >= 11:
			n = min(n, 138)
			runs = append(runs, [3]int{18, n - 11, 7})
		case all[i] == 0 && n >= 3:
			runs = append(runs, [3]int{17, n - 3, 3})
		case n >= 4: // told once, then repeated
			n = min(n, 7)
			runs = append(runs, [3]int{all[i], 0, 0}, [3]int{16, n - 4, 2})
		default:
			n = 1
			runs = append(runs, [3]int{all[i], 0, 0})
		}
		i += n
	}
	counts := make([]int, 19)
	for _, r := range runs {
		counts[r[0]]++
	}
	lengths := codeLengths(counts, 7)
	codes := codesOf(lengths)
	told := 19
	for told > 4 && lengths[lengthOrder[told-1]] == 0 {
		told--
	}
	w.write(uint32(len(lit)-257), 5)
	w.write(uint32(len(dist)-1), 5)
	w.write(uint32(told-4), 4)
	for _, s := range lengthOrder[:told] {
		w.write(uint32(lengths[s]), 3)
	}
	for _, r := range runs {
		w.write(codes[r[0]], lengths[r[0]])
		w.write(uint32(r[1]), r[2])
	}
}

// withoutEnd leaves out the symbols at the end that have no code.
func withoutEnd(lengths []int, least int) []int {
	n := len(lengths)
	for n > least && lengths[n-1] == 0 {
		n--
	}
	return lengths[:n]
}
