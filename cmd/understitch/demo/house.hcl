# The standards of the Harbour Lane Playhouse, an invented theatre, for every
# garment in this folder and below it. All numbers are made up for it.

house "harbour-lane" { unit = "cm" }

# Seam allowances by what the edge is for. An edge that states its own is
# compared with these; one that states none takes it from here.
allowance "default" { width = 1.2 }
allowance "enclosed" { width = 1 } # turned in between two layers
allowance "closure" { width = 2 }  # room for a tape, a zip, loops
allowance "hem" { width = 3 }
allowance "rolled" { width = 1 }  # narrow hems of stretch cloth
allowance "casing" { width = 1 }  # turned over an elastic
allowance "bound" { width = 0.6 } # trimmed under a binding

# The company's bodies.
size "36" {
  bust_girth          = 84
  underbust_girth     = 71
  waist_girth         = 66
  high_hip_girth      = 80
  hip_girth           = 92
  total_crotch_length = 59.8
  height              = 166
}
size "38" {
  bust_girth          = 88
  underbust_girth     = 75
  waist_girth         = 70
  high_hip_girth      = 84
  hip_girth           = 96
  total_crotch_length = 61
  height              = 168
}
size "40" {
  bust_girth          = 92
  underbust_girth     = 79
  waist_girth         = 74
  high_hip_girth      = 88
  hip_girth           = 100
  total_crotch_length = 62.2
  height              = 170
}
size "chest-96" {
  chest_girth = 96
  waist_girth = 84
}
size "chest-100" {
  chest_girth = 100
  waist_girth = 88
}
size "chest-104" {
  chest_girth = 104
  waist_girth = 92
}

# Fastener tapes in the stock room.
tape "snap-19" {
  kind         = "snap"
  pitch        = mm(19)
  head         = mm(9)
  clear        = mm(1.5)
  width_closed = [mm(24)]
}
tape "hook-and-eye-19" {
  kind         = "hook-and-eye"
  pitch        = mm(19)
  head         = mm(8)
  clear        = mm(2)
  width_closed = [mm(32), mm(45), mm(58)]
}

# Cloths that several garments use.
fabric "stretch-velvet" {
  thickness = mm(1.1)
  stretch   = { across = 60, along = 35 }
  shrink    = { across = 1, along = 2 }
}
fabric "power-knit" {
  thickness = mm(0.6)
  stretch   = { across = 80, along = 60 }
  shrink    = { across = 1, along = 1.5 }
}
fabric "barathea" {
  thickness = mm(1.2)
  stretch   = { across = 2, along = 1 }
  shrink    = { across = 1, along = 1.5 }
}
fabric "satin" {
  thickness = mm(0.4)
  stretch   = { across = 1, along = 1 }
  shrink    = { across = 0.5, along = 1 }
}
fabric "coutil" {
  thickness = mm(0.7)
  stretch   = { across = 1, along = 1 }
  shrink    = { across = 0.5, along = 1 }
}
fabric "lining" {
  thickness = mm(0.2)
  stretch   = { across = 2, along = 1 }
  shrink    = { across = 1, along = 1 }
}
