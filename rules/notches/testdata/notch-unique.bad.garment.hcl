# Clown's trousers, Harbour Lane Playhouse, cut in panels. Both knees are
# notched at one height.
garment "clown-trousers" { unit = "cm" }

layer "shell" {
  side = "outer"
  piece "front" {
    cut = 2
    edge "side"   { length = 98 }
    edge "inside" { length = 97.2 }
    notch "side" {
      on = side
      at = 45
    }
    notch "inside" {
      on = inside
      at = 44.6
    }
  }
  piece "back" {
    cut = 2
    edge "side"   { length = 98 }
    edge "inside" { length = 97.2 }
    notch "side" {
      on = side
      at = 45
    }
    notch "inside" {
      on = inside
      at = 44.6
    }
  }
}

seam "side" { join = [shell.front.side, shell.back.side] }
seam "inside" { join = [shell.front.inside, shell.back.inside] } # fault notch-unique note
