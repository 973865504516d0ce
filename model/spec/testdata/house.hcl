house "harbour-lane" { unit = "cm" }

allowance "default"  { width = 1 }
allowance "closure"  { width = 2.5 }
allowance "hem"      { width = 3 }
allowance "enclosed" { width = mm(7) }

size "36" {
  bust_girth          = 84
  waist_girth         = 66
  hip_girth           = 92
  total_crotch_length = 66
}
size "38" {
  bust_girth          = 88
  waist_girth         = 70
  hip_girth           = 96
  total_crotch_length = 67.5
}
size "40" {
  bust_girth          = 92
  waist_girth         = 74
  hip_girth           = 100
  total_crotch_length = 69
}

tape "snap-19" {
  kind  = "snap"
  pitch = mm(19)
  head  = mm(9)
  clear = mm(1.5)
}
fabric "power-net" {
  thickness = mm(0.5)
  stretch   = { across = 70, along = 50 }
}
level "hip" {
  y    = 37
  body = body.hip_girth
}
rule "seam-walk" {
  severity = "error"
  warn     = mm(1.6)
  error    = mm(3.2)
}
