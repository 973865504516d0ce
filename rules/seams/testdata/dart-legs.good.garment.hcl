# Waitress dress, Harbour Lane Playhouse. Both darts were closed and the edges
# trued over them: each bends at the mouth by what the dart takes out.
garment "waitress-dress" { unit = "cm" }

layer "shell" {
  side = "outer"
  piece "front" {
    fold = centre
    edge "top"    { line = [[0, 0], [22, 0]] }
    edge "side"   { line = [[22, 0], [22, 6], [22, 8], [18.43, 29.26]] }
    edge "waist"  { line = [[18.43, 29.26], [11, 30], [9, 30], [0, 29.1]] }
    edge "centre" { line = [[0, 29.1], [0, 0]] }
    dart "bust" {
      on     = side
      at     = 7
      intake = 2
      tip    = [10, 7]
    }
    dart "waist" {
      on     = waist
      at     = 8.47
      intake = 2
      tip    = [10, 20]
    }
    dart "under" {
      centre = [4, 20]
      intake = 1.5
      up     = 9
      down   = 6
    }
  }
}
