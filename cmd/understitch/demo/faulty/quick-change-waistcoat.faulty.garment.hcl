# The quick-change waistcoat with four faults:
#
# - The back was lengthened at the nape, and the centre back came out at a length
#   at which one end of the snap tape would have to be cut through a snap.
# - The shell's front carries an allowance at the fold.
# - The lining's back was taken in at the side after the first fitting; its waist
#   notch stayed on the old line.
# - The lining's back hem starts a little below the end of its side seam.
#
# A comment with "want" stands where a check must report it.

garment "quick-change-waistcoat-faulty" {
  title     = "Quick-change waistcoat, with faults"
  unit      = "cm"
  sizes     = ["chest-96", "chest-100", "chest-104"]
  base_size = "chest-100"
}

level "chest" {
  y    = 0
  body = body.chest_girth
}
level "waist" {
  y    = 19.5
  body = body.waist_girth
}

# The back is 0.8 cm wider than the front at every level.
draft {
  chest    = body.chest_girth / 4 + 1.6
  waist    = body.waist_girth / 4 + 3.2
  neck     = graded(8.6, 0.2)
  shoulder = graded(17.4, 0.4)
  nape     = -24.5
}

layer "shell" {
  side   = "outer"
  fabric = fabric.barathea
  ease   = { chest = [6, 10], waist = [3, 6] }

  piece "front" {
    fold  = centre
    grain = [[4, 2], [4, 28]]
    points {
      throat     = [0, -3]
      neck_point = [draft.neck, -25]
      tip        = [draft.shoulder, -21.4]
      pitch      = [draft.shoulder - 1, -11]
      underarm   = [draft.chest, -3]
      flank      = [draft.waist + 0.5, 13]
      waist      = [draft.waist, 19.5]
      low        = [draft.waist + 0.45, 24]
      vent       = [draft.waist + 0.7, 27]
      corner     = [5.5, 34.5]
    }
    edge "neck" { curve = [throat, [3, -9], [neck_point.x - 2, -20.1], neck_point] }
    edge "shoulder" { line = [neck_point, tip] }
    edge "armhole" {
      curve = [tip, [tip.x - 1.1, -18.7], [pitch.x - 0.3, -14], pitch, [pitch.x + 0.5, -6], [underarm.x - 5.6, -3], underarm]
    }
    edge "side" { smooth = [underarm, [draft.chest, 0], [draft.chest - 0.15, 4], flank, waist, low, vent] }
    edge "hem" { curve = [vent, [vent.x - 6, 27.5], [10, 32.2], corner] }
    edge "point" { line = [corner, [0, 30.5]] }
    edge "centre" {
      line      = [[0, 30.5], throat]
      allowance = 1.2 # fault allowance-fold error 12mm
    }

    dart "waist" {
      centre = [11.5, 19.5]
      intake = 2.4
      up     = 12
      down   = 8
    }
    notch "armhole" {
      on    = armhole
      at    = 12
      depth = mm(4)
    }
    notch "waist" {
      on    = side
      level = waist
      depth = mm(4)
    }
  }

  piece "back" {
    cut   = 2
    grain = [[4, -10], [4, 24]]
    points {
      nape       = [0, draft.nape]
      neck_point = [draft.neck, draft.nape - 2.4]
      tip        = [draft.shoulder, draft.nape + 1.2]
      pitch      = [draft.shoulder - 0.4, -11]
      underarm   = [draft.chest + 0.8, -3]
      flank      = [draft.waist + 1.3, 13]
      waist      = [draft.waist + 0.8, 19.5]
      low        = [draft.waist + 1.25, 24]
      vent       = [draft.waist + 1.5, 27]
    }
    edge "neck" { curve = [nape, [4, nape.y], [neck_point.x - 0.9, neck_point.y + 2.2], neck_point] }
    edge "shoulder" { line = [neck_point, tip] }
    edge "armhole" {
      curve = [tip, [tip.x - 1.1, tip.y + 2.7], [pitch.x - 0.2, -15], pitch, [pitch.x + 0.3, -5], [underarm.x - 5, -3], underarm]
    }
    edge "side" { smooth = [underarm, [draft.chest + 0.8, 0], [draft.chest + 0.65, 4], flank, waist, low, vent] }
    edge "hem" { curve = [vent, [vent.x - 6, 27.5], [9, 27.7], [0, 27.7]] }
    edge "centre" { line = [[0, 27.7], nape] }

    dart "waist" {
      centre = [12.5, 19.5]
      intake = 2.6
      up     = 13
      down   = 5
    }
    notch "armhole" {
      on    = armhole
      at    = 13
      kind  = "double"
      depth = mm(4)
    }
    notch "waist" {
      on    = side
      level = waist
      depth = mm(4)
    }
  }
}

layer "lining" {
  side   = "inner"
  fabric = fabric.lining

  piece "front" {
    fold  = centre
    grain = [[4, 2], [4, 28]]
    points {
      throat     = [0, -3]
      neck_point = [draft.neck, -25]
      tip        = [draft.shoulder, -21.4]
      pitch      = [draft.shoulder - 1, -11]
      underarm   = [draft.chest, -3]
      flank      = [draft.waist + 0.1, 13]
      waist      = [draft.waist - 0.6, 19.5]
      low        = [draft.waist + 0.2, 23.5]
      end        = [draft.waist + 0.66, 26.6]
      vent       = [draft.waist + 0.7, 27]
      corner     = [5.5, 34.5]
    }
    edge "neck" { curve = [throat, [3, -9], [neck_point.x - 2, -20.1], neck_point] }
    edge "shoulder" { line = [neck_point, tip] }
    edge "armhole" {
      curve = [tip, [tip.x - 1.1, -18.7], [pitch.x - 0.3, -14], pitch, [pitch.x + 0.5, -6], [underarm.x - 5.6, -3], underarm]
    }
    edge "side" { smooth = [underarm, [draft.chest, 0], [draft.chest - 0.2, 4], flank, waist, low, end, vent] }
    edge "hem" { curve = [vent, [vent.x - 6, 27.5], [10, 32.2], corner] }
    edge "point" { line = [corner, [0, 30.5]] }
    edge "centre" { line = [[0, 30.5], throat] }

    dart "waist" {
      centre = [11.5, 19.5]
      intake = 2
      up     = 12
      down   = 8
    }
    notch "armhole" {
      on    = armhole
      at    = 12
      depth = mm(4)
    }
    notch "waist" {
      on    = side
      level = waist
      depth = mm(4)
    }
  }

  piece "back" {
    cut   = 2
    grain = [[4, -10], [4, 24]]
    points {
      nape       = [0, draft.nape]
      neck_point = [draft.neck, draft.nape - 2.4]
      tip        = [draft.shoulder, draft.nape + 1.2]
      pitch      = [draft.shoulder - 0.4, -11]
      underarm   = [draft.chest + 0.8, -3]
      flank      = [draft.waist + 0.9, 13]
      waist      = [draft.waist + 0.2, 19.5]
      low        = [draft.waist + 1.1, 23.5]
      end        = [draft.waist + 1.46, 26.6]
      vent       = [draft.waist + 1.5, 27]
    }
    edge "neck" { curve = [nape, [4, nape.y], [neck_point.x - 0.9, neck_point.y + 2.2], neck_point] }
    edge "shoulder" { line = [neck_point, tip] }
    edge "armhole" {
      curve = [tip, [tip.x - 1.1, tip.y + 2.7], [pitch.x - 0.2, -15], pitch, [pitch.x + 0.3, -5], [underarm.x - 5, -3], underarm]
    }
    edge "side" { smooth = [underarm, [draft.chest + 0.8, 0], [draft.chest + 0.6, 4], flank, waist, low, end, vent] }
    edge "hem" { curve = [[vent.x, 27.06], [vent.x - 6, 27.56], [9, 27.7], [0, 27.7]] } # fault outline-closed error 0.6mm
    edge "centre" {
      line = [[0, 27.7], nape]
      role = "closure"
    }

    dart "waist" {
      centre = [12.5, 19.5]
      intake = 2.2
      up     = 13
      down   = 5
    }
    notch "armhole" {
      on    = armhole
      at    = 13
      kind  = "double"
      depth = mm(4)
    }
    notch "waist" {
      on    = side
      point = [draft.waist + 0.6, 19.5] # fault notch-on-line error 4.0mm
      depth = mm(4)
    }
  }
}

seam "shell-shoulder" { join = [shell.front.shoulder, shell.back.shoulder] }
seam "shell-side" { join = [shell.front.side, shell.back.side] }
seam "lining-shoulder" { join = [lining.front.shoulder, lining.back.shoulder] }
seam "lining-side" { join = [lining.front.side, lining.back.side] }

share "neck" {
  outer = [shell.front.neck, shell.back.neck]
  inner = [lining.front.neck, lining.back.neck]
}
share "armhole" {
  outer = [shell.front.armhole, shell.back.armhole]
  inner = [lining.front.armhole, lining.back.armhole]
}
share "hem" {
  outer = [shell.front.point, shell.front.hem, shell.back.hem]
  inner = [lining.front.point, lining.front.hem, lining.back.hem]
}
share "back-edge" {
  outer = shell.back.centre
  inner = lining.back.centre
}

inside "front" {
  outer     = shell.front
  inner     = lining.front
  clearance = { chest = [0, 0.3], waist = [0, 0.5] }
}
inside "back" {
  outer     = shell.back
  inner     = lining.back
  clearance = { chest = [0, 0.3], waist = [0, 0.5] }
}

closure "back" {
  kind  = "tape"
  tape  = tape.snap-19
  edges = [shell.back.centre, shell.back.centre] # fault tape-cut error 522mm
}
