# Footman's skirt, Harbour Lane Playhouse. The zip runs down to the hip, but the
# seam below it was written for the whole centre back; the side seam was
# forgotten.
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
    edge "side" { line = [[20, 0], [24, 60]] } # fault edge-unused error 601mm
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
    edge "side" { line = [[40, 0], [36, 60]] } # fault edge-unused error 601mm
    edge "hem" {
      line   = [[36, 60], [60, 60]]
      finish = "hem"
    }
    edge "centre" { line = [[60, 60], [60, 0]] } # fault edge-unused warning 200mm
  }
}

closure "back" {
  kind  = "zip"
  edges = [shell.back.centre, shell.back.centre]
  from  = end
  to    = hip
}
seam "centre-back" { join = [shell.back.centre, shell.back.centre] }
