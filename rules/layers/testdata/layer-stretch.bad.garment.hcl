# A skating dress lined for warmth. The velvet goes round the waist easily; the
# lining gives too little.
garment "rink-dress" {
  title = "Lined rink dress"
  unit  = "cm"
}

body { waist_girth = 70 }

fabric "velvet" { stretch = { across = 60, along = 30 } }
fabric "lining" { stretch = { across = 6, along = 5 } }

level "waist" {
  y    = 17
  body = body.waist_girth
}

layer "shell" {
  side   = "outer"
  fabric = fabric.velvet

  piece "front" {
    cut = 2
    edge "top"    { line = [[0, 0], [18, 0]] }
    edge "side"   { line = [[18, 0], [16.2, 17], [18, 30]] }
    edge "hem"    { line = [[18, 30], [0, 30]] }
    edge "centre" { line = [[0, 30], [0, 0]] }
  }
  piece "back" {
    cut = 2
    edge "top"    { line = [[0, 0], [18, 0]] }
    edge "side"   { line = [[18, 0], [16.2, 17], [18, 30]] }
    edge "hem"    { line = [[18, 30], [0, 30]] }
    edge "centre" { line = [[0, 30], [0, 0]] }
  }
}

layer "lining" { # fault layer-stretch error 678.4mm
  side   = "inner"
  fabric = fabric.lining

  piece "front" {
    cut = 2
    edge "top"    { line = [[0, 0], [18, 0]] }
    edge "side"   { line = [[18, 0], [16, 17], [18, 30]] }
    edge "hem"    { line = [[18, 30], [0, 30]] }
    edge "centre" { line = [[0, 30], [0, 0]] }
  }
  piece "back" {
    cut = 2
    edge "top"    { line = [[0, 0], [18, 0]] }
    edge "side"   { line = [[18, 0], [16, 17], [18, 30]] }
    edge "hem"    { line = [[18, 30], [0, 30]] }
    edge "centre" { line = [[0, 30], [0, 0]] }
  }
}

seam "shell-front"  { join = [shell.front.centre, shell.front.centre] }
seam "shell-back"   { join = [shell.back.centre, shell.back.centre] }
seam "shell-side"   { join = [shell.front.side, shell.back.side] }
seam "lining-front" { join = [lining.front.centre, lining.front.centre] }
seam "lining-back"  { join = [lining.back.centre, lining.back.centre] }
seam "lining-side"  { join = [lining.front.side, lining.back.side] }
