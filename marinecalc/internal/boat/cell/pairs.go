package cell

import (
	"encoding/json"
	"fmt"
	"strings"

	"example.org/driveline/marinecalc/internal/contract"
)

// Pairs tells whether a reading is a list of short entries, each a name with
// its value, such as the height of each mount: that fits a cell.
func Pairs(p *contract.Property) bool {
	if p.Items == nil || len(p.Items.Properties) < 2 || len(p.Items.Properties) > 3 || len(p.Items.Required) != 2 {
		return false
	}
	for _, part := range p.Items.Properties {
		if part.Items != nil || part.Properties != nil {
			return false
		}
	}
	return true
}

// pairsCell writes such a list as "12 o'clock: 0.40 mm; 3 o'clock: 0.35 mm", a
// third member behind it as "(turn 90°)". Where a text holds what parts them,
// the whole is written as JSON.
func pairsCell(p *contract.Property, list []any) string {
	var cells []string
	for _, entry := range list {
		m, _ := entry.(map[string]any)
		texts := make([]string, len(p.Items.Properties))
		for i, part := range p.Items.Properties {
			texts[i] = Text(part, m[part.Name])
			if strings.ContainsAny(texts[i], ";(){}[]") || strings.HasPrefix(texts[i], "'") || strings.Contains(texts[i], ": ") || texts[i] != strings.TrimSpace(texts[i]) {
				text, _ := json.Marshal(list) // it was decoded from JSON
				return string(text)
			}
		}
		cell := texts[0] + ": " + texts[1]
		if len(texts) > 2 && texts[2] != "" {
			cell += " (" + p.Items.Properties[2].Name + " " + texts[2] + ")"
		}
		cells = append(cells, cell)
	}
	return strings.Join(cells, "; ")
}

// pairsOf reads such a cell. What cannot be read comes back as the text, which
// the boat's schema refuses; blame says how it is written.
func pairsOf(p *contract.Property, cell string) any {
	if strings.HasPrefix(cell, "[") {
		if list, problems := contract.Decode([]byte(cell)); len(problems) == 0 {
			return list
		}
		return cell
	}
	var list []any
	for _, one := range strings.Split(cell, ";") {
		if one = strings.TrimSpace(one); one == "" {
			continue
		}
		key, value, parted := strings.Cut(one, ": ")
		if !parted {
			return cell
		}
		entry := map[string]any{p.Items.Properties[0].Name: strings.TrimSpace(key)}
		if len(p.Items.Properties) > 2 {
			third := p.Items.Properties[2].Name
			if before, behind, has := strings.Cut(value, "("+third+" "); has && strings.HasSuffix(behind, ")") {
				value, entry[third] = before, strings.TrimSuffix(behind, ")")
			}
		}
		entry[p.Items.Properties[1].Name] = strings.TrimSpace(value)
		list = append(list, entry)
	}
	return list
}

// AsPairs says how such a list is written in a cell.
func AsPairs(p *contract.Property) string {
	return fmt.Sprintf("each %s with its %s, such as “%s: …; %s: …”", p.Items.Properties[0].Name, p.Items.Properties[1].Name, exampleOf(p), exampleOf(p))
}

func exampleOf(p *contract.Property) string {
	if key := p.Items.Properties[0]; len(key.Examples) > 0 {
		return fmt.Sprint(key.Examples[0])
	}
	return "…"
}
