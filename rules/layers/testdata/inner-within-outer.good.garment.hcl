# The shell of a rink dress was taken in at the waist after a fitting, and with
# it the brief under it, drawn from the same side seam.
garment "rink-dress" {
  title = "Rink dress with a built-in brief"
  unit  = "cm"
}

level "bust"  { y = 0 }
level "waist" { y = 17.5 }
level "tummy" { y = 28 }

layer "shell" {
  side = "outer"

  piece "front" {
    fold = centre
    edge "top"    { smooth = [[0, -8], [9, -10], [21.6, -1]] }
    edge "side"   { smooth = [[21.6, -1], [21.4, 0], [18.4, 17.5], [20.6, 28]] }
    edge "hem"    { smooth = [[20.6, 28], [14, 29], [0, 29]] }
    edge "centre" { line = [[0, 29], [0, -8]] }
    dart "waist" {
      centre = [9, 17.5]
      intake = 2
      up     = 12
      down   = 9
    }
  }

  piece "back" {
    fold = centre
    edge "top"    { smooth = [[0, -3], [9, -4], [20.6, -1]] }
    edge "side"   { smooth = [[20.6, -1], [20.4, 0], [17.4, 17.5], [19.6, 28], [20.7, 34], [22, 40]] }
    edge "hem"    { line = [[22, 40], [0, 40]] }
    edge "centre" { line = [[0, 40], [0, -3]] }
  }
}

layer "brief" {
  side = "inner"

  piece "front" {
    fold = centre
    edge "top"    { smooth = [[0, -8], [9, -10], [21.6, -1]] }
    edge "side"   { smooth = [[21.6, -1], [21.4, 0], [18.4, 17.5], [20.6, 28]] }
    edge "hem"    { smooth = [[20.6, 28], [14, 29], [0, 29]] }
    edge "centre" { line = [[0, 29], [0, -8]] }
    dart "waist" {
      centre = [9, 17.5]
      intake = 2
      up     = 12
      down   = 9
    }
  }

  piece "back" {
    fold = centre
    edge "top"    { smooth = [[0, -3], [9, -4], [20.6, -1]] }
    edge "side"   { smooth = [[20.6, -1], [20.4, 0], [17.4, 17.5], [19.6, 28], [20.6, 34]] }
    edge "leg"    { curve = [[20.6, 34], [14, 36], [6, 42], [4, 48]] }
    edge "centre" { line = [[4, 48], [0, 48], [0, -3]] }
  }
}

inside "front" {
  outer = shell.front
  inner = brief.front
  clearance = {
    waist = [0, 2]
    tummy = 0
  }
}
inside "back" {
  outer = shell.back
  inner = brief.back
}
