package marinecalc_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/binding"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/problem"
)

// tableRow is a line of the table of calculations in the package comment.
type tableRow struct{ id, function, file string }

func tableOfCalculations(t *testing.T) []tableRow {
	t.Helper()
	f, err := parser.ParseFile(token.NewFileSet(), "doc.go", nil, parser.ParseComments|parser.PackageClauseOnly)
	if err != nil {
		t.Fatal(err)
	}
	var rows []tableRow
	for line := range strings.Lines(f.Doc.Text()) {
		words := strings.Fields(line)
		if strings.HasPrefix(line, "\t") && len(words) == 3 && words[0] != "id" {
			rows = append(rows, tableRow{words[0], words[1], words[2]})
		}
	}
	return rows
}

// The table lists the calculations of the catalogue, in its order.
func TestTableListsTheCatalogue(t *testing.T) {
	var listed, bound []string
	for _, row := range tableOfCalculations(t) {
		listed = append(listed, row.id)
	}
	for i := range catalogue.Calculations {
		bound = append(bound, catalogue.Calculations[i].ID)
	}
	if !slices.Equal(listed, bound) {
		t.Errorf("doc.go lists\n%v\nthe catalogue holds\n%v", listed, bound)
	}
}

// Each function stands in its file, and the catalogue binds the id to structs
// of its package that are named after it. Those of a machine part have the
// noun of the id, and so has the file.
func TestTableNamesWhatStandsInTheFiles(t *testing.T) {
	for _, row := range tableOfCalculations(t) {
		pkg, name, _ := strings.Cut(row.function, ".")
		f, err := parser.ParseFile(token.NewFileSet(), row.file, nil, parser.SkipObjectResolution)
		if err != nil {
			t.Errorf("%s: %v", row.id, err)
			continue
		}
		if f.Name.Name != pkg {
			t.Errorf("%s: %s is of package %s, not %s", row.id, row.file, f.Name.Name, pkg)
		}
		input, result := name+"Input", name+"Result"
		if strings.HasPrefix(row.file, "internal/") {
			input, result = "Input", "Result"
		} else {
			snake := snakeOf(name)
			if path.Base(row.file) != snake+".go" {
				t.Errorf("%s: %s stands in %s, not in %s.go", row.id, row.function, row.file, snake)
			}
			if !strings.HasSuffix(row.id, strings.ReplaceAll(snake, "_", "-")) && !namesWithTheIDTurnedRound[row.id] {
				t.Errorf("%s: the noun of %s is not that of the id", row.id, row.function)
			}
		}
		if !declares(f, name) {
			t.Errorf("%s: there is no function %s in %s", row.id, name, row.file)
		}
		form, err := formOf(row.id)
		if err != nil {
			t.Errorf("%s: %v", row.id, err)
			continue
		}
		takes, gives := form.Inputs.Type.String(), form.Results.Type.String()
		if takes != pkg+"."+input || gives != pkg+"."+result {
			t.Errorf("%s takes %s and gives %s, not the %s and %s of %s", row.id, takes, gives, input, result, row.function)
		}
	}
}

// namesWithTheIDTurnedRound are the ids whose other noun names the function,
// its package being named by the first.
var namesWithTheIDTurnedRound = map[string]bool{
	"shaft-torque":       true, // torque.Shaft
	"coupling-alignment": true, // align.Coupling
	"dial-alignment":     true, // align.Dial
	"alignment-change":   true, // align.Change
	"wear-debris":        true, // debris.Wear
	"output-flange":      true, // flange.Output
	"coupling-key":       true, // shaft.KeyStrength, as of the propeller's key
}

func snakeOf(name string) string {
	var s strings.Builder
	for i, r := range name {
		if r >= 'A' && r <= 'Z' {
			if i > 0 {
				s.WriteByte('_')
			}
			r += 'a' - 'A'
		}
		s.WriteRune(r)
	}
	return s.String()
}

func declares(f *ast.File, function string) bool {
	return slices.ContainsFunc(f.Decls, func(d ast.Decl) bool {
		fn, ok := d.(*ast.FuncDecl)
		return ok && fn.Recv == nil && fn.Name.Name == function
	})
}

// formOf gives the form that the catalogue binds under an id.
func formOf(id string) (*binding.Form, error) {
	i := slices.IndexFunc(catalogue.Calculations, func(c calc.Calculation) bool { return c.ID == id })
	if i < 0 {
		return nil, problem.ErrUnknown
	}
	return catalogue.Calculations[i].Form()
}
