# The brief of a rink dress was drafted to the body's crotch length, and the snap
# tape between the legs was not counted.
garment "rink-brief" {
  title = "Brief of the rink dress"
  unit  = "cm"
}

body { total_crotch_length = 66 }

level "waist" { y = 0 }

tape "snap-19" {
  kind         = "snap"
  pitch        = mm(19)
  head         = mm(9)
  clear        = mm(1.5)
  width_closed = [mm(24)]
}

layer "brief" {
  side = "inner"

  piece "front" {
    fold = centre
    edge "waist"  { line = [[0, 0], [17, 0]] }
    edge "leg"    { smooth = [[17, 0], [7, 20], [3, 31]] }
    edge "gusset" { line = [[3, 31], [0, 31]] }
    edge "centre" { line = [[0, 31], [0, 0]] }
  }
  piece "back" {
    fold = centre
    edge "waist"  { line = [[0, 0], [18, 0]] }
    edge "leg"    { smooth = [[18, 0], [14, 22], [3, 34]] }
    edge "gusset" { line = [[3, 34], [0, 34]] }
    edge "centre" { line = [[0, 34], [0, 0]] }
  }
}

closure "gusset" {
  kind  = "tape"
  tape  = tape.snap-19
  edges = [brief.front.gusset, brief.back.gusset]
}

measure "crotch" { # fault tape-measure error 14mm
  along   = [brief.front.centre, closure.gusset, brief.back.centre]
  from    = waist
  to      = waist
  against = body.total_crotch_length
  ease    = [-3, 0]
}
