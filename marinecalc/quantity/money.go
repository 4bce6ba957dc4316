// Amounts of money.

package quantity

// moneyUnit serves every currency: amounts are never converted.
var moneyUnit = unit{mul: 1, div: 1, style: currency}

// isMoney tells whether the kind is amounts of money.
func (k *Kind) isMoney() bool { return k.Name == "money" }

// isCurrency tells whether s has the form of an ISO 4217 currency code, three
// capital letters. Whether a country issues it is not checked.
func isCurrency(s string) bool {
	if len(s) != 3 {
		return false
	}
	for i := range 3 {
		if s[i] < 'A' || s[i] > 'Z' {
			return false
		}
	}
	return true
}
