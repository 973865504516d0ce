package rules

// Severity ranks findings by the levels of SARIF 2.1.0 (OASIS, 2020).
type Severity uint8

// The severities, lowest first. Off switches a rule off.
const (
	Off Severity = iota
	Note
	Warning
	Error
)

var severityNames = [...]string{"off", "note", "warning", "error"}

func (s Severity) String() string { return severityNames[s] }

// SeverityNamed finds a severity by its name.
func SeverityNamed(name string) (Severity, bool) {
	for i, n := range severityNames {
		if n == name {
			return Severity(i), true
		}
	}
	return Off, false
}

// MarshalText writes the severity's name.
func (s Severity) MarshalText() ([]byte, error) { return []byte(s.String()), nil }
