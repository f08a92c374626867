package field

import "strconv"

// PartName names a control in the i-th line of a list, which is counted from 1:
// "profile.consent.2.given".
func PartName(list string, i int, what string) string {
	return list + "." + strconv.Itoa(i+1) + "." + what
}
