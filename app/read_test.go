package app

import (
	"errors"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
	"ebbwell/internal/handout/pdfread"
)

// inSight lists the texts below an object that can be seen, in their order.
func inSight(o fyne.CanvasObject) []string {
	if o == nil || !o.Visible() {
		return nil
	}
	var list []string
	switch o := o.(type) {
	case interface{ Text() string }:
		list = append(list, o.Text())
	case interface{ Text() (string, string) }:
		title, sentence := o.Text()
		list = append(list, title, sentence)
	case *look.Table:
		for i := range o.Rows() {
			list = append(list, strings.Join(o.Row(i), " | "))
		}
	}
	switch o := o.(type) {
	case *fyne.Container:
		for _, c := range o.Objects {
			list = append(list, inSight(c)...)
		}
	case interface{ Parts() []fyne.CanvasObject }:
		for _, c := range o.Parts() {
			list = append(list, inSight(c)...)
		}
	}
	return list
}

// printed is the running text of a PDF file, with ordinary spaces.
func printed(t *testing.T, file string) string {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	texts, err := pdfread.Texts(data)
	if err != nil {
		t.Fatal(err)
	}
	return strings.ReplaceAll(strings.Join(texts, " "), "\u00a0", " ")
}

// workedOut is what a sum comes to that stands on the screen, its units left out.
func workedOut(sum string) (float64, error) {
	sum = strings.NewReplacer("\u00a0", " ", "×", "*", "−", "-", "÷", "/").Replace(sum)
	sum = regexp.MustCompile(`(\d) (?:[A-Za-zµ%°]+(?:/[A-Za-z]+)*)`).ReplaceAllString(sum, "$1")
	e, err := parser.ParseExpr(sum)
	if err != nil {
		return 0, fmt.Errorf("read %q: %w", sum, err)
	}
	return arithmetic(e)
}

var errNoSum = errors.New("not a sum")

func arithmetic(e ast.Expr) (float64, error) {
	switch e := e.(type) {
	case *ast.ParenExpr:
		return arithmetic(e.X)
	case *ast.BasicLit:
		return strconv.ParseFloat(e.Value, 64)
	case *ast.UnaryExpr:
		x, err := arithmetic(e.X)
		return -x, err
	case *ast.BinaryExpr:
		x, err := arithmetic(e.X)
		y, err2 := arithmetic(e.Y)
		return map[token.Token]float64{token.ADD: x + y, token.SUB: x - y, token.MUL: x * y, token.QUO: x / y}[e.Op], errors.Join(err, err2)
	}
	return 0, fmt.Errorf("%T: %w", e, errNoSum)
}
