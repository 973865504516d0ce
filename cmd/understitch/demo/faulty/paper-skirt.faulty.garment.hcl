# The paper skirt with four faults:
#
# - The wearer was measured again round the hip, and the skirt is now too close
#   there.
# - The side of the lining's back was read off the tape a quarter of an inch too
#   long.
# - The front hem has 2 cm to turn up, the back hem 3 cm, as the house wants.
# - Nothing says what is done with the lining's back hem.
#
# A comment with "want" stands where a check must report it.

garment "paper-skirt-faulty" {
  title = "Skirt from a paper pattern, with faults"
  unit  = "cm"
}

body {
  waist_girth = 72
  hip_girth   = 100.5
}

level "waist" { body = body.waist_girth }
level "hip" { body = body.hip_girth }
level "knee" {}

layer "shell" {
  side   = "outer"
  fabric = fabric.barathea
  ease   = { waist = [0.5, 2], hip = [2, 5] } # fault body-ease error 7.0mm

  piece "front" {
    fold  = centre
    width = { waist = 18.7, hip = 25.6, knee = 30.4 }
    edge "waist" { length = 18.8 }
    edge "side" { length = 61.3 }
    edge "hem" {
      length    = 31
      finish    = "hem"
      allowance = 2 # fault allowance-match error 10mm
    }
    edge "centre" { length = 60 }

    dart "waist" {
      on     = waist
      at     = 9.4
      intake = 2.2
    }
    notch "hip" {
      on    = side
      at    = 20.4
      depth = mm(5)
    }
  }

  piece "back" {
    cut   = 2
    width = { waist = 18, hip = 25, knee = 29.4 }
    edge "waist" { length = 18.1 }
    edge "centre" { length = 60 }
    edge "hem" {
      length = 30
      finish = "hem"
    }
    edge "side" { length = 61.3 }

    dart "waist" {
      on     = waist
      at     = 8.8
      intake = 2.8
    }
    notch "hip" {
      on    = side
      at    = 40.9
      depth = mm(5)
    }
    notch "zip" {
      on    = centre
      at    = 20.4
      kind  = "double"
      depth = mm(5)
    }
  }
}

layer "lining" {
  side   = "inner"
  fabric = fabric.lining

  piece "front" {
    fold  = centre
    width = { waist = inch(7 + 5/16), hip = inch(10), knee = inch(11 + 7/8) }
    edge "waist" { length = 18.8 }
    edge "side" { length = inch(23 + 1/8) }
    edge "hem" {
      length = inch(12)
      finish = "hem"
    }
    edge "centre" { length = inch(22 + 5/8) }

    dart "waist" {
      on     = waist
      at     = 9.4
      intake = inch(7/8)
    }
    notch "hip" {
      on    = side
      at    = inch(8)
      depth = mm(5)
    }
  }

  piece "back" {
    cut   = 2
    width = { waist = inch(7 + 1/16), hip = inch(9 + 13/16), knee = inch(11 + 1/2) }
    edge "waist" { length = 18.1 }
    edge "centre" {
      length = inch(22 + 5/8)
      role   = "closure"                 # as wide as the shell's, for the zip
    }
    edge "hem" { length = inch(11 + 5/8) } # fault edge-unused warning 295mm
    edge "side" { length = inch(23 + 3/8) }

    dart "waist" {
      on     = waist
      at     = 8.8
      intake = inch(1 + 1/8)
    }
    notch "hip" {
      on    = side
      at    = inch(15 + 1/8)
      depth = mm(5)
    }
    notch "zip" {
      on    = centre
      at    = inch(8 + 1/32)
      kind  = "double"
      depth = mm(5)
    }
  }
}

seam "shell-side" { join = [shell.front.side, shell.back.side] }
seam "shell-back" { join = [part(shell.back.centre, zip, end), part(shell.back.centre, zip, end)] }
seam "lining-side" { join = [lining.front.side, lining.back.side] } # fault seam-walk error -6.4mm
seam "lining-back" { join = [part(lining.back.centre, zip, end), part(lining.back.centre, zip, end)] }

share "waist" {
  outer = [shell.front.waist, shell.back.waist]
  inner = [lining.front.waist, lining.back.waist]
  match = "length"
}
share "zip" {
  outer = part(shell.back.centre, start, zip)
  inner = part(lining.back.centre, start, zip)
  match = "length"
}

inside "front" {
  outer     = shell.front
  inner     = lining.front
  clearance = { waist = [0, 0.5], hip = [0, 1], knee = [0, 1] }
}
inside "back" {
  outer     = shell.back
  inner     = lining.back
  clearance = { waist = [0, 0.5], hip = [0, 1], knee = [0, 1] }
}

closure "zip" {
  kind  = "zip"
  edges = [shell.back.centre, shell.back.centre]
  from  = start
  to    = zip
  stock = [18, 20, 22, 25]
}
