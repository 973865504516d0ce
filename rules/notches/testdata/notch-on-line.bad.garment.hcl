# Harlequin doublet, Harbour Lane Playhouse. The side was taken in by 8 mm at
# the waist and shortened; its notches stayed on the old line.
garment "harlequin-doublet" { unit = "cm" }

level "waist" { y = 17.5 }
level "hip" { y = 40 }

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
      point = [21, 17.5] # fault notch-on-line error 7.9mm
    }
    notch "vent" {
      on = side
      at = 30.8 # fault notch-on-line error 5.8mm
    }
    notch "hip" {
      on    = side
      level = hip # fault notch-on-line error
    }
  }
}
