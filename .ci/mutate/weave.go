// Mutants woven into a file.

package main

import (
	"bytes"
	"fmt"
	"go/ast"
	"go/token"
	"go/types"
	"slices"
	"strconv"
)

// weaver puts calls of the helpers into a file's text.
type weaver struct {
	source []byte
	path   string
	set    *token.FileSet
	file   *ast.File
	info   *types.Info
	pkg    *types.Package
	number map[place]int
	never  map[place]bool
	stack  []ast.Node
	puts   []insertion
}

// insertion is text at an offset, in place of what is cut there. Of those at one
// place the ends stand before the beginnings, inner ends and outer beginnings first.
type insertion struct {
	at, cut, depth int
	end            bool
	text           string
}

func (w *weaver) offset(p token.Pos) int { return w.set.Position(p).Offset }

// numbers are those of the mutants at a place, 0 for one that is not asked for.
func (w *weaver) numbers(at token.Pos, texts []string) (n []int, any bool) {
	for _, text := range texts {
		v := w.number[place{w.path, text, w.offset(at)}]
		n, any = append(n, v), any || v > 0
	}
	return n, any
}

func (w *weaver) put(at token.Pos, cut int, end bool, text string) {
	w.puts = append(w.puts, insertion{w.offset(at), cut, len(w.stack), end, text})
}

// around puts a call about an expression, its operator replaced by a comma.
func (w *weaver) around(n ast.Node, open, close string) {
	w.put(n.Pos(), 0, false, open)
	w.put(n.End(), 0, true, close)
}

// call begins a call of a helper for mutants of these numbers.
func call(helper, kind string, numbers ...int) string {
	list, mark := "", ""
	for _, n := range numbers {
		list += strconv.Itoa(n) + ", "
		mark += strconv.Itoa(n) + ","
	}
	if kind != "" {
		kind = "[" + kind + "]"
	}
	return helper + kind + "(/*m" + mark + "*/" + list
}

// kind is the name of a numeric type, "" for what is none or has no name here.
func (w *weaver) kind(e ast.Expr) string {
	of, known := w.info.Types[e]
	if !known || of.Type == nil {
		return ""
	}
	basic, is := of.Type.Underlying().(*types.Basic)
	if !is || basic.Info()&types.IsNumeric == 0 || basic.Info()&types.IsUntyped != 0 {
		return ""
	}
	named := true
	name := types.TypeString(of.Type, func(p *types.Package) string {
		if p == w.pkg {
			return ""
		}
		for _, in := range w.file.Imports {
			if path, _ := strconv.Unquote(in.Path.Value); path == p.Path() {
				if in.Name != nil {
					return in.Name.Name
				}
				return p.Name()
			}
		}
		named = false
		return ""
	})
	if !named {
		return ""
	}
	return name
}

// fixed tells whether what stands here must be a constant.
func (w *weaver) fixed() bool {
	for i, n := range w.stack {
		switch n := n.(type) {
		case *ast.GenDecl:
			if n.Tok == token.CONST {
				return true
			}
		case *ast.KeyValueExpr:
			list, is := w.stack[i-1].(*ast.CompositeLit)
			if !is || i+1 >= len(w.stack) || w.stack[i+1] != ast.Node(n.Key) {
				continue
			}
			switch w.info.Types[list].Type.Underlying().(type) {
			case *types.Slice, *types.Array:
				return true
			}
		}
	}
	return false
}

func (w *weaver) walk() {
	ast.Inspect(w.file, func(n ast.Node) bool {
		if n == nil {
			w.stack = w.stack[:len(w.stack)-1]
			return true
		}
		switch n.(type) {
		case *ast.ImportSpec, *ast.ArrayType:
			return false
		}
		w.stack = append(w.stack, n)
		if !w.fixed() {
			w.node(n)
		}
		return true
	})
}

func (w *weaver) node(n ast.Node) {
	switch n := n.(type) {
	case *ast.BinaryExpr:
		w.binary(n)
	case *ast.AssignStmt:
		w.assigned(n.TokPos, n.Tok, n.Lhs[0], n.End(), len(n.Tok.String()), "")
	case *ast.IncDecStmt:
		w.assigned(n.TokPos, n.Tok, n.X, n.End(), len(n.Tok.String()), "1")
	case *ast.UnaryExpr:
		helper := map[token.Token]string{token.SUB: "mutantNeg", token.NOT: "mutantNot"}[n.Op]
		if number, any := w.numbers(n.OpPos, []string{""}); any && helper != "" {
			w.put(n.OpPos, 1, false, call(helper, w.kind(n), number...))
			w.put(n.End(), 0, true, ")")
		}
	case *ast.BasicLit:
		texts := number(n)
		if numbers, any := w.numbers(n.Pos(), texts); any && w.kind(n) != "" {
			w.around(n, call("mutantIf", w.kind(n), numbers...)+texts[0]+", ", ")")
		}
	case *ast.Ident:
		w.name(n)
	}
}

var helperOf = map[token.Token]string{
	token.ADD: "mutantAdd", token.SUB: "mutantSub", token.MUL: "mutantMul", token.QUO: "mutantQuo", token.REM: "mutantRem",
	token.LSS: "mutantLss", token.LEQ: "mutantLeq", token.GTR: "mutantGtr", token.GEQ: "mutantGeq", token.LAND: "mutantAnd", token.LOR: "mutantOr",
	token.ADD_ASSIGN: "mutantAdd", token.SUB_ASSIGN: "mutantSub", token.MUL_ASSIGN: "mutantMul", token.QUO_ASSIGN: "mutantQuo",
	token.INC: "mutantAdd", token.DEC: "mutantSub",
}

func (w *weaver) binary(n *ast.BinaryExpr) {
	numbers, any := w.numbers(n.OpPos, binary[n.Op])
	if !any || w.strings(n.OpPos, n, "-") {
		return
	}
	operator := len(n.Op.String())
	switch n.Op {
	case token.EQL, token.NEQ:
		w.around(n, fmt.Sprintf("((/*m%d,*/", numbers[0]), fmt.Sprintf(") != (mutantOn == %d))", numbers[0]))
	case token.LAND, token.LOR:
		kind := types.TypeString(types.Default(w.info.Types[n].Type), func(*types.Package) string { return "" })
		w.around(n, call(helperOf[n.Op], kind, numbers...), "})")
		w.put(n.OpPos, operator, true, ", func() "+kind+" { return ")
	default:
		of := ast.Expr(n)
		if len(numbers) == 2 { // a comparison has its type from what is compared
			of = n.X
		}
		kind := w.kind(of)
		if kind == "" && w.info.Types[n].Value != nil {
			return
		}
		w.around(n, call(helperOf[n.Op], kind, numbers...), ")")
		w.put(n.OpPos, operator, true, ",")
	}
}

// strings tells whether an expression is of text, which can be put together and
// not taken apart.
func (w *weaver) strings(at token.Pos, e ast.Expr, text string) bool {
	of := w.info.Types[e]
	if of.Type == nil {
		return false
	}
	basic, is := of.Type.Underlying().(*types.Basic)
	if !is || basic.Info()&types.IsString == 0 {
		return false
	}
	w.never[place{w.path, text, w.offset(at)}] = true
	return true
}

// assigned turns x += y into x = helper(n, x, y), and x++ likewise.
func (w *weaver) assigned(at token.Pos, operator token.Token, left ast.Expr, end token.Pos, cut int, by string) {
	numbers, any := w.numbers(at, binary[operator])
	if !any || w.strings(at, left, "-=") {
		return
	}
	x := string(w.source[w.offset(left.Pos()):w.offset(left.End())])
	text := "= " + call(helperOf[operator], "", numbers...) + x + ", "
	if by != "" {
		w.put(at, cut, true, text+by+")")
		return
	}
	w.put(at, cut, true, text)
	w.put(end, 0, true, ")")
}

// name weaves min and max, true and false, and the functions of math.
func (w *weaver) name(n *ast.Ident) {
	numbers, any := w.numbers(n.Pos(), name[n.Name])
	object := w.info.Uses[n]
	if !any || object == nil {
		return
	}
	over := w.stack[len(w.stack)-2]
	switch n.Name {
	case "true", "false":
		w.around(n, call("mutantIf", "bool", numbers...)+name[n.Name][0]+", ", ")")
	case "min", "max":
		helper := map[string]string{"min": "mutantMin", "max": "mutantMax"}[n.Name]
		if c, is := over.(*ast.CallExpr); is && w.info.Types[c].Value == nil {
			w.put(n.Pos(), w.offset(c.Lparen)+1-w.offset(n.Pos()), false, call(helper, w.kind(c), numbers...))
		}
	default:
		if s, is := over.(*ast.SelectorExpr); is && object.Pkg() != nil && object.Pkg().Path() == "math" {
			w.put(s.Pos(), w.offset(s.End())-w.offset(s.Pos()), false, call("mutantIf", "", numbers...)+"math."+name[n.Name][0]+", math."+n.Name+")")
		}
	}
}

// text is the file with everything put in.
func (w *weaver) text() []byte {
	slices.SortStableFunc(w.puts, func(a, b insertion) int {
		switch {
		case a.at != b.at:
			return a.at - b.at
		case a.end != b.end && a.end:
			return -1
		case a.end != b.end:
			return 1
		case a.end:
			return b.depth - a.depth
		}
		return a.depth - b.depth
	})
	var text bytes.Buffer
	at := 0
	for _, p := range w.puts {
		text.Write(w.source[at:max(at, p.at)])
		text.WriteString(p.text)
		at = max(at, p.at+p.cut)
	}
	text.Write(w.source[at:])
	return text.Bytes()
}
