package faults

var allowances = []Fault{
	{"an allowance off by 2 mm on one side of a seam", "allowance-match", seamAllowance},
	{"an allowance off on one layer of a shared edge", "allowance-match", sharedAllowance},
	{"a hem's allowance off by 2 mm", "allowance-standard", hemAllowance},
	{"a closure that needs more allowance", "allowance-closure", closureAllowance},
	{"an allowance on a fold", "allowance-fold", foldAllowance},
}

func seamAllowance(p *Planter) (string, bool) {
	s, ok := p.spot(func(s spot) bool { return p.plainSeam(s.address) != nil && s.piece.Drawn != "cut" })
	if !ok {
		return "", false
	}
	by := 12 + 2*p.sign()
	s.edge.Allowance = &by
	return seamAddress(p.plainSeam(s.address)), true
}

func sharedAllowance(p *Planter) (string, bool) {
	s, ok := p.spot(func(s spot) bool {
		return p.sharedInner(s) && s.piece.Fold != s.edge.Name && !p.closed(s.address) && s.edge.Role == ""
	})
	if !ok {
		return "", false
	}
	by := 10 + 2*p.sign()
	s.edge.Allowance = &by
	share, _ := p.sharing(s.address)
	return shareAddress(share), true
}

func hemAllowance(p *Planter) (string, bool) {
	s, ok := p.spot(func(s spot) bool { return s.edge.Finish == "hem" && s.piece.Drawn != "cut" })
	if !ok {
		return "", false
	}
	by := 30 + 2*p.sign()
	s.edge.Allowance = &by
	return s.address, true
}

func closureAllowance(p *Planter) (string, bool) {
	c, ok := one(p, p.Closures)
	if !ok {
		return "", false
	}
	c.Allowance = p.by(21.5, 30)
	return "closure." + c.Name, true
}

func foldAllowance(p *Planter) (string, bool) {
	s, ok := p.spot(func(s spot) bool { return s.piece.Fold == s.edge.Name && s.piece.Drawn != "cut" })
	if !ok {
		return "", false
	}
	by := p.by(5, 15)
	s.edge.Allowance = &by
	return s.pieceAddress(), true
}
