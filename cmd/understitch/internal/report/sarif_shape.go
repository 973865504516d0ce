package report

// The parts of SARIF 2.1.0 (OASIS, 2020) that are written, no more: what is not
// known is left out and never filled in.

type sarifDescriptor struct {
	ID      string       `json:"id"`
	Short   *sarifText   `json:"shortDescription,omitempty"`
	Full    *sarifText   `json:"fullDescription,omitempty"`
	Help    *sarifText   `json:"help,omitempty"`
	Default *sarifConfig `json:"defaultConfiguration,omitempty"`
	Tags    *sarifTags   `json:"properties,omitempty"`
}

type sarifText struct {
	Text     string `json:"text"`
	Markdown string `json:"markdown,omitempty"`
}

type sarifConfig struct {
	Level string `json:"level"`
}

type sarifTags struct {
	Tags []string `json:"tags"`
}

type sarifNotification struct {
	Descriptor sarifReference  `json:"descriptor"`
	Rule       *sarifReference `json:"associatedRule,omitempty"`
	Level      string          `json:"level"`
	Message    sarifText       `json:"message"`
	Locations  []sarifLocation `json:"locations,omitempty"`
}

type sarifReference struct {
	ID    string `json:"id"`
	Index int    `json:"index"`
}

type sarifBase struct {
	Description sarifText `json:"description"`
}

type sarifArtifact struct {
	Location sarifURI `json:"location"`
	MIME     string   `json:"mimeType"`
	Roles    []string `json:"roles,omitempty"`
}

type sarifURI struct {
	URI   string `json:"uri"`
	Base  string `json:"uriBaseId,omitempty"`
	Index *int   `json:"index,omitempty"` // among the artifacts
}

type sarifResult struct {
	Rule         string             `json:"ruleId"`
	RuleIndex    int                `json:"ruleIndex"`
	Level        string             `json:"level"`
	Message      sarifText          `json:"message"`
	Locations    []sarifLocation    `json:"locations"`
	Related      []sarifLocation    `json:"relatedLocations,omitempty"`
	Fingerprints map[string]string  `json:"partialFingerprints"`
	Fixes        []sarifFix         `json:"fixes,omitempty"`
	Suppressions []sarifSuppression `json:"suppressions"`
	Properties   sarifProperties    `json:"properties"`
}

type sarifLocation struct {
	ID       int            `json:"id,omitempty"`
	Physical *sarifPhysical `json:"physicalLocation,omitempty"`
	Logical  []sarifLogical `json:"logicalLocations,omitempty"`
	Message  *sarifText     `json:"message,omitempty"`
}

type sarifPhysical struct {
	Artifact sarifURI     `json:"artifactLocation"`
	Region   *sarifRegion `json:"region,omitempty"`
}

type sarifRegion struct {
	StartLine   int `json:"startLine"`
	StartColumn int `json:"startColumn"`
	EndLine     int `json:"endLine"`
	EndColumn   int `json:"endColumn"`
}

type sarifLogical struct {
	Full string `json:"fullyQualifiedName"`
}

type sarifFix struct {
	Description sarifText     `json:"description"`
	Changes     []sarifChange `json:"artifactChanges"`
}

type sarifChange struct {
	Artifact     sarifURI           `json:"artifactLocation"`
	Replacements []sarifReplacement `json:"replacements"`
}

type sarifReplacement struct {
	Deleted  sarifRegion  `json:"deletedRegion"`
	Inserted sarifContent `json:"insertedContent"`
}

// sarifContent is the text that goes into a file, to the letter.
type sarifContent struct {
	Text string `json:"text"`
}

type sarifSuppression struct {
	Kind          string         `json:"kind"`
	Status        string         `json:"status"`
	Justification string         `json:"justification"`
	Location      *sarifLocation `json:"location,omitempty"`
}

// sarifProperties is what SARIF has no word for: the figure.
type sarifProperties struct {
	Garment   string   `json:"garment"`
	Sizes     []string `json:"sizes,omitempty"`
	WorstSize string   `json:"worstSize,omitempty"`
	*Figure
	Mend *sarifMend `json:"mend,omitempty"`
}

type sarifMend struct {
	Title string `json:"title"`
	Safe  bool   `json:"safe"`
}
