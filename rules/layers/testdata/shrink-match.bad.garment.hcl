# A collar of two cloths that are turned out together. The viscose
# shrinks more in the first wash.
garment "collar" {
  title = "Lined collar"
  unit  = "cm"
}

fabric "twill" {
  shrink = { across = 0.5, along = 1 }
}
fabric "viscose" {
  shrink = { across = 2, along = 4 }
}

layer "shell" {
  side   = "outer"
  fabric = fabric.twill

  piece "collar" {
    fold  = centre
    grain = [[6, 1], [6, 7]]
    edge "neck"   { line = [[0, 8], [20, 8]] }
    edge "front"  { line = [[20, 8], [20, 0]] }
    edge "outer"  { line = [[20, 0], [0, 0]] }
    edge "centre" { line = [[0, 0], [0, 8]] }
  }
}

layer "lining" { # fault shrink-match warning 1.5%
  side   = "inner"
  fabric = fabric.viscose

  piece "collar" {
    fold  = centre
    grain = [[6, 1], [6, 7]]
    edge "neck"   { line = [[0, 8], [20, 8]] }
    edge "front"  { line = [[20, 8], [20, 0]] }
    edge "outer"  { line = [[20, 0], [0, 0]] }
    edge "centre" { line = [[0, 0], [0, 8]] }
  }
}

share "outer" {
  outer = shell.collar.outer
  inner = lining.collar.outer
}
