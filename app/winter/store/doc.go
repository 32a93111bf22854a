// Package store keeps a winter in one file, `.thawbook`: everything the keeper gave us, safe.
//
// The file is an SQLite 3 database (sqlite.org/fileformat2.html) with a rollback journal (journal_mode
// DELETE, synchronous EXTRA: FULL, and the folder synced when the journal goes), pages of 8 KiB, application id 0x54686177 ("Thaw") and the schema's version as
// user version. Its tables:
//
//	step(id, at, what, field, doc)     the history: after each edit the whole document, as JSON in a zstd frame
//	export(id, sha256, name, came, size, at)  one row per file the keeper gave us; name is unique and what loggers refer to
//	piece(id, export, n, data)         the bytes of exports: one zstd frame each, cut into pieces of at most 1 MiB
//	mark(name, value)                  head: the step that holds now; seen: what the last review said
//
// Exports are never changed and never deleted. Undo moves the head; an edit drops the steps beyond it and
// adds one. Nothing derived is the only copy of anything.
//
// A file is opened for writing only by the holder of the lock beside it (`.thawbook-lock`, while open), and
// only after it was found whole: a damaged file is never written to. What it holds can be carved out of it
// page by page (Rescue) into a new one.
//
// Files are data, never instructions: the schema must be ours to the letter, triggers and views are off,
// the schema is not trusted (sqlite.org/security.html), nothing can be attached, and this build of SQLite
// loads no extensions.
package store
