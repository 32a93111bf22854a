package plan

import (
	"fmt"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"
)

// place is a spot in the text, 1-based.
type place struct{ line, column int }

// places tells where each key and table stands. Keys are paths such as barn[0].stage[2].off_c.
type places struct {
	at      map[string]place
	counts  map[string]int
	singles []string // the headers written as [name], in order
}

// placesOf indexes a text that has been decoded without error.
func placesOf(text []byte) places {
	p := places{at: map[string]place{}, counts: map[string]int{}}
	var parser unstable.Parser
	parser.Reset(text)
	table := ""
	for parser.NextExpression() {
		e := parser.Expression()
		switch e.Kind {
		case unstable.Table:
			table = p.enter(&parser, e)
			p.singles = append(p.singles, table)
		case unstable.ArrayTable:
			table = p.enterNext(&parser, e)
		case unstable.KeyValue:
			p.keyValue(&parser, table, e)
		}
	}
	return p
}

// enter notes a table, or a dotted key, beneath the last of each list on its way.
func (p *places) enter(parser *unstable.Parser, e *unstable.Node) string {
	path := ""
	for it := e.Key(); it.Next(); {
		path = p.last(join(path, string(it.Node().Data)))
		p.note(parser, path, it.Node())
	}
	return path
}

// enterNext notes one more table of a list.
func (p *places) enterNext(parser *unstable.Parser, e *unstable.Node) string {
	path := ""
	for it := e.Key(); it.Next(); {
		path = join(path, string(it.Node().Data))
		if it.IsLast() {
			p.counts[path]++
		}
		path = p.last(path)
		p.note(parser, path, it.Node())
	}
	return path
}

// keyValue notes a key and the tables within its value.
func (p *places) keyValue(parser *unstable.Parser, table string, e *unstable.Node) {
	path := table
	for it := e.Key(); it.Next(); {
		path = join(path, string(it.Node().Data))
		p.note(parser, path, it.Node())
	}
	p.within(parser, path, e.Value())
}

// within notes the keys of inline tables.
func (p *places) within(parser *unstable.Parser, path string, value *unstable.Node) {
	item := 0
	for it := value.Children(); it.Next(); {
		child := it.Node()
		switch {
		case value.Kind == unstable.InlineTable && child.Kind == unstable.KeyValue:
			p.keyValue(parser, path, child)
		case value.Kind == unstable.Array && child.Kind != unstable.Comment:
			p.within(parser, fmt.Sprintf("%s[%d]", path, item), child)
			item++
		}
	}
}

// note keeps the first place of a path.
func (p *places) note(parser *unstable.Parser, path string, key *unstable.Node) {
	if _, known := p.at[path]; !known {
		start := parser.Shape(key.Raw).Start
		p.at[path] = place{start.Line, start.Column}
	}
}

// last adds the number of the list's last table to the path of a list.
func (p *places) last(path string) string {
	if n := p.counts[path]; n > 0 {
		return fmt.Sprintf("%s[%d]", path, n-1)
	}
	return path
}

// find is the place of a path, or of the nearest table around it.
func (p *places) find(path string) place {
	for path != "" {
		if at, ok := p.at[path]; ok {
			return at
		}
		path = path[:max(0, strings.LastIndexAny(path, ".["))]
	}
	return place{1, 1}
}

// join puts a key beneath a path.
func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}
