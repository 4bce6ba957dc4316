// Package export writes sheets and surveys for other programs and for paper:
// a job sheet (HTML), a calendar (iCalendar), a table (CSV).
package export

import (
	"fmt"
	"strings"

	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/internal/survey"
	"example.org/driveline/marinecalc/sheet"
)

// JobSheet writes a survey as one HTML file to print and take aboard, on A4
// or Letter. It is complete in itself and loads nothing.
func JobSheet(s *survey.Survey) string {
	p := paper{}
	p.b.WriteString(`<!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width">` +
		`<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">`)
	p.tag("title", "", "Job sheet: "+s.Boat)
	p.b.WriteString("<style>" + paperStyle + "</style></head><body><main>")
	p.tag("h1", "", "Job sheet: "+s.Boat)
	p.cautions(s.Cautions)
	p.findings(s)
	p.unused(s)
	p.lacking(s)
	for _, one := range s.Sheets {
		p.sheet(one)
	}
	p.tag("p", "small", "The makers' figures, local codes and licensed practice go before this sheet.")
	p.b.WriteString("</main></body></html>\n")
	return p.b.String()
}

// paperStyle prints on either paper: no fixed size, only margins.
const paperStyle = `
body{font:11pt/1.4 system-ui,sans-serif;color:#000;background:#fff;margin:0}
main{max-width:46rem;margin:1rem auto;padding:0 1rem}
h1{font-size:1.5rem;border-bottom:3px solid #000}h2{font-size:1.15rem;margin:1.4em 0 .3em;border-bottom:1px solid #000}h3{font-size:1rem;margin:1em 0 .2em}
table{border-collapse:collapse;width:100%}td,th{border:1px solid #777;padding:.2em .5em;text-align:left;vertical-align:top}
.signal{border:2px solid #000;padding:.4em .7em;margin:.5em 0;break-inside:avoid}.signal b{display:block;letter-spacing:.06em}
.word{font-weight:700;text-transform:uppercase}.small{font-size:.85em}.box{display:inline-block;width:.9em;height:.9em;border:1.5px solid #000;margin-right:.5em}
svg{max-width:22rem;height:auto}svg .ink{stroke:#000;fill:none}svg text.ink,svg text{stroke:none;fill:#000;font:11px sans-serif}svg .faint{stroke:#888;fill:none}svg text.faint{stroke:none;fill:#444}svg .accent{stroke:#000;stroke-width:2.5;fill:none}svg .warn{stroke:#000;stroke-dasharray:6 4;fill:none}svg .body{fill:#e6e6e6;stroke:#000}svg .band{fill:#bbb;stroke:#555}
@page{margin:15mm}@media print{main{margin:0;padding:0;max-width:none}section{break-inside:avoid-page}}`

// paper is an HTML text under way; every text that goes in is escaped.
type paper struct{ b strings.Builder }

func (p *paper) tag(name, class, text string) {
	p.b.WriteString("<" + name)
	if class != "" {
		p.b.WriteString(` class="` + class + `"`)
	}
	p.b.WriteString(">" + picture.Escape(text) + "</" + name + ">")
}

func (p *paper) cautions(list []sheet.Caution) {
	for _, c := range list {
		p.b.WriteString(`<div class="signal">`)
		p.tag("b", "", string(c.Signal))
		p.b.WriteString(picture.Escape(c.Text) + "</div>")
	}
}

// findings lists what is to be acted on, each with a box to tick, and how
// one thing leads to another. Figures that no sheet can be worked out with
// come first.
func (p *paper) findings(s *survey.Survey) {
	if titles, conflicts := s.Conflicts(); len(conflicts) > 0 {
		p.tag("h2", "", "Figures that do not agree")
		for i, c := range conflicts {
			p.b.WriteString(`<p><span class="box"></span>` + picture.Escape(titles[i]+". "+c.Text) + "</p>")
		}
	}
	if len(s.Faults) > 0 {
		p.tag("h2", "", "Figures to put right")
	}
	for _, f := range s.Faults {
		for _, one := range f.Problems {
			p.b.WriteString(`<p><span class="box"></span>` + picture.Escape(f.Title+": "+one.String()) + "</p>")
		}
	}
	p.tag("h2", "", "What was found, most urgent first")
	if s.Nothing != "" {
		p.tag("p", "", s.Nothing)
	}
	for _, f := range s.Findings {
		p.b.WriteString(`<p><span class="box"></span>`)
		p.tag("span", "word", f.Verdict.Reads)
		p.b.WriteString(" " + picture.Escape(f.Sheet+". "+f.Verdict.Sentence+" "+f.Verdict.Settle))
		p.tag("span", "small", " ["+f.Verdict.Backing()+"]")
		p.b.WriteString("</p>")
	}
	if len(s.Chains) > 0 {
		p.tag("h2", "", "How one thing leads to another")
		for _, c := range s.Chains {
			p.tag("p", "", c)
		}
	}
}

// lacking lists readings still to take.
func (p *paper) lacking(s *survey.Survey) {
	if len(s.Open) == 0 && len(s.Missing) == 0 && len(s.Awaited) == 0 {
		return
	}
	p.tag("h2", "", "Not judged yet")
	for _, a := range s.Awaited {
		p.b.WriteString(`<p><span class="box"></span>` + picture.Escape(fmt.Sprintf("%s, from the maker or measured: verdicts that wait for it: %d", a.Title, a.Verdicts)) + "</p>")
	}
	for _, f := range s.Open {
		p.b.WriteString(`<p><span class="box"></span>` + picture.Escape(f.Sheet+". "+f.Verdict.Sentence) + "</p>")
	}
	for _, m := range s.Missing {
		for _, n := range m.Needs {
			gauge := ""
			if n.Gauge != "" {
				gauge = " Gauge: " + n.Gauge + "."
			}
			p.b.WriteString(`<p><span class="box"></span>` + picture.Escape(m.Title+" needs "+strings.ToLower(n.Title)+". "+n.How+gauge) + "</p>")
		}
	}
}

// unused lists what stands in the boat file and is not used.
func (p *paper) unused(s *survey.Survey) {
	if len(s.Warnings) == 0 {
		return
	}
	p.tag("h2", "", "To check in the boat file")
	for _, w := range s.Warnings {
		p.tag("p", "", w.String())
	}
}

// sheet writes one calculation: results, drawings, what to do next.
func (p *paper) sheet(s *sheet.Sheet) {
	p.b.WriteString("<section>")
	p.tag("h2", "", s.Title)
	p.b.WriteString("<table><tbody>")
	for _, r := range s.Results {
		if r.Level == "detail" {
			continue
		}
		value := r.Text
		if r.Interval != "" {
			value += " (95 %: " + r.Interval + ")"
		}
		if r.Maker != nil {
			value += "; the maker says " + r.Maker.Text + ", " + r.Maker.Source
		}
		p.b.WriteString("<tr>")
		p.tag("th", "", r.Title)
		p.tag("td", "", value)
		p.b.WriteString("</tr>")
	}
	p.b.WriteString("</tbody></table>")
	for _, t := range s.Tables {
		switch {
		case s.Calculation == "work-plan" && t.Name == "schedule":
			p.steps(t)
		case t.Level != "detail":
			p.table(t)
		}
	}
	for _, d := range s.Drawings {
		p.b.WriteString(d.SVG) // made by us, its texts escaped
	}
	for _, n := range s.Next {
		p.b.WriteString(`<p><span class="box"></span>` + picture.Escape(n.Text) + "</p>")
	}
	p.b.WriteString("</section>")
}

// steps writes the steps of a work plan to be ticked off, day by day, each with
// its phase, what can hurt and how it is done.
func (p *paper) steps(t sheet.Table) {
	p.tag("h3", "", t.Title)
	last := ""
	for _, r := range t.Rows {
		at := t.Reader(r)
		day, waits := at("start"), at("waits")
		switch {
		case waits != "" && day != "":
			day, waits = "Afterwards", "by "+day+": "+waits
		case waits != "":
			day = "Without a date"
		case at("end") != day:
			day += " to " + at("end")
		}
		if day != last {
			p.tag("h4", "", day)
			last = day
		}
		p.b.WriteString(`<p><span class="box"></span><b>` + picture.Escape(at("step")) + "</b> ")
		p.tag("span", "small", strings.TrimSuffix(strings.Join([]string{at("phase"), at("hours"), at("place"), waits}, ", "), ", "))
		p.b.WriteString("<br>" + picture.Escape(strings.TrimSpace(at("once")+" "+at("how"))) + "<br>")
		p.tag("span", "small", at("hazards"))
		p.b.WriteString("</p>")
	}
}

func (p *paper) table(t sheet.Table) {
	p.tag("h3", "", t.Title)
	p.b.WriteString("<table><thead><tr>")
	for _, c := range t.Columns {
		if c.Level != "detail" {
			p.tag("th", "", c.Title)
		}
	}
	p.b.WriteString("</tr></thead><tbody>")
	for _, r := range t.Rows {
		p.b.WriteString("<tr>")
		for i, c := range r.Cells {
			if t.Columns[i].Level != "detail" {
				p.tag("td", "", c.Text)
			}
		}
		p.b.WriteString("</tr>")
	}
	p.b.WriteString("</tbody></table>")
}
