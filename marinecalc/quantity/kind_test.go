package quantity

import (
	"go/ast"
	"go/parser"
	"go/token"
	"strings"
	"testing"
	"unicode"
)

// Every unit type has its kind and every kind its unit type.
func TestEveryTypeHasItsKind(t *testing.T) {
	file, err := parser.ParseFile(token.NewFileSet(), "types.go", nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	types := map[string]bool{}
	ast.Inspect(file, func(n ast.Node) bool {
		if spec, ok := n.(*ast.TypeSpec); ok {
			types[kebab(spec.Name.Name)] = true
		}
		return true
	})
	if len(types) < 30 {
		t.Fatalf("found only %d types", len(types))
	}
	for name := range types {
		if _, ok := Lookup(name); !ok {
			t.Errorf("no kind for the type %q", name)
		}
	}
	for _, k := range Kinds() {
		if !types[k.Name] {
			t.Errorf("no type for the kind %q", k.Name)
		}
	}
}

func kebab(name string) string {
	var b strings.Builder
	for i, r := range name {
		if unicode.IsUpper(r) && i > 0 {
			b.WriteByte('-')
		}
		b.WriteRune(unicode.ToLower(r))
	}
	return b.String()
}

func TestUnitsBeginWithSIAndHoldTheUsual(t *testing.T) {
	for _, k := range Kinds() {
		if k.Name == "money" {
			continue
		}
		first, ok := k.Convert(1, k.Units()[0])
		if !ok || first != 1 {
			t.Errorf("%s: the first unit %q is not the SI unit", k.Name, k.Units()[0])
		}
		for s := Metric; s <= Both; s++ {
			if u, ok := k.find(k.Usual(s)); !ok || u.name != k.Usual(s) {
				t.Errorf("%s: usual unit %q is not one of its units", k.Name, k.Usual(s))
			}
		}
	}
}

// No spelling, in normal form, may stand for two units of one kind.
func TestSpellingsAreUnique(t *testing.T) {
	for _, k := range Kinds() {
		owner := map[string]string{}
		for i := range k.units {
			u := &k.units[i]
			for _, s := range strings.Split(u.name+","+u.also, ",") {
				key := s
				if n, ok := normalForm(nil, s); ok {
					key = strings.ReplaceAll(string(n), "·", "")
				}
				if old, taken := owner[key]; taken && old != u.name && s != "" {
					t.Errorf("%s: %q stands for %q and %q", k.Name, s, old, u.name)
				}
				owner[key] = u.name
				if got, ok := k.find(s); s != "" && (!ok || got != u) {
					t.Errorf("%s: %q does not find %q", k.Name, s, u.name)
				}
			}
		}
	}
}

func TestConvert(t *testing.T) {
	l := kind(t, "length")
	if x, ok := l.Convert(0.0254, "in"); !ok || x != 1 {
		t.Errorf("0.0254 m = %v in, %v", x, ok)
	}
	if _, ok := l.Convert(1, "kg"); ok {
		t.Error("a length converts to kg")
	}
	if x, ok := kind(t, "money").Convert(12.5, "EUR"); !ok || x != 12.5 {
		t.Errorf("12.5 EUR = %v, %v", x, ok)
	}
	if _, ok := kind(t, "money").Convert(12.5, "euro"); ok {
		t.Error("euro is no currency code")
	}
}

func TestParseSystem(t *testing.T) {
	for text, want := range map[string]System{"metric": Metric, "US": US, " both ": Both} {
		if s, err := ParseSystem(text); err != nil || s != want {
			t.Errorf("%q: %v, %v", text, s, err)
		}
	}
	_, err := ParseSystem("imperial")
	refused(t, "imperial", err, "imperial", "metric, us, both")
}

// Whatever a caller does with a kind that it was given, the library's own stays.
func TestKindsAreTheCallersOwn(t *testing.T) {
	for _, k := range append(Kinds(), kind(t, "length")) {
		k.Name = "money"
		*k = Kind{}
	}
	_, inferred, _ := Infer("5 mm")
	*inferred = Kind{}
	_, plain, _ := Infer("no quantity")
	*plain = Kind{}
	for i, k := range Kinds() {
		if k.Name == "money" != (i == len(kinds)-1) || k.Name != kinds[i].Name || k.Name != "money" && len(k.Units()) == 0 {
			t.Errorf("%d: %+v", i, k)
		}
	}
	r, k, err := Infer("5 mm")
	if err != nil || r.SI != 0.005 || !k.Is(kind(t, "length")) || k == kind(t, "length") || k.Is(nil) || !(*Kind)(nil).Is(nil) {
		t.Errorf("%v %v %v", r, k, err)
	}
}
