// One test binary that holds many mutants.

package main

import (
	"bytes"
	"context"
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"time"
)

// together is a test binary of a package in which mutants stand behind
// numbers, one of which is let through by the environment variable MUTANT. It is
// built once, where each mutant by itself costs a build. What cannot be told
// apart while it runs, as a constant or an array's length, is not in it.
type together struct {
	binary, folder string
	skip           string // tests that fail with all mutants held back
	usual          time.Duration
	number         map[place]int
	never          map[place]bool // these do not compile: strings are not taken from each other
	others         []built        // tests of other packages, built with the same mutants
}

// built is a test binary and where it runs.
type built struct{ path, folder string }

// place is where a mutant changes its file, and to what.
type place struct {
	file, text string
	offset     int
}

func (m mutant) place() place { return place{m.file, m.text, m.offset} }

const wovenName = "woven_"

var marked = regexp.MustCompile(`/\*m((?:\d+,)+)\*/`)

// buildTogether weaves the mutants into a copy of the package and builds its
// tests. What the compiler refuses is left out, line by line.
func buildTogether(folder string, all []mutant, others []string, temporary string) (*together, error) {
	t := &together{binary: filepath.Join(temporary, "together.test"), folder: folder, number: map[place]int{}, never: map[place]bool{}}
	for i, m := range all {
		t.number[m.place()] = i + 1
	}
	for range 12 {
		overlay, woven, err := t.weave(temporary)
		if err != nil {
			return nil, err
		}
		build := func(to, folder string) ([]byte, error) {
			return exec.Command("go", "test", "-c", "-vet=off", "-ldflags=-s -w", "-gcflags=-e", "-overlay", overlay, "-o", to, folder).CombinedOutput()
		}
		output, err := build(t.binary, folder)
		if err == nil {
			t.keepWoven(woven)
			for i, other := range others {
				b := built{filepath.Join(temporary, fmt.Sprintf("other%d.test", i)), other}
				if output, err := build(b.path, other); err != nil {
					return nil, fmt.Errorf("%s: %s", other, output)
				}
				t.others = append(t.others, b)
			}
			return t, t.try()
		}
		if !t.leaveOut(string(output), woven) {
			return nil, fmt.Errorf("%s: %s", folder, output)
		}
	}
	return nil, fmt.Errorf("%s: its mutants do not build together", folder)
}

// keepWoven forgets the mutants that stand in no woven file.
func (t *together) keepWoven(woven map[string]string) {
	in := map[int]bool{}
	for _, path := range woven {
		text, err := os.ReadFile(path)
		exit(err)
		for _, list := range marked.FindAllStringSubmatch(string(text), -1) {
			for _, number := range strings.Split(list[1], ",") {
				v, _ := strconv.Atoi(number)
				in[v] = true
			}
		}
	}
	maps.DeleteFunc(t.number, func(_ place, number int) bool { return !in[number] })
}

// leaveOut drops the mutants of the lines that the compiler complains of.
func (t *together) leaveOut(complaints string, woven map[string]string) (any bool) {
	drop := map[int]bool{}
	for _, c := range regexp.MustCompile(`(?m)^(\S+?\.go):(\d+):`).FindAllStringSubmatch(complaints, -1) {
		text, err := os.ReadFile(woven[strings.TrimPrefix(filepath.Base(c[1]), wovenName)])
		if err != nil {
			continue
		}
		lines := strings.Split(string(text), "\n")
		n, _ := strconv.Atoi(c[2])
		for _, list := range marked.FindAllStringSubmatch(lines[min(n, len(lines))-1], -1) {
			for _, number := range strings.Split(list[1], ",") {
				if v, err := strconv.Atoi(number); err == nil {
					drop[v] = true
				}
			}
		}
	}
	for at, number := range t.number {
		if drop[number] {
			delete(t.number, at)
			any = true
		}
	}
	return any
}

// try runs the tests with all mutants held back, and leaves those tests out
// that fail for being woven, as one that counts allocations may.
func (t *together) try() error {
	for range 2 {
		start := time.Now()
		passed, output := t.run(0, 5*time.Minute, false)
		if t.usual = time.Since(start); passed {
			return nil
		}
		var failed []string
		for _, name := range regexp.MustCompile(`(?m)^--- FAIL: (\S+)`).FindAllStringSubmatch(output, -1) {
			failed = append(failed, "^"+name[1]+"$")
		}
		t.skip = strings.Join(failed, "|")
	}
	return fmt.Errorf("%s: the tests fail with no mutant let through", t.folder)
}

// run runs the tests with one mutant let through, 0 for none.
func (t *together) run(number int, most time.Duration, failfast bool) (passed bool, output string) {
	var arguments []string
	if failfast {
		arguments = append(arguments, "-test.failfast")
	}
	if t.skip != "" {
		arguments = append(arguments, "-test.skip", t.skip)
	}
	return built{t.binary, t.folder}.run(number, most, arguments...)
}

// kills tells whether the package's own tests fail for a mutant, or else those
// of the others that match.
func (t *together) kills(number int, match string) bool {
	if passed, _ := t.run(number, 10*t.usual+5*time.Second, true); !passed {
		return true
	}
	for _, other := range t.others {
		if passed, _ := other.run(number, 10*time.Minute, "-test.failfast", "-test.run", match); !passed {
			return true
		}
	}
	return false
}

func (b built) run(number int, most time.Duration, arguments ...string) (passed bool, output string) {
	ctx, stop := context.WithTimeout(context.Background(), most)
	defer stop()
	c := exec.CommandContext(ctx, b.path, append(arguments, "-test.count=1")...)
	c.Dir, c.Env = b.folder, append(os.Environ(), "MUTANT="+strconv.Itoa(number))
	text, err := c.CombinedOutput()
	return err == nil, string(text)
}

// weave writes the changed files and the list that puts them in place; woven
// says where, by name.
func (t *together) weave(temporary string) (overlay string, woven map[string]string, err error) {
	set := token.NewFileSet()
	paths, err := filepath.Glob(filepath.Join(t.folder, "*.go"))
	if err != nil {
		return "", nil, err
	}
	var files []*ast.File
	for _, path := range paths {
		if strings.HasSuffix(path, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(set, path, nil, parser.ParseComments)
		if err != nil {
			return "", nil, err
		}
		files = append(files, file)
	}
	info := &types.Info{Types: map[ast.Expr]types.TypeAndValue{}, Uses: map[*ast.Ident]types.Object{}}
	pkg, err := checked(t.folder, set, files, info)
	if err != nil {
		return "", nil, err
	}
	replace, woven := map[string]string{}, map[string]string{}
	put := func(path string, text []byte) error {
		to := filepath.Join(temporary, wovenName+filepath.Base(path))
		absolute, err := filepath.Abs(path)
		if err != nil {
			return err
		}
		replace[absolute], woven[filepath.Base(path)] = to, to
		return os.WriteFile(to, text, 0o600)
	}
	for _, file := range files {
		path := set.Position(file.Pos()).Filename
		source, err := os.ReadFile(path)
		if err != nil {
			return "", nil, err
		}
		w := weaver{source: source, path: path, set: set, file: file, info: info, pkg: pkg, number: t.number, never: t.never}
		w.walk()
		if err := put(path, w.text()); err != nil {
			return "", nil, err
		}
	}
	if err := put(filepath.Join(t.folder, "zz_mutants.go"), []byte("package "+pkg.Name()+"\n"+helpers)); err != nil {
		return "", nil, err
	}
	overlay = filepath.Join(temporary, "together.json")
	return overlay, woven, writeOverlay(overlay, replace)
}

// checked finds the types of a package, by what the go command knows of its imports.
func checked(folder string, set *token.FileSet, files []*ast.File, info *types.Info) (*types.Package, error) {
	list, err := exec.Command("go", "list", "-export", "-deps", "-f", "{{.ImportPath}}={{.Export}}", folder).Output()
	if err != nil {
		return nil, err
	}
	exports := map[string]string{}
	for _, line := range bytes.Split(list, []byte("\n")) {
		path, file, _ := strings.Cut(string(line), "=")
		exports[path] = file
	}
	config := types.Config{Importer: importer.ForCompiler(set, "gc", func(path string) (io.ReadCloser, error) { return os.Open(exports[path]) })}
	return config.Check(folder, set, files, info)
}

// helpers are what the woven files call. The first argument is the number of a
// mutant, the second where there are two of it.
const helpers = `
import (
	"os"
	"strconv"
)

var mutantOn = func() int { n, _ := strconv.Atoi(os.Getenv("MUTANT")); return n }()

type mutantWhole interface {
	~int | ~int8 | ~int16 | ~int32 | ~int64 | ~uint | ~uint8 | ~uint16 | ~uint32 | ~uint64 | ~uintptr
}
type mutantNumber interface{ mutantWhole | ~float32 | ~float64 }
type mutantOrdered interface{ mutantNumber | ~string }

func mutantIf[T any](n int, with, without T) T { if n == mutantOn { return with }; return without }
func mutantAdd[T mutantNumber](n int, a, b T) T { if n == mutantOn { return a - b }; return a + b }
func mutantSub[T mutantNumber](n int, a, b T) T { if n == mutantOn { return a + b }; return a - b }
func mutantMul[T mutantNumber](n int, a, b T) T { if n == mutantOn { return a / b }; return a * b }
func mutantQuo[T mutantNumber](n int, a, b T) T { if n == mutantOn { return a * b }; return a / b }
func mutantRem[T mutantWhole](n int, a, b T) T { if n == mutantOn { return a * b }; return a % b }
func mutantLss[T mutantOrdered](n, m int, a, b T) bool { if n == mutantOn { return a <= b }; if m == mutantOn { return a >= b }; return a < b }
func mutantLeq[T mutantOrdered](n, m int, a, b T) bool { if n == mutantOn { return a < b }; if m == mutantOn { return a > b }; return a <= b }
func mutantGtr[T mutantOrdered](n, m int, a, b T) bool { if n == mutantOn { return a >= b }; if m == mutantOn { return a <= b }; return a > b }
func mutantGeq[T mutantOrdered](n, m int, a, b T) bool { if n == mutantOn { return a > b }; if m == mutantOn { return a < b }; return a >= b }
func mutantAnd[T ~bool](n int, a T, b func() T) T { if n == mutantOn { return a || b() }; return a && b() }
func mutantOr[T ~bool](n int, a T, b func() T) T { if n == mutantOn { return a && b() }; return a || b() }
func mutantNeg[T mutantNumber](n int, a T) T { if n == mutantOn { return a }; return -a }
func mutantNot[T ~bool](n int, a T) T { if n == mutantOn { return a }; return !a }
func mutantMin[T mutantOrdered](n int, a T, more ...T) T { for _, b := range more { if n == mutantOn { a = max(a, b) } else { a = min(a, b) } }; return a }
func mutantMax[T mutantOrdered](n int, a T, more ...T) T { for _, b := range more { if n == mutantOn { a = min(a, b) } else { a = max(a, b) } }; return a }
`
