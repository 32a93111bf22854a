package store

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"
)

// TestADamagedFileWithAJournal damages a file, its journal or both, as a killed program and a failing disk
// leave them together. Where the file is refused neither is touched.
func TestADamagedFileWithAJournal(t *testing.T) {
	r := played(t, "EXTRA")
	disk := r.tape.disk(r.done[5]-1, dice{rand.New(rand.NewPCG(1, 1)), 1}) // in the taking of a large export
	dir := quickDir(t)
	refused, tries := 0, soak(t, "SOAK_DAMAGE", 500)/10
	for seed := range tries {
		rnd := rand.New(rand.NewPCG(uint64(seed), 11))
		at := filepath.Join(dir, fmt.Sprint(seed))
		path := filepath.Join(at, "w.thawbook")
		main, journal := harmed(rnd, disk[r.path]), harmed(rnd, disk[r.path+journalSuffix])
		err := errors.Join(os.Mkdir(at, 0o777), os.WriteFile(path, main, 0o666), os.WriteFile(path+journalSuffix, journal, 0o666))
		if err != nil {
			t.Fatal(err)
		}
		err = guarded("open", func() error {
			s, err := Open(path)
			if err != nil {
				refused++
				return errors.Join(refusal(err, Damaged), hasBytes(path, main), hasBytes(path+journalSuffix, journal))
			}
			return s.Close()
		})
		if err == nil {
			err = guarded("rescue", func() error { return rescuedAndOpened(path, filepath.Join(at, "new.thawbook")) })
		}
		if err != nil {
			t.Errorf("seed %d: %v", seed, err)
		}
		os.RemoveAll(at)
	}
	t.Logf("SUMMARY damage beside a journal: %d files, %d refused", tries, refused)
}

// harmed is a copy of some bytes: half of the time as they are, else cut, with bits flipped or a page of zeros.
func harmed(rnd *rand.Rand, data []byte) []byte {
	data = bytes.Clone(data)
	switch rnd.IntN(6) {
	case 0:
		return data[:rnd.IntN(len(data))]
	case 1:
		for range 1 + rnd.IntN(8) {
			data[rnd.IntN(len(data))] ^= 1 << rnd.IntN(8)
		}
	case 2:
		at := rnd.IntN(len(data)) / pageSize * pageSize
		clear(data[at:min(at+pageSize, len(data))])
	}
	return data
}

func rescuedAndOpened(from, to string) error {
	if _, err := Rescue(context.Background(), from, to); err != nil {
		return err
	}
	s, err := Open(to)
	if err != nil {
		return err
	}
	return s.Close()
}
