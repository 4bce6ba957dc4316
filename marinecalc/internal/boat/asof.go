package boat

import "maps"

// AsOf is the boat as it was known up to and including a day: later readings,
// events, sea trials and care are not there yet.
func (b *Boat) AsOf(day string) *Boat {
	if b == nil {
		return nil
	}
	document := maps.Clone(b.document)
	for _, name := range []string{"readings", "events"} {
		if _, has := document[name]; !has {
			continue
		}
		known := []any{}
		for _, m := range Objects(document[name]) {
			if d, _ := m["date"].(string); d <= day {
				known = append(known, m)
			}
		}
		document[name] = known
	}
	if trial, _ := document["seaTrial"].(map[string]any); trial != nil {
		if d, _ := trial["date"].(string); d > day {
			delete(document, "seaTrial")
		}
	}
	if service, _ := document["service"].(map[string]any); service != nil {
		done := []any{}
		for _, m := range Objects(service["done"]) {
			if d, _ := m["date"].(string); d <= day {
				done = append(done, m)
			}
		}
		service = maps.Clone(service)
		service["done"] = done
		document["service"] = service
	}
	then := &Boat{document: document, figures: b.figures, warnings: b.warnings}
	for _, e := range b.events {
		if e.Date <= day {
			then.events = append(then.events, e)
		}
	}
	then.sortReadings()
	return then
}
