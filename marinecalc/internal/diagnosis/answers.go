package diagnosis

import (
	"fmt"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/diagnosis/bayes"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

var answerOf = map[string]bayes.Answer{"yes": bayes.Yes, "no": bayes.No, "unknown": bayes.Unknown}

func answerWord(a bayes.Answer) string {
	return map[bayes.Answer]string{bayes.Yes: "yes", bayes.No: "no", bayes.Unknown: "don't know"}[a]
}

// byPerson marks what a person answered.
const byPerson = "answer"

// byBoat marks what the boat file says she has.
const byBoat = "boat file"

// byVerdict is how a verdict looks at things.
const byVerdict = "gauge"

// take takes the person's answers. A question answered both ways is refused,
// and so is a way of looking that is none of the question's.
func (f *finder) take(answers []Symptom) error {
	var list problem.List
	for i, one := range answers {
		where := fmt.Sprintf("/answers/%d", i)
		q, ok := f.question[one.Evidence]
		if !ok {
			list.Add(where+"/evidence", fmt.Sprintf("there is no question %q", one.Evidence), "an id of the rows of evidence", "")
			continue
		}
		e, a := f.evidence.At(q), answerOf[one.Answer]
		if one.By != "" && !rules.Contains(e.WaysToLook(), one.By) {
			list.Add(where+"/by", fmt.Sprintf("“%s” is not looked at by %s", e.Title, one.By), waysOf(e), "leave it out where none of these fits")
			continue
		}
		switch {
		case a == bayes.Unknown:
			f.unsure[q] = true
		case f.answers[q] == -a:
			list.Add(where, fmt.Sprintf("“%s” is answered both with yes and with no", e.Title), "one answer", "leave one out, or answer don't know")
		case blind(e, a, one.By):
			f.saysNothing = append(f.saysNothing, fmt.Sprintf("To “%s” a no by %s says nothing; it was not counted.", e.Title, f.wayWords(one.By)))
		case f.answers[q] == a:
			f.again(q, one.By)
		default:
			f.put(q, a, byPerson, one.By)
		}
	}
	return list.Err()
}

// waysOf lists the ways in which a question can be looked at.
func waysOf(e rules.Evidence) string {
	var list []string
	for _, way := range e.WaysToLook().All() {
		list = append(list, way)
	}
	return strings.Join(list, ", ")
}

// blind tells whether an answer says nothing, looked at in that way.
func blind(e rules.Evidence, a bayes.Answer, way string) bool {
	return a == bayes.No && way != "" && rules.Contains(e.Blind, way)
}

// put takes an answer and how it was looked at: surer ways are wrong less
// often, and hearsay shows nothing to be there.
func (f *finder) put(q int, a bayes.Answer, from, way string) {
	f.answers[q], f.from[q], f.ways[q], f.limits[q] = a, from, []string{way}, ""
	f.model.Wrong[q] = f.wrongBy(q, way)
	if way == rules.Hearsay {
		f.model.Settles[q] = -1
	}
}

// again takes the same answer once more, looked at in another way: both are
// wrong together far less often. The same way twice says nothing new.
func (f *finder) again(q int, way string) {
	if slices.Contains(f.ways[q], way) {
		return
	}
	f.ways[q] = append(f.ways[q], way)
	f.model.Wrong[q] = bothWrong(f.model.Wrong[q], f.wrongBy(q, way))
	if way != rules.Hearsay {
		f.model.Settles[q] = f.knowledge.model.Settles[q]
	}
}

// bothWrong is the share of wrong ones among answers in which two ways of
// looking, independent of each other, agree.
func bothWrong(a, b float64) float64 { return a * b / (a*b + (1-a)*(1-b)) }

// wrongBy is the share of wrong answers by a way of looking, "" where nobody
// said.
func (f *finder) wrongBy(q int, way string) float64 {
	if way == "" {
		return f.knowledge.model.Wrong[q]
	}
	return f.book.WrongBy(way)
}

// onlyTold tells whether an answer rests on hearsay alone.
func (f *finder) onlyTold(q int) bool {
	return len(f.ways[q]) == 1 && f.ways[q][0] == rules.Hearsay
}

// wayWords names a way of looking as in a sentence.
func (f *finder) wayWords(way string) string {
	row := f.book.Table("ways-of-looking").Find(way, nil)
	if row == nil {
		return way // a test finds every way
	}
	return problem.MidSentence(row.Name)
}

// takeVerdicts lets the boat's own verdicts answer what the person did not,
// and what was noted of looks, and returns how many questions they answered.
// A trouble that was measured stands against a no: what keeps the shaft still
// is not ticked away. Else what the person said wins. Both is told.
func (f *finder) takeVerdicts(s *calc.Session) int {
	f.takeBoat(s.Boat)
	if s.Boat == nil {
		return 0
	}
	owner := map[string]string{}
	for _, l := range f.book.AllLimits().All() {
		owner[l.ID] = l.Calculation
	}
	f.takeCare(s.Boat)
	count := f.takeReadings(s.Boat)
	for q, e := range f.evidence.All() {
		a, v := answerByVerdict(e, func(limit string) *sheet.Verdict {
			if out := s.Earlier(owner[limit]); out != nil {
				return out.Sheet.Verdict(limit)
			}
			return nil
		})
		said := f.answers[q]
		if a == bayes.Unknown || said == a {
			continue
		}
		of := s.Earlier(owner[v.Limit])
		from, was := "verdict: "+v.Title+": "+v.Reads, fmt.Sprintf("the verdict on “%s”%s is “%s”", v.Title, on(of.Newest), v.Reads)
		switch {
		case said == bayes.Unknown:
			f.put(q, a, from, byVerdict)
		case a == bayes.Yes && !(saidAfter(s.Boat, e.ID, "no", of.Newest) && (e.KeepStill == "" || f.stopsItself(v.Limit))):
			f.overrule(q, was, from, byVerdict)
		case a == bayes.No && saidBefore(s.Boat, e.ID, "yes", of.Oldest):
			f.disagree = append(f.disagree, fmt.Sprintf("To “%s” the answer is yes, but %s; what was measured is newer and was counted.", e.Title, was))
			f.model.Settles[q] = f.knowledge.model.Settles[q]
			f.put(q, a, from, byVerdict)
		default:
			f.disagree = append(f.disagree, fmt.Sprintf("To “%s” the answer is %s, but %s; the answer was counted.", e.Title, answerWord(said), was))
			continue
		}
		f.limits[q] = v.Limit
		if f.gauged[q] = v.Value + on(of.Newest); said == bayes.No {
			f.gauged[q] += ", against the answer no"
		}
		count++
	}
	return count
}

// on is the day of what was read, behind it; "" where that is not known.
func on(day string) string {
	if day == "" {
		return ""
	}
	return " of " + day
}

// stopsItself tells whether a limit keeps the shaft still by itself where it is past.
func (f *finder) stopsItself(limit string) bool {
	for _, l := range f.book.AllLimits().All() {
		if l.ID == limit {
			return l.Stops.Len() > 0
		}
	}
	return false
}

// overrule lets what was measured stand in the place of a no, and tells it.
func (f *finder) overrule(q int, measured, from, way string) {
	f.disagree = append(f.disagree, fmt.Sprintf("To “%s” the answer is no, but %s; what was measured was counted. If that has changed, measure again and note it.",
		f.evidence.At(q).Title, measured))
	f.model.Settles[q] = f.knowledge.model.Settles[q]
	f.put(q, bayes.Yes, from, way)
}

// answerByVerdict is what the boat's verdicts answer to a question, and the
// verdict that does; the first line of the row that fits counts.
func answerByVerdict(e rules.Evidence, verdict func(limit string) *sheet.Verdict) (bayes.Answer, *sheet.Verdict) {
	for _, by := range e.Verdicts.All() {
		for _, limit := range by.Limits.All() {
			if v := verdict(limit); v != nil && rules.Contains(by.Words, v.Word.Plain()) {
				return answerOf[by.Answer], v
			}
		}
	}
	return bayes.Unknown, nil
}
