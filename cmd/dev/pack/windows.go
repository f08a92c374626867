package pack

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"strings"
	"text/template"
)

// iconSizes are the edges, in pixels, at which Windows shows a program's icon.
func iconSizes() []int { return []int{16, 24, 32, 48, 64, 256} }

// Icon turns a square PNG into a Windows icon (ICO) of several sizes, each kept
// as a PNG. It fails for a picture that is not square or smaller than the
// largest size.
func Icon(picture []byte) ([]byte, error) {
	from, err := png.Decode(bytes.NewReader(picture))
	if err != nil {
		return nil, fmt.Errorf("read the icon: %w", err)
	}
	size := from.Bounds().Dx()
	largest := iconSizes()[len(iconSizes())-1]
	if size != from.Bounds().Dy() || size < largest {
		return nil, fmt.Errorf("make a Windows icon: the picture is %v; it has to be square and at least %d wide", from.Bounds().Size(), largest)
	}
	var pictures [][]byte
	for _, edge := range iconSizes() {
		var out bytes.Buffer
		if err := png.Encode(&out, shrink(from, edge)); err != nil {
			return nil, fmt.Errorf("draw the icon at %d: %w", edge, err)
		}
		pictures = append(pictures, out.Bytes())
	}
	return iconFile(iconSizes(), pictures), nil
}

// iconFile writes the directory of an ICO file and the pictures after it.
func iconFile(sizes []int, pictures [][]byte) []byte {
	const header, entry = 6, 16
	var out []byte
	le := binary.LittleEndian
	out = le.AppendUint16(out, 0)
	out = le.AppendUint16(out, 1) // an icon, not a cursor
	out = le.AppendUint16(out, uint16(len(pictures)))
	offset := header + entry*len(pictures)
	for i, p := range pictures {
		edge := byte(sizes[i]) // 256 is written as 0
		out = append(out, edge, edge, 0, 0)
		out = le.AppendUint16(out, 1)  // planes
		out = le.AppendUint16(out, 32) // bits a pixel
		out = le.AppendUint32(out, uint32(len(p)))
		out = le.AppendUint32(out, uint32(offset))
		offset += len(p)
	}
	for _, p := range pictures {
		out = append(out, p...)
	}
	return out
}

// shrink draws a square picture smaller; each pixel is the mean of those it covers.
func shrink(from image.Image, edge int) image.Image {
	to := image.NewNRGBA(image.Rect(0, 0, edge, edge))
	size, at := from.Bounds().Dx(), from.Bounds().Min
	for y := range edge {
		for x := range edge {
			area := image.Rect(x*size/edge, y*size/edge, (x+1)*size/edge, (y+1)*size/edge).Add(at)
			to.Set(x, y, mean(from, area))
		}
	}
	return to
}

// mean is the mean colour of an area that is not empty.
func mean(from image.Image, area image.Rectangle) color.Color {
	var r, g, b, a uint64
	for y := area.Min.Y; y < area.Max.Y; y++ {
		for x := area.Min.X; x < area.Max.X; x++ {
			pr, pg, pb, pa := from.At(x, y).RGBA()
			r, g, b, a = r+uint64(pr), g+uint64(pg), b+uint64(pb), a+uint64(pa)
		}
	}
	n := uint64(area.Dx() * area.Dy())
	return color.RGBA64{R: uint16(r / n), G: uint16(g / n), B: uint16(b / n), A: uint16(a / n)}
}

// Manifest tells Windows that the program scales itself, needs no rights of an
// administrator and takes long paths.
const Manifest = `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>
<assembly xmlns="urn:schemas-microsoft-com:asm.v1" manifestVersion="1.0">
  <trustInfo xmlns="urn:schemas-microsoft-com:asm.v3">
    <security><requestedPrivileges><requestedExecutionLevel level="asInvoker" uiAccess="false"/></requestedPrivileges></security>
  </trustInfo>
  <application xmlns="urn:schemas-microsoft-com:asm.v3">
    <windowsSettings>
      <dpiAwareness xmlns="http://schemas.microsoft.com/SMI/2016/WindowsSettings">PerMonitorV2</dpiAwareness>
      <longPathAware xmlns="http://schemas.microsoft.com/SMI/2016/WindowsSettings">true</longPathAware>
    </windowsSettings>
  </application>
</assembly>
`

// resource is the script that windres compiles. 0x0409 is English, 1200 Unicode.
const resource = `1 ICON "{{.Icon}}"
1 24 "{{.Manifest}}"
1 VERSIONINFO
FILEVERSION {{.Numbers}}
PRODUCTVERSION {{.Numbers}}
FILEOS 0x40004
FILETYPE 0x1
BEGIN
  BLOCK "StringFileInfo"
  BEGIN
    BLOCK "040904B0"
    BEGIN
      VALUE "FileDescription", "{{.Name}}: {{.Summary}}"
      VALUE "FileVersion", "{{.Version}}"
      VALUE "InternalName", "{{.Command}}"
      VALUE "OriginalFilename", "{{.Command}}.exe"
      VALUE "ProductName", "{{.Name}}"
      VALUE "ProductVersion", "{{.Version}}"
    END
  END
  BLOCK "VarFileInfo"
  BEGIN
    VALUE "Translation", 0x0409, 1200
  END
END
`

// Resource is the resource script of a Windows program; icon and manifest are
// the names of files beside it. The version has to be three numbers.
func Resource(a About, icon, manifest string) (string, error) {
	parts := strings.Split(a.Version, ".")
	if len(parts) != 3 {
		return "", fmt.Errorf("write the Windows resource: version %q is not three numbers", a.Version)
	}
	if strings.ContainsAny(a.Name+a.Summary+icon+manifest, "\"\\\n") {
		return "", errors.New("write the Windows resource: a text holds a quotation mark, a backslash or a line's end")
	}
	t, err := template.New("resource").Parse(resource)
	if err != nil {
		return "", fmt.Errorf("write the Windows resource: %w", err)
	}
	var out strings.Builder
	err = t.Execute(&out, struct {
		About
		Icon, Manifest, Numbers string
	}{a, icon, manifest, strings.Join(parts, ",") + ",0"})
	if err != nil {
		return "", fmt.Errorf("write the Windows resource: %w", err)
	}
	return out.String(), nil
}
