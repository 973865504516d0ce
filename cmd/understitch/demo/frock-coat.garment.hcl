# A frock coat for one singer: three panels to the waist and a skirt sewn on to
# all of them. The lining is cut larger than the shell on purpose, with a pleat
# down the centre back, so that it never pulls the cloth in: its clearances are
# below nothing. Fronts meet edge to edge and close with buttons in cord loops.
# Sleeves and collar are drafted from the armhole and the neck and are not here.

garment "frock-coat" {
  title = "Frock coat with a pleated lining"
  unit  = "cm"
}

body {
  chest_girth = 98
  waist_girth = 84
}

level "chest" {
  y    = 0
  body = body.chest_girth
}
level "waist" {
  y    = 19
  body = body.waist_girth
}

layer "shell" {
  side   = "outer"
  fabric = fabric.barathea
  ease   = { chest = [8, 12], waist = [5, 9] }

  piece "back" {
    cut   = 2
    grain = [[5, -18], [5, 14]]
    points {
      nape       = [0, -24]
      neck_point = [7.8, -26.2]
      tip        = [20.4, -20.2]
      blade      = [18.4, -9.5]
    }
    edge "neck" { curve = [nape, [3.4, -24], [6.9, -24.3], neck_point] }
    edge "shoulder" { line = [neck_point, tip] }
    edge "armhole" { curve = [tip, [18.9, -17.05], [18.4, -13], blade] }
    edge "blade" { smooth = [blade, [16, -4], [12.9, 4], [10.1, 12], [8.53, 17.6], [8.5, 20]] }
    edge "waist" { line = [[8.5, 20], [2, 20]] }
    edge "centre" { smooth = [[2, 20], [1.95, 15], [1.1, 4], [0.2, -10], [0, -18], nape] }

    notch "sleeve" {
      on    = armhole
      at    = 6
      kind  = "double"
      depth = mm(4)
    }
    notch "upper" {
      on    = blade
      at    = 9
      depth = mm(4)
    }
    notch "lower" {
      on    = blade
      at    = 24
      depth = mm(4)
    }
    notch "chest" {
      on    = centre
      level = chest
      depth = mm(4)
    }
  }

  piece "side" {
    cut   = 2
    grain = [[22, 2], [22, 17]]
    points {
      blade    = [19.4, -10.34]
      underarm = [29, -1.5]
    }
    edge "armhole" { curve = [blade, [20, -6], [24, -1.5], underarm] }
    edge "side" { smooth = [underarm, [28.9, 5], [28, 13], [27.45, 18], [27.4, 20.1]] }
    edge "waist" { line = [[27.4, 20.1], [12.8, 20]] }
    edge "blade" { smooth = [[12.8, 20], [12.8, 17], [13.2, 11.4], [14.8, 4], [17.4, -3], blade] }

    notch "upper" {
      on    = blade
      at    = 22.27
      depth = mm(4)
    }
    notch "lower" {
      on    = blade
      at    = 7.27
      depth = mm(4)
    }
    notch "side" {
      on    = side
      at    = 12
      depth = mm(4)
    }
  }

  piece "forepart" {
    cut   = 2
    grain = [[52, -12], [52, 16]]
    points {
      neck_point = [49.5, -25.6]
      tip        = [37.2, -20.2]
      pitch      = [38.6, -10]
      underarm   = [30.4, -1.46]
      throat     = [58, -17.8]
    }
    edge "neck" { curve = [neck_point, [51.3, -21.5], [53.6, -17.8], throat] }
    edge "front" { line = [throat, [58, 21]] }
    edge "waist" { path = "M 58 21 C 54 21 47.5 20.676 44.295 20.96 L 42.005 20.96 C 38.5 20.649 34.5 20.2 31.2 20.2" }
    edge "side" { smooth = [[31.2, 20.2], [31.15, 18], [30.9, 13], [30.5, 5], underarm] }
    edge "armhole" { curve = [underarm, [34.2, -1.46], [37.9, -4.4], pitch, [39, -13.2], [38.6, -17], tip] }
    edge "shoulder" { line = [tip, neck_point] }

    dart "waist" {
      on     = waist
      at     = 14.85
      intake = 2.3
      tip    = [43.15, 8]
    }
    notch "front" {
      on    = waist
      at    = 9.64
      depth = mm(4)
    }
    notch "sleeve" {
      on    = armhole
      at    = 14
      depth = mm(4)
    }
    notch "side" {
      on    = side
      at    = 9.68
      depth = mm(4)
    }
  }

  piece "skirt" {
    cut    = 2
    levels = {}
    grain  = [[30, 8], [30, 46]]
    edge "waist" { smooth = [[0, 0], [10, 1.4], [22, 2.3], [34, 2.6], [45.5, 2.6]] }
    edge "front" {
      line   = [[45.5, 2.6], [45.5, 53]]
      finish = "faced"
    }
    edge "hem" {
      smooth = [[45.5, 53], [36, 53], [18, 52.8], [3.5, 51.5], [-7, 50]]
      finish = "hem"
    }
    edge "back" {
      line   = [[-7, 50], [0, 0]]
      finish = "faced"
    }

    notch "front" {
      on    = waist
      at    = 36
      depth = mm(4)
    }
  }
}

layer "lining" {
  side   = "inner"
  fabric = fabric.lining

  piece "back" {
    fold  = centre # the pleat: 1.3 cm a side at the neck
    grain = [[5, -18], [5, 14]]
    points {
      nape       = [0, -24]
      neck_point = [7.8, -26.2]
      tip        = [20.4, -20.2]
      blade      = [18.4, -9.5]
    }
    edge "neck" { path = "M -1.3 -24 L 0 -24 C 3.4 -24 6.9 -24.3 7.8 -26.2" }
    edge "shoulder" { line = [neck_point, tip] }
    edge "armhole" { curve = [tip, [18.9, -17.05], [18.4, -13], blade] }
    edge "blade" { smooth = [blade, [16, -4], [12.9, 4], [10.1, 12], [8.53, 17.6], [8.5, 20]] }
    edge "waist" {
      line   = [[8.5, 20], [-1.3, 20]]
      finish = "felled"
    }
    edge "centre" { line = [[-1.3, 20], [-1.3, -24]] }

    notch "sleeve" {
      on    = armhole
      at    = 6
      kind  = "double"
      depth = mm(4)
    }
    notch "upper" {
      on    = blade
      at    = 9
      depth = mm(4)
    }
    notch "lower" {
      on    = blade
      at    = 24
      depth = mm(4)
    }
  }

  piece "side" {
    cut   = 2
    grain = [[22, 2], [22, 17]]
    points {
      blade    = [19.4, -10.34]
      underarm = [29, -1.5]
    }
    edge "armhole" { curve = [blade, [20, -6], [24, -1.5], underarm] }
    edge "side" { smooth = [underarm, [28.9, 5], [28.3, 13], [27.92, 18], [27.9, 20.1]] }
    edge "waist" {
      line   = [[27.9, 20.1], [12.8, 20]]
      finish = "felled"
    }
    edge "blade" { smooth = [[12.8, 20], [12.8, 17], [13.2, 11.4], [14.8, 4], [17.4, -3], blade] }

    notch "upper" {
      on    = blade
      at    = 22.27
      depth = mm(4)
    }
    notch "lower" {
      on    = blade
      at    = 7.27
      depth = mm(4)
    }
    notch "side" {
      on    = side
      at    = 12
      depth = mm(4)
    }
  }

  piece "forepart" {
    cut   = 2
    grain = [[52, -12], [52, 16]]
    points {
      neck_point = [49.5, -25.6]
      tip        = [37.2, -20.2]
      pitch      = [38.6, -10]
      underarm   = [30.4, -1.46]
      throat     = [58, -17.8]
    }
    edge "neck" { curve = [neck_point, [51.3, -21.5], [53.6, -17.8], throat] }
    edge "front" {
      line = [throat, [58, 21]]
      role = "closure" # turned in with the shell's front
    }
    edge "waist" {
      path   = "M 58 21 C 54 21 47.5 20.676 44.295 20.96 L 42.005 20.96 C 38.5 20.649 34.3 20.2 30.8 20.2"
      finish = "felled"
    }
    edge "side" { smooth = [[30.8, 20.2], [30.77, 18], [30.65, 13], [30.5, 5], underarm] }
    edge "armhole" { curve = [underarm, [34.2, -1.46], [37.9, -4.4], pitch, [39, -13.2], [38.6, -17], tip] }
    edge "shoulder" { line = [tip, neck_point] }

    dart "waist" {
      on     = waist
      at     = 14.85
      intake = 2.3
      tip    = [43.15, 8]
    }
    notch "sleeve" {
      on    = armhole
      at    = 14
      depth = mm(4)
    }
    notch "side" {
      on    = side
      at    = 9.66
      depth = mm(4)
    }
  }
}

seam "centre-back" { join = [shell.back.centre, shell.back.centre] }
seam "shoulder" {
  join = [shell.back.shoulder, shell.forepart.shoulder]
  ease = [0.3, 0.8] # eased over the shoulder blade
}
seam "blade" { join = [shell.back.blade, shell.side.blade] }
seam "side" { join = [shell.side.side, shell.forepart.side] }
seam "waist" { join = [shell.skirt.waist, [shell.back.waist, shell.side.waist, shell.forepart.waist]] }

seam "lining-shoulder" {
  join = [lining.back.shoulder, lining.forepart.shoulder]
  ease = [0.3, 0.8]
}
seam "lining-blade" { join = [lining.back.blade, lining.side.blade] }
seam "lining-side" { join = [lining.side.side, lining.forepart.side] }

share "armhole" {
  outer = [shell.back.armhole, shell.side.armhole, shell.forepart.armhole]
  inner = [lining.back.armhole, lining.side.armhole, lining.forepart.armhole]
  match = "identical"
}
share "front" {
  outer = shell.forepart.front
  inner = lining.forepart.front
  match = "identical"
}
share "neck" {
  outer = [shell.back.neck, shell.forepart.neck]
  inner = [lining.back.neck, lining.forepart.neck]
  match = "eased"
  ease  = [-1.5, -1] # the pleat is folded in here: the lining is longer
}

inside "back" {
  outer     = shell.back
  inner     = lining.back
  clearance = { chest = [-2.5, -1.5], waist = [-4, -2.5] }
}
inside "side" {
  outer     = shell.side
  inner     = lining.side
  clearance = { chest = [-0.3, 0.1], waist = [-1, -0.2] }
}
inside "forepart" {
  outer     = shell.forepart
  inner     = lining.forepart
  clearance = { chest = [-0.3, 0.1], waist = [-1, -0.2] }
}

closure "front" {
  kind  = "button"
  edges = [shell.forepart.front, shell.forepart.front]
}
