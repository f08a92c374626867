package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io/fs"
	"net/url"
	"path/filepath"
	"strings"
	"syscall"

	"github.com/glebarez/go-sqlite"
	dialector "github.com/glebarez/sqlite"
	"gorm.io/gorm"
	"gorm.io/gorm/logger"
)

// Everything that only SQLite knows stands in this file: how a file is
// opened, checked, copied whole and wiped, and what its error numbers mean.
// Another database needs these functions and nothing else.

// fileName is the database in a data folder. SQLite puts two more beside it
// while it is open, with -wal and -shm behind the name.
const fileName = "ebbwell.db"

// besides are the endings of the files that belong to one database.
func besides() []string { return append(openFiles(), sumEnd) }

// openFiles are the endings of those the engine keeps while a database is open.
func openFiles() []string { return []string{"", "-wal", "-shm"} }

// logWaits reports whether something waits in the log beside a database.
func logWaits(path string) bool {
	size, err := sizeOf(path + "-wal")
	return err == nil && size > 0
}

// use says what a connection is for.
type use int

const (
	forWriting  use = iota // one connection, each transaction takes the write lock at once
	forReading             // several connections that cannot write
	forChanging            // foreign keys off, so that a migration may rebuild a table
	forMaking              // a file that is made and then moved into place
	forCopying             // copying the whole file, whatever state it is in
	forLooking             // a folder that cannot be written
)

// connect opens the file at path. Pragmas are part of the name, so that every
// connection of the pool has them.
func connect(path string, u use) (*gorm.DB, error) {
	if err := shortEnough(path); err != nil {
		return nil, err
	}
	pool, err := sql.Open(dialector.DriverName, nameOf(path, u))
	if err != nil {
		return nil, fmt.Errorf("open %q: %w", path, err)
	}
	pool.SetMaxOpenConns(1)
	if u == forReading {
		pool.SetMaxOpenConns(4)
		pool.SetMaxIdleConns(4)
	}
	db, err := gorm.Open(&dialector.Dialector{Conn: pool}, &gorm.Config{
		Logger: logger.Discard, SkipDefaultTransaction: true, TranslateError: true,
	})
	if err != nil {
		return nil, errors.Join(err, pool.Close())
	}
	return db, nil
}

// mostPath is the longest path of a database the engine opens, in bytes: 512 with the
// name of a journal behind it (MAX_PATHNAME of its os_unix.c).
const mostPath = 504

// shortEnough returns an error with CodeLongPath for a path that the engine does not
// take: it would call it a file that cannot be opened.
func shortEnough(path string) error {
	if len(path) <= mostPath {
		return nil
	}
	return &Error{Code: CodeLongPath, Doing: "open database", Path: path, Err: fmt.Errorf("the path has %d bytes, at most %d are taken", len(path), mostPath)}
}

// nameOf writes the data source name.
func nameOf(path string, u use) string {
	slashed := filepath.ToSlash(path)
	if !strings.HasPrefix(slashed, "/") {
		slashed = "/" + slashed // a drive letter
	}
	pragmas := []string{"foreign_keys(1)", "busy_timeout(5000)", "synchronous(FULL)", "temp_store(MEMORY)"}
	more := url.Values{"mode": {"rw"}} // a file that is gone is not made anew
	switch u {
	case forWriting:
		pragmas = append(pragmas, "journal_mode(WAL)", "secure_delete(1)")
		more.Set("_txlock", "immediate")
	case forReading:
		pragmas = append(pragmas, "query_only(1)")
	case forChanging:
		pragmas[0] = "foreign_keys(0)"
		pragmas = append(pragmas, "journal_mode(WAL)")
		more.Set("_txlock", "immediate")
	case forMaking:
		pragmas = append(pragmas, "journal_mode(DELETE)")
	case forLooking:
		more.Set("mode", "ro")
		if !logWaits(path) {
			more.Set("immutable", "1") // nothing waits beside the file
		}
	}
	more["_pragma"] = pragmas
	return (&url.URL{Scheme: "file", Path: slashed, RawQuery: more.Encode()}).String()
}

// engineOf names the database engine and its version: "SQLite 3.53.3".
func engineOf(db *gorm.DB) (string, error) {
	var version string
	if err := db.Raw("SELECT sqlite_version()").Row().Scan(&version); err != nil {
		return "", fail(err, "ask for the version of the engine")
	}
	return "SQLite " + version, nil
}

// disconnect closes all connections.
func disconnect(db *gorm.DB) error {
	if db == nil {
		return nil
	}
	pool, err := db.DB()
	if err != nil {
		return fmt.Errorf("close database: %w", err)
	}
	if err := pool.Close(); err != nil {
		return fmt.Errorf("close database: %w", err)
	}
	return nil
}

// check reads the whole file and returns an error with CodeDamaged when it is
// not as it should be.
func check(ctx context.Context, db *gorm.DB) error {
	var lines []string
	err := db.WithContext(ctx).Raw("PRAGMA quick_check(5)").Scan(&lines).Error
	if err != nil && ctx.Err() != nil {
		err = ctx.Err()
	}
	if err != nil {
		return fail(err, "check database")
	}
	if len(lines) != 1 || lines[0] != "ok" {
		return &Error{Code: CodeDamaged, Doing: "check database", Err: errors.New(strings.Join(lines, "; "))}
	}
	return nil
}

// checkLinks returns an error when a foreign key points nowhere.
func checkLinks(db *gorm.DB) error {
	var broken []struct{ Table, Parent string }
	if err := db.Raw("PRAGMA foreign_key_check").Scan(&broken).Error; err != nil {
		return fail(err, "check links")
	}
	if len(broken) > 0 {
		return &Error{Code: CodeDamaged, Doing: "check links",
			Err: fmt.Errorf("%d links from %s to %s lead nowhere", len(broken), broken[0].Table, broken[0].Parent)}
	}
	return nil
}

// copyInto writes a compact copy of the whole database into an empty file.
func copyInto(ctx context.Context, db *gorm.DB, file string) error {
	if err := shortEnough(file); err != nil {
		return err
	}
	err := db.WithContext(ctx).Exec("VACUUM INTO ?", file).Error
	if err != nil && ctx.Err() != nil {
		err = ctx.Err() // not the driver's word for it
	}
	return fail(err, "copy database")
}

// wipe rewrites the file without what was deleted, and empties the log.
func wipe(db *gorm.DB) error {
	if err := rewrite(db); err != nil {
		return err
	}
	return emptyLog(db)
}

// rewrite writes the file anew without what was deleted.
func rewrite(db *gorm.DB) error { return fail(db.Exec("VACUUM").Error, "rewrite database") }

// emptyLog brings everything from the log into the file and empties the log.
func emptyLog(db *gorm.DB) error {
	var busy, inLog, moved int
	if err := db.Raw("PRAGMA wal_checkpoint(TRUNCATE)").Row().Scan(&busy, &inLog, &moved); err != nil {
		return fail(err, "empty the log")
	}
	if busy != 0 {
		return &Error{Code: CodeDisk, Doing: "empty the log", Err: errors.New("somebody is still reading")}
	}
	return nil
}

// rollBack ends a transaction that a failed commit may have left open.
func rollBack(db *gorm.DB) { _ = db.Exec("ROLLBACK").Error }

// codeOf says which of the program's kinds of trouble an error of the
// database or of the system is. The numbers are those of
// https://www.sqlite.org/rescode.html; the low byte is the primary code.
func codeOf(err error) Code {
	var e *sqlite.Error
	switch {
	case errors.As(err, &e):
		const general = 1 // SQLITE_ERROR: what only its words tell
		if e.Code() == general && strings.Contains(e.Error(), "unsupported file format") {
			return CodeDamaged
		}
		return codeOfNumber(e.Code())
	case errors.Is(err, gorm.ErrForeignKeyViolated), errors.Is(err, gorm.ErrDuplicatedKey):
		return CodeInvalid
	case errors.Is(err, gorm.ErrRecordNotFound):
		return CodeNotFound
	case errors.Is(err, syscall.ENOSPC):
		return CodeNoSpace
	case errors.Is(err, fs.ErrPermission), errors.Is(err, syscall.EROFS):
		return CodeReadOnly
	}
	return CodeDisk
}

// codeOfNumber turns a result code of SQLite into one of ours.
func codeOfNumber(number int) Code {
	const shmSize = 10 | 19<<8 // SQLITE_IOERR_SHMSIZE: no room for the index of the log
	switch {
	case number == shmSize, number&0xff == 13: // SQLITE_FULL
		return CodeNoSpace
	case number&0xff == 8, number&0xff == 3: // SQLITE_READONLY, SQLITE_PERM
		return CodeReadOnly
	case number&0xff == 11, number&0xff == 26: // SQLITE_CORRUPT, SQLITE_NOTADB
		return CodeDamaged
	case number&0xff == 5, number&0xff == 6: // SQLITE_BUSY, SQLITE_LOCKED
		return CodeInUse
	case number&0xff == 19, number&0xff == 18: // SQLITE_CONSTRAINT, SQLITE_TOOBIG
		return CodeInvalid
	}
	return CodeDisk
}
