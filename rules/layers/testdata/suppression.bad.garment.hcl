# A bodice shaped by waist darts over a lining shaped by its side seams.
# The darts were let out by 7 mm each at a fitting; the lining was left.
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
    edge "side"   { line = [[23, -5], [23, 0], [20, 18], [21, 26]] }
    edge "hem"    { line = [[21, 26], [0, 26]] }
    edge "centre" { line = [[0, 26], [0, -5]] }

    dart "waist" {
      centre = [10, 18]
      intake = 0.8
      up     = 12
      down   = 7
    }
  }
  piece "back" {
    fold = centre
    edge "top"    { line = [[0, -5], [23, -5]] }
    edge "side"   { line = [[23, -5], [23, 0], [20, 18], [21, 26]] }
    edge "hem"    { line = [[21, 26], [0, 26]] }
    edge "centre" { line = [[0, 26], [0, -5]] }

    dart "waist" {
      centre = [10, 18]
      intake = 0.8
      up     = 12
      down   = 7
    }
  }
}

layer "lining" { # fault suppression warning 28mm
  side = "inner"

  piece "front" {
    fold = centre
    edge "top"    { line = [[0, -5], [22.5, -5]] }
    edge "side"   { line = [[22.5, -5], [22.5, 0], [18, 18], [20.4, 26]] }
    edge "hem"    { line = [[20.4, 26], [0, 26]] }
    edge "centre" { line = [[0, 26], [0, -5]] }
  }
  piece "back" {
    fold = centre
    edge "top"    { line = [[0, -5], [22.5, -5]] }
    edge "side"   { line = [[22.5, -5], [22.5, 0], [18, 18], [20.4, 26]] }
    edge "hem"    { line = [[20.4, 26], [0, 26]] }
    edge "centre" { line = [[0, 26], [0, -5]] }
  }
}

seam "shell-side"  { join = [shell.front.side, shell.back.side] }
seam "lining-side" { join = [lining.front.side, lining.back.side] }
