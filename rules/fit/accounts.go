package fit

import (
	"understitch/model"
	"understitch/model/body"
	"understitch/model/reckoned"
	"understitch/rules"
)

func easeAccount(g *model.Garment, l *model.Layer, e model.LevelRange) rules.Account {
	return func(lines *reckoned.Lines) {
		lines.Say(0, "an ease of %s is asked for", g.ShowRange(e.Range))
		lines.Ease(g, l, e.Level)
	}
}

func runAccount(g *model.Garment, m *model.Measure) rules.Account {
	return func(l *reckoned.Lines) { l.Run(g, m) }
}

func boneAccount(b *model.Bone) rules.Account {
	return func(l *reckoned.Lines) { l.Bone(b) }
}

func elasticAccount(g *model.Garment, e *model.Elastic, asked model.Range) rules.Account {
	return func(l *reckoned.Lines) {
		l.Say(0, "of the edges' length %s is asked for, %s", ratios(e.Ratio), g.ShowRange(asked))
		l.Elastic(g, e)
	}
}

func sectionsAccount(g *model.Garment, e *model.Elastic, asked model.Range) rules.Account {
	return func(l *reckoned.Lines) {
		l.Say(0, "its sections take %s in all", g.ShowRange(asked))
		l.Elastic(g, e)
	}
}

func likelihoodAccount(l body.Likely, off float64) rules.Account {
	return func(lines *reckoned.Lines) {
		lines.Beside(2, l.Stature, "the height")
		lines.Beside(2, l.Hip, "the hip")
		lines.Add(2, l.Stated, "the %s as stated", bodyName(l.Measure))
		lines.Add(2, -l.Expected, "less what goes with that height and hip")
		lines.Sum(1, l.Stated-l.Expected, "is how far it lies off that")
		lines.Beside(1, l.StandardDeviation, "is the usual spread")
		lines.ResultIn(rules.Ratio, 0, off, "is how many times that spread it lies off")
	}
}
