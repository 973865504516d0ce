# A heavy overcoat that was cut for a thin lining. It is quilted instead, 4 mm thick, and
# the melton has not the way to go round it.
garment "overcoat" {
  title = "Overcoat with a quilted lining"
  unit  = "cm"
}

fabric "melton" {
  thickness = mm(3)
  stretch   = { across = 3, along = 2 }
}
fabric "quilting" {
  thickness = mm(4)
  stretch   = { across = 2, along = 2 }
}

level "chest" { y = 0 }

layer "shell" {
  side   = "outer"
  fabric = fabric.melton

  piece "front" {
    fold = centre
    edge "top"    { line = [[0, -4], [26.2, -4]] }
    edge "side"   { line = [[26.2, -4], [26.2, 0], [26.2, 60]] }
    edge "hem"    { line = [[26.2, 60], [0, 60]] }
    edge "centre" { line = [[0, 60], [0, -4]] }
  }
  piece "back" {
    fold = centre
    edge "top"    { line = [[0, -4], [26.4, -4]] }
    edge "side"   { line = [[26.4, -4], [26.4, 0], [26.4, 60]] }
    edge "hem"    { line = [[26.4, 60], [0, 60]] }
    edge "centre" { line = [[0, 60], [0, -4]] }
  }
}

layer "lining" { # fault turn-of-cloth note 12mm
  side   = "inner"
  fabric = fabric.quilting

  piece "front" {
    fold = centre
    edge "top"    { line = [[0, -4], [26, -4]] }
    edge "side"   { line = [[26, -4], [26, 0], [26, 56]] }
    edge "hem"    { line = [[26, 56], [0, 56]] }
    edge "centre" { line = [[0, 56], [0, -4]] }
  }
  piece "back" {
    fold = centre
    edge "top"    { line = [[0, -4], [26, -4]] }
    edge "side"   { line = [[26, -4], [26, 0], [26, 56]] }
    edge "hem"    { line = [[26, 56], [0, 56]] }
    edge "centre" { line = [[0, 56], [0, -4]] }
  }
}

seam "shell-side"  { join = [shell.front.side, shell.back.side] }
seam "lining-side" { join = [lining.front.side, lining.back.side] }
