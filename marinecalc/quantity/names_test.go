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
	f, err := parser.ParseFile(token.NewFileSet(), "names.go", nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	var names, kinds []string
	ast.Inspect(f, func(n ast.Node) bool {
		if l, ok := n.(*ast.BasicLit); ok {
			name, _ := strconv.Unquote(l.Value)
			names = append(names, name)
		}
		return true
	})
	for _, k := range Kinds() {
		kinds = append(kinds, k.Name)
	}
	if !slices.Equal(names, kinds) {
		t.Errorf("named are %v, there are %v", names, kinds)
	}
}
