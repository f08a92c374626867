package store

import (
	"context"
	"errors"
	"fmt"

	"ebbwell/internal/record"
)

// Code says what kind of trouble an [Error] is; the set is closed, and the
// program has words for each: what happened, what is kept, what to do.
type Code string

// The kinds of trouble.
const (
	// CodeInUse: another running program has this data folder open.
	CodeInUse Code = "in-use"
	// CodeReadOnly: the folder or the file cannot be written, or the store
	// was opened for reading only.
	CodeReadOnly Code = "read-only"
	// CodeNoSpace: the disk (or the quota) is full; nothing of the call was kept.
	CodeNoSpace Code = "no-space"
	// CodeDamaged: the file is not a whole database of this program;
	// [Error.Snapshots] lists what can be restored.
	CodeDamaged Code = "damaged"
	// CodeAltered: a byte of the file is not as this program wrote it, though it is a
	// whole database; [Options.AsItIs] opens it all the same.
	CodeAltered Code = "altered"
	// CodeNewer: the file was written by a newer version of this program.
	CodeNewer Code = "newer"
	// CodeOlder: the file is of an older version and was opened for reading
	// only, so that it could not be brought up to date.
	CodeOlder Code = "older"
	// CodeDisk: reading or writing the disk failed for another reason.
	CodeDisk Code = "disk"
	// CodeLongPath: the path of a database is longer than the engine takes.
	CodeLongPath Code = "long-path"
	// CodeMoved: another file took the place of the database while it was open;
	// a copy of what was open is set aside in the snapshots.
	CodeMoved Code = "moved"
	// CodeNotOpen: the store was closed, or could not be opened again.
	CodeNotOpen Code = "not-open"
	// CodeNotFound: there is no such record (any more).
	CodeNotFound Code = "not-found"
	// CodeDeleted: the record was deleted; it can be brought back.
	CodeDeleted Code = "deleted"
	// CodeConflict: what was to be saved is older than what is kept; load
	// again and repeat the change.
	CodeConflict Code = "conflict"
	// CodeClosed: a closed test or an agreed plan; reopen it with a reason.
	CodeClosed Code = "closed"
	// CodeNoReason: the call needs a reason and got none.
	CodeNoReason Code = "no-reason"
	// CodeInvalid: a value that cannot be kept, such as a number that is not
	// finite or a link to a record that is not there.
	CodeInvalid Code = "invalid"
)

// Codes lists the kinds of trouble, so that whoever words them can see that none
// is left out.
func Codes() []Code {
	return []Code{
		CodeInUse, CodeReadOnly, CodeNoSpace, CodeDamaged, CodeAltered, CodeNewer, CodeOlder, CodeDisk, CodeLongPath, CodeMoved, CodeNotOpen,
		CodeNotFound, CodeDeleted, CodeConflict, CodeClosed, CodeNoReason, CodeInvalid,
	}
}

// Error is what every call of this package returns when it fails, but for the
// errors of a context.
type Error struct {
	Code Code
	// Doing is what was being done, in lower case: "save test".
	Doing string
	// Ref is the record, where there is one.
	Ref record.Ref
	// Field is the path of the field in the record, where there is one.
	Field string
	// Path is the file or folder, where there is one.
	Path string
	// Snapshots can be restored; newest first, with CodeDamaged, CodeAltered and CodeNewer.
	Snapshots []Snapshot
	// Err is the cause; may be nil.
	Err error
}

// Error writes the error for a log; people read the words for its code.
func (e *Error) Error() string {
	text := e.Doing
	if e.Ref.ID != "" {
		text += fmt.Sprintf(" %s", e.Ref.ID)
	}
	if e.Field != "" {
		text += fmt.Sprintf(" field %s", e.Field)
	}
	if e.Path != "" {
		text += fmt.Sprintf(" %q", e.Path)
	}
	text += ": " + string(e.Code)
	if e.Err != nil {
		text += ": " + e.Err.Error()
	}
	return text
}

// Unwrap returns the cause.
func (e *Error) Unwrap() error { return e.Err }

// CodeOf returns the code of the first [Error] in a chain of errors; empty
// when there is none.
func CodeOf(err error) Code {
	var e *Error
	if errors.As(err, &e) {
		return e.Code
	}
	return ""
}

// fail turns any error into an [Error] that says what was being done. Errors
// that are one already, and those of a context, keep their kind.
func fail(err error, doing string) error {
	var own *Error
	switch {
	case err == nil:
		return nil
	case errors.As(err, &own):
		return err
	case errors.Is(err, context.Canceled), errors.Is(err, context.DeadlineExceeded):
		return fmt.Errorf("%s: %w", doing, err)
	}
	return &Error{Code: codeOf(err), Doing: doing, Err: err}
}

// about puts a record into the error, when it is one of ours and names none yet.
func about(err error, ref record.Ref) error {
	var own *Error
	if errors.As(err, &own) && own.Ref.ID == "" {
		own.Ref = ref
	}
	return err
}
