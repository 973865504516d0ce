# Columbine's bodice, Harbour Lane Playhouse. One notch vanishes in
# the armhole seam, one is caught by the dart.
garment "columbine-bodice" { unit = "cm" }

layer "shell" {
  side = "outer"
  piece "front" {
    fold = centre
    edge "neck"     { line = [[0, 8], [9, 0]] }
    edge "shoulder" { line = [[9, 0], [22, 4]] }
    edge "side"     { line = [[22, 4], [22, 44]] }
    edge "waist"    { line = [[22, 44], [0, 44]] }
    edge "centre"   { line = [[0, 44], [0, 8]] }
    dart "waist" {
      on     = waist
      at     = 11
      intake = 2.4
      tip    = [11, 26]
    }
    notch "dart" {
      on = waist
      at = 8.9 # fault notch-spacing warning 9mm
    }
    notch "underarm" {
      on = side
      at = 1 # fault notch-spacing warning 10mm
    }
  }
}
