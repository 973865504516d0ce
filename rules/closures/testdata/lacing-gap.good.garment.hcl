# Principal boy's stays, Harbour Lane Playhouse: laced at the centre back to a gap
# of 3 to 5 cm. By hand: bust 88 - 2 x 42 = 4 cm, waist 68 - 2 x 32 = 4 cm; the
# ease of 1 cm either way leaves 3 to 5 cm.
garment "stays" { unit = "cm" }

body {
  bust_girth  = 88
  waist_girth = 68
}

level "bust" {
  y    = 5
  body = body.bust_girth
}
level "waist" {
  y    = 25
  body = body.waist_girth
}

layer "shell" {
  side = "outer"
  ease = {
    bust  = [-1, 1]
    waist = [-1, 1]
  }
  piece "half" {
    cut = 2
    edge "top" {
      line   = [[0, 0], [42, 0]]
      finish = "bound"
    }
    edge "back" { line = [[42, 0], [42, 5], [37, 25], [37, 30]] }
    edge "bottom" {
      line   = [[37, 30], [5, 30]]
      finish = "bound"
    }
    edge "front" { line = [[5, 30], [5, 25], [0, 5], [0, 0]] }
  }
}
seam "front" { join = [shell.half.front, shell.half.front] }

closure "back" {
  kind  = "lacing"
  edges = [shell.half.back, shell.half.back]
  gap   = [3, 5]
}
