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
