# Usher's waistcoat, Harbour Lane Playhouse. The waist was measured in
# inches, and the front's allowance is in millimetres.
garment "usher-waistcoat" { unit = "cm" }

body { waist_girth = 33 } # fault unit-slip error

level "waist" {
  y    = 18
  body = body.waist_girth
}

layer "shell" {
  side = "outer"
  piece "front" {
    fold      = centre
    allowance = 12 # fault unit-slip warning 120mm
    edge "top"    { line = [[0, 0], [24, 0]] }
    edge "side"   { smooth = [[24, 0], [22, 18], [24, 30]] }
    edge "hem"    { line = [[24, 30], [0, 30]] }
    edge "centre" { line = [[0, 30], [0, 0]] }
  }
  piece "back" {
    fold      = centre
    allowance = 1.2
    edge "top"    { line = [[0, 0], [24, 0]] }
    edge "side"   { smooth = [[24, 0], [22, 18], [24, 30]] }
    edge "hem"    { line = [[24, 30], [0, 30]] }
    edge "centre" { line = [[0, 30], [0, 0]] }
  }
}

seam "side" { join = [shell.front.side, shell.back.side] }
