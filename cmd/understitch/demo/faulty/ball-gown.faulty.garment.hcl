# The ball gown with four faults:
#
# - The waist darts of the satin were pinned deeper, and round the waist it is
#   now smaller than the foundation that it should skim over.
# - The waist notch of the foundation's back panel stayed where it was when the
#   seam was lengthened.
# - The bust notch of the satin's side front is cut more than half way through
#   the allowance.
# - Two points of the skirt's back hem were entered in the wrong order, so that
#   the outline crosses itself.
#
# A comment with "want" stands where a check must report it.

garment "ball-gown-faulty" {
  title = "Ball gown over a boned foundation, with faults"
  unit  = "cm"
}

body {
  bust_girth      = 88
  underbust_girth = 75
  waist_girth     = 70
  high_hip_girth  = 84
}

level "bust" {
  y    = 0
  body = body.bust_girth
}
level "underbust" {
  y    = 8
  body = body.underbust_girth
}
level "waist" {
  y    = 18
  body = body.waist_girth
}
level "high-hip" {
  y    = 27
  body = body.high_hip_girth
}

layer "shell" {
  side   = "outer"
  fabric = fabric.satin
  ease   = { bust = [0.5, 3] }

  piece "centre-front" {
    fold  = centre
    grain = [[4, 2], [4, 28]]
    edge "top" { curve = [[0, -4.4], [3, -4.4], [6.6, -7.6], [9.6, -8.2]] }
    edge "princess" { smooth = [[9.6, -8.2], [9.6, -6], [10.5, 0], [8.95, 8], [8.2, 18], [10, 27], [11, 33.5]] }
    edge "basque" { curve = [[11, 33.5], [7.3, 35], [2.6, 36.8], [0, 38]] }
    edge "centre" { line = [[0, 38], [0, -4.4]] }

    notch "bust" {
      on    = princess
      at    = 7
      depth = mm(4)
    }
    notch "waist" {
      on    = princess
      at    = 26.5
      depth = mm(4)
    }
    notch "gathers" {
      on    = basque
      at    = 5.9
      depth = mm(4)
    }
  }

  piece "side-front" {
    cut   = 2
    grain = [[19, -2], [19, 26]]
    edge "top" { curve = [[12.6, -8.2], [15.2, -8.72], [19.6, -7.2], [23.6, -6]] }
    edge "side" { smooth = [[23.6, -6], [23.6, -4], [24.4, 1], [24.1, 8], [24.05, 18], [24.6, 27], [25.2, 31]] }
    edge "basque" { curve = [[25.2, 31], [21.6, 31.54], [15, 33.05], [11.2, 33.15]] }
    edge "princess" {
      smooth = [[11.2, 33.15], [12.5, 27], [14.3, 18], [13.95, 8], [11.55, 1], [12.6, -6], [12.6, -8.2]]
    }

    notch "bust" { # fault notch-depth warning 0.667
      on    = princess
      at    = 35.25
      depth = mm(8)
    }
    notch "waist" {
      on    = princess
      at    = 15.75
      depth = mm(4)
    }
    notch "side" {
      on    = side
      at    = 20
      depth = mm(4)
    }
  }

  piece "back" {
    cut   = 2
    grain = [[42, 0], [42, 26]]
    edge "top" {
      curve = [[26, -6], [29, -5.1], [33.4, -4.7], [36.4, -4.6], [39.4, -4.5], [43.8, -2.4], [47, -2.4]]
    }
    edge "centre" { line = [[47, -2.4], [47, 31.5]] }
    edge "basque" { curve = [[47, 31.5], [42, 31.5], [28, 31.54], [24.4, 31]] }
    edge "side" { smooth = [[24.4, 31], [25, 27], [25.55, 18], [25.5, 8], [25.2, 1], [26, -4], [26, -6]] }

    dart "waist" {
      centre = [36, 18]
      intake = 4.6
      up     = 17
      down   = 8
    }
    notch "side" {
      on    = side
      at    = 17.14
      depth = mm(4)
    }
  }

  piece "skirt-front" {
    fold   = centre
    levels = {}
    grain  = [[12, 10], [12, 98]]
    edge "waist" { smooth = [[0, 9], [6, 6.2], [14, 3.6], [26, 1.8], [36, 0.57], [40, 0]] }
    edge "side" { line = [[40, 0], [55, 104]] }
    edge "hem" {
      smooth = [[55, 104], [36, 106.74], [18, 108.3], [4, 108.6], [0, 108.6]]
      finish = "hem"
    }
    edge "centre" { line = [[0, 108.6], [0, 9]] }

    notch "gathers" {
      on    = waist
      at    = 10.3
      depth = mm(4)
    }
  }

  piece "skirt-back" {
    cut    = 2
    levels = {}
    grain  = [[30, 10], [30, 98]]
    edge "waist" { smooth = [[0, 0], [4, 0.57], [16, 1.8], [38, 2.4], [42, 2.4]] }
    edge "centre" { line = [[42, 2.4], [42, 108.6]] }
    edge "hem" { # fault outline-crossing error
      smooth = [[42, 108.6], [38, 108.6], [4, 106.74], [22, 108.3], [-15, 104]]
      finish = "hem"
    }
    edge "side" { line = [[-15, 104], [0, 0]] }
  }
}

layer "foundation" { # fault layer-girth error 4.0mm
  side   = "inner"
  fabric = fabric.coutil
  ease   = { bust = [-1, 0.5], underbust = [-0.5, 1.5], waist = [-1, 0.5], high-hip = [0, 2] }

  piece "centre-front" {
    fold  = centre
    grain = [[4, 2], [4, 26]]
    edge "top" { curve = [[0, -4.4], [3, -4.4], [6.6, -7.6], [9.6, -8.2]] }
    edge "princess" { smooth = [[9.6, -8.2], [9.6, -6], [10.2, 0], [8.8, 8], [7.8, 18], [9.6, 27], [10, 29.5]] }
    edge "hem" {
      curve  = [[10, 29.5], [7.5, 29.9], [3, 31], [0, 31]]
      finish = "bound"
    }
    edge "centre" { line = [[0, 31], [0, -4.4]] }

    notch "bust" {
      on    = princess
      at    = 7
      depth = mm(4)
    }
    notch "waist" {
      on    = princess
      at    = 26.5
      depth = mm(4)
    }
  }

  piece "side-front" {
    cut   = 2
    grain = [[19, -2], [19, 26]]
    edge "top" { curve = [[12.6, -8.2], [15.2, -8.72], [19.6, -7.2], [23.6, -6]] }
    edge "side" { smooth = [[23.6, -6], [23.6, -4], [24, 1], [23.9, 8], [23.8, 18], [24.3, 27], [24.5, 29.5]] }
    edge "hem" {
      curve  = [[24.5, 29.5], [21, 29.78], [15.4, 29.88], [12.4, 29.28]]
      finish = "bound"
    }
    edge "princess" {
      smooth = [[12.4, 29.28], [12.9, 27], [14.6, 18], [14, 8], [11.8, 1], [12.6, -6], [12.6, -8.2]]
    }

    notch "bust" {
      on    = princess
      at    = 31.16
      depth = mm(4)
    }
    notch "waist" {
      on    = princess
      at    = 11.66
      depth = mm(4)
    }
    notch "side" {
      on    = side
      at    = 20
      depth = mm(4)
    }
  }

  piece "side-back" {
    cut   = 2
    grain = [[31, -2], [31, 26]]
    edge "top" { curve = [[26, -6], [29, -5.1], [33.4, -4.7], [36.4, -4.6]] }
    edge "seam" { smooth = [[36.4, -4.6], [36.4, -3], [36.6, 1.5], [35.5, 8], [35, 18], [36.6, 27], [36.9, 29.5]] }
    edge "hem" {
      curve  = [[36.9, 29.5], [33.4, 29.92], [28.6, 29.78], [25.1, 29.5]]
      finish = "bound"
    }
    edge "side" { smooth = [[25.1, 29.5], [25.3, 27], [25.8, 18], [25.7, 8], [25.6, 1], [26, -4], [26, -6]] }

    notch "side" {
      on    = side
      at    = 15.54
      depth = mm(4)
    }
    notch "waist" {
      on    = seam
      at    = 23
      depth = mm(4)
    }
  }

  piece "back" {
    cut   = 2
    grain = [[43, 0], [43, 26]]
    edge "top" { curve = [[36.4, -4.6], [39.4, -4.5], [43.8, -2.4], [47, -2.4]] }
    edge "centre" { line = [[47, -2.4], [47, 29.9]] }
    edge "hem" {
      curve  = [[47, 29.9], [43.5, 29.9], [39.5, 29.86], [36.5, 29.5]]
      finish = "bound"
    }
    edge "seam" { smooth = [[36.5, 29.5], [36.8, 27], [38.2, 18], [37.5, 8], [36.4, 1.5], [36.4, -3], [36.4, -4.6]] }

    notch "waist" {
      on    = seam
      at    = 10.8 # fault notch-match error 5.7mm
      depth = mm(4)
    }
  }
}

seam "princess" { join = [shell.centre-front.princess, shell.side-front.princess] }
seam "side" { join = [shell.side-front.side, shell.back.side] }
seam "skirt-side" { join = [shell.skirt-front.side, shell.skirt-back.side] }
seam "skirt-back" { join = [shell.skirt-back.centre, shell.skirt-back.centre] }
seam "basque" {
  join = [
    [shell.skirt-front.waist, shell.skirt-back.waist],
    [shell.centre-front.basque, shell.side-front.basque, shell.back.basque],
  ]
  ease = [30, 36] # gathers
}

seam "foundation-princess" { join = [foundation.centre-front.princess, foundation.side-front.princess] }
seam "foundation-side" { join = [foundation.side-front.side, foundation.side-back.side] }
seam "foundation-back" { join = [foundation.side-back.seam, foundation.back.seam] }

share "top" {
  outer = [shell.centre-front.top, shell.side-front.top, shell.back.top]
  inner = [foundation.centre-front.top, foundation.side-front.top, foundation.side-back.top, foundation.back.top]
  match = "identical"
}

inside "centre-front" {
  outer     = shell.centre-front
  inner     = foundation.centre-front
  clearance = { bust = [0, 0.8], underbust = [0, 0.8], waist = [0, 0.8], high-hip = [0, 1] }
}
inside "side-front" {
  outer     = shell.side-front
  inner     = foundation.side-front
  clearance = { bust = [0, 0.8], underbust = [0, 0.8], waist = [0, 0.8], high-hip = [0, 1] }
}

closure "zip" {
  kind  = "zip"
  edges = [shell.back.centre, shell.back.centre]
  stock = [30, 33, 36, 40]
}
closure "hooks" {
  kind  = "tape"
  tape  = tape.hook-and-eye-19
  edges = [foundation.back.centre, foundation.back.centre]
  row   = 1
}

bone "princess" {
  along  = foundation.side-front.princess
  length = 36.5
}
bone "side" {
  along  = foundation.side-back.side
  length = 34
}
bone "back" {
  along  = foundation.back.seam
  length = 32.5
}
