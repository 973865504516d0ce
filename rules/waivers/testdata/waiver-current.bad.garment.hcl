# Call boy's waistcoat, Harbour Lane Playhouse. The side seam has been mended
# since its fault was accepted; the shoulder was accepted for one run only.
garment "call-boy-waistcoat" { unit = "cm" }

layer "shell" {
  side = "outer"
  piece "front" {
    edge "shoulder" { length = 12.5 }
    edge "side"     { length = 30 }
  }
  piece "back" {
    edge "shoulder" { length = 13 }
    edge "side"     { length = 30 }
  }
}

seam "side" { join = [shell.front.side, shell.back.side] }
seam "shoulder" { join = [shell.front.shoulder, shell.back.shoulder] } # fault seam-walk error -5mm

waive "seam-walk" { # fault waiver-current warning
  at     = seam.side
  reason = "the back is stretched with the iron"
}
waive "seam-walk" { # fault waiver-current warning
  at     = seam.shoulder
  reason = "held in by hand until the new front is cut"
  until  = "2025-03-31"
}
