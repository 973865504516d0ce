# An outer dress with a built-in foundation, each line drawn once. The dress takes in the back
# by a dart, the foundation by its centre back seam; both share neck and armholes,
# and hook-and-eye tape closes the foundation between the legs.

garment "traced-dress" { unit = "cm" }

body {
  bust_girth          = 85
  waist_girth         = 68
  hip_girth           = 97
  total_crotch_length = 64
}
level "bust" {
  y    = 0
  body = body.bust_girth
}
level "waist" {
  y    = 17
  body = body.waist_girth
}
level "hip" {
  y    = 37
  body = body.hip_girth
}

draft { hip = 24.5 }

layer "dress" {
  side = "outer"
  ease = { bust = [-4, 2], waist = [-4, 2] }

  piece "front" {
    fold  = centre
    grain = [[6, 5], [6, 40]]
    edge "neck" { curve = [[0, -12], [3, -12], [5.5, -18.5], [7, -23]] }
    edge "shoulder" { line = [[7, -23], [11.5, -21.5]] }
    edge "armhole" { curve = [[11.5, -21.5], [10, -17], [13, -4], [21.4, -4]] }
    edge "side" {
      curve = [
        [21.4, -4], [21.4, -2.5], [21, -1.5], [21, 0],
        [21, 6], [18, 11], [18, 17],
        [18, 24], [draft.hip, 30], [draft.hip, 37],
        [draft.hip, 48], [30, 60], [30, 72],
      ]
    }
    edge "hem" {
      line   = [[30, 72], [0, 72]]
      finish = "hem"
    }
    edge "centre" { line = [[0, 72], [0, -12]] }
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
    notch "knee" {
      on    = side
      at    = 62
      depth = mm(4)
    }
  }

  piece "back" {
    cut   = 2
    grain = [[6, 5], [6, 40]]
    edge "neck" { curve = [[0, -18], [3, -18], [5.5, -19.5], [7, -24]] }
    edge "shoulder" { line = [[7, -24], [11.5, -22.5]] }
    edge "armhole" { curve = [[11.5, -22.5], [10, -18], [13, -4], [21.4, -4]] }
    edge "side" { trace = dress.front.side }
    edge "hem" {
      trace  = dress.front.hem
      finish = "hem"
    }
    edge "centre" { line = [[0, 72], [0, -18]] }
    notch "armhole" {
      on    = armhole
      at    = 12.5
      kind  = "double"
      depth = mm(4)
    }
    dart "waist" {
      centre = [9, 17]
      intake = 2
      up     = 12
      down   = 12
    }
  }
}

layer "foundation" {
  side = "inner"
  ease = { bust = [-4, 2], waist = [-4, 2] }

  piece "front" {
    trace = dress.front
    edge "neck" {}
    edge "shoulder" {}
    edge "armhole" {}
    edge "side" { to = hip }
    edge "leg" {
      curve  = [[draft.hip, 37], [14, 37], [3.5, 40], [3.5, 46.5]]
      finish = "bound"
    }
    edge "gusset" { line = [[3.5, 46.5], [0, 46.5]] }
    edge "centre" { line = [[0, 46.5], [0, -12]] }
  }

  piece "back" {
    trace   = dress.back
    without = [dart.waist]
    edge "neck" {}
    edge "shoulder" {}
    edge "armhole" {}
    edge "side" { to = hip }
    edge "leg" {
      curve  = [[draft.hip, 37], [20, 37], [3.5, 43], [3.5, 48.5]]
      finish = "bound"
    }
    edge "gusset" { line = [[3.5, 48.5], [0, 48.5]] }
    edge "centre" { line = [[0, 48.5], [0, 29], [2, 17], [0, 5], [0, -18]] }
  }
}

seam "dress-shoulder" { join = [dress.front.shoulder, dress.back.shoulder] }
seam "dress-side" { join = [dress.front.side, dress.back.side] }
seam "dress-back" { join = [dress.back.centre, dress.back.centre] }
seam "foundation-shoulder" { join = [foundation.front.shoulder, foundation.back.shoulder] }
seam "foundation-side" { join = [foundation.front.side, foundation.back.side] }
seam "foundation-back" { join = [foundation.back.centre, foundation.back.centre] }
share "neck" {
  outer = [dress.front.neck, dress.back.neck]
  inner = [foundation.front.neck, foundation.back.neck]
}
share "armhole" {
  outer = [dress.front.armhole, dress.back.armhole]
  inner = [foundation.front.armhole, foundation.back.armhole]
}
inside "front" {
  outer     = dress.front
  inner     = foundation.front
  clearance = { waist = [0, 1] }
}
inside "back" {
  outer     = dress.back
  inner     = foundation.back
  clearance = { waist = [0, 1] }
}
closure "gusset" {
  kind  = "tape"
  tape  = tape.hook-and-eye
  edges = [foundation.front.gusset, foundation.back.gusset]
}
measure "crotch" {
  along   = [foundation.front.centre, closure.gusset, foundation.back.centre]
  from    = waist
  to      = waist
  against = body.total_crotch_length
  ease    = [-3, 1]
}
alter "first-fitting" {
  edges  = [dress.front.side]
  inward = { bust = 0, waist = 0.4, hip = 0.2 }
}
alter "second-fitting" {
  edges  = [dress.front.side]
  inward = { bust = 0, waist = -0.2 }
}
