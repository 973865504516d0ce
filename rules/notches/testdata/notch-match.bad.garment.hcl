# Coachman's coat, Harbour Lane Playhouse. The side was taken in after the
# fitting: the front's waist notch was carried over, the back's was not, and
# the double notch of the back was cut single.
garment "coachman-coat" { unit = "cm" }

layer "shell" {
  side = "outer"
  piece "front" {
    edge "top"    { line = [[0, 0], [24, 0]] }
    edge "side"   { line = [[24, 0], [24, 60]] }
    edge "hem"    { line = [[24, 60], [0, 60]] }
    edge "centre" { line = [[0, 60], [0, 0]] }
    notch "waist" {
      on = side
      at = 18.2
    }
    notch "hip" {
      on   = side
      at   = 38
      kind = "double"
    }
    notch "vent" {
      on = side
      at = 50
    }
  }
  piece "back" {
    edge "top"    { line = [[70, 0], [50, 0]] }
    edge "side"   { line = [[50, 0], [50, 60]] } # fault notch-match error
    edge "hem"    { line = [[50, 60], [70, 60]] }
    edge "centre" { line = [[70, 60], [70, 0]] }
    notch "waist" {
      on = side
      at = 18.6 # fault notch-match error 4mm
    }
    notch "hip" { # fault notch-match error
      on = side
      at = 38
    }
  }
}

seam "side" { join = [shell.front.side, shell.back.side] }
