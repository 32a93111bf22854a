package ui

import (
	"errors"
	"testing"
	"time"
)

// The window waits as long as a busy machine may take, so that a test sees every page at once.
func init() { patience = 20 * time.Second }

func newBeside(main *turn, failed func(error)) *beside[int, string] {
	guard := func(doing func() error) (err error) {
		defer func() {
			if recover() != nil {
				err = errors.New("a fault")
			}
		}()
		return doing()
	}
	return &beside[int, string]{do: main.do, guard: guard, failed: failed}
}

func TestWhatIsMadeQuicklyIsThereAtOnce(t *testing.T) {
	b, builds := newBeside(&turn{}, nil), 0
	for range 2 { // the second time nothing is made
		got, fresh := b.of(1, func() string { builds++; return "one" }, nil)
		if got != "one" || !fresh || builds != 1 {
			t.Errorf("%q, fresh %v, %d builds", got, fresh, builds)
		}
	}
}

// While something slow is made the window shows what was there; of what is asked for meanwhile the latest is made.
func TestTheLatestIsMadeBeside(t *testing.T) {
	patience = time.Millisecond
	defer func() { patience = 20 * time.Second }()
	main, let := &turn{}, make(chan struct{})
	b := newBeside(main, nil)
	wanted, shown, builds := 1, "", 0
	names := map[int]string{1: "one", 2: "two", 3: "three"}
	var show func()
	show = func() {
		key := wanted
		if got, fresh := b.of(key, func() string { <-let; builds++; return names[key] }, show); fresh {
			shown = got
		}
	}
	for wanted = 1; wanted < 3; wanted++ {
		show()
	}
	show()
	if shown != "" {
		t.Errorf("shown before it was made: %q", shown)
	}
	close(let)
	main.until(t, "the third is shown", func() bool { return shown != "" })
	if shown != "three" || builds != 2 { // the first was begun, the second was overtaken
		t.Errorf("%q after %d builds", shown, builds)
	}
}

func TestAFaultInMakingIsToldOnce(t *testing.T) {
	told := 0
	b := newBeside(&turn{}, func(error) { told++ })
	for range 2 {
		if got, fresh := b.of(1, func() string { panic("fault") }, nil); got != "" || !fresh {
			t.Errorf("%q, fresh %v", got, fresh)
		}
	}
	if told != 1 {
		t.Errorf("told %d times", told)
	}
}
