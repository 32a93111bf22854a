package engine

import (
	"context"

	"thawbook/app/files"
	"thawbook/app/winter"
)

// Inspect reads every file, and every file of every folder in byte order of path, in the order of the
// arguments; a file named twice is read twice. What could not be read is a File with its error; the error
// returned is the context's alone. progress may be nil. Of the
// readings only what they amount to is kept: those of twenty loggers over five months would take 140 MB. Once the context
// ends Inspect is over, whatever is being learned of a wide file: nothing hangs on that any more.
func Inspect(ctx context.Context, paths []string, answers []winter.Answer, progress Progress) (out []File, err error) {
	type outcome struct {
		files []File
		err   error
	}
	over := make(chan outcome, 1)
	go func() {
		var o outcome
		defer func() { over <- o }()
		defer caught(&o.err, "What was given")
		o.files, o.err = inspect(ctx, paths, answers, progress)
	}()
	select {
	case o := <-over:
		return o.files, o.err
	case <-ctx.Done():
		return nil, ctx.Err()
	}
}

func inspect(ctx context.Context, paths []string, answers []winter.Answer, progress Progress) ([]File, error) {
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
