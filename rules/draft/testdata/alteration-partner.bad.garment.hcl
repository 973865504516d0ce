# Ringmaster's coat, Harbour Lane Playhouse. The waist was taken in on
# the front and forgotten on the back.
garment "ringmaster-coat" { unit = "cm" }

level "chest" { y = 0 }
level "waist" { y = 18 }

layer "shell" {
  side = "outer"
  piece "front" {
    edge "top" { line = [[0, 0], [26, 0]] }
    edge "side" { smooth = [[26, 0], [24, 18], [27, 40]] }
    edge "rest" { line = [[27, 40], [0, 40], [0, 0]] }
  }
  piece "back" {
    edge "top" { line = [[0, 0], [24, 0]] }
    edge "side" { smooth = [[24, 0], [22, 18], [25, 40]] }
    edge "rest" { line = [[25, 40], [0, 40], [0, 0]] }
  }
}

seam "side" { join = [shell.front.side, shell.back.side] }

alter "first-fitting" { # fault alteration-partner warning
  edges  = [shell.front.side]
  inward = { chest = 0, waist = 0.4 }
}
