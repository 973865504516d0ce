# Ten rules of a pattern room, as the Harbour Lane Playhouse might have them. They
# are common practice and have no source; every figure is a house's own to settle.
# Each carries a spec in which it must find nothing and one in which it must find
# something: "understitch try-rules" runs them all.

house "harbour-lane" { unit = "cm" }

# A turned hem has enough to turn, and to let down for the next wearer.
require "hem-depth" {
  of       = edge
  only     = { finish = "hem", role = "" }
  figure   = edge.allowance
  least    = 3
  why      = "A costume is worn by more than one body; a deep hem lets it down."
  fix      = "Draw the hem's allowance deeper, or say that it is rolled, faced or bound."
  good     = <<-SPEC
    garment "apron" { unit = "cm" }
    layer "shell" {
      side = "outer"
      piece "front" {
        edge "hem" {
          length    = 60
          finish    = "hem"
          allowance = 3
        }
      }
    }
    SPEC
  bad      = <<-SPEC
    garment "apron" { unit = "cm" }
    layer "shell" {
      side = "outer"
      piece "front" {
        edge "hem" {
          length    = 60
          finish    = "hem"
          allowance = 2
        }
      }
    }
    SPEC
}

# A piece that is drawn tells how it lies on the cloth.
require "grain-stated" {
  of       = piece
  only     = { paper = false }
  has      = piece.grain
  why      = "Without a grain line two cutters lay the same piece in two ways, and one of them hangs crooked."
  good     = "examples/with-grain.hcl"
  bad      = "examples/without-grain.hcl"
}

# Pieces have the names that stand on the pattern shelf.
require "piece-names" {
  of       = piece
  named    = ["front", "back", "side", "forepart", "skirt", "*sleeve", "collar", "brief", "*-front", "*-back"]
  good     = <<-SPEC
    garment "apron" { unit = "cm" }
    layer "shell" {
      side = "outer"
      piece "front" {
        edge "hem" { length = 60 }
      }
    }
    SPEC
  bad      = <<-SPEC
    garment "apron" { unit = "cm" }
    layer "shell" {
      side = "outer"
      piece "frnt" {
        edge "hem" { length = 60 }
      }
    }
    SPEC
}

# Notches are snipped no deeper than this, whatever the allowance.
require "notch-cut" {
  of       = notch
  figure   = notch.depth
  greatest = mm(6)
  where    = notch.depth != null
  good     = <<-SPEC
    garment "apron" { unit = "cm" }
    layer "shell" {
      side = "outer"
      piece "front" {
        edge "hem" { length = 60 }
        notch "middle" {
          on    = hem
          at    = 30
          depth = mm(4)
        }
      }
    }
    SPEC
  bad      = <<-SPEC
    garment "apron" { unit = "cm" }
    layer "shell" {
      side = "outer"
      piece "front" {
        edge "hem" { length = 60 }
        notch "middle" {
          on    = hem
          at    = 30
          depth = mm(8)
        }
      }
    }
    SPEC
}

# A dart that takes in more than this is made into two, or into a seam.
require "dart-intake" {
  of       = dart
  that     = dart.intake <= 5
  message  = "${dart.name} takes in ${show(dart.intake)}; past ${show(5)} it bulges at its tip: make two of it"
  good     = <<-SPEC
    garment "apron" { unit = "cm" }
    layer "shell" {
      side = "outer"
      piece "front" {
        edge "hem" { length = 60 }
        dart "middle" {
          on     = hem
          at     = 30
          intake = 3
        }
      }
    }
    SPEC
  bad      = <<-SPEC
    garment "apron" { unit = "cm" }
    layer "shell" {
      side = "outer"
      piece "front" {
        edge "hem" { length = 60 }
        dart "middle" {
          on     = hem
          at     = 30
          intake = 6
        }
      }
    }
    SPEC
}

# What a layer is cut from is known, and how it comes out of the wash.
require "cloth-stated" {
  of       = layer
  has      = [layer.fabric, layer.shrink_along]
  good     = <<-SPEC
    garment "apron" { unit = "cm" }
    fabric "satin" { shrink = { across = 1, along = 2 } }
    layer "shell" {
      side   = "outer"
      fabric = fabric.satin
      piece "front" {
        edge "hem" { length = 60 }
      }
    }
    SPEC
  bad      = <<-SPEC
    garment "apron" { unit = "cm" }
    layer "shell" {
      side = "outer"
      piece "front" {
        edge "hem" { length = 60 }
      }
    }
    SPEC
}

# Allowances are those that are marked on the room's rulers.
require "ruler-allowances" {
  of       = edge
  where    = edge.allowance != null
  that     = contains([0, 0.6, 1, 1.2, 1.5, 2, 2.5, 3, 4, 5], edge.allowance)
  message  = "${edge.name} has ${show(edge.allowance)}, which is on no ruler of the room"
  severity = "note"
  good     = <<-SPEC
    garment "apron" { unit = "cm" }
    layer "shell" {
      side = "outer"
      piece "front" {
        edge "hem" {
          length    = 60
          allowance = 1.5
        }
      }
    }
    SPEC
  bad      = <<-SPEC
    garment "apron" { unit = "cm" }
    layer "shell" {
      side = "outer"
      piece "front" {
        edge "hem" {
          length    = 60
          allowance = 1.7
        }
      }
    }
    SPEC
}

# The two edges of a fastening are alike to the millimetre: it cannot be eased.
require "closure-even" {
  of       = closure
  figure   = closure.sides[0]
  equals   = closure.sides[1]
  within   = mm(1)
  severity = "error"
  good     = <<-SPEC
    garment "apron" { unit = "cm" }
    layer "shell" {
      side = "outer"
      piece "left" {
        edge "back" { length = 60 }
      }
      piece "right" {
        edge "back" { length = 60 }
      }
    }
    closure "back" {
      kind  = "lacing"
      edges = [shell.left.back, shell.right.back]
    }
    SPEC
  bad      = <<-SPEC
    garment "apron" { unit = "cm" }
    layer "shell" {
      side = "outer"
      piece "left" {
        edge "back" { length = 60 }
      }
      piece "right" {
        edge "back" { length = 60.2 }
      }
    }
    closure "back" {
      kind  = "lacing"
      edges = [shell.left.back, shell.right.back]
    }
    SPEC
}

# A woven outer layer goes round the waist with room to breathe.
require "waist-room" {
  of       = layer
  where    = layer.side == "outer" && lookup(layer.girth, "waist", 0) > 0 && coalesce(layer.stretch_across, 0) < 10
  that     = layer.girth.waist - body.waist_girth >= 0.5
  message  = "${layer.name} has ${show(layer.girth.waist - body.waist_girth)} of room at the waist; give it ${show(0.5)}"
  good     = <<-SPEC
    garment "skirt" { unit = "cm" }
    body { waist_girth = 70 }
    level "waist" {
      y    = 0
      body = body.waist_girth
    }
    fabric "barathea" { stretch = { across = 2, along = 1 } }
    layer "shell" {
      side   = "outer"
      fabric = fabric.barathea
      piece "front" {
        cut   = 2
        width = { waist = 36 }
        edge "side" { length = 60 }
      }
    }
    SPEC
  bad      = <<-SPEC
    garment "skirt" { unit = "cm" }
    body { waist_girth = 70 }
    level "waist" {
      y    = 0
      body = body.waist_girth
    }
    fabric "barathea" { stretch = { across = 2, along = 1 } }
    layer "shell" {
      side   = "outer"
      fabric = fabric.barathea
      piece "front" {
        cut   = 2
        width = { waist = 35 }
        edge "side" { length = 60 }
      }
    }
    SPEC
}

# More pieces than this are more than one cutter lays in a day: say so in time.
require "pieces-to-cut" {
  of       = garment
  that     = sum([for p in garment.pieces : p.cut]) <= 40
  message  = "${garment.name} has ${sum([for p in garment.pieces : p.cut])} pieces to cut; plan two days"
  severity = "note"
  good     = <<-SPEC
    garment "apron" { unit = "cm" }
    layer "shell" {
      side = "outer"
      piece "front" {
        edge "hem" { length = 60 }
      }
    }
    SPEC
  bad      = <<-SPEC
    garment "petal-skirt" { unit = "cm" }
    layer "shell" {
      side = "outer"
      piece "petal" {
        cut = 48
        edge "side" { length = 60 }
      }
    }
    SPEC
}
