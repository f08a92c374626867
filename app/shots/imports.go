package shots

import (
	"context"
	"fmt"
	"os"
	"path/filepath"

	"ebbwell/app/kit/desk"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// spreadsheet is a file as a practice keeps it, with what cannot be read and what is
// odd in it.
const spreadsheet = "Name,Date of birth,Sex,Date,Start,Duration (min),Mass before (kg),Mass after (kg),Fluid intake,Urine (mL),Air temp (°C),Humidity (%),USG,Sweat Na (mmol/L) forearm,RPE,Sweat rate (L/h),Comments\n" +
	"Corin Ashvale,12/03/1998,F,14/05/2025,09:30,75,61.4,60.5,0.65,120,24,55,1.014,48,6,1.0,windy\n" +
	"Tobin Larkmere,30/11/1990,M,14/05/2025,09:30,75,78.2,78.9,1.9,0,24,55,1.009,61,6,1.1,\n" +
	"Pella Wrensdale,02/06/2010,F,15/05/2025,17:00,90,48.1,47.6,0.4,0,19,60,1.021,35,5,0.7,\n" +
	"Joren Hadlow,17/09/1985,M,15/05/2025,17:00,90,820,81.2,0.5,200,19,60,1.018,52,5,0.6,\n" +
	"Corin Ashvale,12/03/1998,F,31/02/2025,09:30,75,61.2,60.6,0.55,0,22,58,1.012,,6,,\n" +
	"Corin Ashvale,12/03/1998,F,14/05/2025,09:30,75,61.4,60.5,0.65,120,24,55,1.014,48,6,1.0,\n"

// withImports writes a spreadsheet beside the records of the invented practice, has one
// import in its past, and adds the places that show both.
func withImports(ctx context.Context, s *store.Store, others []shot) ([]shot, error) {
	path := filepath.Join(s.Dir(), "sweat tests 2025.csv")
	if err := os.WriteFile(path, []byte(spreadsheet), 0o600); err != nil {
		return nil, fmt.Errorf("write a spreadsheet: %w", err)
	}
	list, err := s.Imports(ctx)
	if err != nil {
		return nil, fmt.Errorf("look for imports: %w", err)
	}
	if len(list) == 0 {
		one, err := s.Import(ctx, store.Incoming{File: "athletes 2024.xlsx", Kind: record.ImportAthletes, Athletes: []record.Athlete{
			{Meta: record.Meta{ID: record.NewID()}, Name: "Tamsel Orrivane"}, {Meta: record.Meta{ID: record.NewID()}, Name: "Brisa Underleigh"},
		}})
		if err != nil {
			return nil, fmt.Errorf("import: %w", err)
		}
		list = append(list, one)
	}
	file := func(part string) desk.Place { return desk.Place{Screen: desk.Import, Part: path + part} }
	return append([]shot{
		{name: "import", place: desk.Place{Screen: desk.Import}}, {name: "import-columns", place: file("")}, {name: "import-faults", place: file("\nfaults")},
		{name: "import-twins", place: file("\ntwins")}, {name: "import-questions", place: file("\nquestions")}, {name: "import-done", place: desk.Place{Screen: desk.Import, Record: list[0].ID}},
	}, others...), nil
}
