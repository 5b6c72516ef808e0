package gauges

import (
	"fmt"
	"strings"

	"scalepair/data/near"
)

// suggestLabel says which labels would do.
func suggestLabel(label string, known []string) string {
	if len(known) == 0 {
		return "the stock is empty"
	}
	if best := near.Suggest(label, known); best != "" {
		return fmt.Sprintf("did you mean %q?", best)
	}
	return "in stock are " + strings.Join(known, ", ")
}
