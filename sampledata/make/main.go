// Command make writes the demo winter into a folder, and the thin one into a folder thin in it.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"sync"

	"thawbook/sampledata"
)

func main() {
	out := flag.String("out", filepath.Join("build", "demo"), "folder to write to")
	flag.Parse()
	if flag.NArg() > 0 {
		fmt.Fprintln(os.Stderr, "no arguments are taken, only -out FOLDER")
		os.Exit(2)
	}
	if err := write(*out); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// write makes both demos, side by side.
func write(dir string) error {
	var rich, thin []sampledata.File
	var faults [2]error
	var both sync.WaitGroup
	both.Go(func() { rich, faults[0] = sampledata.Demo(context.Background(), nil) })
	both.Go(func() { thin, faults[1] = sampledata.Thin(context.Background(), nil) })
	both.Wait()
	if err := errors.Join(faults[:]...); err != nil {
		return err
	}
	if err := put(dir, rich); err != nil {
		return err
	}
	return put(filepath.Join(dir, "thin"), thin)
}

// put puts every file in place.
func put(dir string, files []sampledata.File) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	for _, f := range files {
		if err := replace(filepath.Join(dir, f.Name), f.Data); err != nil {
			return err
		}
		fmt.Printf("%9d bytes  %s\n", len(f.Data), filepath.Join(dir, f.Name))
	}
	return nil
}

// replace writes a file beside its place and then renames it, so that no half-written one is ever found there.
func replace(path string, data []byte) error {
	tmp := path + ".part"
	if err := os.WriteFile(tmp, data, 0o644); err != nil {
		return err
	}
	return os.Rename(tmp, path)
}
