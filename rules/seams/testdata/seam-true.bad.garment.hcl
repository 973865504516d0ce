# Understudy skirt, Harbour Lane Playhouse. The back hem was dropped at the centre without
# truing it against the front at the side seam.
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
      curve  = [[24, 60], [16, 62], [8, 63.8], [0, 63.8]]
      finish = "hem"
    }
    edge "centre" { line = [[0, 63.8], [0, 1]] }
  }
}

seam "side" {
  join = [shell.front.side, shell.back.side] # fault seam-true error 8.3deg
}
