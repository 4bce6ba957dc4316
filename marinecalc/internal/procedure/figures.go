package procedure

import (
	"fmt"
	"math"
	"strings"

	"example.org/driveline/marinecalc/coupling"
	"example.org/driveline/marinecalc/fastener"
	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/setting"
	"example.org/driveline/marinecalc/internal/survey"
	"example.org/driveline/marinecalc/internal/workplan"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
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
		m.against(&f, joint)
	} else if text, ok := workplan.FigureOf(m.session, of); ok && text != "" {
		f.Text = text
	}
	if joint != nil && f.Text == "" {
		m.byMaker(&f, joint)
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
			f.RestsOn = u.RestsOn
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

// jointOf is the row of the torque card whose torque a figure is, of several the one
// that this coupling has; nil where it is none.
func (m *maker) jointOf(of string) *rules.Row {
	table := m.session.Book.Table("torque-joints")
	if table == nil {
		return nil
	}
	for _, row := range table.Rows.All() {
		if row.Values.Of("torque").Text != of {
			continue
		}
		held := coupling.HoldMethod("")
		if in := m.sheetOf("coupling-bore").Input("holdMethod"); in != nil {
			held = coupling.HoldMethod(in.Word)
		}
		if !setting.Absent(row.Pick, held) {
			return &row
		}
	}
	return nil
}

// against puts beside a torque what the sheets say against its joint, as the torque
// card does.
func (m *maker) against(f *Figure, joint *rules.Row) {
	if joint == nil || f.Text == "" {
		return
	}
	a := setting.AgainstTorque(*joint, m.sheetOf, "heeds", "asks", "holds", "cures")
	unsettled := m.unsettled(joint)
	if a.Word != "" {
		if f.Word == "" || a.Word.Rank() <= f.Word.Rank() {
			f.Word, f.Reads = a.Word, a.Mark
		}
		f.Sentence = strings.TrimSpace(problem.Capital(a.Text) + ". " + f.Sentence)
	}
	if unsettled == "" {
		return
	}
	f.Text, f.Interval, f.Maker = setting.NotSettled(unsettled), "", nil
	if f.Word == "" || f.Word.Rank() > sheet.CannotTell.Rank() {
		f.Word, f.Reads = sheet.CannotTell, "not settled"
		f.Sentence = strings.TrimSpace("Look whether torque, thread and grade are right, and ask the maker, before a wrench goes on. " + f.Sentence)
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

// tightening is how the coupling bolts are tightened: in passes, crosswise.
// Where the sheet of the bolt's fit cannot be worked out, the count of bolts
// and the usual passes are enough.
func (m *maker) tightening() *Tightening {
	t := &Tightening{Order: m.order(), Passes: []string{}}
	setting := m.work("bolt-preload").sheet.Result("wrenchSetting")
	full, makers := m.figureText(wrenchSetting), false
	if setting != nil {
		full, _, makers = setting.Stands()
	}
	if first, second := m.figureText("bolt-fit/firstTorque"), m.figureText("bolt-fit/secondTorque"); full != "" && first != "" && second != "" {
		t.Passes = []string{first, second, full}
	} else if full != "" {
		t.Passes = m.usualPasses(setting, full)
	}
	order := "Crosswise, each bolt after the one opposite; the number of bolts is not known."
	if len(t.Order) > 0 {
		order = "Number the bolts round the circle and go over them in the order " + fastener.BoltOrder(len(t.Order)).String() + "."
	}
	if makers {
		order += " The torque is the maker's."
	}
	passes := "The torque is not known: do not tighten by a guess."
	if joint := m.jointOf(wrenchSetting); joint != nil && full != "" && m.unsettled(joint) != "" {
		t.Passes = []string{}
		passes = "The torque is not settled: " + m.unsettled(joint) + ": settle that, or ask the maker, before a wrench goes on."
	}
	if len(t.Passes) > 0 {
		passes = fmt.Sprintf("First pass %s, then %s. Last, go once round at %s until no nut moves.",
			strings.Join(t.Passes[:len(t.Passes)-1], ", then "), t.Passes[len(t.Passes)-1], t.Passes[len(t.Passes)-1])
	}
	t.Text = order + " " + passes
	return t
}

func (m *maker) figureText(of string) string {
	text, _ := workplan.FigureOf(m.session, of)
	return text
}

// usualPasses are the torques of the usual passes up to the full one, where the
// setting is known.
func (m *maker) usualPasses(setting *sheet.Result, full string) []string {
	row, property := m.session.Property("bolt-fit/passes"), m.session.Property(wrenchSetting)
	if row == nil || property == nil || setting == nil {
		return []string{}
	}
	_, torque, _ := setting.Stands()
	if torque == nil {
		return []string{}
	}
	usual, _ := row.Default.(string)
	table := m.session.Book.Table(row.Rows)
	if table == nil {
		return []string{}
	}
	passes := table.Find(usual, func(string) (float64, string, bool) { return 0, "", false })
	if passes == nil {
		return []string{}
	}
	var out []string
	for _, column := range []string{"firstPass", "secondPass"} {
		if share := passes.Values.Of(column).SI; share > 0 {
			out = append(out, inputs.Show(property, share**torque, m.session.Units))
		}
	}
	return append(out, full)
}

// order is the order of tightening, by the boat's count of bolts where the sheet
// of their fit cannot be worked out; none where they are not counted.
func (m *maker) order() []int {
	if r := m.sheetOf("bolt-fit").Result("tighteningOrder"); r != nil {
		return r.Sequence
	}
	none := []int{}
	p := m.session.Property("bolt-fit/boltCount")
	raw, _, _, ok := m.session.Boat.Find(p.Boat)
	if !ok {
		return none
	}
	n, _, err := inputs.Numeric(p, raw)
	if err != nil || n < 2 || n > 48 || n != math.Trunc(n) {
		return none
	}
	return fastener.TighteningOrder(int(n))
}
