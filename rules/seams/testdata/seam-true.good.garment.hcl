# Understudy skirt, Harbour Lane Playhouse. Both hems leave the side seam square, so that they
# run on over it, and the waist does too.
garment "understudy-skirt" { unit = "cm" }

layer "shell" {
  side = "outer"
  piece "front" {
    fold = centre
    edge "waist" { curve = [[0, 1], [6, 1], [12, 0.6], [18, 0]] }
    edge "side" { line = [[18, 0], [24, 60]] }
    edge "hem" {
      curve  = [[24, 60], [16, 60.8], [8, 61.8], [0, 61.8]]
      finish = "hem"
    }
    edge "centre" { line = [[0, 61.8], [0, 1]] }
  }
  piece "back" {
    fold = centre
    edge "waist" { curve = [[0, 1], [6, 1], [12, 0.6], [18, 0]] }
    edge "side" { line = [[18, 0], [24, 60]] }
    edge "hem" {
      curve  = [[24, 60], [16, 60.8], [8, 63.8], [0, 63.8]]
      finish = "hem"
    }
    edge "centre" { line = [[0, 63.8], [0, 1]] }
  }
}

seam "side" {
  join = [shell.front.side, shell.back.side]
}
