# A skating brief with elastic round the leg. The leg was
# cut higher and the elastic left as it was.
garment "brief" {
  title = "Skating brief"
  unit  = "cm"
}

layer "brief" {
  side = "inner"

  piece "front" {
    fold = centre
    edge "waist"  { line = [[0, 0], [18, 0]] }
    edge "side"   { line = [[18, 0], [19, 14]] }
    edge "leg"    { line = [[19, 14], [4, 34]] }
    edge "gusset" { line = [[4, 34], [0, 34]] }
    edge "centre" { line = [[0, 34], [0, 0]] }
  }
  piece "back" {
    fold = centre
    edge "waist"  { line = [[0, 0], [18, 0]] }
    edge "side"   { line = [[18, 0], [19, 14]] }
    edge "leg"    { line = [[19, 14], [4, 34]] }
    edge "gusset" { line = [[4, 34], [0, 34]] }
    edge "centre" { line = [[0, 34], [0, 0]] }
  }
}

seam "side"   { join = [brief.front.side, brief.back.side] }
seam "gusset" { join = [brief.front.gusset, brief.back.gusset] }

elastic "leg" { # fault elastic-ratio warning 380mm
  edges  = [brief.front.leg, brief.back.leg]
  length = 38
  ratio  = [0.8, 0.95]
}
