package workplan

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// choose finds the work: that which was typed; or else a cure of each cause
// that the fault finding says is to be cured, in its order.
func (p *planner) choose(list *problem.List) {
	book := p.session.Book
	byID := make(map[string]rules.Remedy, book.Remedies().Len())
	for _, r := range book.Remedies().All() {
		byID[r.ID] = r
	}
	for i, c := range p.in.Remedies {
		r, ok := byID[c.Remedy]
		if !ok {
			noSuch(list, fmt.Sprintf("/remedies/%d/remedy", i), "remedy", c.Remedy, slices.Sorted(maps.Keys(byID)))
			continue
		}
		p.plan(r, "chosen")
	}
	if p.in.Remedies != nil {
		p.overlooked(byID)
		return
	}
	decision := p.decided(byID)
	causes := p.toCure()
	found := map[string]bool{}
	for _, c := range causes {
		if c.found {
			found[c.ID] = true
		}
	}
	p.openAnyway(causes, found, decision, byID)
	for _, c := range causes {
		p.cure(c, found, decision, byID)
	}
	if r, ok := byID[decision.work]; ok && !decision.used {
		p.plan(r, decision.because)
	}
}

// overlooked tells of the work that would be planned but for the list of work, which
// goes before all else: what cures a cause that was found and that nothing on the list
// cures, and what the owner decided, unless it once stood on a list and was taken off,
// as what is done is.
func (p *planner) overlooked(byID map[string]rules.Remedy) {
	trial := &planner{session: p.session, in: p.in}
	decision, found := trial.decided(byID), map[string]bool{}
	causes := slices.DeleteFunc(trial.toCure(), func(c cure) bool { return !c.found })
	for _, c := range causes {
		found[c.ID] = true
	}
	for _, c := range causes {
		if !slices.ContainsFunc(p.remedies, func(r rules.Remedy) bool { return rules.Contains(c.Remedies, r.ID) }) {
			trial.cure(c, found, decision, byID)
		}
	}
	if r, ok := byID[decision.work]; ok && decision.typed && !decision.used && !p.session.Boat.OnAList(r.ID) {
		trial.plan(r, decision.because)
	}
	for i, r := range trial.remedies {
		if !p.planned(r) {
			p.leaveOut(fmt.Sprintf("“%s” is not on the list of work, which goes before what was found and decided (%s): add it there, or clear the list.", r.Title, strings.NewReplacer(" (repair or replace)", "").Replace(strings.Join(trial.because[i], "; "))))
		}
	}
}

// plan adds a piece of work, once, unless it is none of this boat.
func (p *planner) plan(r rules.Remedy, because string) {
	if why := p.session.NoWork(r); why != "" {
		p.leaveOut(why)
		return
	}
	for i, has := range p.remedies {
		if has.ID == r.ID {
			if !slices.Contains(p.because[i], because) {
				p.because[i] = append(p.because[i], because)
			}
			return
		}
	}
	p.remedies, p.because = append(p.remedies, r), append(p.because, []string{because})
}

// toCure lists the causes that the fault finding says are to be cured, in
// their order.
func (p *planner) toCure() []cure {
	out := p.session.Earlier("fault-finding")
	if out == nil {
		return nil
	}
	var list []cure
	add := func(id, known, state string) {
		for _, c := range p.session.Book.Causes().All() {
			if c.ID == id {
				list = append(list, cure{c, known, state == "found", likely(out.Sheet, id)})
			}
		}
	}
	p.first = map[string]string{}
	if table := out.Sheet.Table("cureOrder"); table != nil {
		for _, r := range table.Rows {
			at := table.Reader(r)
			p.first[at("cause")] = at("cure")
			add(at("cause"), at("known"), at("state"))
		}
	}
	if first := out.Sheet.Result("cause"); first != nil && len(list) == 0 {
		known := ""
		if r := out.Sheet.Result("known"); r != nil {
			known = r.Text
		}
		add(first.Text, known, known)
		p.first[first.Text] = p.onceSeen(out.Sheet)
	}
	return list
}

// oddsOf is how likely the fault finding has a cause; nil of one that was found, and
// of one that is not ranked.
func oddsOf(faults *sheet.Sheet, cause string) (odds *float64, ranked bool) {
	for n := 0; faults.Cell("ranking", n, "cause") != nil; n++ {
		if faults.Cell("ranking", n, "cause").Text == cause {
			return faults.Cell("ranking", n, "probability").SI, true
		}
	}
	return nil, false
}

// likely tells whether a cause was found, or is more likely there than not: a
// suspicion under even odds is looked for, and opens nothing.
func likely(faults *sheet.Sheet, cause string) bool {
	odds, ranked := oddsOf(faults, cause)
	return ranked && (odds == nil || *odds > 0.5)
}

// onceSeen is the work that an answer with yes puts before the other cures of
// the first cause; "" for none.
func (p *planner) onceSeen(faults *sheet.Sheet) string {
	table := faults.Table("weights")
	if table == nil {
		return ""
	}
	yes := map[string]bool{}
	for _, r := range table.Rows {
		at := table.Reader(r)
		yes[at("evidence")] = at("answer") == "yes"
	}
	cause := faults.Result("cause").Text
	for _, r := range p.session.Book.Remedies().All() {
		for _, e := range p.session.Book.Evidence().All() {
			if yes[e.ID] && rules.Contains(r.OnceSeen, e.ID) && rules.Contains(r.Cures, cause) {
				return r.ID
			}
		}
	}
	return ""
}

// cure is a cause to be cured, and how it is known.
type cure struct {
	rules.Cause
	known  string // as people read it
	found  bool
	likely bool // found, or more likely than not
}

// decision is what was decided between repairing and replacing.
type decision struct {
	way     string // "repair", "replace" or "leave"; "" where nothing is decided
	work    string // id of the work that is taken, "" for none
	works   []string
	because string
	typed   bool // by the owner, and not by what costs least
	used    bool // for one of the causes
}

// decided reads what was decided: off the sheet that weighs it or, where its
// prices are lacking, what was typed of it. Beside a list of work that sheet takes
// neither, so that what was typed counts.
func (p *planner) decided(byID map[string]rules.Remedy) *decision {
	d := &decision{}
	typed := func(name string) string {
		raw, _, _, _ := p.session.Boat.Find("/choice/" + name)
		word, _ := raw.(string)
		return word
	}
	d.typed = typed("decided") != ""
	if out := p.session.Earlier("repair-or-replace"); out != nil {
		result := func(name string) string {
			if r := out.Sheet.Result(name); r != nil {
				return r.Text
			}
			return ""
		}
		d.way, d.works = result("taken"), []string{result("repairs"), result("replaces")}
		d.because = "by what is expected to cost least (repair or replace)"
		if d.typed {
			d.because = "decided (repair or replace)"
		}
	} else {
		d.way, d.works, d.because = typed("decided"), []string{typed("repairWork"), typed("replaceWork")}, "decided"
	}
	if d.typed && p.in.Remedies != nil {
		d.way = typed("decided")
	}
	if at := slices.Index([]string{"repair", "replace"}, d.way); at >= 0 {
		d.work = d.works[at]
	}
	if _, ok := byID[d.work]; !ok {
		d.work = ""
	}
	return d
}

// openAnyway notes the steps that the cures of what was found need.
func (p *planner) openAnyway(causes []cure, found map[string]bool, d *decision, byID map[string]rules.Remedy) {
	trial := &planner{session: p.session, first: p.first}
	copied := *d
	for _, c := range causes {
		if c.found {
			trial.cure(c, found, &copied, byID)
		}
	}
	p.open = map[string]bool{}
	for _, r := range trial.remedies {
		for _, id := range r.Steps.All() {
			p.open[id] = true
		}
	}
}

// opensNoMore tells whether some work only sets right what lies bare in the plan
// and is set at closing anyway: beyond the steps there it looks and adjusts, and
// buys nothing. After a gearbox or mounts were out the coupling is read and set
// whatever is thought of it.
func (p *planner) opensNoMore(r rules.Remedy) bool {
	closes := false
	for _, s := range p.session.Book.Steps().All() {
		switch {
		case !rules.Contains(r.Steps, s.ID):
		case p.open[s.ID]:
			closes = closes || s.Phase == "close"
		case s.Phase != "open" && s.Phase != "work" || s.Parts.Len() > 0:
			return false
		}
	}
	return closes && r.Kind == "adjust"
}

// cure plans what cures a cause: the way that was decided where the decision
// is about it, or else its first cure. A suspicion is planned only where it is more
// likely than not, and told to be one; beside what was found only where it links two
// that were found; what only sets right what lies bare anyway is done.
func (p *planner) cure(c cure, found map[string]bool, d *decision, byID map[string]rules.Remedy) {
	about := slices.ContainsFunc(d.works, func(work string) bool { return work != "" && rules.Contains(c.Remedies, work) })
	switch {
	case about && d.way == "leave":
		d.used = true
		p.left = append(p.left, fmt.Sprintf("“%s” is left as it is, %s: choose its work to plan it all the same.", c.Title, d.because))
		return
	case about && d.work != "" && rules.Contains(c.Remedies, d.work):
		d.used = true
		p.plan(byID[d.work], c.Title+": "+d.because)
		return
	case c.Remedies.Len() == 0:
		return
	}
	first, ok := byID[p.first[c.ID]]
	if !ok {
		first = byID[c.Remedies.At(0)]
	}
	because := c.Title + ": its first cure"
	if about && d.way == "" {
		because += ", until it is decided (repair or replace)"
	}
	switch {
	case c.found:
	case !c.likely && len(found) == 0:
		p.guessed = append(p.guessed, fmt.Sprintf("“%s”, for “%s” (%s), is not planned: make its look first, and order or open nothing for it before.", first.Title, c.Title, c.known))
		return
	case p.opensNoMore(first):
		because = fmt.Sprintf("%s (%s): it lies open for the other work", c.Title, c.known)
	case len(found) > 0 && !p.planned(first) && !(c.likely && p.links(c.ID, found)):
		p.guessed = append(p.guessed, fmt.Sprintf("“%s” (%s) is not planned: look for it first.", c.Title, c.known))
		return
	default:
		because = fmt.Sprintf("%s (%s): its first cure", c.Title, c.known)
		if len(found) == 0 {
			p.guessed = append(p.guessed, fmt.Sprintf("“%s”, for “%s” (%s): make its look first, and order or open nothing for it before.", first.Title, c.Title, c.known))
		}
	}
	p.plan(first, because)
}

// links tells whether a cause may have been brought on by one that was found and
// have brought on another.
func (p *planner) links(id string, found map[string]bool) bool {
	by, to := map[string]bool{}, map[string]bool{}
	for _, c := range p.session.Book.Chains().All() {
		if c.Rate == "" {
			continue
		}
		if c.To == id && found[c.From] {
			by[c.From] = true
		}
		if c.From == id && found[c.To] {
			to[c.To] = true
		}
	}
	for from := range by {
		for other := range to {
			if from != other {
				return true
			}
		}
	}
	return false
}

// planned tells whether a piece of work is in the plan already.
func (p *planner) planned(r rules.Remedy) bool {
	return slices.ContainsFunc(p.remedies, func(has rules.Remedy) bool { return has.ID == r.ID })
}
