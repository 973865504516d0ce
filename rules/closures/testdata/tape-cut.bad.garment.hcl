# The brief of a rink dress closes between the legs with a cut of hook tape.
garment "rink-brief" {
  title = "Brief of the rink dress"
  unit  = "cm"
}

tape "hook-19" {
  kind         = "hook-and-eye"
  pitch        = mm(19.05)
  head         = mm(9)
  clear        = mm(1.5)
  width_closed = [mm(24), mm(37)]
}

layer "brief" {
  side = "inner"

  piece "front" {
    fold = centre
    edge "gusset" { line = [[0, 0], [2.5, 0]] }
    edge "leg"    { smooth = [[2.5, 0], [6.5, -9], [16, -17]] }
    edge "waist"  { line = [[16, -17], [0, -19]] }
    edge "centre" { line = [[0, -19], [0, 0]] }
  }
  piece "back" {
    fold = centre
    edge "gusset" { line = [[0, 0], [2.5, 0]] }
    edge "leg"    { smooth = [[2.5, 0], [11, -5], [17, -15]] }
    edge "waist"  { line = [[17, -15], [0, -20]] }
    edge "centre" { line = [[0, -20], [0, 0]] }
  }
}

closure "gusset" {
  kind  = "tape"
  tape  = tape.hook-19
  edges = [brief.front.gusset, brief.back.gusset] # fault tape-cut error 50mm
}
