# Page's tunic, Harbour Lane Playhouse. The back is cut straight at the centre, and
# the front's hem is curved so that it leaves the fold square. The V of the neck
# is meant.
garment "page-tunic" { unit = "cm" }

layer "shell" {
  side = "outer"
  piece "front" {
    fold = centre
    edge "neck"   { line = [[0, 0], [12, -14], [20, -10]] }
    edge "side"   { line = [[20, -10], [22, 60]] }
    edge "hem"    { curve = [[22, 60], [14, 61], [8, 61.5], [0, 61.5]] }
    edge "centre" { line = [[0, 61.5], [0, 0]] }
  }
  piece "back" {
    fold = centre
    edge "neck"   { line = [[60, 0], [40, 0]] }
    edge "side"   { line = [[40, 0], [38, 60]] }
    edge "hem"    { line = [[38, 60], [60, 60]] }
    edge "centre" { line = [[60, 60], [60, 0]] }
  }
}
