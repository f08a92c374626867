package pack

import (
	"archive/tar"
	"archive/zip"
	"compress/gzip"
	"errors"
	"fmt"
	"io"
	"os"
	"time"
)

// Member is one file of an archive.
type Member struct {
	// Path is the file on this machine; Name its place in the archive, with slashes.
	Path, Name string
	// Program says that the file may be run.
	Program bool
}

// mode is the file's mode in an archive.
func (m Member) mode() os.FileMode {
	if m.Program {
		return 0o755
	}
	return 0o644
}

// when is the date of every member, so that the same files give the same
// archive; a zip cannot hold an earlier one.
func when() time.Time { return time.Date(1980, 1, 1, 0, 0, 0, 0, time.UTC) }

// Tar writes a compressed tar archive.
func Tar(to io.Writer, members []Member) error {
	squeeze := gzip.NewWriter(to)
	archive := tar.NewWriter(squeeze)
	for _, m := range members {
		if err := tarMember(archive, m); err != nil {
			return fmt.Errorf("put %s into the archive: %w", m.Name, err)
		}
	}
	if err := errors.Join(archive.Close(), squeeze.Close()); err != nil {
		return fmt.Errorf("end the archive: %w", err)
	}
	return nil
}

// tarMember adds one file.
func tarMember(archive *tar.Writer, m Member) error {
	data, err := os.ReadFile(m.Path)
	if err != nil {
		return err
	}
	head := &tar.Header{Name: m.Name, Mode: int64(m.mode()), Size: int64(len(data)), ModTime: when(), Format: tar.FormatPAX}
	if err := archive.WriteHeader(head); err != nil {
		return err
	}
	_, err = archive.Write(data)
	return err
}

// Zip writes a compressed zip archive.
func Zip(to io.Writer, members []Member) error {
	archive := zip.NewWriter(to)
	for _, m := range members {
		if err := zipMember(archive, m); err != nil {
			return fmt.Errorf("put %s into the archive: %w", m.Name, err)
		}
	}
	if err := archive.Close(); err != nil {
		return fmt.Errorf("end the archive: %w", err)
	}
	return nil
}

// zipMember adds one file.
func zipMember(archive *zip.Writer, m Member) error {
	data, err := os.ReadFile(m.Path)
	if err != nil {
		return err
	}
	head := &zip.FileHeader{Name: m.Name, Method: zip.Deflate, Modified: when()}
	head.SetMode(m.mode())
	w, err := archive.CreateHeader(head)
	if err != nil {
		return err
	}
	_, err = w.Write(data)
	return err
}
