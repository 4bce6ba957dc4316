package quantity

import (
	"go/ast"
	"go/parser"
	"go/token"
	"slices"
	"strconv"
	"testing"
)

// Every kind has its name among the constants, and no other stands there.
func TestEveryKindHasItsName(t *testing.T) {
	f, err := parser.ParseFile(token.NewFileSet(), "kind.go", nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	var names, kinds []string
	for _, d := range f.Decls {
		if g, ok := d.(*ast.GenDecl); ok && g.Tok == token.CONST {
			for _, s := range g.Specs {
				if v := s.(*ast.ValueSpec); len(v.Values) == 1 {
					if l, ok := v.Values[0].(*ast.BasicLit); ok && l.Kind == token.STRING {
						name, _ := strconv.Unquote(l.Value)
						names = append(names, name)
					}
				}
			}
		}
	}
	for _, k := range Kinds() {
		kinds = append(kinds, k.Name)
	}
	if !slices.Equal(names, kinds) {
		t.Errorf("named are %v, there are %v", names, kinds)
	}
}
