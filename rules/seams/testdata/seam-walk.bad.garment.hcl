# Understudy bodice, Harbour Lane Playhouse. The back was let down at the hem
# after the fitting, the front was not.
garment "understudy-bodice" { unit = "cm" }

layer "shell" {
  side = "outer"
  piece "front" {
    fold = centre
    edge "top"    { line = [[0, 0], [22, 0]] }
    edge "side"   { line = [[22, 0], [22, 40]] }
    edge "hem"    { line = [[22, 40], [0, 40]] }
    edge "centre" { line = [[0, 40], [0, 0]] }
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
  join = [shell.front.side, shell.back.side] # fault seam-walk error -4mm
}
