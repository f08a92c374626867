package pack

import (
	"encoding/json"
	"fmt"
	"strings"
)

// DesktopEntry is the file by which a Linux desktop lists the program
// (Desktop Entry Specification 1.4).
func DesktopEntry(a About) string {
	return strings.Join([]string{
		"[Desktop Entry]", "Type=Application", "Version=1.4", "Name=" + a.Name, "GenericName=Sweat test and drinking plan",
		"Comment=" + strings.ToUpper(a.Summary[:1]) + a.Summary[1:], "Exec=" + a.Command(), "Icon=" + a.Command(), "Terminal=false",
		"Categories=MedicalSoftware;Science;", "Keywords=hydration;sweat;sodium;carbohydrate;dietitian;", "StartupWMClass=" + a.Name, "",
	}, "\n")
}

// DebianNeeds are the Debian packages that the program opens when it starts.
// The linker knows of GL, Wayland and C only; X11's are opened by name.
func DebianNeeds() []string {
	return []string{
		"libc6 (>= 2.34)", "libgl1", "libegl1", "libwayland-client0", "libwayland-cursor0", "libwayland-egl1", "libxkbcommon0",
		"libx11-6", "libx11-xcb1", "libxcursor1", "libxext6", "libxi6", "libxinerama1", "libxrandr2", "libxrender1", "libxxf86vm1",
	}
}

// content is one file of a package, as the packaging tool wants it.
type content struct {
	Src  string `json:"src"`
	Dst  string `json:"dst"`
	Info *info  `json:"file_info,omitempty"`
}

// info is the mode of a file.
type info struct {
	Mode int `json:"mode"`
}

// Files are the paths of what goes into a Debian package.
type Files struct {
	Program, Desktop, Icon, Notices, Changes, Readme string
}

// NFPM is the description of a Debian package for the packaging tool nfpm:
// JSON, which is YAML too. arch is Go's name of the processor.
func NFPM(a About, arch string, f Files) (string, error) {
	const plain, program = 0o644, 0o755
	doc := "/usr/share/doc/" + a.Command() + "/"
	data, err := json.MarshalIndent(map[string]any{
		"name": a.Command(), "arch": arch, "platform": "linux", "version": a.Version, "version_schema": "none", "release": "1",
		"section": "science", "priority": "optional",
		"maintainer":  a.Name + " <" + a.Command() + "@localhost>",
		"description": strings.ToUpper(a.Summary[:1]) + a.Summary[1:] + "\n" + wrap(a.Long, descriptionWidth),
		"license":     a.Licence,
		"depends":     DebianNeeds(),
		"recommends":  []string{"libgl1-mesa-dri", "xdg-utils"},
		"contents": []content{
			{f.Program, "/usr/bin/" + a.Command(), &info{program}},
			{f.Desktop, "/usr/share/applications/" + a.Command() + ".desktop", &info{plain}},
			{f.Icon, "/usr/share/icons/hicolor/512x512/apps/" + a.Command() + ".png", &info{plain}},
			{f.Notices, doc + "copyright", &info{plain}},
			{f.Changes, doc + "changes.md", &info{plain}},
			{f.Readme, doc + "README.md", &info{plain}},
		},
	}, "", "  ")
	if err != nil {
		return "", fmt.Errorf("describe the Debian package: %w", err)
	}
	return string(data) + "\n", nil
}

// descriptionWidth is the longest line of a Debian description (Policy Manual 5.6.13 asks for under 80).
const descriptionWidth = 78

// wrap breaks a text between words so that no line of several words is longer than width.
func wrap(text string, width int) string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		if line != "" && len(line)+1+len(word) > width {
			lines, line = append(lines, line), ""
		}
		line = strings.TrimSpace(line + " " + word)
	}
	return strings.Join(append(lines, line), "\n")
}
