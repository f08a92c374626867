// Package pack makes what a system's installer needs around a built program:
// the icon, the version resource and the manifest of a Windows program, the
// desktop entry and the description of a Debian package, and archives that are
// the same byte for byte whenever they are made from the same files.
//
// It builds nothing and starts nothing; cmd/dev does.
package pack

import "strings"

// About is what all packages say of the program.
type About struct {
	// Name is the program's, as people read it; the file's name is the same in lower case.
	Name string
	// Version is three numbers parted by dots.
	Version string
	// Summary is one line of at most 80 characters, without a full stop.
	Summary string
	// Long says in some sentences what the program is for.
	Long string
	// Licence names the licence of the program's parts in short form.
	Licence string
}

// Command is the name of the program's file, without an ending.
func (a About) Command() string { return strings.ToLower(a.Name) }

// Ebbwell is the description of this program in a version.
func Ebbwell(version string) About {
	return About{
		Name:    "Ebbwell",
		Version: version,
		Summary: "sweat tests in, drinking and fuelling plans out",
		Long: "For sport dietitians: turns a field sweat test into a sweat rate and a sodium loss with their ranges, " +
			"and into a drinking and fuelling plan with its page and card. Works offline; records stay on this computer.",
		Licence: "see notices.txt",
	}
}
