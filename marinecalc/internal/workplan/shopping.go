package workplan

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"sort"
	"strconv"
	"strings"

	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/workplan/schedule"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
)

// gatherParts adds up what the steps take, and lets each step wait for what
// must be ordered.
func (p *planner) gatherParts(list *problem.List) {
	rows := make(map[string]rules.Part)
	for _, row := range p.session.Book.Parts().All() {
		rows[row.ID] = row
	}
	known := map[string]PartInHand{}
	for i, h := range p.in.PartsInHand {
		if _, ok := rows[h.Part]; !ok {
			noSuch(list, fmt.Sprintf("/partsInHand/%d/part", i), "part", h.Part, slices.Sorted(maps.Keys(rows)))
		}
		known[h.Part] = h
	}
	at := map[string]int{}
	for i, s := range p.steps {
		p.tasks[i].Ready = p.today
		for _, need := range s.Parts.All() {
			if !p.wanted(rows[need.Part], known[need.Part]) || !p.hasSteps(need) {
				continue
			}
			n, has := at[need.Part]
			if !has {
				n = len(p.needs)
				at[need.Part] = n
				row, hand := rows[need.Part], known[need.Part]
				one := partNeed{part: row, lead: int(math.Ceil(row.LeadDays)), hand: hand}
				if hand.Part != "" && !math.IsNaN(float64(hand.LeadTime)) {
					one.lead = int(math.Ceil(float64(hand.LeadTime)/86400 - 1e-9))
				}
				p.needs = append(p.needs, one)
			}
			one := &p.needs[n]
			one.steps = append(one.steps, i)
			p.add(one, need.Quantity)
			if !one.hand.OnBoard {
				p.tasks[i].Ready = max(p.tasks[i].Ready, p.today+one.lead)
			}
		}
	}
}

// hasSteps tells whether the plan has the steps with which a part is taken.
func (p *planner) hasSteps(need rules.PartNeed) bool {
	has := func(list rules.List[string]) bool {
		return slices.ContainsFunc(p.steps, func(s rules.Step) bool { return rules.Contains(list, s.ID) })
	}
	return (need.With.Len() == 0 || has(need.With)) && !has(need.Without)
}

// wanted tells whether this boat takes a part at all.
func (p *planner) wanted(part rules.Part, hand PartInHand) bool {
	return (!part.Asked || hand.MakerAsks || hand.OnBoard) && p.session.Takes(part)
}

// add adds what one step takes of a part.
func (p *planner) add(need *partNeed, amount rules.Count) {
	if amount.Of == "" {
		need.amount += amount.Number
		return
	}
	if n, listed := p.entries(amount.Of); listed && n > 0 {
		need.amount += float64(n) * amount.Times
		return
	}
	kind, si, _, ok := p.figure(amount.Of)
	if !ok || math.IsNaN(si) {
		id, _, _ := strings.Cut(amount.Of, "/")
		title := id
		if c, err := p.session.Find(id); err == nil {
			if k, err := c.Form(); err == nil {
				title = k.Title
			}
		}
		if !slices.Contains(need.unknown, title) {
			need.unknown = append(need.unknown, title)
		}
		return
	}
	k, has := quantity.Lookup(kind)
	if !has {
		need.amount += si * amount.Times
		return
	}
	need.kind, need.units = k, p.session.Property(amount.Of).Units
	need.si += si * amount.Times
}

// entries counts a list of the boat file.
func (p *planner) entries(of string) (n int, listed bool) {
	prop := p.session.Property(of)
	if prop == nil || prop.Items == nil {
		return 0, false
	}
	if p.session.Boat != nil {
		raw, _, _, _ := p.session.Boat.Find(prop.Boat)
		list, _ := raw.([]any)
		n = len(list)
	}
	return n, true
}

// figure finds a result or an input of the boat's own sheets, by
// "calculation/name"; an input is also taken from the boat file where the
// sheet as a whole cannot be worked out. si is NaN for words.
func (p *planner) figure(of string) (kind string, si float64, text string, ok bool) {
	id, name, _ := strings.Cut(of, "/")
	out := p.session.Earlier(id)
	if out == nil {
		return p.inBoat(p.session.Property(of))
	}
	number := func(v *float64) float64 {
		if v == nil {
			return math.NaN()
		}
		return *v
	}
	if r := out.Sheet.Result(name); r != nil {
		text, si, _ := r.Stands()
		return string(r.Kind), number(si), text, true
	}
	if i := out.Sheet.Input(name); i != nil {
		return string(i.Kind), number(i.SI), i.Text, true
	}
	return "", 0, "", false
}

// inBoat finds an input in the boat file.
func (p *planner) inBoat(prop *contract.Property) (kind string, si float64, text string, ok bool) {
	if prop == nil || prop.IsResult {
		return "", 0, "", false
	}
	raw, _, _, ok := p.session.Boat.Find(prop.Boat)
	if !ok {
		return "", 0, "", false
	}
	if word, is := raw.(string); is && prop.Kind == nil {
		if t := p.session.Book.Table(prop.Rows); t != nil {
			if row := t.Find(word, nil); row != nil {
				word = row.Name
			}
		}
		return "", math.NaN(), word, true
	}
	if prop.Kind != nil {
		kind = prop.Kind.Name
	}
	si, _, err := inputs.Numeric(prop, raw)
	return kind, si, inputs.Show(prop, si, p.session.Units), err == nil
}

// shop writes the shopping list, the first order first. What the open interval
// takes is needed on the day she is opened.
func (p *planner) shop(made *schedule.Plan, out *Result) {
	type line struct {
		ShoppingLine
		by int
	}
	const never = math.MaxInt32
	var lines []line
	var waits []string
	for _, need := range p.needs {
		l := line{ShoppingLine: ShoppingLine{Part: need.part.Title, Amount: p.amount(&need), Size: p.sizes(need.part), LeadTime: quantity.Time(need.lead) * 86400,
			Price: need.price(), ReturnBy: p.returnBy(made, &need), Remark: need.part.Note}, by: never}
		var titles []string
		for _, i := range need.steps {
			titles = append(titles, p.steps[i].Title)
		}
		l.ForSteps = strings.Join(titles, "; ")
		first, dated := p.neededOn(made, &need)
		switch {
		case need.hand.OnBoard:
			l.OrderBy = onBoard
		case !dated:
			l.OrderBy = undated
		default:
			l.by = max(first-need.lead, p.today)
			l.OrderBy = day.Text(l.by)
		}
		if dated {
			l.NeededOn = day.Text(first)
			if !need.hand.OnBoard && first <= p.today+need.lead && need.lead > 0 {
				waits = append(waits, need.part.Title+" ("+inDays(need.lead)+")")
			}
		}
		lines = append(lines, l)
	}
	sort.SliceStable(lines, func(i, j int) bool {
		a, b := &lines[i], &lines[j]
		return a.by < b.by || a.by == b.by && a.LeadTime > b.LeadTime
	})
	if len(lines) > len(out.Shopping) {
		p.cut = append(p.cut, "things to buy")
	}
	for n, l := range lines[:min(len(lines), len(out.Shopping))] {
		out.Shopping[n] = l.ShoppingLine
	}
	if len(lines) > 0 && lines[0].by != never {
		out.FirstOrder = lines[0].Part + ", by " + lines[0].OrderBy
	}
	out.WaitsForPart = strings.Join(waits, "; ")
}

// neededOn is the day on which a part must be on board.
func (p *planner) neededOn(made *schedule.Plan, need *partNeed) (first int, dated bool) {
	for _, i := range need.steps {
		t := made.Tasks[i]
		if t.Why != schedule.Dated {
			continue
		}
		on := made.FirstDay(t.Start)
		if open := made.Open; open.Any && open.Start <= t.Start && t.Start < open.End {
			on = made.FirstDay(open.Start)
		}
		if !dated || on < first {
			first, dated = on, true
		}
	}
	return first, dated
}

// amount writes how much of a part is wanted.
func (p *planner) amount(need *partNeed) string {
	if len(need.unknown) > 0 {
		return "not known: “" + strings.Join(need.unknown, "”, “") + "” cannot be worked out yet"
	}
	if need.kind != nil {
		return p.measure(need)
	}
	number := strconv.FormatFloat(need.amount, 'g', 4, 64)
	if _, _, err := quantity.Infer("1 " + need.part.Unit); err == nil {
		return number + " " + need.part.Unit // a measure, not something counted
	}
	return number + " × " + need.part.Unit
}

// measure writes an amount in the unit in which the part is sold, to three
// figures.
func (p *planner) measure(need *partNeed) string {
	total := need.si
	if one, _, err := quantity.Infer("1 " + need.part.Unit); err == nil {
		total += need.amount * one.SI // other steps take so many of its unit
	}
	in := func(unit string) string {
		text := need.kind.Format(total, unit)
		number, name, _ := strings.Cut(text, " ")
		if v, err := strconv.ParseFloat(number, 64); err == nil && v > 0 {
			size := math.Pow(10, 2-math.Floor(math.Log10(v)))
			number = strconv.FormatFloat(math.Round(v*size)/size, 'f', -1, 64)
		}
		return number + " " + name
	}
	switch p.session.Units {
	case quantity.US:
		return in(need.units[1])
	case quantity.Both:
		return in(need.units[0]) + " (" + in(need.units[1]) + ")"
	}
	return in(need.units[0])
}

// sizes writes what the boat's sheets say about which one to buy.
func (p *planner) sizes(part rules.Part) string {
	var words []string
	for _, of := range part.Sizes.All() {
		if _, _, text, ok := p.figure(of); ok && text != "" {
			words = append(words, problem.MidSentence(p.session.Property(of).Title)+" "+text)
		}
	}
	return strings.Join(words, "; ")
}
