# A brief that is drafted from the crotch length. It was read off the
# wrong side of the tape.
garment "brief" { # fault body-plausible note 4.18
  title = "Skating brief"
  unit  = "cm"
}

body {
  height              = 168
  hip_girth           = 96
  total_crotch_length = 74
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
}
