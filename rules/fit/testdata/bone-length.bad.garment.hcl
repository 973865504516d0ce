# A boned foundation. The top was lowered by 7 mm and the bones are as they were.
garment "foundation" {
  title = "Boned foundation"
  unit  = "cm"
}

layer "foundation" {
  side = "inner"

  piece "front" {
    fold = centre
    edge "top"      { line = [[0, 0], [6, 0], [12, 0.7]] }
    edge "princess" { line = [[12, 0.7], [12, 30]] }
    edge "hem"      { line = [[12, 30], [0, 30]] }
    edge "centre"   { line = [[0, 30], [0, 0]] }
  }
}

bone "princess" { # fault bone-length warning 8mm
  along  = foundation.front.princess
  length = 28.5
}
