# Page's tabard, Harbour Lane Playhouse. The back was taken off the
# fold for a seam, and is still cut once.
garment "page-tabard" { unit = "cm" }

layer "shell" {
  side = "outer"
  piece "front" {
    fold = centre
    edge "side"   { line = [[24, 0], [24, 60]] }
    edge "hem"    { line = [[24, 60], [0, 60]] }
    edge "centre" { line = [[0, 60], [0, 8]] }
    edge "top"    { line = [[0, 8], [24, 0]] }
  }
  piece "back" { # fault mirror-pair error
    cut = 1
    edge "side"   { line = [[24, 0], [24, 60]] }
    edge "hem"    { line = [[24, 60], [0, 60]] }
    edge "centre" { line = [[0, 60], [0, 2]] }
    edge "top"    { line = [[0, 2], [24, 0]] }
  }
}

seam "side" { join = [shell.front.side, shell.back.side] }
seam "back" { join = [shell.back.centre, shell.back.centre] }
