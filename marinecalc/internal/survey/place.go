// Where something can be measured.

package survey

import "path"

// elsewhere is the place where something can be measured, "" where she lies
// there or anywhere will do.
func (g *gatherer) elsewhere(m *group) string {
	lies := "afloat"
	if at, _, _, ok := g.session.Boat.Find("/lies"); ok {
		if word, ok := at.(string); ok {
			lies = word
		}
	}
	for _, row := range g.session.Book.Table("reading-places").Rows.All() {
		if row.Pick != m.of && row.Pick != path.Base(m.Input) {
			continue
		}
		if place := row.Values.Of("place").Text; place != lies {
			return place
		}
	}
	return ""
}
