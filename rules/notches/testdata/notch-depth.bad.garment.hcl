# Sailor's blouse, Harbour Lane Playhouse. The neck has the narrow allowance of a
# tight curve, and its notches are cut as deep as those of the side.
garment "sailor-blouse" { unit = "cm" }

layer "shell" {
  side = "outer"
  piece "front" {
    fold      = centre
    allowance = 1
    edge "neck" {
      line      = [[0, 8], [9, 0]]
      allowance = mm(6)
    }
    edge "shoulder" { line = [[9, 0], [22, 4]] }
    edge "side"     { line = [[22, 4], [22, 60]] }
    edge "hem"      { line = [[22, 60], [0, 60]] }
    edge "centre"   { line = [[0, 60], [0, 8]] }
    notch "collar" { # fault notch-depth error 1.00
      on    = neck
      at    = 5
      depth = mm(6)
    }
    notch "waist" { # fault notch-depth warning 0.60
      on    = side
      at    = 30
      depth = mm(6)
    }
  }
}
