package engine

import (
	"slices"
	"strings"
	"sync"

	"thawbook/importers"
)

// cacheBytes is how much memory the readings of kept exports may take before the cache starts anew: those of sixty
// million rows of a temperature and a humidity.
const cacheBytes = 1_500 << 20

// Cache keeps what was worked out between reviews: decoded exports by the file's checksum, its name, the
// answers to its questions and the reader's version; loggers' curves and barns' reviews by all that went
// into them. Its zero value is ready; it may be used from several goroutines.
type Cache struct {
	lock    sync.Mutex
	exports map[cacheKey]*importers.Export
	sizes   map[int64]bool
	held    int64 // bytes of the exports' readings
	lists   memo[joined]
	barns   memo[judged]
}

type cacheKey struct {
	sha256, name, answers string
	version               int
}

// keyOf is the key of a file read with some answers.
func keyOf(sha256, name string, answers importers.Answers) cacheKey {
	var said []string
	for id, option := range answers {
		said = append(said, id+"="+option)
	}
	slices.Sort(said)
	return cacheKey{sha256, name, strings.Join(said, "\n"), importers.ReaderVersion}
}

// mayHold says whether any file of that size was kept: else there is no need to take the checksum first.
func (c *Cache) mayHold(bytes int64) bool {
	if c == nil {
		return false
	}
	c.lock.Lock()
	defer c.lock.Unlock()
	return c.sizes[bytes]
}

// export is what was kept under a key, or nil.
func (c *Cache) export(key cacheKey) *importers.Export {
	if c == nil {
		return nil
	}
	c.lock.Lock()
	defer c.lock.Unlock()
	return c.exports[key]
}

// keep remembers an export.
func (c *Cache) keep(key cacheKey, bytes int64, export *importers.Export) {
	if c == nil {
		return
	}
	c.lock.Lock()
	defer c.lock.Unlock()
	size := heldBy(export)
	if before := c.exports[key]; before != nil {
		c.held -= heldBy(before)
	}
	if c.exports == nil || c.held+size > cacheBytes {
		c.exports, c.sizes, c.held = map[cacheKey]*importers.Export{}, map[int64]bool{}, 0
	}
	c.exports[key], c.sizes[bytes] = export, true
	c.held += size
}

// heldBy is how many bytes an export takes, its readings and a little for itself. Columns that share their times count
// them once.
func heldBy(export *importers.Export) int64 {
	const each, itself = 8, 4096
	size := int64(itself)
	var times *int64
	for _, s := range export.Series {
		size += each * int64(len(s.Val))
		if len(s.FaceMS) > 0 && &s.FaceMS[0] != times {
			size += each * int64(len(s.FaceMS))
			times = &s.FaceMS[0]
		}
	}
	return size
}

// ReaderVersion is that of the importers: it rises whenever a file may be read otherwise than before.
const ReaderVersion = importers.ReaderVersion
