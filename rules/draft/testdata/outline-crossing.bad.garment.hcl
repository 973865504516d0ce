# Columbine bodice, Harbour Lane Playhouse. The neck was lowered past the
# underarm, and now runs through the armhole.
garment "columbine-bodice" { unit = "cm" }

layer "shell" {
  side = "outer"
  piece "front" {
    fold = centre
    edge "neck"     { line = [[0, 8], [15, 12], [15, -12]] }
    edge "shoulder" { line = [[15, -12], [20, -10]] }
    edge "armhole"  { curve = [[20, -10], [12, -6], [12, 2], [22, 4]] } # fault outline-crossing error
    edge "side"     { line = [[22, 4], [20, 22]] }
    edge "waist"    { line = [[20, 22], [0, 22]] }
    edge "centre"   { line = [[0, 22], [0, 8]] }
  }
}
