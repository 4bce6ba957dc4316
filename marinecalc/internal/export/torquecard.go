package export

import (
	"cmp"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/coupling"
	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/boat/agree"
	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/internal/setting"
	"example.org/driveline/marinecalc/internal/survey"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// TorqueCard is every joint of a boat that is set with a wrench, on one sheet.
type TorqueCard struct {
	Boat   string        `json:"boat"`
	Day    string        `json:"day,omitempty"` // of the boat's newest reading
	Joints []TorqueJoint `json:"joints"`
}

// TorqueJoint is one joint; one with torques for several threads stands once for each.
// Torque is empty where it is not known, and Wanted then says which figure is; or where
// the joint can give way from it, its sheets are not sure of it, or makers give several,
// and Unsettled then stands in its place.
type TorqueJoint struct {
	Joint       string `json:"joint"`
	Title       string `json:"title"`
	Thread      string `json:"thread,omitempty"`
	Lubrication string `json:"lubrication,omitempty"`
	Torque      string `json:"torque,omitempty"`
	Unsettled   string `json:"unsettled,omitempty"`
	Range       string `json:"range,omitempty"`  // what it gives, or between what it lies
	Source      string `json:"source,omitempty"` // the maker's document, or how it was found
	Maker       bool   `json:"maker"`            // it is the maker's figure
	Order       string `json:"order"`
	Again       string `json:"again"`
	Look        string `json:"look"`
	Wanted      string `json:"wanted,omitempty"`
}

// Stands is what is printed for the torque, "" where nothing is known of it.
func (j *TorqueJoint) Stands() string {
	if j == nil {
		return ""
	}
	return cmp.Or(j.Unsettled, j.Torque)
}

// Torques gathers the card from the sheets of a survey and from what the boat
// file has of its makers' torques, which go first.
func Torques(s *survey.Survey, b *boat.Boat, book *rules.Book) *TorqueCard {
	card := &TorqueCard{Boat: s.Boat, Day: s.Made.Day, Joints: []TorqueJoint{}}
	sheets := map[string]*sheet.Sheet{}
	for _, one := range s.Sheets {
		sheets[one.Calculation] = one
	}
	disagreements := agree.Of(b, book)
	for _, row := range book.Table("torque-joints").Rows.All() {
		absent := setting.Absent(book, b, row)
		if absent && len(b.TorquesOf(row.Pick)) == 0 {
			continue
		}
		text := func(column string) string { return row.Values.Of(column).Text }
		j := TorqueJoint{Joint: row.Pick, Title: row.Name, Order: text("order"), Again: text("again"), Look: text("look")}
		joint := setting.Joint{Row: row, Boat: b, Book: book, SheetOf: of(sheets), Absent: absent}
		lines := joint.Lines()
		j.ofSheets(sheets, lines[0].Own != "")
		for _, s := range lines {
			line := j
			line.takes(&s)
			line.marks(joint, &s, sheets)
			if s.Why == "" {
				line.disagree(disagreements)
			}
			if line.Stands() == "" {
				line.Wanted = text("wanted")
			} else {
				line.minds(strings.Fields(text("minds")), sheets, book)
			}
			card.Joints = append(card.Joints, line)
		}
	}
	return card
}

// minds says last what the joint's own sheets say of its metals, in a sentence each:
// stainless that galls, a finish that is not of such a bolt.
func (j *TorqueJoint) minds(list []string, sheets map[string]*sheet.Sheet, book *rules.Book) {
	for _, at := range list {
		calculation, id, _ := strings.Cut(at, "/")
		s := sheets[calculation]
		if s == nil {
			continue
		}
		said := ""
		for _, c := range book.Cautions(calculation).All() {
			if c.ID == id && slices.ContainsFunc(s.Cautions, func(one sheet.Caution) bool { return one.Text == c.Text }) {
				said = c.Text
			}
		}
		for _, a := range book.Advice(calculation).All() {
			if a.ID == id && slices.ContainsFunc(s.Next, func(one sheet.Next) bool { return one.Text == a.Text }) {
				said = a.Text
			}
		}
		if first, _, _ := strings.Cut(said, ". "); first != "" {
			j.Range = strings.Join(known(j.Range, "MIND: "+strings.TrimSuffix(first, ".")), ". ")
		}
	}
}

// ofSheets takes what a joint's own sheet has of it beside its torque, and where that has
// one what it gives.
func (j *TorqueJoint) ofSheets(sheets map[string]*sheet.Sheet, torque bool) {
	typed := func(s *sheet.Sheet, input string) string {
		if in := s.Input(input); in != nil {
			return in.Text
		}
		return ""
	}
	clamps := func(r *sheet.Result) {
		if torque && r != nil {
			j.Range = strings.TrimSuffix("clamps "+r.Text+" ("+r.Interval+")", " ()")
		}
	}
	switch j.Joint {
	case "coupling-bolts":
		s := sheets["bolt-preload"]
		j.Thread, j.Lubrication = typed(s, "thread"), typed(s, "finish")
		clamps(s.Result("achievedPreload"))
		if r := sheets["bolt-fit"].Result("tighteningOrder"); r != nil {
			j.Order = r.Text + ", three passes, once more round"
		}
	case "output-nut":
		s := sheets["output-flange"]
		j.Thread, j.Lubrication = typed(s, "thread"), typed(s, "finish")
		clamps(s.Result("fittedClamp"))
	case "propeller-nut":
		s := sheets["propeller-taper"]
		j.Thread = typed(s, "nutThread")
		j.ofCone(s, sheets["key-strength"])
		if order := typed(s, "nutOrder"); order != "" {
			j.Order = order + "; " + j.Order
		}
	case "pinch-bolts", "coupling-nut":
		s := sheets["coupling-bore"]
		j.Thread = typed(s, "pinchThread")
		clamps(s.Result("clampUsed"))
		if slot := s.Input("splitGap"); slot != nil && slot.SI != nil && *slot.SI < coupling.ThinnestSlot && torque {
			j.Range = "the slot is closed: these bolts clamp the flange on itself, and at no torque hold it on the shaft"
		}
	case "set-screws":
		j.Thread = typed(sheets["coupling-bore"], "setScrewSize")
	case "packing-nuts":
		j.Torque, j.Source = "none: by the drip", "the gland's own sheets"
	}
}

// TorquePage writes the card as one HTML file that prints on one page of A4 or
// Letter, with boxes to write in. It is complete in itself and loads nothing.
func TorquePage(card *TorqueCard) string {
	p := paper{}
	p.b.WriteString(`<!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width">` +
		`<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">`)
	p.tag("title", "", "Torque card: "+card.Boat)
	p.b.WriteString("<style>" + paperStyle + torqueStyle + "</style></head><body><main>")
	p.tag("h1", "", "Torque card: "+card.Boat)
	day := ""
	if card.Day != "" {
		day = " As known on " + card.Day + "."
	}
	p.tag("p", "small", "Engine stopped, key out, batteries off, cold. The maker's figure goes before any other; threads as named, nothing else on them."+day)
	p.b.WriteString("<table><thead><tr>")
	for _, head := range [...]string{"Joint", "Thread, on it", "Torque", "Order, then again", "Look at", "Set, day, by"} {
		p.tag("th", "", head)
	}
	p.b.WriteString("</tr></thead><tbody>")
	for _, j := range card.Joints {
		p.b.WriteString("<tr>")
		p.tag("th", "", j.Title)
		p.tag("td", "", strings.Join(known(j.Thread, j.Lubrication), "; "))
		p.b.WriteString("<td>")
		switch {
		case j.Stands() == "":
			p.b.WriteString("<b>not known</b><br>" + picture.Escape("wanted: "+j.Wanted))
		default:
			by := j.Source
			if j.Maker {
				by = "maker: " + by
			}
			p.b.WriteString("<b>" + picture.Escape(j.Stands()) + "</b><br>" + picture.Escape(strings.Join(known(j.Range, by), "; ")))
		}
		p.b.WriteString("</td>")
		p.tag("td", "", j.Order+"; again "+j.Again)
		p.tag("td", "", j.Look)
		p.tag("td", "blank", "")
		p.b.WriteString("</tr>")
	}
	p.b.WriteString("</tbody></table></main></body></html>\n")
	return p.b.String()
}

// known are the texts that are not empty.
func known(texts ...string) (list []string) {
	for _, t := range texts {
		if t != "" {
			list = append(list, t)
		}
	}
	return list
}

// torqueStyle makes the card fit on one page.
const torqueStyle = `h1{font-size:1.2rem;margin:.2em 0}table{font-size:9pt;line-height:1.25}td.blank{min-width:20mm}tr{break-inside:avoid}@page{margin:10mm}p.small{margin:.3em 0}`
