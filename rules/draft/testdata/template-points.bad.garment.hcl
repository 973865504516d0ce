garment "side-by-template" { unit = "cm" }
level "bust" { y = 0 }
level "waist" { y = 17.5 }
layer "shell" {
  side = "outer"
  piece "front" {
    fold = centre
    edge "top"    { line = [[0, -8], [22, 0]] }
    edge "side"   { line = [[22, 0], [19.7, 17.5], [25, 38]] }
    edge "hem"    { line = [[25, 38], [0, 38]] }
    edge "centre" { line = [[0, 38], [0, -8]] }
  }
  piece "back" {
    fold = centre
    edge "top"    { line = [[0, -6], [21, 0]] }
    edge "side" {
      trace   = shell.front.side
      through = { bust = 21, waist = 18 } # fault template-points error 7mm
    }
    edge "hem"    { line = [[24, 38], [0, 38]] }
    edge "centre" { line = [[0, 38], [0, -6]] }
  }
}
seam "side" { join = [shell.front.side, shell.back.side] }
