package contract

// FilledBy names the input that a column of a picked row fills.
func (p *Property) FilledBy(column string) (input string, ok bool) {
	if p.Fills == nil {
		return column, true
	}
	input, ok = p.Fills[column]
	return input, ok
}

// ColumnFor names the column of a picked row that fills an input.
func (p *Property) ColumnFor(input string) (column string, ok bool) {
	if p.Fills == nil {
		return input, true
	}
	for column, filled := range p.Fills {
		if filled == input {
			return column, true
		}
	}
	return "", false
}

// Here is the name that an input asked by a picked row's condition has in this
// form: the one that Fills has for it, or its own.
func (p *Property) Here(name string) string {
	if to, ok := p.Fills[name]; ok {
		return to
	}
	return name
}
