# Understudy bodice, Harbour Lane Playhouse. Front and back were let down alike
# at the hem after the fitting.
garment "understudy-bodice" { unit = "cm" }

layer "shell" {
  side = "outer"
  piece "front" {
    fold = centre
    edge "top"    { line = [[0, 0], [22, 0]] }
    edge "side"   { line = [[22, 0], [22, 40.4]] }
    edge "hem"    { line = [[22, 40.4], [0, 40.4]] }
    edge "centre" { line = [[0, 40.4], [0, 0]] }
    notch "waist" {
      on = side
      at = 17
    }
  }
  piece "back" {
    fold = centre
    edge "top"    { line = [[30, 0], [50, 0]] }
    edge "centre" { line = [[50, 0], [50, 40.4]] }
    edge "hem"    { line = [[50, 40.4], [30, 40.4]] }
    edge "side"   { line = [[30, 40.4], [30, 0]] }
    notch "waist" {
      on = side
      at = 23.4
    }
  }
}

seam "side" {
  join = [shell.front.side, shell.back.side]
}
