package assemble

import (
	"bytes"
	"fmt"
	"go/ast"
	"go/format"
	"go/parser"
	source "go/token"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

// unasked are the functions of the schema library for formats that no schema of ours
// asks for: what they need of the standard library and nothing else does, mail, MIME and
// addresses of the network, is 25 kB of the packed module.
var unasked = []string{"isEmail", "isHostname", "isIPV4", "isURITemplate", "isRelativeJSONPointer", "isUUID", "isPeriod", "isDuration"}

// emptied is asked by the library itself, of a host in brackets in the address of a
// schema: ours have none, and it says no.
const emptied = "isIPV6"

// unneeded are the packages that only these need.
var unneeded = []string{`"net/mail"`, `"net"`}

// unwritten are the drafts of JSON Schema in which none of our schemas is written: their
// own schemas, which the library reads when it starts, are 2 kB.
var unwritten = []string{"Draft4", "Draft6", "Draft7", "Draft2019"}

const schemaLibrary = "github.com/santhosh-tekuri/jsonschema/v5"

// smallLibrary is where the library without them lies, from the root of the module: the
// toolchain writes the place into what it builds, which must be the same everywhere.
const smallLibrary = "build/schema-library"

// withoutFormats puts a copy of the schema library without the formats that are not
// asked for into its place, and the go.mod file that builds with it into a folder.
func withoutFormats(root, folder string) (modfile string, err error) {
	cmd := exec.Command("go", "list", "-m", "-f", "{{.Dir}}", schemaLibrary)
	cmd.Dir = root
	dir, err := cmd.Output()
	if err != nil {
		return "", fmt.Errorf("looking for the schema library: %w", err)
	}
	place := filepath.Join(root, filepath.FromSlash(smallLibrary))
	if err := os.MkdirAll(filepath.Dir(place), 0o755); err != nil {
		return "", err
	}
	fresh, err := os.MkdirTemp(filepath.Dir(place), "library")
	if err != nil {
		return "", err
	}
	defer os.RemoveAll(fresh)
	if err := os.CopyFS(fresh, os.DirFS(strings.TrimSpace(string(dir)))); err != nil {
		return "", err
	}
	if err := dropFormats(filepath.Join(fresh, "format.go")); err != nil {
		return "", err
	}
	if err := dropDrafts(filepath.Join(fresh, "draft.go")); err != nil {
		return "", err
	}
	// Another build at the same time may put the same there first, and reads it: what is
	// there alike stays.
	if err := os.Rename(fresh, place); err != nil && !sameFormats(fresh, place) {
		if err := os.RemoveAll(place); err != nil {
			return "", err
		}
		if err := os.Rename(fresh, place); err != nil && !sameFormats(fresh, place) {
			return "", err
		}
	}
	for _, name := range []string{"go.mod", "go.sum"} {
		text, err := os.ReadFile(filepath.Join(root, name))
		if err != nil {
			return "", err
		}
		if name == "go.mod" {
			text = fmt.Appendf(text, "\nreplace %s => ./%s\n", schemaLibrary, smallLibrary)
		}
		if err := os.WriteFile(filepath.Join(folder, name), text, 0o644); err != nil {
			return "", err
		}
	}
	return filepath.Join(folder, "go.mod"), nil
}

// sameFormats tells whether two copies of the library are of one version, cut alike.
func sameFormats(a, b string) bool {
	for _, name := range []string{"format.go", "draft.go", "compiler.go", "schema.go"} {
		one, err := os.ReadFile(filepath.Join(a, name))
		other, errOther := os.ReadFile(filepath.Join(b, name))
		if err != nil || errOther != nil || !bytes.Equal(one, other) {
			return false
		}
	}
	return true
}

// dropFormats takes the functions of unasked, what names them, and the packages that
// they alone need, out of the library's file of formats, and empties one.
func dropFormats(file string) error {
	text, err := os.ReadFile(file)
	if err != nil {
		return err
	}
	names := source.NewFileSet()
	parsed, err := parser.ParseFile(names, file, text, 0)
	if err != nil {
		return err
	}
	dropped, isEmptied := 0, false
	parsed.Decls = slices.DeleteFunc(parsed.Decls, func(d ast.Decl) bool {
		f, is := d.(*ast.FuncDecl)
		gone := is && slices.Contains(unasked, f.Name.Name)
		if gone {
			dropped++
		} else if is && f.Name.Name == emptied {
			f.Body.List, isEmptied = []ast.Stmt{&ast.ReturnStmt{Results: []ast.Expr{ast.NewIdent("false")}}}, true
		}
		return gone
	})
	ast.Inspect(parsed, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.CompositeLit:
			n.Elts = slices.DeleteFunc(n.Elts, func(e ast.Expr) bool {
				pair, is := e.(*ast.KeyValueExpr)
				if !is {
					return false
				}
				name, is := pair.Value.(*ast.Ident)
				return is && (name.Name == emptied || slices.Contains(unasked, name.Name))
			})
		case *ast.GenDecl:
			n.Specs = slices.DeleteFunc(n.Specs, func(s ast.Spec) bool {
				i, is := s.(*ast.ImportSpec)
				return is && slices.Contains(unneeded, i.Path.Value)
			})
		}
		return true
	})
	if dropped != len(unasked) || !isEmptied {
		return fmt.Errorf("%s has %d of the functions %v, %s too: %t; see unasked", file, dropped, unasked, emptied, isEmptied)
	}
	return rewritten(file, "formats that none of its schemas asks for", names, parsed)
}

// dropDrafts takes out of the library's file of drafts what reads the schemas of those in
// which none of ours is written.
func dropDrafts(file string) error {
	names := source.NewFileSet()
	parsed, err := parser.ParseFile(names, file, nil, 0)
	if err != nil {
		return err
	}
	dropped := 0
	ast.Inspect(parsed, func(n ast.Node) bool {
		block, is := n.(*ast.BlockStmt)
		if !is {
			return true
		}
		block.List = slices.DeleteFunc(block.List, func(s ast.Stmt) bool {
			line, _ := s.(*ast.ExprStmt)
			if line == nil {
				return false
			}
			call, _ := line.X.(*ast.CallExpr)
			if call == nil {
				return false
			}
			of, _ := call.Fun.(*ast.SelectorExpr)
			if of == nil || of.Sel.Name != "loadMeta" {
				return false
			}
			draft, _ := of.X.(*ast.Ident)
			gone := draft != nil && slices.Contains(unwritten, draft.Name)
			if gone {
				dropped++
			}
			return gone
		})
		return true
	})
	if dropped != len(unwritten) {
		return fmt.Errorf("%s reads %d of the drafts %v", file, dropped, unwritten)
	}
	return rewritten(file, "drafts in which none of its schemas is written", names, parsed)
}

// rewritten puts a changed file of the library in its place, and says in it what is gone.
func rewritten(file, gone string, names *source.FileSet, parsed *ast.File) error {
	out := bytes.NewBufferString("// Changed by marinecalc: " + gone + " are left out.\n\n")
	if err := format.Node(out, names, parsed); err != nil {
		return err
	}
	if err := os.Chmod(file, 0o644); err != nil { // copied as it lies in the module cache
		return err
	}
	return os.WriteFile(file, out.Bytes(), 0o644)
}
