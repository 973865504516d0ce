# A fitted bodice of velvet, which stretches: it is to measure up to four
# centimetres less than the body at the waist.
garment "rink-bodice" {
  title = "Bodice of the rink dress"
  unit  = "cm"
}

body { waist_girth = 70 }

level "waist" {
  y    = 17.5
  body = body.waist_girth
}

layer "shell" {
  side = "outer"
  ease = {
    waist = [-4, 0] # fault body-ease error 6mm
  }

  piece "front" {
    fold = centre
    edge "top"    { line = [[0, 0], [21, 0]] }
    edge "side"   { line = [[21, 0], [20, 17.5], [21, 28]] }
    edge "hem"    { line = [[21, 28], [0, 28]] }
    edge "centre" { line = [[0, 28], [0, 0]] }
    dart "waist" {
      centre = [9, 17.5]
      intake = 2.4
      up     = 12
      down   = 9
    }
  }
  piece "back" {
    cut = 2
    edge "top"    { line = [[0, 0], [21, 0]] }
    edge "side"   { line = [[21, 0], [19, 17.5], [21, 28]] }
    edge "hem"    { line = [[21, 28], [0, 28]] }
    edge "centre" { line = [[0, 28], [1.3, 17.5], [0, 0]] }
  }
}

seam "side" { join = [shell.front.side, shell.back.side] }
seam "back" { join = [shell.back.centre, shell.back.centre] }
