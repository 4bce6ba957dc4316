package marinecalc_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// Whoever reads the face alone sees what a type has: the doc of each that is defined
// in an inner package names all its exported members.
func TestTypesOfInnerPackagesNameTheirMembers(t *testing.T) {
	files, _ := filepath.Glob("*.go")
	seen := 0
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		f, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ParseComments)
		if err != nil {
			t.Fatal(err)
		}
		inner := map[string]string{} // package by name: its folder
		for _, i := range f.Imports {
			to, _ := strconv.Unquote(i.Path.Value)
			if dir, is := strings.CutPrefix(to, module+"marinecalc/"); is && strings.HasPrefix(dir, "internal/") {
				inner[to[strings.LastIndex(to, "/")+1:]] = dir
			}
		}
		for _, d := range f.Decls {
			g, is := d.(*ast.GenDecl)
			if !is || g.Tok != token.TYPE {
				continue
			}
			for _, s := range g.Specs {
				spec := s.(*ast.TypeSpec)
				of, is := spec.Type.(*ast.SelectorExpr)
				if !is || !spec.Assign.IsValid() || inner[of.X.(*ast.Ident).Name] == "" {
					continue
				}
				doc := spec.Doc.Text()
				if doc == "" {
					doc = g.Doc.Text()
				}
				seen++
				for _, member := range membersOf(t, inner[of.X.(*ast.Ident).Name], of.Sel.Name) {
					if !regexp.MustCompile(`\b` + member + `\b`).MatchString(doc) {
						t.Errorf("%s: the doc of %s does not name its member %s", file, spec.Name.Name, member)
					}
				}
			}
		}
	}
	if seen < 30 {
		t.Errorf("only %d types were looked at", seen)
	}
}

// membersOf are the exported members of a struct of a package.
func membersOf(t *testing.T, dir, name string) (members []string) {
	t.Helper()
	files, _ := filepath.Glob(filepath.Join(dir, "*.go"))
	for _, file := range files {
		f, err := parser.ParseFile(token.NewFileSet(), file, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		object := f.Scope.Lookup(name)
		if object == nil {
			continue
		}
		made, is := object.Decl.(*ast.TypeSpec).Type.(*ast.StructType)
		if !is {
			return nil
		}
		for _, field := range made.Fields.List {
			for _, n := range field.Names {
				if n.IsExported() {
					members = append(members, n.Name)
				}
			}
			if len(field.Names) == 0 { // embedded: its name is its type's
				text := field.Type
				if star, is := text.(*ast.StarExpr); is {
					text = star.X
				}
				if s, is := text.(*ast.SelectorExpr); is {
					text = s.Sel
				}
				members = append(members, text.(*ast.Ident).Name)
			}
		}
		slices.Sort(members)
		return members
	}
	t.Errorf("no type %s in %s", name, dir)
	return nil
}
