package plan

import (
	"errors"
	"fmt"

	"ebbwell/internal/evidence"
)

// TennisSet is the games of one set.
type TennisSet struct{ Won, Lost int }

// ErrScore means: a set cannot end like that.
var ErrScore = errors.New("not the score of a set")

// mostGames bounds a set: advantage sets have been long, none this long.
const mostGames = 200

// TennisChances places the rests of a match of a length in min, every game
// taken as equally long. A rest of 90 s follows games 3, 5, 7 … of a set, none
// after the first game, none in a tie-break and none after the last game of
// the set, which a set break of 120 s follows, but for the last set (rules of
// tennis): 6-4 6-4 is nine chances.
func TennisChances(sets []TennisSet, minutes float64) ([]Chance, error) {
	games := 0
	for i, s := range sets {
		if s.Won < 0 || s.Lost < 0 || s.Won+s.Lost < 1 || s.Won+s.Lost > mostGames {
			return nil, fmt.Errorf("set %d ends %d-%d: %w", i+1, s.Won, s.Lost, ErrScore)
		}
		games += s.Won + s.Lost
	}
	if !(minutes > 0) {
		return nil, nil
	}
	var list []Chance
	played := 0
	for i, s := range sets {
		n := s.Won + s.Lost
		for g := int(evidence.TennisFirstRest); g < n; g += 2 {
			list = append(list, tennisRest("changeover", evidence.TennisRest, minutes, played+g, games))
		}
		played += n
		if i < len(sets)-1 {
			list = append(list, tennisRest("set-break", evidence.TennisSetBreak, minutes, played, games))
		}
	}
	return list, nil
}

func tennisRest(code string, seconds, minutes float64, game, games int) Chance {
	return Chance{Code: code, Minute: minutes * float64(game) / float64(games), Seconds: seconds, CanEat: true}
}
