// Texts that say a thing in one system or the other.

package quantity

import "strings"

// Either gives a text that names figures in both systems as {metric|US} in the
// words of one: "a straight edge reads to {0.05 mm|2 thou}" is read "a straight
// edge reads to 2 thou" in US, and "… 0.05 mm (2 thou)" in Both. A text without
// braces comes back as it is.
func Either(text string, s System) string {
	if strings.IndexByte(text, '{') < 0 {
		return text
	}
	var out strings.Builder
	for {
		before, rest, open := strings.Cut(text, "{")
		out.WriteString(before)
		if !open {
			return out.String()
		}
		both, after, closed := strings.Cut(rest, "}")
		metric, us, two := strings.Cut(both, "|")
		switch {
		case !closed || !two: // no pair: as it stands
			out.WriteString("{" + both)
			if closed {
				out.WriteByte('}')
			}
		case s == US:
			out.WriteString(us)
		case s == Both:
			out.WriteString(metric + " (" + us + ")")
		default:
			out.WriteString(metric)
		}
		text = after
	}
}
