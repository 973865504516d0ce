# Page's tunic, Harbour Lane Playhouse. The back was shaped at the centre and
# still laid to the fold; the front's hem drops towards the centre.
garment "page-tunic" { unit = "cm" }

layer "shell" {
  side = "outer"
  piece "front" {
    fold = centre
    edge "neck"   { line = [[0, 0], [12, -14], [20, -10]] }
    edge "side"   { line = [[20, -10], [22, 60]] }
    edge "hem"    { line = [[22, 60], [0, 61.5]] } # fault fold-straight warning 3.9deg
    edge "centre" { line = [[0, 61.5], [0, 0]] }
  }
  piece "back" {
    fold = centre
    edge "neck"   { line = [[60, 0], [40, 0]] }
    edge "side"   { line = [[40, 0], [38, 60]] }
    edge "hem"    { line = [[38, 60], [60, 60]] }
    edge "centre" { line = [[60, 60], [59.2, 20], [60, 0]] } # fault fold-straight warning 8mm
  }
}
