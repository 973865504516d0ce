# Principal boy's stays, Harbour Lane Playhouse. The waist was taken in by 1.5 cm on each
# half: bust 88 - 84 = 4 cm, waist 68 - 61 = 7 cm, each 1 cm more or less. 6 is past 5.
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
    edge "back" { line = [[42, 0], [42, 5], [35.5, 25], [35.5, 30]] }
    edge "bottom" {
      line   = [[35.5, 30], [5, 30]]
      finish = "bound"
    }
    edge "front" { line = [[5, 30], [5, 25], [0, 5], [0, 0]] }
  }
}
seam "front" { join = [shell.half.front, shell.half.front] }

closure "back" {
  kind  = "lacing"
  edges = [shell.half.back, shell.half.back]
  gap   = [3, 5]   # fault lacing-gap error 10mm
}
