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
}

nest "front" {
  outer = shell.front
  inner = brief.front
  clearance = {
    waist = [0, 2]
    tummy = 0
  }
}
