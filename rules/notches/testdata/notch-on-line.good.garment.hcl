# Harlequin doublet, Harbour Lane Playhouse. The notches were carried over to the
# line as it is after the fitting.
garment "harlequin-doublet" { unit = "cm" }

level "waist" { y = 17.5 }
level "hip" { y = 27 }

layer "shell" {
  side = "outer"
  piece "front" {
    fold = centre
    edge "top"    { line = [[0, 0], [22, 0]] }
    edge "side"   { line = [[22, 0], [20.2, 17.5], [22, 30]] }
    edge "hem"    { line = [[22, 30], [0, 30]] }
    edge "centre" { line = [[0, 30], [0, 0]] }
    notch "waist" {
      on    = side
      point = [20.2, 17.5]
    }
    notch "vent" {
      on = side
      at = 28
    }
    notch "hip" {
      on    = side
      level = hip
    }
  }
}
