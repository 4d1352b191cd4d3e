package job

import (
	"crypto/sha256"
	"encoding/hex"
	"strings"
)

// longestStem is the longest part of a file name that comes from a job number.
const longestStem = 60

// Stem gives the start of every file name of a job. Letters A to Z, digits and
// . _ - stay; any other character becomes a line below, and then a plus sign and
// eight digits of a hash of the whole number follow, so that two numbers that
// differ only in such characters do not share their files. A number that begins
// with a full stop or a hyphen, or is too long, gets the hash too.
func Stem(number string) string {
	safe := strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || strings.ContainsRune("._-", r) {
			return r
		}
		return '_'
	}, number)
	safe = strings.TrimLeft(safe[:min(len(safe), longestStem)], ".-")
	if safe == number && safe != "" {
		return safe
	}
	sum := sha256.Sum256([]byte(number))
	return safe + "+" + hex.EncodeToString(sum[:4])
}
