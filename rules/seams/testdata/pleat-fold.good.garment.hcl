# School skirt, Harbour Lane Playhouse. Two knife pleats and an inverted one on the
# fold, folded from the waist to the level of the hip. The waist rises to the side
# behind the pleats and runs on over them when they are folded.
garment "school-skirt" { unit = "cm" }

level "hip" { y = 18 }

layer "shell" {
  side = "outer"
  piece "front" {
    fold = centre
    edge "waist" {
      line      = [[0, 0], [30, 0], [36, -0.2]]
      allowance = 1
    }
    edge "side" { line = [[36, -0.2], [38, 18], [38, 50]] }
    edge "hem" {
      line   = [[38, 50], [0, 50]]
      finish = "hem"
    }
    edge "centre" { line = [[0, 50], [0, 0]] }
    pleat "centre" {
      on    = waist
      at    = start
      kind  = "inverted"
      depth = 2
      to    = hip
    }
    pleat "first" {
      on      = waist
      at      = 14
      depth   = 3
      towards = "left"
      to      = 18
    }
    pleat "second" {
      on      = waist
      at      = 24
      depth   = 3
      towards = "left"
      to      = hip
    }
    notch "first" {
      on = waist
      at = 11
    }
  }
}
