// Package smallest finds the smallest change that meets a set of linear
// conditions, exactly, in steps that people really take.
//
// A [Problem] has slots (how much of each drink and food), each with a list of
// allowed values and a home value it is moved away from at a cost, and rows,
// each a sum of the slots that may not pass a limit. [Problem.Solve] returns
// allowed values that meet every row at the least total cost; among those the
// fewest slots moved. [Problem.Nearest] lets one row go and returns the values
// that miss it by least, counted in grains, and among those the smallest change.
//
// The method is branch and bound (Land and Doig 1960): the allowed values of a
// slot are first taken as everything between the lowest and the highest, the
// linear program that is left is solved by the dual simplex method with
// bounds on the variables (Lemke 1954; Wagner 1958), and where its answer
// lies between two allowed values the search splits there. A branch is left only when its bound
// shows that nothing in it is better, so the answer is proved; [Answer.Proved]
// is false only if the limit of [MaxNodes] was met.
package smallest
