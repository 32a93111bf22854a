package store

import (
	"bytes"
	"encoding/json"
	"fmt"

	"github.com/klauspost/compress/zstd"

	"thawbook/app/winter"
)

// maxDocBytes bounds a document: a thousand barns with their notes fit into it.
const maxDocBytes = 16 << 20

// written is a document as it stands in a step.
func written(w winter.Winter) ([]byte, error) {
	text, err := json.Marshal(w)
	if err != nil {
		return nil, fmt.Errorf("the winter can't be written down: %w", err)
	}
	if len(text) > maxDocBytes {
		return nil, fmt.Errorf("the winter is larger than %d MiB and can't be written down", maxDocBytes>>20)
	}
	packer, err := zstd.NewWriter(nil, zstd.WithEncoderConcurrency(1))
	if err != nil {
		return nil, err
	}
	defer packer.Close()
	return packer.EncodeAll(text, nil), nil
}

// readBack is the document of a step. A strict one may hold nothing that this program does not know.
func readBack(doc []byte, strict bool) (w winter.Winter, err error) {
	unpacker, err := zstd.NewReader(nil, zstd.WithDecoderConcurrency(1), zstd.WithDecoderMaxMemory(maxDocBytes))
	if err != nil {
		return w, err
	}
	defer unpacker.Close()
	text, err := unpacker.DecodeAll(doc, nil)
	if err != nil {
		return w, err
	}
	in := json.NewDecoder(bytes.NewReader(text))
	if strict {
		in.DisallowUnknownFields()
	}
	return w, in.Decode(&w)
}
