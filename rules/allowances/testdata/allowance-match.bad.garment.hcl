# Rink dress, Harbour Lane Playhouse. The back's side was widened for letting
# out, the front's was not; the brief's top kept its old allowance.
garment "rink-dress" { unit = "cm" }

layer "shell" {
  side = "outer"
  piece "front" {
    fold      = centre
    allowance = 1
    edge "top" {
      line      = [[0, 0], [22, 0]]
      allowance = mm(6)
    }
    edge "side"   { line = [[22, 0], [22, 40]] }
    edge "hem"    { line = [[22, 40], [0, 40]] }
    edge "centre" { line = [[0, 40], [0, 0]] }
  }
  piece "back" {
    fold      = centre
    allowance = 1
    edge "top"  { line = [[60, 0], [40, 0]] }
    edge "side" {
      line      = [[40, 0], [40, 40]]
      allowance = 1.5 # fault allowance-match error 5mm
    }
    edge "hem"    { line = [[40, 40], [60, 40]] }
    edge "centre" { line = [[60, 40], [60, 0]] }
  }
}
layer "brief" {
  side = "inner"
  piece "front" {
    fold = centre
    edge "top" {
      line      = [[0, 0], [22, 0]]
      allowance = 1 # fault allowance-match error 4mm
    }
    edge "side"   { line = [[22, 0], [22, 30]] }
    edge "leg"    { line = [[22, 30], [0, 36]] }
    edge "centre" { line = [[0, 36], [0, 0]] }
  }
}

seam "side" { join = [shell.front.side, shell.back.side] }
share "top" {
  outer = [shell.front.top]
  inner = [brief.front.top]
}
