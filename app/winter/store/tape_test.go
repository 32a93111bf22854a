package store

import (
	"io"
	"maps"
	"math/rand/v2"
	"os"
	"slices"

	"github.com/ncruces/go-sqlite3"
	"github.com/ncruces/go-sqlite3/vfs"
)

// op is one change on the tape.
type op struct {
	kind byte // 'c' create, 'w' write, 't' truncate, 's' sync, 'd' delete
	name string
	node int
	at   int64  // of a write; the length of a truncation
	data []byte // of a write
	dir  bool   // the folder is synced with it
}

// tape is a file system in memory that notes what is done to it. One connection works on it.
type tape struct {
	ops   []op
	names map[string]*reel
	nodes int
	start map[string][]byte // what was there before
}

// reel is an open file of a tape.
type reel struct {
	on      *tape
	name    string
	node    int
	data    []byte
	syncDir bool
	lock    vfs.LockLevel
}

func (t *tape) Open(name string, flags vfs.OpenFlag) (vfs.File, vfs.OpenFlag, error) {
	if r := t.names[name]; r != nil && name != "" {
		return r, flags, nil
	}
	r := &reel{on: t, name: name, node: t.nodes}
	t.nodes++
	if data, err := os.ReadFile(name); err == nil {
		r.data, t.start[name] = data, slices.Clone(data)
	} else if flags&vfs.OPEN_CREATE == 0 {
		return nil, flags, sqlite3.CANTOPEN
	}
	t.names[name] = r
	t.ops = append(t.ops, op{kind: 'c', name: name, node: r.node})
	r.syncDir = flags&vfs.OPEN_MAIN_JOURNAL != 0 && flags&vfs.OPEN_CREATE != 0
	return r, flags, nil
}

func (t *tape) Delete(name string, syncDir bool) error {
	if t.names[name] == nil {
		return sqlite3.IOERR_DELETE_NOENT
	}
	delete(t.names, name)
	t.ops = append(t.ops, op{kind: 'd', name: name, dir: syncDir})
	return nil
}

func (t *tape) Access(name string, _ vfs.AccessFlag) (bool, error) { return t.names[name] != nil, nil }
func (t *tape) FullPathname(name string) (string, error)           { return name, nil }
func (r *reel) Close() error                                       { return nil }

func (r *reel) ReadAt(p []byte, at int64) (int, error) {
	if at >= int64(len(r.data)) {
		return 0, io.EOF
	}
	n := copy(p, r.data[at:])
	if n < len(p) {
		return n, io.EOF
	}
	return n, nil
}

func (r *reel) WriteAt(p []byte, at int64) (int, error) {
	r.data = patched(r.data, at, p)
	r.on.ops = append(r.on.ops, op{kind: 'w', node: r.node, at: at, data: slices.Clone(p)})
	return len(p), nil
}

func (r *reel) Truncate(size int64) error {
	r.data = cut(r.data, size)
	r.on.ops = append(r.on.ops, op{kind: 't', node: r.node, at: size})
	return nil
}

// Sync also syncs the folder, the first time for a journal just made: as the machine's own does.
func (r *reel) Sync(vfs.SyncFlag) error {
	r.on.ops = append(r.on.ops, op{kind: 's', node: r.node, dir: r.syncDir})
	r.syncDir = false
	return nil
}

func (r *reel) Size() (int64, error)             { return int64(len(r.data)), nil }
func (r *reel) Lock(lock vfs.LockLevel) error    { r.lock = max(r.lock, lock); return nil }
func (r *reel) Unlock(lock vfs.LockLevel) error  { r.lock = min(r.lock, lock); return nil }
func (r *reel) CheckReservedLock() (bool, error) { return r.lock >= vfs.LOCK_RESERVED, nil }
func (r *reel) SectorSize() int                  { return 4096 }

func (r *reel) DeviceCharacteristics() vfs.DeviceCharacteristic {
	return vfs.IOCAP_SUBPAGE_READ | vfs.IOCAP_POWERSAFE_OVERWRITE
}

// patched is data with bytes written over it, longer where need be.
func patched(data []byte, at int64, p []byte) []byte {
	if end := at + int64(len(p)); end > int64(len(data)) {
		data = append(data, make([]byte, end-int64(len(data)))...)
	}
	copy(data[at:], p)
	return data
}

func cut(data []byte, size int64) []byte {
	if size <= int64(len(data)) {
		return data[:size]
	}
	return append(data, make([]byte, size-int64(len(data)))...)
}

// dice decide what of the unsynced survives: all shares from nothing to everything occur.
type dice struct {
	rnd   *rand.Rand
	share float64
}

func throw(seed, k int) dice {
	rnd := rand.New(rand.NewPCG(uint64(seed), uint64(k)))
	return dice{rnd, []float64{0, 1, 0.5, rnd.Float64()}[rnd.IntN(4)]}
}

func (d dice) yes() bool { return d.rnd.Float64() < d.share }

// disk is what the files hold when the power goes after k changes.
func (t *tape) disk(k int, d dice) map[string][]byte {
	now, durable := map[string]int{}, map[string]int{}
	synced, pending := map[int][]byte{}, map[int][]op{}
	for _, o := range t.ops[:k] {
		switch o.kind {
		case 'c':
			now[o.name] = o.node
			if data, was := t.start[o.name]; was {
				durable[o.name], synced[o.node] = o.node, slices.Clone(data)
			}
		case 'd':
			delete(now, o.name)
		case 's':
			synced[o.node] = all(synced[o.node], pending[o.node])
			pending[o.node] = nil
		default:
			pending[o.node] = append(pending[o.node], o)
		}
		if o.dir {
			durable = maps.Clone(now)
		}
	}
	out := map[string][]byte{}
	for _, name := range slices.Sorted(maps.Keys(union(now, durable))) {
		node, there := durable[name]
		if d.yes() {
			node, there = now[name], mapsHas(now, name)
		}
		if there {
			out[name] = torn(slices.Clone(synced[node]), pending[node], d)
		}
	}
	return out
}

func mapsHas(m map[string]int, name string) bool { _, is := m[name]; return is }

func union(a, b map[string]int) map[string]int {
	out := maps.Clone(a)
	maps.Copy(out, b)
	return out
}

// all is data after every pending change.
func all(data []byte, pending []op) []byte {
	for _, o := range pending {
		if o.kind == 't' {
			data = cut(data, o.at)
		} else {
			data = patched(data, o.at, o.data)
		}
	}
	return data
}

// torn is data after some of the pending changes, sector by sector. Where a file grew over a sector that did
// not come through there is noise, as of blocks given to a file before they were written.
func torn(data []byte, pending []op, d dice) []byte {
	for _, o := range pending {
		if o.kind == 't' {
			if d.yes() {
				data = cut(data, o.at)
			}
			continue
		}
		for at := o.at; at < o.at+int64(len(o.data)); {
			end := min((at/512+1)*512, o.at+int64(len(o.data)))
			if d.yes() {
				for int64(len(data)) < at {
					data = append(data, byte(d.rnd.Uint32()))
				}
				data = patched(data, at, o.data[at-o.at:end-o.at])
			}
			at = end
		}
	}
	return data
}
