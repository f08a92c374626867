package trip

import (
	"context"
	"fmt"
	"slices"

	"ebbwell/app/kit/picture"
	"ebbwell/app/kit/saveto"
	"ebbwell/internal/handout"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/record"
)

// printTo writes pages of a size into a folder, a file each, and keeps those of
// athletes with the records. It returns the files, also when it was stopped between two,
// and the letters of the pages that cannot be printed. No file that is there is written
// over.
func (v *View) printTo(ctx context.Context, folder string, size paper.Size, pages []sheetOut) (files, letters []string, err error) {
	return eachLaid(ctx, size, pages, func(p sheetOut, doc paper.Document) ([]string, error) {
		pdf, err := doc.PDF(v.desk.Now())
		if err != nil {
			return nil, err
		}
		path := saveto.Free(folder, saveto.FileName(p.name, ".pdf"))
		if p.athlete == "" { // prints are kept with an athlete
			err = v.desk.Store.WriteFile(ctx, path, pdf, p.about...)
		} else {
			_, err = v.desk.Store.HandOut(ctx, record.Print{
				AthleteID: p.athlete, Kind: record.KindTrip, Record: p.trip, Page: pageTrip, Language: p.words.Language().String(), Bytes: pdf,
			}, path)
		}
		if err != nil {
			return nil, fmt.Errorf("write the page: %w", err)
		}
		return []string{path}, nil
	})
}

// drawTo writes the pages as pictures, each side a file of its own, and returns what
// printTo does. A picture is for a message: it is not kept with the records.
func (v *View) drawTo(ctx context.Context, folder string, size paper.Size, pages []sheetOut) (files, letters []string, err error) {
	return eachLaid(ctx, size, pages, func(p sheetOut, doc paper.Document) ([]string, error) {
		written, err := picture.WritePages(ctx, v.desk, saveto.Free(folder, saveto.FileName(p.name, ".png")), doc, p.about)
		if err != nil {
			return written, fmt.Errorf("write the picture of a page: %w", err)
		}
		return written, nil
	})
}

// eachLaid lays pages out one after the other and writes each; it returns all files that
// were written and the letters that cannot be printed.
func eachLaid(ctx context.Context, size paper.Size, pages []sheetOut, write func(p sheetOut, doc paper.Document) ([]string, error)) (files, letters []string, err error) {
	for _, p := range pages {
		if err := ctx.Err(); err != nil {
			return files, letters, err
		}
		doc, err := p.laid(size)
		if err != nil {
			return files, letters, err
		}
		letters = joined(letters, doc.Lacks)
		written, err := write(p, doc)
		files = append(files, written...)
		if err != nil {
			return files, letters, err
		}
	}
	return files, letters, nil
}

// laid is the page as it is laid out on a size of sheet.
func (p sheetOut) laid(size paper.Size) (paper.Document, error) {
	press, err := handout.NewPress(p.words, size)
	if err != nil {
		return paper.Document{}, err
	}
	return press.TripPage(p.page), nil
}

// joined are letters with those of others that are not among them.
func joined(list, more []string) []string {
	for _, letter := range more {
		if !slices.Contains(list, letter) {
			list = append(list, letter)
		}
	}
	return list
}
