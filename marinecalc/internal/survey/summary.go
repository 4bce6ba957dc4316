package survey

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/sheet"
)

// count is how many findings have one of the words.
func (s *Survey) count(words ...sheet.Word) (n int) {
	for _, f := range s.Findings {
		if slices.Contains(words, f.Verdict.Word) {
			n++
		}
	}
	return n
}

// titles of the sheets of some findings, each once, with how many.
func (s *Survey) titles(words ...sheet.Word) []string {
	var titles []string
	counts := map[string]int{}
	for _, f := range s.Findings {
		if slices.Contains(words, f.Verdict.Word) {
			if counts[f.Sheet] == 0 {
				titles = append(titles, f.Sheet)
			}
			counts[f.Sheet]++
		}
	}
	for i, t := range titles {
		if n := counts[t]; n > 1 {
			titles[i] = fmt.Sprintf("%s (%d)", t, n)
		}
	}
	return titles
}

// outside names what stands outside a guide, as what is over a limit is named: a
// gland too hot to hold is past no limit, and is what is wrong all the same.
func (s *Survey) outside() (titles []string) {
	for _, f := range s.Findings {
		if f.Verdict.Word == sheet.Outside && !slices.Contains(titles, f.Verdict.Title) {
			titles = append(titles, f.Verdict.Title)
		}
	}
	return titles
}

// Line is one line of the summary.
type Line struct {
	Code  string `json:"code"`
	Head  string `json:"head"`
	Text  string `json:"text"`
	Count int    `json:"count"`
}

// width is how long a line of the summary is at most, in letters; what is wrong
// has two such lines, so that the fault is not what is cut off.
const width = 78

// summary says the whole boat in a dozen lines at most: what is wrong, what to
// measure, what is close, and how much is OK.
func (s *Survey) summary(session *calc.Session) []Line {
	lines := []Line{}
	lay := func(rows int, code, head string, count int, items []string) {
		if count > 0 {
			lines = append(lines, Line{code, head, fit(items, rows*width-len([]rune(head))-2), count})
		}
	}
	add := func(code, head string, count int, items []string) { lay(1, code, head, count, items) }
	wrong := func(code, head string, items []string) { lay(2, code, head, len(items), items) }
	titlesOf := func(kinds ...FoundKind) (titles []string) {
		for _, f := range s.Found {
			if title := cmp.Or(f.Title, f.Sheet); slices.Contains(kinds, f.Kind) && !slices.Contains(titles, title) {
				titles = append(titles, title)
			}
		}
		return titles
	}
	if s.Still != "" {
		wrong("still", "Keep the shaft still", []string{s.Still})
	}
	wrong("found", "Fault found", titlesOf(FoundCause))
	wrong("seen", "Seen", titlesOf(FoundLook, FoundWear))
	wrong("measured", "Measured over a limit", titlesOf(FoundMeasured))
	wrong("computed", "Calculated over a limit", titlesOf(FoundComputed))
	var list []string
	for _, d := range s.Disagree {
		list = append(list, d.Conflict.Title)
	}
	wrong("disagree", "Figures that do not agree", list)
	list = nil
	for _, f := range s.Faults {
		list = append(list, f.Title)
	}
	wrong("faults", "Figures to put right", list)
	wrong("outside", "Outside a guide", s.outside())
	loose, failing := s.rightFirst(session)
	add("joints-first", "Found loose", len(loose), loose)
	add("joints-first", "Joints to put right", len(failing), failing)
	head, list := s.weakest(session)
	add("joints", head, len(list), list)
	if s.Choice != nil {
		add("choice", "Work", 1, []string{s.Choice.Text})
	}
	if look := s.lookFirst(); look != "" {
		add("look", "Look first", 1, []string{look})
	}
	list = nil
	where := map[string][]string{}
	measurable := slices.ContainsFunc(s.Measure, func(m Measure) bool { return m.Do != DoChoose })
	for _, m := range s.Measure {
		if measurable && m.Do == DoChoose {
			continue // for a screen it is enough to know what can be read
		}
		where[m.Place] = append(where[m.Place], fmt.Sprintf("%s (%d)", m.Title, len(m.Settles)+len(m.Helps)))
	}
	add("measure", map[bool]string{true: "Measure first", false: "Choose"}[measurable], len(where[""]), where[""])
	for _, place := range []string{"ashore", "afloat"} {
		add(place, "Measure when "+place, len(where[place]), where[place])
	}
	add("close", sheet.NearLimit.Reads(sheet.AtMost), s.count(sheet.NearLimit), s.titles(sheet.NearLimit))
	add("guides", "About a guide", s.count(sheet.About), s.titles(sheet.About))
	add("untold", "Not enough to tell", s.count(sheet.CannotTell), s.titles(sheet.CannotTell))
	told := fmt.Sprintf("%d OK or inside the guide, %d not measured", s.count(sheet.Within, sheet.Inside), len(s.Open))
	if n := len(s.Missing); n > 0 {
		told += "; " + sheetsLacking(n)
	}
	return append(lines, Line{"ok", "All else", told, s.count(sheet.Within, sheet.Inside)})
}

// nothing is what stands where nothing was found; "" where something was. It says how
// much was looked at: a boat that nobody read is not told to be sound.
func (s *Survey) nothing(session *calc.Session) string {
	_, conflicts := s.Conflicts()
	if len(s.Found)+len(s.Faults)+len(conflicts) > 0 {
		return ""
	}
	read, newest, parts := 0, "", session.Book.Table(PartsTable).Rows
	for i := range parts.Len() {
		row := parts.At(i)
		names := columnOf(&row, "readings")
		on := max(session.Boat.NewestOf(names), session.Boat.TrialRead(names))
		if newest = max(newest, on); on != "" {
			read++
		}
	}
	text := "Nothing that was looked at is over a limit; "
	if len(s.Findings) == 0 {
		text = "No limit could be judged yet; "
	}
	if read == 0 {
		text += "nothing was read on the boat yet, which is no OK"
	} else {
		text += fmt.Sprintf("%d of %d parts were read, last on %s", read, parts.Len(), newest)
	}
	if n := s.count(sheet.CannotTell, sheet.About); n > 0 {
		text += fmt.Sprintf("; not enough to tell: %d", n)
	}
	if past := s.pastByEstimate(); len(past) > 0 {
		text += ", past its limit by the estimate: " + problem.MidSentence(strings.Join(past, "; "))
	}
	switch n := s.count(sheet.Outside); n {
	case 0:
	case 1:
		text += "; one figure stands outside a guide, listed below: look into it"
	default:
		text += fmt.Sprintf("; %d figures stand outside a guide, listed below: look into each", n)
	}
	return text + "."
}

// pastByEstimate are the titles of limits of which is not enough to tell and whose
// estimate lies past them.
func (s *Survey) pastByEstimate() (titles []string) {
	for _, f := range s.Findings {
		v := f.Verdict
		if v.Word == sheet.CannotTell && v.EstimatePast() && !slices.Contains(titles, v.Title) {
			titles = append(titles, v.Title)
		}
	}
	return titles
}

// fit joins what fits on a line and counts the rest. The first always stands
// there, cut at a word where it must be.
func fit(items []string, room int) string {
	text := ""
	for i, item := range items {
		rest := ""
		if left := len(items) - i - 1; left > 0 {
			rest = fmt.Sprintf(" and %d more", left)
		}
		joined := item
		if i > 0 {
			joined = text + "; " + item
		}
		if len([]rune(joined+rest)) > room {
			if i > 0 {
				return text + fmt.Sprintf(" and %d more", len(items)-i)
			}
			runes := []rune(item)
			keep := max(1, room-len([]rune(rest))-1)
			if keep < len(runes) {
				cut := string(runes[:keep])
				if at := strings.LastIndex(cut, " "); at > keep/2 {
					cut = cut[:at]
				}
				joined = cut + "…"
			}
		}
		text = joined
	}
	return text
}

func sheetsLacking(n int) string {
	if n == 1 {
		return "one sheet lacks inputs"
	}
	return fmt.Sprintf("%d sheets lack inputs", n)
}
