// Command ways goes every way that Go code can go, and prints where it came
// through: the same from each build of it, and each rewriting.
package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"math/big"
	"regexp"
	"runtime"
	"slices"
	"sort"
	"strings"
	"sync"
)

func main() {
	fmt.Println("loops", nested(9), breaking(40), collatz(27), empty(0), rotated([]int{3, 1, 2}, 2))
	fmt.Println("switches", words(0), words(3), words(7), words(99))
	fmt.Println("floats", compared(1, 2), compared(2, 1), compared(nan(), 1))
	fmt.Println("deep", deep(20000))
	fmt.Println("recovered", recovered(func() { var p *int; *p = 1 }), recovered(func() { var s []int; _ = s[len(s)] }), recovered(func() { panic("mine") }), recovered(func() {}))
	fmt.Println("who recovers", recovered(func() { defer byHelp(); panic("mine") }), recovered(func() { defer func() { byHelp() }(); panic("mine") }), recovered(func() { defer keeper(new(plain)).keep(); panic("mine") }), recovered(func() { defer keeper(plain{}).keep(); panic("mine") }))
	fmt.Println("in a loop", recoveredInLoop(5))
	fmt.Println("deferred", deferred())
	fmt.Println("asleep", asleep(50))
	fmt.Println("selected", selected(30))
	fmt.Println("copied", copied())
	fmt.Println("collected", collected(300))
	fmt.Println("sorted", sorted())
	fmt.Println("library", library())
}

// byHelp recovers where it is deferred itself, and not where what is deferred
// calls it.
func byHelp() { _ = recover() }

// plain is kept through an interface, by wrappers that the compiler makes.
type plain struct{}

type keeper interface{ keep() }

func (plain) keep() { _ = recover() }

func nested(n int) (sum int) {
outer:
	for i := range n {
		for j := 0; j < n; j++ {
			switch {
			case j == i:
				continue outer
			case i+j > 12:
				break outer
			case j%3 == 1:
				continue
			}
			sum = sum*3 + i*j
			for k := j; k > 0 && sum%2 == 0; k-- {
				sum += k
			}
		}
	}
	return sum
}

func breaking(n int) (count int) {
	for {
		for i := n; ; i-- {
			count++
			if i%7 == 0 {
				n = i - 1
				break
			}
			if i < 0 {
				return count
			}
		}
		if n < 3 {
			return -count
		}
	}
}

func collatz(n int) (steps int) {
	for n != 1 {
		if n%2 == 0 {
			n /= 2
		} else {
			n = 3*n + 1
		}
		steps++
	}
	return steps
}

func empty(n int) (s string) {
	for i := 0; i < n; i++ {
		s += "never"
	}
	return s + "none"
}

// rotated holds a loop whose check is several basic blocks.
func rotated(v []int, pivot int) (at int) {
	for at < len(v) && v[at] != pivot && v[at] > 0 {
		at++
	}
	return at
}

func words(n int) string {
	switch n {
	case 0:
		return "none"
	case 1, 2, 3:
		fallthrough
	case 4:
		return "few"
	case 5, 6, 7, 8:
		return "some"
	}
	return "many"
}

func nan() float64 { zero := 0.0; return zero / zero }

func compared(a, b float64) (s string) {
	for _, c := range []bool{a < b, a <= b, a > b, a >= b, a == b, a != b, !(a < b), !(a > b)} {
		if c {
			s += "y"
		} else {
			s += "n"
		}
	}
	return s
}

// deep lets the stack grow.
func deep(n int) int {
	var room [16]int
	if n == 0 {
		return 1
	}
	room[n%16] = deep(n - 1)
	return room[n%16] + 1
}

func recovered(do func()) (said string) {
	defer func() {
		if r := recover(); r != nil {
			said = fmt.Sprint("caught ", r)
		}
	}()
	do()
	return "nothing"
}

func recoveredInLoop(n int) (list []string) {
	for i := range n {
		list = append(list, recovered(func() {
			if i%2 == 0 {
				panic(i)
			}
		}))
	}
	return list
}

func deferred() (order []int) {
	for i := range 4 {
		defer func() { order = append(order, i) }()
	}
	func() {
		defer func() { order = append(order, 10) }()
		defer func() { _ = recover() }()
		defer func() { panic(errors.New("again")) }()
		panic("once")
	}()
	return order
}

// asleep lets goroutines wait for each other within loops.
func asleep(n int) (sum int) {
	there, back := make(chan int), make(chan int)
	go func() {
		for v := range there {
			for range v % 3 {
				runtime.Gosched()
			}
			back <- v * v
		}
		close(back)
	}()
	go func() {
		for i := range n {
			there <- i
		}
		close(there)
	}()
	for v := range back {
		sum += v
	}
	return sum
}

func selected(n int) [2]int {
	even, odd := 0, 0
	a, b, done := make(chan int), make(chan int, 2), make(chan struct{})
	var group sync.WaitGroup
	group.Go(func() {
		for i := range n {
			a <- i
		}
	})
	group.Go(func() {
		for i := range n {
			b <- i
		}
	})
	go func() { group.Wait(); close(done) }()
	for {
		select {
		case v := <-a:
			even += v
		case v := <-b:
			odd += 2 * v
		case <-done:
			for len(b) > 0 {
				odd += 2 * <-b
			}
			return [2]int{even, odd}
		}
	}
}

type big5 struct{ a, b, c, d, e int }

// copied moves and clears structs of several lengths.
func copied() (out [4]int) {
	list := []big5{{1, 2, 3, 4, 5}, {6, 7, 8, 9, 10}}
	list[0], list[1] = list[1], list[0]
	list[1] = list[1]
	var wide [40]int
	for i := range wide {
		wide[i] = i
	}
	other := wide
	wide = [40]int{}
	third := [3]big5{list[0], {}, list[1]}
	third[0] = big5{}
	for _, v := range other {
		out[0] += v
	}
	for _, v := range wide {
		out[1] += v
	}
	out[2] = third[2].e*100 + third[0].a*10 + third[1].c
	out[3] = list[0].a*10 + list[1].a
	return out
}

type node struct {
	next *node
	room [64]byte
}

func collected(n int) (length int) {
	var keep *node
	for i := range n {
		var list *node
		for range 200 {
			list = &node{next: list}
		}
		if i%100 == 0 {
			list.next = keep
			keep = list
		}
	}
	runtime.GC()
	for ; keep != nil; keep = keep.next {
		length++
	}
	return length
}

func sorted() string {
	list := strings.Fields("gland coupling shaft mount bearing key bolt propeller gearbox flange")
	sort.Strings(list)
	at, found := slices.BinarySearch(list, "mount")
	return fmt.Sprint(list, at, found)
}

func library() string {
	var v struct {
		A []float64
		B map[string]any
	}
	err := json.Unmarshal([]byte(`{"A":[1,2.5,-3e7],"B":{"x":[true,null,"\u00e9"],"y":{}}}`), &v)
	text, _ := json.Marshal(v)
	bad := json.Unmarshal([]byte(`{"A":[1,`), &v)
	var n, e, m big.Int
	n.SetString("123456789012345678901234567890", 10)
	e.SetInt64(12345)
	m.SetInt64(1000000007)
	match := regexp.MustCompile(`(\d+)-(\d+)/(\d+) in`).FindStringSubmatch("1-11/16 in")
	return fmt.Sprint(string(text), err, bad, new(big.Int).Exp(&n, &e, &m), match)
}
