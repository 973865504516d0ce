# A boned foundation.
garment "foundation" {
  title = "Boned foundation"
  unit  = "cm"
}

layer "foundation" {
  side = "inner"

  piece "front" {
    fold = centre
    edge "top"      { line = [[0, 0], [6, 0], [12, 0]] }
    edge "princess" { line = [[12, 0], [12, 30]] }
    edge "hem"      { line = [[12, 30], [0, 30]] }
    edge "centre"   { line = [[0, 30], [0, 0]] }
  }
}

bone "princess" {
  along  = foundation.front.princess
  length = 28.5
}
