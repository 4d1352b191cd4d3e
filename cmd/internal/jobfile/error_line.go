package jobfile

import (
	"bytes"
	"io"
	"strconv"
)

// placeError finds what makes a file unreadable and on which line, as the shortest
// beginning of the file that fails in the same way. The YAML library itself
// reports the line where the surrounding section starts, or the line before the
// fault, or none. A quote or bracket that is never closed fails in the same way
// from the line on where it opens, which is the line to name.
//
// A comment line is put in front, since the library gives no place at all for
// what stands on its first line. It also looks further ahead where no comment
// stands above, and then names the second of two faults; so the message is that of
// the reading which found the line. It is nil if that reading finds nothing.
func placeError(data []byte) (line int, message error) {
	data = append([]byte("#\n"), data...)
	ends := lineEnds(data)
	reader := &lineReader{data: data, ends: ends}
	_, _, whole := documents(reader)
	if whole == nil {
		return 0, nil
	}
	fails := func(lines int) bool {
		if lines < 1 {
			return false
		}
		_, _, err := documents(bytes.NewReader(data[:ends[lines-1]]))
		return err != nil && err.Error() == whole.Error()
	}
	// Where something opens and is not closed, the library's line is nearly right.
	if m := libraryError.FindStringSubmatch(whole.Error()); m != nil && m[1] != "" {
		reported, _ := strconv.Atoi(m[1])
		for lines := max(reported, 1); lines <= min(reported+1, len(ends)); lines++ {
			if fails(lines) && !fails(lines-1) {
				return lines - 1, whole
			}
		}
	}
	// Elsewhere the fault stands shortly before the last line that it asked for.
	hi := max(reader.line, 1)
	lo := hi - 1
	for step := 1; lo > 0 && fails(lo); step *= 2 {
		hi, lo = lo, max(lo-step, 0)
	}
	for lo+1 < hi {
		if mid := lo + (hi-lo)/2; fails(mid) {
			hi = mid
		} else {
			lo = mid
		}
	}
	return hi - 1, whole
}

// A lineReader hands out a text line by line, never two at once, and so knows
// how far its reader came.
type lineReader struct {
	data []byte
	ends []int
	line int // lines begun
	at   int
}

// Read fills p with what is left of a line.
func (r *lineReader) Read(p []byte) (int, error) {
	if r.at == len(r.data) {
		return 0, io.EOF
	}
	if r.line == 0 || r.at == r.ends[r.line-1] {
		r.line++
	}
	n := copy(p, r.data[r.at:r.ends[r.line-1]])
	r.at += n
	return n, nil
}

// lineEnds gives the offset behind each line.
func lineEnds(data []byte) []int {
	var ends []int
	for i, c := range data {
		if c == '\n' {
			ends = append(ends, i+1)
		}
	}
	if len(ends) == 0 || ends[len(ends)-1] < len(data) {
		ends = append(ends, len(data))
	}
	return ends
}

// lineText gives a line of a text without its end, line counted from 1.
func lineText(data []byte, line int) string {
	ends := lineEnds(data)
	if line < 1 || line > len(ends) {
		return ""
	}
	start := 0
	if line > 1 {
		start = ends[line-2]
	}
	return string(bytes.TrimRight(data[start:ends[line-1]], "\r\n"))
}
