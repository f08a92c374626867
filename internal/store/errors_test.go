package store

import (
	"context"
	"errors"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"slices"
	"strings"
	"syscall"
	"testing"

	"gorm.io/gorm"

	"ebbwell/internal/record"
)

// TestCodesIsTheWholeSet: every code that is declared is in the list.
func TestCodesIsTheWholeSet(t *testing.T) {
	file := got(parser.ParseFile(token.NewFileSet(), "errors.go", nil, 0))(t)
	var declared []string
	ast.Inspect(file, func(n ast.Node) bool {
		if spec, ok := n.(*ast.ValueSpec); ok && len(spec.Values) == 1 && strings.HasPrefix(spec.Names[0].Name, "Code") {
			declared = append(declared, strings.Trim(spec.Values[0].(*ast.BasicLit).Value, `"`))
		}
		return true
	})
	var listed []string
	for _, code := range Codes() {
		listed = append(listed, string(code))
	}
	if !slices.Equal(declared, listed) {
		t.Errorf("declared %q, listed %q", declared, listed)
	}
}

// TestErrors: the kind of an error survives being wrapped; numbers and errors of
// the system fall into the closed set; the errors of a context stay their own.
func TestErrors(t *testing.T) {
	ref := record.Ref{Kind: record.KindTest, ID: "x"}
	own := &Error{Code: CodeConflict, Doing: "save", Field: "note", Path: "/data", Err: errors.New("newer"), Ref: ref}
	if text := own.Error(); text != `save x field note "/data": conflict: newer` {
		t.Errorf("reads %s", text)
	}
	for name, tt := range map[string]struct {
		err  error
		want Code
	}{
		"own, wrapped": {fmt.Errorf("close: %w", own), CodeConflict}, "no space": {syscall.ENOSPC, CodeNoSpace},
		"permission": {&fs.PathError{Op: "open", Err: fs.ErrPermission}, CodeReadOnly}, "read-only disk": {syscall.EROFS, CodeReadOnly},
		"a link": {gorm.ErrForeignKeyViolated, CodeInvalid}, "twice": {gorm.ErrDuplicatedKey, CodeInvalid}, "none": {gorm.ErrRecordNotFound, CodeNotFound},
		"anything": {errors.New("odd"), CodeDisk}, "cancelled": {context.Canceled, ""}, "too late": {fmt.Errorf("x: %w", context.DeadlineExceeded), ""}, "nothing": {nil, ""},
	} {
		t.Run(name, func(t *testing.T) {
			err := fail(tt.err, "save")
			if CodeOf(err) != tt.want || !errors.Is(err, tt.err) {
				t.Errorf("got %v with code %q, want %q", err, CodeOf(err), tt.want)
			}
		})
	}
	for number, want := range map[int]Code{
		13: CodeNoSpace, 10 | 19<<8: CodeNoSpace, 8: CodeReadOnly, 8 | 1<<8: CodeReadOnly, 3: CodeReadOnly, 11: CodeDamaged, 26: CodeDamaged,
		5: CodeInUse, 6: CodeInUse, 19 | 3<<8: CodeInvalid, 18: CodeInvalid, 10: CodeDisk, 14: CodeDisk,
	} {
		if code := codeOfNumber(number); code != want {
			t.Errorf("result code %d is %s, want %s", number, code, want)
		}
	}
}
