package procedure

import (
	"strings"

	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/survey"
	"example.org/driveline/marinecalc/internal/workplan"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/sheet"
)

// Figure is a result or an input of the boat's sheets that a step needs, or
// what it takes to know it.
type Figure struct {
	Of          string        `json:"of"` // "calculation/name"
	Title       string        `json:"title"`
	Calculation string        `json:"calculation"`
	Sheet       string        `json:"sheet"`              // title of the calculation
	Text        string        `json:"text"`               // "" where it is not known
	Interval    string        `json:"interval,omitempty"` // 95 % range
	Word        sheet.Word    `json:"word,omitempty"`
	Reads       string        `json:"reads,omitempty"` // the word as people read it
	Sentence    string        `json:"sentence,omitempty"`
	Maker       *sheet.Maker  `json:"maker,omitempty"`
	RestsOn     []string      `json:"restsOn,omitempty"` // the unverified figures behind it
	Table       *sheet.Table  `json:"table,omitempty"`
	Needs       []survey.Need `json:"needs,omitempty"` // to know it
	Why         string        `json:"why,omitempty"`   // it is not known
}

// Tightening is how a circle of bolts is tightened.
type Tightening struct {
	Order  []int    `json:"order"`  // of the bolts; empty where the number of bolts is not known
	Passes []string `json:"passes"` // torque of each; empty where it is not known
	Text   string   `json:"text"`   // in words
}

const wrenchSetting = "bolt-preload/wrenchSetting"

// inTightening are the figures that the words of the tightening have.
var inTightening = []string{"bolt-fit/firstTorque", "bolt-fit/secondTorque", "bolt-fit/tighteningOrder"}

// worked is a calculation as the boat allows it.
type worked struct {
	title string
	form  *contract.Calculation // nil where there is no such calculation
	sheet *sheet.Sheet          // nil where it cannot be worked out
	rests []inputs.Unverified
	needs []survey.Need
	why   string
}

// work works a calculation out on the boat, once.
func (m *maker) work(id string) *worked {
	if w := m.worked[id]; w != nil {
		return w
	}
	w := &worked{title: id}
	m.worked[id] = w
	c, err := m.session.Find(id)
	if err != nil {
		w.why = "there is no calculation " + id
		return w
	}
	form, err := c.Form()
	if err != nil {
		w.why = err.Error()
		return w
	}
	w.title, w.form = form.Title, form.Calculation
	out, missing, problems := m.session.Work(c)
	switch {
	case out != nil:
		w.sheet, w.rests = out.Sheet, out.Unverified
	case len(missing) > 0 && len(missing) == len(problems):
		w.needs = survey.HowTo(m.session, w.form, missing)
		w.why = "“" + w.title + "” cannot be worked out yet"
	default:
		var texts []string
		for _, p := range problems {
			texts = append(texts, p.String())
		}
		w.why = "“" + w.title + "” cannot be worked out: " + strings.Join(texts, " ")
	}
	return w
}

// figure finds one figure for the step of that number.
func (m *maker) figure(of string, step int) Figure {
	id, name, _ := strings.Cut(of, "/")
	w := m.work(id)
	f := Figure{Of: of, Title: name, Calculation: id, Sheet: w.title, Why: w.why}
	p := m.session.Property(of)
	if p == nil {
		if f.Why == "" {
			f.Why = "“" + w.title + "” has no " + name
		}
		return f
	}
	f.Title = p.Title
	joint := m.jointOf(of)
	if joint != nil && !strings.Contains(strings.ToLower(p.Title), strings.ToLower(joint.Name)) { // a torque is of one joint
		f.Title = joint.Name + ": " + problem.MidSentence(p.Title)
	}
	if w.sheet != nil {
		m.onSheet(&f, w, name)
	} else if text, ok := workplan.FigureOf(m.session, of); ok && text != "" {
		f.Text = text
	}
	if joint != nil {
		f.asOnCard(joint)
	}
	if f.Text != "" || f.Table != nil {
		f.Why = ""
		return f
	}
	if w.sheet == nil {
		f.Needs = w.needs
	} else {
		f.Needs = m.behind(w, p)
		f.Why = "not worked out for this boat"
	}
	m.lack(f, step)
	return f
}

// onSheet reads a figure off a sheet.
func (m *maker) onSheet(f *Figure, w *worked, name string) {
	if r := w.sheet.Result(name); r != nil {
		f.Text, f.Interval, f.Maker = r.Text, r.Interval, r.Maker
	} else if i := w.sheet.Input(name); i != nil {
		f.Text = i.Text
	} else if t := w.sheet.Table(name); t != nil && len(t.Rows) > 0 {
		f.Table = t
	}
	for _, u := range w.rests {
		if u.Result == name {
			for _, title := range u.RestsOn {
				f.RestsOn = append(f.RestsOn, problem.MidSentence(title))
			}
		}
	}
	var worst *sheet.Verdict
	for i := range w.sheet.Verdicts {
		if v := &w.sheet.Verdicts[i]; v.On == name && (worst == nil || v.Word.Rank() < worst.Word.Rank()) {
			worst = v
		}
	}
	if worst != nil && f.Text != "" {
		f.Word, f.Reads = worst.Word, worst.Reads
		f.Sentence = strings.TrimSpace(worst.Sentence + " " + worst.Settle)
	}
}

func (m *maker) sheetOf(id string) *sheet.Sheet { return m.work(id).sheet }

// behind names the inputs that a result rests on and that are not known.
func (m *maker) behind(w *worked, p *contract.Property) []survey.Need {
	var lacking []*contract.Property
	if !p.IsResult {
		lacking = append(lacking, p)
	}
	for _, name := range w.form.Formulas.Rests(p.Name) {
		if input := w.form.Input.Child(name); input != nil && w.sheet.Input(name) == nil {
			lacking = append(lacking, input)
		}
	}
	return survey.HowTo(m.session, w.form, lacking)
}
