// Command make writes the demo winter into a folder.
package main

import (
	"context"
	"flag"
	"fmt"
	"os"
	"path/filepath"

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

// write makes the demo and puts every file in place.
func write(dir string) error {
	files, err := sampledata.Demo(context.Background(), nil)
	if err != nil {
		return err
	}
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
