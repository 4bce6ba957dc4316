package marinecalc_test

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/binding"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sample"
	"github.com/expr-lang/expr"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// What is shown is what is computed: every formula that a sheet prints is
// evaluated by an independent expression library on the numbers of the same
// sheet, and must give the result of the same sheet to 1e-9; a difference of
// equal terms leaves their rounding.
func TestFormulasGiveTheirResults(t *testing.T) {
	alone(t)
	for _, k := range openAll(t) {
		t.Run(k.ID, func(t *testing.T) {
			checked := map[string]bool{}
			for _, input := range exampleInputs(t, k) {
				s, err := marinecalc.Run(k.ID, []byte(input), marinecalc.Options{NoRanges: true})
				if err != nil {
					continue // random inputs may be impossible; the count below sees to it that enough are not
				}
				env := formulaEnvironment(k, s)
				for _, p := range k.Result.Properties {
					r := s.Result(p.Name)
					if r == nil || p.Formula == "" {
						continue
					}
					got := evaluateFormula(t, p, env)
					if math.Abs(got-*r.SI) > 1e-9*math.Max(math.Abs(*r.SI), 1e-9) {
						t.Errorf("%s: %s gives %.15g, the sheet %.15g", p.Name, p.Formula, got, *r.SI)
					}
					checked[p.Name] = true
				}
				if t.Failed() {
					return
				}
			}
			for _, p := range k.Result.Properties {
				if p.Formula != "" && !checked[p.Name] {
					t.Errorf("the formula of %s was never reached; add a published row or an example that reaches it", p.Name)
				}
			}
		})
	}
}

// A symbol stands for one thing in a calculation: a formula could not tell which.
func TestASymbolStandsForOneThing(t *testing.T) {
	for _, k := range openAll(t) {
		by := map[string]string{}
		for _, side := range [][]*contract.Property{k.Input.Properties, k.Result.Properties} {
			for _, p := range side {
				if other := by[p.Symbol]; p.Symbol != "" && other != "" {
					t.Errorf("%s: %s stands for %s and %s", k.ID, p.Symbol, other, p.Name)
				}
				by[p.Symbol] = p.Name
			}
		}
	}
}

// exampleInputs are the published rows of a calculation, and random inputs, in
// JSON.
func exampleInputs(t *testing.T, k *binding.Form) []string {
	t.Helper()
	var inputs []string
	for _, topic := range readPublished(t) {
		for _, row := range topic {
			if row.Calculation == k.ID && row.Check == "" {
				inputs = append(inputs, testboat.Text(t, row.Input))
			}
		}
	}
	random, err := sample.New(k.ID, 7)
	if err != nil {
		t.Fatal(err)
	}
	for range 600 {
		inputs = append(inputs, testboat.Text(t, random.Next()))
	}
	return inputs
}

// formulaEnvironment gives each symbol its number or word; what the sheet
// lacks is 0, as in the typed input.
func formulaEnvironment(k *binding.Form, s *marinecalc.Sheet) map[string]any {
	env := map[string]any{
		"pi": math.Pi, "g": 9.80665,
		"sqrt": math.Sqrt, "sin": math.Sin, "cos": math.Cos, "tan": math.Tan,
		"asin": math.Asin, "acos": math.Acos, "atan": math.Atan, "atan2": math.Atan2,
		"exp": math.Exp, "ln": math.Log, "log10": math.Log10,
	}
	for _, side := range [][]*contract.Property{k.Input.Properties, k.Result.Properties} {
		for _, p := range side {
			if p.Symbol == "" {
				continue
			}
			name := asciiSymbol(p.Symbol)
			env[name] = 0.0
			if len(p.Enum) > 0 || p.Kind == nil && len(p.Types) == 1 && p.Types[0] == "string" {
				env[name] = ""
			}
			if i := s.Input(p.Name); i != nil {
				if i.SI != nil {
					env[name] = *i.SI
				} else {
					env[name] = i.Word
				}
			}
			if r := s.Result(p.Name); r != nil && r.SI != nil {
				env[name] = *r.SI
			}
		}
	}
	return env
}

var identifier = regexp.MustCompile(`\p{L}[\p{L}0-9_′]*`)

// asciiSymbol writes a symbol with the letters that the expression library
// takes in a name.
func asciiSymbol(symbol string) string {
	var b strings.Builder
	for _, r := range symbol {
		if r < 128 {
			b.WriteRune(r)
		} else {
			b.WriteString("u" + strconv.Itoa(int(r)))
		}
	}
	name := b.String()
	switch name {
	case "e", "in", "not", "let":
		return "sym_" + name
	}
	return name
}

var (
	constant    = regexp.MustCompile(`\{[^}]*\}`)
	conditional = regexp.MustCompile(`^(.*?) if (.*?) else (.*)$`)
	reserved    = map[string]bool{"and": true, "or": true, "sqrt": true, "pi": true}
)

// translate writes a printed formula's right side as the library reads it.
func translate(formula string) string {
	_, right, _ := strings.Cut(formula, "=")
	right = constant.ReplaceAllStringFunc(right, func(c string) string {
		for _, first := range []string{"temperature", "time", ""} { // 1 h is an hour, not one o'clock
			for _, k := range quantity.Kinds() {
				if r, err := k.Parse(c[1 : len(c)-1]); err == nil && strings.Contains(k.Name, first) {
					return "(" + strconv.FormatFloat(r.SI, 'f', -1, 64) + ")"
				}
			}
		}
		return c // no quantity: not to be evaluated
	})
	right = strings.NewReplacer("√", "sqrt", "π", "pi", "·", "*", "−", "-", "²", "^2", "³", "^3", "≥", ">=", "≤", "<=").Replace(right)
	// Words in quotes stay as they are.
	parts := strings.Split(right, `"`)
	for i := 0; i < len(parts); i += 2 {
		parts[i] = identifier.ReplaceAllStringFunc(parts[i], func(w string) string {
			if reserved[w] || w == "if" || w == "else" {
				return w
			}
			return asciiSymbol(w)
		})
	}
	return ternary(strings.TrimSpace(strings.Join(parts, `"`)))
}

// ternary turns "a if c else b" into "(c) ? (a) : (b)", from the left.
func ternary(s string) string {
	m := conditional.FindStringSubmatch(s)
	if m == nil {
		return s
	}
	return "(" + m[2] + ") ? (" + m[1] + ") : (" + ternary(m[3]) + ")"
}

func evaluateFormula(t *testing.T, p *contract.Property, env map[string]any) float64 {
	t.Helper()
	text := translate(p.Formula)
	out, err := expr.Eval(text, env)
	if err != nil {
		t.Fatalf("%s: %s (as %s): %v", p.Name, p.Formula, text, err)
	}
	switch v := out.(type) {
	case float64:
		return v
	case int:
		return float64(v)
	}
	t.Fatalf("%s: %s gives %v", p.Name, p.Formula, out)
	return 0
}

func openAll(t *testing.T) []*binding.Form {
	t.Helper()
	var all []*binding.Form
	for _, c := range catalogue.Calculations {
		k, err := c.Form()
		if err != nil {
			t.Fatalf("%s: %v", c.ID, err)
		}
		all = append(all, k)
	}
	return all
}
