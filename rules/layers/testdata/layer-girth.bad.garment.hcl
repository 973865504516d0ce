# A ball gown of two pieces over a foundation of three panels a side, which no
# pairing of pieces can compare. One panel was let out and the gown was not.
garment "ball-gown" {
  title = "Ball gown over a foundation"
  unit  = "cm"
}

level "waist" { y = 20 }

layer "gown" {
  side = "outer"

  piece "front" {
    fold = centre
    edge "top"    { line = [[0, 0], [22, 2]] }
    edge "side"   { line = [[22, 2], [17.6, 20], [30, 90]] }
    edge "hem"    { line = [[30, 90], [0, 90]] }
    edge "centre" { line = [[0, 90], [0, 0]] }
  }
  piece "back" {
    fold = centre
    edge "top"    { line = [[0, 4], [22, 2]] }
    edge "side"   { line = [[22, 2], [17.2, 20], [30, 90]] }
    edge "hem"    { line = [[30, 90], [0, 90]] }
    edge "centre" { line = [[0, 90], [0, 4]] }
  }
}

layer "foundation" { # fault layer-girth error 8mm
  side = "inner"

  piece "front" {
    fold = centre
    edge "top"    { line = [[0, 0], [8, 0]] }
    edge "side"   { line = [[8, 0], [7, 20], [8, 30]] }
    edge "hem"    { line = [[8, 30], [0, 30]] }
    edge "centre" { line = [[0, 30], [0, 0]] }
  }
  piece "side" {
    cut = 2
    edge "top"   { line = [[10, 0], [24, 0]] }
    edge "back"  { line = [[24, 0], [22.2, 20], [24, 30]] }
    edge "hem"   { line = [[24, 30], [10, 30]] }
    edge "front" { line = [[10, 30], [10, 0]] }
  }
  piece "back" {
    cut = 2
    edge "top"    { line = [[30, 0], [47, 0]] }
    edge "centre" { line = [[47, 0], [46, 20], [47, 30]] }
    edge "hem"    { line = [[47, 30], [30, 30]] }
    edge "side"   { line = [[30, 30], [30, 0]] }
  }
}

seam "gown"        { join = [gown.front.side, gown.back.side] }
seam "princess"    { join = [foundation.front.side, foundation.side.front] }
seam "side"        { join = [foundation.side.back, foundation.back.side] }
seam "centre_back" { join = [foundation.back.centre, foundation.back.centre] }
