# The shell's dart was moved 8 mm towards the side at a fitting; the lining's was
# left where it was. Both take out as much, and every width agrees.
garment "bodice" {
  title = "Bodice with a lining"
  unit  = "cm"
}

level "bust"  { y = 0 }
level "waist" { y = 18 }

layer "shell" {
  side = "outer"

  piece "front" {
    fold = centre
    edge "top"    { line = [[0, -5], [23, -5]] }
    edge "side"   { smooth = [[23, -5], [22.8, 0], [20, 18], [21, 26]] }
    edge "hem"    { line = [[21, 26], [0, 26]] }
    edge "centre" { line = [[0, 26], [0, -5]] }

    dart "waist" {
      centre = [9.4, 18]
      intake = 2.4
      up     = 13
      down   = 7
    }
  }
}

layer "lining" {
  side = "inner"

  piece "front" {
    fold = centre
    edge "top"    { line = [[0, -5], [22.8, -5]] }
    edge "side"   { smooth = [[22.8, -5], [22.6, 0], [19.8, 18], [20.8, 26]] }
    edge "hem"    { line = [[20.8, 26], [0, 26]] }
    edge "centre" { line = [[0, 26], [0, -5]] }

    dart "waist" { # fault dart-answer warning 8mm
      centre = [8.6, 18]
      intake = 2.4
      up     = 13
      down   = 7
    }
  }
}

inside "front" {
  outer = shell.front
  inner = lining.front
}
