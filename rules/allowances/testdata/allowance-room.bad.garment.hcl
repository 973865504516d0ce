# Harlequin collar, Harbour Lane Playhouse. The keyhole at the neck is
# cut with the allowance of a straight seam.
garment "harlequin-collar" { unit = "cm" }

layer "shell" {
  side = "outer"
  piece "collar" {
    allowance = 1
    edge "outer" { line = [[0, 0], [30, 0]] }
    edge "end"   { line = [[30, 0], [30, 12]] }
    edge "neck" { # fault allowance-room warning 6mm
      path      = "M 30 12 L 15.6 12 A 0.6 0.6 0 0 0 14.4 12 L 0 12"
      allowance = 1
    }
    edge "front" { line = [[0, 12], [0, 0]] }
  }
}
