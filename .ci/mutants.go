//go:build ignore

// Flips comparisons of package analysis one at a time and runs its tests: each flip must make one fail.
// Usage: go run .ci/mutants.go [-n 20] [-seed 1]
package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// flipped are the comparisons with their opposites.
var flipped = map[token.Token]token.Token{
	token.LSS: token.GEQ, token.GEQ: token.LSS, token.GTR: token.LEQ, token.LEQ: token.GTR, token.EQL: token.NEQ, token.NEQ: token.EQL,
}

// place is one comparison in a file.
type place struct {
	file   string
	at     token.Position
	op, to token.Token
}

func main() {
	n, seed := flag.Int("n", 20, "how many comparisons"), flag.Uint64("seed", 1, "which of them")
	flag.Parse()
	all := comparisons("analysis")
	rand.New(rand.NewPCG(*seed, 0)).Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
	dir, err := os.MkdirTemp("", "mutants")
	must(err)
	defer os.RemoveAll(dir)
	lived := 0
	for _, p := range all[:min(*n, len(all))] {
		state := "found"
		if !p.fails(dir) {
			state = "LIVED"
			lived++
		}
		fmt.Printf("%s  %s:%d:%d  %s made %s\n", state, p.file, p.at.Line, p.at.Column, p.op, p.to)
	}
	fmt.Printf("%d of %d comparisons, %d flips lived\n", min(*n, len(all)), len(all), lived)
	if lived > 0 {
		os.RemoveAll(dir)
		os.Exit(1)
	}
}

// comparisons are those of the files in a folder that are no tests; comparisons with nil are left out.
func comparisons(dir string) (out []place) {
	files, err := filepath.Glob(filepath.Join(dir, "*.go"))
	must(err)
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		set := token.NewFileSet()
		tree, err := parser.ParseFile(set, file, nil, 0)
		must(err)
		ast.Inspect(tree, func(n ast.Node) bool {
			if b, ok := n.(*ast.BinaryExpr); ok {
				if to, is := flipped[b.Op]; is && !isNil(b.X) && !isNil(b.Y) {
					out = append(out, place{file, set.Position(b.OpPos), b.Op, to})
				}
			}
			return true
		})
	}
	return out
}

func isNil(e ast.Expr) bool {
	id, ok := e.(*ast.Ident)
	return ok && id.Name == "nil"
}

// fails says whether the tests fail, or do not end, with the comparison flipped.
func (p place) fails(dir string) bool {
	text, err := os.ReadFile(p.file)
	must(err)
	changed := filepath.Join(dir, "mutant.go")
	must(os.WriteFile(changed, []byte(string(text[:p.at.Offset])+p.to.String()+string(text[p.at.Offset+len(p.op.String()):])), 0o644))
	whole, err := filepath.Abs(p.file)
	must(err)
	overlay, err := json.Marshal(map[string]map[string]string{"Replace": {whole: changed}})
	must(err)
	list := filepath.Join(dir, "overlay.json")
	must(os.WriteFile(list, overlay, 0o644))
	return exec.Command("go", "test", "-failfast", "-timeout", "3m", "-overlay", list, "./analysis").Run() != nil
}

func must(err error) {
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(2)
	}
}
