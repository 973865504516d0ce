package fit

import (
	"fmt"

	"understitch/model"
)

// unknown is the reason why there is no body measure to compare with.
func unknown(g *model.Garment, measure, otherwise string) error {
	switch {
	case measure == "":
		return &model.Missing{Reason: otherwise}
	case g.Size != "":
		return &model.Missing{Reason: fmt.Sprintf("nothing states %s for %s", measure, g.Size)}
	}
	return &model.Missing{Reason: "no body states " + measure}
}
