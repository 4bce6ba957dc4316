// Command mutate tells how much of a package's arithmetic its tests hold. It
// changes one operator, bound or number at a time, runs the tests on what comes
// of it, and lists the mutants that no test killed. What does not compile is
// not counted and another takes its place; what no test reaches has survived;
// what does not end, after ten times the usual time, is killed.
//
//	go run ./.ci/mutate -sample 25 ./marinecalc/torque ./marinecalc/gland
//
// Files are picked by -files, the sample by -seed. With -tests the tests of
// other packages are run too on what a package's own let live.
package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"hash/fnv"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"time"
)

// A mutant puts text in place of length bytes at an offset of a file.
type mutant struct {
	file           string
	offset, length int
	text           string
	line           int
}

func main() {
	sample := flag.Int("sample", 25, "mutants tried of each package; 0 tries all")
	seed := flag.Uint64("seed", 1, "which those are")
	files := flag.String("files", "", "only these files, by commas")
	at := flag.String("at", "", "only those in these lines, such as heat.go:130,drip.go:95")
	tests := flag.String("tests", "", "packages, by commas, whose tests are run as well")
	run := flag.String("run", "", "of these, only the tests that match")
	workers := flag.Int("workers", 2, "how many run at a time")
	flag.Parse()
	if flag.NArg() == 0 {
		flag.Usage()
		os.Exit(2)
	}
	temporary, err := os.MkdirTemp("", "mutate")
	exit(err)
	defer os.RemoveAll(temporary)
	var lines []string
	for _, folder := range flag.Args() {
		all, err := mutants(folder, *files)
		exit(err)
		if *at != "" {
			all = slices.DeleteFunc(all, func(m mutant) bool {
				return !slices.Contains(strings.Split(*at, ","), fmt.Sprintf("%s:%d", filepath.Base(m.file), m.line))
			})
		}
		start := time.Now()
		if usual := tested(folder, nil, "", 5*time.Minute); !usual.passed {
			exit(fmt.Errorf("the tests fail before anything is changed:\n%s", usual.output))
		}
		most := 10*time.Since(start) + 30*time.Second
		one, err := buildTogether(folder, all, strings.FieldsFunc(*tests, func(r rune) bool { return r == ',' }), temporary)
		exit(err)
		// The package's name goes into the seed, so that its sample does not
		// hang on which packages stand before it.
		name := fnv.New64a()
		fmt.Fprint(name, filepath.Clean(folder))
		rand.New(rand.NewPCG(*seed, name.Sum64())).Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
		want := *sample
		if want == 0 || want > len(all) {
			want = len(all)
		}
		tried, survivors := try(folder, all, want, *workers, func(m mutant, worker int) outcome {
			if one.never[m.place()] {
				return outcome{}
			}
			if number, woven := one.number[m.place()]; woven {
				return outcome{compiled: true, passed: !one.kills(number, *run)}
			}
			overlay, err := m.overlay(temporary, worker)
			exit(err)
			got := tested(folder, overlay, "", most)
			if got.passed && *tests != "" {
				got = tested(strings.ReplaceAll(*tests, ",", " "), overlay, *run, 10*time.Minute)
			}
			return got
		})
		killed := tried - len(survivors)
		lines = append(lines, fmt.Sprintf("| %s | %d | %d | %d | %.0f %% |", filepath.Clean(folder), len(all), tried, killed, 100*float64(killed)/float64(max(tried, 1))))
		for _, m := range survivors {
			fmt.Println(m)
		}
	}
	fmt.Println("\n| package | mutants there are | tried | killed | |\n|---|---|---|---|---|")
	fmt.Println(strings.Join(lines, "\n"))
}

// exit ends the command where there is an error.
func exit(err error) {
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// try runs the tests on mutants in their order until the wanted number of them
// compiled.
func try(folder string, all []mutant, want, workers int, test func(m mutant, worker int) outcome) (tried int, survivors []mutant) {
	var (
		lock        sync.Mutex
		wait        sync.WaitGroup
		next, going int
	)
	for w := range workers {
		wait.Go(func() {
			for {
				lock.Lock()
				if next == len(all) || tried+going >= want {
					lock.Unlock()
					return
				}
				m := all[next]
				next, going = next+1, going+1
				lock.Unlock()
				got := test(m, w)
				lock.Lock()
				going--
				if got.compiled {
					tried++
				}
				if got.compiled && got.passed {
					survivors = append(survivors, m)
				}
				fmt.Fprintf(os.Stderr, "%s: %d of %d, %d survive\n", folder, tried, want, len(survivors))
				lock.Unlock()
			}
		})
	}
	wait.Wait()
	slices.SortFunc(survivors, func(a, b mutant) int {
		if a.file != b.file {
			return strings.Compare(a.file, b.file)
		}
		return a.offset - b.offset
	})
	return tried, survivors
}

// overlay writes the changed file and gives the flags that put it in place.
func (m mutant) overlay(folder string, worker int) ([]string, error) {
	source, err := os.ReadFile(m.file)
	if err != nil {
		return nil, err
	}
	changed := slices.Concat(source[:m.offset], []byte(m.text), source[m.offset+m.length:])
	at := filepath.Join(folder, fmt.Sprintf("%d.go", worker))
	if err := os.WriteFile(at, changed, 0o600); err != nil {
		return nil, err
	}
	original, err := filepath.Abs(m.file)
	if err != nil {
		return nil, err
	}
	places := filepath.Join(folder, fmt.Sprintf("%d.json", worker))
	return []string{"-overlay", places}, writeOverlay(places, map[string]string{original: at})
}

// writeOverlay writes what the go command puts in place of files.
func writeOverlay(to string, replace map[string]string) error {
	list, err := json.Marshal(map[string]map[string]string{"Replace": replace})
	if err != nil {
		return err
	}
	return os.WriteFile(to, list, 0o600)
}

// String shows the change in its line.
func (m mutant) String() string {
	source, err := os.ReadFile(m.file)
	if err != nil {
		return err.Error()
	}
	from := strings.LastIndexByte(string(source[:m.offset]), '\n') + 1
	to := len(source)
	if n := strings.IndexByte(string(source[m.offset:]), '\n'); n >= 0 {
		to = m.offset + n
	}
	return fmt.Sprintf("- %s:%d: `%s⟦%s → %s⟧%s`", m.file, m.line, strings.TrimLeft(string(source[from:m.offset]), "\t"),
		source[m.offset:m.offset+m.length], m.text, source[m.offset+m.length:to])
}

type outcome struct {
	compiled, passed bool
	output           string
}

// tested runs the tests of packages parted by spaces.
func tested(packages string, overlay []string, run string, most time.Duration) outcome {
	arguments := append([]string{"test", "-vet=off", "-failfast", "-count=1", "-timeout=" + most.String(), "-ldflags=-s -w"}, overlay...)
	if run != "" {
		arguments = append(arguments, "-run", run)
	}
	output, err := exec.Command("go", append(arguments, strings.Fields(packages)...)...).CombinedOutput()
	text := string(output)
	return outcome{compiled: !strings.Contains(text, "[build failed]") && !strings.Contains(text, "[setup failed]"), passed: err == nil, output: text}
}

// mutants lists what can be changed in the files of a folder.
func mutants(folder, only string) ([]mutant, error) {
	files, err := filepath.Glob(filepath.Join(folder, "*.go"))
	if err != nil {
		return nil, err
	}
	var all []mutant
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") || only != "" && !slices.Contains(strings.Split(only, ","), filepath.Base(file)) {
			continue
		}
		set := token.NewFileSet()
		tree, err := parser.ParseFile(set, file, nil, parser.SkipObjectResolution)
		if err != nil {
			return nil, err
		}
		unseen := map[ast.Node]bool{}
		ast.Inspect(tree, func(n ast.Node) bool {
			if unseen[n] {
				return false
			}
			put := func(at token.Pos, old string, texts ...string) {
				p := set.Position(at)
				for _, text := range texts {
					all = append(all, mutant{file: file, offset: p.Offset, length: len(old), text: text, line: p.Line})
				}
			}
			switch n := n.(type) {
			case *ast.ImportSpec, *ast.ArrayType:
				return false
			case *ast.CallExpr:
				if e := unseenOf(n); e != nil {
					unseen[e] = true
				}
			case *ast.RangeStmt:
				if rounds, is := n.X.(*ast.BasicLit); is && len(rounds.Value) > 1 && rounds.Value >= "40" {
					unseen[rounds] = true
				}
			case *ast.BinaryExpr:
				put(n.OpPos, n.Op.String(), binary[n.Op]...)
			case *ast.AssignStmt:
				put(n.TokPos, n.Tok.String(), binary[n.Tok]...)
			case *ast.IncDecStmt:
				put(n.TokPos, n.Tok.String(), binary[n.Tok]...)
			case *ast.UnaryExpr:
				switch n.Op {
				case token.SUB, token.NOT:
					put(n.OpPos, n.Op.String(), "")
				}
			case *ast.BasicLit:
				put(n.Pos(), n.Value, number(n)...)
			case *ast.Ident:
				put(n.Pos(), n.Name, name[n.Name]...)
			}
			return true
		})
	}
	if len(all) == 0 {
		return nil, fmt.Errorf("%s: nothing to change", folder)
	}
	return all, nil
}

// unseenOf is the argument of a call that no test can see: the room that is made
// beforehand, and the 1 that stands for a plus sign.
func unseenOf(call *ast.CallExpr) ast.Expr {
	switch f := call.Fun.(type) {
	case *ast.Ident:
		if f.Name == "make" && len(call.Args) == 3 {
			return call.Args[2]
		}
	case *ast.SelectorExpr:
		last := call.Args[max(0, len(call.Args)-1):]
		if (f.Sel.Name == "Inf" || f.Sel.Name == "IsInf") && len(last) == 1 {
			if sign, is := last[0].(*ast.BasicLit); is && sign.Value == "1" {
				return sign
			}
			if sign, is := last[0].(*ast.UnaryExpr); is {
				if one, is := sign.X.(*ast.BasicLit); is && one.Value == "1" {
					return one // of minus one; the sign itself counts
				}
			}
		}
	}
	return nil
}

var binary = map[token.Token][]string{
	token.ADD: {"-"}, token.SUB: {"+"}, token.MUL: {"/"}, token.QUO: {"*"}, token.REM: {"*"},
	token.LSS: {"<=", ">="}, token.LEQ: {"<", ">"}, token.GTR: {">=", "<="}, token.GEQ: {">", "<"},
	token.EQL: {"!="}, token.NEQ: {"=="}, token.LAND: {"||"}, token.LOR: {"&&"},
	token.ADD_ASSIGN: {"-="}, token.SUB_ASSIGN: {"+="}, token.MUL_ASSIGN: {"/="}, token.QUO_ASSIGN: {"*="},
	token.INC: {"--"}, token.DEC: {"++"},
}

var name = map[string][]string{
	"Min": {"Max"}, "Max": {"Min"}, "min": {"max"}, "max": {"min"}, "Sin": {"Cos"}, "Cos": {"Sin"},
	"Floor": {"Ceil"}, "Ceil": {"Floor"}, "true": {"false"}, "false": {"true"}, "Abs": {"Cbrt"},
	"break": {"continue"}, "continue": {"break"},
}

// number is what is put in a number's place: one more for a whole one, a tenth
// more for another.
func number(lit *ast.BasicLit) []string {
	switch lit.Kind {
	case token.INT:
		if v, err := strconv.ParseInt(lit.Value, 0, 64); err == nil {
			return []string{strconv.FormatInt(v+1, 10)}
		}
	case token.FLOAT:
		if v, err := strconv.ParseFloat(lit.Value, 64); err == nil && v != 0 {
			return []string{strconv.FormatFloat(1.1*v, 'g', -1, 64)}
		}
	}
	return nil
}
