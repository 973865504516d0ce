# Widow's skirt, Harbour Lane Playhouse. The grain of the back was
# drawn along its side seam.
garment "widow-skirt" { unit = "cm" }

layer "shell" {
  side = "outer"
  piece "front" {
    fold  = centre
    grain = [[8, 10], [8, 80]]
    edge "waist"  { line = [[0, 0], [18, 0]] }
    edge "side"   { line = [[18, 0], [30, 90]] }
    edge "hem"    { line = [[30, 90], [0, 92]] }
    edge "centre" { line = [[0, 92], [0, 0]] }
  }
  piece "back" { # fault grain-match warning 6.5deg
    cut   = 2
    grain = [[10, 10], [18, 80]]
    edge "waist"  { line = [[0, 0], [18, 0]] }
    edge "side"   { line = [[18, 0], [30, 90]] }
    edge "hem"    { line = [[30, 90], [0, 92]] }
    edge "centre" { line = [[0, 92], [0, 0]] }
  }
}

seam "side" { join = [shell.front.side, shell.back.side] }
seam "back" { join = [shell.back.centre, shell.back.centre] }
