package engine

import (
	"context"

	"thawbook/app/files"
	"thawbook/app/winter"
)

// Inspect reads every file, and every file of every folder in byte order of path, in the order of the
// arguments; a file named twice is read twice. What could not be read is a File with its error; the error
// returned is the context's alone. progress may be nil. Of the
// readings only what they amount to is kept: those of twenty loggers over five months would take 140 MB.
func Inspect(ctx context.Context, paths []string, answers []winter.Answer, progress Progress) ([]File, error) {
	var found []string
	refused := map[int]File{}
	for _, p := range paths {
		below, err := files.Walk(p)
		found = append(found, below...)
		if err != nil {
			refused[len(found)] = File{Name: p, Err: err}
			found = append(found, p)
		}
	}
	out, err := reader{source: Folder(""), answers: answers, progress: progress, sums: true}.readAll(ctx, found)
	for i, file := range refused {
		out[i] = file
	}
	return out, err
}
