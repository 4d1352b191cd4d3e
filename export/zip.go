package export

import (
	"archive/zip"
	"bytes"
	"compress/flate"
	"fmt"
	"hash/crc32"
	"io"
)

// A part is one file inside a zip archive.
type part struct {
	name string
	data []byte
}

// writeZip compresses each part in memory first, so that its size and checksum
// stand before the data: some readers of 3MF do not accept the trailing data
// descriptor of a streamed entry.
func writeZip(w io.Writer, parts []part) error {
	archive := zip.NewWriter(w)
	for _, p := range parts {
		var packed bytes.Buffer
		// The level is a constant that flate accepts.
		deflate, err := flate.NewWriter(&packed, flate.DefaultCompression)
		if err != nil {
			return err
		}
		if _, err := deflate.Write(p.data); err != nil {
			return err
		}
		if err := deflate.Close(); err != nil {
			return err
		}
		header := zip.FileHeader{
			Name:               p.name,
			CreatorVersion:     20,
			ReaderVersion:      20,
			Method:             zip.Deflate,
			CRC32:              crc32.ChecksumIEEE(p.data),
			CompressedSize64:   uint64(packed.Len()),
			UncompressedSize64: uint64(len(p.data)),
		}
		// The first day that the format can express. Modified is not enough:
		// a raw entry stores only this field, and day 0 of month 0 would be
		// invalid.
		//lint:ignore SA1019 the only way to set the time of a raw entry
		header.ModifiedDate = 1<<5 | 1
		entry, err := archive.CreateRaw(&header)
		if err != nil {
			return fmt.Errorf("zip %s: %w", p.name, err)
		}
		if _, err := entry.Write(packed.Bytes()); err != nil {
			return err
		}
	}
	return archive.Close()
}
