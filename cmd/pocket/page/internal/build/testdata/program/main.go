// A program that needs what is kept of the tables that are made smaller: the stack grows and
// is copied, garbage is collected while pointers lie on it, panics pass deferred calls.
package main

import (
	"errors"
	"fmt"
	"math"
	"os"
	"runtime"
	"slices"
	"strings"
)

type node struct {
	left, right *node
	name        string
}

func grow(depth int) *node {
	if depth == 0 {
		runtime.GC()
		return &node{name: strings.Repeat("x", 3)}
	}
	var room [64]int
	room[depth%64] = depth
	n := &node{left: grow(depth - 1), name: fmt.Sprint(depth)}
	if depth%50 == 0 {
		n.right = grow(depth / 4)
	}
	if room[depth%64] != depth {
		panic("the stack was lost")
	}
	return n
}

func (n *node) count() int {
	if n == nil {
		return 0
	}
	return 1 + n.left.count() + n.right.count()
}

func caught(f func()) (said string) {
	defer func() { said = fmt.Sprint(recover()) }()
	defer func() { said += "deferred" }()
	f()
	return "nothing"
}

func main() {
	fmt.Println(grow(900).count())
	var none []int
	var nothing *node
	fmt.Println(caught(func() { fmt.Println(none[len(os.Args)+4]) }))
	fmt.Println(caught(func() { fmt.Println(nothing.name) }))
	fmt.Println(caught(func() { panic(errors.New("mine")) }))
	sums := make(chan float64)
	for i := range 20 {
		go func() {
			s := 0.0
			for k := range 1000 {
				s += math.Sqrt(float64(i * k))
			}
			runtime.Gosched()
			sums <- s
		}()
	}
	var all []float64
	for range 20 {
		all = append(all, <-sums)
	}
	slices.Sort(all)
	fmt.Println(all)
}
