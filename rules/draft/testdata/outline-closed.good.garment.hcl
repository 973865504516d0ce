# Herald's tabard, Harbour Lane Playhouse. The corner has a name, so that side
# and hem move together.
garment "herald-tabard" { unit = "cm" }

layer "shell" {
  side = "outer"
  piece "front" {
    fold = centre
    points {
      corner = [23.6, 70]
    }
    edge "neck"   { line = [[0, 0], [20, 0]] }
    edge "side"   { line = [[20, 0], corner] }
    edge "hem"    { line = [corner, [0, 70]] }
    edge "centre" { line = [[0, 70], [0, 0]] }
  }
}
