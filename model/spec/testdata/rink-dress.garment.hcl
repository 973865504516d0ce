# A dress with a built-in brief, as the Harbour Lane Playhouse cuts it.
garment "rink-dress" {
  title     = "Rink dress with a built-in brief"
  unit      = "cm"
  sizes     = ["36", "38", "40"]
  base_size = "38"
}

draft {
  quarter = body.bust_girth / 4
  drop    = graded(8, 0.2)
}

fabric "velvet" {
  thickness = mm(1.1)
  stretch   = { across = 60, along = 30 }
  shrink    = { across = 1, along = 2 }
}

level "bust" { y = 0 }
level "waist" {
  y    = 17.5
  body = body.waist_girth
}
level "tummy" { y = 28 }

layer "shell" {
  side   = "outer"
  fabric = fabric.velvet
  ease   = { waist = [-4, 0] }

  piece "front" {
    cut       = 1
    fold      = centre
    drawn     = "stitch"
    allowance = 1
    grain     = [[6, 5], [6, 40]]
    points {
      c = [b.x - 0.8, 17.5]
      a = [0, -draft.drop]
      b = [draft.quarter - 1, 0]
      h = [21, 28]
    }
    edge "top" { smooth = [a, [6, -9.5], b] }
    edge "side" {
      smooth    = [b, c, h]
      allowance = 1.5
    }
    edge "hem" {
      line   = [h, [0, 28]]
      finish = "hem"
    }
    edge "centre" { line = [[0, 28], a] }

    dart "bust" {
      on     = side
      at     = 6
      intake = 2.4
      tip    = [9, 3]
    }
    dart "waist" {
      centre = [9, 17.5]
      intake = 2.6
      up     = 12
      down   = 10
    }
    notch "waist" {
      on    = side
      level = waist
      kind  = "double"
      depth = mm(4)
    }
    notch "bust" {
      on = side
      at = 3
    }
    notch "neck" {
      on    = top
      point = [6, -9.5]
    }
  }
  piece "back" {
    cut = 2
    edge "top"    { line = [[0, -6], [21, 0]] }
    edge "side"   { curve = [[21, 0], [20.6, 6], [20.2, 12], [20.2, 17.5], [20.2, 21], [20.6, 25], [21, 28]] }
    edge "hem"    { path = "M 21 28 L 0 28" }
    edge "centre" { path = "M 0 28 C 0.5 20 0.5 4 0 -6" }
  }
}

layer "brief" {
  side   = "inner"
  fabric = fabric.power-net
  piece "front" {
    fold  = centre
    width = { waist = 17, tummy = 20 }
    edge "top"    { length = 19 }
    edge "side"   { length = 11.2 }
    edge "leg"    { length = 26 }
    edge "gusset" { length = 4 }
    edge "centre" { length = 30 }
  }
  piece "back" {
    fold   = centre
    levels = { waist = 2 }
    edge "top" { line = [[0, 2], [18, 2]] }
    edge "side" { line = [[18, 2], [19, 13]] }
    edge "leg" { smooth = [[19, 13], [12, 19], [4, 32]] }
    edge "gusset" { line = [[4, 32], [0, 32]] }
    edge "centre" { line = [[0, 32], [0, 2]] }
  }
}

seam "side" {
  join = [shell.front.side, shell.back.side]
  ease = [0, 0.3]
}
seam "lower-side" {
  join = [part(shell.front.side, waist, end), [part(shell.back.side, waist, end)]]
}
seam "centre-back" {
  join = [shell.back.centre, shell.back.centre]
}
share "top" {
  outer = [shell.front.top, shell.back.top]
  inner = [brief.front.top, brief.back.top]
  match = "eased"
  ease  = [-1, 1]
}
inside "front" {
  outer     = shell.front
  inner     = brief.front
  align     = "top"
  align_end = start
  clearance = { waist = [0, 2], tummy = 0, hip = [null, 3] }
}
closure "gusset" {
  kind  = "tape"
  tape  = tape.snap-19
  edges = [brief.front.gusset, brief.back.gusset]
}
closure "back" {
  kind      = "zip"
  edges     = [shell.back.centre, shell.back.centre]
  from      = start
  to        = hip
  stock     = [35, 40, 45]
  allowance = 1.5
}
elastic "leg" {
  edges  = [brief.front.leg, brief.back.leg]
  length = 42
  ratio  = [0.80, 0.95]
}
bone "side" {
  along  = shell.front.side
  length = 25
}
measure "crotch" {
  along   = [brief.front.centre, closure.gusset, brief.back.centre]
  from    = waist
  to      = end
  against = body.total_crotch_length
  ease    = [-3, 0]
}
waive "inner-within-outer" {
  at     = inside.front
  reason = "eased on to the foundation"
  up_to  = mm(4)
  until  = "2027-06-30"
}
waive "inner-within-outer" {
  at     = shell.front.notch.waist
  reason = "to be looked at in the second fitting"
}
