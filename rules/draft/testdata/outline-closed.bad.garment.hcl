# Herald's tabard, Harbour Lane Playhouse. The side was taken in by 4 mm at the
# hem, the hem was not.
garment "herald-tabard" { unit = "cm" }

layer "shell" {
  side = "outer"
  piece "front" {
    fold = centre
    edge "neck"   { line = [[0, 0], [20, 0]] }
    edge "side"   { line = [[20, 0], [23.6, 70]] }
    edge "hem"    { line = [[24, 70], [0, 70]] } # fault outline-closed error 4mm
    edge "centre" { line = [[0, 70], [0, 0]] }
  }
}
