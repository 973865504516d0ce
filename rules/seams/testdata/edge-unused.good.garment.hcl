# Footman's skirt, Harbour Lane Playhouse. The zip runs down to the hip, the
# centre back seam from there to the hem.
garment "footman-skirt" { unit = "cm" }

level "hip" { y = 20 }

layer "shell" {
  side = "outer"
  piece "front" {
    fold = centre
    edge "waist" {
      line   = [[0, 0], [20, 0]]
      finish = "bound"
    }
    edge "side" { line = [[20, 0], [24, 60]] }
    edge "hem" {
      line   = [[24, 60], [0, 60]]
      finish = "hem"
    }
    edge "centre" { line = [[0, 60], [0, 0]] }
  }
  piece "back" {
    cut = 2
    edge "waist" {
      line   = [[60, 0], [40, 0]]
      finish = "bound"
    }
    edge "side" { line = [[40, 0], [36, 60]] }
    edge "hem" {
      line   = [[36, 60], [60, 60]]
      finish = "hem"
    }
    edge "centre" { line = [[60, 60], [60, 0]] }
  }
}

closure "back" {
  kind  = "zip"
  edges = [shell.back.centre, shell.back.centre]
  from  = end
  to    = hip
}
seam "centre-back" { join = [part(shell.back.centre, start, hip), part(shell.back.centre, start, hip)] }
seam "side" { join = [shell.front.side, shell.back.side] }
