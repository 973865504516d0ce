package rules

import "slices"

// atSources names the same finding on what the thing is a tracing of: a fault in a
// line that is traced is reported once, there.
func (p *Pass) atSources(key string) []Under {
	var out []Under
	keys := []string{key}
	for _, source := range p.Garment.Sources(p.thing) {
		for _, k := range slices.Clone(keys) {
			for _, at := range p.Garment.AtSource(k) {
				if !slices.Contains(keys, at) {
					keys = append(keys, at)
				}
			}
		}
		for _, k := range keys {
			out = append(out, Under{Rule: p.rule.Name, Subject: source.Address(), Key: k})
		}
	}
	return out
}
