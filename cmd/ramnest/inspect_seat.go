package main

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"ramnest/cmd/internal/pictures"
	"ramnest/cmd/internal/report"
	"ramnest/export"
	"ramnest/export/picture"
	"ramnest/fixture/envelope"
	"ramnest/fixture/pose"
)

// seat ranks the poses in which the other file's part may sit on this one.
func (i *inspectCommand) seat(c *console) error {
	if i.Circles || i.Object != "" || i.Up != "" {
		return badUse{"inspect: --circles, --object and --up are not for a pair whose seat is looked for"}
	}
	lower, err := c.part(i.Mesh, envelope.MeshSpec{Unit: i.Unit, Body: i.Body})
	if err != nil {
		return err
	}
	upper, err := c.part(i.With, envelope.MeshSpec{Unit: i.Unit})
	if err != nil {
		return err
	}
	done := c.stage("looking for the seat")
	all, err := pose.Find(c.ctx, &lower.Mesh, &upper.Mesh)
	done()
	if err != nil {
		return err
	}
	if i.Picture != "" {
		for k, g := range all {
			seated := &envelope.Envelope{Mesh: *upper.Moved(envelope.MeshSpec{Up: g.Up, Turn: g.Turn, Move: g.Move}.Placement(1))}
			img, err := pictures.OfPair(c.ctx, lower, seated)
			if err != nil {
				return fmt.Errorf("picture: %w", err)
			}
			ending := filepath.Ext(i.Picture)
			name := fmt.Sprintf("%s-%d%s", strings.TrimSuffix(i.Picture, ending), k+1, ending)
			if err := c.writeFile(name, func(w io.Writer) error { return picture.EncodePNG(w, img) }); err != nil {
				return err
			}
		}
	}
	found := report.SeatingsOf(i.Mesh, "+z", i.With, all)
	if i.JSON {
		return export.WriteJSON(c.out, found)
	}
	return c.print(report.Seated(found))
}
