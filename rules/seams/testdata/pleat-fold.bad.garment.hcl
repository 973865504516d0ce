# School skirt, Harbour Lane Playhouse. The inverted pleat was drawn beside the fold
# instead of on it. The waist was drawn for a skirt without pleats, so that it bends
# where the first is folded. The second was made deeper and takes cloth of the third,
# which was to be folded all the way and is by a slip folded past the hem.
garment "school-skirt" { unit = "cm" }

level "hip" { y = 18 }

layer "shell" {
  side = "outer"
  piece "front" {
    fold = centre
    edge "waist" {
      line      = [[0, 0], [12, 0], [36, -2]]
      allowance = 1
    }
    edge "side" { line = [[36, -2], [38, 18], [38, 50]] }
    edge "hem" {
      line   = [[38, 50], [0, 50]]
      finish = "hem"
    }
    edge "centre" { line = [[0, 50], [0, 0]] }
    pleat "centre" {   # fault pleat-fold error 15.0mm
      on    = waist
      at    = 2.5
      kind  = "inverted"
      depth = 2
      to    = hip
    }
    pleat "first" {    # fault pleat-fold warning 4.8deg
      on      = waist
      at      = 14
      depth   = 3
      towards = "left"
      to      = hip
    }
    pleat "second" {   # fault pleat-fold error 15.0mm
      on      = waist
      at      = 25
      depth   = 4
      towards = "left"
      to      = hip
    }
    pleat "third" {    # fault pleat-fold error 4.1mm
      on      = waist
      at      = 29
      depth   = 1.5
      towards = "left"
      to      = 52
    }
  }
}
