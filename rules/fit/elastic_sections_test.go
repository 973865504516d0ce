package fit

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
)

// Half a brief, cut as a pair: the leg is 22 cm to the notch and 18 cm on. By hand the
// sections take 44 x 0.8 to 44 x 0.85 and 36 x 0.95 to 36 x 1, in all 69.4 to 73.4 cm.
func sectioned(length float64) string {
	return fmt.Sprintf(`
garment "brief" { unit = "cm" }
layer "brief" {
  side = "inner"
  piece "half" {
    cut = 2
    edge "waist" { line = [[0, 0], [40, 0]] }
    edge "back"  { line = [[40, 0], [40, 20]] }
    edge "leg"   { line = [[40, 20], [0, 20]] }
    edge "front" { line = [[0, 20], [0, 0]] }
    notch "side" {
      on = leg
      at = 22
    }
  }
}
seam "front" { join = [brief.half.front, brief.half.front] }
seam "back"  { join = [brief.half.back, brief.half.back] }
elastic "leg" {
  length = %v
  section {
    along = part(brief.half.leg, start, side)
    ratio = [0.8, 0.85]
  }
  section {
    along = part(brief.half.leg, side, end)
    ratio = [0.95, 1]
  }
}
`, length)
}

func TestSectionsAddUpToTheElastic(t *testing.T) {
	for _, c := range []struct {
		length  float64
		message string
	}{
		{70, ""},
		{69.36, ""},
		{73.44, ""},
		{64, "elastic.leg is 64 cm long, and its sections take 35.2 cm to 37.4 cm on 44 cm of part(brief.half.leg, start, side) and 34.2 cm to 36 cm on 36 cm of " +
			"part(brief.half.leg, side, end): 69.4 cm to 73.4 cm in all. It is 5.4 cm too short; lengthen it, or state the ratios that are intended."},
		{80, "elastic.leg is 80 cm long, and its sections take 35.2 cm to 37.4 cm on 44 cm of part(brief.half.leg, start, side) and 34.2 cm to 36 cm on 36 cm of " +
			"part(brief.half.leg, side, end): 69.4 cm to 73.4 cm in all. It is 6.6 cm too long; shorten it, or state the ratios that are intended."},
	} {
		t.Run(fmt.Sprint(c.length), func(t *testing.T) {
			found := look(t, ElasticRatio, sectioned(c.length)).Findings
			if c.message == "" {
				require.Empty(t, found)
				return
			}
			require.Len(t, found, 1)
			require.Equal(t, c.message, found[0].Message)
		})
	}
}
