package store

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"sync"
	"testing"

	"gorm.io/gorm"
	"gorm.io/gorm/schema"

	"ebbwell/internal/record"
	"ebbwell/internal/store/v1"
	"ebbwell/internal/store/v2"
	"ebbwell/internal/store/v3"
	"ebbwell/internal/store/v4"
	"ebbwell/internal/store/v5"
	"ebbwell/internal/store/v6"
)

// recordTypes lists every type of package record that has a table.
func recordTypes(t testing.TB) []reflect.Type {
	t.Helper()
	types := []reflect.Type{
		reflect.TypeFor[record.Change](), reflect.TypeFor[record.RawText](), reflect.TypeFor[record.Frozen](), reflect.TypeFor[record.Print](),
		reflect.TypeFor[record.Import](), reflect.TypeFor[record.ImportTemplate](), reflect.TypeFor[record.Merge](), reflect.TypeFor[record.Question](),
		reflect.TypeFor[record.SavedFile](), reflect.TypeFor[record.Fingerprint](),
	}
	var walk func(sh *shape)
	walk = func(sh *shape) {
		types = append(types, sh.model)
		for _, l := range sh.lists {
			walk(l.of)
		}
	}
	for _, sh := range got(newShapes())(t) {
		walk(sh)
	}
	return types
}

// parsed reads a type as GORM does.
func parsed(t testing.TB, model any) *schema.Schema {
	t.Helper()
	return got(schema.Parse(model, &sync.Map{}, schema.NamingStrategy{}))(t)
}

// TestFrozenShape: the tables of the newest version have the columns of the
// records and no others, so that a field added to a record, or taken away, without
// a version of its own fails here.
func TestFrozenShape(t *testing.T) {
	s := open(t, t.TempDir(), newClock())
	tables := []string{versionTable}
	for _, model := range recordTypes(t) {
		of := parsed(t, reflect.New(model).Interface())
		kept := columnsOf(t, s.files.reader, of.Table)
		wanted := slices.Clone(of.DBNames)
		slices.Sort(kept)
		slices.Sort(wanted)
		if !slices.Equal(kept, wanted) {
			t.Errorf("%s\nthe table has %q\nthe record   %q", model, kept, wanted)
		}
		tables = append(tables, of.Table)
	}
	there := got(s.files.reader.Migrator().GetTables())(t)
	slices.Sort(there)
	slices.Sort(tables)
	if !slices.Equal(there, tables) {
		t.Errorf("tables %q, want %q", there, tables)
	}
}

func columnsOf(t testing.TB, db *gorm.DB, table string) []string {
	t.Helper()
	var names []string
	for _, c := range got(db.Migrator().ColumnTypes(table))(t) {
		names = append(names, c.Name())
	}
	return names
}

// TestKeptShape: every kept file, brought up to date, has the columns, links
// and indexes that a new one has.
func TestKeptShape(t *testing.T) {
	want := parts(t, open(t, t.TempDir(), newClock()))
	if len(want) < 400 {
		t.Fatalf("only %d parts were found: %q", len(want), want)
	}
	eachKept(t, func(t *testing.T, file string) {
		have := parts(t, open(t, copyKept(t, file), newClock()))
		if !slices.Equal(want, have) {
			only := func(some, others []string) []string {
				return slices.DeleteFunc(slices.Clone(some), func(x string) bool { return slices.Contains(others, x) })
			}
			t.Errorf("only a new file has %q, only the kept one %q", only(want, have), only(have, want))
		}
	})
}

// parts lists the columns, links and indexes of all tables, sorted.
func parts(t testing.TB, s *Store) []string {
	t.Helper()
	var list []string
	for _, question := range []string{
		"SELECT 'column ' || m.name || '.' || c.name || ' ' || c.type || ' ' || c.`notnull` || c.pk FROM sqlite_master m, pragma_table_info(m.name) c WHERE m.type = 'table'",
		"SELECT 'link ' || m.name || '.' || k.`from` || ' ' || k.`table` || '.' || k.`to` FROM sqlite_master m, pragma_foreign_key_list(m.name) k",
		"SELECT 'index ' || m.name || ' ' || i.name || ' ' || i.`unique` || ' ' || c.name FROM sqlite_master m, pragma_index_list(m.name) i, pragma_index_info(i.name) c",
	} {
		var some []string
		must(t, s.files.reader.Raw(question).Scan(&some).Error)
		if len(some) == 0 {
			t.Fatalf("nothing answers %q", question)
		}
		list = append(list, some...)
	}
	slices.Sort(list)
	return list
}

// TestLinks: every link has a foreign key and an index, but for those that
// cannot have one.
func TestLinks(t *testing.T) {
	s := open(t, t.TempDir(), newClock())
	without := map[string]bool{"plans.option_id": true, "bottles.product_id": true, "foods_eaten.product_id": true,
		"items.product_id": true, "supplies.product_id": true, "athletes.habit_drink_id": true, "athletes.habit_food_id": true, "bottle_kinds.product_id": true,
		"athletes.import_id": true, "tests.import_id": true,
		"questions.merge_id": true, "questions.athlete_id": true, "saved_files.athlete_id": true}
	for _, table := range got(s.files.reader.Migrator().GetTables())(t) {
		var columns, keys, indexes []string
		must(t, s.files.reader.Raw("SELECT name FROM pragma_table_info(?)", table).Scan(&columns).Error)
		must(t, s.files.reader.Raw("SELECT `from` FROM pragma_foreign_key_list(?)", table).Scan(&keys).Error)
		must(t, s.files.reader.Raw("SELECT ii.name FROM pragma_index_list(?) il, pragma_index_info(il.name) ii", table).Scan(&indexes).Error)
		for _, c := range columns {
			if !strings.HasSuffix(c, "_id") || without[table+"."+c] {
				continue
			}
			if !slices.Contains(keys, c) || !slices.Contains(indexes, c) {
				t.Errorf("%s.%s has no foreign key or no index", table, c)
			}
		}
	}
}

// TestPortableColumns: the frozen types leave the column types to GORM, which
// knows what they are called in each database.
func TestPortableColumns(t *testing.T) {
	portable := []schema.DataType{schema.Bool, schema.Int, schema.Float, schema.String, schema.Time, schema.Bytes}
	columns := 0
	byVersion := [][]any{
		v1.Tables(), v2.Tables(), slices.Concat(v3.Columns(), v3.Tables()), v4.Columns(), slices.Concat(v5.Columns(), v5.Tables()),
		slices.Concat(v6.Columns(), v6.Tables()),
	}
	if len(byVersion) != len(versions()) {
		t.Errorf("the types of %d versions are looked at, there are %d", len(byVersion), len(versions()))
	}
	for _, table := range slices.Concat(byVersion...) {
		of := parsed(t, table)
		for _, f := range of.Fields {
			if f.DBName == "" {
				continue // a link in Go's terms; its column is a field of its own
			}
			columns++
			if f.TagSettings["TYPE"] != "" || !slices.Contains(portable, f.DataType) {
				t.Errorf("%s.%s has type %q", of.Table, f.DBName, f.DataType)
			}
			if f.AutoIncrement {
				t.Errorf("%s.%s counts by itself", of.Table, f.DBName)
			}
		}
	}
	if columns < 300 {
		t.Errorf("only %d columns were looked at", columns)
	}
}

// TestOneDialectFile: what only SQLite knows stands in one file.
func TestOneDialectFile(t *testing.T) {
	const dialectFile = "dialect.go"
	if list := dialectIn(t, dialectFile); len(list) < 8 {
		t.Fatalf("only %q were found in the dialect's own file", list)
	}
	for _, path := range append(got(filepath.Glob("*.go"))(t), got(filepath.Glob("v*/*.go"))(t)...) {
		if strings.HasSuffix(path, "_test.go") || path == dialectFile {
			continue
		}
		for _, text := range dialectIn(t, path) {
			t.Errorf("%s speaks to SQLite: %s", path, text)
		}
	}
}

// dialectIn lists the imports and the statements of a file that only SQLite
// understands.
func dialectIn(t testing.TB, path string) (list []string) {
	t.Helper()
	words := []string{"sqlite", "pragma", "vacuum", "rowid", "strftime", "julianday", "ifnull", "glob ", "json_", "wal", "insert or ", "attach "}
	file := got(parser.ParseFile(token.NewFileSet(), path, got(os.ReadFile(path))(t), 0))(t)
	ast.Inspect(file, func(n ast.Node) bool {
		literal, ok := n.(*ast.BasicLit)
		if !ok || literal.Kind != token.STRING {
			return true
		}
		text := strings.ToLower(literal.Value)
		if slices.ContainsFunc(words, func(w string) bool { return strings.Contains(text, w) }) {
			list = append(list, literal.Value)
		}
		return true
	})
	return list
}
