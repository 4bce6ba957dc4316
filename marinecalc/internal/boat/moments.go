package boat

import (
	"sort"
	"strconv"
	"strings"
	"time"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/problem"
)

// Moment is what a recorder read at one time, in SI, by the readings' names.
type Moment struct {
	Time   time.Time
	Values map[string]float64
}

// AddMoments returns the boat with what a recorder read added to its readings,
// an entry a moment. One that the boat has already is not added again. Values
// beyond what the boat's schema takes are left out and counted by their
// reading.
func (b *Boat) AddMoments(moments []Moment, source string) (after *Boat, added int, left map[string]int, err error) {
	c, err := Contract()
	if err != nil {
		return nil, 0, nil, err
	}
	var rows []any
	for _, m := range moments {
		if row := b.rowOf(m, source); row != nil {
			rows = append(rows, row)
		}
	}
	left = map[string]int{}
	for _, p := range c.Check(map[string]any{"name": "-", "readings": rows}) {
		tokens := contract.Tokens(p.Where)
		if len(tokens) < 3 {
			return nil, 0, nil, problem.List{p}.Err()
		}
		n, _ := strconv.Atoi(tokens[1]) // the place is one of ours
		row := rows[n].(map[string]any)
		if _, there := row[tokens[2]]; there {
			left[tokens[2]]++
			delete(row, tokens[2])
		}
	}
	var kept []map[string]any
	for _, row := range rows {
		const bare = 3 // date, time and source
		if row := row.(map[string]any); len(row) > bare {
			kept = append(kept, row)
		}
	}
	after, added, err = b.withRows(kept)
	return after, added, left, err
}

// rowOf writes a moment as an entry of the boat file.
func (b *Boat) rowOf(m Moment, source string) map[string]any {
	row := map[string]any{"date": m.Time.Format("2006-01-02"), "time": m.Time.Format("15:04"), "source": source}
	var own []any
	for name, si := range m.Values {
		q, known := b.Describe(name)
		if !known {
			continue
		}
		text := inFiveDigits(q.Kind.Exact(si, q.Units[0]))
		if mine, is := strings.CutPrefix(name, "own/"); is {
			own = append(own, map[string]any{"reading": mine, "value": text})
			continue
		}
		row[name] = text
	}
	if own != nil {
		of := func(i int) string { return own[i].(map[string]any)["reading"].(string) }
		sort.Slice(own, func(i, j int) bool { return of(i) < of(j) })
		row["own"] = own
	}
	return row
}

// inFiveDigits rounds the number of a text: no sensor on a boat is surer.
func inFiveDigits(text string) string {
	number, unit, _ := strings.Cut(text, " ")
	f, err := strconv.ParseFloat(number, 64)
	if err != nil {
		return text
	}
	short, err := strconv.ParseFloat(strconv.FormatFloat(f, 'g', 5, 64), 64)
	if err != nil {
		return text
	}
	if short == float64(int64(short)) {
		number = strconv.FormatInt(int64(short), 10)
	} else {
		number = strconv.FormatFloat(short, 'f', -1, 64)
	}
	return strings.TrimSpace(number + " " + unit)
}
